"""Whole float32 pictures from CIELAB to linear light, about twice as fast as through `spaces`.

The same formulas as in `cielab`, on interleaved rows and with its two matrices done by OpenCV, so
that nothing has to be taken apart into planes.

References
----------
ISO/CIE 11664-4:2019.
"""

import numpy as np

from framing_palette.arrays import Float32Array, as_lab
from framing_palette.colour.adaptation import WHITE_D50_XYZ
from framing_palette.colour.srgb import XYZ_D50_TO_LINEAR_SRGB

_DELTA = 6.0 / 29.0  # where the cube hands over to a straight line
_LINE_SLOPE = 1.0 / (3.0 * _DELTA**2)
_LINE_START = 4.0 / 29.0
_ROOTS_OF_LAB = np.array(
    [
        [1.0 / 116.0, 1.0 / 500.0, 0.0, 16.0 / 116.0],
        [1.0 / 116.0, 0.0, 0.0, 16.0 / 116.0],
        [1.0 / 116.0, 0.0, -1.0 / 200.0, 16.0 / 116.0],
    ]
)
_LINEAR_OF_RATIO = XYZ_D50_TO_LINEAR_SRGB * WHITE_D50_XYZ
_CACHED = 16_384  # pixels worked on at a time, so that they stay in the cache


def lab_picture_to_linear_srgb(lab_d50: Float32Array) -> Float32Array:
    """Return a picture in linear sRGB, not clipped.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).

    Returns
    -------
    Shape (rows, columns, 3), float32; within 1e-6 of ``lab_d50_to_linear_srgb``.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    lab = np.asarray(as_lab(lab_d50), np.float32)
    linear = np.empty(lab.shape, np.float32)
    step = max(1, _CACHED // max(1, lab.shape[1]))
    room = np.empty((step, *lab.shape[1:]), np.float32)
    for start in range(0, lab.shape[0], step):
        part = lab[start : start + step]
        _fill(linear[start : start + step], part, room[: part.shape[0]])
    return linear


def _fill(linear: Float32Array, lab: Float32Array, ratio: Float32Array) -> None:
    """Fill some rows; ``linear`` holds the cube roots of the ratios to white on the way."""
    import cv2

    if not lab.size:
        return
    cv2.transform(lab, _ROOTS_OF_LAB, dst=linear)
    with np.errstate(all="ignore"):  # nan and inf pass through silently
        np.multiply(linear, linear, out=ratio)
        ratio *= linear
        roots = linear.reshape(-1)
        dark = np.flatnonzero(roots <= _DELTA)
        ratio.reshape(-1)[dark] = (roots[dark] - _LINE_START) / _LINE_SLOPE
    cv2.transform(ratio, _LINEAR_OF_RATIO, dst=linear)
