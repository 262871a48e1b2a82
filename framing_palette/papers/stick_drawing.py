"""Rails and strips out of sticks: each stick a bar with its pieces in their cutting order."""

from collections.abc import Sequence

from framing_palette.design import CutStick
from framing_palette.papers.contents import Notation
from framing_palette.papers.setting import Style, above, paragraph, space
from framing_palette.papers.shapes import Drawing, Pen, joined, rectangle
from framing_palette.papers.ticket_parts import SMALL, WORD
from framing_palette.units import ZERO


def stick_bars(sticks: Sequence[CutStick], notation: Notation, width: float) -> list[Drawing]:
    """Return sticks as bars with what is cut from each, the longest as wide as there is room."""
    longest = max((stick.stick for stick in sticks), default=ZERO).as_float_mm()
    return [
        _stick(number, stick, notation, width, longest)
        for number, stick in enumerate(sticks, start=1)
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
