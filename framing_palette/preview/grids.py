"""Grids: from millimetres to pixels, and how much of a pixel an edge covers."""

from dataclasses import dataclass
from math import ceil, floor
from typing import NamedTuple

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.preview.plans import Hole, Plan, Rect


class Box(NamedTuple):
    """A block of whole pixels on a grid: rows row_0 to row_1, columns column_0 to column_1."""

    row_0: int
    row_1: int
    column_0: int
    column_1: int

    @property
    def rows(self) -> int:
        """Height in pixels, 0 for an empty block."""
        return max(0, self.row_1 - self.row_0)

    @property
    def columns(self) -> int:
        """Width in pixels, 0 for an empty block."""
        return max(0, self.column_1 - self.column_0)

    @property
    def empty(self) -> bool:
        """Whether no pixel lies in it."""
        return not (self.rows and self.columns)

    def meet(self, other: "Box") -> "Box":
        """Return the pixels that lie in both."""
        return Box(
            max(self.row_0, other.row_0),
            min(self.row_1, other.row_1),
            max(self.column_0, other.column_0),
            min(self.column_1, other.column_1),
        )

    def within(self, other: "Box") -> tuple[slice, slice]:
        """Return the slices that cut this block out of an array that fills ``other``."""
        return (
            slice(self.row_0 - other.row_0, self.row_1 - other.row_0),
            slice(self.column_0 - other.column_0, self.column_1 - other.column_0),
        )


@dataclass(frozen=True, slots=True)
class Grid:
    """Where pixel (0, 0) lies and how many pixels make a millimetre.

    Blocks of one grid can be drawn apart and fit together to the last digit.
    """

    left_mm: float
    top_mm: float
    px_per_mm: float

    def x_px(self, x_mm: float) -> float:
        """Return the column coordinate; pixel 0 reaches from 0 to 1."""
        return (x_mm - self.left_mm) * self.px_per_mm

    def y_px(self, y_mm: float) -> float:
        """Return the row coordinate."""
        return (y_mm - self.top_mm) * self.px_per_mm

    def x_mm(self, box: Box) -> Float64Array:
        """Return the middles of a block's columns in millimetres."""
        columns = np.arange(box.column_0, box.column_1, dtype=np.float64)
        return self.left_mm + (columns + 0.5) / self.px_per_mm

    def y_mm(self, box: Box) -> Float64Array:
        """Return the middles of a block's rows in millimetres."""
        rows = np.arange(box.row_0, box.row_1, dtype=np.float64)
        return self.top_mm + (rows + 0.5) / self.px_per_mm

    def around(self, rect: Rect) -> Box:
        """Return every pixel that a rectangle touches."""
        slack = 1e-6
        return Box(
            floor(self.y_px(rect.top) + slack),
            ceil(self.y_px(rect.bottom) - slack),
            floor(self.x_px(rect.left) + slack),
            ceil(self.x_px(rect.right) - slack),
        )

    def inside(self, rect: Rect) -> Box:
        """Return the pixels that a rectangle covers wholly."""
        slack = 1e-6
        return Box(
            ceil(self.y_px(rect.top) - slack),
            floor(self.y_px(rect.bottom) + slack),
            ceil(self.x_px(rect.left) - slack),
            floor(self.x_px(rect.right) + slack),
        )

    def cover(self, rect: Rect, box: Box) -> tuple[Float32Array, Float32Array]:
        """Return how much of each row and each column of a block the rectangle covers, 0..1.

        A pixel's coverage is the product of the two, which is exact for an upright rectangle.
        """
        return (
            _cover(self.y_px(rect.top), self.y_px(rect.bottom), box.row_0, box.row_1),
            _cover(self.x_px(rect.left), self.x_px(rect.right), box.column_0, box.column_1),
        )

    def oval_distance_mm(self, hole: Hole, box: Box) -> tuple[Float64Array, ...]:
        """Return the distance outside an oval and the outward direction, for each pixel.

        The distance is first-order (value over slope), good near the edge where it is used.

        Returns
        -------
        Distance (negative inside), outward x, outward y, each of the block's shape.
        """
        middle_x, middle_y = hole.rect.middle
        a, b = max(hole.rect.width / 2, 1e-6), max(hole.rect.height / 2, 1e-6)
        x = ((self.x_mm(box) - middle_x) / a)[None, :]
        y = ((self.y_mm(box) - middle_y) / b)[:, None]
        radius = np.hypot(x, y)
        slope_x, slope_y = np.broadcast_arrays(x / a, y / b)
        length = np.maximum(np.hypot(slope_x, slope_y), 1e-9)
        distance = (radius - 1.0) * np.maximum(radius, 1e-9) / length
        return distance, slope_x / length, slope_y / length


@dataclass(frozen=True, slots=True)
class Hung:
    """A plan on a wall: its own origin lies at (x_mm, y_mm) of the wall."""

    plan: Plan
    x_mm: float = 0.0
    y_mm: float = 0.0

    def on(self, wall: Grid) -> Grid:
        """Return the wall's grid in the plan's own millimetres; pixels stay where they are."""
        return Grid(wall.left_mm - self.x_mm, wall.top_mm - self.y_mm, wall.px_per_mm)

    @property
    def extent(self) -> Rect:
        """The frame's outside on the wall."""
        return self.plan.extent.moved(self.x_mm, self.y_mm)


def _cover(start: float, stop: float, first: int, last: int) -> Float32Array:
    edges = np.arange(first, last, dtype=np.float64)
    covered = np.minimum(edges + 1.0, stop) - np.maximum(edges, start)
    cover: Float32Array = np.clip(covered, 0.0, 1.0).astype(np.float32)
    return cover
