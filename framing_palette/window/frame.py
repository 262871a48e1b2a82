"""The frame that stands on the screen at once, while the libraries behind it are loaded.

It knows nothing of pictures and samples, so that it costs hardly more than an empty window.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QCloseEvent, QColor, QPainter, QPaintEvent, QPalette, QPolygonF
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, JOB_LINE_HEIGHT, PATH_WIDTH

FIRST_SIZE = (1366, 768)
_MARK = 64.0


class Frame(QWidget):
    """The top-level window; empty chrome first, then the window proper fills it."""

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle("Framing Palette")
        self._inside: QWidget | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        screen = QApplication.primaryScreen().availableGeometry()
        width, height = FIRST_SIZE
        self.resize(min(width, screen.width()), min(height, screen.height()))

    def put_in(self, inside: QWidget) -> None:
        """Fill the frame."""
        self._inside = inside
        self._column.addWidget(inside)
        inside.setFocus(Qt.FocusReason.OtherFocusReason)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close what is inside as well, which waits for its background work."""
        if self._inside is not None:
            self._inside.close()
        super().closeEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the chrome with our mark in the middle."""
        if self._inside is not None:
            return
        painter = QPainter(self)
        palette = self.palette()
        painter.fillRect(self.rect(), palette.color(QPalette.ColorRole.Window))
        chrome = palette.color(QPalette.ColorRole.AlternateBase)
        painter.fillRect(0, 0, PATH_WIDTH, self.height(), chrome)
        painter.fillRect(0, 0, self.width(), JOB_LINE_HEIGHT, chrome)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        quiet = palette.color(QPalette.ColorRole.PlaceholderText)
        middle = QPointF((self.width() + PATH_WIDTH) / 2, self.height() / 2)
        draw_mark(painter, middle, _MARK, quiet)
        painter.setFont(type_font(BODY))
        painter.setPen(quiet)
        line = QRectF(PATH_WIDTH, middle.y() + _MARK * 0.75, self.width() - PATH_WIDTH, 24)
        painter.drawText(line, Qt.AlignmentFlag.AlignHCenter, self.tr("Setting out the samples"))


def draw_mark(painter: QPainter, middle: QPointF, side: float, ink: QColor) -> None:
    """Draw our mark: two corner pieces, one lying in the other."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    left, top = middle.x() - side / 2, middle.y() - side / 2
    for start, reach, width in ((0.0, 1.0, 0.2), (0.34, 0.66, 0.12)):
        x, y = left + start * side, top + start * side
        long, thick = reach * side, width * side
        corner = [(0, 0), (long, 0), (long, thick), (thick, thick), (thick, long), (0, long)]
        painter.drawPolygon(QPolygonF([QPointF(x + dx, y + dy) for dx, dy in corner]))
