"""One charge of the price book: what it makes of the design, and its fields when it is opened."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Basis, Charge, Part, PriceLine
from framing_palette.design.price_book import allowed_bases
from framing_palette.design.price_book_edits import breaks_text, percent_text, units_of
from framing_palette.window.controls import Chip, push_button, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.forms import Choice
from framing_palette.window.languages import told as in_language
from framing_palette.window.price_fields import (
    TextField,
    basis_words,
    part_words,
    rate_words,
)
from framing_palette.window.tokens import GAP, MARGIN


class ChargeRow(QWidget):
    """A charge in two lines; "edit" unfolds its fields."""

    changed = Signal(str, object)
    """A field's name and what was typed or chosen."""
    asked = Signal(str)
    """up, down or drop."""
    opened = Signal(bool)

    def __init__(self) -> None:
        super().__init__()
        self.title = words(wrap=True)
        self.told = words(size="small", quiet=True, wrap=True)
        self.edit = Chip(self.tr("edit"))
        self.form: ChargeForm | None = None
        self._shown: tuple[Charge, str] | None = None
        said = QVBoxLayout()
        said.setSpacing(0)
        said.addWidget(self.title)
        said.addWidget(self.told)
        head = QHBoxLayout()
        head.setSpacing(GAP)
        head.addLayout(said, 1)
        head.addWidget(self.edit)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 4, 0, 4)
        self._column.setSpacing(0)
        self._column.addLayout(head)
        self.edit.toggled.connect(self._unfold)

    def show_charge(self, charge: Charge, currency: str, lines: tuple[PriceLine, ...]) -> None:
        """Show a charge as it is now, and what it comes to in the design that is looked at."""
        self._shown = charge, currency
        self.title.setText(charge.title)
        self.edit.setAccessibleName(self.tr("Edit {title}").format(title=charge.title))
        said = [f"{line.amount.show()}: {in_language(line.how)}" for line in lines]
        if not lines:
            said.append(self.tr("Not in this design."))
        if charge.private:
            said.append(self.tr("Private: the client sees it only within one sum."))
        self.told.setText("\n".join(said).replace("m2", "m²").replace("ft2", "ft²"))
        if self.form is not None:
            self.form.show_charge(charge, currency)

    def say(self, name: str, fault: str) -> None:
        """Say why what was typed into a field cannot be taken."""
        if self.form is not None:
            self.form.say(name, fault)

    def _unfold(self, on: bool) -> None:  # noqa: FBT001 - a signal's own form
        if self.form is None and self._shown is not None:
            self.form = ChargeForm()
            self.form.changed.connect(self.changed)
            self.form.asked.connect(self.asked)
            self.form.show_charge(*self._shown)
            self._column.addWidget(self.form)
        if self.form is not None:
            self.form.setVisible(on)
        self.opened.emit(on)


class ChargeForm(QWidget):
    """Every field of one charge, those that do not go with it put away."""

    changed = Signal(str, object)
    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.fields = {
            "title": TextField(self.tr("What the line is called")),
            "rate": TextField(""),
            "breaks": TextField(
                self.tr("Other rates for small sizes"),
                self.tr("Up to so many united inches, at that rate: 24: 0.70; 40: 0.80"),
            ),
            "minutes": TextField(self.tr("Minutes of labour")),
            "waste": TextField(self.tr("Waste added, %")),
            "minimum": TextField(self.tr("Least amount of the line")),
            "material": TextField(
                self.tr("Only when the material contains"), self.tr("Empty for any material.")
            ),
            "codes": TextField(
                self.tr("Only for these codes"),
                self.tr("With * standing for anything, like M-*. Empty for all."),
            ),
        }
        self.part = Choice(self.tr("For"), [(part, part_words(part)) for part in Part])
        self.basis = Choice(self.tr("Charged by"), [(basis, basis_words(basis)) for basis in Basis])
        units = (*units_of(Basis.LENGTH), *units_of(Basis.AREA))
        self.per = Choice(self.tr("Unit"), [(unit, unit.replace("2", "²")) for unit in units])
        self.private = Choice(
            self.tr("The client sees it"),
            ((False, self.tr("As a line")), (True, self.tr("Only within one sum"))),
        )
        self._lay_out()
        self._wire()

    def show_charge(self, charge: Charge, currency: str) -> None:
        """Show what holds now."""
        self.fields["rate"].set_name(rate_words(charge, currency))
        texts = {
            "title": charge.title,
            "rate": f"{charge.rate:f}",
            "breaks": breaks_text(charge.breaks),
            "minutes": f"{charge.minutes:f}" if charge.minutes else "",
            "waste": percent_text(charge.waste) if charge.waste else "",
            "minimum": f"{charge.minimum:f}" if charge.minimum else "",
            "material": charge.material,
            "codes": charge.codes,
        }
        for name, text in texts.items():
            self.fields[name].show_text(text)
        basis = charge.basis
        self.fields["breaks"].setVisible(basis is Basis.UNITED_INCH)
        self.fields["minutes"].setVisible(basis is Basis.MINUTES)
        self.fields["waste"].setVisible(basis in (Basis.LENGTH, Basis.AREA, Basis.CATALOGUE))
        for name in ("material", "codes"):
            self.fields[name].setVisible(charge.part not in (Part.JOB, Part.OPENING))
        for shown, chip in self.basis.chips.items():
            chip.setVisible(shown in allowed_bases(charge.part))
        for unit, chip in self.per.chips.items():
            chip.setVisible(unit in units_of(basis))
        for widget in (self.per, self._per_name):
            widget.setVisible(bool(units_of(basis)))
        self.part.show_value(charge.part)
        self.basis.show_value(basis)
        self.per.show_value(charge.per)
        self.private.show_value(charge.private)

    def say(self, name: str, fault: str) -> None:
        """Say below a field why what was typed cannot be taken; choices below the title."""
        self.fields.get(name, self.fields["title"]).say(fault)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, 0, 0, MARGIN)
        column.setSpacing(4)
        column.addWidget(self.fields["title"])
        for told, choice in ((self.tr("For"), self.part), (self.tr("Charged by"), self.basis)):
            self._add_choice(column, told, choice)
        self._per_name = self._add_choice(column, self.tr("Unit"), self.per)
        for name in ("rate", "breaks", "minutes", "waste", "minimum"):
            column.addWidget(self.fields[name])
        self._add_choice(column, self.tr("The client sees it"), self.private)
        for name in ("material", "codes"):
            column.addWidget(self.fields[name])
        buttons = FlowLayout(gap=GAP, row_gap=GAP)
        for name, told in (
            ("up", self.tr("Move up")),
            ("down", self.tr("Move down")),
            ("drop", self.tr("Take it out")),
        ):
            button = push_button(told)
            button.clicked.connect(lambda _on=False, name=name: self.asked.emit(name))
            buttons.addWidget(button)
        row = QWidget()
        row.setLayout(buttons)
        column.addSpacing(MARGIN)
        column.addWidget(row)

    def _add_choice(self, column: QVBoxLayout, told: str, choice: Choice) -> QWidget:
        label = words(told, size="small")
        column.addSpacing(GAP)
        column.addWidget(label)
        column.addWidget(choice)
        return label

    def _wire(self) -> None:
        for name, field in self.fields.items():
            field.taken.connect(lambda text, name=name: self.changed.emit(name, text))
        for name, choice in (
            ("part", self.part),
            ("basis", self.basis),
            ("per", self.per),
            ("private", self.private),
        ):
            choice.picked.connect(lambda value, name=name: self.changed.emit(name, value))
