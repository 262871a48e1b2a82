"""Surfaces: how the sample's texture and softness suit the picture's.

A surface suits the picture when it is like one of the picture's own, octave by octave at true
scale; where the picture has none like it, a quiet and fine one is the safer company, since coarse
patterns are seen first (common practice).
"""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.picture import BANDS_MM, TEXTURE_MEASURES, Texture, texture_distances
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.ramps import bell
from framing_palette.ranking.subjects import Subject

ALIKE_DISTANCE = 1.1  # texture distance at which likeness has fallen to 0.61
SEEN = np.array([0.3, 0.5, 0.7, 0.9, 1.0, 1.0])  # how far each octave is seen from a step away
BUSY_LIGHTNESS = 3.0  # seen L* contrast at which half the quiet is gone
QUIET_COUNTS = 0.7  # a quiet surface unlike the picture's is worth this much of a like one
SOFTER_COSTS, HARDER_COSTS = 0.5, 1.3  # agreement lost to a full difference in softness
CROSSED_COSTS = 0.2  # part of the affinity that two strong grains lose when they cross
_LIGHTNESS = slice(0, len(BANDS_MM))
_DIRECTION = TEXTURE_MEASURES.index("direction_deg")
_STRENGTH = TEXTURE_MEASURES.index("direction_strength")


def texture_affinity(
    columns: SampleColumns, subject: Subject, width_mm: float | None = None
) -> Float64Array:
    """Return how well each surface suits the picture, 0..1, shape (n,); nan when unknown.

    Octaves wider than the visible border do not count, for they cannot be seen on it.
    """
    suits = np.append(_suits(columns.textures, subject, width_mm), np.nan)  # -1: unknown
    return np.asarray(suits[columns.texture_of])


def _suits(rows: Float64Array, subject: Subject, width_mm: float | None) -> Float64Array:
    """Return how well each row of textures suits, shape (t,)."""
    affinity = np.full(len(rows), np.nan)
    known = np.isfinite(rows[:, _LIGHTNESS]).any(axis=1)
    if not known.any() or not subject.textures:
        return affinity
    rows = _visible(rows[known], width_mm)
    alike = np.max([_likeness(rows, texture) for texture in subject.textures], axis=0)
    alike = subject.texture_trust * alike
    suits = alike + (1.0 - alike) * QUIET_COUNTS * quiet(rows)
    affinity[known] = suits * _direction(rows, subject.textures[0])
    return affinity


def quiet(rows: Float64Array) -> Float64Array:
    """Return how little a surface is seen as a pattern, 1 for a flat one, shape (n,)."""
    seen = np.sqrt((np.nan_to_num(rows[:, _LIGHTNESS] * SEEN) ** 2).sum(axis=1))
    return np.asarray(1.0 / (1.0 + (seen / BUSY_LIGHTNESS) ** 2))


def softness_agreement(columns: SampleColumns, subject: Subject) -> Float64Array:
    """Return 1 when surface and subject are equally soft, falling to 0; 0.5 when unknown.

    A surface harder than a soft subject is the worse mistake (principle 6, common practice).
    """
    softer = columns.softness - subject.softness
    gap = np.where(softer > 0, SOFTER_COSTS * softer, -HARDER_COSTS * softer)
    return np.where(np.isnan(gap), 0.5, np.maximum(0.0, 1.0 - gap))


def _likeness(rows: Float64Array, texture: Texture) -> Float64Array:
    return np.nan_to_num(bell(texture_distances(texture, rows), ALIKE_DISTANCE))


def _visible(rows: Float64Array, width_mm: float | None) -> Float64Array:
    """Return rows in which the octaves that the border is too narrow for are unknown."""
    if width_mm is None:
        return rows
    wide = tuple(f"_{band:g}mm" for band in BANDS_MM if band > width_mm)
    hidden = [any(mark in name for mark in wide) for name in TEXTURE_MEASURES]
    return np.where(np.array(hidden), np.nan, rows)


def _direction(rows: Float64Array, texture: Texture) -> Float64Array:
    """Return 1 for grains that run together, less for strong ones that cross."""
    angle = np.radians(rows[:, _DIRECTION] - texture.direction_deg)
    both = rows[:, _STRENGTH] * texture.direction_strength
    crossed = np.nan_to_num(both * np.sin(angle) ** 2)
    return np.asarray(1.0 - CROSSED_COSTS * crossed)
