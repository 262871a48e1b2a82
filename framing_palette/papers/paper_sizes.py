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


def poured(groups: Sequence[Sequence[Drawing]], height: float, gap: float) -> tuple[Drawing, ...]:
    """Pour groups of blocks onto pages.

    Parameters
    ----------
    groups
        Each group's first block, its heading, never stands alone at the foot of a page; a group
        that fits on a page of its own but not on the rest of this one is not parted when more
        than half of it would move.
    height
        Of a page.
    gap
        Between groups.
    """
    pages: list[list[Drawing]] = [[]]
    used = 0.0
    for group in groups:
        blocks = [block for block in group if block.height]
        for number, block in enumerate(blocks):
            before = gap if number == 0 and pages[-1] else 0.0
            needed = block.height + (blocks[1].height if number == 0 and len(blocks) > 1 else 0.0)
            if pages[-1] and used + before + needed > height:
                pages.append([])
                used, before = 0.0, 0.0
            if before:
                pages[-1].append(Drawing(0.0, before))
            pages[-1].append(block)
            used += before + block.height
    return tuple(above(*page) for page in pages if page)
