"""Sheets: the level surface of a mat and the bevels of its openings."""

from collections.abc import Iterator

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.preview.grids import Box
from framing_palette.preview.ovals import clipped, oval_ring_pieces, seen_boxes
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Hole, Rect
from framing_palette.preview.sections import Site
from framing_palette.preview.shade import level_light, shade
from framing_palette.preview.strips import Ring, ring_pieces
from framing_palette.preview.surfaces import Surface, linear_of, seed_of
from framing_palette.preview.tiling import Extent, window_of

LARGEST_SHEET_PX = 1536


def sheet_extent(outer: Rect, site: Site, largest_px: int = LARGEST_SHEET_PX) -> Extent:
    """Return how large a surface a sheet needs, as far as it shows; it repeats past a limit."""
    shown = site.grid.around(outer).meet(site.whole)
    rows, columns = max(shown.rows, 1), max(shown.columns, 1)
    return Extent(min(rows, largest_px), min(columns, largest_px), strip=False)


def flat_pieces(
    site: Site, number: int, clip: Hole, surface: Surface, seen: Box
) -> Iterator[Piece]:
    """Draw a sheet's level part of a block, as it is seen through ``clip``.

    A sheet with several openings is drawn whole, because its openings are laid over it.
    """
    layer = site.layer(number)
    hole = (
        None if len(layer.holes) > 1 and not clip_is_own(site, number) else layer.hole(site.window)
    )
    for box in seen_boxes(clip, hole, site.grid):
        part = box.meet(seen)
        if part.empty:
            continue
        lit = level_light(site, number + 1, layer.top_mm, part)
        tile = _texture(site, number, surface, part)
        yield clipped(clip, site.grid, part, shade(surface, tile, lit, None, layer.skin.finish))


def clip_is_own(site: Site, number: int) -> bool:
    """Tell whether each window of a layer is seen through an opening of its own."""
    above = site.plan.layers[number + 1 : number + 2]
    return bool(above) and len(above[0].holes) > 1


def bevel_ring(site: Site, number: int) -> Ring:
    """Return the bevel of a sheet's opening, its core bare, each side lit for itself."""
    layer = site.layer(number)
    hole = layer.hole(site.window)
    core = Surface(linear_of(layer.skin.core_lab))
    return Ring(site, number, hole.rect, hole.rect.grown(layer.bevel_mm), core, bare=True)


def bevel_pieces(bevel: Ring, seen: Box) -> Iterator[Piece]:
    """Draw a bevel's part of a block."""
    if bevel.layer.bevel_mm <= 0:
        return
    if bevel.layer.hole(bevel.site.window).oval:
        yield from oval_ring_pieces(bevel, None, seen)
    else:
        yield from ring_pieces(bevel, seen)


def _texture(site: Site, number: int, surface: Surface, box: Box) -> Float32Array | None:
    """Return the texture under a block of a sheet; a sheet is one surface, so it never turns."""
    tile = surface.tile
    if tile is None:
        return None
    layer, grid = site.layer(number), site.grid
    outer = grid.around(layer.outer).meet(site.whole)
    rng = np.random.default_rng(seed_of(layer.skin.code, "sheet", number))
    spare = [max(tile.shape[0] - outer.rows, 0), max(tile.shape[1] - outer.columns, 0)]
    row, column = (int(rng.integers(room + 1)) for room in spare)
    return window_of(
        tile, row + box.row_0 - outer.row_0, column + box.column_0 - outer.column_0,
        box.rows, box.columns,
    )  # fmt: skip
