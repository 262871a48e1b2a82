"""Sections: how much lamp and sky reach each point of a cross-section through the frame.

Every opening is taken as four straight walls. For a point on a layer, the walls outward of it
(and its own ridges inward) raise a horizon; the lamp is a soft disc that sinks behind it, and
the sky seen above it is (cos a + cos b) / 2 for horizons a and b on the two sides, the view
factor of a long trench.

References
----------
T. R. Oke, Canyon geometry and the nocturnal urban heat island, Journal of Climatology 1, 1981
(sky view factor of a long trench).
"""

from dataclasses import dataclass, field

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.catalogue import Finish
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light, body_light, lambert, sheen
from framing_palette.preview.plans import Build, LayerPlan, Plan, Side

_SAMPLES_PER_PX = 6  # across the section, averaged: thin bevels and arrises stay true
_TOUCHING_MM = 1e-3
_ROUNDED_MM = {Build.SHEET: 0.04, Build.MITRED: 0.5, Build.BUTTED: 0.3}  # how sharp arrises are
_ARRIS_DROP_MM = 2.0
_ARRIS_DEG = 32.0  # a corner that turns less belongs to a curve
_ARRIS_TAPS = 5


@dataclass(frozen=True, slots=True)
class Site:
    """Where a part of a plan is drawn: round which window, on which grid, under which light.

    ``whole`` is the full picture, whose blocks must fit together; ``known`` holds the light along
    its axes, worked out once for all blocks.
    """

    plan: Plan
    window: int
    grid: Grid
    light: Light
    whole: Box
    known: dict[tuple[object, ...], "Daylight"] = field(
        default_factory=dict, init=False, compare=False, repr=False
    )

    def layer(self, number: int) -> LayerPlan:
        """Return a layer of the plan."""
        return self.plan.layers[number]


@dataclass(frozen=True, slots=True)
class Ridges:
    """Corner points of what may stand in the light: outward coordinate and height."""

    outward_mm: Float64Array
    z_mm: Float64Array


@dataclass(frozen=True, slots=True)
class Response:
    """What multiplies a layer's colour along its section, and the sheen that is added."""

    lamp: Float64Array
    room: Float64Array
    sheen: Float64Array

    def part(self, start: int, stop: int) -> "Response":
        """Return the response of some of the points."""
        part = slice(start, stop)
        return Response(self.lamp[part], self.room[part], self.sheen[part])


@dataclass(frozen=True, slots=True)
class Daylight:
    """Light that reaches a level plane: 1 is unhindered."""

    lamp: Float64Array
    room: Float64Array

    def part(self, start: int, stop: int) -> "Daylight":
        """Return the light at some of the points."""
        return Daylight(self.lamp[start:stop], self.room[start:stop])


def ridges(site: Site, start: int, side: Side) -> Ridges:
    """Return the corner points of the straight-sided layers from ``start`` outward on one side."""
    outward: list[float] = []
    z: list[float] = []
    for layer, hole in site.plan.chain(site.window, start):
        if hole.oval:
            continue
        edge = hole.rect.edge(side)
        outward += [edge + x for x, _ in layer.profile]
        z += [layer.base_mm + height for _, height in layer.profile]
    return Ridges(np.asarray(outward), np.asarray(z))


def daylight(ridge: Ridges, at_mm: Float64Array, z_mm: float, side: Side, light: Light) -> Daylight:
    """Return the light that the walls on one side leave to a level plane.

    Parameters
    ----------
    at_mm
        Outward coordinates on that side, shape (n,).
    z_mm
        Height of the plane.
    """
    above = ridge.z_mm > z_mm  # what lies lower hides nothing
    ridge = Ridges(ridge.outward_mm[above], ridge.z_mm[above])
    horizon = horizon_rad(ridge, at_mm, np.array([z_mm]))
    lamp = lamp_above(horizon, np.asarray(toward_lamp(side, light)), light)
    return Daylight(lamp, (1.0 + np.cos(horizon)) / 2.0)


def section(
    site: Site,
    number: int,
    side: Side,
    at_mm: Float64Array,
    *,
    bare: bool = False,
) -> Response:
    """Return how a layer's surface returns light across one side.

    Parameters
    ----------
    number
        Which layer of the plan.
    at_mm
        Distances outward from its opening, shape (n,): the middles of pixels. The answer is the
        mean over each pixel.
    bare
        True for the cut core of a board, which is matt whatever its surface.
    """
    layer = site.layer(number)
    spread = (np.arange(_SAMPLES_PER_PX) + 0.5) / _SAMPLES_PER_PX - 0.5
    at = (at_mm[:, None] + spread / site.grid.px_per_mm).ravel()
    z, slope = heights(layer, at)
    edge = layer.hole(site.window).rect.edge(side)
    outer = horizon_rad(ridges(site, number, side), edge + at, z)
    inner = horizon_rad(_own_ridges_inward(layer), -at, z)
    toward = toward_lamp(side, site.light)
    lit = lamp_above(outer, np.asarray(toward), site.light)
    lit = lit * lamp_above(inner, np.asarray(-toward), site.light)
    across, down = side.outward
    normal = facing(slope, np.asarray(float(across)), np.asarray(float(down)))
    sky = (np.cos(outer) + np.cos(inner)) / 2.0
    response = respond(normal, None if bare else layer.skin.finish, Daylight(lit, sky), site.light)
    parts = (response.lamp, response.room, response.sheen)
    return Response(*(part.reshape(-1, _SAMPLES_PER_PX).mean(axis=1) for part in parts))


def respond(
    normal: Float64Array, finish: Finish | None, reached: Daylight, light: Light
) -> Response:
    """Return what facets do with the light that reaches them; no finish is bare board.

    Parameters
    ----------
    normal
        Shape (..., 3).
    reached
        Shape (...).
    """
    if finish is None:
        lamp = (1.0 - light.room) * lambert(normal, light) * reached.lamp
        return Response(lamp, light.room * reached.room, np.zeros_like(lamp))
    body = body_light(normal, finish, light)
    mirrored = body if finish is Finish.METALLIC else 1.0
    return Response(
        (1.0 - light.room) * body * reached.lamp,
        light.room * reached.room * mirrored,
        sheen(normal, finish, light) * reached.lamp,
    )


def horizon_rad(ridge: Ridges, at_mm: Float64Array, z_mm: Float64Array) -> Float64Array:
    """Return the angle above the level at which the ridges farther out close the sky, 0 or more."""
    if not ridge.z_mm.size:
        return np.zeros_like(at_mm)
    away = ridge.outward_mm[:, None] - at_mm[None, :]
    away[away <= _TOUCHING_MM] = np.inf
    tangent = (ridge.z_mm[:, None] - z_mm[None, :]) / away
    angle: Float64Array = np.arctan(np.maximum(tangent.max(axis=0), 0.0))
    return angle


def facing(slope: Float64Array, across: Float64Array, down: Float64Array) -> Float64Array:
    """Return the normals, shape (..., 3), of a surface that rises toward (across, down)."""
    normal = np.stack([-slope * across, -slope * down, np.ones_like(slope)], axis=-1)
    unit: Float64Array = normal / np.linalg.norm(normal, axis=-1, keepdims=True)
    return unit


def heights(layer: LayerPlan, at_mm: Float64Array) -> tuple[Float64Array, Float64Array]:
    """Return height above the art and slope of a layer's surface.

    A corner of the polyline that turns little belongs to a curve, so the slope runs on smoothly
    over it; a sharp one is an arris and is rounded by the width that hands leave it.
    """
    x, height = (np.asarray(axis) for axis in zip(*layer.profile, strict=True))
    z = layer.base_mm + np.interp(at_mm, x, height)
    if layer.build is not Build.SHEET:
        x = np.concatenate([[x[0] - 0.3], x, [x[-1] + 0.3]])
        height = np.concatenate(
            [[height[0] - _ARRIS_DROP_MM], height, [height[-1] - _ARRIS_DROP_MM]],
        )
    first, last = _turning_slopes(x, height)
    width = _ROUNDED_MM[layer.build]
    shifts = np.linspace(-width / 2, width / 2, _ARRIS_TAPS)
    slope = _slope_at(at_mm + shifts[:, None], x, first, last).mean(axis=0)
    return z, np.asarray(slope)


def _turning_slopes(x: Float64Array, height: Float64Array) -> tuple[Float64Array, Float64Array]:
    """Return the slopes at the beginning and the end of each segment of a polyline."""
    slope = np.diff(height) / np.maximum(np.diff(x), 1e-3)
    angle = np.arctan(slope)
    smooth = np.abs(np.diff(angle)) < np.radians(_ARRIS_DEG)
    shared = np.tan((angle[1:] + angle[:-1]) / 2.0)
    first, last = slope.copy(), slope.copy()
    first[1:] = np.where(smooth, shared, slope[1:])
    last[:-1] = np.where(smooth, shared, slope[:-1])
    return first, last


def _slope_at(
    at_mm: Float64Array, x: Float64Array, first: Float64Array, last: Float64Array
) -> Float64Array:
    segment = np.clip(np.searchsorted(x, at_mm, side="right") - 1, 0, x.size - 2)
    share = ((at_mm - x[:-1][segment]) / np.maximum(np.diff(x), 1e-3)[segment]).clip(0.0, 1.0)
    slope = first[segment] + (last - first)[segment] * share
    return np.where((at_mm < x[0]) | (at_mm >= x[-1]), 0.0, slope)


def lamp_above(horizon: Float64Array, toward: Float64Array, light: Light) -> Float64Array:
    """Return the share of the lamp that stands above a horizon.

    Parameters
    ----------
    toward
        The lamp's direction along the way outward; where it is negative the horizon lies on the
        other side and hides nothing.
    """
    altitude = np.arctan2(light.direction[2], np.maximum(toward, 1e-9))
    radius = np.radians(max(light.radius_deg, 0.05))
    place = np.clip((altitude - horizon) / (2.0 * radius) + 0.5, 0.0, 1.0)
    share: Float64Array = np.where(toward > 0.0, place * place * (3.0 - 2.0 * place), 1.0)
    return share


def toward_lamp(side: Side, light: Light) -> float:
    """Return the lamp's direction along the way outward of a side."""
    across, down = side.outward
    return across * light.direction[0] + down * light.direction[1]


def _own_ridges_inward(layer: LayerPlan) -> Ridges:
    x, height = (np.asarray(axis) for axis in zip(*layer.profile, strict=True))
    return Ridges(-x, layer.base_mm + height)
