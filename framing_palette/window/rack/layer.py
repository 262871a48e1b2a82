"""The layer of tiles: ground and rack drawn once on an image, off the interface thread.

Ten thousand tiles are set down as arrays: every pixel learns which tile lies uppermost on it, and
all pixels are coloured at once.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QPainter

from framing_palette.arrays import BoolArray, Float64Array, UInt8Array
from framing_palette.catalogue import Kind
from framing_palette.catalogue.rack_map import RackPoints
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.window.rack.ground import draw_lines
from framing_palette.window.rack.plane import Plane

MARGIN_SHARE = 0.35
"""How much more than the view a layer holds on each side, so that pushing needs no new one."""

_EDGE = 0.72  # how much of its light the rim of a tile keeps
_HOLLOW = 0.22  # width of a hollow tile's rim, of its height
_RIM, _FILL, _HOLE = 0, 1, 2
_SHAPES: dict[Kind, tuple[float, float]] = {
    Kind.MAT: (1.0, 1.0),
    Kind.LINER: (1.2, 0.8),
    Kind.MOULDING: (1.5, 0.6),
    Kind.WOOD_FILLET: (1.5, 0.34),
    Kind.WRAPPED_FILLET: (1.5, 0.34),
}
_KINDS = tuple(Kind)

Indices = NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class Layer:
    """An image and the view it was drawn for."""

    plane: Plane
    image: QImage


@dataclass(frozen=True, slots=True)
class Order:
    """What a layer is to show.

    Parameters
    ----------
    points, passing
        The rack, and which of its samples are tiles; the others are faint dots.
    plane
        The view.
    ratio
        Pixels of the screen for one of the window's.
    ground
        Grey that the map lies on.
    """

    points: RackPoints
    passing: BoolArray
    plane: Plane
    ratio: float
    ground: QColor


def wide_plane(plane: Plane) -> Plane:
    """Return a view with a margin all round."""
    grown = 1 + 2 * MARGIN_SHARE
    return replace(plane, width=round(plane.width * grown), height=round(plane.height * grown))


def shape_of(kind: Kind, tile: float) -> tuple[float, float]:
    """Return the width and height of a tile: boards are square, what is cut by length is long."""
    wide, high = _SHAPES[kind]
    return tile * wide, tile * high


def draw_layer(order: Order) -> Layer:
    """Return ground and tiles; light tiles lie above dark ones, as they do in the solid."""
    wide, ratio = wide_plane(order.plane), order.ratio
    image = QImage(
        max(1, round(wide.width * ratio)),
        max(1, round(wide.height * ratio)),
        QImage.Format.Format_RGB32,
    )
    image.setDevicePixelRatio(ratio)
    image.fill(order.ground)
    painter = QPainter(image)
    draw_lines(painter, wide, is_dark=order.ground.lightness() < 120)
    painter.end()
    _set_down(image, order, wide)
    return Layer(wide, image)


def _set_down(image: QImage, order: Order, wide: Plane) -> None:
    points, lightness = order.points, order.points.mean_lab[:, 0]
    if not len(points):
        return
    pixels = np.frombuffer(image.bits(), dtype=np.uint32).reshape(image.height(), -1)
    places = wide.places(points.mean_lab) * order.ratio
    rank = np.empty(len(points), dtype=np.int32)
    rank[np.argsort(lightness, kind="stable")] = np.arange(len(points), dtype=np.int32)
    dot = QColor(order.ground).darker(160) if order.ground.lightness() > 80 else Qt.GlobalColor.gray
    left, top = _corners(places[~order.passing], 2, 2, image)
    pixels.reshape(-1)[_covered(left, top, 2, 2, image.width()).ravel()] = QColor(dot).rgb()
    owner = np.full(pixels.size, -1, dtype=np.int32)
    for number, kind in enumerate(_KINDS):
        width, height = (max(3, round(side * order.ratio)) for side in shape_of(kind, wide.tile))
        rows = np.flatnonzero(order.passing & (points.kind == number))
        rows = rows[np.argsort(lightness[rows], kind="stable")]
        for is_there in (True, False):
            some = rows[points.is_there[rows] == is_there]
            _cover(owner, places[some], rank[some], _form(width, height, is_there=is_there), image)
    seen = np.flatnonzero(owner >= 0)
    pixels.reshape(-1)[seen] = _tones(points, order.ground)[owner[seen]]


def _cover(
    owner: Indices, places: Float64Array, rank: Indices, form: UInt8Array, image: QImage
) -> None:
    """Give every pixel under some tiles to the uppermost of them."""
    height, width = form.shape
    x, y = places[:, 0], places[:, 1]
    inside = (x >= width) & (x < image.width() - width)
    inside &= (y >= height) & (y < image.height() - height)
    if not inside.any():
        return
    left, top = _corners(places[inside], width, height, image)
    covered = _covered(left, top, width, height, image.width()).reshape(len(left), -1)
    value = rank[inside][:, None] * 3 + form.reshape(1, -1).astype(np.int32)
    # Where an index stands twice the last one counts, and the lightest tile comes last.
    found = np.full_like(owner, -1)
    found[covered.ravel()] = value.ravel()
    np.maximum(owner, found, out=owner)


def _corners(
    places: Float64Array, width: int, height: int, image: QImage
) -> tuple[Indices, Indices]:
    left = np.clip(np.round(places[:, 0] - width / 2), 0, max(0, image.width() - width))
    top = np.clip(np.round(places[:, 1] - height / 2), 0, max(0, image.height() - height))
    return left.astype(np.int32), top.astype(np.int32)


def _covered(left: Indices, top: Indices, width: int, height: int, stride: int) -> Indices:
    """Return the flat indices of the pixels of boxes, shape (n, height, width)."""
    rows = (top[:, None] + np.arange(height, dtype=np.int32)) * np.int32(stride)
    columns = left[:, None] + np.arange(width, dtype=np.int32)
    return np.asarray(rows[:, :, None] + columns[:, None, :])


def _form(width: int, height: int, *, is_there: bool) -> UInt8Array:
    """Return which pixels of a tile are rim, colour or hole."""
    form = np.full((height, width), _FILL, dtype=np.uint8)
    if not is_there:
        rim = 1 + max(1, round(_HOLLOW * min(width, height)))
        form[rim:-rim, rim:-rim] = _HOLE
    form[[0, -1]] = _RIM
    form[:, [0, -1]] = _RIM
    return form


def _tones(points: RackPoints, ground: QColor) -> NDArray[np.uint32]:
    """Return what rim, colour and hole of each tile look like, darkest sample first."""
    order = np.argsort(points.mean_lab[:, 0], kind="stable")
    srgb: UInt8Array = lab_d50_to_srgb_u8(points.mean_lab[order])
    rim = (srgb * _EDGE).astype(np.uint32)
    tones = np.full((len(order), 3), ground.rgb(), dtype=np.uint32)
    for place, colour in ((_RIM, rim), (_FILL, srgb.astype(np.uint32))):
        tones[:, place] = (255 << 24) | (colour[:, 0] << 16) | (colour[:, 1] << 8) | colour[:, 2]
    return np.asarray(tones.reshape(-1))
