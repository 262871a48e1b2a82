"""The parts of a design that can be charged, with their quantities."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.ovals import oval_frames
from framing_palette.design.price_book import Part
from framing_palette.design.size_parts import LayerSize, Sizes
from framing_palette.design.strips import strip_frames
from framing_palette.units import ZERO, Length, total


@dataclass(frozen=True, slots=True)
class PricedPart:
    """One part with what it can be charged by.

    Parameters
    ----------
    part, name
        What it is, and the words for it.
    code, material
        To choose among charges.
    width, height
        Its outside size.
    length
        Strips or rails by their long points; None for sheets.
    count
        How many there are.
    sheet_mm2
        Area of its stock sheet, when known.
    stick
        Length of its stock stick, when known.
    """

    part: Part
    name: str
    code: str = ""
    material: str = ""
    width: Length = ZERO
    height: Length = ZERO
    length: Length | None = None
    count: int = 1
    sheet_mm2: Fraction | None = None
    stick: Length | None = None

    @property
    def united_inches(self) -> Fraction:
        """Width and height together, in inches."""
        return (self.width + self.height).as_inches()

    @property
    def area_mm2(self) -> Fraction:
        """Outside area."""
        return self.width.mm * self.height.mm


def priced_parts(design: Design, sizes: Sizes) -> tuple[PricedPart, ...]:
    """Return every part of a design in the order of its lines, the job itself last."""
    return tuple(_parts(design, sizes))


def _parts(design: Design, sizes: Sizes) -> Iterator[PricedPart]:
    strips, ovals = strip_frames(sizes), oval_frames(sizes)
    for number, size in enumerate(sizes.layers, start=1):
        lengths = [
            *(frame.strip_length for frame in strips if frame.layer_number == number),
            *(frame.outer_length for frame in ovals if frame.layer_number == number),
        ]
        yield _layer(f"layer {number}", size, lengths if size.layer.strip_width else [])
    width, height = sizes.contents.lengths
    if design.glazing:
        material = design.glazing.material
        yield PricedPart(Part.GLAZING, "glazing", "", material, width, height)
    for part, board in ((Part.MOUNT, design.mount), (Part.BACKING, design.backing)):
        if board:
            yield PricedPart(part, str(part), "", board.material, width, height)
    if design.moulding and sizes.frame:
        yield PricedPart(
            Part.MOULDING,
            "moulding",
            design.moulding.code,
            design.moulding.material,
            *sizes.outer.lengths,
            length=sizes.frame.moulding_length.value,
            stick=design.moulding.stick,
        )
    openings = sum(len(size.openings) for size in sizes.layers if size.layer.kind is Kind.MAT)
    if openings:
        yield PricedPart(Part.OPENING, "openings", count=openings)
    yield PricedPart(Part.JOB, "job", "", "", *sizes.outer.lengths)


def _layer(name: str, size: LayerSize, lengths: list[Length]) -> PricedPart:
    layer = size.layer
    outer = size.outer or size.opening.size
    sheet = None
    if layer.sheet_w is not None and layer.sheet_h is not None:
        sheet = layer.sheet_w.mm * layer.sheet_h.mm
    return PricedPart(
        Part(str(layer.kind)),
        f"{name}, {layer.kind.replace('_', ' ')}",
        layer.code,
        layer.material,
        *outer.lengths,
        length=total(lengths) if lengths else None,
        count=1 if layer.kind is Kind.MAT else len(size.openings),
        sheet_mm2=sheet,
        stick=layer.stick,
    )
