"""Which pixels a region covers: a pixel belongs when its centre lies inside the outline."""

from typing import Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.errors import FieldError
from framing_palette.picture.regions import Part, Point, Region

RIM_DEPTH = 0.06
"""Depth of the rim as a share of the picture's short side."""

SIDES = ("top", "right", "bottom", "left")


def region_mask(region: Region, rows: int, columns: int) -> BoolArray:
    """Return the pixels of a region, shape (rows, columns); parts add and subtract in order.

    A region smaller than a pixel covers the pixel under its middle, so that it is never lost.

    Raises
    ------
    FieldError
        When the parts leave nothing inside the picture.
    """
    mask = np.zeros((rows, columns), dtype=np.bool_)
    for part in region.parts:
        inside = polygon_mask(part.polygon, rows, columns)
        if not inside.any():
            inside = _pixel_under(part, rows, columns)
        mask = mask & ~inside if part.subtract else mask | inside
    if not mask.any():
        raise FieldError(
            f'region "{region.name}"',
            got="empty inside the picture",
            wanted="draw it on the picture again, or delete it",
        )
    return mask


def polygon_mask(polygon: tuple[Point, ...], rows: int, columns: int) -> BoolArray:
    """Return the pixels whose centre a closed polygon winds around, shape (rows, columns).

    A lasso that crosses itself covers all of its loops (winding rule), and what lies outside the
    picture is cut off.

    Parameters
    ----------
    polygon
        (x, y) from 0 to 1 across the upright picture.
    rows, columns
        Size of the picture in pixels.
    """
    points = np.asarray(polygon, dtype=np.float64).reshape(-1, 2)
    x, y = points[:, 0] * columns - 0.5, points[:, 1] * rows - 0.5  # pixel centres at integers
    row, column, sign = _crossings(x, y, rows)
    mask = np.zeros((rows, columns), dtype=np.bool_)
    if not len(row):
        return mask
    top, bottom = int(row.min()), int(row.max()) + 1
    winding = np.zeros((bottom - top, columns + 1), dtype=np.int32)
    np.add.at(winding, (row - top, np.clip(np.ceil(column), 0, columns).astype(np.intp)), sign)
    np.cumsum(winding, axis=1, out=winding)
    mask[top:bottom] = winding[:, :columns] != 0
    return mask


def rim_mask(rows: int, columns: int, *, depth: float = RIM_DEPTH) -> BoolArray:
    """Return the outer band that a border touches, at least one pixel deep.

    Parameters
    ----------
    rows, columns
        Size of the picture in pixels.
    depth
        As a share of the short side, above 0 and at most 0.5.

    Raises
    ------
    FieldError
        When the depth does not lie above 0 and at most at 0.5.
    """
    band = _rim_px(rows, columns, depth)
    rim = np.ones((rows, columns), dtype=np.bool_)
    rim[band : rows - band, band : columns - band] = False
    return rim


def rim_side_masks(rows: int, columns: int, *, depth: float = RIM_DEPTH) -> dict[str, BoolArray]:
    """Return the rim split into ``SIDES``, mitred at the corners, each at least one pixel.

    Raises
    ------
    FieldError
        When the depth does not lie above 0 and at most at 0.5.
    """
    band = _rim_px(rows, columns, depth)
    row, column = np.indices((rows, columns), dtype=np.int32)
    reach = np.stack([row, columns - 1 - column, rows - 1 - row, column])
    nearest = reach.min(axis=0)
    return {side: (reach[index] == nearest) & (nearest < band) for index, side in enumerate(SIDES)}


def _rim_px(rows: int, columns: int, depth: float) -> int:
    if not 0 < depth <= 0.5:
        raise FieldError("depth of the rim", got=depth, wanted="it must lie above 0, up to 0.5")
    return max(1, round(depth * min(rows, columns)))


def _crossings(
    x: Float64Array, y: Float64Array, rows: int
) -> tuple[NDArray[Any], Float64Array, NDArray[Any]]:
    """Return where the polygon's edges cross the rows of pixel centres, and which way."""
    x_2, y_2 = np.roll(x, -1), np.roll(y, -1)
    first = np.clip(np.ceil(np.minimum(y, y_2)), 0, rows).astype(np.intp)
    last = np.clip(np.ceil(np.maximum(y, y_2)), 0, rows).astype(np.intp)  # half open
    count = last - first
    edge = np.repeat(np.arange(len(x)), count)
    row = np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + first[edge]
    along = (row - y[edge]) / (y_2 - y)[edge]
    return row, x[edge] + along * (x_2 - x)[edge], np.sign(y_2 - y)[edge].astype(np.int32)


def _pixel_under(part: Part, rows: int, columns: int) -> BoolArray:
    """Return the pixel under a part's middle, or nothing when the middle lies outside."""
    mask = np.zeros((rows, columns), dtype=np.bool_)
    x, y = np.mean(np.asarray(part.polygon, dtype=np.float64), axis=0)
    if 0 <= x <= 1 and 0 <= y <= 1:
        mask[min(int(y * rows), rows - 1), min(int(x * columns), columns - 1)] = True
    return mask
