"""Lengths in sentences: how they are said, and how one that cannot be is refused."""

from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length, LengthUnit


def said(length: Length, unit: LengthUnit | None = None) -> str:
    """Write a length for a sentence in the unit that is spoken; None for whichever suits it.

    Zero is the same in every unit, so that without a spoken one it is told without any.
    Inches go to 1/64; what that would round is told in millimetres when they are exact. Metric
    units are told to 1/1000 mm when that is exact. ``about`` marks whatever is rounded even so.
    """
    if unit is None and not length:
        return "0"
    if unit not in ("in", None):
        places = 3 if length.is_shown_exactly(unit, decimals=3) else 1
        return length.show(unit, decimals=places)
    is_metric = length.is_shown_exactly("mm") and not length.is_shown_exactly("in", 64)
    return length.show("mm") if is_metric else length.show("in", 64)


def said_at_least(length: Length, unit: LengthUnit = "in") -> str:
    """Write a length that something must reach, rounded up where it cannot be told exactly."""
    exact = said(length, unit)
    if not exact.startswith("about"):
        return exact
    return f"about {said(length.rounded(unit, 64, way='up'), unit)}"


def above_zero(field: str, length: Length) -> None:
    """Refuse a length that is zero or negative.

    Raises
    ------
    FieldError
        Naming the field.
    """
    if length <= ZERO:
        raise FieldError(field, got=said(length), wanted="give a length above zero")


def not_below_zero(field: str, length: Length) -> None:
    """Refuse a negative length.

    Raises
    ------
    FieldError
        Naming the field.
    """
    if length < ZERO:
        raise FieldError(field, got=said(length), wanted="give zero or a length above it")
