"""The section drawing: the stack in the rabbet, cut through, dimensioned, its pieces numbered.

True proportions, enlarged; long level parts without anything to see are shortened at a break.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from framing_palette.catalogue import Sample
from framing_palette.design import Cuttable
from framing_palette.papers.contents import Notation
from framing_palette.papers.cross_section import CrossSection, Piece, cross_section
from framing_palette.papers.dimension_lines import (
    DIMENSIONS,
    THIN,
    Lettering,
    dimension_room,
    level_dimension,
    numbered,
    texts_on_top,
    upright_dimension,
)
from framing_palette.papers.hatching import hatched
from framing_palette.papers.shapes import (
    BLACK,
    WHITE,
    Drawing,
    Line,
    Pen,
    Point,
    Polygon,
    Shape,
    Text,
    rectangle,
)
from framing_palette.units import Length

SCALES: Final = (6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.25, 1.0, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2)
_KEEP: Final = 5.0  # mm of a level part that stay on each side of a break
_OUTLINE: Final = Pen(0.25)
_HATCH: Final = Pen(0.1)
_BREAK: Final = 1.8  # mm on the page


@dataclass(frozen=True, slots=True)
class SectionDrawing:
    """The drawing, how many times enlarged it is, and whether a break shortens it."""

    drawing: Drawing
    enlarged: float
    is_broken: bool
    is_plain: bool


@dataclass(frozen=True, slots=True)
class _Scene:
    """A section on its way to the page."""

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
        return self.left + (_shortened(u, self.breaks) - self.start) * self.scale

    def y(self, z: float) -> float:
        return self.top + (self.high - z) * self.scale

    @property
    def start(self) -> float:
        return min(u for piece in self.section.pieces for u, _ in piece.outline)

    def at(self, point: Point) -> Point:
        return self.x(point[0]), self.y(point[1])


def section_drawing(
    cuttable: Cuttable,
    samples: Mapping[str, Sample],
    notation: Notation,
    box: tuple[float, float],
    *,
    lettering: Lettering | None = None,
    scale: float | None = None,
) -> SectionDrawing:
    """Return the section of a design, enlarged to fit a box on the page.

    Parameters
    ----------
    box
        Width and height in mm that the drawing with its dimensions may take.
    scale
        A scale of its own, whatever the box, with nothing left out.
    """
    lettering = lettering or Lettering()
    section = cross_section(cuttable, samples)
    breaks = _breaks(section) if scale is None else ()
    us = [_shortened(u, breaks) for piece in section.pieces for u, _ in piece.outline]
    zs = [z for piece in section.pieces for _, z in piece.outline]
    step = dimension_room(("0", notation.also or ""), lettering)
    left, right = 2.2 * step, 1.6 * step
    top = 4.4 * lettering.radius
    chain = list(_chain(cuttable, section, notation))
    below = 3.2 * step + 3 * lettering.radius
    fit = scale or min(
        (box[0] - left - right) / (max(us) - min(us)),
        (box[1] - top - below) / (max(zs) - min(zs)),
    )
    scale = scale or next((scale for scale in SCALES if scale <= fit), SCALES[-1])
    scene = _Scene(section, breaks, scale, left, top, max(zs), lettering)
    shapes = [*_pieces(scene), *_break_marks(scene), *_art_edge(scene)]
    level, used = _level(scene, chain, step)
    shapes += texts_on_top((*level, *_upright(scene, cuttable, notation, step)))
    shapes += _numbers(scene)
    height = max(used + 0.4 * step, scene.stack_floor + 4.4 * lettering.radius)
    width = scene.x(max(u for piece in section.pieces for u, _ in piece.outline)) + right
    return SectionDrawing(
        Drawing(max(width, box[0]), height, tuple(shapes)), scale, bool(breaks), section.is_plain
    )


def _breaks(section: CrossSection) -> tuple[tuple[float, float], ...]:
    """Return the stretches of u that are left out: long, level and free of any edge."""
    limit = section.sight if section.sight is not None else section.contents_edge
    edges = {u for piece in section.pieces for u, _ in piece.outline if u <= limit}
    edges |= {section.contents_edge} if section.contents_edge <= limit else set()
    ordered = sorted(edges | {limit})
    return tuple(
        (before + _KEEP, after - _KEEP)
        for before, after in pairwise(ordered)
        if after - before > 2 * _KEEP + 4.0
    )


def _shortened(u: float, breaks: Sequence[tuple[float, float]]) -> float:
    """Return u less what is left out before it."""
    return u - sum(min(max(u - start, 0.0), end - start) for start, end in breaks)


def _pieces(scene: _Scene) -> Iterator[Shape]:
    for piece in scene.section.pieces:
        outline = tuple(scene.at(point) for point in piece.outline)
        yield from _filled(piece, outline)


def _filled(piece: Piece, outline: tuple[Point, ...]) -> Iterator[Shape]:
    part = piece.name
    fills = {"art": BLACK, "backing": 0.88, "core": 0.95, "glass": WHITE, "spacer": 0.7}
    yield Polygon(outline, None, fills.get(piece.stuff, WHITE), part)
    if piece.stuff == "wood":
        yield from hatched(outline, angle_deg=45, apart=1.5, pen=_HATCH, part=part)
    elif piece.stuff == "strip":
        yield from hatched(outline, angle_deg=-45, apart=0.8, pen=_HATCH, part=part)
    elif piece.stuff == "glass":
        yield from hatched(outline, angle_deg=60, apart=7.0, pen=_HATCH, part=part)
    yield Polygon(outline, _OUTLINE, None, part)


def _break_marks(scene: _Scene) -> Iterator[Shape]:
    """Yield a white band with two zigzag edges where a stretch is left out."""
    zs = [z for piece in scene.section.pieces if piece.stuff != "wood" for _, z in piece.outline]
    top, foot = scene.y(max(zs)) - 1.2, scene.y(min(zs)) + 1.2
    for start, _ in scene.breaks:
        x = scene.x(start)
        yield rectangle(x - _BREAK / 2, top, _BREAK, foot - top, pen=None, fill=WHITE)
        for edge in (x - _BREAK / 2, x + _BREAK / 2):
            yield from _zigzag(edge, top, foot)


def _art_edge(scene: _Scene) -> Iterator[Shape]:
    """Yield a zigzag where the art and the boards go on to the left."""
    zs = [z for piece in scene.section.pieces for u, z in piece.outline if u == scene.start]
    top, foot = scene.y(max(zs)) - 1.2, scene.y(min(zs)) + 1.2
    x = scene.x(scene.start)
    yield rectangle(x - 0.6, top, 1.2, foot - top, pen=None, fill=WHITE)
    yield from _zigzag(x + 0.6, top, foot)


def _zigzag(x: float, top: float, foot: float) -> Iterator[Shape]:
    middle = (top + foot) / 2
    points = (
        (x, top),
        (x, middle - 0.9),
        (x - 0.7, middle - 0.3),
        (x + 0.7, middle + 0.3),
        (x, middle + 0.9),
        (x, foot),
    )
    for start, end in pairwise(points):
        yield Line(start, end, THIN, DIMENSIONS)


@dataclass(frozen=True, slots=True)
class _Span:
    """A level dimension: from u to u, the words, and the first row that it may take."""

    start: float
    end: float
    words: tuple[str, str]


def _chain(cuttable: Cuttable, section: CrossSection, notation: Notation) -> Iterator[_Span]:
    def words(length: Length) -> tuple[str, str]:
        return notation.figures(length), notation.second(length)

    layers = cuttable.sizes.layers
    for place, (start, end) in enumerate(pairwise(section.sights)):
        reveal = layers[place].reveal
        if reveal is not None:
            yield _Span(start, end, words(reveal.right))
    mat = cuttable.design.outermost_mat
    borders = cuttable.design.layers[mat].borders if mat is not None else None
    if mat is not None and borders is not None:
        yield _Span(section.sights[mat], section.contents_edge, words(borders.right))
    moulding = cuttable.design.moulding
    if moulding and section.sight is not None:
        wall, outside = section.wall or 0.0, section.outside or 0.0
        yield _Span(section.sight, wall, words(moulding.rabbet_width))
        yield _Span(section.sight, outside, words(moulding.face))


def _level(scene: _Scene, spans: Sequence[_Span], step: float) -> tuple[list[Shape], float]:
    """Return all level dimensions and the foot of the last row.

    Behind a deep frame the stack's own dimensions lie in the room behind it.
    """
    edge = scene.section.contents_edge
    inside = [span for span in spans if span.end <= edge]
    first = scene.stack_floor + 1.2 * step
    shapes, used = _rows(scene, inside, first, step)
    if used + step > scene.floor:
        return _rows(scene, spans, scene.floor + 1.2 * step, step)
    frame = [span for span in spans if span.end > edge]
    more, foot = _rows(scene, frame, scene.floor + 1.2 * step, step)
    return [*shapes, *more], foot


def _rows(
    scene: _Scene, spans: Sequence[_Span], first: float, step: float
) -> tuple[list[Shape], float]:
    """Return level dimensions in as few rows as keep them apart, and the foot of the last row."""
    lettering = scene.lettering
    rows: list[float] = []
    shapes: list[Shape] = []
    for span in sorted(spans, key=lambda span: (span.end, span.start)):
        start, end = scene.x(span.start), scene.x(span.end)
        needed = max(lettering.figure.width(span.words[0]), lettering.second.width(span.words[1]))
        fits = needed + 2 * lettering.tick <= end - start
        reach = end if fits else end + lettering.beyond + needed + 1.0
        row = next((row for row, used in enumerate(rows) if start >= used - 0.01), len(rows))
        if row == len(rows):
            rows.append(reach)
        rows[row] = max(rows[row], reach)
        inside = span.end <= scene.section.contents_edge
        foot = (scene.stack_floor if inside else scene.floor) + 0.8
        y = first + row * step
        shapes += level_dimension((start, foot), (end, foot), y, span.words, lettering)
    return shapes, first + max(len(rows) - 1, 0) * step


def _upright(scene: _Scene, cuttable: Cuttable, notation: Notation, step: float) -> Iterator[Shape]:
    """Yield the stack and the room behind it on the left, the rabbet's depth on the right."""
    section, depth = scene.section, cuttable.depth
    left = scene.x(scene.start)
    front, back = scene.y(section.front), scene.y(section.back)
    stack = notation.figures(depth.stack.value), notation.second(depth.stack.value)
    x = left - 1.2 * step
    yield from upright_dimension(
        (left, front), (left, scene.stack_floor), x, stack, scene.lettering
    )
    if section.outside is None or depth.rabbet_depth is None:
        return
    right = scene.x(section.outside)
    words = notation.figures(depth.rabbet_depth), notation.second(depth.rabbet_depth)
    yield from upright_dimension(
        (right, front), (right, back), right + 1.1 * step, words, scene.lettering
    )


def _numbers(scene: _Scene) -> Iterator[Shape]:
    """Yield the numbers: what is seen from the front above the section, the boards below it."""
    above = sorted(_front_targets(scene))
    radius = scene.lettering.radius
    y = scene.top - 2.6 * radius
    for (target_x, target_y, number), x in zip(
        above, _spread([x for x, _, _ in above], 2.5 * radius), strict=True
    ):
        yield from numbered(number, (x, y), (target_x, target_y), scene.lettering)
    behind = list(_back_targets(scene))
    xs = _spread([x for x, _, _ in behind], 2.5 * radius)
    y = scene.stack_floor + 2.4 * radius
    for (target_x, target_y, board), x in zip(behind, xs, strict=True):
        if board is None:
            style = scene.lettering.second
            yield Line((target_x, target_y), (x, y - radius), THIN, DIMENSIONS)
            yield Text(
                (x, y + 0.3 * style.size), "art", style.size, style.face, "middle",
                style.grey, part=DIMENSIONS,
            )  # fmt: skip
        else:
            yield from numbered(board, (x, y), (target_x, target_y), scene.lettering)


def _front_targets(scene: _Scene) -> Iterator[tuple[float, float, int]]:
    """Yield where to point at each layer, the glazing and the moulding, and its number."""
    section = scene.section
    limit = section.sight if section.sight is not None else section.contents_edge
    sights = [*section.sights, limit]
    for piece in section.pieces:
        if piece.number is None:
            continue
        if piece.stuff == "glass":
            yield scene.x(scene.start + 5.0), *_middle_of(scene, piece, scene.start + 5.0)
        elif piece.name == "moulding":
            u = ((section.sight or 0.0) + (section.outside or 0.0)) / 2
            yield scene.x(u), *_middle_of(scene, piece, u)
        elif piece.stuff in ("board", "strip", "wood"):
            place = piece.number - 1
            u = _seen_middle(sights[place], sights[place + 1], scene)
            yield scene.x(u), *_middle_of(scene, piece, u)


def _seen_middle(start: float, end: float, scene: _Scene) -> float:
    """Return a u between two edges that no break takes away."""
    middle = (start + end) / 2
    inside = any(low <= middle <= high for low, high in scene.breaks)
    return start + _KEEP * 0.6 if inside else middle


def _middle_of(scene: _Scene, piece: Piece, u: float) -> tuple[float, int]:
    """Return the y of a piece's middle at u, and its number."""
    crossings = []
    for (u1, z1), (u2, z2) in pairwise([*piece.outline, piece.outline[0]]):
        if u1 != u2 and min(u1, u2) <= u <= max(u1, u2):
            crossings.append(z1 + (u - u1) / (u2 - u1) * (z2 - z1))
    z = (min(crossings) + max(crossings)) / 2
    return scene.y(z), piece.number or 0


def _back_targets(scene: _Scene) -> Iterator[tuple[float, float, int | None]]:
    u = scene.start + 3.0
    for piece in scene.section.pieces:
        if piece.stuff in ("backing", "core", "art"):
            low, high = (pick(z for _, z in piece.outline) for pick in (min, max))
            yield scene.x(u), scene.y((low + high) / 2), piece.number
            u += 3.5


def _spread(targets: Sequence[float], apart: float) -> list[float]:
    """Return places near the targets, in their order, at least so far apart."""
    places: list[float] = []
    for target in targets:
        places.append(max(target, places[-1] + apart) if places else target)
    if not places:
        return places
    shift = sum(place - target for place, target in zip(places, targets, strict=True))
    return [place - shift / len(places) / 2 for place in places]
