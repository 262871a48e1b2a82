"""Walls: what the frame hangs on, and the frame's soft shadow on it."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from math import cos, pi, radians, sin, sqrt, tan

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.catalogue.samples import Lab
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.lights import Light
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Plan, Rect
from framing_palette.preview.shade import shade
from framing_palette.preview.strips import ring_boxes
from framing_palette.preview.surfaces import Surface, linear_of

_LAMP_POINTS = 40
_DAPPLE_PX = 512
_GIVEN_BACK = 0.4  # of the sky that a frame's side hides, by what the side itself reflects
_COARSE = 10  # pixels that the shadow's reach is drawn with; it is soft, so few will do


@dataclass(frozen=True, slots=True)
class Wall:
    """An even wall.

    Parameters
    ----------
    lab
        Its colour, Lab D50; the default is a neutral surround.
    fall_off
        How much darker it is far from the lamp than near it, 0 for none.
    dapple
        Unevenness of the paint, as a deviation in linear light.
    """

    lab: Lab = (74.0, 0.0, 0.0)
    fall_off: float = 0.16
    dapple: float = 0.008


def wall_light(box: Box, whole: Box, wall: Wall, light: Light) -> Float32Array:
    """Return the light on the bare wall, 1 in the middle of the picture."""
    across = _place(box.column_0, box.column_1, whole.column_0, whole.column_1)
    down = _place(box.row_0, box.row_1, whole.row_0, whole.row_1)
    x, y, _ = light.direction
    level = max(sqrt(x * x + y * y), 1e-9)
    slope = wall.fall_off / 2.0
    weight_x, weight_y = (np.float32(slope * part / level / sqrt(2.0)) for part in (x, y))
    lit = (np.float32(1.0) + across * weight_x)[None, :] + (down * weight_y)[:, None]
    if wall.dapple:
        _add_dapple(lit, box, wall.dapple)
    return lit


def frame_shadow(hung: Hung, grid: Grid, box: Box, whole: Box, light: Light) -> Float32Array:
    """Return what a frame leaves of the light on the wall round it, 0..1.

    The lamp's share is the mean over points of a disc, each casting the outline swept from the
    wall to the frame's height; the room's share is the sky beside a long wall. Both are soft, so
    they are worked out coarsely over the whole picture and enlarged.
    """
    coarse = max(1, int(shadow_reach_mm(hung.plan, light) * grid.px_per_mm / _COARSE))
    wide = _coarse_shadow(hung.plan, hung.on(grid), whole, light, coarse)
    place = (np.arange(box.row_0, box.row_1) - whole.row_0 + 0.5) / coarse - 0.5
    first = np.clip(np.floor(place).astype(int), 0, wide.shape[0] - 1)
    second = np.minimum(first + 1, wide.shape[0] - 1)
    share = np.clip(place - first, 0.0, 1.0).astype(np.float32)[:, None]
    start = box.column_0 - whole.column_0
    part = wide[:, start : start + box.columns]
    shadow: Float32Array = part[first]
    step = part[second]
    step -= shadow
    step *= share
    shadow += step
    return shadow


@lru_cache(maxsize=8)
def _coarse_shadow(plan: Plan, grid: Grid, whole: Box, light: Light, coarse: int) -> Float32Array:
    """Return the shadow at full width but few rows."""
    import cv2

    rows, columns = -(-whole.rows // coarse), -(-whole.columns // coarse)
    left = grid.left_mm + whole.column_0 / grid.px_per_mm
    top = grid.top_mm + whole.row_0 / grid.px_per_mm
    small = Grid(left, top, grid.px_per_mm / coarse)
    lamp = _lamp_left(plan, small, rows, columns, light)
    room = _sky_left(plan, small, rows, columns)
    left_over = ((1.0 - light.room) * lamp + light.room * room).astype(np.float32)
    size = (columns * coarse, rows)
    wide = np.asarray(cv2.resize(left_over, size, interpolation=cv2.INTER_LINEAR), np.float32)
    wide.flags.writeable = False
    return wide


def wall_pieces(
    frames: tuple[Hung, ...], wall: Wall, light: Light, grid: Grid, *, box: Box, whole: Box
) -> Iterator[Piece]:
    """Draw the wall's part of a block, in the shadows of the frames.

    Parameters
    ----------
    whole
        The full picture that ``box`` is a part of; the wall's light runs over it.
    """
    surface = Surface(linear_of(wall.lab))
    covered = Box(0, 0, 0, 0)
    if len(frames) == 1:
        covered = frames[0].on(grid).inside(frames[0].plan.extent).meet(box)
    for part in ring_boxes(box, covered):
        if part.empty:
            continue
        lit = wall_light(part, whole, wall, light)
        for hung in frames:
            lit *= frame_shadow(hung, grid, part, whole, light)
        yield Piece(part, shade(surface, None, lit))


def _place(first: int, last: int, start: int, stop: int) -> Float32Array:
    middle, half = (start + stop) / 2.0, max((stop - start) / 2.0, 1.0)
    return ((np.arange(first, last) + 0.5 - middle) / half).astype(np.float32)


@cache
def _dapple_field() -> Float32Array:
    """Return the unevenness of rolled paint: deviation 1, no repeat at the edges."""
    import cv2

    noise = np.random.default_rng(7).standard_normal((_DAPPLE_PX, _DAPPLE_PX)).astype(np.float32)
    around = np.pad(noise, 8, mode="wrap")
    soft = cv2.GaussianBlur(around, (0, 0), 1.2)[8:-8, 8:-8]
    field = 0.3 * noise + soft / float(soft.std()) * np.float32(0.8)
    field = field - field.mean()
    field.flags.writeable = False
    return np.asarray(field, np.float32)


def _add_dapple(lit: Float32Array, box: Box, deviation: float) -> None:
    """Add the unevenness of the paint to the light on a block, field by field."""
    field = _dapple_field()
    for row in range(box.row_0 // _DAPPLE_PX * _DAPPLE_PX, box.row_1, _DAPPLE_PX):
        for column in range(box.column_0 // _DAPPLE_PX * _DAPPLE_PX, box.column_1, _DAPPLE_PX):
            tile = Box(row, row + _DAPPLE_PX, column, column + _DAPPLE_PX)
            shared = tile.meet(box)
            lit[shared.within(box)] += np.float32(deviation) * field[shared.within(tile)]


def shadow_reach_mm(plan: Plan, light: Light) -> float:
    """Return how far a frame's shadow reaches on the wall."""
    height = max((layer.summit_mm for layer in plan.layers), default=0.0) - plan.wall_z_mm
    return max(height, 1.0) / tan(radians(light.elevation_deg))


def _lamp_points(light: Light) -> list[tuple[float, float]]:
    """Return sun-flower points over the lamp's disc as (azimuth, elevation) in radians."""
    golden = pi * (3.0 - sqrt(5.0))
    points = []
    for number in range(_LAMP_POINTS):
        radius = radians(light.radius_deg) * sqrt((number + 0.5) / _LAMP_POINTS)
        up = radians(light.elevation_deg) + radius * sin(number * golden)
        spread = radius * cos(number * golden) / max(cos(radians(light.elevation_deg)), 0.2)
        points.append((radians(light.azimuth_deg) + spread, min(max(up, 0.15), pi / 2 - 1e-3)))
    return points


def _outlines(plan: Plan) -> list[tuple[Rect, float]]:
    """Return the frame's outside with its edge height, and its ridge where that stands higher."""
    if not plan.layers:
        return [(plan.extent, max(-plan.wall_z_mm, 1.0))]
    outermost = plan.layers[-1]
    last_x, last_height = outermost.profile[-1]
    edge = outermost.base_mm + last_height - plan.wall_z_mm
    ridge_x, ridge_height = max(outermost.profile, key=lambda point: (point[1], point[0]))
    ridge = outermost.base_mm + ridge_height - plan.wall_z_mm
    outlines = [(plan.extent, edge)]
    if ridge > edge:
        outlines.append((plan.extent.grown(ridge_x - last_x), ridge))
    return outlines


def _lamp_left(plan: Plan, grid: Grid, rows: int, columns: int, light: Light) -> Float32Array:
    import cv2

    total = np.zeros((rows, columns), np.float32)
    covered = np.empty((rows, columns), np.uint8)
    for azimuth, elevation in _lamp_points(light):
        covered.fill(0)
        away = 1.0 / tan(elevation)
        for rect, height in _outlines(plan):
            shift = (-sin(azimuth) * height * away, cos(azimuth) * height * away)
            hull = _swept(rect, shift, grid)
            cv2.fillConvexPoly(covered, hull, 255, lineType=cv2.LINE_AA, shift=4)
        cv2.accumulate(covered, total)
    left = 1.0 - total / (255.0 * _LAMP_POINTS)
    return np.asarray(cv2.GaussianBlur(left, (0, 0), 1.0), np.float32)


def _swept(rect: Rect, shift: tuple[float, float], grid: Grid) -> np.ndarray:
    """Return the outline of a rectangle swept along a shift, in sixteenths of a pixel."""
    import cv2

    corners = []
    for part in (rect, rect.moved(*shift)):
        for x in (part.left, part.right):
            corners += [(grid.x_px(x), grid.y_px(y)) for y in (part.top, part.bottom)]
    points = np.asarray(corners, np.float32) - 0.5
    hull = cv2.convexHull(points)
    return np.clip(np.rint(hull * 16), -(2**24), 2**24).astype(np.int32)


def _sky_left(plan: Plan, grid: Grid, rows: int, columns: int) -> Float32Array:
    box = Box(0, rows, 0, columns)
    rect, height = _outlines(plan)[0]
    x, y = grid.x_mm(box), grid.y_mm(box)
    beside = np.maximum(np.maximum(rect.left - x, x - rect.right), 0.0)[None, :]
    above = np.maximum(np.maximum(rect.top - y, y - rect.bottom), 0.0)[:, None]
    distance = np.hypot(beside, above)
    closed = (1.0 - distance / np.hypot(distance, height)) / 2.0
    left: Float32Array = (1.0 - (1.0 - _GIVEN_BACK) * closed).astype(np.float32)
    return left
