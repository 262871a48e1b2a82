"""Grids of squares in a photograph: the second way to propose where a colour chart may lie.

Squares are outlined one by one; one of them gives the perspective, the others are counted where a
chart would have them. Which of the places a partly seen grid takes in the chart is left to the
colours to say.
"""

from collections.abc import Iterator
from itertools import product
from typing import Any, Final

import numpy as np

from framing_palette.arrays import Float64Array, UInt8Array
from framing_palette.colour.charts import CHART_COLUMNS, CHART_ROWS
from framing_palette.picture.chart_layout import GAP_SHARE, mapped

PITCHES: Final = (1.1, 1.2, 1.35)  # from patch to patch, over the side of what was outlined
LEAST_SQUARES: Final = 9
_LARGEST_SHARE = 0.04  # of the photograph's area that one patch may take
_LEAST_SIDE_PX = 7
_NEAR = 0.2  # how far from its place, in pitches, a square may lie
_MOST_TRIED = 60
_MOST_GRIDS = 4
_MOST_WINDOWS = 14


def grid_proposals(rgb_u8: UInt8Array) -> list[Float64Array]:
    """Return corners (4, 2), in pixels, of places where a chart may lie, in any turn."""
    quads = _squares(rgb_u8)
    if len(quads) < LEAST_SQUARES:
        return []
    middles = quads.mean(axis=1)
    sides = np.sqrt([_area(quad) for quad in quads])
    grids: list[tuple[Float64Array, Float64Array]] = []
    step = max(1, len(quads) // _MOST_TRIED)
    for (quad, side), pitch in product(zip(quads[::step], sides[::step], strict=True), PITCHES):
        alike = (sides > 0.6 * side) & (sides < 1.6 * side)
        homography = np.asarray(np.linalg.inv(_unit_square_to(quad)), dtype=np.float64)
        places = mapped(middles[alike], homography) / pitch
        nearest = np.rint(places)
        fits = (np.abs(places - nearest).max(axis=1) < _NEAR) & (np.abs(nearest).max(axis=1) < 6)
        if len(np.unique(nearest[fits], axis=0)) >= LEAST_SQUARES:
            grids.append((middles[alike][fits], nearest[fits]))
    grids.sort(key=lambda grid: -len(grid[0]))
    return [box for grid in _apart(grids) for box in _boxes(*grid)]


def _apart(
    grids: list[tuple[Float64Array, Float64Array]],
) -> Iterator[tuple[Float64Array, Float64Array]]:
    """Yield the first few grids that lie in different places."""
    taken: list[Float64Array] = []
    for middles, places in grids:
        middle = np.median(middles, axis=0)
        reach = 0.5 * float(np.ptp(middles, axis=0).max())
        if len(taken) < _MOST_GRIDS and all(np.abs(middle - one).max() > reach for one in taken):
            taken.append(middle)
            yield middles, places


def _squares(rgb_u8: UInt8Array) -> Float64Array:
    """Return the outlines of all that looks like a small square, shape (squares, 4, 2)."""
    import cv2

    grey = cv2.GaussianBlur(cv2.cvtColor(rgb_u8, cv2.COLOR_RGB2GRAY), (0, 0), 0.8)
    planes = [grey, *(cv2.GaussianBlur(plane, (0, 0), 0.8) for plane in cv2.split(rgb_u8))]
    most = _LARGEST_SHARE * grey.size
    found: list[Float64Array] = []
    for plane, window in product(planes, (15, 41)):
        ink = cv2.adaptiveThreshold(
            plane, 255, cv2.ADAPTIVE_THRESH_MEAN_C, cv2.THRESH_BINARY, window, -2
        )
        ink = cv2.morphologyEx(ink, cv2.MORPH_OPEN, np.ones((3, 3), np.uint8))
        outlines, _ = cv2.findContours(ink, cv2.RETR_LIST, cv2.CHAIN_APPROX_SIMPLE)
        found += [quad for outline in outlines if (quad := _square(outline, most)) is not None]
    return _one_each(found)


def _square(outline: Any, most: float) -> Float64Array | None:
    import cv2

    hull = cv2.convexHull(outline)
    area = float(cv2.contourArea(hull))
    if not _LEAST_SIDE_PX**2 <= area <= most or float(cv2.contourArea(outline)) < 0.75 * area:
        return None
    quad = cv2.approxPolyDP(hull, 0.08 * cv2.arcLength(hull, closed=True), closed=True)
    if len(quad) != 4 or float(cv2.contourArea(quad)) < 0.7 * area:
        return None
    points = np.asarray(quad, dtype=np.float64).reshape(4, 2)
    lengths = np.hypot(*(np.roll(points, -1, axis=0) - points).T)
    return points if lengths.max() < 1.8 * lengths.min() else None


def _one_each(quads: list[Float64Array]) -> Float64Array:
    """Return the outlines without those that outline the same square again."""
    kept: list[Float64Array] = []
    middles = np.empty((0, 2))
    for quad in sorted(quads, key=_area, reverse=True):
        middle = quad.mean(axis=0)
        reach = 0.3 * np.sqrt(_area(quad))
        if len(middles) and np.hypot(*(middles - middle).T).min() < reach:
            continue
        kept.append(quad)
        middles = np.vstack([middles, middle])
    return np.array(kept) if kept else np.empty((0, 4, 2))


def _boxes(middles: Float64Array, places: Float64Array) -> Iterator[Float64Array]:
    """Yield the corners of the 6 x 4 and 4 x 6 grids that hold the most places."""
    import cv2

    homography: Any
    homography, _ = cv2.findHomography(
        (places * (1 + GAP_SHARE)).astype(np.float32), middles.astype(np.float32), cv2.RANSAC, 3.0
    )
    if homography is None:
        return
    windows: list[tuple[int, Float64Array]] = []
    low, high = places.min(axis=0), places.max(axis=0)
    for size in ((CHART_COLUMNS, CHART_ROWS), (CHART_ROWS, CHART_COLUMNS)):
        spans = [range(int(low[axis] - size[axis] + 1), int(high[axis]) + 1) for axis in (0, 1)]
        for left, up in product(*spans):
            first = np.array([left, up])
            inside = ((places >= first) & (places < first + size)).all(axis=1)
            start = first * (1 + GAP_SHARE) - 0.5
            end = (first + size - 1) * (1 + GAP_SHARE) + 0.5
            box = np.array([start, (end[0], start[1]), end, (start[0], end[1])])
            windows.append((int(inside.sum()), box))
    windows.sort(key=lambda window: -window[0])
    most = windows[0][0]
    for count, box in windows[:_MOST_WINDOWS]:
        if count >= max(LEAST_SQUARES, most - 1):
            yield mapped(box, np.asarray(homography, dtype=np.float64))


def _unit_square_to(quad: Float64Array) -> Float64Array:
    import cv2

    unit = np.array([[-0.5, -0.5], [0.5, -0.5], [0.5, 0.5], [-0.5, 0.5]], np.float32)
    ordered = quad if _signed_area(quad) > 0 else quad[::-1]
    matrix = cv2.getPerspectiveTransform(unit, np.ascontiguousarray(ordered, dtype=np.float32))
    return np.asarray(matrix, dtype=np.float64)


def _signed_area(quad: Float64Array) -> float:
    x, y = quad.T
    return float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2


def _area(quad: Float64Array) -> float:
    return abs(_signed_area(quad))
