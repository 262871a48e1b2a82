"""Paper sizes and margins, and blocks poured onto as many pages as they need."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from framing_palette.papers.contents import PageName
from framing_palette.papers.setting import above
from framing_palette.papers.shapes import Drawing


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet with its margins, in mm."""

    width: float
    height: float
    side: float = 17.0
    top: float = 14.0
    foot: float = 13.0

    @property
    def inner_width(self) -> float:
        """Between the margins."""
        return self.width - 2 * self.side

    @property
    def inner_height(self) -> float:
        """Between the margins."""
        return self.height - self.top - self.foot


PAPERS: Final[dict[PageName, Paper]] = {
    "A4": Paper(210.0, 297.0),  # ISO 216
    "Letter": Paper(215.9, 279.4),  # ANSI/ASME Y14.1
}


@dataclass(frozen=True, slots=True)
class Group:
    """Blocks under one heading, and the heading where they go on over the page."""

    blocks: tuple[Drawing, ...]
    heading: Drawing | None = None
    continued: Drawing | None = None


def poured(groups: Sequence[Group], height: float, gap: float) -> tuple[Drawing, ...]:
    """Pour groups of blocks onto pages of a height, with a gap between groups.

    A heading never stands alone at the foot of a page, and is repeated in its other form where
    its group goes on; a block is never parted, and the last of three or more never goes over
    alone.
    """
    pages: list[list[Drawing]] = [[]]
    used = 0.0
    for group in groups:
        blocks = [block for block in group.blocks if block.height]
        for number, block in enumerate(blocks):
            lead = _lead(group, used, gap, is_first=number == 0)
            needed = lead.height + block.height
            if 0 < number == len(blocks) - 2:
                needed += blocks[-1].height
            if pages[-1] and used + needed > height:
                pages.append([])
                used = 0.0
                lead = _lead(group, used, gap, is_first=number == 0, is_over=True)
            pages[-1] += [lead, block]
            used += lead.height + block.height
    return tuple(above(*page) for page in pages if page)


def _lead(
    group: Group, used: float, gap: float, *, is_first: bool, is_over: bool = False
) -> Drawing:
    """Return what stands before a block: the gap after another group, and a heading if due."""
    if is_first:
        parts = [Drawing(0.0, gap if used else 0.0), group.heading]
    else:
        parts = [group.continued if is_over else None]
    return above(*(part for part in parts if part is not None))
