"""Sheets: the level surface of a mat and the bevels of its openings."""

from collections.abc import Iterator

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import LayerPlan, Plan, Rect, Side
from framing_palette.preview.strips import Ring, cross_daylight, ring_boxes, ring_pieces, shade
from framing_palette.preview.surfaces import Surface, linear_of, seed_of


def sheet_pieces(
    plan: Plan,
    number: int,
    window: int,
    clip: Rect,
    surface: Surface,
    grid: Grid,
    light: Light,
    seen: Box,
) -> Iterator[Piece]:
    """Draw a sheet's part of a block: the flat as seen through ``clip``, then the bevel."""
    layer = plan.layers[number]
    hole = layer.hole(window).rect
    for box in ring_boxes(grid.around(clip), grid.inside(hole)):
        part = box.meet(seen)
        if not part.empty:
            lit = level_light(plan, window, number + 1, layer.top_mm, grid, part, light)
            tile = tile_block(layer, surface, grid, part)
            linear = shade(surface, tile, lit, None, layer.skin.finish)
            yield Piece(part, linear, *grid.cover(clip, part))
    if layer.bevel_mm > 0:
        core = Surface(linear_of(layer.skin.core_lab))
        bevel = hole.grown(layer.bevel_mm)
        yield from ring_pieces(
            Ring(plan, number, window, hole, bevel, core, grid, light, bare=True), seen
        )


def level_light(
    plan: Plan, window: int, start: int, z_mm: float, grid: Grid, box: Box, light: Light
) -> Float32Array:
    """Return the light on a level plane under the layers from ``start`` outward.

    1 where nothing stands in the way. Lamp and room are products of what each axis leaves,
    which is exact for the lamp behind an upright rectangle.
    """
    down = cross_daylight(plan, window, start, (Side.TOP, Side.BOTTOM), z_mm, grid, box, light)
    across = cross_daylight(plan, window, start, (Side.LEFT, Side.RIGHT), z_mm, grid, box, light)
    lamp = np.multiply.outer(
        ((1.0 - light.room) * down.lamp).astype(np.float32), across.lamp.astype(np.float32)
    )
    lamp += np.multiply.outer(
        (light.room * down.room).astype(np.float32), across.room.astype(np.float32)
    )
    return lamp


def tile_block(layer: LayerPlan, surface: Surface, grid: Grid, box: Box) -> Float32Array | None:
    """Return the texture under a block of a sheet; a sheet is one surface, so it never turns."""
    tile = surface.tile
    if tile is None:
        return None
    start = np.random.default_rng(seed_of(layer.skin.code, "sheet")).integers(1 << 20, size=2)
    zero_row, zero_column = round(grid.y_px(0.0)), round(grid.x_px(0.0))
    rows = (np.arange(box.row_0, box.row_1) - zero_row + start[0]) % tile.shape[0]
    columns = (np.arange(box.column_0, box.column_1) - zero_column + start[1]) % tile.shape[1]
    block: Float32Array = tile[rows][:, columns]
    return block
