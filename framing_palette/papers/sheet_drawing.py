"""Mats on their stock sheets: where each blank lies, by the number of its cut, and what is left.

Waste is grey, blanks are white with their openings in thin lines, so that a black and white print
tells the same.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from framing_palette.design import CutSheet, OpeningSize, PlacedBlank, Shape
from framing_palette.papers.contents import Notation
from framing_palette.papers.dimension_lines import Lettering, ringed
from framing_palette.papers.setting import Style, above, beside, paragraph, space
from framing_palette.papers.shapes import Drawing, Oval, Pen, rectangle
from framing_palette.papers.shapes import Shape as Drawn
from framing_palette.units import Length

MOST_HEIGHT: Final = 38.0
ABREAST: Final = 4
WASTE: Final = 0.9
OUTLINE: Final = Pen(0.3)
OPENING: Final = Pen(0.13, 0.2)
CAPTION: Final = Style(7.4, grey=0.2)
CODE: Final = Style(8, "bold")
_LETTERING: Final = Lettering(number=Style(6.8, "bold"), radius=1.9)
_GUTTER: Final = 5.0


@dataclass(frozen=True, slots=True)
class Stock:
    """One sheet to be drawn: its board, its place among the sheets of it, and what lies on it.

    Parameters
    ----------
    name
        Of the board.
    number, count
        Which of how many sheets of this board.
    numbers
        The number of each blank by its name, as it stands in its ring: of its cut, on a ticket.
    openings
        The openings of each cut, by its number.
    """

    name: str
    number: int
    count: int
    sheet: CutSheet
    numbers: Mapping[str, int]
    openings: Mapping[int, tuple[OpeningSize, ...]]


def sheet_rows(stocks: list[Stock], notation: Notation, width: float) -> list[Drawing]:
    """Return sheets side by side, as many abreast as are read well, row below row."""
    column = (width - (ABREAST - 1) * _GUTTER) / ABREAST
    cells = [_cell(stock, notation, column) for stock in stocks]
    rows = [cells[start : start + ABREAST] for start in range(0, len(cells), ABREAST)]
    return [above(beside(*row, gap=_GUTTER), space(2.4)) for row in rows]


def _cell(stock: Stock, notation: Notation, width: float) -> Drawing:
    sheet_width, sheet_height = stock.sheet.size
    which = f"Sheet {stock.number} of {stock.count}" if stock.count > 1 else "Sheet"
    size = f"{notation.pair(sheet_width, sheet_height)} {notation.unit}"
    second = notation.second_pair(sheet_width, sheet_height)
    waste = f"{round(100 * stock.sheet.waste_share)} % of it is left over"
    blanks = [_told(stock, placed, notation) for placed in stock.sheet.placed]
    drawn = above(
        paragraph(stock.name, CODE, width),
        space(0.8),
        _sheet(stock, width),
        space(1.0),
        paragraph(f"{which}, {size}", CAPTION, width),
        paragraph(second, CAPTION, width),
        *(paragraph(blank, CAPTION, width) for blank in blanks),
        paragraph(waste, CAPTION, width),
    )
    return Drawing(width, drawn.height, drawn.shapes)


def _told(stock: Stock, placed: PlacedBlank, notation: Notation) -> str:
    """Return what a blank is called and its size, as it lies on the sheet."""
    number = stock.numbers.get(placed.blank.name)
    name = placed.blank.name
    if number is not None and name != f"cut {number}":
        name = f"{number}  {name}"
    turned = ", lies turned" if placed.is_turned else ""
    return f"{name}: {notation.pair(*placed.size)} {notation.unit}{turned}"


def _sheet(stock: Stock, width: float) -> Drawing:
    across, down = (side.as_float_mm() for side in stock.sheet.size)
    scale = min(width / across, MOST_HEIGHT / down)
    shapes: list[Drawn] = [
        rectangle(0.0, 0.0, across * scale, down * scale, pen=OUTLINE, fill=WASTE, part="sheet")
    ]
    for placed in stock.sheet.placed:
        shapes += _blank(stock, placed, scale)
    return Drawing(width, down * scale, tuple(shapes))


def _blank(stock: Stock, placed: PlacedBlank, scale: float) -> Iterator[Drawn]:
    left, top = placed.left.as_float_mm() * scale, placed.top.as_float_mm() * scale
    width, height = (side.as_float_mm() * scale for side in placed.size)
    yield rectangle(left, top, width, height, pen=OUTLINE, fill=1.0, part="blank")
    number = stock.numbers.get(placed.blank.name)
    for opening in stock.openings.get(number or 0, ()):
        yield _opening(opening, placed, (left, top), scale)
    if number is not None and min(width, height) > 2 * _LETTERING.radius:
        yield from ringed(number, (left + width / 2, top + height / 2), _LETTERING)


def _opening(
    opening: OpeningSize, placed: PlacedBlank, at: tuple[float, float], scale: float
) -> Drawn:
    """Return an opening where it lies in its blank, which may lie a quarter turn clockwise."""
    left, top = _mm(opening.left), _mm(opening.top)
    width, height = (_mm(side) for side in opening.size.lengths)
    if placed.is_turned:
        left, top = _mm(placed.blank.height) - top - height, left
        width, height = height, width
    x, y = at[0] + left * scale, at[1] + top * scale
    across, down = width * scale, height * scale
    if opening.shape is not Shape.RECTANGLE:
        return Oval((x + across / 2, y + down / 2), across, down, OPENING, None, "opening")
    return rectangle(x, y, across, down, pen=OPENING, part="opening")


def _mm(length: Length) -> float:
    return length.as_float_mm()
