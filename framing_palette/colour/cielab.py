"""CIELAB's cube root and its reverse on whole slabs, for `spaces` and `pixels` to run.

Colours come as three planes, shape (3, n), in float32 or float64; every step writes into an array
that exists already.

References
----------
ISO/CIE 11664-4:2019.
"""

from collections.abc import Callable, Iterator

import numpy as np

from framing_palette.arrays import FloatArray
from framing_palette.colour.adaptation import WHITE_D50_XYZ
from framing_palette.colour.slabs import SLAB_ELEMENTS, Slab, work_through
from framing_palette.colour.srgb import LINEAR_SRGB_TO_XYZ_D50, XYZ_D50_TO_LINEAR_SRGB

_DELTA = 6.0 / 29.0  # where the cube root hands over to a straight line
_LINE_SLOPE = 1.0 / (3.0 * _DELTA**2)
_LINE_START = 4.0 / 29.0
_RATIO_OF_LINEAR = LINEAR_SRGB_TO_XYZ_D50 / WHITE_D50_XYZ[:, None]
_LINEAR_OF_RATIO = XYZ_D50_TO_LINEAR_SRGB * WHITE_D50_XYZ

# Fills the first array, shape (n, 3), from the second; the others are room, shape (3, n).
Conversion = Callable[[FloatArray, FloatArray, FloatArray, FloatArray], None]


def converted(colours: FloatArray, conversion: Conversion) -> FloatArray:
    """Return colours run through a conversion slab by slab, shape and precision kept.

    Parameters
    ----------
    colours
        Shape (..., 3).
    conversion
        Fills one slab.
    """
    result = np.empty_like(colours, order="C", subok=False)
    flat_result, flat_colours = result.reshape(-1, 3), colours.reshape(-1, 3)

    def worker(slabs: Iterator[Slab]) -> None:
        room = np.empty((2, 3 * min(SLAB_ELEMENTS, len(flat_colours))), dtype=colours.dtype)
        with np.errstate(all="ignore"):  # nan and inf pass through silently
            for slab in slabs:
                size = len(flat_result[slab])
                first, second = room[:, : 3 * size].reshape(2, 3, size)
                conversion(flat_result[slab], flat_colours[slab], first, second)

    work_through(flat_result.shape[:1], worker)
    return result


def fill_lab_of_linear(lab: FloatArray, linear: FloatArray, f: FloatArray) -> None:
    """Fill CIELAB D50, shape (n, 3), from planes of linear sRGB; `f` is room."""
    np.matmul(_RATIO_OF_LINEAR.astype(f.dtype), linear, out=f)
    compress(f)
    fill_lab_of_f(lab, f)


def fill_lab_of_f(lab: FloatArray, f: FloatArray) -> None:
    """Fill CIELAB, shape (n, 3), from its three compressed planes, which are used up."""
    f_x, f_y, f_z = f
    np.multiply(np.subtract(f_x, f_y, out=f_x), 500.0, out=lab[:, 1])
    np.multiply(np.subtract(f_y, f_z, out=f_z), 200.0, out=lab[:, 2])
    np.subtract(np.multiply(f_y, 116.0, out=f_y), 16.0, out=lab[:, 0])


def fill_linear_of_lab(linear: FloatArray, lab: FloatArray, f: FloatArray) -> None:
    """Fill planes of linear sRGB, not clipped, from CIELAB D50, shape (n, 3); `f` is room."""
    fill_f_of_lab(f, lab)
    expand(f, linear)
    np.matmul(_LINEAR_OF_RATIO.astype(f.dtype), f, out=linear)


def fill_f_of_lab(f: FloatArray, lab: FloatArray) -> None:
    """Fill the three compressed planes from CIELAB, shape (n, 3)."""
    f_x, f_y, f_z = f
    np.add(lab[:, 0], 16.0, out=f_y, casting="same_kind")
    f_y *= 1.0 / 116.0
    np.multiply(lab[:, 1], 1.0 / 500.0, out=f_x, casting="same_kind")
    f_x += f_y
    np.multiply(lab[:, 2], -1.0 / 200.0, out=f_z, casting="same_kind")
    f_z += f_y


def compress(ratio: FloatArray) -> None:
    """Turn ratios to white into cube roots in place; few colours lie on the line near black."""
    flat = ratio.reshape(-1)
    dark = np.flatnonzero(flat <= _DELTA**3)
    line = flat[dark] * _LINE_SLOPE + _LINE_START
    np.cbrt(flat, out=flat)
    flat[dark] = line


def expand(f: FloatArray, room: FloatArray) -> None:
    """Turn cube roots back into ratios to white, in place."""
    flat = f.reshape(-1)
    dark = np.flatnonzero(flat <= _DELTA)
    line = (flat[dark] - _LINE_START) / _LINE_SLOPE
    flat *= np.multiply(flat, flat, out=room.reshape(-1))
    flat[dark] = line
