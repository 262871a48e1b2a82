"""What the shop says of one sample: a favourite, out of stock, hidden, its name and price."""

from dataclasses import replace

from PySide6.QtWidgets import QGridLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.catalogue import Sample
from framing_palette.catalogue.shop_edits import Said, with_own_facts
from framing_palette.errors import FramingPaletteError
from framing_palette.window.controls import Chip, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.state import RackState
from framing_palette.window.tokens import GAP, WIDE_MARGIN


class Marks(QWidget):
    """Three chips for the sample in hand; each change has a name and can be undone."""

    def __init__(self, state: RackState) -> None:
        super().__init__()
        self._state = state
        self.code = ""
        self.liked = Chip(self.tr("Favourite"))
        self.out = Chip(self.tr("Out of stock"))
        self.away = Chip(self.tr("Hide"), told=self.tr("Hide the sample from every list"))
        self.open = Chip(self.tr("Edit"), told=self.tr("Edit name and price"))
        self.fields = QWidget()
        self.name, self.price = QLineEdit(), QLineEdit()
        self.fault = words(size="small", wrap=True)
        self.whose = words(size="small", quiet=True, wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, 0)
        column.setSpacing(0)
        column.addWidget(self.whose)
        flow = FlowLayout(gap=GAP, row_gap=-8)
        for chip, act in (
            (self.liked, self._like),
            (self.out, self._run_out),
            (self.away, self._hide),
        ):
            chip.clicked.connect(act)
            flow.addWidget(chip)
        self.open.toggled.connect(self._unfold)
        flow.addWidget(self.open)
        column.addLayout(flow)
        column.addWidget(self.fields)
        column.addWidget(self.fault)
        self._lay_out_fields()
        state.book.changed.connect(self._show_all)
        state.points_changed.connect(self._show_all)
        self.show_sample("")

    def _lay_out_fields(self) -> None:
        grid = QGridLayout(self.fields)
        grid.setContentsMargins(0, 0, 0, 4)
        grid.setHorizontalSpacing(GAP)
        grid.setVerticalSpacing(4)
        for at, (title, field) in enumerate(
            ((self.tr("Name"), self.name), (self.tr("Price"), self.price))
        ):
            field.setAccessibleName(title)
            field.setProperty("rank", "quiet")
            field.editingFinished.connect(self._take_fields)
            grid.addWidget(words(title, size="small"), at, 0)
            grid.addWidget(field, at, 1)
        self.price.setPlaceholderText(self.tr("empty: the maker's"))
        self._unfold()

    def _unfold(self) -> None:
        self.fields.setVisible(self.open.isChecked())
        self.fault.setVisible(self.open.isChecked() and bool(self.fault.text()))

    def _take_fields(self) -> None:
        sample = self._sample()
        if sample is None:
            return
        self.fault.setText("")
        said = self._state.book.said_of(self.code)
        try:
            now = with_own_facts(said, sample, self.name.text().strip(), self.price.text().strip())
        except FramingPaletteError as error:
            self.fault.setText(in_language(str(error)))
        else:
            self._say(self.tr("Name and price of {name}"), now)
        self._unfold()

    def show_sample(self, code: str) -> None:
        """Show what is said of a sample; an empty code shows nothing."""
        self.code = code
        self._show_all()

    def _sample(self) -> Sample | None:
        catalogue = self._state.session.catalogue
        return catalogue[self.code] if self.code and self.code in catalogue else None

    def _show_all(self) -> None:
        sample = self._sample()
        self.setVisible(sample is not None)
        if sample is None:
            return
        self.whose.setText(self.tr("The shop says of {name}:").format(name=sample.name))
        self.name.setText(sample.name)
        self.price.setText("" if sample.price is None else str(sample.price))
        self.liked.setChecked(self._state.book.said_of(self.code).marks.favourite)
        self.out.setChecked(sample.in_stock is False)
        self.away.setChecked(False)

    def _like(self, is_on: bool) -> None:  # noqa: FBT001 - Qt's own form
        said = self._state.book.said_of(self.code)
        marks = replace(said.marks, favourite=is_on)
        self._say(self.tr("Favourite: {name}"), replace(said, marks=marks))

    def _run_out(self, is_on: bool) -> None:  # noqa: FBT001 - Qt's own form
        said = self._state.book.said_of(self.code)
        text = self.tr("Out of stock: {name}") if is_on else self.tr("In stock again: {name}")
        self._say(text, replace(said, edits=replace(said.edits, in_stock=not is_on)))

    def _hide(self) -> None:
        said = self._state.book.said_of(self.code)
        self._say(self.tr("Hide {name}"), replace(said, marks=replace(said.marks, hidden=True)))

    def _say(self, text: str, said: Said) -> None:
        sample = self._sample()
        if sample is not None:
            self._state.book.say(text.format(name=sample.name), self.code, said)
