"""Seeded noise fields: the irregularity of everything that a hand or nature made."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.typing import NDArray

Field = NDArray[np.float32]


def fractal(
    shape: tuple[int, int],
    rng: np.random.Generator,
    *,
    cell: float,
    octaves: int = 5,
    gain: float = 0.5,
    stretch: float = 1.0,
) -> Field:
    """Smooth noise of zero mean and unit deviation; `stretch` widens it along the rows.

    Parameters
    ----------
    shape : rows and columns of the field
    cell : size of the largest lump across the rows, in pixels
    octaves, gain : number of finer copies and the weight of each against the last
    stretch : how many times longer a lump is along a row
    """
    rows, columns = shape
    total = np.zeros(shape, np.float32)
    weight = 1.0
    for _ in range(octaves):
        grid = (
            min(rows, max(2, round(rows / cell))) + 3,
            min(columns, max(2, round(columns / (cell * stretch)))) + 3,
        )
        lumps = rng.standard_normal(grid).astype(np.float32)
        total += weight * _enlarged(lumps, shape)
        weight *= gain
        cell /= 2
    return (total - total.mean()) / max(float(total.std()), 1e-6)


def _enlarged(lumps: Field, shape: tuple[int, int]) -> Field:
    rows, columns = shape
    inner = (lumps.shape[0] - 3, lumps.shape[1] - 3)
    step = (inner[0] / rows, inner[1] / columns)
    matrix = np.array([[step[1], 0, 1], [0, step[0], 1]], np.float32)
    flags = cv2.INTER_CUBIC | cv2.WARP_INVERSE_MAP
    return cv2.warpAffine(lumps, matrix, (columns, rows), flags=flags)


def grain(shape: tuple[int, int], rng: np.random.Generator, *, blur_px: float) -> Field:
    """Fine noise of zero mean and unit deviation with grains about `blur_px` wide."""
    white = rng.standard_normal(shape, dtype=np.float32)
    if blur_px > 0:
        white = cv2.GaussianBlur(white, (0, 0), blur_px)
    return white / max(float(white.std()), 1e-6)


def smoothstep(low: float, high: float, value: Field) -> Field:
    """0 below `low`, 1 above `high`, a smooth S between."""
    t = np.clip((value - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)
