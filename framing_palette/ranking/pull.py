"""Pull: whether the eye goes to the border before the place where it should rest.

Strength of a place is its colour distance to the mean of the art (never of art plus border, or
the answer would hang on the border's width); the focus is the unit. Pull is relative within one
picture and has no absolute limit: white beside a dark picture pulls and yet may serve. What
overpowers is colour stronger, or a shine brighter, than anything in the focus.
"""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000
from framing_palette.ranking.ramps import saturating
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.subjects import Subject

STRONG_PART = 0.85  # of the picture's own upper chroma
ART_BEARS = 0.8  # part of the art's upper chroma that a border may have beside a quieter focus


def pull(lab: Float64Array, subject: Subject) -> Float64Array:
    """Return strength of a border of each colour over the strength of the focus, shape (k,)."""
    return np.asarray(delta_e_2000(lab, np.array(subject.mean_lab))) / subject.focus_strength


def vividness(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return how strong each colour is for this picture, 0..1, shape (k,); 0.5 as the art's own."""
    cubed = (np.hypot(lab[:, 1], lab[:, 2]) / strong_chroma(subject, limits)) ** 3
    return cubed / (1.0 + cubed)


def strong_chroma(subject: Subject, limits: Limits) -> float:
    """Return the C*ab of a strong colour in this picture.

    A little below the middle of the focus's and the art's upper chroma, for a border as strong as
    the strongest part of the picture competes with it (principle 2); no border is called strong
    below the limit that holds for the quietest picture.
    """
    own = 0.5 * (subject.focus_chroma + subject.art_chroma)
    return max(STRONG_PART * own, limits.strong_chroma)


def overpowering(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return how far each colour's chroma goes beyond what the picture bears, 0..1, shape (k,)."""
    excess = np.hypot(lab[:, 1], lab[:, 2]) - bearable_chroma(subject, limits)
    return saturating(excess, limits.strength_scale)


def bearable_chroma(subject: Subject, limits: Limits) -> float:
    """Return the C*ab that a border may have: the focus's own, or most of the art's.

    What covers a good part of the art has set the level already, even when the focus is quiet.
    """
    most = ART_BEARS * subject.art_chroma
    return max(subject.focus_chroma, most, limits.strength_allowance)


def brightness(lab: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    """Return how far each colour is lighter than the focus's light tones, 0..1, shape (k,)."""
    return saturating(lab[:, 0] - subject.focus_light, 2.0 * limits.bright_scale)
