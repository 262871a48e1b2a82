"""The scale bar: a round length, as long on the screen as it is on the art."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import MARGIN, SMALL

_ROUND_MM = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
_ROUND_INCHES = (1, 2, 3, 6, 12, 24, 36)
_LONGEST_PX = 128.0
_MM_PER_INCH = 25.4
_TURNING_LIGHTNESS = 55


class ScaleLayer(Layer):
    """Draws a bar in the lower left corner, or says that the scale is not known."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        session.picture_changed.connect(self.touch_up_all)

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw the bar with its length."""
        if self._session.picture is None:
            return
        bottom = place.canvas_height - 8
        light = self._session.preferences.surround < _TURNING_LIGHTNESS
        ink = QColor(236, 236, 236) if light else QColor(28, 28, 28)
        painter.setPen(ink)
        painter.setFont(type_font(SMALL))
        if not place.is_scale_known:
            box = QRectF(MARGIN, bottom - 24, 320, 24)
            said = self.tr("The size of the art is not known yet")
            painter.drawText(box, Qt.AlignmentFlag.AlignVCenter, said)
            return
        words, length_px = self._bar(place)
        painter.drawText(QRectF(MARGIN, bottom - 28, 200, 20), 0, words)
        painter.fillRect(QRectF(MARGIN, bottom - 4, length_px, 2), ink)
        for x in (MARGIN, MARGIN + length_px - 2):
            painter.fillRect(QRectF(x, bottom - 8, 2, 6), ink)

    def _bar(self, place: Place) -> tuple[str, float]:
        if self._session.preferences.unit == "in":
            px_per_inch = place.px_per_mm * _MM_PER_INCH
            length = longest_round(_ROUND_INCHES, px_per_inch)
            return f"{length} in", length * px_per_inch
        length = longest_round(_ROUND_MM, place.px_per_mm)
        return f"{length} mm", length * place.px_per_mm


def longest_round(lengths: tuple[int, ...], px_per_unit: float) -> int:
    """Return the longest round length whose bar stays short on the screen."""
    fitting = [length for length in lengths if length * px_per_unit <= _LONGEST_PX]
    return fitting[-1] if fitting else lengths[0]
