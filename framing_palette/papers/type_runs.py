"""Runs: a line of text as pieces of one size each, so that fractions stand as fractions.

``16 3/8`` keeps its letters in their order, for whoever copies them out, but shows a small raised
3 and a small 8: it cannot be misread as 163 eighths on the bench.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from framing_palette.papers.font_files import text_width
from framing_palette.papers.shapes import ABOVE_BASELINE, BELOW_BASELINE, Text

_FRACTION: Final = re.compile(r"(?<![\d/.,-])(\d{1,2})/(\d{1,2})(?![\d/])")
SMALL: Final = 0.68
RISE: Final = 0.27
# The space between a whole number and its fraction, as a share of a usual one.
NARROW: Final = 0.6


@dataclass(frozen=True, slots=True)
class Run:
    """Letters of one size: where they start after the line's start, and how far they are raised."""

    words: str
    offset: float
    size: float
    rise: float


@dataclass(frozen=True, slots=True)
class Box:
    """The upright rectangle that something takes up."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box", by: float = 0.0) -> bool:
        """Tell whether two boxes overlap by more than ``by`` both ways."""
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return across > by and down > by


def runs_of(text: Text) -> tuple[Run, ...]:
    """Return the runs of a line of text, from its start."""
    return tuple(_placed(text))


def _placed(text: Text) -> Iterator[Run]:
    offset = 0.0
    for words, size, rise in _pieces(text):
        yield Run(words, offset, size, rise)
        offset += text_width(words, text.face, size, text.spacing)


def _pieces(text: Text) -> Iterator[tuple[str, float, float]]:
    start = 0
    for match in _FRACTION.finditer(text.words):
        before = text.words[start : match.start()]
        if before[-1:] == " " and before[-2:-1].isdigit():
            yield before[:-1], text.size, 0.0
            before, size = " ", text.size * NARROW
        else:
            size = text.size
        if before:
            yield before, size, 0.0
        small = text.size * SMALL
        yield match[1], small, text.size * RISE
        yield "/", text.size * 0.9, 0.0
        yield match[2], small, 0.0
        start = match.end()
    if start < len(text.words):
        yield text.words[start:], text.size, 0.0


def line_width(text: Text) -> float:
    """Return the width of a line of text in mm, fractions set small."""
    runs = runs_of(text)
    if not runs:
        return 0.0
    last = runs[-1]
    return last.offset + text_width(last.words, text.face, last.size, text.spacing)


def box_of(text: Text) -> Box:
    """Return what a line of text takes up."""
    width, (x, y) = line_width(text), text.at
    before = {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
    above, below = ABOVE_BASELINE * text.size, BELOW_BASELINE * text.size
    if text.turned:
        return Box(x - above, y - width + before, x + below, y + before)
    return Box(x - before, y - above, x - before + width, y + below)
