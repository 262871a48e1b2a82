"""What the shop should hear about a design although it can be cut.

Each caution is one sentence with its topic. A caution never replaces the care of the trade: local
rules, the makers' instructions and a qualified installer come first.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from framing_palette.catalogue import Kind, Sample
from framing_palette.design.depth import depth_of, too_deep
from framing_palette.design.designs import Design
from framing_palette.design.layers import Layer, Shape
from framing_palette.design.order import overlap_of
from framing_palette.design.ovals import narrowest_reveal, oval_frames
from framing_palette.design.size_parts import Sizes
from framing_palette.design.sizes import sizes_of
from framing_palette.design.weight import fixing_rating_kg, weight_of
from framing_palette.units import ZERO, Length, total

Topic = Literal["measure", "fit", "cutting", "art", "handling", "hanging"]

# J. C. Kelly, matting notes, 1998: 1/8 to 1/4 in; in metric shops the whole millimetres near it.
USUAL_OVERLAP_INCH: Final = Length.inches(Fraction(1, 8)), Length.inches(Fraction(1, 4))
USUAL_OVERLAP_METRIC: Final = Length.mm_of(3), Length.mm_of(7)
TIGHTEST_ALLOWANCE: Final = Length.inches(Fraction(1, 16))  # Fine Woodworking 275, 2019
FOUR_PLY: Final = Length.inches(Fraction(1, 20))  # Saitzyk, Art Hardware, 1987
AIR_OVER_PASTEL: Final = Length.inches(Fraction(1, 4))  # Pastel Society of America, 2015
NARROWER_BY: Final = Length.mm_of("0.2")  # what an eye sees of an uneven reveal; from memory
LIKELY_MIX_UP: Final = Length.mm_of(3000)


@dataclass(frozen=True, slots=True)
class Caution:
    """One sentence, and what it is about."""

    topic: Topic
    sentence: str


def cautions_of(design: Design, samples: Iterable[Sample] = ()) -> tuple[Caution, ...]:
    """Return everything worth saying about a design, the measures first and the hanging last.

    Parameters
    ----------
    design : Design
        Any design that can be sized.
    samples : iterable of Sample
        The catalogue's samples, from which deeper mouldings are named when the stack does not fit.

    Raises
    ------
    FieldError
        When the sizes or the depth cannot be worked out.
    """
    sizes = sizes_of(design)
    return (
        *(Caution("measure", sentence) for sentence in _measures(design)),
        *(Caution("fit", sentence) for sentence in _fit(design, sizes, samples)),
        *(Caution("cutting", sentence) for sentence in _cutting(design, sizes)),
        *(Caution("art", sentence) for sentence in _art(design)),
        *(Caution("handling", sentence) for sentence in _handling(design)),
        *(Caution("hanging", sentence) for sentence in _hanging(design, sizes)),
    )


def _measures(design: Design) -> Iterator[str]:
    longest = max(max(window.width, window.height) for window in design.windows)
    if longest > LIKELY_MIX_UP:
        yield f"The art is {design.said(longest)} long: check that the unit is right."
    if not design.art.thickness:
        yield "The art's thickness is not told and counts as nothing in the depth."
    overlap = overlap_of(design)
    if overlap is None or design.art.overlap is None:
        return
    least, most = USUAL_OVERLAP_INCH if design.unit == "in" else USUAL_OVERLAP_METRIC
    if overlap == ZERO:
        yield "The opening is exactly as large as the art: the smallest error shows a gap."
    elif ZERO < overlap < least:
        usual = f"{design.said(least)} is usual"
        yield f"Only {design.said(overlap)} of the art is held on each side; {usual}."
    elif overlap > most:
        usual = f"up to {design.said(most)} is usual"
        yield f"{design.said(overlap)} of the art is hidden on each side; {usual}."
    elif overlap < ZERO:
        yield (
            f"The art's edges show with {design.said(-overlap)} around them: nothing holds the art "
            "but its hinges, and both the edges and the board behind must be fit to be seen."
        )


def _fit(design: Design, sizes: Sizes, samples: Iterable[Sample]) -> Iterator[str]:
    depth, moulding = depth_of(design), design.moulding
    if moulding is None or sizes.frame is None:
        return
    if not depth.fits:
        yield str(too_deep(depth, samples))
    if moulding.allowance >= moulding.rabbet_width:
        yield (
            f"The play of {design.said(moulding.allowance)} is not less than the rabbet width of "
            f"{design.said(moulding.rabbet_width)}: pushed to one side, the stack shows its edge."
        )
    if moulding.allowance < TIGHTEST_ALLOWANCE:
        yield (
            f"The play of {design.said(moulding.allowance)} is tight; "
            f"{design.said_at_least(TIGHTEST_ALLOWANCE)} or more lets boards and wood move."
        )
    last = design.layers[-1] if design.layers else None
    hidden = moulding.rabbet_width - moulding.allowance / 2
    borders = last.borders.named if last and last.borders else ()
    covered = [side for side, border in borders if border <= hidden]
    if covered:
        yield f"The moulding hides the whole border at the {', '.join(covered)}."


def _cutting(design: Design, sizes: Sizes) -> Iterator[str]:
    for (name, layer), size in zip(design.numbered(), sizes.layers, strict=True):
        yield from _bevel(design, name, layer, size.flat.smallest if size.flat else None)
        if size.reveal is None and layer.reveal is not None:
            yield f"The reveal of {name} is not used: the moulding decides what shows of it."
        if layer.is_fillet and layer.face is None:
            yield f"The face of {name} is not told: how far its strips are hidden is not checked."
        if layer.kind is Kind.MAT and layer.thickness and layer.thickness < FOUR_PLY:
            yield f"The board of {name}, {design.said(layer.thickness)}, is thinner than 4-ply."
        if size.outer and not _fits_sheet(layer, size.outer.lengths):
            yield f"The board of {name} is larger than its stock sheet: order an oversize sheet."
    yield from _ovals(design, sizes)


def _ovals(design: Design, sizes: Sizes) -> Iterator[str]:
    """Yield what straight strips and even reveals cannot do round an oval opening."""
    for frame in oval_frames(sizes):
        yield (
            f"Straight strips cannot follow the {design.windows[frame.opening_number - 1].shape} "
            f"opening of layer {frame.layer_number}: its fillet must be made or ordered in one "
            f"bent, laminated or turned piece, {_about(design, frame.sight_length)} along its "
            "sight edge; try it in the opening before anything is fixed."
        )
    for number, size in enumerate(sizes.layers, start=1):
        for opening in size.openings if size.reveal else ():
            if opening.shape is not Shape.RECTANGLE and size.reveal:
                least = narrowest_reveal(opening.size.lengths, size.reveal)
                if size.reveal.smallest - least >= NARROWER_BY:
                    yield (
                        f"Round the oval the reveal of layer {number}, "
                        f"{design.said(size.reveal.smallest)} at the ends of the axes, narrows to "
                        f"{_about(design, least)} in between."
                    )


def _about(design: Design, length: Length) -> str:
    """Write a length that was worked out along a curve."""
    return f"about {length.show(design.unit, 64).removeprefix('about ')}"


def _bevel(design: Design, name: str, layer: Layer, flat: Length | None) -> Iterator[str]:
    if flat is not None and flat < ZERO and layer.bevel_width:
        yield (
            f"The reveal of {name} is {design.said(-flat)} less than its bevel of "
            f"{design.said(layer.bevel_width)}: the layer above would lie on the slope."
        )


def _fits_sheet(layer: Layer, outer: tuple[Length, Length]) -> bool:
    if layer.sheet_w is None or layer.sheet_h is None:
        return True
    sheet = sorted((layer.sheet_w, layer.sheet_h))
    return all(side <= stock for side, stock in zip(sorted(outer), sheet, strict=True))


def air_gap(design: Design) -> Length | None:
    """Return the room between the art's face and the glazing; None without glazing."""
    if design.glazing is None:
        return None
    without_art = depth_of(design).stack.value - design.glazing.thickness - design.art.thickness
    boards = total(board.thickness for board in (design.backing, design.mount) if board)
    return without_art - boards


def _art(design: Design) -> Iterator[str]:
    gap = air_gap(design)
    if gap is None or design.glazing is None:
        return
    if gap <= ZERO:
        yield "The glazing would touch the art: add a mat or a spacer, or leave the glazing out."
    elif design.art.friable and gap < AIR_OVER_PASTEL:
        yield (
            f"Only {design.said(gap)} of air lie over the friable surface; at least "
            f"{design.said_at_least(AIR_OVER_PASTEL)} is advised."
        )
    if design.art.friable and design.glazing.material == "acrylic":
        yield "Acrylic carries static and can lift pastel, charcoal and other friable media."


def _handling(design: Design) -> Iterator[str]:
    if design.glazing and design.glazing.material == "glass":
        yield "Glass edges cut: wear gloves and goggles, and carry the pane upright."
    if any(layer.kind in (Kind.MAT, Kind.WRAPPED_FILLET) for layer in design.layers):
        yield "Mat blades cut: change them with care and keep fingers out of the blade's path."


def _hanging(design: Design, sizes: Sizes) -> Iterator[str]:
    weight = weight_of(design, sizes)
    if design.moulding is None:
        return
    yield (
        f"The weight of about {weight.likely_kg:.1f} kg ({weight.low_kg:.1f} to "
        f"{weight.high_kg:.1f} kg) is an estimate: use two points on the wall and two on the "
        f"frame, each rated for at least {fixing_rating_kg(weight):.1f} kg, and go by the wall, "
        "the fixing's maker and local rules."
    )
    if weight.needs_installer:
        yield "This may weigh more than 10 kg: ask a qualified installer."
    else:
        yield "For masonry, plaster or hanging overhead ask a qualified installer."
