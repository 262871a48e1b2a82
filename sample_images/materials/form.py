"""Rounded bodies from flat outlines: inflated heights and the light on them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.linalg import spsolve

from sample_images.materials.curves import filled

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from sample_images.materials.noise import Field

_GRID = 420


def inflated(shape: tuple[int, int], outline: NDArray[np.float64]) -> Field:
    """Height of a cushion over an outline in pixels, zero outside, in pixels.

    The square root of the membrane that a steady pressure bulges over the outline:
    near an edge it stands up like a ball, and a long part becomes a round limb.
    """
    scale = min(1.0, _GRID / shape[1])
    small = (max(8, round(shape[0] * scale)), max(8, round(shape[1] * scale)))
    inside = filled(small, outline * scale) > 0.5
    membrane = np.zeros(small)
    if inside.any():
        membrane[inside] = _bulge(inside)
    dome = np.sqrt(np.maximum(membrane, 0) * 2).astype(np.float32) / scale
    dome = cv2.GaussianBlur(dome, (0, 0), 0.8)
    return cv2.resize(dome, shape[::-1], interpolation=cv2.INTER_CUBIC)


def _bulge(inside: NDArray[np.bool_]) -> NDArray[np.float64]:
    """Solve the discrete Poisson equation with unit load and zero edge."""
    count = int(inside.sum())
    number = np.full(inside.shape, -1)
    number[inside] = np.arange(count)
    padded = np.pad(number, 1, constant_values=-1)
    rows, columns = [np.arange(count)], [np.arange(count)]
    values = [np.full(count, 4.0)]
    for down, right in ((0, 1), (2, 1), (1, 0), (1, 2)):
        shifted = padded[down : down + inside.shape[0], right : right + inside.shape[1]]
        there = inside & (shifted >= 0)
        rows.append(number[there])
        columns.append(shifted[there])
        values.append(np.full(int(there.sum()), -1.0))
    indices = (np.concatenate(rows), np.concatenate(columns))
    matrix = coo_array((np.concatenate(values), indices), shape=(count, count)).tocsc()
    solved: NDArray[np.float64] = spsolve(matrix, np.ones(count))
    return solved


def lit(height: Field, light: tuple[float, float, float], *, flatten: float = 1.0) -> Field:
    """Cosine of the light (x right, y down, z to the viewer) on a height field, -1..1."""
    gx = cv2.Sobel(height, cv2.CV_32F, 1, 0, ksize=3, scale=0.125) * flatten
    gy = cv2.Sobel(height, cv2.CV_32F, 0, 1, ksize=3, scale=0.125) * flatten
    x, y, z = (np.array(light) / np.linalg.norm(light)).tolist()
    return (-gx * x - gy * y + z) / np.sqrt(gx**2 + gy**2 + 1)
