"""Texture at true scale: how a surface varies, by wavelength in millimetres on the art.

Exposure moves L* of light and dark parts alike in proportion to L* + 16, so that distances
(``texture_distances``) compare contrast relative to that; the contrasts themselves are as seen.
"""

import math

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, as_lab
from framing_palette.errors import FieldError
from framing_palette.picture.findings import BANDS_MM, PATTERN_CODES, Texture
from framing_palette.picture.octaves import PX_PER_WAVE, Octave, octaves, peakedness
from framing_palette.picture.repeats import regularity
from framing_palette.picture.resampling import as_float32, blurred, squared_length

SPARKLE_MM = 1.0
"""Light points are counted at this wavelength, or at the finest one known."""

SPARKLE_LIGHTNESS = 15.0
_SPARKLE_SIGMA_PX = 2.0
_FLAT = 1e-6


def measure_texture(
    lab_d50: ArrayLike, mm_per_px: float | None, mask: BoolArray | None = None
) -> Texture:
    """Return the texture of a surface; bands beyond resolution or size are nan.

    Without a scale every band is unknown, and direction, regularity and sparkle are those of the
    pixels as they are.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    mm_per_px
        Millimetres per pixel; None when unknown.
    mask
        Shape (rows, columns): the pixels to measure; all by default.

    Raises
    ------
    FieldError
        When the scale is not above zero.
    """
    if mm_per_px is not None and not (math.isfinite(mm_per_px) and mm_per_px > 0):
        raise FieldError("mm_per_px", got=mm_per_px, wanted="it must be above zero")
    lab = as_float32(as_lab(lab_d50))
    whole = mask is None or bool(mask.all())
    scale = BANDS_MM[0] / PX_PER_WAVE if mm_per_px is None else mm_per_px
    found = list(octaves(lab, None if whole else mask, scale))
    bands = [octave.in_band() for octave in found]
    direction_deg, strength = _direction(found, bands)
    known = [] if mm_per_px is None else list(zip(found, bands, strict=True))
    return Texture(
        lightness_contrast=_by_band({o.band: _deviation(b[..., :1], o.inside) for o, b in known}),
        chroma_contrast=_by_band({o.band: _deviation(b[..., 1:], o.inside) for o, b in known}),
        direction_deg=direction_deg,
        direction_strength=strength,
        regularity=max((regularity(o.lab_d50[..., 0], o.inside) for o in found[::2]), default=0.0),
        sparkle=_sparkle(found),
        mm_per_px=mm_per_px,
        mean_lightness=_mean_lightness(lab, mask),
        peakedness=_by_band({o.band: peakedness(b[..., 0][o.inside]) for o, b in known}),
        pattern=_patterns({o.band: o.local_patterns() for o, _ in known}),
    )


def _by_band(values: dict[int, float]) -> tuple[float, ...]:
    return tuple(values.get(band, math.nan) for band in range(len(BANDS_MM)))


def _patterns(rows: dict[int, Float64Array]) -> tuple[float, ...]:
    unknown = np.full(PATTERN_CODES, np.nan)
    listed = [rows.get(band, unknown) for band in range(len(BANDS_MM))]
    return tuple(np.round(np.concatenate(listed), 4).tolist())


def _deviation(band: Float32Array, inside: BoolArray) -> float:
    return math.sqrt(float(squared_length(band)[inside].mean(dtype=np.float64)))


def _mean_lightness(lab: Float32Array, mask: BoolArray | None) -> float:
    lightness = lab[..., 0] if mask is None else lab[..., 0][mask]
    return float(lightness.mean(dtype=np.float64)) if lightness.size else math.nan


def _direction(found: list[Octave], bands: list[Float32Array]) -> tuple[float, float]:
    """Return the grain's direction in degrees and its strength, from the structure tensor.

    Each octave adds its tensor as its contrast commands.

    References
    ----------
    J. Bigün, G. Granlund, Optimal orientation detection of linear symmetry, ICCV 1987.
    """
    xx = yy = xy = 0.0
    for octave, band in zip(found, bands, strict=True):
        across = as_float32(cv2.Scharr(band[..., 0], cv2.CV_32F, 1, 0))[octave.inside]
        down = as_float32(cv2.Scharr(band[..., 0], cv2.CV_32F, 0, 1))[octave.inside]
        xx += float(np.mean(across**2))
        yy += float(np.mean(down**2))
        xy += float(np.mean(across * down))
    if xx + yy <= _FLAT:
        return 0.0, 0.0
    gradient_deg = math.degrees(0.5 * math.atan2(2 * xy, xx - yy))  # rows count downward
    return (90.0 - gradient_deg) % 180.0, math.hypot(xx - yy, 2 * xy) / (xx + yy)


def _sparkle(found: list[Octave]) -> float:
    """Return the share of points far lighter than what lies round them."""
    if not found:
        return 0.0
    octave = min(found, key=lambda o: abs(math.log(BANDS_MM[o.band] / SPARKLE_MM)))
    lightness = octave.lab_d50[..., 0]
    above = (lightness - blurred(lightness, _SPARKLE_SIGMA_PX))[octave.inside]
    return float((above > SPARKLE_LIGHTNESS).mean())
