"""Near misses and stray hues: the two ways in which a hue fights the picture's hues.

A near miss is a hue close to one of the picture's, at similar depth and strength, yet plainly not
it: it looks like a match that failed. A stray is a strong hue that the picture does not use.
"""

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.ranking.kinship import Kinship
from framing_palette.ranking.ramps import bell, rise
from framing_palette.ranking.rule import Limits

SAME_HUE = 4.5  # ΔE units: hues within it are the same to the eye at arm's length
FAR_COS = (0.42, 0.75)  # cosines of 65 and 41 degrees: past them a hue is another hue
NEARLY_STRONG, FULLY_STRONG = 0.6, 1.3  # parts of the limit between which strength counts
SIMILAR_DEPTH = 16.0  # L* units


def hue_presence(kinship: Kinship, importance: Float64Array) -> Float64Array:
    """Return how surely the picture uses each sample colour's own hue, 0..1, shape (s,).

    It depends on the sample's hue, and falls but never rises with its chroma: a stronger colour
    shows a difference in hue more. The difference is taken as if the picture's colour were as
    strong as the sample's.
    """
    turn = np.sqrt(np.maximum(0.5 * (1.0 - kinship.angle_cos), 0.0))  # sine of half the angle
    hue = 2.0 * kinship.chroma * turn / (1.0 + 0.015 * kinship.chroma)
    telling = rise(kinship.target_chroma, 6.0, 18.0) * np.minimum(1.0, importance / 0.6)
    return np.asarray((bell(hue, SAME_HUE) * telling).max(axis=1))


def may_be_missed(kinship: Kinship, limits: Limits) -> BoolArray:
    """Return which of the picture's colours are strong enough to be missed, shape (m,)."""
    return np.asarray(kinship.target_chroma[0] > NEARLY_STRONG * limits.near_miss_chroma)


def near_miss(
    kinship: Kinship, presence: Float64Array, importance: Float64Array, limits: Limits
) -> Float64Array:
    """Return how much each pair of colours looks like a failed match, 0..1, shape (s, m)."""
    strong = limits.near_miss_chroma
    off = rise(kinship.hue, limits.near_miss_inner, 2.2 * limits.near_miss_inner)
    near = rise(kinship.angle_cos, *FAR_COS)
    strength = rise(kinship.chroma, NEARLY_STRONG * strong, FULLY_STRONG * strong)
    target_strength = rise(kinship.target_chroma, NEARLY_STRONG * strong, FULLY_STRONG * strong)
    ratio = rise(kinship.chroma / np.maximum(kinship.target_chroma, 1.0), 0.35, 0.75)
    depth = bell(kinship.lightness, SIMILAR_DEPTH)
    counts = np.minimum(1.0, importance / 0.6)
    degree = off * near * strength * target_strength * ratio * depth * counts
    return degree * (1.0 - presence[:, None])


def stray(kinship: Kinship, presence: Float64Array, level: float) -> Float64Array:
    """Return how much each sample colour is a strong hue that the picture lacks, 0..1, shape (s,).

    Parameters
    ----------
    kinship, presence
        Of the sample colours.
    level
        C*ab of a strong colour in this picture.
    """
    return rise(kinship.chroma[:, 0], 0.3 * level, 1.1 * level) * (1.0 - presence)
