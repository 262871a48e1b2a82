"""Where a section lies on the page: its scale, and the level stretches that are left out."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from framing_palette.papers.cross_section import CrossSection
from framing_palette.papers.dimension_lines import Lettering
from framing_palette.papers.shapes import Point

KEEP: Final = 5.0  # mm of a level part that stay on each side of a break
WORTH_IT: Final = 4.0  # mm that a break must save


@dataclass(frozen=True, slots=True)
class SectionScene:
    """A section on its way to the page.

    Parameters
    ----------
    section
        What is drawn.
    breaks
        Stretches of u that are left out.
    scale
        Millimetres on the page for one of the section.
    left, top
        Where the drawing begins on the page.
    high
        The z that lies at ``top``.
    lettering
        Of its dimensions.
    """

    section: CrossSection
    breaks: tuple[tuple[float, float], ...]
    scale: float
    left: float
    top: float
    high: float
    lettering: Lettering

    @property
    def floor(self) -> float:
        """The y of the lowest point of everything."""
        return self.y(min(z for piece in self.section.pieces for _, z in piece.outline))

    @property
    def stack_floor(self) -> float:
        """The y of the lowest point of what lies in the rabbet."""
        return self.y(self.section.front - self.section.stack)

    def x(self, u: float) -> float:
        """Return where a u lies on the page."""
        return self.left + (shortened(u, self.breaks) - self.start) * self.scale

    def y(self, z: float) -> float:
        """Return where a z lies on the page."""
        return self.top + (self.high - z) * self.scale

    @property
    def start(self) -> float:
        """The least u of everything."""
        return min(u for piece in self.section.pieces for u, _ in piece.outline)

    def at(self, point: Point) -> Point:
        """Return where a point (u, z) lies on the page."""
        return self.x(point[0]), self.y(point[1])


def breaks_of(section: CrossSection) -> tuple[tuple[float, float], ...]:
    """Return the stretches of u that are left out: long, level and free of any edge."""
    limit = section.sight if section.sight is not None else section.contents_edge
    edges = {u for piece in section.pieces for u, _ in piece.outline if u <= limit}
    edges |= {section.contents_edge} if section.contents_edge <= limit else set()
    ordered = sorted(edges | {limit})
    return tuple(
        (before + KEEP, after - KEEP)
        for before, after in pairwise(ordered)
        if after - before > 2 * KEEP + WORTH_IT
    )


def shortened(u: float, breaks: Sequence[tuple[float, float]]) -> float:
    """Return u less what is left out before it."""
    return u - sum(min(max(u - start, 0.0), end - start) for start, end in breaks)
