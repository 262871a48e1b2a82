"""Corners: the shade that the two rails of a mitred corner throw on each other.

Seen from a point on one rail, the other rail of the corner rises along the rail as its own does
across it, only farther off by the way to the mitre: at a distance s before the mitre and x from
the sight edge, the ridge that stands at X outward is s + X - x away. At the mitre itself both
directions are closed to the same height, so that the shade runs on over the joint.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.preview.lights import Light
from framing_palette.preview.plans import LayerPlan, Polyline, Side
from framing_palette.preview.sections import lamp_above, toward_lamp

_ACROSS, _ALONG = 40, 40  # places at which it is worked out; the shade is soft, so few will do
_FAR = 6.0  # times the rise: there a rail hides less than a hundredth of the sky
_LEAST_PX = 4.0  # a lower rise throws no shade that could be seen


@dataclass(frozen=True, slots=True, eq=False)
class Corner:
    """How high the other rail closes the sky, by distance from the sight edge and to the mitre.

    Parameters
    ----------
    horizon
        Angles in radians, shape (40, 40); the second axis runs with the square root of the way.
    start_mm, face_mm, reach_mm
        Where the profile begins, how wide it is and how far before the mitre shade is felt.
    """

    horizon: Float64Array
    start_mm: float
    face_mm: float
    reach_mm: float

    def left(
        self, end: Side, light: Light, across_mm: Float64Array, from_corner_mm: Float64Array
    ) -> Float32Array:
        """Return what the other rail leaves of lamp and sky, shape (rows, columns, 2).

        Parameters
        ----------
        end
            The side that the other rail lies on.
        across_mm
            Distance outward from the opening of each row.
        from_corner_mm
            How far each column lies beyond the opening's corner, below zero before it.
        """
        import cv2

        way = np.maximum(across_mm[:, None] - from_corner_mm[None, :], 0.0)
        column = np.sqrt(way / self.reach_mm).astype(np.float32) * np.float32(_ALONG - 1)
        row = (across_mm - self.start_mm) / self.face_mm * (_ACROSS - 1)
        rows = np.repeat(row.astype(np.float32)[:, None], column.shape[1], axis=1)
        both = _left(self, end, light)
        left = cv2.remap(both, column, rows, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
        return np.asarray(left, np.float32)


def corner_of(layer: LayerPlan, px_per_mm: float) -> Corner | None:
    """Return how a layer's rails shade each other, None when that could not be seen."""
    corner = _corner(layer.profile)
    if corner is None or corner.reach_mm / _FAR * px_per_mm < _LEAST_PX:
        return None
    return corner


@lru_cache(maxsize=64)
def _left(corner: Corner, end: Side, light: Light) -> Float32Array:
    lamp = lamp_above(corner.horizon, np.asarray(toward_lamp(end, light)), light)
    room = (1.0 + np.cos(corner.horizon)) / 2.0
    return np.stack([lamp, room], axis=-1).astype(np.float32)


@lru_cache(maxsize=64)
def _corner(profile: Polyline) -> Corner | None:
    x, height = (np.asarray(axis) for axis in zip(*profile, strict=True))
    face = float(x[-1] - x[0])
    rise = float((np.maximum.accumulate(height[::-1])[::-1] - height).max())
    if face <= 0 or rise <= 0:
        return None
    at = np.linspace(x[0], x[-1], _ACROSS)
    way = _FAR * rise * np.linspace(0.0, 1.0, _ALONG) ** 2
    beyond = x[None, :] - at[:, None]
    up = np.where(beyond >= 0.0, height[None, :] - np.interp(at, x, height)[:, None], 0.0)
    away = np.maximum(way[None, :, None] + beyond[:, None, :], 1e-3)
    tangent = (up[:, None, :] / away).max(axis=2)
    horizon = np.arctan(np.maximum(tangent, 0.0))
    horizon[:, -1] = 0.0  # nothing is felt beyond the reach
    return Corner(horizon, float(x[0]), face, _FAR * rise)
