"""The layer of tiles: the whole rack drawn once on an image, off the interface thread."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen

from framing_palette.arrays import BoolArray, Float64Array, UInt8Array
from framing_palette.catalogue import Kind
from framing_palette.catalogue.rack_map import RackPoints
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.window.rack.plane import Plane

MARGIN_SHARE = 0.35
"""How much more than the view a layer holds on each side, so that pushing needs no new one."""

_EDGE = QColor(0, 0, 0, 70)
_HOLLOW = 0.2
_SHAPES: dict[Kind, tuple[float, float]] = {
    Kind.MAT: (1.0, 1.0),
    Kind.LINER: (1.2, 0.8),
    Kind.MOULDING: (1.5, 0.6),
    Kind.WOOD_FILLET: (1.5, 0.34),
    Kind.WRAPPED_FILLET: (1.5, 0.34),
}
_KINDS = tuple(Kind)


@dataclass(frozen=True, slots=True)
class Layer:
    """An image and the view it was drawn for."""

    plane: Plane
    image: QImage


def wide_plane(plane: Plane) -> Plane:
    """Return a view with a margin all round."""
    grown = 1 + 2 * MARGIN_SHARE
    return replace(plane, width=plane.width * grown, height=plane.height * grown)


def shape_of(kind: Kind, tile: float) -> tuple[float, float]:
    """Return the width and height of a tile: boards are square, what is cut by length is long."""
    wide, high = _SHAPES[kind]
    return tile * wide, tile * high


def draw_layer(
    points: RackPoints, passing: BoolArray, plane: Plane, ratio: float, dot: QColor
) -> Layer:
    """Return the tiles of the samples that pass, the others as faint dots.

    Dark ones are drawn first, so that the light ones that lie above them in the solid do so here.
    """
    wide = wide_plane(plane)
    image = QImage(
        round(wide.width * ratio),
        round(wide.height * ratio),
        QImage.Format.Format_ARGB32_Premultiplied,
    )
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    places = wide.places(points.mean_lab)
    seen = _seen(places, wide)
    order = np.argsort(points.mean_lab[:, 0], kind="stable")
    painter = QPainter(image)
    for row in order[(seen & ~passing)[order]].tolist():
        x, y = places[row].tolist()
        painter.fillRect(QRectF(x - 1, y - 1, 2, 2), dot)
    _draw_tiles(painter, points, order[(seen & passing)[order]].tolist(), places, wide.tile)
    painter.end()
    return Layer(wide, image)


def _draw_tiles(
    painter: QPainter,
    points: RackPoints,
    rows: Sequence[int],
    places: Float64Array,
    tile: float,
) -> None:
    srgb: UInt8Array = lab_d50_to_srgb_u8(points.mean_lab)
    colours, there = srgb.tolist(), points.is_there.tolist()
    kinds, spots = points.kind.tolist(), places.tolist()
    shapes = [shape_of(kind, tile) for kind in _KINDS]
    for row in rows:
        x, y = spots[row]
        width, height = shapes[kinds[row]]
        box = QRectF(round(x - width / 2), round(y - height / 2), round(width), round(height))
        color = QColor(*colours[row])
        painter.fillRect(box, _EDGE)
        inner = box.adjusted(1, 1, -1, -1)
        if there[row]:
            painter.fillRect(inner, color)
        else:
            draw_hollow(painter, inner, color)


def draw_hollow(painter: QPainter, box: QRectF, color: QColor) -> None:
    """Draw a tile that is out of stock: only its rim has the colour."""
    thick = max(1.5, min(box.width(), box.height()) * _HOLLOW)
    pen = QPen(color, thick)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    half = thick / 2
    painter.drawRect(box.adjusted(half, half, -half, -half))


def _seen(places: Float64Array, plane: Plane) -> BoolArray:
    x, y, margin = places[:, 0], places[:, 1], plane.tile
    across = (x > -margin) & (x < plane.width + margin)
    return np.asarray(across & (y > -margin) & (y < plane.height + margin))
