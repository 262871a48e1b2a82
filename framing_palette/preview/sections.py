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

from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.preview.lights import Light, body_light, lambert, sheen
from framing_palette.preview.plans import Build, LayerPlan, Plan, Side

_SAMPLES_PER_PX = 6  # across the section, averaged: thin bevels and arrises stay true
_TOUCHING_MM = 1e-3
_ROUNDED_MM = {Build.SHEET: 0.04, Build.MITRED: 0.5, Build.BUTTED: 0.3}  # how sharp arrises are
_ARRIS_DROP_MM = 2.0


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


@dataclass(frozen=True, slots=True)
class Daylight:
    """Light on a level plane under the layers above it, along one axis: 1 is unhindered."""

    lamp: Float64Array
    room: Float64Array


def ridges(plan: Plan, window: int, start: int, side: Side) -> Ridges:
    """Return the corner points of the layers from ``start`` outward, as one side shows them."""
    outward: list[float] = []
    z: list[float] = []
    for layer, hole in plan.chain(window, start):
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
    horizon = horizon_rad(ridge, at_mm, np.full_like(at_mm, z_mm))
    return Daylight(_lamp_above(horizon, _toward_lamp(side, light), light), _sky(horizon))


def section(
    plan: Plan,
    window: int,
    number: int,
    side: Side,
    at_mm: Float64Array,
    step_mm: float,
    light: Light,
    *,
    bare: bool = False,
) -> Response:
    """Return how a layer's surface returns light across one side.

    Parameters
    ----------
    number
        Which layer of the plan.
    at_mm
        Distances outward from its opening, shape (n,): the middles of pixels.
    step_mm
        Width of a pixel; the answer is the mean over it.
    bare
        True for the cut core of a board, which is matt whatever its surface.
    """
    layer = plan.layers[number]
    spread = (np.arange(_SAMPLES_PER_PX) + 0.5) / _SAMPLES_PER_PX - 0.5
    at = (at_mm[:, None] + spread * step_mm).ravel()
    z, slope = _heights(layer, at)
    edge = layer.hole(window).rect.edge(side)
    outer = horizon_rad(ridges(plan, window, number, side), edge + at, z)
    inner = horizon_rad(_own_ridges_inward(layer), -at, z)
    response = _respond(layer, slope, outer, inner, side, light, bare=bare)
    return Response(*(part.reshape(-1, _SAMPLES_PER_PX).mean(axis=1) for part in response))


def horizon_rad(ridge: Ridges, at_mm: Float64Array, z_mm: Float64Array) -> Float64Array:
    """Return the angle above the level at which the ridges farther out close the sky, 0 or more."""
    if not ridge.z_mm.size:
        return np.zeros_like(at_mm)
    away = ridge.outward_mm[:, None] - at_mm[None, :]
    rise = ridge.z_mm[:, None] - z_mm[None, :]
    tangent = np.where(away > _TOUCHING_MM, rise / np.maximum(away, _TOUCHING_MM), 0.0)
    angle: Float64Array = np.arctan(np.maximum(tangent.max(axis=0), 0.0))
    return angle


def facing(slope: Float64Array, outward: tuple[Float64Array, Float64Array]) -> Float64Array:
    """Return the normals, shape (..., 3), of a surface that rises outward with a slope."""
    normal = np.stack([-slope * outward[0], -slope * outward[1], np.ones_like(slope)], axis=-1)
    return normal / np.linalg.norm(normal, axis=-1, keepdims=True)


def heights(layer: LayerPlan, at_mm: Float64Array) -> tuple[Float64Array, Float64Array]:
    """Return height above the art and slope of a layer's surface, its arrises slightly rounded."""
    return _heights(layer, at_mm)


def lamp_above(horizon: Float64Array, toward_lamp: Float64Array, light: Light) -> Float64Array:
    """Return the share of the lamp that stands above a horizon.

    Parameters
    ----------
    toward_lamp
        The lamp's direction along the way outward; where it is negative the horizon lies on the
        other side and hides nothing.
    """
    altitude = np.arctan2(light.direction[2], np.maximum(toward_lamp, 1e-9))
    radius = np.radians(max(light.radius_deg, 0.05))
    place = np.clip((altitude - horizon) / (2.0 * radius) + 0.5, 0.0, 1.0)
    share: Float64Array = np.where(toward_lamp > 0.0, place * place * (3.0 - 2.0 * place), 1.0)
    return share


def _lamp_above(horizon: Float64Array, toward_lamp: float, light: Light) -> Float64Array:
    return lamp_above(horizon, np.asarray(toward_lamp), light)


def _sky(horizon: Float64Array) -> Float64Array:
    return (1.0 + np.cos(horizon)) / 2.0


def _toward_lamp(side: Side, light: Light) -> float:
    x, y = side.outward
    return x * light.direction[0] + y * light.direction[1]


def _heights(layer: LayerPlan, at_mm: Float64Array) -> tuple[Float64Array, Float64Array]:
    x = np.asarray([point for point, _ in layer.profile])
    height = np.asarray([point for _, point in layer.profile])
    if layer.build is not Build.SHEET:
        x = np.concatenate([[x[0] - 0.3], x, [x[-1] + 0.3]])
        height = np.concatenate(
            [[height[0] - _ARRIS_DROP_MM], height, [height[-1] - _ARRIS_DROP_MM]],
        )
    width = _ROUNDED_MM[layer.build]
    near, far = (np.interp(at_mm + shift, x, height) for shift in (-width / 2, width / 2))
    return layer.base_mm + np.interp(at_mm, x, height), (far - near) / width


def _own_ridges_inward(layer: LayerPlan) -> Ridges:
    x, height = np.asarray(layer.profile).T
    return Ridges(-x, layer.base_mm + height)


def _respond(
    layer: LayerPlan,
    slope: Float64Array,
    outer: Float64Array,
    inner: Float64Array,
    side: Side,
    light: Light,
    *,
    bare: bool,
) -> tuple[Float64Array, Float64Array, Float64Array]:
    toward = _toward_lamp(side, light)
    lit = _lamp_above(outer, toward, light) * _lamp_above(inner, -toward, light)
    sky = (np.cos(outer) + np.cos(inner)) / 2.0
    across, down = side.outward
    normal = facing(slope, (np.asarray(float(across)), np.asarray(float(down))))
    finish = layer.skin.finish
    if bare:
        return (1.0 - light.room) * lambert(normal, light) * lit, light.room * sky, 0.0 * slope
    body = body_light(normal, finish, light)
    mirrored = body if finish.value == "metallic" else 1.0
    lamp = (1.0 - light.room) * body * lit
    return lamp, light.room * sky * mirrored, sheen(normal, finish, light) * lit
