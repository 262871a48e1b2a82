"""The face drawing: a framed picture from the front, dimensioned, its pieces numbered."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from framing_palette.design import Cuttable
from framing_palette.papers.contents import Notation
from framing_palette.papers.dimension_lines import (
    Lettering,
    dimension_room,
    level_dimension,
    numbered,
    texts_on_top,
    upright_dimension,
)
from framing_palette.papers.outlines import Hole, Outlines, Rect, outlines_of
from framing_palette.papers.shapes import (
    Drawing,
    Line,
    Oval,
    Pen,
    Point,
    Shape,
    Text,
    rectangle,
)
from framing_palette.units import Length

OUTSIDE: Final = Pen(0.4)
EDGE: Final = Pen(0.22)
BEVEL: Final = Pen(0.1, 0.35)
HIDDEN: Final = Pen(0.13, 0.2, (1.2, 0.9))
_GAP: Final = 3.0


@dataclass(frozen=True, slots=True)
class _Scene:
    """A design on its way to the page: outlines, lettering and where millimetres of it lie."""

    cuttable: Cuttable
    outlines: Outlines
    notation: Notation
    lettering: Lettering
    scale: float
    left: float
    top: float

    def at(self, x: float, y: float) -> Point:
        outside = self.outlines.outside
        return (
            self.left + (x - outside.left) * self.scale,
            self.top + (y - outside.top) * self.scale,
        )

    def rect(self, rect: Rect) -> Rect:
        return Rect(*self.at(rect.left, rect.top), *self.at(rect.right, rect.bottom))

    def words(self, length: Length) -> tuple[str, str]:
        return self.notation.figures(length), self.notation.second(length)


def face_drawing(
    cuttable: Cuttable,
    notation: Notation,
    box: tuple[float, float],
    lettering: Lettering | None = None,
) -> Drawing:
    """Return the face of a design fitted into a box on the page.

    Parameters
    ----------
    box
        Width and height in mm that the drawing with its dimensions may take.
    """
    lettering = lettering or Lettering()
    outlines = outlines_of(cuttable.design, cuttable.sizes)
    before, below, after = _rooms(cuttable, notation, lettering)
    outside = outlines.outside
    scale = min((box[0] - before - after) / outside.width, (box[1] - below) / outside.height)
    width = before + outside.width * scale + after
    height = outside.height * scale + below
    scene = _Scene(cuttable, outlines, notation, lettering, scale, before, 0.5)
    return Drawing(width, height + 0.5, tuple(_shapes(scene)))


def full_size_face(cuttable: Cuttable, notation: Notation) -> Drawing:
    """Return the face at true size, its lettering as large as the drawing needs, for drawing files.

    Everything that is not a dimension is exactly where the workshop cuts it.
    """
    outside = outlines_of(cuttable.design, cuttable.sizes).outside
    lettering = Lettering().scaled(max(outside.width, outside.height) / 120.0)
    before, below, after = _rooms(cuttable, notation, lettering)
    box = outside.width + before + after, outside.height + below
    return face_drawing(cuttable, notation, box, lettering)


def _rooms(
    cuttable: Cuttable, notation: Notation, lettering: Lettering
) -> tuple[float, float, float]:
    """Return the room for dimensions before and below the face, and for numbers after it."""
    spans = _spans(cuttable, outlines_of(cuttable.design, cuttable.sizes))
    step = dimension_room(("0", notation.also or ""), lettering)
    room = _GAP * lettering.radius / 2.3 + step * len(spans)
    return room, room + lettering.second.size, 4 * lettering.radius + _GAP


def _shapes(scene: _Scene) -> Iterator[Shape]:
    yield from _frame(scene)
    for place, holes in enumerate(scene.outlines.holes, start=1):
        for hole in holes:
            yield from _hole(scene, hole, f"layer {place}")
    for art in scene.outlines.arts:
        yield _outline(scene.rect(art), HIDDEN, "art")
    yield from _names(scene)
    yield from texts_on_top((*_dimensions(scene), *_borders(scene)))
    yield from _numbers(scene)


def _outline(rect: Rect, pen: Pen, part: str) -> Shape:
    return rectangle(rect.left, rect.top, rect.width, rect.height, pen=pen, part=part)


def _frame(scene: _Scene) -> Iterator[Shape]:
    outlines = scene.outlines
    outside = scene.rect(outlines.outside)
    yield _outline(outside, OUTSIDE, "frame" if outlines.sight else "contents")
    if outlines.sight is None:
        return
    sight = scene.rect(outlines.sight)
    yield _outline(sight, Pen(0.3), "frame")
    yield _outline(scene.rect(outlines.contents), HIDDEN, "contents")
    corners = (
        ((outside.left, outside.top), (sight.left, sight.top)),
        ((outside.right, outside.top), (sight.right, sight.top)),
        ((outside.right, outside.bottom), (sight.right, sight.bottom)),
        ((outside.left, outside.bottom), (sight.left, sight.bottom)),
    )
    for start, end in corners:
        yield Line(start, end, EDGE, "frame")


def _hole(scene: _Scene, hole: Hole, part: str) -> Iterator[Shape]:
    for rect, pen in ((hole.rect, EDGE), (hole.rect.grown(hole.bevel), BEVEL)):
        if pen is BEVEL and hole.bevel * scene.scale < 0.25:
            continue
        placed = scene.rect(rect)
        if hole.is_oval:
            yield Oval(placed.middle, placed.width, placed.height, pen, None, part)
        else:
            yield _outline(placed, pen, part)


def _names(scene: _Scene) -> Iterator[Shape]:
    """Yield the number of each opening where there are several, as the cut list counts them."""
    holes = scene.outlines.holes[0] if scene.outlines.holes else ()
    style = scene.lettering.second
    for number, hole in enumerate(holes, start=1):
        middle = scene.rect(hole.rect).middle
        words = f"opening {number}"
        if len(holes) > 1:
            yield Text(middle, words, style.size, style.face, "middle", style.grey, part="names")


@dataclass(frozen=True, slots=True)
class _Span:
    """What is dimensioned outside the face: a rectangle with its exact sides."""

    rect: Rect
    width: Length
    height: Length


def _spans(cuttable: Cuttable, outlines: Outlines) -> list[_Span]:
    """Return what is dimensioned, the innermost first; each layer's opening is in the cut list."""
    sizes, spans = cuttable.sizes, []
    for place in sorted({0, len(sizes.layers) - 1}) if sizes.layers else ():
        if len(sizes.layers[place].openings) == 1:
            size = sizes.layers[place].opening.size.lengths
            spans.append(_Span(outlines.holes[place][0].rect, *size))
    if sizes.frame and outlines.sight:
        spans.append(_Span(outlines.sight, *sizes.frame.sight.lengths))
        rails = {rail.side: rail.long_point.value for rail in sizes.frame.rails}
        spans.append(_Span(outlines.outside, rails["top"], rails["right"]))
    else:
        spans.append(_Span(outlines.outside, *sizes.outer.lengths))
    return spans


def _dimensions(scene: _Scene) -> Iterator[Shape]:
    spans = _spans(scene.cuttable, scene.outlines)
    outside = scene.rect(scene.outlines.outside)
    step = dimension_room(("0", scene.notation.also or ""), scene.lettering)
    gap = _GAP * scene.lettering.radius / 2.3
    for place, span in enumerate(spans, start=1):
        rect = scene.rect(span.rect)
        y, x = outside.bottom + gap + place * step - 0.3 * step, outside.left - gap - place * step
        x += 0.7 * step
        yield from level_dimension(
            (rect.left, rect.bottom),
            (rect.right, rect.bottom),
            y,
            scene.words(span.width),
            scene.lettering,
        )
        yield from upright_dimension(
            (rect.left, rect.top),
            (rect.left, rect.bottom),
            x,
            scene.words(span.height),
            scene.lettering,
        )


def _borders(scene: _Scene) -> Iterator[Shape]:
    """Yield the outermost mat's borders where there is room for the figures on it."""
    place = scene.cuttable.design.outermost_mat
    if place is None or len(scene.cuttable.sizes.layers[place].openings) != 1:
        return
    borders = scene.cuttable.design.layers[place].borders
    if borders is None:
        return
    hole = scene.rect(scene.outlines.holes[place][0].rect)
    sheet = scene.rect(scene.outlines.contents)
    x, y = hole.left + 0.3 * hole.width, hole.top + 0.22 * hole.height
    small = replace(scene.lettering, figure=scene.lettering.figure.scaled(0.88))
    for start, end, length in (
        ((sheet.left, y), (hole.left, y), borders.left),
        ((hole.right, y), (sheet.right, y), borders.right),
    ):
        words = scene.notation.figures(length)
        if small.figure.width(words) + 2 * small.tick < end[0] - start[0]:
            yield from level_dimension(start, end, y, (words, ""), small)
    for start, end, length in (
        ((x, sheet.top), (x, hole.top), borders.top),
        ((x, hole.bottom), (x, sheet.bottom), borders.bottom),
    ):
        words = scene.notation.figures(length)
        if small.figure.width(words) + 2 * small.tick < end[1] - start[1]:
            yield from upright_dimension(start, end, x, (words, ""), small)


def _numbers(scene: _Scene) -> Iterator[Shape]:
    """Yield a leader from each layer, and from the frame, to its number on the right."""
    targets = list(_targets(scene))
    if not targets:
        return
    outlines = scene.outlines
    rows = scene.rect(_rightmost(outlines.holes[0]).rect if outlines.holes else outlines.outside)
    step = max(2.6 * scene.lettering.radius, 0.5 * rows.height / max(len(targets), 1))
    x = scene.rect(outlines.outside).right + _GAP + scene.lettering.radius
    start = rows.top + (rows.height - step * (len(targets) - 1)) / 2
    for row, (number, target_x) in enumerate(targets):
        y = start + row * step
        yield from numbered(number, (x, y), (target_x, y), scene.lettering)


def _targets(scene: _Scene) -> Iterator[tuple[int, float]]:
    """Yield the number of each visible piece and an x in the middle of what shows of it."""
    outlines = scene.outlines
    edges = [scene.rect(_rightmost(holes).rect).right for holes in outlines.holes]
    sight = scene.rect(outlines.sight or outlines.outside).right
    for number, (start, end) in enumerate(pairwise([*edges, sight]), start=1):
        yield number, (start + end) / 2
    moulding = moulding_number(scene.cuttable)
    if outlines.sight and moulding:
        yield moulding, (sight + scene.rect(outlines.outside).right) / 2


def _rightmost(holes: tuple[Hole, ...]) -> Hole:
    return max(holes, key=lambda hole: hole.rect.right)


def moulding_number(cuttable: Cuttable) -> int | None:
    """Return the number of the moulding's cut, which is the last; None without a moulding."""
    design = cuttable.design
    if design.moulding is None:
        return None
    panes = sum(part is not None for part in (design.glazing, design.mount, design.backing))
    return len(design.layers) + panes + 1
