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
from framing_palette.papers.cross_section import Piece, cross_section
from framing_palette.papers.dimension_lines import (
    DIMENSIONS,
    THIN,
    Lettering,
    dimension_room,
    numbered,
    texts_on_top,
)
from framing_palette.papers.hatching import hatched
from framing_palette.papers.section_dimensions import (
    level_dimensions,
    spans_of,
    upright_dimensions,
)
from framing_palette.papers.section_scene import KEEP, SectionScene, breaks_of, shortened
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

SCALES: Final = (6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.25, 1.0, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2)
_OUTLINE: Final = Pen(0.25)
_HATCH: Final = Pen(0.1)
_THICK_ART: Final = 4.0  # mm on the page
_BREAK: Final = 1.8  # mm on the page


@dataclass(frozen=True, slots=True)
class SectionDrawing:
    """The drawing, how many times enlarged it is, and whether a break shortens it."""

    drawing: Drawing
    enlarged: float
    is_broken: bool
    is_plain: bool


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
    breaks = breaks_of(section) if scale is None else ()
    us = [shortened(u, breaks) for piece in section.pieces for u, _ in piece.outline]
    zs = [z for piece in section.pieces for _, z in piece.outline]
    step = dimension_room(("0", notation.also or ""), lettering)
    left, right = 2.2 * step, 1.6 * step
    top = 4.4 * lettering.radius
    chain = list(spans_of(cuttable, section, notation))
    below = 3.2 * step + 3 * lettering.radius
    fit = scale or min(
        (box[0] - left - right) / (max(us) - min(us)),
        (box[1] - top - below) / (max(zs) - min(zs)),
    )
    scale = scale or next((scale for scale in SCALES if scale <= fit), SCALES[-1])
    scene = SectionScene(section, breaks, scale, left, top, max(zs), lettering)
    shapes = [*_pieces(scene), *_break_marks(scene), *_art_edge(scene)]
    level, used = level_dimensions(scene, chain, step, _room_below(scene))
    shapes += texts_on_top((*level, *upright_dimensions(scene, cuttable, notation, step)))
    shapes += _numbers(scene)
    height = max(used + 0.4 * step, scene.stack_floor + 4.4 * lettering.radius)
    width = scene.x(max(u for piece in section.pieces for u, _ in piece.outline)) + right
    return SectionDrawing(
        Drawing(max(width, box[0]), height, tuple(shapes)), scale, bool(breaks), section.is_plain
    )


def _pieces(scene: SectionScene) -> Iterator[Shape]:
    for piece in scene.section.pieces:
        outline = tuple(scene.at(point) for point in piece.outline)
        yield from _filled(piece, outline)


def _filled(piece: Piece, outline: tuple[Point, ...]) -> Iterator[Shape]:
    part = piece.name
    ys = [y for _, y in outline]
    is_thick = piece.stuff == "art" and max(ys) - min(ys) > _THICK_ART
    fills = {
        "art": WHITE if is_thick else BLACK,
        "backing": 0.88,
        "core": 0.95,
        "glass": WHITE,
        "spacer": 0.7,
    }
    yield Polygon(outline, None, fills.get(piece.stuff, WHITE), part)
    if piece.stuff == "wood":
        yield from hatched(outline, angle_deg=45, apart=1.5, pen=_HATCH, part=part)
    elif piece.stuff == "strip":
        yield from hatched(outline, angle_deg=-45, apart=0.8, pen=_HATCH, part=part)
    elif is_thick:  # a canvas: solid black would take half the ink of the page
        for angle_deg in (45, -45):
            yield from hatched(outline, angle_deg=angle_deg, apart=1.0, pen=_HATCH, part=part)
    elif piece.stuff == "glass":
        yield from hatched(outline, angle_deg=60, apart=7.0, pen=_HATCH, part=part)
    yield Polygon(outline, _OUTLINE, None, part)


def _break_marks(scene: SectionScene) -> Iterator[Shape]:
    """Yield a white band with two zigzag edges where a stretch is left out."""
    zs = [z for piece in scene.section.pieces if piece.stuff != "wood" for _, z in piece.outline]
    top, foot = scene.y(max(zs)) - 1.2, scene.y(min(zs)) + 1.2
    for start, _ in scene.breaks:
        x = scene.x(start)
        yield rectangle(x - _BREAK / 2, top, _BREAK, foot - top, pen=None, fill=WHITE)
        for edge in (x - _BREAK / 2, x + _BREAK / 2):
            yield from _zigzag(edge, top, foot)


def _art_edge(scene: SectionScene) -> Iterator[Shape]:
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


def _numbers(scene: SectionScene) -> Iterator[Shape]:
    """Yield the numbers: what is seen from the front above the section, the boards below it."""
    above = sorted(_front_targets(scene))
    radius = scene.lettering.radius
    y = scene.top - 2.6 * radius
    for (target_x, target_y, number), x in zip(
        above, _spread([x for x, _, _ in above], 2.5 * radius), strict=True
    ):
        yield from numbered(number, (x, y), (target_x, target_y), scene.lettering)
    y = scene.stack_floor + 2.4 * radius
    for (target_x, target_y, board), x in _behind(scene):
        if board is None:
            style = scene.lettering.second
            yield Line((target_x, target_y), (x, y - radius), THIN, DIMENSIONS)
            yield Text(
                (x, y + 0.3 * style.size), "art", style.size, style.face, "middle",
                style.grey, part=DIMENSIONS,
            )  # fmt: skip
        else:
            yield from numbered(board, (x, y), (target_x, target_y), scene.lettering)


def _behind(scene: SectionScene) -> list[tuple[tuple[float, float, int | None], float]]:
    """Return where to point at the boards and the art, and where their names stand below them."""
    targets = list(_back_targets(scene))
    places = _spread([x for x, _, _ in targets], 2.5 * scene.lettering.radius)
    return list(zip(targets, places, strict=True))


def _room_below(scene: SectionScene) -> float:
    """Return the y under which dimensions are free of the names below the stack."""
    radius = scene.lettering.radius
    end = max((x + 1.4 * radius for _, x in _behind(scene)), default=0.0)
    return scene.stack_floor + (3.4 * radius if end > scene.x(0.0) else 0.0)


def _front_targets(scene: SectionScene) -> Iterator[tuple[float, float, int]]:
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


def _seen_middle(start: float, end: float, scene: SectionScene) -> float:
    """Return a u between two edges that no break takes away."""
    middle = (start + end) / 2
    inside = any(low <= middle <= high for low, high in scene.breaks)
    return start + KEEP * 0.6 if inside else middle


def _middle_of(scene: SectionScene, piece: Piece, u: float) -> tuple[float, int]:
    """Return the y of a piece's middle at u, and its number."""
    crossings = []
    for (u1, z1), (u2, z2) in pairwise([*piece.outline, piece.outline[0]]):
        if u1 != u2 and min(u1, u2) <= u <= max(u1, u2):
            crossings.append(z1 + (u - u1) / (u2 - u1) * (z2 - z1))
    z = (min(crossings) + max(crossings)) / 2
    return scene.y(z), piece.number or 0


def _back_targets(scene: SectionScene) -> Iterator[tuple[float, float, int | None]]:
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
