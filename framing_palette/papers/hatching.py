"""Hatching: parallel lines across an outline, so that materials differ without colour."""

from collections.abc import Iterator
from itertools import pairwise
from math import ceil, cos, floor, radians, sin

from framing_palette.papers.shapes import Line, Pen, Point


def hatched(
    outline: tuple[Point, ...], *, angle_deg: float, apart: float, pen: Pen, part: str = ""
) -> Iterator[Line]:
    """Yield the parts inside an outline of parallel lines through the origin's grid.

    Parameters
    ----------
    outline
        Closed, of three points or more.
    angle_deg
        Direction of the lines, counter-clockwise from the level.
    apart
        Distance between the lines in mm.
    """
    turn = radians(angle_deg)
    along, across = (cos(turn), -sin(turn)), (sin(turn), cos(turn))
    turned = [(_dot(point, along), _dot(point, across)) for point in outline]
    low, high = min(v for _, v in turned), max(v for _, v in turned)
    for step in range(ceil(low / apart), floor(high / apart) + 1):
        v = step * apart
        for start, end in _inside(turned, v):
            yield Line(_back(start, v, along, across), _back(end, v, along, across), pen, part)


def _inside(outline: list[Point], v: float) -> Iterator[tuple[float, float]]:
    """Yield the stretches of a level line that lie inside an outline, by the even-odd rule."""
    crossings = []
    for (u1, v1), (u2, v2) in pairwise([*outline, outline[0]]):
        if (v1 <= v) != (v2 <= v):
            crossings.append(u1 + (v - v1) / (v2 - v1) * (u2 - u1))
    crossings.sort()
    for start, end in zip(crossings[::2], crossings[1::2], strict=True):
        if end - start > 1e-6:
            yield start, end


def _dot(one: Point, two: Point) -> float:
    return one[0] * two[0] + one[1] * two[1]


def _back(u: float, v: float, along: Point, across: Point) -> Point:
    return u * along[0] + v * across[0], u * along[1] + v * across[1]
