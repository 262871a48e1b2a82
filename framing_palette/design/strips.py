"""Strips of fillets and liners: what to cut, how they join, and how to put them together.

Mitred strips all reach the outside corner. Of butted strips, those at top and bottom run through
and the upright ones stand between them (common practice). Strips are cut for their full width and
trimmed after joining, where they would pass the edge of the mats.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from framing_palette.catalogue import Kind
from framing_palette.design.figures import Figure, RectangleFigure
from framing_palette.design.layers import Join, Layer, Shape
from framing_palette.design.size_parts import LayerSize, OpeningSize, Sizes
from framing_palette.design.spoken import said
from framing_palette.units import ZERO, Length, LengthUnit, total

Say = Callable[[Length], str]


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip: where it goes, its longer (outside) and its shorter (sight edge) length."""

    side: str
    long_side: Figure
    short_side: Figure


@dataclass(frozen=True, slots=True)
class StripFrame:
    """The four strips around one opening.

    Parameters
    ----------
    layer_number, opening_number
        Counted from the art, and from the first window.
    join
        How the strips meet.
    strips
        Top, right, bottom, left.
    joined
        Outside size as joined.
    trimmed
        Outside size after trimming; equal to ``joined`` when nothing is trimmed.
    steps
        How to put it together, cautions included.
    """

    layer_number: int
    opening_number: int
    join: Join
    strips: tuple[Strip, ...]
    joined: RectangleFigure
    trimmed: RectangleFigure
    steps: tuple[str, ...]

    @property
    def is_trimmed(self) -> bool:
        """Whether the joined frame must be cut smaller."""
        return self.joined.lengths != self.trimmed.lengths

    @property
    def strip_length(self) -> Length:
        """All four strips together, without saw waste."""
        return total(strip.long_side.value for strip in self.strips)


def strip_frames(
    sizes: Sizes, unit: LengthUnit = "in", *, say: Say | None = None
) -> tuple[StripFrame, ...]:
    """Return the strips of every fillet and liner whose face is known, from the art outward.

    Round an oval or round opening there are none: see ``oval_frames``.

    Parameters
    ----------
    unit
        What the steps are spoken in.
    say
        How they write a length, where that is not as any sentence in that unit does.
    """
    return tuple(_frames(sizes, say or partial(said, unit=unit)))


def _frames(sizes: Sizes, say: Say) -> Iterator[StripFrame]:
    for layer_number, size in enumerate(sizes.layers, start=1):
        if size.layer.kind is Kind.MAT or size.layer.strip_width is None:
            continue
        for opening_number, opening in enumerate(size.openings, start=1):
            if opening.shape is Shape.RECTANGLE:
                yield _frame(layer_number, opening_number, size, opening, say)


def _frame(
    layer_number: int, opening_number: int, size: LayerSize, opening: OpeningSize, say: Say
) -> StripFrame:
    layer, width = size.layer, size.layer.strip_width or ZERO
    across, down = opening.size.lengths
    joined = RectangleFigure(_outside(across, width), _outside(down, width))
    trimmed = opening.strips or joined
    strips = _mitred(opening, joined) if layer.join == "mitre" else _butted(opening, joined)
    steps = tuple(_steps(layer, joined, trimmed, say))
    return StripFrame(layer_number, opening_number, layer.join, strips, joined, trimmed, steps)


def _outside(opening: Length, width: Length) -> Figure:
    return Figure.start(opening, "opening").plus(2, width, "strip")


def _mitred(opening: OpeningSize, joined: RectangleFigure) -> tuple[Strip, ...]:
    inner_w = Figure.start(opening.size.lengths[0], "opening")
    inner_h = Figure.start(opening.size.lengths[1], "opening")
    return (
        Strip("top", joined.width, inner_w),
        Strip("right", joined.height, inner_h),
        Strip("bottom", joined.width, inner_w),
        Strip("left", joined.height, inner_h),
    )


def _butted(opening: OpeningSize, joined: RectangleFigure) -> tuple[Strip, ...]:
    upright = Figure.start(opening.size.lengths[1], "opening")
    return (
        Strip("top", joined.width, joined.width),
        Strip("right", upright, upright),
        Strip("bottom", joined.width, joined.width),
        Strip("left", upright, upright),
    )


def _steps(
    layer: Layer, joined: RectangleFigure, trimmed: RectangleFigure, say: Say
) -> Iterator[str]:
    width, height = (say(length) for length in joined.lengths)
    if layer.join == "mitre":
        yield "Cut the ends at 45 degrees, the sight edge being the shorter side; mind the blade."
        yield "Lay the four strips face down, check that opposite strips are equal, and close."
    else:
        yield "Cut the ends square; mind the blade."
        yield "Lay the upright strips between the top and bottom strips, face down, and close."
    if layer.kind is Kind.WRAPPED_FILLET:
        yield "Tape the joints across the back with acid-free tape; glue would stain the cover."
    else:
        yield "Glue the joints sparingly and keep glue off the sight edge until it is dry."
    yield f"Check the outside, {width} by {height}, and both diagonals, which must be equal."
    if joined.lengths != trimmed.lengths:
        trimmed_w, trimmed_h = (say(length) for length in trimmed.lengths)
        yield f"Trim the outside to {trimmed_w} by {trimmed_h} so that it stays under the mats."
    if layer.kind is not Kind.LINER:
        yield "Fix it behind the layer above, its sight edge even on all four sides."
