"""Surfaces: how the sample's texture and softness suit the picture's."""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.picture.findings import BANDS_MM
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.subjects import Subject

CONTRAST_FLOOR = 0.5  # L* units: contrast below it is not seen
CONTRAST_SCALE = 0.9  # natural logarithms of contrast at which two surfaces are plainly unlike
BUSIER_COSTS = 1.6  # a border busier than the picture is worse than one quieter
CROSSED_COSTS = 0.2  # part of the affinity that two strong grains lose when they cross


def texture_affinity(
    columns: SampleColumns, subject: Subject, width_mm: float | None = None
) -> Float64Array:
    """Return how well each surface suits the picture's, 0..1, shape (n,); nan when unknown.

    Contrast is compared octave by octave at true scale, where both are known; a grain that runs
    the same way helps when both have one. Octaves wider than the visible border do not count.
    """
    art = np.array(subject.texture.lightness_contrast)
    usable = np.array([width_mm is None or band <= width_mm for band in BANDS_MM])
    known = usable & ~np.isnan(art) & ~np.isnan(columns.contrast)
    count = known.sum(axis=1)
    gap = np.log((columns.contrast + CONTRAST_FLOOR) / (art + CONTRAST_FLOOR))
    cost = np.where(known, np.where(gap > 0, BUSIER_COSTS * gap, -gap), 0.0).sum(axis=1)
    mean = cost / np.maximum(count, 1) / CONTRAST_SCALE
    affinity = np.exp(-mean) * _direction(columns, subject)
    return np.where(count > 0, affinity, np.nan)


def softness_agreement(columns: SampleColumns, subject: Subject) -> Float64Array:
    """Return 1 when surface and subject are equally soft, falling to 0; 0.5 when unknown."""
    gap = np.abs(columns.softness - subject.softness)
    return np.where(np.isnan(gap), 0.5, 1.0 - gap)


def _direction(columns: SampleColumns, subject: Subject) -> Float64Array:
    """Return 1 for grains that run together, less for strong ones that cross."""
    angle = np.radians(columns.grain[:, 0] - subject.texture.direction_deg)
    both = columns.grain[:, 1] * subject.texture.direction_strength
    return np.asarray(np.nan_to_num(1.0 - CROSSED_COSTS * both * np.sin(angle) ** 2, nan=1.0))
