"""Warmth of whites: a cold white beside cream paper, a yellow cream beside a cold photograph."""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.ranking.pull import bearable_chroma
from framing_palette.ranking.ramps import rise
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.subjects import Subject


def warmth_mismatch(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return how far each pale colour is from the picture's whites, in (a*, b*) units, shape (k,).

    The nearest of the picture's own light colours counts when it is nearer than its white, so that
    a pale pink which the picture uses is no wrong white. Zero for colours that are not pale; halved
    where the picture shows no white to compare with.
    """
    gap = _held(lab, subject, limits) - nearest_white(lab, subject, limits)
    sure = 0.5 + 0.5 * subject.white_trust
    pale = rise(lab[:, 0], limits.pale_lightness - 10.0, limits.pale_lightness)
    return np.asarray(sure * np.hypot(gap[:, 0], gap[:, 1]) * pale)


def nearest_white(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return (a*, b*) of the white or light colour of the picture nearest to each, shape (k, 2)."""
    light = subject.art_lab[subject.art_lab[:, 0] > limits.pale_lightness - 10.0][:, 1:]
    whites = np.vstack([np.array([subject.white_ab]), light])
    gap = _held(lab, subject, limits)[:, None, :] - whites[None, :, :]
    nearest = np.hypot(gap[..., 0], gap[..., 1]).argmin(axis=1)
    return np.asarray(whites[nearest])


def _held(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return (a*, b*) with no more chroma than a border may have: overpowering tells the rest."""
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    most = bearable_chroma(subject, limits)
    return np.asarray(lab[:, 1:] * (most / np.maximum(chroma, most))[:, None])
