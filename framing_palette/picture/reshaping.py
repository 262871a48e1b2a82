"""Reshaping: regions pushed along, stretched and found under the pointer."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from framing_palette.picture.regions import Part, Point, Region

LEAST_SIDE = 0.004
"""A region is never squeezed narrower than this share of the picture."""


@dataclass(frozen=True, slots=True)
class Bounds:
    """The rectangle round a region, 0..1 across the picture."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The four corners, clockwise from the upper left."""
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )


def bounds(region: Region) -> Bounds:
    """Return the rectangle round all that is added to a region."""
    points = [point for part in region.parts if not part.subtract for point in part.polygon]
    across, down = zip(*points, strict=True)
    return Bounds(min(across), min(down), max(across), max(down))


def moved_region(region: Region, *, right: float, down: float) -> Region:
    """Return the region pushed along, as far as its middle stays on the picture.

    Parameters
    ----------
    region
        The region.
    right, down
        The way, in shares of the picture's width and height.
    """
    box = bounds(region)
    across, level = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    right = min(max(across + right, 0.0), 1.0) - across
    down = min(max(level + down, 0.0), 1.0) - level
    return _mapped(region, lambda point: (point[0] + right, point[1] + down))


def stretched_region(region: Region, corner: int, to: Point) -> Region:
    """Return the region stretched so that one corner of its bounds lies at a point.

    Parameters
    ----------
    region
        The region.
    corner
        0 to 3, clockwise from the upper left; the opposite corner stays.
    to
        Where the corner goes; it cannot pass the opposite one.
    """
    box = bounds(region)
    fixed_x, fixed_y = box.corners[(corner + 2) % 4]
    from_x, from_y = box.corners[corner]
    scale_x = _scale(from_x - fixed_x, to[0] - fixed_x)
    scale_y = _scale(from_y - fixed_y, to[1] - fixed_y)
    return _mapped(
        region,
        lambda point: (
            fixed_x + (point[0] - fixed_x) * scale_x,
            fixed_y + (point[1] - fixed_y) * scale_y,
        ),
    )


def is_in_region(region: Region, x: float, y: float) -> bool:
    """Tell whether a place of the picture belongs to a region; parts apply in order."""
    inside = False
    for part in region.parts:
        if _winds_around(part, x, y):
            inside = not part.subtract
    return inside


def _scale(before: float, after: float) -> float:
    least = LEAST_SIDE if before >= 0 else -LEAST_SIDE
    wanted = after if after * least > LEAST_SIDE**2 else least
    return wanted / before if before else 1.0


def _mapped(region: Region, move: Callable[[Point], Point]) -> Region:
    parts = tuple(
        replace(part, polygon=tuple(move(point) for point in part.polygon)) for part in region.parts
    )
    return replace(region, parts=parts)


def _winds_around(part: Part, x: float, y: float) -> bool:
    points = np.asarray(part.polygon, dtype=np.float64)
    ends = np.roll(points, -1, axis=0)
    side = (ends[:, 0] - points[:, 0]) * (y - points[:, 1]) - (x - points[:, 0]) * (
        ends[:, 1] - points[:, 1]
    )
    up = (points[:, 1] <= y) & (ends[:, 1] > y) & (side > 0)
    down = (points[:, 1] > y) & (ends[:, 1] <= y) & (side < 0)
    return int(up.sum()) != int(down.sum())
