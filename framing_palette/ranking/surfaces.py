"""Surfaces: how the sample's texture and softness suit the picture's."""

from math import nan

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.picture import Texture
from framing_palette.picture.findings import BANDS_MM
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.subjects import Subject

CONTRAST_SCALE = 0.9  # natural logarithms of contrast at which two surfaces are plainly unlike
BUSIER_COSTS = 1.6  # a border busier than the picture is worse than one quieter


def texture_affinity(
    columns: SampleColumns, subject: Subject, width_mm: float | None = None
) -> Float64Array:
    """Return how well each surface suits the picture's, 0..1, shape (n,); nan when unknown.

    Contrast is compared octave by octave at true scale, where both are known; a grain that runs
    the same way helps when both have one. Octaves wider than the visible border do not count.
    """
    affinity = np.full(len(columns), nan)
    usable = [width_mm is None or band <= width_mm for band in BANDS_MM]
    for index in np.flatnonzero(columns.textured):
        texture = columns.samples[index].texture
        if texture is not None:
            affinity[index] = _affinity(texture, subject.texture, np.array(usable))
    return affinity


def softness_agreement(columns: SampleColumns, subject: Subject) -> Float64Array:
    """Return 1 when surface and subject are equally soft, falling to 0; 0.5 when unknown."""
    gap = np.abs(columns.softness - subject.softness)
    return np.where(np.isnan(gap), 0.5, 1.0 - gap)


def _affinity(sample: Texture, picture: Texture, usable: "np.typing.NDArray[np.bool_]") -> float:
    own, art = np.array(sample.lightness_contrast), np.array(picture.lightness_contrast)
    known = usable & ~np.isnan(own) & ~np.isnan(art)
    if not known.any():
        return nan
    gap = np.log((own[known] + 0.5) / (art[known] + 0.5))
    cost = np.where(gap > 0, BUSIER_COSTS * gap, -gap).mean() / CONTRAST_SCALE
    return float(np.exp(-cost) * _direction(sample, picture))


def _direction(sample: Texture, picture: Texture) -> float:
    """Return 1 for grains that run together, down to 0.8 for strong ones that cross."""
    both = sample.direction_strength * picture.direction_strength
    angle = np.radians(sample.direction_deg - picture.direction_deg)
    return float(1.0 - 0.2 * both * np.sin(angle) ** 2)
