"""Where the eye goes: how far each place stands from the mean of the art.

The measure is the frequency-tuned contrast of Achanta and others: the distance in CIELAB between
a slightly blurred picture and its own mean. Two things differ from the paper: the distance is
CIEDE2000, as everywhere in this program, and the mean is that of the art alone, never of art plus
border, or the answer would depend on the border's width.

Limits: values compare places within one picture. They have no absolute cut-off and do not say
what a face or a word in the picture does to the eye; report a border's pull beside that of
neutral greys (:func:`grey_pulls`) round the same picture.

References
----------
R. Achanta, S. Hemami, F. Estrada, S. Süsstrunk, Frequency-tuned salient region detection, IEEE
CVPR 2009, equation 4.
"""

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float32Array, Float64Array, as_lab
from framing_palette.colour import delta_e_2000
from framing_palette.errors import FieldError
from framing_palette.picture.resampling import shrunk

ATTENTION_SIDE = 400
"""Attention is measured at most this many pixels long: the eye's first glance is coarse."""

_BLUR_SIGMA_PX = 1.0  # the 5 x 5 binomial kernel of the paper
_GREY_LIGHTNESS = tuple(range(0, 101, 10))


def strength_map(lab_d50: ArrayLike) -> Float32Array:
    """Return the strength of each place, in ΔE00 to the mean of the art.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3), the art alone.

    Returns
    -------
    strength
        Shape (rows, columns) of the input, or smaller in the same proportions, longest side at
        most ``ATTENTION_SIDE``.
    """
    lab = np.asarray(as_lab(lab_d50), dtype=np.float32)
    mean_lab = lab.reshape(-1, 3).mean(axis=0, dtype=np.float64)
    blurred = cv2.GaussianBlur(
        shrunk(lab, ATTENTION_SIDE), (5, 5), _BLUR_SIGMA_PX, borderType=cv2.BORDER_REFLECT
    )
    return delta_e_2000(blurred, mean_lab).astype(np.float32)


def border_strength(colours: ArrayLike, shares: ArrayLike, mean_lab: ArrayLike) -> Float64Array:
    """Return the mean strength of each border of a catalogue at once, in ΔE00.

    A border is the same all along, so its mean strength is the mean over its own colours: the
    closed form needs neither the border's width nor a rendered picture.

    Parameters
    ----------
    colours
        Shape (n, k, 3), CIELAB D50; rows of a sample with fewer colours may hold anything where
        its share is 0.
    shares
        Shape (n, k), 0..1; each sample's shares are scaled to sum to one.
    mean_lab
        Shape (3,), mean of the art.

    Returns
    -------
    strength
        Shape (n,); nan for a sample without any share.
    """
    share = np.asarray(shares, dtype=np.float64)
    difference = np.where(share > 0, delta_e_2000(as_lab(colours), as_lab(mean_lab)), 0.0)
    total = share.sum(axis=-1)
    strength: Float64Array = np.divide(
        (difference * share).sum(axis=-1), total, out=np.full(total.shape, np.nan), where=total > 0
    )
    return strength


def pull(strength: ArrayLike, focus_strength: float) -> Float64Array:
    """Return how strongly borders draw the eye relative to the focus; 1 is as strong as it.

    A focus weaker than 1 ΔE00 counts as 1: on an even picture nothing would be finite otherwise.

    Raises
    ------
    FieldError
        When the focus strength is not a number of 0 or more.
    """
    if not focus_strength >= 0:
        raise FieldError("focus strength", got=focus_strength, wanted="it must be 0 or more")
    return np.asarray(strength, dtype=np.float64) / max(focus_strength, 1.0)


def grey_pulls(mean_lab: ArrayLike, focus_strength: float) -> dict[int, float]:
    """Return the pull of plain neutral greys round the same picture, by their L* (0, 10, ... 100).

    This is the yardstick beside which a border's pull means something.
    """
    greys = np.array([[[lightness, 0.0, 0.0]] for lightness in _GREY_LIGHTNESS])
    pulls = pull(border_strength(greys, np.ones((len(greys), 1)), mean_lab), focus_strength)
    return dict(zip(_GREY_LIGHTNESS, pulls.tolist(), strict=True))
