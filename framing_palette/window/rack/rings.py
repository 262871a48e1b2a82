"""The picture's colours above the rack: rings as large as their shares, broken where a gap is."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen

from framing_palette.ranking.gaps import Reach, Relation
from framing_palette.window.greys import color_of
from framing_palette.window.rack.plane import Plane

DARK, LIGHT = QColor("#2C2C2C"), QColor("#F1F1F1")  # the lines of the focus ring
_LEAST, _MOST = 11.0, 30.0
_QUIET_RADIUS = 7.0
_SPARE = 12.0
_MOST_SPRITES = 400


@dataclass(frozen=True, slots=True)
class Ring:
    """One colour of the picture on the screen; ``place`` counts among the reaches."""

    place: int
    centre: QPointF
    radius: float
    reach: Reach


def rings(
    reaches: Sequence[Reach],
    plane: Plane,
    *,
    lightness: tuple[float, float],
    with_quiet: bool,
) -> tuple[Ring, ...]:
    """Return the rings of a slice of lightness, large ones first so that none is covered.

    The picture's own colours are always there, their quieter relations where they are wanted and
    missing on the rack.
    """
    low, high = lightness
    found = [
        Ring(place, plane.at(reach.lab[1], reach.lab[2]), radius_of(reach), reach)
        for place, reach in enumerate(reaches)
        if low <= reach.lab[0] <= high
        and (reach.relation is Relation.SAME or (with_quiet and reach.is_gap))
    ]
    return tuple(sorted(found, key=lambda ring: -ring.radius))


def radius_of(reach: Reach) -> float:
    """Return the radius of a ring in pixels: it grows with the root of the share."""
    if reach.relation is not Relation.SAME:
        return _QUIET_RADIUS
    return float(min(_MOST, _LEAST + 34.0 * sqrt(max(0.0, reach.share))))


class Sprites:
    """Rings drawn once each; a wide antialiased line is too dear for every frame."""

    def __init__(self) -> None:
        self._images: dict[tuple[object, ...], QImage] = {}

    def draw(self, painter: QPainter, ring: Ring, *, is_chosen: bool) -> None:
        """Draw a ring where it stands."""
        ratio = painter.device().devicePixelRatioF()
        key = (ring.reach.lab, ring.radius, ring.reach.is_gap, is_chosen, ratio)
        image = self._images.get(key)
        half = ring.radius + _SPARE
        if image is None:
            if len(self._images) > _MOST_SPRITES:
                self._images.clear()
            image = self._images[key] = _sprite(ring, half, ratio, is_chosen=is_chosen)
        painter.drawImage((ring.centre - QPointF(half, half)).toPoint(), image)


def _sprite(ring: Ring, half: float, ratio: float, *, is_chosen: bool) -> QImage:
    side = round(2 * half * ratio)
    image = QImage(side, side, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    draw_ring(painter, replace(ring, centre=QPointF(half, half)), is_chosen=is_chosen)
    painter.end()
    return image


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
        bar = QRectF(radius - thick, -1.5, thick * 2, 3.0)
        painter.fillRect(bar.adjusted(0, -1, 0, 1), DARK)
        painter.fillRect(bar, LIGHT)
        painter.restore()
    for color, width in ((LIGHT, 4.0), (DARK, 1.8)):
        painter.setPen(QPen(color, width))
        painter.drawLine(QPointF(-4, -4), QPointF(4, 4))
        painter.drawLine(QPointF(-4, 4), QPointF(4, -4))
    painter.restore()
