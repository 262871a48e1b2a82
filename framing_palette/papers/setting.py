"""Setting type: words and drawings into blocks, blocks above and beside each other.

A block is a ``Drawing`` whose box is the room it takes; every function here is a plain value of
its arguments.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from framing_palette.papers.font_files import showable
from framing_palette.papers.shapes import (
    ABOVE_BASELINE,
    BELOW_BASELINE,
    MM_PER_PT,
    Anchor,
    Drawing,
    Face,
    Line,
    Pen,
    Text,
    joined,
)
from framing_palette.papers.type_runs import line_width

_TIED: Final = re.compile(
    r"(?<=\d) (?=\d+/\d)|(?<=\d) (?=(?:in|mm|cm|kg|lux|N)\b|%|×)|(?<=[≈×]) (?=[≈\d])"
)
_TIE: Final = "\N{NO-BREAK SPACE}"
HAIR: Final = Pen(0.1, 0.55)
RULE: Final = Pen(0.25)


@dataclass(frozen=True, slots=True)
class Style:
    """How words are set: size in points, face, line height as a multiple of it, grey, spacing.

    ``spacing`` is a share of the size, added after every letter.
    """

    points: float
    face: Face = "regular"
    leading: float = 1.36
    grey: float = 0.0
    spacing: float = 0.0

    @property
    def size(self) -> float:
        """Height of the type's body in mm."""
        return self.points * MM_PER_PT

    @property
    def line_height(self) -> float:
        """From baseline to baseline in mm."""
        return self.size * self.leading

    @property
    def first_baseline(self) -> float:
        """From the top of a block to its first baseline in mm."""
        slack = self.line_height - (ABOVE_BASELINE + BELOW_BASELINE) * self.size
        return slack / 2 + ABOVE_BASELINE * self.size

    def scaled(self, factor: float) -> "Style":
        """Return the style at another size."""
        return Style(self.points * factor, self.face, self.leading, self.grey, self.spacing)

    def text(self, words: str, x: float, baseline: float, anchor: Anchor = "start") -> Text:
        """Return one line of text in this style."""
        return Text(
            (x, baseline),
            showable(words),
            self.size,
            self.face,
            anchor,
            self.grey,
            spacing=self.spacing * self.size,
        )

    def width(self, words: str) -> float:
        """Return how wide a line of words is in mm."""
        return line_width(self.text(words, 0.0, 0.0))


@lru_cache(maxsize=1_000)
def wrapped(words: str, style: Style, width: float) -> tuple[str, ...]:
    """Break words into lines no wider than ``width``; sizes stay with their fraction and unit."""
    lines: list[str] = []
    for paragraph_words in words.splitlines() or [""]:
        tied = _TIED.sub(_TIE, showable(paragraph_words))
        lines += _broken(tied.split(" "), style, width)
    return tuple(line.replace(_TIE, " ") for line in lines)


def _broken(words: Sequence[str], style: Style, width: float) -> list[str]:
    lines, line = [], ""
    for word in words:
        longer = f"{line} {word}" if line else word
        if style.width(longer) <= width:
            line = longer
            continue
        if line:
            lines.append(line)
        *whole, line = _chopped(word, style, width)
        lines += whole
    return [*lines, line]


def _chopped(word: str, style: Style, width: float) -> list[str]:
    """Break one word that is wider than a whole line; each piece has a letter at least."""
    pieces, piece = [], ""
    for sign in word:
        if piece and style.width(piece + sign) > width:
            pieces.append(piece)
            piece = ""
        piece += sign
    return [*pieces, piece]


def paragraph(words: str, style: Style, width: float, anchor: Anchor = "start") -> Drawing:
    """Return words set in lines of a width; none for no words."""
    if not words:
        return Drawing(width, 0.0)
    lines = wrapped(words, style, width)
    x = {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    texts = tuple(
        style.text(line, x, style.first_baseline + number * style.line_height, anchor)
        for number, line in enumerate(lines)
        if line
    )
    return Drawing(width, len(lines) * style.line_height, texts)


def above(*blocks: Drawing, gap: float = 0.0) -> Drawing:
    """Return blocks one above the other; empty ones take no gap."""
    top, placed = 0.0, []
    filled = [block for block in blocks if block.height]
    for block in filled:
        placed.append(block.moved(0.0, top))
        top += block.height + gap
    width = max((block.width for block in filled), default=0.0)
    return joined(width, max(0.0, top - gap), placed)


def beside(*blocks: Drawing, gap: float = 0.0) -> Drawing:
    """Return blocks one beside the other, their tops level."""
    left, placed = 0.0, []
    for block in blocks:
        placed.append(block.moved(left, 0.0))
        left += block.width + gap
    height = max((block.height for block in blocks), default=0.0)
    return joined(max(0.0, left - gap), height, placed)


def space(height: float) -> Drawing:
    """Return an empty block."""
    return Drawing(0.0, height)


def ruled(width: float, pen: Pen = HAIR) -> Drawing:
    """Return a level line across a width."""
    return Drawing(width, pen.width, (Line((0.0, 0.0), (width, 0.0), pen),))


def listed(
    points: Sequence[str], style: Style, width: float, *, mark: str = "–", gap: float = 0.6
) -> Drawing:
    """Return sentences one below the other, each with a mark hanging before it."""
    indent = style.width(f"{mark}  ")
    blocks = [
        beside(paragraph(mark, style, indent), paragraph(sentence, style, width - indent), gap=0.0)
        for sentence in points
    ]
    return above(*blocks, gap=gap)
