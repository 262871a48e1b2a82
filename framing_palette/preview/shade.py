"""Shade: the light on level planes inside a frame, and on the surfaces that lie there."""

from collections.abc import Iterator

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.catalogue import Finish
from framing_palette.preview.channels import (
    along_lines,
    for_each_channel,
    in_lines,
    lit_by,
    tinted,
)
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
    first, last, begin, end = _reach(sides, box, site.whole)
    if first < begin or last > end:
        return _along(site, start, sides, z_mm, box)
    key = (start, sides, z_mm)
    if key not in site.known:
        site.known[key] = _along(site, start, sides, z_mm, site.whole)
    return site.known[key].part(first - begin, last - begin)


def _reach(sides: tuple[Side, Side], box: Box, whole: Box) -> tuple[int, int, int, int]:
    if Side.LEFT in sides:
        return box.column_0, box.column_1, whole.column_0, whole.column_1
    return box.row_0, box.row_1, whole.row_0, whole.row_1


def _along(site: Site, start: int, sides: tuple[Side, Side], z_mm: float, box: Box) -> Daylight:
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
        lit = lit if tile is None else tile * lit
        linear, base = tinted(lit, surface.colour), None
    else:
        linear, base = lit_by(tile, lit), tile
    if finish is Finish.METALLIC:
        for rows in _where(lit, 1.0):
            _gleam(linear[rows], surface.colour if base is None else base[rows])
    elif glint is not None:
        for rows in _where(glint, 0.0):
            added = in_lines(for_each_channel(glint[rows]))
            _bend(in_lines(linear[rows]), added)
    return linear


def _where(light: Float32Array, above: float) -> Iterator[slice]:
    """Yield the stretches of rows in which some light is above a level."""
    inside = np.concatenate([[False], light.max(axis=1, initial=above) > above, [False]])
    edges = np.flatnonzero(np.diff(inside)).tolist()
    for first, stop in zip(edges[::2], edges[1::2], strict=True):
        yield slice(first, stop)


def _gleam(linear: Float32Array, base: Float32Array) -> None:
    """Bend what leaf returns beyond its own colour toward white, in place."""
    lines = in_lines(linear)
    own = along_lines(base, linear.shape[1]) if base.ndim == 1 else in_lines(base)
    added = np.maximum(lines - own, 0.0)
    np.minimum(lines, own, out=lines)
    _bend(lines, added)


def _bend(body: Float32Array, added: Float32Array) -> None:
    """Add light to a body colour, in place, so that it nears white and never passes it.

    ``added`` is used up.
    """
    import cv2

    room = np.maximum(_BRIGHTEST - body, 1e-4)
    np.divide(added, room, out=added)
    np.negative(added, out=added)
    cv2.exp(added, dst=added)
    np.subtract(1.0, added, out=added)
    added *= room
    body += added
