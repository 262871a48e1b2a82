"""What a ticket says of the whole: both measurements of every piece, and the sizes of it all."""

from collections.abc import Iterator

from framing_palette.catalogue import Kind
from framing_palette.design.measuring import Measured
from framing_palette.papers.contents import MeasuredArt, Notation, TicketContents
from framing_palette.papers.setting import above, beside, paragraph, space
from framing_palette.papers.shapes import Drawing
from framing_palette.papers.ticket_parts import (
    BODY,
    FIGURE,
    GAP,
    LABEL,
    SECOND,
    SMALL,
    STRONG,
)
from framing_palette.units import Length


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
    is_matted = any(layer.kind is not Kind.LINER for layer in design.layers)
    boards = is_matted or design.glazing or design.mount or design.backing
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
