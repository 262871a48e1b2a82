"""Borders of the outermost mat: to a given outside size, weighted, or by the same ratio."""

from dataclasses import replace
from fractions import Fraction
from math import isqrt
from typing import Final

from framing_palette.design.designs import Design
from framing_palette.design.layers import Sides
from framing_palette.design.sizes import sizes_of
from framing_palette.design.spoken import above_zero, not_below_zero, said
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length

Size = tuple[Length, Length]
# Square roots are cut off at this fraction of a millimetre.
ROOT_STEPS_PER_MM: Final = 10_000


def borders_to_outer(opening: Size, outer: Size, weighting: Length = ZERO) -> Sides:
    """Centre an opening in an outside size; ``weighting`` makes the bottom that much wider.

    Raises
    ------
    FieldError
        When a border would not be above zero.

    Examples
    --------
    >>> inch = Length.inches
    >>> sides = borders_to_outer((inch("7 1/2"), inch("9 1/2")), (inch(11), inch(14)))
    >>> sides.left.show("in"), sides.top.show("in")
    ('1 3/4 in', '2 1/4 in')
    """
    not_below_zero("weighting", weighting)
    side = (outer[0] - opening[0]) / 2
    top = (outer[1] - opening[1] - weighting) / 2
    sides = Sides(top, side, top + weighting, side)
    if sides.smallest <= ZERO:
        got = f"{said(outer[0])} by {said(outer[1])}"
        wanted = (
            f"it must leave a border around the opening, {said(opening[0])} by {said(opening[1])}"
        )
        raise FieldError("outer size", got=got, wanted=wanted)
    return sides


def weighted(border: Length, share: Fraction = Fraction(1, 5)) -> Sides:
    """Return equal borders with the bottom wider by a share of itself, by default one fifth.

    References
    ----------
    .. [1] Wikibooks, "How to Frame a Picture": the bottom border is made about 20 % wider.
    """
    above_zero("border", border)
    return Sides(border, border, border * (1 + share), border)


def same_ratio_borders(opening: Size, outer: Size) -> Sides:
    """Return borders where the side stands to the top as the top stands to the bottom.

    With side s and top and bottom t + b = h together, t^2 = s b, so t = (sqrt(s^2 + 4 s h) - s)/2.
    The top is cut off at 1/10000 mm, because a square root is seldom a fraction; the bottom takes
    the rest, so that the outside size stays exact.

    Raises
    ------
    FieldError
        When a border would not be above zero.
    """
    plain = borders_to_outer(opening, outer)
    side, both = plain.left.mm, plain.vertical.mm
    top = Length((_root(side * side + 4 * side * both) - side) / 2)
    return Sides(top, plain.left, plain.vertical - top, plain.left)


def _root(value: Fraction) -> Fraction:
    """Return the square root of a number of square millimetres, cut off."""
    scaled = value * ROOT_STEPS_PER_MM**2
    return Fraction(isqrt(scaled.numerator // scaled.denominator), ROOT_STEPS_PER_MM)


def fitted_to_outer(design: Design, outer: Size, weighting: Length = ZERO) -> Design:
    """Return the design with the outermost mat's borders chosen for an outside size.

    Raises
    ------
    FieldError
        When there is no mat, or the size leaves no border.
    """
    place = design.outermost_mat
    if place is None:
        raise FieldError("outer size", got="given", wanted="only a mat is cut to an outside size")
    above_zero("outer size", min(outer))
    # Wide trial borders pass every check; what they enclose does not depend on them.
    trial = _with_borders(design, place, Sides.all_round(max(outer)))
    contents = sizes_of(trial).contents.lengths
    opening = (contents[0] - 2 * max(outer), contents[1] - 2 * max(outer))
    return _with_borders(design, place, borders_to_outer(opening, outer, weighting))


def _with_borders(design: Design, place: int, borders: Sides) -> Design:
    layers = list(design.layers)
    layers[place] = replace(layers[place], borders=borders)
    return replace(design, layers=tuple(layers))
