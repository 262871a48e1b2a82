"""The ground of the map: the two axes, rings of chroma, and words for the directions."""

from math import cos, radians, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from framing_palette.catalogue.search import HUE_FAMILIES_DEG
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.plane import Plane
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL

_DARK_LINE, _LIGHT_LINE = QColor(0, 0, 0, 46), QColor(255, 255, 255, 52)
_DARK_INK, _LIGHT_INK = QColor("#2C2C2C"), QColor("#F1F1F1")
_STEPS = (5, 10, 20, 40)
_ROOM = 64.0  # pixels that two rings of chroma should lie apart
_WORD = (96.0, 20.0)


def draw_lines(painter: QPainter, plane: Plane, *, is_dark: bool) -> None:
    """Draw the axes and rings of equal chroma."""
    line = _LIGHT_LINE if is_dark else _DARK_LINE
    neutral = plane.at(0, 0)
    painter.setPen(QPen(line, 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawLine(QPointF(0, neutral.y()), QPointF(plane.width, neutral.y()))
    painter.drawLine(QPointF(neutral.x(), 0), QPointF(neutral.x(), plane.height))
    step = next((step for step in _STEPS if step * plane.scale >= _ROOM), _STEPS[-1])
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for ring in range(step, 141, step):
        reach = ring * plane.scale
        if reach < 2 * (plane.width + plane.height):
            painter.drawEllipse(neutral, reach, reach)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)


def draw_words(painter: QPainter, plane: Plane, *, is_dark: bool) -> None:
    """Write the name of each hue family at the edge of the view where it lies."""
    painter.setFont(type_font(SMALL))
    painter.setPen(_LIGHT_INK if is_dark else _DARK_INK)
    neutral = plane.at(0, 0)
    room = QRectF(0, 0, plane.width, plane.height).adjusted(56, 20, -56, -20)
    if not room.contains(neutral):
        return
    for family, (start, stop) in HUE_FAMILIES_DEG.items():
        middle = radians(start + ((stop - start) % 360) / 2)
        spot = _edge(room, neutral, cos(middle), -sin(middle))
        box = QRectF(spot.x() - _WORD[0] / 2, spot.y() - _WORD[1] / 2, *_WORD)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, in_language(family))


def _edge(room: QRectF, start: QPointF, dx: float, dy: float) -> QPointF:
    """Return where a ray leaves a box."""
    reach = 1e9
    if abs(dx) > 1e-9:
        reach = min(reach, ((room.right() if dx > 0 else room.left()) - start.x()) / dx)
    if abs(dy) > 1e-9:
        reach = min(reach, ((room.bottom() if dy > 0 else room.top()) - start.y()) / dy)
    return QPointF(start.x() + dx * reach, start.y() + dy * reach)
