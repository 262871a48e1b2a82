"""Comparing textures: fixed rows of numbers, and distances that leave out what is unknown."""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.errors import ShapeError
from framing_palette.picture.findings import BANDS_MM, PATTERN_CODES, Texture

_BANDS = len(BANDS_MM)
_BAND_NAMES = tuple(f"{band:g}mm" for band in BANDS_MM)

TEXTURE_MEASURES = (
    *(f"lightness_{band}" for band in _BAND_NAMES),
    *(f"chroma_{band}" for band in _BAND_NAMES),
    "direction_deg",
    "direction_strength",
    "regularity",
    "sparkle",
    "mm_per_px",
    "mean_lightness",
    *(f"peakedness_{band}" for band in _BAND_NAMES),
    *(f"pattern_{band}_{code}" for band in _BAND_NAMES for code in range(PATTERN_CODES)),
)
"""The name of each number of a texture's row, in order."""

_SHORT = 2 * _BANDS + 5  # rows written before the later measures
_ORDER = slice(2 * _BANDS + 1, 2 * _BANDS + 3)  # strength of direction, regularity
_ORDER_WEIGHT, _ORDER_SPREAD = 0.2, 0.15
_LIGHTNESS, _CHROMA = slice(0, _BANDS), slice(_BANDS, 2 * _BANDS)
_MEAN = _SHORT
_PEAKS = slice(_MEAN + 1, _MEAN + 1 + _BANDS)
_PATTERNS = slice(_MEAN + 1 + _BANDS, len(TEXTURE_MEASURES))
_BAND_WEIGHTS = np.array([1.0, 1.0, 1.0, 0.8, 0.5, 0.3])  # long waves come seldom in a patch
_MIDDLE_LIGHTNESS = 50.0
_NOISE = 0.15


class _Aspect(NamedTuple):
    """One aspect of a texture: its numbers by octave, how much it counts and its usual spread."""

    values: Float64Array  # (n, bands) or (n, bands, codes)
    weight: float
    spread: float


def texture_vector(texture: Texture) -> Float64Array:
    """Return a texture as a row of numbers, in the order of ``TEXTURE_MEASURES``, nan unknown."""
    return np.array(
        [
            *texture.lightness_contrast,
            *texture.chroma_contrast,
            texture.direction_deg,
            texture.direction_strength,
            texture.regularity,
            texture.sparkle,
            math.nan if texture.mm_per_px is None else texture.mm_per_px,
            texture.mean_lightness,
            *texture.peakedness,
            *texture.pattern,
        ]
    )


def texture_from_vector(vector: ArrayLike) -> Texture:
    """Return the texture of a row; a row that ends at mm_per_px leaves the rest unknown.

    Raises
    ------
    ShapeError
        When the row has another length.
    """
    row = _full_rows(np.asarray(vector, dtype=np.float64)[np.newaxis])[0]
    mm_per_px = float(row[_SHORT - 1])
    return Texture(
        lightness_contrast=tuple(row[_LIGHTNESS].tolist()),
        chroma_contrast=tuple(row[_CHROMA].tolist()),
        direction_deg=float(row[2 * _BANDS]),
        direction_strength=float(row[2 * _BANDS + 1]),
        regularity=float(row[2 * _BANDS + 2]),
        sparkle=float(row[2 * _BANDS + 3]),
        mm_per_px=None if math.isnan(mm_per_px) else mm_per_px,
        mean_lightness=float(row[_MEAN]),
        peakedness=tuple(row[_PEAKS].tolist()),
        pattern=tuple(row[_PATTERNS].tolist()),
    )


def texture_distance(first: Texture, second: Texture) -> float:
    """Return how unlike two textures are, 0 for the same; nan when no band is known in both."""
    return float(texture_distances(first, texture_vector(second)[np.newaxis])[0])


def texture_distances(one: Texture, many: ArrayLike) -> Float64Array:
    """Return the distance of one texture to each of many, shape (n,); about 1 is plainly unlike.

    Contrast of lightness and chroma, peakedness and local patterns are compared octave by octave
    where both are known, then how directed and how regular both are. The grain's direction itself
    does not count, since a sample can be turned, nor does exposure: contrast is taken relative to
    L* + 16.

    Parameters
    ----------
    one
        The texture to compare.
    many
        Shape (n, len(TEXTURE_MEASURES)): rows of :func:`texture_vector`.

    Raises
    ------
    ShapeError
        When the rows have another length.
    """
    rows = _full_rows(np.atleast_2d(np.asarray(many, dtype=np.float64)))
    mine = texture_vector(one)[np.newaxis]
    total = _ORDER_WEIGHT * np.mean((rows[:, _ORDER] - mine[:, _ORDER]) ** 2, axis=1)
    total /= _ORDER_SPREAD**2
    weight = np.where(_share_a_band(mine, rows), _ORDER_WEIGHT, 0.0)
    total = np.where(weight > 0, total, 0.0)
    for own, other in zip(_aspects(mine), _aspects(rows), strict=True):
        square = _mean_square(other.values - own.values) / own.spread**2
        known = np.isfinite(square)
        total += np.where(known, own.weight * square, 0.0)
        weight += np.where(known, own.weight, 0.0)
    mean = np.divide(total, weight, out=np.full(len(rows), np.nan), where=weight > 0)
    return np.asarray(np.sqrt(mean), dtype=np.float64)


def _share_a_band(mine: Float64Array, rows: Float64Array) -> BoolArray:
    """Return for which rows some octave is known on both sides, shape (n,)."""
    known = np.isfinite(rows[:, _LIGHTNESS] + mine[:, _LIGHTNESS])
    return np.asarray(known.any(axis=1), dtype=np.bool_)


def _aspects(rows: Float64Array) -> tuple[_Aspect, ...]:
    """Return the aspects of rows, their spreads as within one surface photographed again."""
    mean = np.where(np.isnan(rows[:, _MEAN]), _MIDDLE_LIGHTNESS, rows[:, _MEAN])
    relative = ((_MIDDLE_LIGHTNESS + 16.0) / (mean + 16.0))[:, np.newaxis]
    patterns = rows[:, _PATTERNS].reshape(len(rows), _BANDS, PATTERN_CODES)
    return (
        _Aspect(np.log(rows[:, _LIGHTNESS] * relative + _NOISE), 0.3, 0.35),
        _Aspect(np.log(rows[:, _CHROMA] * relative + 3 * _NOISE), 0.3, 0.35),
        _Aspect(rows[:, _PEAKS], 0.5, 0.35),
        _Aspect(patterns, 1.0, 0.16),
    )


def _mean_square(apart: Float64Array) -> Float64Array:
    """Return the mean square over the known octaves, summed over codes; nan without any."""
    square = apart**2 if apart.ndim == 2 else (apart**2).sum(axis=2)
    known = np.isfinite(square)
    weight = (known * _BAND_WEIGHTS).sum(axis=1)
    total = (np.where(known, square, 0.0) * _BAND_WEIGHTS).sum(axis=1)
    return np.asarray(
        np.divide(total, weight, out=np.full(len(weight), np.nan), where=weight > 0),
        dtype=np.float64,
    )


def _full_rows(rows: Float64Array) -> Float64Array:
    length = rows.shape[-1]
    if length == len(TEXTURE_MEASURES):
        return rows
    if length != _SHORT:
        raise ShapeError(
            name="texture rows", wanted=f"(..., {len(TEXTURE_MEASURES)})", got=rows.shape
        )
    unknown = np.full((len(rows), len(TEXTURE_MEASURES) - _SHORT), np.nan)
    return np.concatenate([rows, unknown], axis=1)
