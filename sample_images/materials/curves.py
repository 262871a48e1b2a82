"""Curves and the soft-edged masks they enclose."""

from __future__ import annotations

from collections.abc import Sequence

import cv2
import numpy as np
from numpy.typing import ArrayLike, NDArray

Points = NDArray[np.float64]
Mask = NDArray[np.float32]

_SHIFT = 4


def spline(points: ArrayLike, *, closed: bool = False, per_span: int = 16) -> Points:
    """Centripetal-looking Catmull-Rom curve through (n, 2) points."""
    knots = np.asarray(points, float)
    if closed:
        padded = np.vstack([knots[-1], knots, knots[0], knots[1]])
    else:
        padded = np.vstack([2 * knots[0] - knots[1], knots, 2 * knots[-1] - knots[-2]])
    t = np.linspace(0, 1, per_span, endpoint=False)[:, None]
    spans = []
    for a, b, c, d in zip(padded, padded[1:], padded[2:], padded[3:], strict=False):
        cubic = (3 * b - a - 3 * c + d) * t**3 + (2 * a - 5 * b + 4 * c - d) * t**2
        spans.append(0.5 * (cubic + (c - a) * t + 2 * b))
    if not closed:
        spans.append(knots[-1:])
    return np.vstack(spans)


def resampled(points: Points, count: int) -> Points:
    """The same open curve with `count` points at equal arc length."""
    steps = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate([[0], np.cumsum(steps)])
    where = np.linspace(0, along[-1], count)
    columns = [np.interp(where, along, points[:, axis]) for axis in (0, 1)]
    return np.stack(columns, axis=1)


def normals(points: Points) -> Points:
    """Unit vectors to the left of an open curve, one a point."""
    tangent = np.gradient(points, axis=0)
    tangent /= np.maximum(np.hypot(tangent[:, 0], tangent[:, 1]), 1e-9)[:, None]
    return np.stack([tangent[:, 1], -tangent[:, 0]], axis=1)


def ribbon(points: Points, widths: ArrayLike) -> Points:
    """Closed outline of a band that follows an open curve, `widths` wide at each point."""
    half = normals(points) * (np.asarray(widths, float) / 2)[:, None]
    return np.vstack([points + half, (points - half)[::-1]])


def rotated(points: ArrayLike, angle: float, centre: Sequence[float] = (0.0, 0.0)) -> Points:
    """Points turned by `angle` radians about `centre`."""
    c, s = np.cos(angle), np.sin(angle)
    offset = np.asarray(points, float) - np.asarray(centre, float)
    return offset @ np.array([[c, s], [-s, c]]) + np.asarray(centre, float)


def fixed(points: ArrayLike) -> NDArray[np.int32]:
    """Pixel coordinates in the sixteenths that the drawing calls want."""
    return np.round(np.asarray(points, float) * (1 << _SHIFT)).astype(np.int32)


def filled(shape: tuple[int, int], outline: ArrayLike, *, soft_px: float = 0.0) -> Mask:
    """Coverage 0..1 of a closed outline given in pixels."""
    mask = np.zeros(shape, np.uint8)
    cv2.fillPoly(mask, [fixed(outline)], 255, cv2.LINE_AA, _SHIFT)
    out = mask.astype(np.float32) / 255
    return cv2.GaussianBlur(out, (0, 0), soft_px) if soft_px > 0 else out


def drawn(
    shape: tuple[int, int], line: ArrayLike, thickness: int, *, soft_px: float = 0.0
) -> Mask:
    """Coverage 0..1 of an open line given in pixels."""
    mask = np.zeros(shape, np.uint8)
    cv2.polylines(mask, [fixed(line)], False, 255, thickness, cv2.LINE_AA, _SHIFT)
    out = mask.astype(np.float32) / 255
    return cv2.GaussianBlur(out, (0, 0), soft_px) if soft_px > 0 else out
