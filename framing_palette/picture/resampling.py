"""Smaller and softer copies of pixel arrays, with exact areas and mirrored edges."""

from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float32Array


def resized(pixels: Float32Array, rows: int, columns: int) -> Float32Array:
    """Return pixels averaged over exact areas to a smaller size; channels are kept.

    Parameters
    ----------
    pixels
        Shape (rows, columns) or (rows, columns, channels), float32.
    rows, columns
        The wanted size, at least 1 and at most that of the input.
    """
    if pixels.shape[:2] == (rows, columns):
        return pixels
    smaller = cv2.resize(pixels, (columns, rows), interpolation=cv2.INTER_AREA)
    return as_float32(smaller).reshape(rows, columns, *pixels.shape[2:])


def shrunk(pixels: Float32Array, max_side: int) -> Float32Array:
    """Return pixels in the same proportions, longest side at most `max_side`; never enlarged."""
    rows, columns = pixels.shape[:2]
    scale = min(1.0, max_side / max(rows, columns))
    return resized(pixels, max(1, round(rows * scale)), max(1, round(columns * scale)))


def blurred(pixels: Float32Array, sigma_px: float) -> Float32Array:
    """Return pixels after a Gaussian blur, mirrored at the edges."""
    soft = cv2.GaussianBlur(pixels, (0, 0), sigma_px, borderType=cv2.BORDER_REFLECT)
    return as_float32(soft).reshape(pixels.shape)


def squared_length(vectors: Float32Array) -> Float32Array:
    """Return the sum of squares over the last axis, shape (..., 3) to (...)."""
    return as_float32(np.einsum("...i,...i->...", vectors, vectors))


def as_float32(values: NDArray[Any]) -> Float32Array:
    """Return an array as float32, without a copy when it is float32 already."""
    return np.asarray(values, dtype=np.float32)
