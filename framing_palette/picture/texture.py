"""Texture at true scale: how a surface varies, by wavelength in millimetres on the art."""

import math
from dataclasses import fields

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, as_lab
from framing_palette.picture.findings import BANDS_MM, Texture
from framing_palette.picture.resampling import as_float32, blurred

_MIN_PX_PER_WAVE = 3.0
_MIN_WAVES = 3.0
_SIGMA_PER_WAVE = 1 / (2 * math.pi)


def measure_texture(
    lab_d50: ArrayLike, mm_per_px: float | None, mask: BoolArray | None = None
) -> Texture:
    """Return the texture of a surface; bands beyond resolution or size are nan.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    mm_per_px
        Scale; None leaves every band unknown.
    mask
        Shape (rows, columns): the pixels to measure; all by default.
    """
    lab = np.asarray(as_lab(lab_d50), dtype=np.float32)
    inside = np.ones(lab.shape[:2], np.float32) if mask is None else mask.astype(np.float32)
    if not inside.any():
        return Texture(mm_per_px=mm_per_px)
    direction_deg, strength = _direction(lab[..., 0], inside)
    lightness, chroma = _bands(lab, inside, mm_per_px)
    return Texture(
        lightness_contrast=lightness,
        chroma_contrast=chroma,
        direction_deg=direction_deg,
        direction_strength=strength,
        regularity=_regularity(lab[..., 0], inside),
        sparkle=_sparkle(lab[..., 0], inside),
        mm_per_px=mm_per_px,
    )


def _bands(
    lab: Float32Array, inside: Float32Array, mm_per_px: float | None
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    if mm_per_px is None:
        return (math.nan,) * len(BANDS_MM), (math.nan,) * len(BANDS_MM)
    extent_px = math.sqrt(float(inside.sum()))
    found = [_band(lab, inside, wave_mm / mm_per_px, extent_px) for wave_mm in BANDS_MM]
    return tuple(band[0] for band in found), tuple(band[1] for band in found)


def _band(
    lab: Float32Array, inside: Float32Array, wave_px: float, extent_px: float
) -> tuple[float, float]:
    if wave_px < _MIN_PX_PER_WAVE or wave_px * _MIN_WAVES > extent_px:
        return math.nan, math.nan
    fine = _blurred_inside(lab, inside, wave_px / math.sqrt(2) * _SIGMA_PER_WAVE)
    coarse = _blurred_inside(lab, inside, wave_px * math.sqrt(2) * _SIGMA_PER_WAVE)
    power = ((fine - coarse)[inside > 0] ** 2).mean(axis=0, dtype=np.float64)
    return math.sqrt(power[0]), math.sqrt(power[1] + power[2])


def _blurred_inside(lab: Float32Array, inside: Float32Array, sigma_px: float) -> Float32Array:
    """Blur within the mask only: what lies outside has no weight."""
    weight = np.maximum(blurred(inside, sigma_px), np.float32(1e-6))
    return as_float32(blurred(lab * inside[..., np.newaxis], sigma_px) / weight[..., np.newaxis])


def _direction(lightness: Float32Array, inside: Float32Array) -> tuple[float, float]:
    """Return the grain's direction in degrees and its strength, from the structure tensor."""
    across = cv2.Scharr(lightness, cv2.CV_32F, 1, 0)
    down = cv2.Scharr(lightness, cv2.CV_32F, 0, 1)
    core = cv2.erode(inside, np.ones((3, 3), np.uint8)) > 0
    xx, yy, xy = (
        float((first * second)[core].sum(dtype=np.float64))
        for first, second in ((across, across), (down, down), (across, down))
    )
    if xx + yy <= 1e-9:
        return 0.0, 0.0
    gradient_deg = math.degrees(0.5 * math.atan2(2 * xy, xx - yy))  # rows count downward
    return (90.0 - gradient_deg) % 180.0, math.hypot(xx - yy, 2 * xy) / (xx + yy)


def _regularity(lightness: Float32Array, inside: Float32Array) -> float:
    """Return the highest repeat of the surface beyond its own central lobe, 0..1."""
    from scipy import fft

    rows, columns = lightness.shape
    mean = float(lightness[inside > 0].mean())
    size = fft.next_fast_len(2 * rows, real=True), fft.next_fast_len(2 * columns, real=True)
    signal = fft.rfft2((lightness - mean) * inside, s=size)
    overlap = fft.irfft2(np.abs(fft.rfft2(inside, s=size)) ** 2, s=size)
    together = fft.irfft2(np.abs(signal) ** 2, s=size)
    likeness = np.where(overlap > 0.25 * overlap[0, 0], together / np.maximum(overlap, 1), 0)
    if likeness[0, 0] <= 1e-6:
        return 0.0
    likeness = np.fft.fftshift(likeness / likeness[0, 0]).astype(np.float32)
    _, labels = cv2.connectedComponents((likeness > 0.1).astype(np.uint8))
    likeness[labels == labels[size[0] // 2, size[1] // 2]] = 0
    return float(np.clip(likeness.max(), 0, 1))


def _sparkle(lightness: Float32Array, inside: Float32Array) -> float:
    """Return the share of points far lighter than what lies round them."""
    local = _blurred_inside(lightness[..., np.newaxis].repeat(3, axis=2), inside, 3.0)[..., 0]
    return float(((lightness - local)[inside > 0] > 15).mean())


def texture_vector(texture: Texture) -> Float64Array:
    """Return a texture as a fixed row of numbers, nan where unknown."""
    return np.array(
        [
            *texture.lightness_contrast,
            *texture.chroma_contrast,
            texture.direction_deg,
            texture.direction_strength,
            texture.regularity,
            texture.sparkle,
            math.nan if texture.mm_per_px is None else texture.mm_per_px,
        ]
    )


def texture_from_vector(vector: ArrayLike) -> Texture:
    """Return the texture of :func:`texture_vector`'s row."""
    values = np.asarray(vector, dtype=np.float64).tolist()
    bands = len(BANDS_MM)
    rest = dict(
        zip((field.name for field in fields(Texture)[2:]), values[2 * bands :], strict=True)
    )
    if math.isnan(rest["mm_per_px"]):
        rest["mm_per_px"] = None
    return Texture(tuple(values[:bands]), tuple(values[bands : 2 * bands]), **rest)


def texture_distance(first: Texture, second: Texture) -> float:
    """Return how unlike two textures are, 0 for the same; nan when no band is known in both."""
    return float(texture_distances(first, texture_vector(second)[np.newaxis])[0])


def texture_distances(one: Texture, many: ArrayLike) -> Float64Array:
    """Return the distance of one texture to each row of vectors, shape (n,).

    Bands unknown on either side are left out and the rest averaged; the grain's direction does
    not count, since a sample can be turned.
    """
    rows = np.atleast_2d(np.asarray(many, dtype=np.float64))
    mine = texture_vector(one)
    bands = 2 * len(BANDS_MM)
    apart = np.log2((rows[:, :bands] + 0.3) / (mine[:bands] + 0.3))
    known = np.isfinite(apart)
    square = np.where(known, apart, 0) ** 2
    mean = np.divide(
        square.sum(axis=1), known.sum(axis=1), out=np.full(len(rows), np.nan), where=known.any(1)
    )
    extra = ((rows[:, bands + 1 : bands + 4] - mine[bands + 1 : bands + 4]) ** 2).sum(axis=1)
    distance: Float64Array = np.sqrt(mean + extra)
    return distance
