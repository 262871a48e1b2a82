"""The price book on the shelf: every field of it, and what it makes of the designs at once.

It lies on the shelf, which is the designer's side: the client never looks at it.
"""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Price, PriceBook
from framing_palette.design.price_book_edits import (
    with_book_field,
    with_charge_field,
    with_moved_charge,
    with_new_charge,
    without_charge,
)
from framing_palette.errors import FramingPaletteError
from framing_palette.window import building
from framing_palette.window.charge_row import ChargeRow
from framing_palette.window.controls import push_button, rule, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.price_fields import TextField
from framing_palette.window.price_keeper import PriceKeeper
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN


class PriceShelf(QWidget):
    """The shop's charges and how a total is formed."""

    left = Signal()

    def __init__(self, session: Session, keeper: PriceKeeper) -> None:
        super().__init__()
        self._session = session
        self._keeper = keeper
        self.rows: list[ChargeRow] = []
        self.totals = words(strong=True, wrap=True)
        self.told = words(size="small", quiet=True, wrap=True)
        self.notice = words(size="small", wrap=True)
        self.back = push_button(self.tr("Back"), told=self.tr("Back to the papers"))
        self.add = push_button(self.tr("Add a charge"))
        self.open_button = push_button(self.tr("Take over a file"))
        self.fields = self._head_fields()
        self.tax = Choice(
            self.tr("The tax is"),
            ((False, self.tr("Added")), (True, self.tr("Within the rates"))),
        )
        self._lay_out()
        self._wire()
        self.follow()

    def follow(self) -> None:
        """Show the book as it is now, and what it makes of the designs."""
        book, prices = self._keeper.book, self._keeper.prices
        self._inside.setVisible(book is not None)
        if book is None or prices is None:
            self.totals.setText("")
            self.told.setText(self.tr("The price book is being read."))
            return
        self.notice.setText(self._notice(in_language(prices.fault)))
        self._show_price(book)
        for name, field in self.fields.items():
            value = getattr(book, name)
            field.show_text(value if isinstance(value, str) else f"{value:f}")
        self.tax.show_value(book.tax_included)

    def _notice(self, fault: str) -> str:
        said = self.tr("Kept for this shop. Every change holds at once and can be undone.")
        if self._keeper.is_invented:
            said = self.tr(
                "All figures here are invented: put your own in their place. Every change holds "
                "at once and can be undone."
            )
        if fault:
            mend = self.tr(
                "{fault} The example stands in its place; once you change it, the old file is "
                "set aside, not lost."
            ).format(fault=fault)
            said = f"! {mend}"
        return said

    def _show_price(self, book: PriceBook) -> None:
        price = self._tell_totals()
        while len(self.rows) > len(book.charges):
            row = self.rows.pop()
            self._rows.removeWidget(row)
            row.hide()
            row.deleteLater()
        while len(self.rows) < len(book.charges):
            self._add_row(len(self.rows))
        for place, (row, charge) in enumerate(zip(self.rows, book.charges, strict=True)):
            lines = price.lines if price else ()
            own = tuple(line for line in lines if line.charge == place)
            row.show_charge(charge, book.currency, own)

    def _tell_totals(self) -> Price | None:
        """Say what every design costs, and how the one in hand comes about; return its price."""
        said, found = [], None
        for number, option in enumerate(building.options_of(self._session)):
            name = option.design.name or building.NAMES[number]
            try:
                price = self._keeper.price(option.design)
            except FramingPaletteError as error:
                said.append(f"{name}: {in_language(str(error))}")
                continue
            said.append(f"{name}: {price.total.show()}")
            if number == self._number():
                found = price
        self.totals.setText("\n".join(said))
        self.told.setText(self._how(found, bool(said)))
        return found

    def _how(self, price: Price | None, has_designs: bool) -> str:  # noqa: FBT001 - read here only
        if price is None:
            if has_designs:
                return self.tr("The design in hand cannot be priced yet.")
            return self.tr("Build a design; what it costs stands here.")
        name = building.options_of(self._session)[self._number()].design.name
        said = self.tr("{name}: net {net}").format(name=name, net=price.net.show())
        if price.tax_words:
            said += self.tr(", {tax}: {amount}").format(
                tax=in_language(price.tax_words), amount=price.tax.show()
            )
        rest = [
            f"{in_language(line.title)}: {in_language(line.how)}"
            for line in price.lines
            if line.charge is None
        ]
        return "\n".join([said, *rest])

    def _number(self) -> int:
        """Return which design is explained: the one that was chosen, else the one in hand."""
        job = self._session.desk.job
        if job is not None and job.chosen is not None:
            return job.chosen
        return building.number_in_hand(self._session)

    def _head_fields(self) -> dict[str, TextField]:
        return {
            "currency": TextField(self.tr("Currency"), self.tr("Three letters, like EUR.")),
            "minimum": TextField(self.tr("Least net price of a job")),
            "tax_name": TextField(self.tr("Name of the tax")),
            "tax_percent": TextField(self.tr("Tax, %")),
            "round_line_to": TextField(self.tr("Round each line to")),
            "round_total_to": TextField(self.tr("Round the total to")),
            "private_title": TextField(
                self.tr("One line for all that is private"),
                self.tr("The client sees the sum of the private lines under this title."),
            ),
        }

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(words(self.tr("Price book"), size="heading"), 1)
        head.addWidget(self.back)
        self._inside = QWidget()
        column = QVBoxLayout(self._inside)
        column.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, SECTION)
        column.setSpacing(4)
        column.addWidget(self.notice)
        column.addSpacing(GAP)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(0)
        column.addLayout(self._rows)
        column.addSpacing(GAP)
        column.addWidget(self.add)
        column.addSpacing(MARGIN)
        column.addWidget(rule())
        column.addSpacing(GAP)
        column.addWidget(words(self.tr("The total"), strong=True))
        for name, field in self.fields.items():
            column.addWidget(field)
            if name == "tax_percent":
                column.addSpacing(GAP)
                column.addWidget(words(self.tr("The tax is"), size="small"))
                column.addWidget(self.tax)
        column.addSpacing(MARGIN)
        column.addWidget(self.open_button)
        column.addStretch(1)
        top = QVBoxLayout()
        top.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, GAP)
        top.setSpacing(4)
        top.addLayout(head)
        for label in (self.totals, self.told):
            top.addWidget(label)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, MARGIN, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(top)
        whole.addWidget(rule())
        whole.addWidget(scrolled(self._inside), 1)

    def _wire(self) -> None:
        self.back.clicked.connect(self.left)
        self.add.clicked.connect(self._add_charge)
        self.open_button.clicked.connect(self._ask_for_file)
        self.tax.picked.connect(lambda value: self._set_head("tax_included", value))
        for name, field in self.fields.items():
            field.taken.connect(lambda text, name=name: self._set_head(name, text))
        for signal in (
            self._keeper.changed,
            self._session.job_changed,
            self._session.in_hand_changed,
            self._session.catalogue_changed,
        ):
            signal.connect(self._follow_if_seen)

    def _follow_if_seen(self) -> None:
        if self.isVisible():
            self.follow()

    def _add_row(self, place: int) -> None:
        row = ChargeRow()
        row.changed.connect(lambda name, value: self._set_charge(place, name, value))
        row.asked.connect(lambda what: self._do(place, what))
        row.opened.connect(lambda on: self._close_others(place) if on else None)
        self.rows.append(row)
        self._rows.addWidget(row)

    def _close_others(self, place: int) -> None:
        for number, row in enumerate(self.rows):
            if number != place:
                row.edit.setChecked(False)

    def _set_head(self, name: str, value: object) -> None:
        book = self._keeper.book
        if book is None:
            return
        field = self.fields.get(name)
        try:
            changed = with_book_field(book, name, value)
        except FramingPaletteError as error:
            if field is not None:
                field.say(in_language(str(error)))
            return
        told = field.name.text() if field is not None else self.tr("The tax is")
        self._edit(self.tr("Price book: {field}").format(field=told), changed)

    def _set_charge(self, place: int, name: str, value: object) -> None:
        book = self._keeper.book
        if book is None:
            return
        try:
            changed = with_charge_field(book, place, name, value)
        except FramingPaletteError as error:
            self.rows[place].say(name, in_language(str(error)))
            return
        title = changed.charges[place].title
        self._edit(self.tr("Price of {title}").format(title=title), changed)

    def _do(self, place: int, what: str) -> None:
        book = self._keeper.book
        if book is None:
            return
        title = book.charges[place].title
        if what == "drop":
            self.rows[place].edit.setChecked(False)
            changed = without_charge(book, place)
            self._edit(self.tr("Take {title} out of the price book").format(title=title), changed)
            return
        to = place + (1 if what == "down" else -1)
        if 0 <= to < len(book.charges):
            self._edit(
                self.tr("Move {title} in the price book").format(title=title),
                with_moved_charge(book, place, to),
            )
            self.rows[to].edit.setChecked(True)

    def _add_charge(self) -> None:
        if self._keeper.book is not None:
            changed = with_new_charge(self._keeper.book, self.tr("New charge"))
            self._edit(self.tr("Add a charge to the price book"), changed)
            self.rows[-1].edit.setChecked(True)

    def _edit(self, words_: str, book: PriceBook) -> None:
        self._keeper.edit(words_, book)
        self.follow()

    def _ask_for_file(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, self.tr("A price book"), filter=self.tr("Price books (*.toml)")
        )
        if name:
            self.take_over(Path(name))

    def take_over(self, path: Path) -> None:
        """Take the prices of a file; what is wrong with it is said in place."""
        self._keeper.open_file(path, lambda error: self.notice.setText(f"! {error}"))
