"""Rows of a form on the shelf: a name, a control, and what it means in a sentence."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length, LengthUnit
from framing_palette.window.controls import Chip, rule, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP, HIT, MARGIN, SECTION, WIDE_MARGIN


class Choice(QWidget):
    """One of a few values, each a chip."""

    picked = Signal(object)

    def __init__(self, name: str, values: Sequence[tuple[object, str]]) -> None:
        super().__init__()
        self.chips: dict[object, QAbstractButton] = {}
        flow = FlowLayout(gap=GAP, row_gap=-8)
        self.setLayout(flow)
        group = QButtonGroup(self)
        for value, text in values:
            chip = Chip(text, told=f"{name}: {text}")
            chip.clicked.connect(lambda _on=False, value=value: self.picked.emit(value))
            group.addButton(chip)
            self.chips[value] = chip
            flow.addWidget(chip)

    def show_value(self, value: object) -> None:
        """Press the chip of a value."""
        if value in self.chips:
            self.chips[value].setChecked(True)


class LengthField(QWidget):
    """A length as typed; what cannot be read is said below it and changes nothing."""

    taken = Signal(object)

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self._unit: LengthUnit = "in"
        self.edit = QLineEdit()
        self.edit.setAccessibleName(name)
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.edit)
        column.addWidget(self.fault)
        self.edit.setMinimumHeight(HIT)  # whole on a page that is laid out before it is dressed
        self.edit.editingFinished.connect(self._take)

    def show_value(self, length: Length | None, unit: LengthUnit, denominator: int) -> None:
        """Show a length in a unit; bare numbers typed later are of that unit."""
        self._unit = unit
        self._say("")
        self.edit.setText(in_language(length.show(unit, denominator)) if length is not None else "")

    def _take(self) -> None:
        text = self.edit.text().removeprefix("about ").removeprefix(self.tr("about "))
        try:
            length = Length.parse(text, self._unit)
        except FramingPaletteError as error:
            self._say(in_language(str(error)))
            return
        self._say("")
        self.taken.emit(length)

    def say(self, fault: str) -> None:
        """Say below the field what is wrong with what was typed."""
        self._say(fault)

    def _say(self, fault: str) -> None:
        self.fault.setText(fault)
        self.fault.setVisible(bool(fault))


class FormShelf(QWidget):
    """A heading and rows that scroll."""

    def __init__(self, title: str, told: str) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(4)
        self._head = QHBoxLayout()
        self._head.setContentsMargins(WIDE_MARGIN, 0, GAP, 0)
        self._head.addWidget(words(title, size="heading"), 1)
        column.addLayout(self._head)
        if told:
            line = words(told, size="small", quiet=True, wrap=True)
            line.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
            column.addWidget(line)
        column.addSpacing(GAP)
        inside = QWidget()
        self._rows = QVBoxLayout(inside)
        self._rows.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, SECTION)
        self._rows.setSpacing(4)
        self._area = scrolled(inside)
        column.addWidget(self._area, 1)

    def add_to_head(self, control: QWidget) -> None:
        """Add a control at the right of the heading."""
        self._head.addWidget(control)

    def section(self, title: str) -> None:
        """Begin a part of the form."""
        self._rows.addSpacing(GAP)
        self._rows.addWidget(rule())
        self._rows.addSpacing(GAP)
        self._rows.addWidget(words(title, strong=True))

    def row(self, name: str, control: QWidget, told: str = "") -> None:
        """Add a control under its name, with what it means below it."""
        if name:
            self._rows.addSpacing(GAP)
            self._rows.addWidget(words(name, size="small"))
        self._rows.addWidget(control)
        if told:
            self._rows.addWidget(words(told, size="small", quiet=True, wrap=True))

    def reveal(self, control: QWidget) -> None:
        """Scroll until a control is seen, its end last."""
        self._area.ensureWidgetVisible(control)

    def end(self) -> None:
        """Leave the rest of the shelf empty."""
        self._rows.addStretch(1)


def scrolled_column(page: QWidget, gap: int = GAP) -> QVBoxLayout:
    """Return the column of a page that scrolls as a whole; the page must be without a layout."""
    inside = QWidget()
    column = QVBoxLayout(inside)
    column.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, SECTION)
    column.setSpacing(gap)
    around = QVBoxLayout(page)
    around.setContentsMargins(0, 0, 0, 0)
    around.addWidget(scrolled(inside))
    return column


def scrolled(inside: QWidget) -> QScrollArea:
    """Return a widget in an area that scrolls up and down."""
    area = QScrollArea()
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(inside)
    return area
