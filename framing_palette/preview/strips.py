"""Strips: four sides round an opening, each with its own light, joined at the corners."""

from collections.abc import Iterator
from dataclasses import dataclass, field

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.catalogue import Finish
from framing_palette.preview.channels import for_each_channel, lit_by
from framing_palette.preview.corners import corner_of
from framing_palette.preview.grids import Box
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Build, LayerPlan, Rect, Side
from framing_palette.preview.sections import Daylight, Response, Site, section
from framing_palette.preview.shade import along_axis, shade
from framing_palette.preview.surfaces import Surface, seed_of
from framing_palette.preview.tiling import Extent, window_of

_SEAM_MM = 0.18  # a well-made mitre still shows as a hairline
_SEAM_DEPTH = 0.35
_SPARE = 1.1  # a strip is made this much longer, so that the four sides can begin elsewhere
LONGEST_STRIP_PX = 8192
_LEVEL = (Side.TOP, Side.BOTTOM)
_UPRIGHT = (Side.LEFT, Side.RIGHT)
_ENDS = {side: _UPRIGHT if side in _LEVEL else _LEVEL for side in Side}


@dataclass(frozen=True, slots=True)
class Ring:
    """Four strips: which layer, round which opening and how far out.

    Parameters
    ----------
    surface
        Of the strips; a plain colour for the core of a board.
    bare
        True for the cut core of a board.
    known
        Sections that were worked out already, by side: where they begin, and the light.
    """

    site: Site
    number: int
    inner: Rect
    outer: Rect
    surface: Surface
    bare: bool = False
    known: dict[tuple[Side, Side], tuple[int, Response]] = field(default_factory=dict)

    @property
    def layer(self) -> LayerPlan:
        """The layer that they belong to."""
        return self.site.layer(self.number)

    @property
    def build(self) -> Build:
        """How the strips meet; a bevel is cut in one piece but its sides meet at 45 degrees."""
        return Build.MITRED if self.bare else self.layer.build

    @property
    def finish(self) -> Finish:
        """How the surface returns light."""
        return Finish.MATT if self.bare else self.layer.skin.finish

    def outward_mm(self, side: Side, box: Box) -> Float64Array:
        """Return the distance outward from the opening, for each row or column of a block."""
        grid = self.site.grid
        along = grid.y_mm(box) if side in _LEVEL else grid.x_mm(box)
        return sum(side.outward) * along - self.inner.edge(side)


def strip_extent(outer: Rect, inner: Rect, site: Site) -> Extent:
    """Return how large a surface the four strips round an opening need, as far as they show."""
    shown = site.grid.around(outer).meet(site.whole)
    longest = int(max(shown.columns, shown.rows) * _SPARE) + 2
    face = max(inner.left - outer.left, inner.top - outer.top)
    return Extent(
        rows=max(1, int(face * site.grid.px_per_mm) + 2),
        columns=min(longest, LONGEST_STRIP_PX),
        strip=True,
    )


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
    grid = ring.site.grid
    boxes = ring_boxes(grid.around(ring.outer), grid.inside(ring.inner))
    for side, box in zip((*_LEVEL, Side.LEFT, Side.RIGHT), boxes, strict=True):
        part = box.meet(seen)
        if part.empty:
            continue
        linear = side_strip(ring, side, part)
        if side in _LEVEL:
            _join_corners(ring, side, part, linear)
        yield Piece(part, linear, *grid.cover(ring.outer, part))


def side_strip(ring: Ring, side: Side, box: Box, *, lit_as: Side | None = None) -> Float32Array:
    """Return one side's strip in linear sRGB as if it ran on for ever.

    Parameters
    ----------
    lit_as
        The side that it is lit as, when it is going to be turned.
    """
    response = _across(ring, side, lit_as or side, box)
    across = _from_the_ends(ring, side, box)
    lamp, room = _lamp_and_room(response, across)
    glint = _glint(response, across)
    for columns, left in _corner_shades(ring, side, box):
        lamp[:, columns] *= left[..., 0]
        room[:, columns] *= left[..., 1]
        if glint is not None:
            glint[:, columns] *= left[..., 0]
    lit = lamp
    lit += room
    linear = shade(ring.surface, _texture(ring, side, box), lit, glint, ring.finish)
    return linear if side in _LEVEL else _turned(linear)


def _turned(linear: Float32Array) -> Float32Array:
    """Return a strip that was drawn level as an upright one."""
    import cv2

    return np.asarray(cv2.transpose(linear), np.float32)


def _across(ring: Ring, side: Side, lit_as: Side, box: Box) -> Response:
    """Return the light across a side for a block's rows or columns.

    The whole side is worked out once, because its corners and its middle share it.
    """
    whole = _side_box(ring, side)
    first, last = (box[0], box[1]) if side in _LEVEL else (box[2], box[3])
    start, stop = (whole[0], whole[1]) if side in _LEVEL else (whole[2], whole[3])
    if first < start or last > stop:
        return section(ring.site, ring.number, lit_as, ring.outward_mm(side, box), bare=ring.bare)
    if (side, lit_as) not in ring.known:
        at = ring.outward_mm(side, whole)
        light = section(ring.site, ring.number, lit_as, at, bare=ring.bare)
        ring.known[side, lit_as] = (start, light)
    return ring.known[side, lit_as][1].part(first - start, last - start)


def _side_box(ring: Ring, side: Side) -> Box:
    """Return the pixels from a side's outer edge to just within its inner edge."""
    outer, inner = ring.site.grid.around(ring.outer), ring.site.grid.inside(ring.inner)
    return {
        Side.TOP: Box(outer.row_0, inner.row_0 + 1, 0, 1),
        Side.BOTTOM: Box(inner.row_1 - 1, outer.row_1, 0, 1),
        Side.LEFT: Box(0, 1, outer.column_0, inner.column_0 + 1),
        Side.RIGHT: Box(0, 1, inner.column_1 - 1, outer.column_1),
    }[side]


def _lamp_and_room(response: Response, across: Daylight) -> tuple[Float32Array, Float32Array]:
    lamp = np.multiply.outer(response.lamp.astype(np.float32), across.lamp.astype(np.float32))
    room = np.multiply.outer(response.room.astype(np.float32), across.room.astype(np.float32))
    return lamp, room


def _corner_shades(ring: Ring, side: Side, box: Box) -> Iterator[tuple[slice, Float32Array]]:
    """Yield the stretches of a side that lie in the shade of its corners, and what is left."""
    corner = None
    if ring.build is Build.MITRED:
        corner = corner_of(ring.layer, ring.site.grid.px_per_mm)
    if corner is None:
        return
    across = ring.outward_mm(side, box)
    for end in _ENDS[side]:
        beyond = ring.outward_mm(end, box)
        near = np.flatnonzero(beyond > -corner.reach_mm)
        if near.size:
            columns = slice(int(near[0]), int(near[-1]) + 1)
            yield columns, corner.left(end, ring.site.light, across, beyond[columns])


def _glint(response: Response, across: Daylight) -> Float32Array | None:
    if response.sheen.max(initial=0.0) < 1e-4:
        return None
    glint: Float32Array = np.multiply.outer(response.sheen, across.lamp).astype(np.float32)
    return glint


def _from_the_ends(ring: Ring, side: Side, box: Box) -> Daylight:
    """Return the light that the layers above leave at each place along a side."""
    return along_axis(ring.site, ring.number + 1, _ENDS[side], ring.layer.top_mm, box)


def _texture(ring: Ring, side: Side, box: Box) -> Float32Array | None:
    """Return the texture under a level strip, its grain along it; each side begins elsewhere."""
    tile = ring.surface.tile
    if tile is None:
        return None
    grid = ring.site.grid
    corner = grid.around(ring.outer).meet(ring.site.whole)
    first = box.column_0 - corner.column_0 if side in _LEVEL else box.row_0 - corner.row_0
    count = box.columns if side in _LEVEL else box.rows
    seed = seed_of(ring.layer.skin.code, ring.number, ring.site.window, side)
    spare = tile.shape[1] - max(corner.rows, corner.columns)
    begin = seed % (spare if spare > 0 else tile.shape[1])
    at = ring.outward_mm(side, box)
    across = np.floor(np.maximum(at, 0.0) * grid.px_per_mm).astype(int)
    across = np.minimum(across, tile.shape[0] - 1)
    block: Float32Array = window_of(tile, 0, begin + first, tile.shape[0], count)[across]
    return block


def _join_corners(ring: Ring, side: Side, box: Box, linear: Float32Array) -> None:
    """Draw the upright sides' halves of the two corners into a level strip."""
    if ring.build is Build.BUTTED:
        return
    grid = ring.site.grid
    inner = grid.inside(ring.inner)
    spans = {
        Side.LEFT: Box(box.row_0, box.row_1, box.column_0, inner.column_0 + 1),
        Side.RIGHT: Box(box.row_0, box.row_1, inner.column_1 - 1, box.column_1),
    }
    for upright, span in spans.items():
        corner = span.meet(box)
        if corner.empty:
            continue
        apart = ring.outward_mm(upright, corner)[None, :] - ring.outward_mm(side, corner)[:, None]
        from_seam = apart * grid.px_per_mm / np.sqrt(2.0)
        share = np.clip(from_seam + 0.5, 0.0, 1.0).astype(np.float32)
        part = linear[corner.within(box)]
        part += lit_by(side_strip(ring, upright, corner) - part, share)
        if not ring.bare:
            part *= for_each_channel(_seam(from_seam, grid.px_per_mm))


def _seam(from_seam_px: Float64Array, px_per_mm: float) -> Float32Array:
    """Return the darkening of the joint's hairline, thinner than a pixel at most scales."""
    width = max(_SEAM_MM * px_per_mm, 1e-3)
    inked = np.clip(width / 2 + 0.5 - np.abs(from_seam_px), 0.0, min(width, 1.0))
    seam: Float32Array = (1.0 - _SEAM_DEPTH * inked).astype(np.float32)
    return seam
