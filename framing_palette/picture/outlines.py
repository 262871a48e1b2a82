"""Outlines to draw with: rectangle, ellipse, lasso; and what makes one unusable."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from framing_palette.picture.regions import Point

Outline = tuple[Point, ...]

ELLIPSE_POINTS = 72
MAX_POINTS = 100_000
MIN_AREA = 1e-9
"""Smallest area of an outline, as a share of the picture; less is a line or a dot."""

LASSO_TOLERANCE = 0.0015
"""How far a simplified lasso may stray from the hand, as a share of the picture's side."""

OUT_OF_RANGE = 1.5
"""Beyond this, coordinates were surely meant as pixels or per cent."""


@dataclass(frozen=True, slots=True)
class OutlineFault:
    """Why an outline cannot be used, and what to do."""

    problem: str
    todo: str


def rectangle(x_1: float, y_1: float, x_2: float, y_2: float) -> Outline:
    """Return the rectangle between two opposite corners, in any order."""
    left, right = sorted((x_1, x_2))
    top, bottom = sorted((y_1, y_2))
    return ((left, top), (right, top), (right, bottom), (left, bottom))


def ellipse(x_1: float, y_1: float, x_2: float, y_2: float) -> Outline:
    """Return the ellipse that fits into the rectangle between two opposite corners."""
    angle = np.linspace(0, 2 * np.pi, ELLIPSE_POINTS, endpoint=False)
    x = (x_1 + x_2) / 2 + abs(x_2 - x_1) / 2 * np.cos(angle)
    y = (y_1 + y_2) / 2 + abs(y_2 - y_1) / 2 * np.sin(angle)
    return tuple(zip(x.tolist(), y.tolist(), strict=True))


def lasso(points: Outline, *, tolerance: float = LASSO_TOLERANCE) -> Outline:
    """Return a hand-drawn line as a closed outline with far fewer points.

    Parameters
    ----------
    points
        Where the pointer went, in order.
    tolerance
        Largest distance between the two, in shares of the picture's side.

    References
    ----------
    D. Douglas and T. Peucker, Algorithms for the reduction of the number of points required to
    represent a digitized line, 1973 (as in scikit-image).
    """
    from skimage.measure import approximate_polygon

    if len(points) <= 4:
        return points
    closed = np.asarray((*points, points[0]), dtype=np.float64)
    kept = approximate_polygon(closed, tolerance)[:-1]  # type: ignore[no-untyped-call]
    if len(kept) < 3:
        return points
    return tuple((float(x), float(y)) for x, y in kept)


def outline_area(outline: Outline) -> float:
    """Return the area that an outline encloses, as a share of the picture; loops may cancel."""
    points = np.asarray(outline, dtype=np.float64)
    x, y = points[:, 0], points[:, 1]
    return abs(float(x @ np.roll(y, -1) - y @ np.roll(x, -1))) / 2


def outline_fault(outline: Outline) -> OutlineFault | None:
    """Return what makes an outline unusable, or None when it can be used."""
    if len(outline) < 3:
        return OutlineFault(f"has {len(outline)} points", "give it at least three")
    if len(outline) > MAX_POINTS:
        return OutlineFault(f"has {len(outline)} points", f"give it at most {MAX_POINTS}")
    points = np.asarray(outline, dtype=np.float64)
    if np.abs(points).max() > OUT_OF_RANGE:
        return OutlineFault(
            f"reaches to {np.abs(points).max():g}", "give x and y from 0 to 1 across the picture"
        )
    low, high = points.min(axis=0), points.max(axis=0)
    if (high <= 0).any() or (low >= 1).any():
        return OutlineFault("lies wholly outside the picture", "move it into 0 to 1")
    if np.prod(high - low) < MIN_AREA or _is_straight(points):
        return OutlineFault("has no area", "draw it around something, or delete it")
    return None


def _is_straight(points: NDArray[np.float64]) -> bool:
    """Return True when all points lie on one line, whatever its slope."""
    spread = np.linalg.svd(points - points.mean(axis=0), compute_uv=False)
    return bool(spread[1] <= 1e-9 * max(spread[0], 1e-12))
