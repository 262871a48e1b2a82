"""Curves and the soft-edged masks they enclose."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np
from numpy.typing import ArrayLike, NDArray

if TYPE_CHECKING:
    from collections.abc import Sequence

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
    side = np.empty((len(points), 2))
    chord = points[2:] - points[:-2]
    side[1:-1, 0], side[1:-1, 1] = chord[:, 1], -chord[:, 0]
    for end, (dx, dy) in ((0, points[1] - points[0]), (-1, points[-1] - points[-2])):
        side[end] = dy, -dx
    side /= np.maximum(np.hypot(side[:, 0], side[:, 1]), 1e-9)[:, None]
    return side


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


def trace(
    canvas: NDArray[np.uint8], line: ArrayLike, value: float | list[float], thickness: int
) -> None:
    """Draw an open line (pixels) on a byte canvas in place, smooth at its edges."""
    cv2.polylines(
        canvas,
        [fixed(line)],
        isClosed=False,
        color=value,
        thickness=thickness,
        lineType=cv2.LINE_AA,
        shift=_SHIFT,
    )


def filled(shape: tuple[int, int], outline: ArrayLike, *, soft_px: float = 0.0) -> Mask:
    """Coverage 0..1 of a closed outline given in pixels."""
    mask = np.zeros(shape, np.uint8)
    cv2.fillPoly(mask, [fixed(outline)], 255, cv2.LINE_AA, _SHIFT)
    out = mask.astype(np.float32) / 255
    return cv2.GaussianBlur(out, (0, 0), soft_px) if soft_px > 0 else out


def drawn(shape: tuple[int, int], line: ArrayLike, thickness: int, *, soft_px: float = 0.0) -> Mask:
    """Coverage 0..1 of an open line given in pixels."""
    mask = np.zeros(shape, np.uint8)
    trace(mask, line, 255, thickness)
    out = mask.astype(np.float32) / 255
    return cv2.GaussianBlur(out, (0, 0), soft_px) if soft_px > 0 else out


def patch(
    shape: tuple[int, ...], points: ArrayLike, margin_px: float
) -> tuple[tuple[slice, slice], Points]:
    """The part of a picture that an outline touches, and the outline seen from its corner."""
    outline = np.asarray(points, float)
    left, top = np.maximum(np.floor(outline.min(axis=0) - margin_px), 0).astype(int)
    right, bottom = np.ceil(outline.max(axis=0) + margin_px).astype(int) + 1
    rows = slice(top, max(top, min(bottom, shape[0])))
    columns = slice(left, max(left, min(right, shape[1])))
    return (rows, columns), outline - (left, top)
