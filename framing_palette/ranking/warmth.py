"""Warmth of whites: a cold white beside cream paper, a yellow cream beside a cold photograph."""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.ranking.pull import bearable_chroma
from framing_palette.ranking.ramps import rise
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.subjects import Subject

PALE_RAMP = 15.0  # L* units below the limit over which a colour becomes a pale one
TINT_CHROMA = (8.0, 24.0)  # C*ab between which an off-white becomes a tint of its hue


def warmth_mismatch(
    lab: Float64Array, presence: Float64Array, subject: Subject, limits: Limits
) -> Float64Array:
    """Return how far each pale colour is from the picture's whites, in (a*, b*) units, shape (k,).

    The nearest of the picture's own light colours counts when it is nearer than its white, so that
    a pale pink which the picture uses is no wrong white, and a plain tint of a hue that the picture
    uses is excused too. Zero for colours that are not pale, at most twice the limit, and halved
    where the picture shows no white to compare with.

    Parameters
    ----------
    lab
        Shape (k, 3).
    presence
        Shape (k,): how surely the picture uses each colour's hue.
    subject, limits
        The picture and the rule's limits.
    """
    gap = _held(lab, subject, limits) - nearest_white(lab, subject, limits)
    distance = np.minimum(np.hypot(gap[:, 0], gap[:, 1]), 2.0 * limits.warmth_limit)
    tint = presence * rise(np.hypot(lab[:, 1], lab[:, 2]), *TINT_CHROMA)
    pale = rise(lab[:, 0], limits.pale_lightness - PALE_RAMP, limits.pale_lightness)
    sure = 0.5 + 0.5 * subject.whites.trust
    return np.asarray(sure * distance * pale * (1.0 - tint))


def nearest_white(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return (a*, b*) of the white or light colour of the picture nearest to each, shape (k, 2)."""
    whites = subject.whites.choices
    gap = _held(lab, subject, limits)[:, None, :] - whites[None, :, :]
    nearest = np.hypot(gap[..., 0], gap[..., 1]).argmin(axis=1)
    return np.asarray(whites[nearest])


def _held(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return (a*, b*) with no more chroma than a border may have: overpowering tells the rest."""
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    most = bearable_chroma(subject, limits)
    return np.asarray(lab[:, 1:] * (most / np.maximum(chroma, most))[:, None])
