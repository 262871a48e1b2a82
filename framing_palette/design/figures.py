"""Figures that carry their own sum, so that a workshop can see how each was reached."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from framing_palette.units import Exact, Length, LengthUnit, total


@dataclass(frozen=True, slots=True)
class Term:
    """One summand: how many times which length, and what it is.

    Parameters
    ----------
    times : int or Fraction
        Negative for what is taken away.
    length : Length
        Exact.
    name : str
        Plain words without a figure, such as ``overlap``.
    """

    times: Exact
    length: Length
    name: str

    @property
    def value(self) -> Length:
        """The summand's worth."""
        return self.length * self.times

    def words(self, unit: LengthUnit, denominator: int) -> str:
        """Write the summand without its sign: ``2 x 1/8 in overlap``."""
        count = abs(self.times)
        # Metric lengths are told to 1/1000 when that is exact, so that sums can be followed.
        places = 3 if self.length.is_shown_exactly(unit, denominator, decimals=3) else 1
        measure = f"{self.length.show(unit, denominator, decimals=places)} {self.name}".rstrip()
        return measure if count == 1 else f"{count} x {measure}"


@dataclass(frozen=True, slots=True)
class Figure:
    """A length as the sum that leads to it; the value is always worked out from its sum.

    Parameters
    ----------
    terms : tuple of Term
        None for a sum of nothing, which is zero.

    Attributes
    ----------
    value : Length
        The sum.

    Examples
    --------
    >>> inch = Length.inches
    >>> opening = Figure.start(inch(16), "art width").plus(-2, inch("1/8"), "overlap")
    >>> opening.how("in")
    '16 in art width, less 2 x 1/8 in overlap'
    >>> opening.value.show("in")
    '15 3/4 in'
    """

    terms: tuple[Term, ...]
    value: Length = field(init=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "value", total(term.value for term in self.terms))

    @classmethod
    def start(cls, length: Length, name: str) -> "Figure":
        """Begin a sum with a length that is known."""
        return cls((Term(1, length, name),))

    def plus(self, times: Exact, length: Length, name: str) -> "Figure":
        """Go on with the sum; a length of zero leaves no trace."""
        return Figure((*self.terms, Term(times, length, name))) if length else self

    def how(self, unit: LengthUnit, denominator: int = 32) -> str:
        """Write the sum in words; ``about`` marks every figure that was rounded for showing."""
        if not self.terms:
            return "nothing"
        first, *rest = self.terms
        parts = [first.words(unit, denominator)]
        for term in rest:
            verb = "less" if term.times < 0 else "plus"
            parts.append(f"{verb} {term.words(unit, denominator)}")
        return ", ".join(parts)


@dataclass(frozen=True, slots=True)
class RectangleFigure:
    """Width and height, each with its sum."""

    width: Figure
    height: Figure

    @property
    def lengths(self) -> tuple[Length, Length]:
        """Width and height without their sums."""
        return self.width.value, self.height.value


def sum_of(figures: Iterable[tuple[str, Figure]]) -> Figure:
    """Add named figures into one whose terms are the figures themselves."""
    return Figure(tuple(Term(1, figure.value, name) for name, figure in figures))
