"""Rails out of sticks: which pieces come from which stick, saw kerf included.

Every piece takes its long point and one kerf from the stick. A mitre's kerf is wider along the
stick than the blade: by the square root of 2, for which 99/70 stands, a little more than it. Two
neighbouring mitres share the point between them, so that the waste between them is a notch at the
sight edge and takes no further length.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, lcm
from typing import Final

from framing_palette.design.spoken import above_zero, not_below_zero, said
from framing_palette.design.stick_search import best_groups, filled_groups
from framing_palette.errors import CuttingError, FieldError
from framing_palette.units import Length, total

DEFAULT_KERF: Final = Length.inches(Fraction(1, 8))
MITRE_FACTOR: Final = Fraction(99, 70)
MOST_PIECES_EXACT: Final = 10


@dataclass(frozen=True, slots=True)
class Piece:
    """A length to be cut, and what it is for."""

    name: str
    length: Length


@dataclass(frozen=True, slots=True)
class CutStick:
    """One stick, its pieces in cutting order, and what is left of it."""

    stick: Length
    pieces: tuple[Piece, ...]
    left_over: Length


@dataclass(frozen=True, slots=True)
class StickPlan:
    """All sticks of a job or a day.

    Parameters
    ----------
    sticks
        In the order in which they are cut.
    kerf_along
        What one cut takes along the stick.
    fewest
        No plan can do with fewer sticks of the longest length.
    is_optimal
        Whether it is proven that no plan buys less length.
    """

    sticks: tuple[CutStick, ...]
    kerf_along: Length
    fewest: int
    is_optimal: bool

    @property
    def bought(self) -> Length:
        """The length of all sticks together."""
        return total(stick.stick for stick in self.sticks)

    @property
    def used(self) -> Length:
        """The length of all pieces together."""
        return total(piece.length for stick in self.sticks for piece in stick.pieces)

    @property
    def waste_share(self) -> Fraction:
        """What is not a piece, as a share of what is bought."""
        return 1 - self.used / self.bought if self.bought else Fraction(0)


def plan_sticks(
    pieces: Iterable[Piece],
    stock: Sequence[Length],
    *,
    kerf: Length = DEFAULT_KERF,
    mitred: bool = True,
) -> StickPlan:
    """Cut pieces out of sticks, buying as little length as can be.

    Up to ten pieces the plan is the best there is: least length bought, then fewest sticks, then
    the longest offcut. Beyond that each stick in turn is filled as closely as a bounded search
    finds, the longest pieces first.

    Parameters
    ----------
    pieces : iterable of Piece
        Rails by their long points.
    stock : sequence of Length
        The stick lengths that can be bought, one or more.
    kerf : Length
        The blade's width.
    mitred : bool
        Whether cuts are at 45 degrees.

    Raises
    ------
    CuttingError
        When a piece is longer than the longest stick.
    FieldError
        When no stock length is given or a length is not above zero.
    """
    todo = sorted(pieces, key=lambda piece: (-piece.length, piece.name))
    if not stock:
        raise FieldError("stick length", got="missing", wanted="say which lengths can be bought")
    for length in (*stock, *(piece.length for piece in todo)):
        above_zero("stick or piece length", length)
    not_below_zero("kerf", kerf)
    lengths = sorted(set(stock))
    kerf_along = kerf * MITRE_FACTOR if mitred else kerf
    for piece in todo:
        if piece.length + kerf_along > lengths[-1]:
            raise CuttingError(
                piece.name,
                needs=f"{said(piece.length)} and {said(kerf_along)} for the saw",
                stock=f"the longest stick is {said(lengths[-1])}",
                todo="order a longer stick",
            )
    step = _common_step((*lengths, kerf_along, *(piece.length for piece in todo)))
    sizes = [_steps(piece.length + kerf_along, step) for piece in todo]
    sticks = [_steps(length, step) for length in lengths]
    fewest = ceil(sum(sizes) / sticks[-1])
    is_small = len(todo) <= MOST_PIECES_EXACT
    groups = best_groups(sizes, sticks) if is_small else filled_groups(sizes, sticks)
    cut = tuple(_cut([todo[place] for place in group], lengths, kerf_along) for group in groups)
    is_optimal = is_small or (len(lengths) == 1 and len(groups) == fewest)
    return StickPlan(cut, kerf_along, fewest, is_optimal)


def _common_step(lengths: Iterable[Length]) -> Fraction:
    """Return millimetres of which every length is a whole number."""
    return Fraction(1, lcm(*(length.mm.denominator for length in lengths)))


def _steps(length: Length, step: Fraction) -> int:
    return (length.mm / step).numerator


def _cut(group: Sequence[Piece], lengths: Sequence[Length], kerf_along: Length) -> CutStick:
    needed = total(piece.length + kerf_along for piece in group)
    stick = next(length for length in lengths if length >= needed)
    return CutStick(stick, tuple(group), stick - needed)
