"""Oval and round openings: how long a strip round them is, and what a reveal really shows.

An opening and the next one are ellipses, the second with both half axes grown by the reveal. The
reveal is then exact at the four ends of the axes and narrower in between, because a curve at a
constant distance from an ellipse is no ellipse.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, cos, floor, hypot, pi, sin, sqrt
from typing import Final

from framing_palette.catalogue import Kind
from framing_palette.design.figures import Figure, RectangleFigure
from framing_palette.design.layers import Shape, Sides
from framing_palette.design.size_parts import Sizes
from framing_palette.units import ZERO, Length

_TENTHS: Final = 10  # lengths along a curve are told to a tenth of a millimetre
_DIRECTIONS: Final = 720


@dataclass(frozen=True, slots=True)
class OvalFrame:
    """A fillet round an oval or round opening: one bent, laminated or turned piece.

    Parameters
    ----------
    layer_number, opening_number
        Counted from the art, and from the first window.
    inside, outside
        Width and height at the sight edge, and across the whole strip.
    sight_length, outer_length
        Along the sight edge and along the outer edge, rounded up to 0.1 mm.
    """

    layer_number: int
    opening_number: int
    inside: RectangleFigure
    outside: RectangleFigure
    sight_length: Length
    outer_length: Length


def perimeter(width: Length, height: Length) -> Length:
    """Return how long an ellipse is all round, rounded up to 0.1 mm.

    References
    ----------
    .. [1] S. Ramanujan, Modular equations and approximations to pi, Quarterly Journal of
       Mathematics 45 (1914), 350-372: pi (a + b) (1 + 3 h / (10 + sqrt(4 - 3 h))) with
       h = ((a - b) / (a + b))^2, short by less than 0.05 % for any ellipse and by less than
       0.001 % while one axis is at most four times the other.
    """
    a, b = width.as_float_mm() / 2, height.as_float_mm() / 2
    h = ((a - b) / (a + b)) ** 2
    length_mm = pi * (a + b) * (1 + 3 * h / (10 + sqrt(4 - 3 * h)))
    return Length(Fraction(ceil(length_mm * _TENTHS - 1e-6), _TENTHS))


def narrowest_reveal(inside: tuple[Length, Length], reveal: Sides) -> Length:
    """Return the least that shows between an oval opening and the one above it, cut to 0.1 mm.

    The distance between two convex outlines, one within the other, is the least difference of
    their extents over all directions.

    Parameters
    ----------
    inside
        Width and height of the inner opening.
    reveal
        What shows at the four ends of its axes.
    """
    a, b = (side.as_float_mm() / 2 for side in inside)
    top, right, bottom, left = (length.as_float_mm() for _, length in reveal.named)
    across, down = a + (left + right) / 2, b + (top + bottom) / 2
    x, y = (right - left) / 2, (bottom - top) / 2
    least = min(
        hypot(across * cos(angle), down * sin(angle))
        + x * cos(angle)
        + y * sin(angle)
        - hypot(a * cos(angle), b * sin(angle))
        for angle in (2 * pi * step / _DIRECTIONS for step in range(_DIRECTIONS))
    )
    return Length(Fraction(floor(least * _TENTHS + 1e-6), _TENTHS))


def oval_frames(sizes: Sizes) -> tuple[OvalFrame, ...]:
    """Return every fillet that goes round an oval or round opening, from the art outward.

    Without a known face the outside is the sight edge itself.
    """
    return tuple(
        OvalFrame(
            layer_number,
            opening_number,
            opening.size,
            outside := _outside(opening.size, size.layer.strip_width or ZERO),
            perimeter(*opening.size.lengths),
            perimeter(*outside.lengths),
        )
        for layer_number, size in enumerate(sizes.layers, start=1)
        if size.layer.kind is not Kind.MAT
        for opening_number, opening in enumerate(size.openings, start=1)
        if opening.shape is not Shape.RECTANGLE
    )


def _outside(inside: RectangleFigure, strip: Length) -> RectangleFigure:
    width, height = (
        Figure.start(length, "opening").plus(2, strip, "strip") for length in inside.lengths
    )
    return RectangleFigure(width, height)
