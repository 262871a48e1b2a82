"""Encoding: from linear light to the values of a screen, and how much a screen cannot show."""

from functools import cache

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.colour import linear_to_srgb

_STEPS = 65536
_CACHED = 100_000  # values worked on at a time, so that they stay in the cache
_SLACK = 1e-3  # rounding of a white is not a colour outside the gamut


@cache
def _table() -> UInt8Array:
    linear = np.repeat((np.arange(_STEPS) / (_STEPS - 1))[:, None], 3, axis=1)
    table: UInt8Array = np.rint(linear_to_srgb(linear)[:, 0] * 255.0).astype(np.uint8)
    return table


def srgb_u8(linear: Float32Array, *, out: UInt8Array | None = None) -> UInt8Array:
    """Return 8-bit sRGB of linear sRGB, clipped channel by channel.

    65,536 levels of light are told apart, which keeps every 8-bit step, the darkest included.

    Parameters
    ----------
    linear
        Shape (rows, columns, 3).
    out
        Written to when given, of the same shape.
    """
    import cv2

    srgb = np.empty(linear.shape, np.uint8) if out is None else out
    rows = max(1, _CACHED // max(1, linear[:1].size))
    for start in range(0, linear.shape[0] if linear.size else 0, rows):
        part = linear[start : start + rows]
        # Turned to whole numbers, rounded and cut off at both ends in one step.
        levels = cv2.addWeighted(part, _STEPS - 1.0, part, 0.0, 0.0, dtype=cv2.CV_16U)
        srgb[start : start + rows] = _looked_up(levels)
    return srgb


def _looked_up(levels: np.ndarray) -> UInt8Array:
    import cv2

    if int(cv2.__version__.split(".", maxsplit=1)[0]) >= 5:  # earlier ones take 8 bits only
        return np.asarray(cv2.LUT(levels, _table()), np.uint8)
    encoded: UInt8Array = _table()[levels]
    return encoded


def clipped_pixels(linear: Float32Array) -> int:
    """Return how many pixels hold a colour that an sRGB screen cannot show."""
    import cv2

    if not linear.size or (linear.min() >= -_SLACK and linear.max() <= 1.0 + _SLACK):
        return 0
    rows, columns = linear.shape[:2]
    shown = cv2.inRange(linear, (-_SLACK,) * 3, (1.0 + _SLACK,) * 3)
    return int(rows * columns - cv2.countNonZero(shown))
