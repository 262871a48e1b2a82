"""The dimensions of a section: reveals and widths below it, depths beside it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from framing_palette.design import Cuttable
from framing_palette.papers.contents import Notation
from framing_palette.papers.cross_section import CrossSection
from framing_palette.papers.dimension_lines import level_dimension, upright_dimension
from framing_palette.papers.section_scene import SectionScene
from framing_palette.papers.shapes import Shape
from framing_palette.units import Length


@dataclass(frozen=True, slots=True)
class Span:
    """A level dimension: from u to u, and its words in both units."""

    start: float
    end: float
    words: tuple[str, str]


def spans_of(cuttable: Cuttable, section: CrossSection, notation: Notation) -> Iterator[Span]:
    """Yield what is dimensioned along the section: reveals, border, rabbet width and face."""

    def words(length: Length) -> tuple[str, str]:
        return notation.figures(length), notation.second(length)

    layers = cuttable.sizes.layers
    for place, (start, end) in enumerate(pairwise(section.sights)):
        reveal = layers[place].reveal
        if reveal is not None:
            yield Span(start, end, words(reveal.right))
    mat = cuttable.design.outermost_mat
    borders = cuttable.design.layers[mat].borders if mat is not None else None
    if mat is not None and borders is not None:
        yield Span(section.sights[mat], section.contents_edge, words(borders.right))
    moulding = cuttable.design.moulding
    if moulding and section.sight is not None:
        wall, outside = section.wall or 0.0, section.outside or 0.0
        yield Span(section.sight, wall, words(moulding.rabbet_width))
        yield Span(section.sight, outside, words(moulding.face))


def level_dimensions(
    scene: SectionScene, spans: Sequence[Span], step: float, below: float
) -> tuple[list[Shape], float]:
    """Return all level dimensions and the foot of the last row.

    Behind a deep frame the stack's own dimensions lie in the room behind it. All lie lower than
    ``below``.
    """
    edge = scene.section.contents_edge
    inside = [span for span in spans if span.end <= edge]
    shapes, used = _rows(scene, inside, below + 1.2 * step, step)
    if used + step > scene.floor:
        return _rows(scene, spans, max(below, scene.floor) + 1.2 * step, step)
    frame = [span for span in spans if span.end > edge]
    more, foot = _rows(scene, frame, scene.floor + 1.2 * step, step)
    return [*shapes, *more], foot


def _rows(
    scene: SectionScene, spans: Sequence[Span], first: float, step: float
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


def upright_dimensions(
    scene: SectionScene, cuttable: Cuttable, notation: Notation, step: float
) -> Iterator[Shape]:
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
