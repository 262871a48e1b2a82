"""The chart's own geometry: where its 24 patches lie between four corners, and what they show."""

from fractions import Fraction
from typing import Any, Final

import numpy as np

from framing_palette.arrays import Float64Array, FloatArray
from framing_palette.colour.charts import CHART_COLUMNS, CHART_ROWS
from framing_palette.units import Length

PATCH_SHARE: Final = 0.5  # side of the sampled middle over the side of a patch
GAP_SHARE: Final = 0.1  # gap between patches over the side of a patch

Point = tuple[float, float]
Corners = tuple[Point, Point, Point, Point]


def chart_size(width: Length) -> tuple[Length, Length]:
    """Return the chart's true width and height, outer edge to outer edge of its patches."""
    side, _ = _side_and_pitch()
    square = Fraction(side[0] / side[1]).limit_denominator(1000)
    return width, width * square


def patch_outlines(corners: Corners | Float64Array, share: float = 1.0) -> Float64Array:
    """Return the patches' outlines, shape (24, 4, 2), shrunk to a share of their sides."""
    side, pitch = _side_and_pitch()
    half = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) * np.asarray(side) / 2 * share
    columns = pitch[0] * np.arange(CHART_COLUMNS) + side[0] / 2
    rows = pitch[1] * np.arange(CHART_ROWS) + side[1] / 2
    middles = np.stack(np.meshgrid(columns, rows), axis=-1).reshape(-1, 1, 2)
    return mapped((middles + half).reshape(-1, 2), unit_to(corners)).reshape(-1, 4, 2)


def sampled_patches(corners: Corners | Float64Array, image: FloatArray) -> list[FloatArray]:
    """Return the pixels in the middle of every patch, 24 arrays of shape (pixels, 3).

    ``corners`` run from 0 to 1 across the image, of shape (rows, columns, 3).
    """
    import cv2

    rows, columns = image.shape[:2]
    outlines = patch_outlines(corners, PATCH_SHARE) * (columns, rows) - 0.5
    found = []
    for outline in outlines:
        if (outline.min(axis=0) < 0).any() or (outline.max(axis=0) > (columns, rows)).any():
            found.append(image[:0, 0])
            continue
        left, top = np.maximum(np.floor(outline.min(axis=0)).astype(int), 0)
        right, bottom = np.ceil(outline.max(axis=0)).astype(int) + 1
        part = image[top:bottom, left:right]
        mask = np.zeros(part.shape[:2], np.uint8)
        cv2.fillConvexPoly(mask, np.rint(outline - (left, top)).astype(np.int32), 1)
        found.append(part[mask > 0])
    return found


def glimpsed_patches(corners: Float64Array, linear: FloatArray) -> tuple[Any, Float64Array]:
    """Return positions and colours of the patches that lie in sight, from 25 points each."""
    rows, columns = linear.shape[:2]
    at = np.floor(mapped(patch_points(5, PATCH_SHARE), unit_to(corners)) * (columns, rows))
    at = at.reshape(CHART_ROWS * CHART_COLUMNS, -1, 2)
    inside = ((at >= 0) & (at < (columns, rows))).all(axis=(1, 2))
    found = at[inside].astype(np.intp)
    seen = np.median(linear[found[..., 1], found[..., 0]], axis=1)
    return np.flatnonzero(inside), np.asarray(seen, dtype=np.float64)


def patch_points(count: int, share: float) -> Float64Array:
    """Return count x count points in every patch of the unit grid, shape (24 x count^2, 2)."""
    side, pitch = _side_and_pitch()
    steps = np.linspace(-0.5, 0.5, count) * share if count > 1 else np.zeros(1)
    inside = np.stack(np.meshgrid(steps * side[0], steps * side[1]), axis=-1).reshape(1, -1, 2)
    x = pitch[0] * np.arange(CHART_COLUMNS) + side[0] / 2
    y = pitch[1] * np.arange(CHART_ROWS) + side[1] / 2
    middles = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 1, 2)
    return np.asarray((middles + inside).reshape(-1, 2), dtype=np.float64)


def corners_through(middles: Float64Array) -> Float64Array:
    """Return the outer corners of the grid whose cells have these middles, row by row."""
    import cv2

    grid = patch_points(1, 0.0)
    homography, _ = cv2.findHomography(grid.astype(np.float32), middles.astype(np.float32))
    unit = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    return mapped(unit, np.asarray(homography, dtype=np.float64))


def unit_to(corners: Corners | Float64Array) -> Float64Array:
    """Return the homography from the unit square to four corners."""
    import cv2

    unit = np.array([[0, 0], [1, 0], [1, 1], [0, 1]], np.float32)
    return np.asarray(
        cv2.getPerspectiveTransform(unit, np.asarray(corners, np.float32)), dtype=np.float64
    )


def mapped(points: Float64Array, homography: Float64Array) -> Float64Array:
    """Return points (n, 2) taken through a homography (3, 3)."""
    ahead = np.column_stack([points, np.ones(len(points))]) @ homography.T
    depth = ahead[:, 2:]
    safe = np.where(np.abs(depth) < 1e-9, 1e-9, depth)  # the horizon is far off, not nowhere
    return np.asarray(ahead[:, :2] / safe, dtype=np.float64)


def _side_and_pitch() -> tuple[tuple[float, float], tuple[float, float]]:
    """Return side and pitch of a patch when the whole grid is 1 wide and 1 high."""
    side = tuple(1 / (count + (count - 1) * GAP_SHARE) for count in (CHART_COLUMNS, CHART_ROWS))
    pitch = tuple(one * (1 + GAP_SHARE) for one in side)
    return (side[0], side[1]), (pitch[0], pitch[1])
