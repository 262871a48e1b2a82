"""Two cards turned away from each other: the second is filled without seeing the first."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QGridLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.design import Reading
from framing_palette.errors import FramingPaletteError, LengthError
from framing_palette.units import Length, LengthUnit
from framing_palette.window.controls import Chip, push_button, words
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP, MARGIN, SECTION

_FIELDS = ("width", "height", "first", "second")
MOST_INITIALS = 12


@dataclass(frozen=True, slots=True)
class Shown:
    """What a card shows: a title, a sentence, and the reading once both are in."""

    title: str
    told: str
    reading: Reading | None = None
    is_open: bool = False


class MeasuringCard(QWidget):
    """One measurement: open to be filled, turned away, or read."""

    done = Signal(object)
    """The Reading that was filled in."""

    def __init__(self, number: int, clock: Callable[[], datetime]) -> None:
        super().__init__()
        self._number = number
        self._clock = clock
        self._unit: LengthUnit = "in"
        self._is_open = False
        self.title = words(size="heading", wrap=True)
        self.told = words(quiet=True, wrap=True)
        self.edits = {name: QLineEdit() for name in _FIELDS}
        self.initials = QLineEdit()
        self.diagonals = Chip(self.tr("Diagonals too"))
        self.fault = words(size="small", wrap=True)
        self.finish = push_button(self.tr("Done: turn it away"), rank="first")
        self._form = QWidget()
        self._diagonal_rows: list[QWidget] = []
        self._read = words(size="display", wrap=True)
        self._lay_out()
        self.finish.clicked.connect(self._finish)
        self.diagonals.toggled.connect(self._show_diagonals)
        for edit in (*self.edits.values(), self.initials):
            edit.returnPressed.connect(self._finish)

    def show_state(self, shown: Shown, unit: LengthUnit, denominator: int) -> None:
        """Show the card open, turned away, or with its figures."""
        self._unit = unit
        was_open, self._is_open = self._is_open, shown.is_open
        self.title.setText(shown.title)
        self.told.setText(shown.told)
        self.setAccessibleName(f"{shown.title}. {shown.told}")
        self._form.setVisible(shown.is_open)
        self._read.setVisible(shown.reading is not None)
        if was_open and not shown.is_open:
            self._empty()
        if shown.reading is not None:
            self._read.setText(_pair(shown.reading, unit, denominator))
            if shown.reading.diagonals:
                first, second = (
                    in_language(d.show(unit, denominator)) for d in shown.reading.diagonals
                )
                told = self.tr("Diagonals {first} and {second}").format(first=first, second=second)
                self.told.setText(f"{shown.told}\n{told}")
        self.update()

    def say(self, fault: str) -> None:
        """Say what cannot be taken."""
        self.fault.setText(fault)
        self.fault.setVisible(bool(fault))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the card, and its back when it is turned away."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        role = QPalette.ColorRole
        is_read = not self._read.isHidden()
        ground = role.Base if self._is_open or is_read else role.AlternateBase
        painter.setPen(QPen(palette.color(role.Dark if self._is_open else role.Mid), 1))
        painter.setBrush(palette.color(ground))
        box = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.drawRoundedRect(box, 4, 4)
        if not self._is_open and not is_read:
            painter.setClipRect(box.adjusted(SECTION, self.told.geometry().bottom() + 16, -24, -24))
            painter.setPen(QPen(palette.color(role.Mid), 1))
            x = box.left() - box.height()
            while x < box.right():
                painter.drawLine(int(x), int(box.bottom()), int(x + box.height()), int(box.top()))
                x += 12

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(SECTION, SECTION, SECTION, SECTION)
        column.setSpacing(GAP)
        column.addWidget(self.title)
        column.addWidget(self.told)
        column.addWidget(self._read)
        grid = QGridLayout(self._form)
        grid.setContentsMargins(0, MARGIN, 0, 0)
        grid.setHorizontalSpacing(MARGIN)
        grid.setVerticalSpacing(GAP)
        self._add(grid, 0, 0, self.tr("Width"), self.edits["width"])
        self._add(grid, 0, 1, self.tr("Height"), self.edits["height"])
        self.initials.setMaxLength(MOST_INITIALS)
        self._add(grid, 1, 0, self.tr("Initials"), self.initials)
        grid.addWidget(self.diagonals, 3, 1)
        down = self.tr("From top left"), self.tr("From top right")
        for place, (name, told) in enumerate(zip(("first", "second"), down, strict=True)):
            label = self._add(grid, 2, place, told, self.edits[name])
            self._diagonal_rows += [label, self.edits[name]]
        grid.addWidget(self.fault, 6, 0, 1, 2)
        grid.addWidget(self.finish, 7, 0, 1, 2)
        column.addWidget(self._form)
        column.addStretch(1)
        self.fault.hide()
        self._show_diagonals(on=False)

    def _add(self, grid: QGridLayout, row: int, column: int, told: str, edit: QLineEdit) -> QWidget:
        label = words(told, size="small")
        said = (
            self.tr("{what}, first measurement")
            if self._number == 1
            else self.tr("{what}, second measurement")
        )
        edit.setAccessibleName(said.format(what=told))
        grid.addWidget(label, 2 * row, column)
        grid.addWidget(edit, 2 * row + 1, column)
        return label

    def _show_diagonals(self, on: bool) -> None:  # noqa: FBT001 - a signal's own form
        for widget in self._diagonal_rows:
            widget.setVisible(on)

    def _finish(self) -> None:
        try:
            reading = self._reading()
        except FramingPaletteError as error:
            self.say(in_language(str(error)))
            return
        self.say("")
        self.done.emit(reading)

    def _reading(self) -> Reading:
        diagonals = None
        if self.diagonals.isChecked():
            diagonals = self._length("first"), self._length("second")
        return Reading(
            width=self._length("width"),
            height=self._length("height"),
            by=self.initials.text().strip(),
            at=self._clock(),
            diagonals=diagonals,
        )

    def _length(self, name: str) -> Length:
        edit = self.edits[name]
        try:
            return Length.parse(edit.text(), self._unit)
        except LengthError:
            edit.setFocus()
            field = edit.accessibleName()
            raise LengthError(edit.text(), field=field) from None

    def _empty(self) -> None:
        for edit in (*self.edits.values(), self.initials):
            edit.clear()
        self.diagonals.setChecked(False)
        self.say("")


def _pair(reading: Reading, unit: LengthUnit, denominator: int) -> str:
    width, height = reading.width, reading.height
    return in_language(f"{width.figures(unit, denominator)} × {height.show(unit, denominator)}")
