"""Fine colour histograms: millions of pixels folded into a few thousand cells of colour.

Each cell keeps how much of the picture falls into it and the true mean CIELAB of its pixels, so
that nothing is rounded to the grid: only which pixels share a cell depends on it.
"""

from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.arrays import Float64Array, FloatArray, UInt8Array, as_lab
from framing_palette.colour import srgb_u8_to_lab_d50

CELL = 4.0
"""Edge of a cell in CIELAB units: about 64 steps across each axis of the surface colours."""

_LOW = np.array([-20.0, -160.0, -160.0])
_REACH = 320.0  # L* from -20 to 300 and a*, b* from -160 to 160
_FOLD_BITS = 7


@dataclass(frozen=True, slots=True, eq=False)
class Cells:
    """The cells that a picture fills, and the cell of each pixel.

    Parameters
    ----------
    lab_d50
        Shape (cells, 3): true mean of each cell.
    index
        Shape (pixels,): the cell of each pixel.
    """

    lab_d50: Float64Array
    index: NDArray[np.int32]

    def counts(self, pixels: NDArray[Any] | None = None) -> Float64Array:
        """Return how many of the pixels fall into each cell; all pixels by default."""
        chosen = self.index if pixels is None else self.index[pixels]
        return np.bincount(chosen, minlength=len(self.lab_d50)).astype(np.float64)


def folded(lab_d50: ArrayLike, *, cell: float = CELL) -> Cells:
    """Return the cells of colours, shape (..., 3) CIELAB D50, taken as one list of pixels."""
    lab = as_lab(lab_d50).reshape(-1, 3)
    index, filled = _compact(_grid_key(lab, cell), _steps(cell) ** 3)
    total = np.bincount(index, minlength=filled).astype(np.float64)
    return Cells(lab_d50=_means(index, lab, total), index=index)


def coarser(
    lab_d50: Float64Array, weight: Float64Array, *, cell: float
) -> tuple[Float64Array, Float64Array]:
    """Return weighted colours, shapes (n, 3) and (n,), gathered into fewer, larger cells."""
    index, filled = _compact(_grid_key(lab_d50, cell), _steps(cell) ** 3)
    total = np.bincount(index, weight, filled).astype(np.float64)
    return _means(index, lab_d50, total, weight), total


def folded_srgb(srgb_u8: UInt8Array) -> tuple[Float64Array, Float64Array]:
    """Return (mean CIELAB, pixel count) of the cells of 8-bit sRGB pixels, shape (..., 3).

    Every one of the 24-bit colours is counted and converted once, then folded to 7 bits a
    channel, which keeps the means of clusters within a tenth of a ΔE00 of those of all pixels.
    """
    pixels = np.ascontiguousarray(srgb_u8).reshape(-1, 1, 3)
    count = cv2.calcHist([pixels], [0, 1, 2], None, [256] * 3, [0, 256] * 3).ravel()
    colour = np.flatnonzero(count)
    channels = np.stack([colour >> 16, colour >> 8 & 255, colour & 255], axis=1).astype(np.uint8)
    weight = count[colour].astype(np.float64)
    step = (channels >> (8 - _FOLD_BITS)).astype(np.int32)
    key = (step[:, 0] << 2 * _FOLD_BITS) | (step[:, 1] << _FOLD_BITS) | step[:, 2]
    index, filled = _compact(key, 1 << 3 * _FOLD_BITS)
    total = np.bincount(index, weight, filled).astype(np.float64)
    return _means(index, srgb_u8_to_lab_d50(channels), total, weight), total


def _steps(cell: float) -> int:
    return int(np.ceil(_REACH / cell))


def _grid_key(lab: FloatArray, cell: float) -> NDArray[np.int32]:
    steps = _steps(cell)
    step = np.clip((lab - _LOW.astype(lab.dtype)) / cell, 0, steps - 1).astype(np.int32)
    key: NDArray[np.int32] = (step[:, 0] * steps + step[:, 1]) * steps + step[:, 2]
    return key


def _compact(key: NDArray[np.int32], keys: int) -> tuple[NDArray[np.int32], int]:
    """Return keys renumbered without gaps, in order, and how many there are."""
    filled = np.flatnonzero(np.bincount(key, minlength=keys))
    place = np.zeros(keys, dtype=np.int32)
    place[filled] = np.arange(len(filled), dtype=np.int32)
    return place[key], len(filled)


def _means(
    index: NDArray[np.int32],
    lab: FloatArray,
    total: Float64Array,
    weight: Float64Array | None = None,
) -> Float64Array:
    sums = [
        np.bincount(index, lab[:, axis] if weight is None else lab[:, axis] * weight, len(total))
        for axis in range(3)
    ]
    return np.stack(sums, axis=1) / total[:, np.newaxis]
