"""The cross-section through one side of a frame: every piece as an outline, in millimetres.

u runs outward from the innermost opening's edge on the right-hand side, z toward the viewer from
the back of the stack. Pieces lie as ``design.depth`` adds them up.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal

from framing_palette.catalogue import Kind, Sample
from framing_palette.design import Cuttable, Layer, Moulding
from framing_palette.design.order import overlap_of
from framing_palette.papers.outlines import Outlines, Rect, outlines_of
from framing_palette.units import ZERO, Length

Stuff = Literal["board", "core", "wood", "strip", "glass", "art", "backing", "spacer"]
SHOWN_ART: Final = 14.0
LEAST_ART: Final = 0.5
_LIP: Final = 3.0


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece cut through: the number of its cut, what it is made of, its outline (u, z)."""

    number: int | None
    name: str
    stuff: Stuff
    outline: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class CrossSection:
    """All pieces and the edges that are dimensioned.

    Parameters
    ----------
    pieces
        From the back to the front, the moulding last.
    sights
        u of each layer's opening, from the art outward.
    contents_edge
        u of the outer edge of mats, glazing and backing.
    sight, wall, outside
        u of the moulding's sight edge, its rabbet's wall and its outside; None without one.
    front, stack, back
        z of the front of the stack; the stack's depth; z of the frame's back.
    is_plain
        Whether the moulding's cross-section is unknown and drawn as a plain one.
    """

    pieces: tuple[Piece, ...]
    sights: tuple[float, ...]
    contents_edge: float
    sight: float | None
    wall: float | None
    outside: float | None
    front: float
    stack: float
    back: float
    is_plain: bool = False


@dataclass(frozen=True, slots=True)
class _Layout:
    """What every piece needs to know of its place."""

    cuttable: Cuttable
    samples: Mapping[str, Sample]
    outlines: Outlines
    zero: float
    start: float

    @property
    def edge(self) -> float:
        return self.outlines.contents.right - self.zero

    def sight(self, place: int) -> float:
        holes = self.outlines.holes[place]
        return max(hole.rect.right for hole in holes) - self.zero

    def strip_end(self, place: int) -> float:
        rects: tuple[Rect, ...] = self.outlines.strips[place]
        return max((rect.right for rect in rects), default=self.edge + self.zero) - self.zero


def cross_section(cuttable: Cuttable, samples: Mapping[str, Sample]) -> CrossSection:
    """Return the section through the right-hand side of a design."""
    outlines = outlines_of(cuttable.design, cuttable.sizes)
    inner = outlines.sight or outlines.contents
    zero = (
        max((hole.rect.right for hole in outlines.holes[0]), default=inner.right)
        if (outlines.holes)
        else inner.right
    )
    layout = _Layout(cuttable, samples, outlines, zero, -SHOWN_ART)
    boards, base = _boards(layout)
    art, rests_on = _art(layout, base)
    layers, top = _layers(layout, rests_on, base + _mm(cuttable.design.art.thickness))
    panes, front = _panes(layout, top)
    liner, front = _liner(layout, front)
    pieces = [*boards, art, *layers, *panes, *liner]
    sights = tuple(layout.sight(place) for place in range(len(outlines.holes)))
    stack = cuttable.depth.stack.value.as_float_mm()
    moulding = cuttable.design.moulding
    if moulding is None or outlines.sight is None:
        return CrossSection(
            tuple(pieces), sights, layout.edge, None, None, None, front, stack, front - stack
        )
    sight = outlines.sight.right - zero
    back = front - _mm(moulding.rabbet_depth)
    outline, is_plain = _moulding(moulding, samples.get(moulding.code), sight, back)
    number = len(cuttable.design.layers) + len(_pane_numbers(layout)) + 1
    pieces.append(Piece(number, "moulding", "wood", outline))
    return CrossSection(
        tuple(pieces),
        sights,
        layout.edge,
        sight,
        sight + _mm(moulding.rabbet_width),
        sight + _mm(moulding.face),
        front,
        stack,
        back,
        is_plain,
    )


def _pane_numbers(layout: _Layout) -> dict[str, int]:
    """Return the cuts' numbers of glazing, mount board and backing, as the cut list counts them."""
    design = layout.cuttable.design
    names = [
        name
        for name, part in (
            ("glazing", design.glazing),
            ("mount board", design.mount),
            ("backing", design.backing),
        )
        if part
    ]
    return {name: len(design.layers) + place for place, name in enumerate(names, start=1)}


def _slab(start: float, end: float, low: float, high: float) -> tuple[tuple[float, float], ...]:
    return (start, low), (end, low), (end, high), (start, high)


def _boards(layout: _Layout) -> tuple[list[Piece], float]:
    """Return the boards behind the art, and the height of what the art lies on."""
    design, numbers = layout.cuttable.design, _pane_numbers(layout)
    pieces: list[Piece] = []
    z = 0.0
    stuffs: tuple[tuple[str, Stuff], ...] = (("backing", "backing"), ("mount board", "core"))
    for (name, stuff), board in zip(stuffs, (design.backing, design.mount), strict=True):
        if board:
            top = z + _mm(board.thickness)
            outline = _slab(layout.start, layout.edge, z, top)
            pieces.append(Piece(numbers[name], name, stuff, outline))
            z = top
    return pieces, z


def _art(layout: _Layout, base: float) -> tuple[Piece, float]:
    """Return the art, and the height of what the first layer lies on."""
    design = layout.cuttable.design
    thickness = _mm(design.art.thickness)
    overlap = overlap_of(design)
    end = max(art.right for art in layout.outlines.arts) - layout.zero
    outline = _slab(layout.start, end, base, base + max(thickness, LEAST_ART))
    covers = overlap is None or overlap >= ZERO
    return Piece(None, "art", "art", outline), base + thickness if covers else base


def _layers(layout: _Layout, rests_on: float, top: float) -> tuple[list[Piece], float]:
    """Return the layers but a liner, and the height of their highest point."""
    pieces = []
    for place, size in enumerate(layout.cuttable.sizes.layers):
        layer = size.layer
        if layer.kind is Kind.LINER:
            continue
        thickness = _mm(layer.thickness)
        sight = layout.sight(place)
        if layer.kind is Kind.MAT:
            bevel = _mm(layer.bevel_width)
            outline: tuple[tuple[float, float], ...] = (
                (sight, rests_on),
                (layout.edge, rests_on),
                (layout.edge, rests_on + thickness),
                (sight + bevel, rests_on + thickness),
            )
            stuff: Stuff = "board"
        else:
            outline = _strip(layout, place, layer, rests_on)
            stuff = "strip"
        pieces.append(Piece(place + 1, str(layer.kind).replace("_", " "), stuff, outline))
        top = max(top, rests_on + thickness)
        rests_on += thickness - _step(layer)
    return pieces, top


def _step(layer: Layer) -> float:
    """Return how far the board above sinks beside a wood fillet whose whole face shows."""
    if layer.kind is not Kind.WOOD_FILLET or layer.rabbet_depth is None or layer.reveal is None:
        return 0.0
    return _mm(layer.rabbet_depth) if layer.reveal.smallest == layer.face else 0.0


def _strip(
    layout: _Layout, place: int, layer: Layer, base: float
) -> tuple[tuple[float, float], ...]:
    """Return a fillet's outline: its cross-section as far as it is known, its step, its back."""
    start, end = layout.sight(place), layout.strip_end(place)
    thickness, face = _mm(layer.thickness), _mm(layer.face) or end - start
    profile = _profile(layout.samples.get(layer.code))
    if profile is None:
        slope = min(_mm(layer.bevel) or 0.0, face)
        profile = ((0.0, 0.0 if slope else thickness), (slope, thickness), (face, thickness))
    front = [(start + x, base + height) for x, height in profile if x <= min(face, end - start)]
    reached = front[-1][0]
    step = thickness - _mm(layer.rabbet_depth) if end > start + face + 1e-6 else None
    if step is not None:
        front += [(reached, base + step), (end, base + step)]
    elif reached < end:
        front.append((end, front[-1][1]))
    return ((start, base), *front, (end, base))


def _panes(layout: _Layout, top: float) -> tuple[list[Piece], float]:
    """Return spacer and glazing, and the front of the stack."""
    design, numbers = layout.cuttable.design, _pane_numbers(layout)
    pieces = []
    if design.spacer:
        inner = layout.outlines.sight.right - layout.zero if layout.outlines.sight else None
        start = max(inner, layout.edge - 8.0) if inner is not None else layout.edge - 8.0
        high = top + _mm(design.spacer)
        pieces.append(Piece(None, "spacer", "spacer", _slab(start, layout.edge, top, high)))
        top = high
    if design.glazing:
        high = top + _mm(design.glazing.thickness)
        outline = _slab(layout.start, layout.edge, top, high)
        pieces.append(Piece(numbers["glazing"], "glazing", "glass", outline))
        top = high
    return pieces, top


def _liner(layout: _Layout, front: float) -> tuple[list[Piece], float]:
    """Return a liner around everything inside it, and its front."""
    sizes = layout.cuttable.sizes
    last = sizes.layers[-1].layer if sizes.layers else None
    if last is None or last.kind is not Kind.LINER:
        return [], front
    place = len(sizes.layers) - 1
    back = front - _mm(last.rabbet_depth)
    start, end = layout.sight(place), layout.strip_end(place)
    thickness, step = _mm(last.thickness), _mm(last.rabbet_width)
    profile = _profile(layout.samples.get(last.code)) or (
        (0.0, thickness),
        (end - start, thickness),
    )
    face = [(start + x, back + height) for x, height in profile if x <= end - start + 1e-6]
    lip = back + _mm(last.rabbet_depth)
    outline = ((start, lip), *face, (end, back), (start + step, back), (start + step, lip))
    return [Piece(place + 1, "liner", "wood", outline)], back + thickness


def _moulding(
    moulding: Moulding, sample: Sample | None, sight: float, back: float
) -> tuple[tuple[tuple[float, float], ...], bool]:
    """Return the moulding's outline, and whether it is a plain one for want of a known one."""
    depth, width, face = (
        _mm(length) for length in (moulding.rabbet_depth, moulding.rabbet_width, moulding.face)
    )
    profile = _profile(sample)
    is_plain = profile is None
    if profile is None:
        height = max(_mm(moulding.height), depth + _LIP)
        profile = ((0.0, height), (face, height))
    front = [(sight + x, back + height) for x, height in profile]
    lip = back + depth
    outline = (
        (sight, lip),
        *front,
        (sight + face, back),
        (sight + width, back),
        (sight + width, lip),
    )
    return outline, is_plain


def _profile(sample: Sample | None) -> tuple[tuple[float, float], ...] | None:
    points = sample.profile.points if sample and sample.profile else ()
    return points if len(points) > 1 else None


def _mm(length: Length | None) -> float:
    return 0.0 if length is None else length.as_float_mm()
