"""Octaves: a surface reduced until one wave of a given length spans four pixels.

Everything that is measured on such a picture is measured at true scale: a photograph with twice
the pixels is reduced twice as far.

References
----------
P. Burt, E. Adelson, The Laplacian pyramid as a compact image code, 1983, for bands by octaves.
T. Ojala, M. Pietikäinen, T. Mäenpää, Multiresolution gray-scale and rotation invariant texture
classification with local binary patterns, IEEE PAMI 24(7), 2002 (as in scikit-image).
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import cv2
import numpy as np

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, FloatArray
from framing_palette.picture.findings import BANDS_MM, PATTERN_CODES
from framing_palette.picture.resampling import as_float32, blurred, resized

PX_PER_WAVE = 4.0
MIN_SIDE_PX = 14
MIN_PIXELS = 144
"""An octave with fewer pixels, or a narrower picture, says nothing that would hold elsewhere."""

BAND_SIGMAS_PX = (0.612, 1.224)
BAND_GAIN = 0.43
"""What the band leaves of an even wave of its middle length, the pixels' own blur included."""

PATTERN_NEIGHBOURS, PATTERN_RADIUS_PX, PATTERN_SIGMA_PX = 8, 1.4, 0.4
"""Neighbours as far away as the diagonal ones, on a soft picture, look alike however turned."""

_SLACK = 0.99
_EDGE_PX = 2
_LIGHTNESS_STEPS = 100  # patterns compare L* in steps of 0.01
_QUIET = 0.02


@dataclass(frozen=True, slots=True, eq=False)
class Octave:
    """A surface at the scale of one band.

    Parameters
    ----------
    band
        Its place in ``BANDS_MM``.
    lab_d50
        Shape (rows, columns, 3), reduced.
    inside
        Shape (rows, columns): the pixels to measure, clear of the outline.
    """

    band: int
    lab_d50: Float32Array
    inside: BoolArray

    def in_band(self) -> Float32Array:
        """Return what varies at this wavelength, shape (rows, columns, 3)."""
        fine, coarse = (blurred(self.lab_d50, sigma) for sigma in BAND_SIGMAS_PX)
        return as_float32((fine - coarse) / BAND_GAIN)

    def local_patterns(self) -> Float64Array:
        """Return the square root of the share of each local pattern of L*."""
        from skimage.feature import local_binary_pattern

        soft = blurred(self.lab_d50[..., 0], PATTERN_SIGMA_PX)
        steps = np.clip(soft * _LIGHTNESS_STEPS + 0.5, 0, 65535).astype(np.uint16)
        code = local_binary_pattern(  # type: ignore[no-untyped-call]
            steps, PATTERN_NEIGHBOURS, PATTERN_RADIUS_PX, "uniform"
        )
        chosen = self.inside.copy()
        chosen[:_EDGE_PX] = chosen[-_EDGE_PX:] = False  # pixels at the rim lack neighbours
        chosen[:, :_EDGE_PX] = chosen[:, -_EDGE_PX:] = False
        count = np.bincount(code[chosen].astype(np.intp), minlength=PATTERN_CODES)
        return np.sqrt(count / max(1, int(count.sum())))


def octaves(lab_d50: Float32Array, mask: BoolArray | None, mm_per_px: float) -> Iterator[Octave]:
    """Yield the octaves that resolution and size leave known, finest first.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    mask
        Shape (rows, columns): the pixels to measure; None means all.
    mm_per_px
        Scale, above 0.
    """
    rows, columns = lab_d50.shape[:2]
    reduced, cover = lab_d50, None if mask is None else mask.astype(np.float32)
    for band, wave_mm in enumerate(BANDS_MM):
        shrink = wave_mm / PX_PER_WAVE / mm_per_px
        size = round(rows / shrink), round(columns / shrink)
        if shrink < _SLACK:
            continue
        if min(size) < MIN_SIDE_PX:
            return
        size = min(size[0], reduced.shape[0]), min(size[1], reduced.shape[1])
        reduced = resized(reduced, *size)
        cover = None if cover is None else resized(cover, *size)
        inside = _clear_of_outline(cover, size)
        if inside.sum() < MIN_PIXELS:
            return
        yield Octave(band, reduced, inside)


def peakedness(values: FloatArray) -> float:
    """Return the logarithm of the kurtosis of band values, 1.1 for an even mixture."""
    square = np.square(values, dtype=np.float64)
    power = float(square.mean())
    if power < _QUIET**2:
        return math.log(3.0)
    return math.log(float(np.square(square).mean()) / power**2)


def _clear_of_outline(cover: Float32Array | None, size: tuple[int, int]) -> BoolArray:
    if cover is None:
        return np.ones(size, dtype=np.bool_)
    kernel = np.ones((2 * _EDGE_PX + 1, 2 * _EDGE_PX + 1), np.uint8)
    full = (cover > 0.99).astype(np.uint8)  # areas rounded while shrinking
    return np.asarray(cv2.erode(full, kernel), dtype=np.bool_)
