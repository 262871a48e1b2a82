"""The lightness bar: how the samples spread from light to dark, and which part is shown."""

import numpy as np
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import (
    QKeyEvent,
    QLinearGradient,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from framing_palette.window.greys import surround_color
from framing_palette.window.rack.state import FULL_RANGE, RackState
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL

WIDTH = 72
_TOP = 36.0
_RAMP = 16.0
_BANDS = 20
_STEP, _BIG_STEP = 5.0, 15.0
_SLICE = 20.0
ROLE = QPalette.ColorRole


class LightnessBar(QWidget):
    """A slice of lightness that the hand or the keys move; a double click shows all again."""

    def __init__(self, state: RackState) -> None:
        super().__init__()
        self._state = state
        self._held: float | None = None
        self.setFixedWidth(WIDTH)
        self.setMinimumHeight(160)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.SizeVerCursor)
        self.setToolTip(
            self.tr("Drag to show one slice of lightness; double-click to show all  (Page keys)")
        )
        state.wanted_changed.connect(self._tell)
        state.points_changed.connect(self._tell)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for a column of the full height."""
        return QSize(WIDTH, 400)

    def slice_at(self, middle: float) -> None:
        """Show the slice round an L*."""
        half = _SLICE / 2
        middle = min(100.0 - half, max(half, middle))
        self._state.want(lightness=(round(middle - half, 1), round(middle + half, 1)))

    def show_all(self) -> None:
        """Show every lightness."""
        self._state.want(lightness=FULL_RANGE)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take the slice in hand."""
        self.slice_at(self._lightness_at(event.position().y()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the slice."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self.slice_at(self._lightness_at(event.position().y()))

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        """Show all again."""
        self.show_all()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the slice by keys."""
        step = {
            Qt.Key.Key_Up: _STEP,
            Qt.Key.Key_Down: -_STEP,
            Qt.Key.Key_PageUp: _BIG_STEP,
            Qt.Key.Key_PageDown: -_BIG_STEP,
        }.get(Qt.Key(event.key()))
        if step is not None:
            low, high = self._state.wanted.lightness
            self.slice_at((low + high) / 2 + step)
        elif event.key() in (Qt.Key.Key_Escape, Qt.Key.Key_Home):
            self.show_all()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ramp, how many samples lie at each level, and the slice."""
        painter = QPainter(self)
        palette = self.palette()
        painter.fillRect(self.rect(), palette.color(ROLE.Window))
        painter.setFont(type_font(SMALL))
        painter.setPen(palette.color(ROLE.PlaceholderText))
        middle = Qt.AlignmentFlag.AlignCenter
        painter.drawText(QRectF(0, 8, self.width(), 20), middle, self.tr("light"))
        painter.drawText(QRectF(0, self.height() - 28, self.width(), 20), middle, self.tr("dark"))
        top, height = _TOP, self._height()
        ramp = QLinearGradient(0, top, 0, top + height)
        for level in range(0, 101, 10):
            ramp.setColorAt(1 - level / 100, surround_color(level))
        painter.fillRect(QRectF(8, top, _RAMP, height), ramp)
        self._draw_counts(painter)
        self._draw_slice(painter)

    def _draw_counts(self, painter: QPainter) -> None:
        lightness = self._state.points.mean_lab[:, 0]
        counts, _ = np.histogram(lightness, bins=_BANDS, range=FULL_RANGE)
        most, room = max(1, int(counts.max())), self.width() - 8 - _RAMP - 12
        height = self._height() / _BANDS
        painter.setPen(Qt.PenStyle.NoPen)
        for band, count in enumerate(counts.tolist()):
            top = _TOP + self._height() - (band + 1) * height
            bar = QRectF(8 + _RAMP + 4, top + 1, room * count / most, height - 2)
            painter.fillRect(bar, self.palette().color(ROLE.Mid))

    def _draw_slice(self, painter: QPainter) -> None:
        low, high = self._state.wanted.lightness
        if (low, high) == FULL_RANGE:
            return
        top = _TOP + (100 - high) / 100 * self._height()
        box = QRectF(4, top, self.width() - 8, (high - low) / 100 * self._height())
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.palette().color(ROLE.Base), 4))
        painter.drawRect(box)
        painter.setPen(QPen(self.palette().color(ROLE.Highlight), 2))
        painter.drawRect(box)

    def _height(self) -> float:
        return self.height() - 2 * _TOP

    def _lightness_at(self, y: float) -> float:
        return 100 - (y - _TOP) / max(1.0, self._height()) * 100

    def _tell(self) -> None:
        low, high = self._state.wanted.lightness
        if (low, high) == FULL_RANGE:
            told = self.tr("all")
        else:
            told = self.tr("L* {low:.0f} to {high:.0f}").format(low=low, high=high)
        self.setAccessibleName(self.tr("Lightness shown: {told}").format(told=told))
        self.update()
