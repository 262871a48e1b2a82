"""The picture's colours above the rack: rings as large as their shares, broken where a gap is."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import sqrt

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from framing_palette.ranking.gaps import Reach, Relation
from framing_palette.window.greys import color_of
from framing_palette.window.rack.plane import Plane

DARK, LIGHT = QColor("#2C2C2C"), QColor("#F1F1F1")  # the lines of the focus ring
_LEAST, _MOST = 11.0, 30.0
_QUIET_RADIUS = 7.0


@dataclass(frozen=True, slots=True)
class Ring:
    """One colour of the picture on the screen; ``place`` counts among the reaches."""

    place: int
    centre: QPointF
    radius: float
    reach: Reach


def rings(reaches: Sequence[Reach], plane: Plane, *, with_quiet: bool) -> Iterator[Ring]:
    """Return the rings in a view, the picture's own colours always, their relations if wanted."""
    for place, reach in enumerate(reaches):
        is_own = reach.relation is Relation.SAME
        if is_own or (with_quiet and reach.is_gap):
            radius = radius_of(reach) if is_own else _QUIET_RADIUS
            yield Ring(place, plane.at(reach.lab[1], reach.lab[2]), radius, reach)


def radius_of(reach: Reach) -> float:
    """Return the radius of a ring in pixels: its area goes with the share."""
    return float(min(_MOST, _LEAST + 34.0 * sqrt(max(0.0, reach.share))))


def draw_ring(painter: QPainter, ring: Ring, *, is_chosen: bool) -> None:
    """Draw a ring in its own colour between a dark and a light line; a gap's ring is broken."""
    centre, radius = ring.centre, ring.radius
    painter.setBrush(Qt.BrushStyle.NoBrush)
    thick = 5.0 if ring.reach.relation is Relation.SAME else 3.5
    for color, width in ((LIGHT, thick + 4.0), (DARK, thick + 2.0)):
        painter.setPen(QPen(color, width))
        painter.drawEllipse(centre, radius, radius)
    pen = QPen(color_of(ring.reach.lab), thick)
    painter.setPen(pen)
    painter.drawEllipse(centre, radius, radius)
    if ring.reach.is_gap:
        _break_up(painter, centre, radius, thick)
    if is_chosen:
        for color, out in ((DARK, 6.0), (LIGHT, 8.0)):
            painter.setPen(QPen(color, 2.0))
            painter.drawEllipse(centre, radius + out, radius + out)


def _break_up(painter: QPainter, centre: QPointF, radius: float, thick: float) -> None:
    """Cut a ring into pieces by bars across it, and put a small cross in its middle."""
    painter.save()
    painter.translate(centre)
    for turn in range(4):
        painter.save()
        painter.rotate(45.0 + 90.0 * turn)
        bar = QRectF(radius - thick, -2.5, thick * 2, 5.0)
        painter.fillRect(bar.adjusted(0, -1, 0, 1), DARK)
        painter.fillRect(bar, LIGHT)
        painter.restore()
    for color, width in ((LIGHT, 4.0), (DARK, 1.8)):
        painter.setPen(QPen(color, width))
        painter.drawLine(QPointF(-4, -4), QPointF(4, 4))
        painter.drawLine(QPointF(-4, 4), QPointF(4, -4))
    painter.restore()
