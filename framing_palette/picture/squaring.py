"""Squaring up: four corners of the art to an upright rectangle of its true proportions.

Lens distortion is left alone: the art's edges are taken as straight lines.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array, FloatArray, UInt8Array
from framing_palette.errors import CornersError

PROPORTIONS_WITHIN: Final = 0.02
LEAST_SHARE: Final = 0.04  # of the photograph that the art must cover to be found
_LEAST_SIDE: Final = 0.01
_SEARCH_SIDE = 700

Point = tuple[float, float]
Corners = tuple[Point, Point, Point, Point]
WHOLE: Final[Corners] = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


@dataclass(frozen=True, slots=True, eq=False)
class Squared:
    """The art cut out and squared: image (rows, columns, 3), and what was noticed."""

    image: Float32Array
    notices: tuple[str, ...]


def checked_corners(corners: Corners) -> Corners:
    """Return corners in the order upper left, upper right, lower right, lower left.

    Parameters
    ----------
    corners
        Four points (x, y), 0..1 across the photograph, in the order in which they go round.

    Raises
    ------
    CornersError
        When they lie outside, cross or nearly coincide.
    """
    points = np.asarray(corners, dtype=np.float64)
    if points.shape != (4, 2) or not np.isfinite(points).all():
        raise CornersError("four corners (x, y) are needed", todo="mark all four")
    if (points < -0.001).any() or (points > 1.001).any():
        raise CornersError(
            "a corner lies outside the photograph", todo="keep x and y between 0 and 1"
        )
    edges = np.roll(points, -1, axis=0) - points
    if np.hypot(edges[:, 0], edges[:, 1]).min() < _LEAST_SIDE:
        raise CornersError("two corners nearly coincide", todo="move them apart")
    following = np.roll(edges, -1, axis=0)
    turns = edges[:, 0] * following[:, 1] - edges[:, 1] * following[:, 0]
    if not ((turns > 1e-6).all() or (turns < -1e-6).all()):
        raise CornersError(
            "the edges between the corners cross or fold back",
            todo="mark the corners in the order in which they go round the art",
        )
    if turns[0] < 0:
        points = points[::-1]
    first = int(np.argmin(points.sum(axis=1)))
    ordered = np.roll(points, -first, axis=0)
    listed = [(float(x), float(y)) for x, y in ordered]
    return (listed[0], listed[1], listed[2], listed[3])


def corner_proportions(corners: Corners, columns: int, rows: int) -> float:
    """Return width over height of the flat rectangle that these corners show.

    A pinhole camera with its axis through the middle of the photograph and square pixels is
    assumed; where the view is too straight to tell the focal length, the mean lengths of opposite
    sides are compared instead.

    References
    ----------
    Zhang and He (2007), "Whiteboard scanning and image enhancement", Digital Signal Processing
    17(2), 414-432, section 3.2.
    """
    points = np.asarray(corners) * (columns, rows) - (columns / 2, rows / 2)
    upper_left, upper_right, lower_right, lower_left = np.column_stack([points, np.ones(4)])
    k_2 = np.dot(np.cross(upper_left, lower_right), lower_left) / np.dot(
        np.cross(upper_right, lower_right), lower_left
    )
    k_3 = np.dot(np.cross(upper_left, lower_right), upper_right) / np.dot(
        np.cross(lower_left, lower_right), upper_right
    )
    along, down = k_2 * upper_right - upper_left, k_3 * lower_left - upper_left
    plain = _mean_sides(points)
    if abs(along[2]) < 0.02 or abs(down[2]) < 0.02:
        return plain
    focal_2 = -(along[0] * down[0] + along[1] * down[1]) / (along[2] * down[2])
    if not 0.3 <= np.sqrt(max(focal_2, 0.0)) / max(columns, rows) <= 8.0:
        return plain
    width = (along[0] ** 2 + along[1] ** 2) / focal_2 + along[2] ** 2
    height = (down[0] ** 2 + down[1] ** 2) / focal_2 + down[2] ** 2
    return float(np.sqrt(width / height))


def _mean_sides(points: Float64Array) -> float:
    lengths = np.hypot(*(np.roll(points, -1, axis=0) - points).T)
    return float((lengths[0] + lengths[2]) / (lengths[1] + lengths[3]))


def squared_up(image: FloatArray, corners: Corners, *, proportions: float | None = None) -> Squared:
    """Return the art cut out of a photograph as an upright rectangle.

    Parameters
    ----------
    image
        Shape (rows, columns, 3), linear light.
    corners
        As ``checked_corners`` returns them.
    proportions
        True width over height; those that the corners show when None.
    """
    import cv2

    rows, columns = image.shape[:2]
    shown = corner_proportions(corners, columns, rows)
    wanted = proportions or shown
    points = np.asarray(corners) * (columns, rows) - 0.5
    lengths = np.hypot(*(np.roll(points, -1, axis=0) - points).T)
    longest = max(lengths[0], lengths[2], lengths[1] * wanted, lengths[3] * wanted)
    width, height = max(2, round(float(longest))), max(2, round(float(longest) / wanted))
    corner_px = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32) - 0.5
    homography = cv2.getPerspectiveTransform(points.astype(np.float32), corner_px)
    flat = cv2.warpPerspective(
        np.asarray(image, np.float32),
        homography,
        (width, height),
        flags=cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_REPLICATE,
    )
    return Squared(np.asarray(flat, np.float32), tuple(_proportion_notices(shown, proportions)))


def _proportion_notices(shown: float, typed: float | None) -> list[str]:
    if typed is None or abs(typed / shown - 1.0) <= PROPORTIONS_WITHIN:
        return []
    words = (
        f"The typed size has proportions of {typed:.3f} but the corners show {shown:.3f}, "
        f"{abs(typed / shown - 1.0):.0%} apart: measure again or move the corners."
    )
    return [words]


def find_corners(srgb_u8: UInt8Array, *, avoid: Corners | None = None) -> Corners | None:
    """Return the corners of the art where its edge is clear, or None.

    Parameters
    ----------
    srgb_u8
        The photograph, shape (rows, columns, 3).
    avoid
        Corners of a chart, which is a clear rectangle too.
    """
    import cv2

    rows, columns = srgb_u8.shape[:2]
    scale = _SEARCH_SIDE / max(rows, columns)
    size = max(8, round(columns * scale)), max(8, round(rows * scale))
    small = cv2.resize(srgb_u8, size, interpolation=cv2.INTER_AREA)
    lab = cv2.cvtColor(cv2.bilateralFilter(small, 7, 30, 7), cv2.COLOR_RGB2LAB)
    found: list[tuple[float, Float64Array]] = []
    for mask in (*_edge_masks(lab), *_surface_masks(lab)):
        outlines, _ = cv2.findContours(mask, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)
        found += [one for outline in outlines if (one := _quad(outline, size)) is not None]
    avoided = np.asarray(avoid).mean(axis=0) if avoid else None
    clear = [
        (share, quad)
        for share, quad in found
        if avoided is None or not _holds(quad / size, avoided)
    ]
    if not clear:
        return None
    _, quad = max(clear, key=lambda one: one[0])
    listed = [(float(x), float(y)) for x, y in quad / size]
    return checked_corners((listed[0], listed[1], listed[2], listed[3]))


def _edge_masks(lab_u8: Any) -> Iterator[Any]:
    """Yield what lies on edges, from faint to strong ones."""
    import cv2

    for low in (15, 30, 60):
        edges: Any = np.zeros(lab_u8.shape[:2], np.uint8)
        for channel in cv2.split(lab_u8):
            edges |= cv2.Canny(channel, low, 3 * low)
        yield cv2.morphologyEx(edges, cv2.MORPH_CLOSE, np.ones((5, 5), np.uint8))


def _surface_masks(lab_u8: Any) -> Iterator[Any]:
    """Yield what differs from the surface that the photograph's own edge shows."""
    import cv2
    from sklearn.cluster import KMeans

    lab = lab_u8.astype(np.float64) * (0.5, 1.0, 1.0)  # light falls off more than colour does
    band = max(3, min(lab.shape[:2]) // 40)
    edge = np.concatenate(
        [lab[:band], lab[-band:], lab[:, :band].swapaxes(0, 1), lab[:, -band:].swapaxes(0, 1)],
        axis=1,
    ).reshape(-1, 3)
    shades = np.unique(np.rint(edge[::7]), axis=0)
    count = min(4, len(shades))  # a plain table top has fewer shades than that
    middles = KMeans(count, n_init=1, random_state=0).fit(shades).cluster_centers_
    apart = np.min([np.linalg.norm(lab - middle, axis=-1) for middle in middles], axis=0)
    levels = np.clip(apart * 4, 0, 255).astype(np.uint8)
    usual, _ = cv2.threshold(levels, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    for level in (0.6 * usual, usual):
        mask: Any = np.where(levels > level, 255, 0).astype(np.uint8)
        mask = cv2.morphologyEx(mask, cv2.MORPH_CLOSE, np.ones((15, 15), np.uint8))
        yield cv2.morphologyEx(mask, cv2.MORPH_OPEN, np.ones((9, 9), np.uint8))


def _quad(outline: Any, size: tuple[int, int]) -> tuple[float, Float64Array] | None:
    """Return share and corners of an outline that is a clear four-sided figure."""
    import cv2

    area = size[0] * size[1]
    hull = cv2.convexHull(outline)
    enclosed = float(cv2.contourArea(hull))
    if not LEAST_SHARE * area <= enclosed <= 0.98 * area:
        return None
    quad = cv2.approxPolyDP(hull, 0.03 * cv2.arcLength(hull, closed=True), closed=True)
    if len(quad) != 4 or float(cv2.contourArea(quad)) < 0.9 * enclosed:
        return None
    points = _line_corners(hull.reshape(-1, 2), quad.reshape(4, 2))
    margin = 2.0
    if (points < margin).any() or (points > np.array(size) - margin).any():
        return None  # it runs along the photograph's own edge
    return enclosed / area, points


def _line_corners(hull: Any, quad: Any) -> Float64Array:
    """Return where lines fitted along the four sides meet: finer than the outline's own corners."""
    points = quad.astype(np.float64)
    lines = []
    for place in range(4):
        start, end = points[place], points[(place + 1) % 4]
        along = (end - start) / np.hypot(*(end - start))
        off = hull - start
        at, beside = off @ along, np.abs(off @ np.array([-along[1], along[0]]))
        near = hull[(beside < 3.0) & (at > 0) & (at < np.hypot(*(end - start)))]
        ends = np.vstack([near, start, end]) if len(near) < 2 else near
        middle = ends.mean(axis=0)
        direction = np.linalg.svd(ends - middle)[2][0]
        lines.append((middle, direction))
    return np.array([_meeting(lines[place - 1], lines[place]) for place in range(4)])


def _meeting(
    one: tuple[Float64Array, Float64Array], other: tuple[Float64Array, Float64Array]
) -> Float64Array:
    matrix = np.column_stack([one[1], -other[1]])
    if abs(float(np.linalg.det(matrix))) < 1e-6:
        return (one[0] + other[0]) / 2
    steps = np.linalg.solve(matrix, other[0] - one[0])
    return np.asarray(one[0] + steps[0] * one[1], dtype=np.float64)


def _holds(quad: Float64Array, point: Float64Array) -> bool:
    import cv2

    inside = cv2.pointPolygonTest(
        quad.astype(np.float32), (float(point[0]), float(point[1])), measureDist=False
    )
    return bool(inside >= 0)
