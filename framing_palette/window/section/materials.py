"""How each part of a section is painted: paper over core, end grain, glass, foam."""

from collections.abc import Callable
from itertools import pairwise
from math import hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter, QPainterPath, QPen, QPolygonF

from framing_palette.window.greys import surround_color

_FACING_PX = 2.4
_CORE_LIGHTNESS = 95
_FOAM_LIGHTNESS = 88
_INK_LIGHTNESS = 22
_DARKER = 125


def paint_part(painter: QPainter, stuff: str, outline: QPolygonF, tone: QColor) -> None:
    """Paint one part as what it is made of; ``tone`` is the colour of its sample."""
    painter.save()
    path = QPainterPath()
    path.addPolygon(outline)
    path.closeSubpath()
    painter.setPen(Qt.PenStyle.NoPen)
    paint = _PAINTS.get(stuff, _paint_plain)
    painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
    paint(painter, outline, tone)
    painter.restore()
    painter.save()
    if stuff in ("board", "strip", "wood"):
        _paint_facing(painter, stuff, outline, tone)
    painter.setPen(QPen(surround_color(_INK_LIGHTNESS), 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(outline)
    painter.restore()


def _paint_plain(painter: QPainter, outline: QPolygonF, tone: QColor) -> None:
    painter.fillRect(outline.boundingRect(), tone)


def _paint_core(painter: QPainter, outline: QPolygonF, _tone: QColor) -> None:
    painter.fillRect(outline.boundingRect(), surround_color(_CORE_LIGHTNESS))


def _paint_strip(painter: QPainter, outline: QPolygonF, tone: QColor) -> None:
    painter.fillRect(outline.boundingRect(), surround_color(_CORE_LIGHTNESS))
    _hatch(painter, outline.boundingRect(), QColor(tone.darker(_DARKER)), apart=6.0, lean=0.6)


def _paint_wood(painter: QPainter, outline: QPolygonF, tone: QColor) -> None:
    """Paint end grain: rings round a heart that lies outside the piece."""
    box = outline.boundingRect()
    painter.fillRect(box, tone.lighter(112))
    painter.setPen(QPen(tone.darker(_DARKER), 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    heart = QPointF(box.left() - box.width() * 0.35, box.bottom() + box.height() * 0.8)
    reach = hypot(box.right() - heart.x(), box.top() - heart.y())
    ring, step = 8.0, 6.0
    while ring < reach:
        painter.drawEllipse(heart, ring, ring)
        step = 5.0 + (step * 7.3) % 4.0
        ring += step


def _paint_glass(painter: QPainter, outline: QPolygonF, _tone: QColor) -> None:
    box = outline.boundingRect()
    shade = QLinearGradient(box.topLeft(), box.bottomLeft())
    shade.setColorAt(0.0, QColor(255, 255, 255, 150))
    shade.setColorAt(1.0, QColor(215, 215, 215, 150))
    painter.fillRect(box, shade)
    painter.setPen(QPen(QColor(255, 255, 255, 220), 1.2))
    x = box.left() + 12
    while x < box.right():
        for shift, long in ((0.0, 0.8), (6.0, 0.5)):
            start = QPointF(x + shift, box.bottom() - 2)
            painter.drawLine(start, start + QPointF(box.height() * long, -box.height() * long))
        x += 68


def _paint_foam(painter: QPainter, outline: QPolygonF, _tone: QColor) -> None:
    box = outline.boundingRect()
    painter.fillRect(box, surround_color(_FOAM_LIGHTNESS))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(surround_color(72))
    row, y = 0, box.top() + 5
    while y < box.bottom() - 2:
        x = box.left() + 5 + (row % 2) * 5
        while x < box.right():
            painter.drawEllipse(QPointF(x, y), 0.9, 0.9)
            x += 10
        row, y = row + 1, y + 6
    painter.setBrush(surround_color(_CORE_LIGHTNESS))
    painter.drawRect(QRectF(box.left(), box.top(), box.width(), 2))
    painter.drawRect(QRectF(box.left(), box.bottom() - 2, box.width(), 2))


def _hatch(painter: QPainter, box: QRectF, ink: QColor, *, apart: float, lean: float) -> None:
    painter.setPen(QPen(ink, 0.8))
    x = box.left() - box.height() * lean
    while x < box.right():
        painter.drawLine(QPointF(x, box.bottom()), QPointF(x + box.height() * lean, box.top()))
        x += apart


def _paint_facing(painter: QPainter, stuff: str, outline: QPolygonF, tone: QColor) -> None:
    """Draw the paper, cover or finish along what faces the viewer."""
    points = [outline.at(place) for place in range(outline.count())]
    if stuff == "board":
        facing = [points[-1], points[-2]]
    elif stuff == "strip":
        facing = points[:-1]
    else:
        facing = points[: _before_back(points)]
    pen = QPen(tone, _FACING_PX + 1.2 if stuff != "wood" else _FACING_PX)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    for start, end in pairwise(facing):
        painter.drawLine(start + QPointF(0, 1), end + QPointF(0, 1))


def _before_back(points: list[QPointF]) -> int:
    """Return how many points a frame's outline has before it turns to the wall."""
    lowest = max(point.y() for point in points)
    return next(place for place, point in enumerate(points) if point.y() >= lowest - 0.5)


_PAINTS: dict[str, Callable[[QPainter, QPolygonF, QColor], None]] = {
    "board": _paint_core,
    "core": _paint_core,
    "strip": _paint_strip,
    "wood": _paint_wood,
    "glass": _paint_glass,
    "backing": _paint_foam,
}
