"""Repeats: how regular a surface is, from its likeness to itself when shifted."""

import cv2
import numpy as np

from framing_palette.arrays import BoolArray, Float32Array, Float64Array
from framing_palette.picture.resampling import as_float32, blurred

TILE_PX = 160
"""Largest square that is compared with itself."""

_TREND_SIGMA_PX = 6.0
_LOBE = 0.08
_LEAST_OVERLAP = 0.3
_CHANCE = 11.0  # four deviations, one independent point in about eight pixels
_FLAT = 1e-6


def regularity(lightness: Float32Array, inside: BoolArray) -> float:
    """Return the best likeness of a surface to itself when shifted, 0 random to 1 repeating.

    Slow changes are taken out first, the likeness next to no shift at all does not count, and what
    chance alone would reach among so few pixels is taken off.

    Parameters
    ----------
    lightness
        Shape (rows, columns), L*.
    inside
        Shape (rows, columns): the pixels that belong to the surface.
    """
    detail = (lightness - blurred(lightness, _TREND_SIGMA_PX)) * inside
    tile = _deepest_tile(inside)
    likeness = _likeness(as_float32(detail[tile]), inside[tile])
    if likeness is None:
        return 0.0
    middle = likeness.shape[0] // 2, likeness.shape[1] // 2
    _, labels = cv2.connectedComponents((likeness > _LOBE).astype(np.uint8))
    beyond = likeness[labels != labels[middle]]
    chance = _CHANCE / float(inside[tile].sum()) ** 0.5
    return float(np.clip((beyond.max(initial=0.0) - chance) / max(1.0 - chance, _FLAT), 0.0, 1.0))


def _deepest_tile(inside: BoolArray) -> tuple[slice, slice]:
    """Return the square round the point that lies deepest inside."""
    padded = np.pad(inside.astype(np.uint8), 1)
    depth = cv2.distanceTransform(padded, cv2.DIST_L2, 3)[1:-1, 1:-1]
    row, column = divmod(int(depth.argmax()), inside.shape[1])
    return _span(row, inside.shape[0]), _span(column, inside.shape[1])


def _span(middle: int, size: int) -> slice:
    start = min(max(0, middle - TILE_PX // 2), max(0, size - TILE_PX))
    return slice(start, start + TILE_PX)


def _likeness(detail: Float32Array, inside: BoolArray) -> Float64Array | None:
    """Return the correlation of a tile with itself for each shift, no shift in the middle."""
    from scipy import fft

    size = [fft.next_fast_len(2 * side, real=True) for side in detail.shape]
    cover = fft.rfft2(inside.astype(np.float64), s=size)
    signal = fft.rfft2(detail.astype(np.float64), s=size)
    overlap = fft.irfft2(np.abs(cover) ** 2, s=size)
    together = fft.irfft2(np.abs(signal) ** 2, s=size)
    if together[0, 0] <= _FLAT * max(1.0, overlap[0, 0]):
        return None
    enough = overlap > _LEAST_OVERLAP * overlap[0, 0]
    mean = np.where(enough, together / np.maximum(overlap, 1.0), 0.0)
    return np.asarray(np.fft.fftshift(mean / (together[0, 0] / overlap[0, 0])), dtype=np.float64)
