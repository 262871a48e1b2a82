"""Strips: four sides round an opening, each with its own light, joined at the corners."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.catalogue import Finish
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Build, Plan, Rect, Side
from framing_palette.preview.sections import Daylight, Response, daylight, ridges, section
from framing_palette.preview.surfaces import Surface, seed_of

_SEAM_MM = 0.18  # a well-made mitre still shows as a hairline
_SEAM_DEPTH = 0.5
_BRIGHTEST = 0.985  # highlights bend toward white instead of being cut


@dataclass(frozen=True)
class Ring:
    """What four strips are drawn from.

    Parameters
    ----------
    plan, number, window
        Which layer, round which window.
    inner, outer
        The strips lie between these.
    surface
        Of the strips; without tile for the core of a board.
    bare
        True for the cut core of a board.
    """

    plan: Plan
    number: int
    window: int
    inner: Rect
    outer: Rect
    surface: Surface
    grid: Grid
    light: Light
    bare: bool = False

    @property
    def build(self) -> Build:
        """How the strips meet; a bevel is cut in one piece but its sides meet at 45 degrees."""
        return Build.MITRED if self.bare else self.plan.layers[self.number].build

    @property
    def finish(self) -> Finish:
        """How the surface returns light."""
        return Finish.MATT if self.bare else self.plan.layers[self.number].skin.finish

    @cached_property
    def seed(self) -> int:
        """Where the texture of the four sides begins."""
        return seed_of(self.plan.layers[self.number].skin.code, self.number, self.window)

    def outward_mm(self, side: Side, box: Box) -> Float64Array:
        """Return the distance outward from the opening, for each row or column of a block."""
        along = self.grid.y_mm(box) if side in (Side.TOP, Side.BOTTOM) else self.grid.x_mm(box)
        sign = sum(side.outward)
        return sign * along - self.inner.edge(side)


def ring_boxes(outer: Box, inner: Box) -> tuple[Box, Box, Box, Box]:
    """Return the blocks between two boxes: above, below, left and right of the inner one."""
    top, bottom = max(inner.row_0, outer.row_0), min(inner.row_1, outer.row_1)
    left, right = max(inner.column_0, outer.column_0), min(inner.column_1, outer.column_1)
    if top >= bottom or left >= right:
        nothing = Box(0, 0, 0, 0)
        return outer, nothing, nothing, nothing
    return (
        Box(outer.row_0, top, outer.column_0, outer.column_1),
        Box(bottom, outer.row_1, outer.column_0, outer.column_1),
        Box(top, bottom, outer.column_0, left),
        Box(top, bottom, right, outer.column_1),
    )


def ring_pieces(ring: Ring, seen: Box) -> Iterator[Piece]:
    """Draw the strips' part of a block of the picture."""
    outer = ring.grid.around(ring.outer)
    inner = ring.grid.inside(ring.inner)
    boxes = ring_boxes(outer, inner)
    for side, box in zip((Side.TOP, Side.BOTTOM, Side.LEFT, Side.RIGHT), boxes, strict=True):
        part = box.meet(seen)
        if part.empty:
            continue
        linear = side_strip(ring, side, part)
        if side in (Side.TOP, Side.BOTTOM):
            _join_corners(ring, side, part, linear)
        rows, columns = ring.grid.cover(ring.outer, part)
        yield Piece(part, linear, rows, columns)


def side_strip(ring: Ring, side: Side, box: Box, *, lit_as: Side | None = None) -> Float32Array:
    """Return one side's strip in linear sRGB as if it ran on for ever.

    Parameters
    ----------
    lit_as
        The side that it is lit as, when it is going to be turned.
    """
    level = side in (Side.TOP, Side.BOTTOM)
    step = 1.0 / ring.grid.px_per_mm
    at = ring.outward_mm(side, box)
    response = section(
        ring.plan, ring.window, ring.number, lit_as or side, at, step, ring.light, bare=ring.bare
    )
    across = _from_the_ends(ring, side, box)
    lit = _outer_sum(response, across)
    glint = np.multiply.outer(response.sheen, across.lamp).astype(np.float32)
    if not level:
        lit, glint = lit.T, glint.T
    tile = _tile_block(ring, side, box, at)
    return shade(ring.surface, tile, np.ascontiguousarray(lit), glint, ring.finish)


def _outer_sum(response: Response, across: Daylight) -> Float32Array:
    lamp = np.multiply.outer(response.lamp, across.lamp)
    return (lamp + np.multiply.outer(response.room, across.room)).astype(np.float32)


def _from_the_ends(ring: Ring, side: Side, box: Box) -> Daylight:
    """Return the light that the layers above leave at each place along a side."""
    ends = (Side.LEFT, Side.RIGHT) if side in (Side.TOP, Side.BOTTOM) else (Side.TOP, Side.BOTTOM)
    layer = ring.plan.layers[ring.number]
    level = layer.summit_mm if ring.bare else layer.top_mm
    return cross_daylight(
        ring.plan, ring.window, ring.number + 1, ends, level, ring.grid, box, ring.light
    )


def cross_daylight(
    plan: Plan,
    window: int,
    start: int,
    sides: tuple[Side, Side],
    z_mm: float,
    grid: Grid,
    box: Box,
    light: Light,
) -> Daylight:
    """Return the light that two opposite walls leave to a level plane, along one axis."""
    along = grid.x_mm(box) if Side.LEFT in sides else grid.y_mm(box)
    parts = [
        daylight(ridges(plan, window, start, side), sum(side.outward) * along, z_mm, side, light)
        for side in sides
    ]
    return Daylight(parts[0].lamp * parts[1].lamp, parts[0].room * parts[1].room)


def _tile_block(ring: Ring, side: Side, box: Box, at: Float64Array) -> Float32Array | None:
    """Return the texture under a strip, its grain along the side; each side begins elsewhere."""
    tile = ring.surface.tile
    if tile is None:
        return None
    begin = np.random.default_rng([ring.seed, list(Side).index(side)])
    start = int(begin.integers(1 << 20))
    grid, outer = ring.grid, ring.grid.around(ring.outer)
    level = side in (Side.TOP, Side.BOTTOM)
    first = box.column_0 - outer.column_0 if level else box.row_0 - outer.row_0
    along = (np.arange(box.columns if level else box.rows) + first + start) % tile.shape[1]
    across = np.floor(np.maximum(at, 0.0) * grid.px_per_mm).astype(int) % tile.shape[0]
    block = tile[across][:, along]
    return block if level else block.swapaxes(0, 1)


def shade(
    surface: Surface,
    tile: Float32Array | None,
    lit: Float32Array,
    glint: Float32Array | None,
    finish: Finish,
) -> Float32Array:
    """Return a surface under light: colour x tone x light, plus sheen, highlights bent to white."""
    import cv2

    if tile is None or tile.ndim == 2:
        gain = lit if tile is None else tile * lit
        linear = cv2.merge([gain * float(channel) for channel in surface.colour])
    else:
        linear = tile * lit[..., None]
    base = surface.colour if tile is None or tile.ndim == 2 else tile
    if finish is Finish.METALLIC:
        return _bent(np.minimum(linear, base), np.maximum(linear - base, 0.0))
    if glint is not None and glint.any():
        return _bent(np.asarray(linear), glint[..., None])
    return np.asarray(linear, np.float32)


def _bent(body: Float32Array, added: Float32Array) -> Float32Array:
    """Add light to a body colour so that it approaches white and never passes it."""
    room = np.maximum(_BRIGHTEST - body, 1e-4)
    linear: Float32Array = body + room * (1.0 - np.exp(-added / room))
    return linear


def _join_corners(ring: Ring, side: Side, box: Box, linear: Float32Array) -> None:
    """Draw the upright sides' halves of the two corners into a level strip."""
    if ring.build is Build.BUTTED:
        return
    inner = ring.grid.inside(ring.inner)
    spans = {
        Side.LEFT: Box(box.row_0, box.row_1, box.column_0, inner.column_0 + 1),
        Side.RIGHT: Box(box.row_0, box.row_1, inner.column_1 - 1, box.column_1),
    }
    for upright, span in spans.items():
        corner = span.meet(box)
        if corner.empty:
            continue
        apart = ring.outward_mm(upright, corner)[None, :] - ring.outward_mm(side, corner)[:, None]
        from_seam = apart * ring.grid.px_per_mm / np.sqrt(2.0)
        share = np.clip(from_seam + 0.5, 0.0, 1.0).astype(np.float32)[..., None]
        part = linear[corner.within(box)]
        part += (side_strip(ring, upright, corner) - part) * share
        if not ring.bare:
            part *= _seam(from_seam, ring.grid.px_per_mm)


def _seam(from_seam_px: Float64Array, px_per_mm: float) -> Float32Array:
    """Return the darkening of the joint's hairline, thinner than a pixel at most scales."""
    width = max(_SEAM_MM * px_per_mm, 1e-3)
    inked = np.clip(width / 2 + 0.5 - np.abs(from_seam_px), 0.0, min(width, 1.0))
    return (1.0 - _SEAM_DEPTH * inked)[..., None].astype(np.float32)
