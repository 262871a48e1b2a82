"""Fine colour histograms: millions of pixels folded into a few thousand cells of colour.

Each cell keeps how much of the picture falls into it and the true mean CIELAB of its pixels, so
that nothing is rounded to the grid: only which pixels share a cell depends on it.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.arrays import Float64Array, UInt8Array, as_lab
from framing_palette.colour import srgb_u8_to_lab_d50

CELL = 4.0
"""Edge of a cell in CIELAB units: about 64 steps across each axis of the surface colours."""

_LOW = np.array([-20.0, -160.0, -160.0])
_STEPS = 80  # per axis, enough for L* from -20 to 300 and a*, b* from -160 to 160
_FOLD_BITS = 6


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
    index: NDArray[Any]

    def counts(self, pixels: NDArray[Any] | None = None) -> Float64Array:
        """Return how many of the pixels fall into each cell; all pixels by default."""
        chosen = self.index if pixels is None else self.index[pixels]
        return np.bincount(chosen, minlength=len(self.lab_d50)).astype(np.float64)


def folded(lab_d50: ArrayLike, *, cell: float = CELL) -> Cells:
    """Return the cells of colours, shape (..., 3) CIELAB D50, taken as one list of pixels."""
    lab = as_lab(lab_d50).reshape(-1, 3)
    step = np.clip((lab - _LOW.astype(lab.dtype)) / cell, 0, _STEPS - 1).astype(np.int32)
    key = (step[:, 0] * _STEPS + step[:, 1]) * _STEPS + step[:, 2]
    count = np.bincount(key, minlength=_STEPS**3)
    filled = np.flatnonzero(count)
    place = np.zeros(_STEPS**3, dtype=np.int32)
    place[filled] = np.arange(len(filled), dtype=np.int32)
    index = place[key]
    return Cells(lab_d50=_means(index, lab, count[filled].astype(np.float64)), index=index)


def folded_srgb(srgb_u8: UInt8Array) -> tuple[Float64Array, Float64Array]:
    """Return (mean CIELAB, pixel count) of the cells of 8-bit sRGB pixels, shape (..., 3).

    Every one of the 24-bit colours is counted and converted once, then folded to 6 bits a
    channel; this is the fastest exact road for a whole photograph.
    """
    pixels = srgb_u8.reshape(-1, 3)
    key = np.zeros(len(pixels), dtype=np.int32)
    for channel in range(3):
        key <<= 8
        key |= pixels[:, channel]
    count = np.bincount(key, minlength=1 << 24)
    filled = np.flatnonzero(count)
    channels = np.stack([filled >> 16, filled >> 8 & 255, filled & 255], axis=1)
    lab = srgb_u8_to_lab_d50(channels.astype(np.uint8))
    weight = count[filled].astype(np.float64)
    coarse = channels >> (8 - _FOLD_BITS)
    cell = (coarse[:, 0] << 2 * _FOLD_BITS) | (coarse[:, 1] << _FOLD_BITS) | coarse[:, 2]
    used, index = np.unique(cell, return_inverse=True)
    total = np.bincount(index, weight, minlength=len(used)).astype(np.float64)
    return _means(index, lab, total, weight), total


def _means(
    index: NDArray[Any],
    lab: NDArray[Any],
    total: Float64Array,
    weight: Float64Array | None = None,
) -> Float64Array:
    sums = [
        np.bincount(index, lab[:, axis] if weight is None else lab[:, axis] * weight, len(total))
        for axis in range(3)
    ]
    return np.stack(sums, axis=1) / total[:, np.newaxis]
