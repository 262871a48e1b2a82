"""Light: one soft lamp and the room, and how each finish returns them.

The model is small on purpose, and it is relative: a level, open surface returns exactly its
measured colour whatever its finish, so light shapes the form and never repaints a sample.

- The room sends the share ``room`` of the light from all sides, the lamp the rest from one side.
- Diffuse part: lamp by Lambert's cosine law, room by the share of sky a facet sees.
- Sheen (satin, gloss): a lobe round the mirror direction by the half-way vector (Blinn 1977),
  less what a level surface returns of it, because the measured colour already holds that.
- Leaf (metallic): the surface mirrors a room of three broad parts (all round, lamp's side,
  lamp), again in proportion to the level surface, and tints what it mirrors.

References
----------
J. H. Lambert, Photometria, 1760. J. F. Blinn, Models of light reflection for computer
synthesized pictures, SIGGRAPH 1977. The strengths below are set by eye.
"""

from dataclasses import dataclass
from math import cos, radians, sin

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.catalogue import Finish


@dataclass(frozen=True, slots=True)
class Light:
    """Where the light comes from and how soft it is.

    Parameters
    ----------
    azimuth_deg
        Clockwise from the top as seen by the viewer; 315 is the upper left, the default a little
        above it.
    elevation_deg
        Above the wall: 90 is straight on.
    radius_deg
        Half the lamp's angular size; larger is softer.
    room
        Share of the light that comes from all sides, 0..1.
    """

    azimuth_deg: float = 322.0
    elevation_deg: float = 42.0
    radius_deg: float = 14.0
    room: float = 0.50

    @property
    def direction(self) -> tuple[float, float, float]:
        """Unit vector toward the lamp: x right, y down, z toward the viewer."""
        level = cos(radians(self.elevation_deg))
        return (
            sin(radians(self.azimuth_deg)) * level,
            -cos(radians(self.azimuth_deg)) * level,
            sin(radians(self.elevation_deg)),
        )


@dataclass(frozen=True, slots=True)
class Sheen:
    """Strength and narrowness of the lobe round the mirror direction."""

    strength: float
    power: float


_SHEEN = {
    Finish.MATT: Sheen(0.0, 1.0),
    Finish.SATIN: Sheen(0.10, 14.0),
    Finish.GLOSS: Sheen(0.34, 46.0),
    Finish.METALLIC: Sheen(0.0, 1.0),
}
_ALL_ROUND, _LAMP_SIDE, _LAMP = 0.24, 0.72, 2.2
_LAMP_SIDE_POWER, _LAMP_POWER = 2.0, 11.0
_LEAF_DIFFUSE = 0.22  # leaf is never a perfect mirror: a little of it scatters


def lambert(normal: Float64Array, light: Light) -> Float64Array:
    """Return the lamp's diffuse light on facets, relative to a level surface.

    Parameters
    ----------
    normal
        Shape (..., 3), unit vectors.
    """
    direction = np.asarray(light.direction)
    lit: Float64Array = np.maximum(normal @ direction, 0.0) / direction[2]
    return lit


def sheen(normal: Float64Array, finish: Finish, light: Light) -> Float64Array:
    """Return the light added by the mirror lobe, never negative, 0 for a level surface."""
    kind = _SHEEN[finish]
    if not kind.strength:
        return np.zeros(normal.shape[:-1])
    half = np.asarray(light.direction) + np.array([0.0, 0.0, 1.0])
    half /= np.linalg.norm(half)
    lobe = np.maximum(normal @ half, 0.0) ** kind.power
    added: Float64Array = np.maximum(kind.strength * (lobe - half[2] ** kind.power), 0.0)
    return added


def leaf(normal: Float64Array, light: Light) -> Float64Array:
    """Return how strongly metallic leaf mirrors the room, relative to a level surface."""
    level = _room_seen(np.asarray(light.direction[2]))
    mirrored = 2.0 * normal[..., 2:] * normal
    mirrored = mirrored - np.array([0.0, 0.0, 1.0])
    return _room_seen(mirrored @ np.asarray(light.direction)) / level


def _room_seen(toward_lamp: Float64Array) -> Float64Array:
    broad = ((toward_lamp + 1.0) / 2.0) ** _LAMP_SIDE_POWER
    lamp = np.maximum(toward_lamp, 0.0) ** _LAMP_POWER
    return _ALL_ROUND + _LAMP_SIDE * broad + _LAMP * lamp


def body_light(normal: Float64Array, finish: Finish, light: Light) -> Float64Array:
    """Return what multiplies a surface's colour under the lamp, 1 for a level surface."""
    diffuse = lambert(normal, light)
    if finish is not Finish.METALLIC:
        return diffuse
    return _LEAF_DIFFUSE * diffuse + (1.0 - _LEAF_DIFFUSE) * leaf(normal, light)
