"""The order of assembly: what the workshop does, step by step, with the care each step needs.

Steps of common practice; hinging after the matting guide of the Library of Congress. The makers'
instructions and local rules come first.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Cuttable,
    Design,
    Weight,
    fixing_rating_kg,
    oval_frames,
    strip_frames,
    wire_tension_n,
)
from framing_palette.design.order import overlap_of
from framing_palette.papers.contents import Notation
from framing_palette.papers.cut_list import Cut
from framing_palette.units import ZERO

WIRE_DEG: Final = (60.0, 45.0, 30.0, 15.0)


@dataclass(frozen=True, slots=True)
class Step:
    """One step, and the cut it is about when it is about one alone."""

    words: str
    number: int | None = None


def assembly(
    cuttable: Cuttable, cuts: tuple[Cut, ...], notation: Notation, weight: Weight | None
) -> tuple[Step, ...]:
    """Return the steps from the first cut to the hanger."""
    design = cuttable.design
    return (
        Step("Clean bench and hands. Compare the art with the sizes above before any cut."),
        *_mats(design),
        *_strips(cuttable, notation),
        *_frame(cuttable, cuts, notation),
        *_art(design, notation),
        *_stack(cuttable, notation),
        *_hanging(design, weight),
    )


def _mats(design: Design) -> Iterator[Step]:
    mats = [
        str(number) for number, layer in enumerate(design.layers, start=1) if layer.kind is Kind.MAT
    ]
    if not mats:
        return
    which = f"mat {mats[0]}" if len(mats) == 1 else f"mats {_and(mats)}"
    yield Step(
        f"Cut {which} to the outside size, then the openings from the back, bevel toward the "
        "viewer. Fresh blade, fingers behind it; try each cut on a scrap of the same board."
    )


def _and(words: list[str]) -> str:
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def _strips(cuttable: Cuttable, notation: Notation) -> Iterator[Step]:
    """Yield the steps of each layer's strips once, however many openings it has."""
    told: set[tuple[int, str]] = set()
    for frame in strip_frames(cuttable.sizes, say=notation.said):
        for sentence in frame.steps:
            if (frame.layer_number, sentence) not in told:
                told.add((frame.layer_number, sentence))
                yield Step(sentence, frame.layer_number)
    bent = {frame.layer_number for frame in oval_frames(cuttable.sizes)}
    for number in sorted(bent):
        yield Step(
            "Lay the bent fillet into its opening before anything is fixed: it must lie flat and "
            "follow the oval all round. Straight strips cannot do it.",
            number,
        )


def _frame(cuttable: Cuttable, cuts: tuple[Cut, ...], notation: Notation) -> Iterator[Step]:
    frame = cuttable.sizes.frame
    if frame is None:
        return
    number = cuts[-1].number
    yield Step(
        "Saw the rails and lay them out: opposite rails must be equal. Guard the blade.", number
    )
    yield Step(
        f"Glue and fix the corners. Check the rabbet size, {notation.pair(*frame.rabbet.lengths)} "
        f"{notation.unit}, and both diagonals before the glue sets.",
        number,
    )


def _art(design: Design, notation: Notation) -> Iterator[Step]:
    if all(layer.kind is Kind.LINER for layer in design.layers) and design.mount is None:
        yield Step("Lay the art into the rabbet face down over a clean, soft cloth.")
        return
    board = "the mount board" if design.mount else "the board behind it"
    yield Step(
        f"Hinge the art to {board} along its upper edge, with tissue and starch paste. No "
        "pressure-sensitive tape, no dry mounting on art of value."
    )
    overlap = overlap_of(design)
    if overlap is not None and overlap > ZERO:
        yield Step(
            f"Lay the innermost layer over it: {notation.said(overlap)} of the art must be "
            "covered on every side."
        )
    elif overlap is not None and overlap < ZERO:
        yield Step(f"Centre the art: {notation.said(-overlap)} must show around it on every side.")


def _stack(cuttable: Cuttable, notation: Notation) -> Iterator[Step]:
    design = cuttable.design
    if any(layer.is_fillet for layer in design.layers[:-1]):
        yield Step(
            "Pack behind the hidden edge of the strips with board of their thickness, so that the "
            "layer above lies flat."
        )
    if design.glazing:
        care = "gloves and goggles; carry it upright"
        if design.glazing.material == "acrylic":
            care = "peel both films; a dry cloth draws dust"
        yield Step(f"Clean the {design.glazing.material} on both sides ({care}). Look for dust.")
    order = ", ".join(_front_to_back(design))
    if design.moulding is None:
        yield Step(f"Stack from the front: {order}.")
        return
    yield Step(
        f"Fill the rabbet, face down: {order}. Leave {notation.said(design.allowance / 2)} of "
        "play on every side; nothing may be pressed in."
    )
    yield from _closing(cuttable, notation)


def _front_to_back(design: Design) -> Iterator[str]:
    layers = list(enumerate(design.layers, start=1))
    is_lined = bool(layers) and layers[-1][1].kind is Kind.LINER
    if is_lined:
        yield f"liner {len(layers)}"
    if design.glazing:
        yield "glazing"
    if design.spacer:
        yield "spacer"
    for number, layer in reversed(layers[: len(layers) - is_lined]):
        yield f"{str(layer.kind).replace('_', ' ')} {number}"
    yield "art"
    if design.mount:
        yield "mount board"
    if design.backing:
        yield "backing"


def _closing(cuttable: Cuttable, notation: Notation) -> Iterator[Step]:
    depth, backing = cuttable.depth, cuttable.design.backing
    if not depth.fits:
        yield Step(
            "The stack stands out of the rabbet: build up the back of the frame by at least "
            f"{notation.said_at_least(depth.shortfall)}, or use offset clips, as agreed."
        )
    elif backing:
        yield Step("Fix with points or springs that press on the backing only, not on the art.")
    else:
        yield Step("Fix with offset clips or springs that hold without pressing on the art.")
    yield Step("Look at it from the front, then seal the back against dust.")


def _hanging(design: Design, weight: Weight | None) -> Iterator[Step]:
    if design.moulding is None or weight is None:
        return
    rating = fixing_rating_kg(weight)
    pulls = [(degrees, wire_tension_n(weight.high_kg, degrees)) for degrees in WIRE_DEG]
    told = ", ".join(f"{newtons:.0f} N at {degrees:.0f} degrees" for degrees, newtons in pulls)
    yield Step(
        f"Fit two hangers rated for at least {rating:.1f} kg each, level, a third down from the "
        f"top. A wire pulls in each half with about {told} from the level: the flatter, the more."
    )
