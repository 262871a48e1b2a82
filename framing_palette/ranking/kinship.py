"""Kinship: how each colour of a catalogue relates to each colour of a picture.

Echo, near miss and stray hue all read the same four differences, so they are taken once.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array


@dataclass(frozen=True, slots=True, eq=False)
class Kinship:
    """Differences between s colours of samples (rows) and m colours of the picture (columns).

    Parameters
    ----------
    hue
        Metric hue difference over S_H = 1 + 0.015 (C1 C2)^(1/2), ΔE units, shape (s, m).
    angle_cos
        Cosine of the hue angle between the two, shape (s, m); 1 when either is neutral.
    lightness
        L* of the sample less that of the picture's colour, shape (s, m).
    strength
        Chroma of the sample's colour less that of the picture's, in ΔE units: the integral of
        dC / (1 + 0.045 C), shape (s, m).
    chroma, target_chroma
        C*ab, shapes (s, 1) and (1, m).
    light
        L* of the samples, shape (s, 1).
    """

    hue: Float64Array
    angle_cos: Float64Array
    lightness: Float64Array
    strength: Float64Array
    chroma: Float64Array
    target_chroma: Float64Array
    light: Float64Array

    def among(self, targets: NDArray[np.intp]) -> "Kinship":
        """Return the kinship with some of the picture's colours only."""
        return Kinship(
            hue=self.hue[:, targets],
            angle_cos=self.angle_cos[:, targets],
            lightness=self.lightness[:, targets],
            strength=self.strength[:, targets],
            chroma=self.chroma,
            target_chroma=self.target_chroma[:, targets],
            light=self.light,
        )


def kinship(lab: Float64Array, target: Float64Array) -> Kinship:
    """Return the kinship of each of s colours, shape (s, 3), with each of m, shape (m, 3)."""
    chroma = np.hypot(lab[:, 1], lab[:, 2])[:, None]
    target_chroma = np.hypot(target[:, 1], target[:, 2])[None, :]
    product = chroma * target_chroma
    # no matrix product: its last digits hang on how many rows are computed together
    dot = lab[:, 1:2] * target[None, :, 1] + lab[:, 2:] * target[None, :, 2]
    gap = np.sqrt(np.maximum(2.0 * (product - dot), 0.0))
    return Kinship(
        hue=gap / (1.0 + 0.015 * np.sqrt(product)),
        angle_cos=np.where(product > 1e-6, dot / np.maximum(product, 1e-6), 1.0),
        lightness=lab[:, :1] - target[None, :, 0],
        strength=np.log1p(0.045 * chroma) / 0.045 - np.log1p(0.045 * target_chroma) / 0.045,
        chroma=chroma,
        target_chroma=target_chroma,
        light=lab[:, :1],
    )
