"""Shade: the light on level planes inside a frame, and on the surfaces that lie there."""

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.catalogue import Finish
from framing_palette.preview.channels import lit_by, tinted
from framing_palette.preview.grids import Box
from framing_palette.preview.plans import Hole, LayerPlan, Side
from framing_palette.preview.sections import Daylight, Site, daylight, lamp_above, ridges
from framing_palette.preview.surfaces import Surface

_BRIGHTEST = 0.985  # highlights bend toward white instead of being cut


def level_light(site: Site, start: int, z_mm: float, box: Box) -> Float32Array:
    """Return the light on a level plane under the layers from ``start`` outward.

    1 where nothing stands in the way. Lamp and room are products of what each axis leaves, which
    is exact for a lamp behind an upright rectangle. An oval is a straight wall to each point.
    """
    down = along_axis(site, start, (Side.TOP, Side.BOTTOM), z_mm, box)
    across = along_axis(site, start, (Side.LEFT, Side.RIGHT), z_mm, box)
    lamp = np.multiply.outer(*_single((1.0 - site.light.room) * down.lamp, across.lamp))
    room = np.multiply.outer(*_single(site.light.room * down.room, across.room))
    for layer, hole in site.plan.chain(site.window, start):
        if hole.oval:
            left = _under_oval(site, layer, hole, z_mm, box)
            lamp *= left.lamp.astype(np.float32)
            room *= left.room.astype(np.float32)
    lit: Float32Array = lamp
    lit += room
    return lit


def along_axis(site: Site, start: int, sides: tuple[Side, Side], z_mm: float, box: Box) -> Daylight:
    """Return the light that two opposite straight walls leave to a level plane, along one axis."""
    along = site.grid.x_mm(box) if Side.LEFT in sides else site.grid.y_mm(box)
    if start >= len(site.plan.layers):
        return Daylight(np.ones_like(along), np.ones_like(along))
    one, two = (
        daylight(ridges(site, start, side), sum(side.outward) * along, z_mm, side, site.light)
        for side in sides
    )
    return Daylight(one.lamp * two.lamp, one.room * two.room)


def _single(*arrays: Float64Array) -> tuple[Float32Array, ...]:
    return tuple(array.astype(np.float32) for array in arrays)


def _under_oval(site: Site, layer: LayerPlan, hole: Hole, z_mm: float, box: Box) -> Daylight:
    distance, across, down = site.grid.oval_distance_mm(hole, box)
    tangent = np.zeros_like(distance)
    for x, height in layer.profile:
        rise = layer.base_mm + height - z_mm
        tangent = np.maximum(tangent, rise / np.maximum(x - distance, 1e-3))
    horizon = np.arctan(tangent)
    toward = across * site.light.direction[0] + down * site.light.direction[1]
    return Daylight(lamp_above(horizon, toward, site.light), (1.0 + np.cos(horizon)) / 2.0)


def shade(
    surface: Surface,
    tile: Float32Array | None,
    lit: Float32Array,
    glint: Float32Array | None = None,
    finish: Finish = Finish.MATT,
) -> Float32Array:
    """Return a surface under light: colour x tone x light, plus sheen, highlights bent to white.

    Parameters
    ----------
    tile
        The surface's texture under the block: None, (rows, columns) or (rows, columns, 3).
    lit
        What multiplies the colour, shape (rows, columns).
    glint
        Sheen to add, shape (rows, columns), None for none.

    Returns
    -------
    Linear sRGB, shape (rows, columns, 3).
    """
    if tile is None or tile.ndim == 2:
        linear = tinted(lit if tile is None else tile * lit, surface.colour)
    else:
        linear = lit_by(tile, lit)
    if finish is Finish.METALLIC:
        base = surface.colour if tile is None or tile.ndim == 2 else tile
        return _bent(np.minimum(linear, base), np.maximum(linear - base, 0.0))
    if glint is not None:
        return _bent(linear, glint[..., None])
    return linear


def _bent(body: Float32Array, added: Float32Array) -> Float32Array:
    """Add light to a body colour so that it approaches white and never passes it."""
    room = np.maximum(_BRIGHTEST - body, 1e-4)
    linear: Float32Array = body + room * (1.0 - np.exp(-added / room))
    return linear
