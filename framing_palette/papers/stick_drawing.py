"""Rails and strips out of sticks: each stick a bar with its pieces in their cutting order."""

from typing import Final

from framing_palette.design import CutStick, StickPlan
from framing_palette.papers.contents import Notation
from framing_palette.papers.setting import Style, above, paragraph, space
from framing_palette.papers.shapes import Drawing, Pen, Shape, rectangle
from framing_palette.papers.ticket_parts import SMALL, WORD
from framing_palette.units import ZERO

HEIGHT: Final = 6.0


def stick_bars(plan: StickPlan, notation: Notation, width: float) -> list[Drawing]:
    """Return sticks as bars with what is cut from each, the longest as wide as there is room."""
    longest = max((stick.stick for stick in plan.sticks), default=ZERO).as_float_mm()
    scale = width / longest if longest else 0.0
    kerf = plan.kerf_along.as_float_mm() * scale
    return [
        above(
            _bar(stick, notation, scale, kerf),
            space(1.0),
            paragraph(_told(number, stick, notation), SMALL, width),
            space(1.6),
        )
        for number, stick in enumerate(plan.sticks, start=1)
    ]


def _bar(stick: CutStick, notation: Notation, scale: float, kerf: float) -> Drawing:
    """Return a stick true to scale, the saw's cuts between its pieces and what is left dashed."""
    shapes = list[Shape]()
    x, end = 0.0, stick.stick.as_float_mm() * scale
    for piece in stick.pieces:
        span = piece.length.as_float_mm() * scale
        shapes.append(rectangle(x, 0.0, span, HEIGHT, pen=Pen(0.2), fill=0.93))
        words = f"{piece.name.removesuffix(' rail')} {notation.figures(piece.length)}"
        style = WORD if WORD.width(words) < span - 1.0 else WORD.scaled(0.8)
        if style.width(words) < span:
            text = Style(style.points).text(words, x + span / 2, HEIGHT / 2 + 0.9, "middle")
            shapes.append(text)
        x += span + kerf
    if end > x:
        shapes.append(rectangle(x, 0.0, end - x, HEIGHT, pen=Pen(0.15, 0.5, (0.8, 0.6))))
    return Drawing(end, HEIGHT, tuple(shapes))


def _told(number: int, stick: CutStick, notation: Notation) -> str:
    pieces = ", ".join(f"{p.name} {notation.figures(p.length)}" for p in stick.pieces)
    return (
        f"Stick {number} of {notation.said(stick.stick)}: {pieces}; "
        f"left over {notation.said(stick.left_over)}."
    )
