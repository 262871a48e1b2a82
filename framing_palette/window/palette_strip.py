"""A palette as a strip whose pieces are as long as their shares."""

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from framing_palette.picture import PaletteColour
from framing_palette.window.greys import color_of
from framing_palette.window.languages import told as in_language

HEIGHT = 36
_LEAST_PX = 3.0
_GAP = 1.0


class PaletteStrip(QWidget):
    """Shows a palette; the piece under the pointer, or under the keys, is told to listeners."""

    lit = Signal(object)
    """The PaletteColour that is pointed at, or None."""

    def __init__(self) -> None:
        super().__init__()
        self._colours: tuple[PaletteColour, ...] = ()
        self._tones: list[QColor] = []
        self._at = -1
        self.setFixedHeight(HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def set_colours(self, colours: tuple[PaletteColour, ...]) -> None:
        """Show another palette."""
        self._colours = colours
        self._tones = [color_of(colour.lab) for colour in colours]
        self._at = min(self._at, len(colours) - 1)
        self.setAccessibleName(self.tr("Palette: {colours}").format(colours=palette_words(colours)))
        self.update()

    def colour_at(self, x: float) -> int:
        """Return the number of the piece at a distance from the left; -1 for none."""
        for number, (left, width) in enumerate(self._pieces()):
            if left <= x < left + width + _GAP:
                return number
        return -1

    def sizeHint(self) -> QSize:
        """Ask for the width of the shelf."""
        return QSize(200, HEIGHT)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell the piece under the pointer."""
        self._point_at(self.colour_at(event.position().x()))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Tell the piece under a finger, which does not hover."""
        self._point_at(self.colour_at(event.position().x()))
        super().mousePressEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Tell that nothing is pointed at any more."""
        super().leaveEvent(event)
        self._point_at(-1)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell that the keys have gone elsewhere."""
        super().focusOutEvent(event)
        self._point_at(-1)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from piece to piece with the arrows."""
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
        step = steps.get(Qt.Key(event.key()))
        if step is None or not self._colours:
            super().keyPressEvent(event)
            return
        self._point_at((self._at + step) % len(self._colours))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the pieces, the one that is pointed at taller than the rest."""
        painter = QPainter(self)
        for number, (left, width) in enumerate(self._pieces()):
            inset = 0.0 if number == self._at else 4.0
            piece = QRectF(left, inset, width, self.height() - 2 * inset)
            painter.fillRect(piece, self._tones[number])
        if 0 <= self._at < len(self._tones):
            left, width = self._pieces()[self._at]
            painter.setPen(QPen(self.palette().color(QPalette.ColorRole.WindowText), 2))
            painter.drawRect(QRectF(left + 1, 1, max(width - 2, 1), self.height() - 2))

    def _point_at(self, number: int) -> None:
        if number != self._at:
            self._at = number
            self.update()
            self.lit.emit(self._colours[number] if number >= 0 else None)

    def _pieces(self) -> list[tuple[float, float]]:
        """Return left edge and width of each piece; the smallest ones can still be pointed at."""
        if not self._colours:
            return []
        room = self.width() - _GAP * (len(self._colours) - 1)
        widths = [max(colour.share * room, _LEAST_PX) for colour in self._colours]
        fit = room / sum(widths)
        pieces, left = [], 0.0
        for width in widths:
            pieces.append((left, width * fit))
            left += width * fit + _GAP
        return pieces


def palette_words(colours: tuple[PaletteColour, ...], *, most: int = 8) -> str:
    """Return a palette in words, largest share first."""
    return ", ".join(f"{in_language(colour.name)} {colour.share:.0%}" for colour in colours[:most])
