"""The blocks that a ticket is made of: measurements, facts, cuts, sums, sticks, steps, sign-off."""

from dataclasses import dataclass
from typing import Final

from framing_palette.papers.assembly import Step
from framing_palette.papers.contents import Notation
from framing_palette.papers.cut_list import Cut, Measure, Sized
from framing_palette.papers.dimension_lines import Lettering, ringed
from framing_palette.papers.setting import (
    HAIR,
    Style,
    above,
    beside,
    paragraph,
    ruled,
    space,
)
from framing_palette.papers.shapes import Drawing, Line, Pen, rectangle

HEAD: Final = Style(8, "bold", spacing=0.06)
BODY: Final = Style(9)
STRONG: Final = Style(10, "bold")
FIGURE: Final = Style(11.5, "bold", leading=1.22)
SECOND: Final = Style(7.4, grey=0.25, leading=1.2)
WORD: Final = Style(7.4, grey=0.25)
SMALL: Final = Style(7.4, grey=0.2)
LABEL: Final = Style(7.4, grey=0.3)
BOX: Final = 3.6
GAP: Final = 4.0
MEASURES_TOGETHER: Final = 9  # of one cut; what has more may go on over the page


def headed(head: str, width: float, *, aside: str = "") -> Drawing:
    """Return the heading of a part of the page, with a rule under it."""
    line = beside(paragraph(head, HEAD, width * 0.4), paragraph(aside, SMALL, width * 0.6, "end"))
    return above(line, space(0.6), ruled(width, Pen(0.3)), space(1.2))


def check_box(height: float, width: float = 7.0) -> Drawing:
    """Return an empty box to tick, level with a first line of that height."""
    return Drawing(width, height, (rectangle(0.3, (height - BOX) / 2, BOX, BOX, pen=Pen(0.25)),))


def cut_blocks(cuts: tuple[Cut, ...], notation: Notation, width: float) -> list[Drawing]:
    """Return the cuts, parted by hair lines; one of many measures goes on in further blocks."""
    blocks = list[Drawing]()
    for cut in cuts:
        *parts, last = _cut(cut, notation, width)
        blocks += [*parts, above(last, space(1.0), ruled(width, HAIR), space(1.2))]
    return blocks


def _cut(cut: Cut, notation: Notation, width: float) -> list[Drawing]:
    """Return a cut in blocks of a few measures each, its number in every one."""
    box, ring, part, name = 7.0, 8.0, 46.0, 44.0
    line = FIGURE.line_height
    number = Drawing(ring, line, tuple(ringed(cut.number, (2.6, line / 2), Lettering())))
    what = above(
        paragraph(cut.part, STRONG, part - GAP),
        paragraph(cut.code, BODY, part - GAP),
        paragraph(cut.name, BODY, part - GAP),
        paragraph(cut.remark, SMALL, part - GAP),
    )
    again = paragraph(f"{cut.part}, continued", SMALL, part - GAP)
    rest = width - box - ring - part - name
    measures = [_measure(measure, notation, name, rest) for measure in cut.measures]
    blocks = list[Drawing]()
    for start in range(0, max(1, len(measures)), MEASURES_TOGETHER):
        lead = check_box(line, box) if start == 0 else Drawing(box, 0.0)
        told = what if start == 0 else again
        some = above(*measures[start : start + MEASURES_TOGETHER], gap=0.3)
        row = beside(lead, number, Drawing(part, told.height, told.shapes), some)
        blocks.append(row if start == 0 else above(space(0.3), row))
    return blocks


def _measure(measure: Measure, notation: Notation, name: float, rest: float) -> Drawing:
    label = paragraph(measure.name, BODY, name - 2.0)
    lowered = label.moved(0.0, FIGURE.first_baseline - BODY.first_baseline)
    cells = [_sized(sized, notation, rest / 2) for sized in measure.sizes]
    return beside(Drawing(name, label.height + 0.4, lowered.shapes), *cells)


def _sized(sized: Sized, notation: Notation, width: float) -> Drawing:
    """Return a figure; the sign of a rounded one stands apart, so that figures line up."""
    sign_width = 3.4
    figures = notation.figures(sized.length)
    rounded = figures.startswith("≈ ")
    figure = figures.removeprefix("≈ ")
    baseline = FIGURE.first_baseline
    texts = [BODY.text("≈", 0.0, baseline)] if rounded else []
    texts.append(FIGURE.text(figure, sign_width, baseline))
    texts.append(WORD.text(sized.word, sign_width + FIGURE.width(figure) + 1.4, baseline))
    line = Drawing(width, FIGURE.line_height, tuple(texts))
    second = notation.second(sized.length)
    below = paragraph(second, SECOND, width - sign_width).moved(sign_width, 0.0)
    return above(line, Drawing(width, below.height, below.shapes))


@dataclass(frozen=True, slots=True)
class SumLine:
    """How one figure was reached, and the cuts that it is a figure of."""

    numbers: tuple[int, ...]
    words: str


def sum_lines(cuts: tuple[Cut, ...], notation: Notation) -> tuple[SumLine, ...]:
    """Return how each figure of the cuts was reached, where it is a sum at all."""
    found: dict[str, tuple[str, list[int]]] = {}
    for cut in cuts:
        for measure in cut.measures:
            for sized in measure.sizes:
                if len(sized.figure.terms) < 2:
                    continue
                how = sized.figure.how(notation.unit, notation.denominator).replace(" x ", " × ")
                figures = notation.figures(sized.length)
                words = f"{measure.name}, {sized.word} {figures}: {how}."
                numbers = found.setdefault(how, (words, []))[1]
                numbers.extend([] if cut.number in numbers else [cut.number])
    return tuple(SumLine(tuple(numbers), words) for words, numbers in found.values())


def sums_block(lines: tuple[SumLine, ...], width: float) -> Drawing:
    """Return sums in two columns of small type, each after the numbers of its cuts."""
    column = (width - GAP) / 2
    blocks = [_sum(line, column) for line in lines]
    half = sum(block.height for block in blocks) / 2
    left: list[Drawing] = []
    while blocks and sum(block.height for block in left) < half:
        left.append(blocks.pop(0))
    return beside(above(*left, gap=0.5), above(*blocks, gap=0.5), gap=GAP)


def _sum(line: SumLine, width: float) -> Drawing:
    numbers = ", ".join(str(number) for number in line.numbers)
    style = Style(SMALL.points, "bold")
    indent = max(5.0, style.width(numbers) + 1.6)
    return beside(paragraph(numbers, style, indent), paragraph(line.words, SMALL, width - indent))


def step_blocks(steps: tuple[Step, ...], width: float) -> list[Drawing]:
    """Return numbered steps, each with a box to tick and the number of the cut it is about."""
    indent, ring = 6.0, 7.5
    lettering = Lettering(number=Style(6.8, "bold"), radius=1.75)
    line = BODY.line_height
    blocks = []
    for number, step in enumerate(steps, start=1):
        about = ringed(step.number, (ring / 2 - 1.2, line / 2), lettering) if step.number else ()
        row = beside(
            check_box(line),
            paragraph(f"{number}", BODY, indent),
            Drawing(ring, line, tuple(about)),
            paragraph(step.words, BODY, width - 7.0 - indent - ring),
        )
        blocks.append(above(row, space(0.8)))
    return blocks


def sign_off(width: float) -> Drawing:
    """Return lines for the initials of everyone who has a hand in it."""
    titles = ("cut by", "cuts checked by", "assembled by", "released by")
    cell = (width - 3 * GAP) / 4
    cells = [
        Drawing(
            cell,
            13.0,
            (
                Line((0.0, 7.5), (cell, 7.5), Pen(0.2)),
                LABEL.text(f"{title}, date", 0.0, 11.0),
            ),
        )
        for title in titles
    ]
    return beside(*cells, gap=GAP)
