"""Several pieces of art in one frame: how many, in rows or columns, and what lies between them."""

from dataclasses import replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from framing_palette.design.arrangements import Arrangement, Window
from framing_palette.design.designs import Design
from framing_palette.design.sizes import sizes_of
from framing_palette.errors import FieldError
from framing_palette.units import Length

USUAL_GAP: Final = Length.inches(Fraction(3, 2))  # from memory: common practice, half a border
MOST_PIECES: Final = 12


class Layout(StrEnum):
    """How pieces stand to each other."""

    ROW = "row"
    COLUMN = "column"
    TWO_ROWS = "two_rows"


def layout_of(design: Design) -> Layout:
    """Return how a design's pieces stand; one alone stands in a row."""
    arrangement = design.arrangement
    if arrangement is None or arrangement.columns in (None, len(arrangement.windows)):
        return Layout.ROW
    return Layout.COLUMN if arrangement.columns == 1 else Layout.TWO_ROWS


def with_pieces(design: Design, count: int, layout: Layout, gap: Length) -> Design:
    """Return a design for several pieces of art; those that were there keep their sizes.

    Raises
    ------
    FieldError
        When there are too many or too few, they do not fill two rows, there is no mat for the
        openings to lie in, or the design cannot be built with such a gap.
    """
    if not 1 <= count <= MOST_PIECES:
        wanted = f"one frame takes 1 to {MOST_PIECES}"
        raise FieldError("number of pieces", got=count, wanted=wanted)
    if count == 1:
        return replace(design, arrangement=None)
    if layout is Layout.TWO_ROWS and count % 2:
        wanted = "two rows take an even number; lay them in one row or column"
        raise FieldError("number of pieces", got=count, wanted=wanted)
    columns = {Layout.ROW: count, Layout.COLUMN: 1, Layout.TWO_ROWS: count // 2}[layout]
    windows = design.windows[:count]
    last = replace(windows[-1], x=None, y=None)
    more: tuple[Window, ...] = (last,) * (count - len(windows))
    arranged = replace(design, arrangement=Arrangement((*windows, *more), columns, gap))
    sizes_of(arranged)
    return arranged
