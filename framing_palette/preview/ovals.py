"""Ovals: pieces whose outline or opening is an ellipse."""

from collections.abc import Iterator
from math import pi, sqrt

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Hole, Rect
from framing_palette.preview.sections import Daylight, facing, heights, respond
from framing_palette.preview.shade import shade
from framing_palette.preview.strips import Ring, ring_boxes
from framing_palette.preview.tiling import window_of


def seen_boxes(clip: Hole, hole: Hole | None, grid: Grid) -> tuple[Box, ...]:
    """Return the blocks between an outline and an opening, whatever the shape of the two."""
    outer = grid.around(clip.rect)
    if hole is None:
        return (outer,)
    return ring_boxes(outer, grid.inside(_core(hole)))


def clipped(clip: Hole, grid: Grid, box: Box, linear: Float32Array) -> Piece:
    """Return a piece that shows through an outline."""
    if not clip.oval:
        return Piece(box, linear, *grid.cover(clip.rect, box))
    distance, _, _ = grid.oval_distance_mm(clip, box)
    return Piece(box, linear, cover=_inside(distance, grid))


def oval_ring_pieces(ring: Ring, clip: Hole | None, seen: Box) -> Iterator[Piece]:
    """Draw a bevel or a bent strip round an oval opening.

    Parameters
    ----------
    clip
        What it is seen through; None for a bevel, which ends at its own width.
    """
    grid, layer = ring.site.grid, ring.layer
    hole = layer.hole(ring.site.window)
    outline = clip or Hole(ring.outer, oval=True)
    for box in seen_boxes(outline, hole, grid):
        part = box.meet(seen)
        if part.empty:
            continue
        linear, distance = _bent_strip(ring, hole, part)
        if clip is None:
            cover = _inside(distance - layer.bevel_mm, grid)
            yield Piece(part, linear, cover=cover)
        else:
            yield clipped(clip, grid, part, linear)


def _bent_strip(ring: Ring, hole: Hole, box: Box) -> tuple[Float32Array, Float64Array]:
    distance, across, down = ring.site.grid.oval_distance_mm(hole, box)
    _, slope = heights(ring.layer, distance.ravel())
    normal = facing(slope.reshape(distance.shape), across, down)
    open_sky = (1.0 + normal[..., 2]) / 2.0
    reached = Daylight(np.ones_like(distance), open_sky)
    finish = None if ring.bare else ring.layer.skin.finish
    response = respond(normal, finish, reached, ring.site.light)
    lit = (response.lamp + response.room).astype(np.float32)
    glint = response.sheen.astype(np.float32) if response.sheen.any() else None
    texture = _bent_texture(ring, hole, distance, (across, down))
    return shade(ring.surface, texture, lit, glint, ring.finish), distance


def _bent_texture(
    ring: Ring, hole: Hole, distance: Float64Array, outward: tuple[Float64Array, Float64Array]
) -> Float32Array | None:
    """Return the texture with its grain along the curve."""
    tile = ring.surface.tile
    if tile is None:
        return None
    px_per_mm = ring.site.grid.px_per_mm
    round_mm = pi * sqrt((hole.rect.width**2 + hole.rect.height**2) / 2.0)
    turn = (np.arctan2(outward[1], outward[0]) + pi) / (2.0 * pi)
    along = np.floor(turn * round_mm * px_per_mm).astype(int) % tile.shape[1]
    across = np.clip(np.floor(distance * px_per_mm).astype(int), 0, tile.shape[0] - 1)
    field: Float32Array = window_of(tile, 0, 0, *tile.shape[:2])[across, along]
    return field


def _inside(distance_mm: Float64Array, grid: Grid) -> Float32Array:
    cover: Float32Array = np.clip(0.5 - distance_mm * grid.px_per_mm, 0.0, 1.0).astype(np.float32)
    return cover


def _core(hole: Hole) -> Rect:
    """Return the largest rectangle that surely lies inside an opening."""
    if not hole.oval:
        return hole.rect
    x, y = hole.rect.middle
    half_width, half_height = (side / 2 / sqrt(2.0) for side in (hole.rect.width, hole.rect.height))
    return Rect(x - half_width, y - half_height, x + half_width, y + half_height)
