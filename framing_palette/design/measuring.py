"""Measure twice: whether two independent measurements settle the size of the art.

The rules: each side may differ by the tolerance at most. Openings go by the smaller of the two
readings, so that the overlap holds everywhere; what must hold the art goes by the larger. When the
diagonals differ, the art is taken as a parallelogram, and openings go by the largest upright
rectangle inside it.
"""

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from math import isqrt
from typing import Final, Protocol

from framing_palette.design.spoken import above_zero, said
from framing_palette.errors import FieldError, MeasurementError, MeasurementsDisagreeError
from framing_palette.units import ZERO, Length, LengthUnit

TOLERANCE_INCH: Final = Length.inches(Fraction(1, 32))
TOLERANCE_METRIC: Final = Length.mm_of(1)
# Square roots are cut off, or rounded up, at this fraction of a millimetre.
ROOT_STEPS_PER_MM: Final = 10_000


class Measured(Protocol):
    """One measurement of the art: its size, who took it and when, and both diagonals if taken."""

    @property
    def width(self) -> Length:
        """As read from the rule."""
        ...

    @property
    def height(self) -> Length:
        """As read from the rule."""
        ...

    @property
    def by(self) -> str:
        """Initials of whoever measured."""
        ...

    @property
    def at(self) -> datetime:
        """When."""
        ...

    @property
    def diagonals(self) -> tuple[Length, Length] | None:
        """From the top left and from the top right corner."""
        ...


@dataclass(frozen=True, slots=True)
class Reading:
    """A measurement as a plain value.

    ``piece`` is the place of the measured art among several in one frame, counted from 0.
    """

    width: Length
    height: Length
    by: str
    at: datetime
    diagonals: tuple[Length, Length] | None = None
    piece: int = 0


@dataclass(frozen=True, slots=True)
class AgreedSize:
    """What both measurements agree on.

    Parameters
    ----------
    width, height
        For openings: what surely lies within the art.
    outer_width, outer_height
        For whatever must hold the art: what the art surely lies within.
    skew
        How far the upright sides lean over the height; zero when square or not checked.
    square_checked
        Whether diagonals were taken.
    """

    width: Length
    height: Length
    outer_width: Length
    outer_height: Length
    skew: Length
    square_checked: bool

    @property
    def is_square(self) -> bool:
        """Whether no lean was found; false tells that openings were made safe."""
        return not self.skew


def default_tolerance(unit: LengthUnit) -> Length:
    """Return the usual tolerance: 1/32 in for inches, else 1 mm."""
    return TOLERANCE_INCH if unit == "in" else TOLERANCE_METRIC


def agree(
    first: Measured,
    second: Measured,
    tolerance: Length = TOLERANCE_INCH,
    unit: LengthUnit = "in",
    *,
    of: str = "",
) -> AgreedSize:
    """Settle the size of the art from two independent measurements.

    Parameters
    ----------
    first, second : Measured
        The second was taken without seeing the first.
    tolerance : Length
        How far one side may differ; ``default_tolerance`` tells the usual one.
    unit : {"in", "mm", "cm"}
        What a refusal is spoken in.
    of : str
        Names the piece in a refusal, such as ``art 2``; empty when there is only one.

    Raises
    ------
    MeasurementsDisagreeError
        When a side or a diagonal differs by more than the tolerance, naming it.
    MeasurementError
        When both were taken by the same hand at the same time, or the diagonals cannot belong to
        the sides.
    FieldError
        When a measure is not above zero.
    """
    for reading, name in ((first, "first"), (second, "second")):
        above_zero(f"{name} measurement, width", reading.width)
        above_zero(f"{name} measurement, height", reading.height)
    if tolerance < ZERO:
        raise FieldError("tolerance", got=said(tolerance), wanted="give zero or more")
    whose = f" of {of}" if of else ""
    if first.by.strip().casefold() == second.by.strip().casefold() and first.at == second.at:
        message = (
            f"Both measurements{whose} name the same hand and time: let the second be independent."
        )
        raise MeasurementError(message)
    _check_pair(f"width{whose}", first.width, second.width, tolerance, unit)
    _check_pair(f"height{whose}", first.height, second.height, tolerance, unit)
    width, height = min(first.width, second.width), min(first.height, second.height)
    outer = max(first.width, second.width), max(first.height, second.height)
    diagonals = _diagonals(first, second, tolerance, unit, whose)
    if diagonals is None or abs(diagonals[0] - diagonals[1]) <= tolerance:
        return AgreedSize(width, height, *outer, ZERO, diagonals is not None)
    _check_diagonals(width, height, diagonals, tolerance, unit)
    return _within_leaning(width, height, outer, diagonals)


def _check_pair(
    side: str, first: Length, second: Length, tolerance: Length, unit: LengthUnit
) -> None:
    apart = abs(first - second)
    if apart > tolerance:
        raise MeasurementsDisagreeError(
            side,
            first=said(first, unit),
            second=said(second, unit),
            apart=said(apart, unit),
            tolerance=said(tolerance, unit),
        )


def _diagonals(
    first: Measured, second: Measured, tolerance: Length, unit: LengthUnit, whose: str
) -> tuple[Length, Length] | None:
    """Return the diagonals, from the first measurement that has them; both must agree."""
    if first.diagonals and second.diagonals:
        pairs = zip(("first", "second"), first.diagonals, second.diagonals, strict=True)
        for name, one, two in pairs:
            _check_pair(f"{name} diagonal{whose}", one, two, tolerance, unit)
    return first.diagonals or second.diagonals


def _check_diagonals(
    width: Length,
    height: Length,
    diagonals: tuple[Length, Length],
    tolerance: Length,
    unit: LengthUnit,
) -> None:
    """Refuse diagonals that no parallelogram of these sides has.

    In a parallelogram the squares of the diagonals add up to twice the squares of the sides.
    """
    from_sides = _root(width.mm**2 + height.mm**2)
    from_diagonals = _root((diagonals[0].mm ** 2 + diagonals[1].mm ** 2) / 2)
    if abs(from_sides - from_diagonals) > 2 * tolerance:
        one, other, across, down = (said(x, unit) for x in (*diagonals, width, height))
        message = (
            f"The diagonals {one} and {other} cannot belong to art of {across} by {down}: measure "
            "sides and diagonals again."
        )
        raise MeasurementError(message)


def _within_leaning(
    width: Length,
    height: Length,
    outer: tuple[Length, Length],
    diagonals: tuple[Length, Length],
) -> AgreedSize:
    """Return the larger upright rectangle in a parallelogram of these sides and diagonals.

    With lean s over the height, d1^2 - d2^2 = 4 w s. One candidate lies along the width and loses
    s of it, the other along the height and loses the lean over the width.
    """
    difference = abs(diagonals[0].mm ** 2 - diagonals[1].mm ** 2)
    over_height = Length(difference / (4 * width.mm))
    over_width = Length(difference / (4 * height.mm))
    along_width = width - over_height, _root(height.mm**2 - over_height.mm**2)
    along_height = _root(width.mm**2 - over_width.mm**2), height - over_width
    best = max(along_width, along_height, key=lambda size: size[0].mm * size[1].mm)
    if best is along_width:
        outer = outer[0] + over_height, outer[1]
    else:
        outer = outer[0], outer[1] + over_width
    return AgreedSize(best[0], best[1], *outer, over_height, square_checked=True)


def _root(square_mm: Fraction) -> Length:
    """Return a square root, cut off at 1/10000 mm."""
    scaled = max(square_mm, Fraction(0)) * ROOT_STEPS_PER_MM**2
    return Length(Fraction(isqrt(scaled.numerator // scaled.denominator), ROOT_STEPS_PER_MM))
