"""The numbered cuts of a design: every piece with every figure that it is cut by."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from framing_palette.catalogue import Kind, Sample
from framing_palette.design import (
    Cuttable,
    Figure,
    LayerSize,
    RectangleFigure,
    StripFrame,
    strip_frames,
)
from framing_palette.units import Length


@dataclass(frozen=True, slots=True)
class Measure:
    """One line of a cut: what is measured, one or two figures, and the sums that led to them."""

    name: str
    figures: tuple[Figure, ...]

    @property
    def lengths(self) -> tuple[Length, ...]:
        """The figures' values."""
        return tuple(figure.value for figure in self.figures)


@dataclass(frozen=True, slots=True)
class Cut:
    """One piece, or one set of like pieces.

    Parameters
    ----------
    number
        Counted from the art outward; drawings show it.
    part
        What it is.
    sample
        Its code and name, empty when not from the catalogue.
    measures
        Every figure it is cut by.
    """

    number: int
    part: str
    sample: str
    measures: tuple[Measure, ...]


def cut_list(cuttable: Cuttable, samples: Mapping[str, Sample]) -> tuple[Cut, ...]:
    """Return every piece that is cut, numbered from the art outward."""
    named = list(_pieces(cuttable, samples))
    return tuple(Cut(number, *piece) for number, piece in enumerate(named, start=1))


_Piece = tuple[str, str, tuple[Measure, ...]]


def _pieces(cuttable: Cuttable, samples: Mapping[str, Sample]) -> Iterator[_Piece]:
    design, sizes = cuttable.design, cuttable.sizes
    strips = strip_frames(sizes)
    for number, size in enumerate(sizes.layers, start=1):
        frames = [frame for frame in strips if frame.layer_number == number]
        yield (
            str(size.layer.kind).replace("_", " "),
            sample_words(size.layer.code, samples),
            tuple(_layer(size, frames)),
        )
    if design.glazing:
        yield f"{design.glazing.material} glazing", "", (_rectangle("size", sizes.contents),)
    for name, board in (("mount board", design.mount), ("backing", design.backing)):
        if board:
            yield name, board.material, (_rectangle("size", sizes.contents),)
    if design.moulding and sizes.frame:
        rails = {rail.side: rail for rail in sizes.frame.rails}
        measures = [
            Measure(f"{sides}, long / short point", (rail.long_point, rail.short_point))
            for sides, rail in (
                ("top and bottom", rails["top"]),
                ("left and right", rails["left"]),
            )
        ]
        measures.append(_rectangle("rabbet size", sizes.frame.rabbet))
        measures.append(_rectangle("sight size", sizes.frame.sight))
        yield "moulding", sample_words(design.moulding.code, samples), tuple(measures)


def sample_words(code: str, samples: Mapping[str, Sample]) -> str:
    """Return a sample's code and name as they are spoken of."""
    sample = samples.get(code)
    return f"{code}  {sample.name}" if sample else code


def _rectangle(name: str, size: RectangleFigure) -> Measure:
    return Measure(name, (size.width, size.height))


def _layer(size: LayerSize, frames: list[StripFrame]) -> Iterator[Measure]:
    if size.layer.kind is Kind.MAT and size.outer:
        yield _rectangle("outside", size.outer)
    several = len(size.openings) > 1
    for number, opening in enumerate(size.openings, start=1):
        name = f"opening {number}" if several else "opening"
        shape = "" if opening.shape == "rectangle" else f", {opening.shape}"
        yield _rectangle(f"{name}{shape}", opening.size)
        if size.layer.kind is Kind.MAT:
            place = (
                Figure.start(opening.left, "from the left edge"),
                Figure.start(opening.top, "from the top edge"),
            )
            yield Measure(f"{name} from left, top", place)
    for frame in frames:
        label = f"strips {frame.opening_number}" if several else "strips"
        sides = {strip.side: strip for strip in frame.strips}
        for words, side in (("top and bottom", "top"), ("left and right", "left")):
            strip = sides[side]
            yield Measure(f"{label}, {words}, long / short", (strip.long_side, strip.short_side))
        yield _rectangle(f"{label} joined, outside", frame.joined)
        if frame.is_trimmed:
            yield _rectangle(f"{label} trimmed to", frame.trimmed)
