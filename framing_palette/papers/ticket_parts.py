"""The blocks that a ticket is made of: measurements, facts, cuts, sums, sticks, steps, sign-off."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from framing_palette.design import CutStick
from framing_palette.design.measuring import Measured
from framing_palette.papers.assembly import Step
from framing_palette.papers.contents import MeasuredArt, Notation, TicketContents
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
from framing_palette.papers.shapes import Drawing, Line, Pen, joined, rectangle
from framing_palette.units import Length

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


def measured_blocks(contents: TicketContents, width: float) -> list[Drawing]:
    """Return both measurements of every piece of art, and what they agree on, piece by piece."""
    columns = (0.16 * width, 0.28 * width, 0.28 * width, 0.28 * width)
    titles = ("", "first", "second", "agreed, for openings")
    head = beside(*(paragraph(t, LABEL, w) for t, w in zip(titles, columns, strict=True)))
    rows = list[Drawing]()
    pieces = len(contents.design.windows)
    for number, measured in enumerate(contents.measured, start=1):
        name = "Art" if pieces == 1 else f"Art {number} of {pieces}"
        cells = (
            paragraph(name, STRONG, columns[0]),
            _reading(measured.first, contents.notation, columns[1] - GAP),
            _reading(measured.second, contents.notation, columns[2] - GAP),
            _agreed(measured, contents.notation, columns[3]),
        )
        padded = [above(cell, space(0.01)) for cell in cells]
        rows.append(
            beside(
                *(
                    Drawing(column, cell.height, cell.shapes)
                    for cell, column in zip(padded, columns, strict=True)
                )
            )
        )
    spaced = [above(row, space(1.2)) for row in rows]
    return [above(head, space(1.2), spaced[0]), *spaced[1:]]


def _reading(reading: Measured, notation: Notation, width: float) -> Drawing:
    when = f"{reading.by or 'no initials'}, {reading.at.day} {reading.at:%b %Y, %H:%M}"
    diagonals = ""
    if reading.diagonals:
        diagonals = f"diagonals {notation.pair(*reading.diagonals)} {notation.unit}"
    return above(
        paragraph(f"{notation.pair(reading.width, reading.height)} {notation.unit}", BODY, width),
        paragraph(notation.second_pair(reading.width, reading.height), SECOND, width),
        paragraph(diagonals, SMALL, width),
        paragraph(when, SMALL, width),
    )


def _agreed(measured: MeasuredArt, notation: Notation, width: float) -> Drawing:
    agreed = measured.agreed
    words = "diagonals not taken"
    if agreed.square_checked:
        words = "square by its diagonals"
    if not agreed.is_square:
        words = f"out of square by {notation.said(agreed.skew)}: openings are made safe"
    return above(
        paragraph(f"{notation.pair(agreed.width, agreed.height)} {notation.unit}", FIGURE, width),
        paragraph(notation.second_pair(agreed.width, agreed.height), SECOND, width),
        paragraph(words, SMALL, width),
    )


def facts_block(contents: TicketContents, width: float) -> Drawing:
    """Return the sizes of the whole, one below the other."""
    blocks = [
        above(
            paragraph(label, LABEL, width),
            paragraph(figures, FIGURE, width),
            paragraph(second, SECOND, width),
        )
        for label, figures, second in _facts(contents)
    ]
    return above(*blocks, gap=2.2)


def _facts(contents: TicketContents) -> Iterator[tuple[str, str, str]]:
    cuttable, notation = contents.cuttable, contents.notation

    def pair(label: str, size: tuple[Length, Length]) -> tuple[str, str, str]:
        return label, notation.pair(*size), notation.second_pair(*size)

    def single(label: str, length: Length) -> tuple[str, str, str]:
        return label, notation.figures(length), notation.second(length)

    sizes, depth = cuttable.sizes, cuttable.depth
    if sizes.frame:
        rails = {rail.side: rail.long_point.value for rail in sizes.frame.rails}
        yield pair("frame, outside", (rails["top"], rails["right"]))
        yield pair("rabbet size", sizes.frame.rabbet.lengths)
        yield pair("sight size", sizes.frame.sight.lengths)
    if sizes.outer.lengths != sizes.contents.lengths:
        yield pair("outside of what lies in the rabbet", sizes.outer.lengths)
    design = cuttable.design
    boards = design.layers or design.glazing or design.mount or design.backing
    yield pair("mats, glazing and backing" if boards else "art", sizes.contents.lengths)
    if sizes.frame:
        yield single("moulding, long points together", sizes.frame.moulding_length.value)
    yield single("stack, front to back", depth.stack.value)
    if depth.rabbet_depth is not None:
        yield single("rabbet depth", depth.rabbet_depth)
    if contents.weight is not None:
        weight = contents.weight
        spread = f"{weight.low_kg:.1f} to {weight.high_kg:.1f} kg, an estimate"
        yield "weight", f"about {weight.likely_kg:.1f} kg", spread


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


def stick_blocks(contents: TicketContents, width: float) -> list[Drawing]:
    """Return each stick as a bar with its rails, in the order in which they are cut."""
    plan = contents.sticks
    if plan is None:
        return []
    longest = max(stick.stick for stick in plan.sticks).as_float_mm()
    return [
        _stick(number, stick, contents.notation, width, longest)
        for number, stick in enumerate(plan.sticks, start=1)
    ]


def _stick(
    number: int, stick: CutStick, notation: Notation, width: float, longest_mm: float
) -> Drawing:
    height, scale = 6.0, width / longest_mm
    shapes: list[Drawing] = []
    x = 0.0
    for piece in stick.pieces:
        span = piece.length.as_float_mm() * scale
        bar = Drawing(span, height, (rectangle(x, 0.0, span, height, pen=Pen(0.2), fill=0.93),))
        words = f"{piece.name.removesuffix(' rail')} {notation.figures(piece.length)}"
        style = WORD if WORD.width(words) < span - 1.0 else WORD.scaled(0.8)
        text = Style(style.points).text(words, x + span / 2, height / 2 + 0.9, "middle")
        shapes += [bar, Drawing(span, height, (text,) if style.width(words) < span else ())]
        x += span + (0.6 if span else 0.0)
    rest = stick.stick.as_float_mm() * scale
    if rest > x:
        shapes.append(
            Drawing(
                rest, height, (rectangle(x, 0.0, rest - x, height, pen=Pen(0.15, 0.5, (0.8, 0.6))),)
            )
        )
    pieces = ", ".join(f"{p.name} {notation.figures(p.length)}" for p in stick.pieces)
    words = (
        f"Stick {number} of {notation.said(stick.stick)}: {pieces}; "
        f"left over {notation.said(stick.left_over)}."
    )
    return above(
        joined(width, height, shapes), space(1.0), paragraph(words, SMALL, width), space(1.6)
    )


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
