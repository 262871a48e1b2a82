"""The picture as the eye takes its colours in: without grain, and without the mixtures on edges.

A camera and every reduction blend the two sides of an edge into colours that the art does not
have, and grain spreads one colour over many. Both would become colours of the palette that nobody
sees. Grain is smoothed between edges; a pixel that merely lies between its two neighbours across
an edge takes the colour of the nearer one.

References
----------
C. Tomasi, R. Manduchi, Bilateral filtering for gray and color images, ICCV 1998 (as in OpenCV).
S. Osher, L. Rudin, Feature-oriented image enhancement using shock filters, 1990, for the idea of
moving a pixel to the side of the edge that it is nearer to.
"""

import cv2
import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.picture.resampling import as_float32, squared_length

GRAIN = 9.0
"""Differences up to about this many CIELAB units between near pixels count as grain."""

EDGE = 14.0
"""Least CIELAB distance across a pixel that makes it lie on an edge."""

_GRAIN_WINDOW_PX = 5
_GRAIN_SIGMA_PX = 1.5
_PASSES = 2
_ACROSS = ((0, 1), (1, 0), (1, 1), (1, -1))
_INNER = (0.08, 0.92)
_STRAY = 0.3


def as_seen(lab_d50: Float32Array) -> Float32Array:
    """Return a picture without grain and without mixed pixels on edges, in the same shape.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3), float32.
    """
    seen = as_float32(
        cv2.bilateralFilter(
            lab_d50, _GRAIN_WINDOW_PX, GRAIN, _GRAIN_SIGMA_PX, borderType=cv2.BORDER_REFLECT
        )
    )
    for _ in range(_PASSES):
        seen = _unmixed(seen)
    return seen


def _unmixed(lab: Float32Array) -> Float32Array:
    """Return the picture with each mixed pixel moved to the nearer side of its edge."""
    columns = lab.shape[1]
    padded = np.pad(lab, ((1, 1), (1, 1), (0, 0)), mode="edge").reshape(-1, 3)
    stride = columns + 2
    pixel = _edge_pixels(lab)
    place = (pixel // columns + 1) * stride + pixel % columns + 1
    steps = np.array([down * stride + right for down, right in _ACROSS])
    across = np.stack([_distance_2(padded, place, step) for step in steps])
    step = steps[across.argmax(axis=0)]
    one, other, own = padded[place - step], padded[place + step], padded[place]
    way = other - one
    length_2 = np.maximum(squared_length(way), np.float32(1e-6))
    along = np.einsum("ij,ij->i", own - one, way) / length_2
    stray_2 = squared_length(own - one - along[:, np.newaxis] * way) / length_2
    mixed = (along > _INNER[0]) & (along < _INNER[1]) & (stray_2 < _STRAY**2)
    mixed &= length_2 >= EDGE**2
    nearer = np.where(along[:, np.newaxis] < 0.5, one, other)
    unmixed = lab.copy().reshape(-1, 3)
    unmixed[pixel[mixed]] = nearer[mixed]
    return unmixed.reshape(lab.shape)


def _edge_pixels(lab: Float32Array) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
    """Return the flat indices of pixels with a large difference somewhere round them."""
    kernel = np.ones((3, 3), np.uint8)
    spread = cv2.dilate(lab, kernel) - cv2.erode(lab, kernel)
    return np.flatnonzero(squared_length(as_float32(spread)) >= EDGE**2)


def _distance_2(
    padded: Float32Array, place: np.ndarray[tuple[int], np.dtype[np.intp]], step: int
) -> Float32Array:
    return squared_length(padded[place + step] - padded[place - step])
