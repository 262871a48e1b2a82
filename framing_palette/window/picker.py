"""A choice from a list that opens, for more values than chips have room for."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QWheelEvent
from PySide6.QtWidgets import QComboBox, QSizePolicy

from framing_palette.window.icons import draw_icon


class Picker(QComboBox):
    """One of many values; the wheel passes over it so that what it lies on can scroll."""

    chosen = Signal(object)

    def __init__(self, told: str) -> None:
        super().__init__()
        self.setAccessibleName(told)
        self.view().setAccessibleName(told)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setMinimumWidth(96)
        self.activated.connect(lambda at: self.chosen.emit(self.itemData(at)))

    def show_values(self, values: Sequence[tuple[object, str]], taken: object) -> None:
        """Offer values with their words, one of them being taken."""
        with QSignalBlocker(self):
            self.clear()
            for value, text in values:
                self.addItem(text, value)
        self.show_value(taken)

    def show_value(self, value: object) -> None:
        """Show a value as taken; an unknown one shows the first."""
        with QSignalBlocker(self):
            self.setCurrentIndex(max(0, self.findData(value)))

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to what it lies on."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the chevron that the theme leaves out."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.width() - 26, (self.height() - 16) / 2, 16, 16)
        draw_icon(painter, "down", box, self.palette().color(QPalette.ColorRole.PlaceholderText))
