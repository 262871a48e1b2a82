"""Where everything of a section lies on the screen, and the way back from a pixel to the part."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPolygonF

from framing_palette.design import Design
from framing_palette.papers.cross_section import CrossSection, Piece

_MOST_PX_PER_MM = 9.0
_KEEP_MM = 6.0
_BREAK_MM = 2.5
_GRIP_REACH = 10.0
_EDGE_REACH = 4.0


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge that can be dragged: the part whose width it sets, and its place."""

    part: str
    u: float


@dataclass(frozen=True, slots=True)
class Scene:
    """A section in a box of the screen; u and z in millimetres, x and y in pixels.

    Parameters
    ----------
    breaks
        Long level stretches of u that are left out when there is not enough room.
    """

    section: CrossSection
    breaks: tuple[tuple[float, float], ...]
    px_per_mm: float
    left: float
    top: float
    start: float
    high: float

    def x(self, u: float) -> float:
        """Return where a distance from the innermost opening lies."""
        return self.left + (shortened(u, self.breaks) - self.start) * self.px_per_mm

    def y(self, z: float) -> float:
        """Return where a height above the stack's back lies."""
        return self.top + (self.high - z) * self.px_per_mm

    def polygon(self, piece: Piece) -> QPolygonF:
        """Return a piece's outline on the screen."""
        return QPolygonF([QPointF(self.x(u), self.y(z)) for u, z in piece.outline])

    @property
    def floor(self) -> float:
        """The y of the stack's back."""
        return self.y(self.section.front - self.section.stack)

    @property
    def front(self) -> float:
        """The y of the stack's front."""
        return self.y(self.section.front)

    @property
    def foot(self) -> float:
        """The y of the lowest point of everything."""
        return max(self.floor, self.y(self.section.back))

    @property
    def right(self) -> float:
        """The x of the outermost point."""
        return self.x(max(u for piece in self.section.pieces for u, _ in piece.outline))

    def part_at(self, point: QPointF) -> str:
        """Return the part under a point; empty for none."""
        for piece in reversed(self.section.pieces):
            if self.polygon(piece).containsPoint(point, Qt.FillRule.OddEvenFill):
                return part_of(piece)
        return ""

    def edge_at(self, point: QPointF, edges: tuple[Edge, ...]) -> Edge | None:
        """Return the edge near a point, the nearest first."""
        if not self.top - 8 <= point.y() <= self.foot + 48:
            return None
        reach = _GRIP_REACH if point.y() > self.foot else _EDGE_REACH
        near = min(edges, key=lambda edge: abs(self.x(edge.u) - point.x()), default=None)
        return near if near and abs(self.x(near.u) - point.x()) <= reach else None

    def layer_near(self, y: float) -> int | None:
        """Return the layer, counted from 0, whose middle is nearest to a height."""
        heights = {
            int(part.removeprefix("layer ")) - 1: self.polygon(piece).boundingRect().center().y()
            for piece in self.section.pieces
            if (part := part_of(piece)).startswith("layer ")
        }
        return min(heights, key=lambda place: abs(heights[place] - y), default=None)


def scene_of(section: CrossSection, box: QRectF) -> Scene:
    """Return the section fitted into a box, with long level parts shortened if need be."""
    us = [u for piece in section.pieces for u, _ in piece.outline]
    zs = [z for piece in section.pieces for _, z in piece.outline] + [section.back]
    tall = max(max(zs) - min(zs), 1.0)
    whole = max(us) - min(us)
    wanted = min(_MOST_PX_PER_MM, box.height() / tall)
    breaks: tuple[tuple[float, float], ...] = ()
    if whole * wanted > box.width():
        breaks = _breaks(section)
    wide = shortened(max(us), breaks) - shortened(min(us), breaks)
    scale = min(wanted, box.width() / max(wide, 1.0))
    return Scene(
        section=section,
        breaks=breaks,
        px_per_mm=scale,
        left=box.left() + (box.width() - wide * scale) / 2,
        top=box.top() + (box.height() - tall * scale) / 2,
        start=shortened(min(us), breaks),
        high=max(zs),
    )


def edges_of(section: CrossSection, design: Design) -> tuple[Edge, ...]:
    """Return the edges that set a width: the art's, each covered layer's, the borders'."""
    return tuple(_edges(section, design))


def part_of(piece: Piece) -> str:
    """Return the name that changes go by: layers by their number, all else by what it is."""
    if piece.name in ("art", "backing", "mount board", "glazing", "spacer", "moulding"):
        return piece.name
    return f"layer {piece.number}"


def shortened(u: float, breaks: tuple[tuple[float, float], ...]) -> float:
    """Return u less what is left out before it."""
    return u - sum(min(max(u - start, 0.0), end - start) for start, end in breaks)


def _edges(section: CrossSection, design: Design) -> Iterator[Edge]:
    if design.layers and design.art.overlap is not None:
        yield Edge("art", design.art.overlap.as_float_mm())
    for place, u in enumerate(section.sights[1:]):
        yield Edge(f"layer {place + 1}", u)
    last = len(design.layers)
    if last and design.layers[-1].borders is not None:
        seen_to = section.contents_edge if section.sight is None else section.sight
        yield Edge(f"layer {last}", seen_to)


def _breaks(section: CrossSection) -> tuple[tuple[float, float], ...]:
    limit = section.sight if section.sight is not None else section.contents_edge
    edges = {u for piece in section.pieces for u, _ in piece.outline if u <= limit} | {limit}
    return tuple(
        (before + _KEEP_MM, after - _KEEP_MM)
        for before, after in pairwise(sorted(edges))
        if after - before > 2 * _KEEP_MM + 2 * _BREAK_MM
    )
