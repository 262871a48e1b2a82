"""The exact length that every sum of the shop is done in."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal, Self, overload

from framing_palette.errors import FieldError
from framing_palette.units.length_text import (
    MM_PER_INCH,
    LengthUnit,
    figures_from_millimetres,
    millimetres_from_text,
    rounded_half_up,
    smallest_step_mm,
)

Exact = int | Fraction | Decimal
RoundingWay = Literal["nearest", "down", "up"]


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length as exact rational millimetres; it never passes through a binary float.

    Parameters
    ----------
    mm : Fraction
        Millimetres, of any sign.

    Examples
    --------
    >>> (Length.parse("16") - 2 * Length.parse("1/8")).show("in")
    '15 3/4 in'
    """

    mm: Fraction

    def __post_init__(self) -> None:
        if type(self.mm) is not Fraction:
            object.__setattr__(self, "mm", exact_fraction(self.mm))

    @classmethod
    def mm_of(cls, amount: Exact | str) -> Self:
        """Return the length of an exact number, or of a text whose bare number is millimetres."""
        return cls.parse(amount, "mm") if isinstance(amount, str) else cls(exact_fraction(amount))

    @classmethod
    def inches(cls, amount: Exact | str) -> Self:
        """Return the length of an exact number, or of a text whose bare number is inches."""
        return (
            cls.parse(amount, "in")
            if isinstance(amount, str)
            else cls(exact_fraction(amount) * MM_PER_INCH)
        )

    @classmethod
    def parse(cls, text: str, unit: LengthUnit = "in", *, field: str | None = None) -> Self:
        """Read a written length; see ``millimetres_from_text`` for the accepted forms.

        Raises
        ------
        LengthError
            When the text is none of the accepted forms.
        """
        return cls(millimetres_from_text(text, unit, field=field))

    def show(self, unit: LengthUnit, denominator: int = 32, *, decimals: int = 1) -> str:
        """Write the length with its unit; ``about`` in front says that it had to be rounded.

        Parameters
        ----------
        unit : {"in", "mm", "cm"}
            Unit to show.
        denominator : {16, 32, 64}
            Smallest fraction of an inch.
        decimals : int
            Decimal places of a millimetre.

        Returns
        -------
        str
            For example ``16 3/8 in``, ``415.9 mm`` or ``about 11 13/16 in``.

        Examples
        --------
        >>> Length.mm_of(300).show("in")
        'about 11 13/16 in'
        """
        remark = "" if self.is_shown_exactly(unit, denominator, decimals=decimals) else "about "
        return f"{remark}{self.figures(unit, denominator, decimals=decimals)} {unit}"

    def figures(self, unit: LengthUnit, denominator: int = 32, *, decimals: int = 1) -> str:
        """Return the rounded figures alone, as ``16 3/8``; the page must state the rounding."""
        return figures_from_millimetres(self.mm, unit, denominator, decimals)

    def is_shown_exactly(
        self, unit: LengthUnit, denominator: int = 32, *, decimals: int = 1
    ) -> bool:
        """Whether ``show`` can write the length without rounding it."""
        return (self.mm / smallest_step_mm(unit, denominator, decimals)).denominator == 1

    def rounded(
        self,
        unit: LengthUnit,
        denominator: int = 32,
        *,
        decimals: int = 1,
        way: RoundingWay = "nearest",
    ) -> "Length":
        """Move the length onto the steps that ``show`` writes; a half goes away from zero."""
        step = smallest_step_mm(unit, denominator, decimals)
        steps = self.mm / step
        if way == "down":
            return Length(step * (steps.numerator // steps.denominator))
        if way == "up":
            return Length(step * -(-steps.numerator // steps.denominator))
        return Length(step * rounded_half_up(steps))

    def as_float_mm(self) -> float:
        """Millimetres as a float, for drawing and for figures leaving the program."""
        return float(self.mm)

    def as_inches(self) -> Fraction:
        """Exact inches."""
        return self.mm / MM_PER_INCH

    def __add__(self, other: "Length") -> "Length":
        return Length(self.mm + other.mm)

    def __sub__(self, other: "Length") -> "Length":
        return Length(self.mm - other.mm)

    def __mul__(self, factor: Exact) -> "Length":
        return Length(self.mm * exact_fraction(factor))

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: "Length") -> Fraction: ...

    @overload
    def __truediv__(self, other: Exact) -> "Length": ...

    def __truediv__(self, other: "Length | Exact") -> "Fraction | Length":
        if isinstance(other, Length):
            return self.mm / other.mm
        return Length(self.mm / exact_fraction(other))

    def __neg__(self) -> "Length":
        return Length(-self.mm)

    def __abs__(self) -> "Length":
        return Length(abs(self.mm))

    def __bool__(self) -> bool:
        return bool(self.mm)


def exact_fraction(amount: object) -> Fraction:
    """Return ``amount`` as a fraction; refuses floats, which are not the number that was typed.

    Raises
    ------
    FieldError
        When the number is a float, not finite or not a number.
    """
    if type(amount) is Fraction:
        return amount
    if isinstance(amount, Decimal) and amount.is_finite():
        return Fraction(amount)
    if isinstance(amount, int | Fraction) and not isinstance(amount, bool):
        return Fraction(amount)
    wanted = "give a whole number, a Fraction or a finite Decimal"
    raise FieldError("an exact amount", got=repr(amount), wanted=wanted)


def total(lengths: Iterable[Length]) -> Length:
    """Return the sum of any number of lengths; of none, zero."""
    return Length(sum((length.mm for length in lengths), Fraction(0)))


ZERO = Length(Fraction(0))
