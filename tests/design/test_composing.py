"""Composing: usual widths that always make a design that can be sized, or say what is missing."""

from fractions import Fraction
from itertools import product

import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.design import Art, compose, sizes_of, usual_border, usual_overlap, usual_reveal
from framing_palette.errors import FieldError, UnknownFactError
from framing_palette.units import Length

inch, mm = Length.inches, Length.mm_of
GREY = (SampleColour((50.0, 0.0, 0.0), 1.0),)
ART = Art(inch(16), inch(20), overlap=inch(Fraction(1, 8)))
MAT = Sample("M-1", "Grey", Kind.MAT, GREY, thickness=mm(Fraction(14, 10)))
WRAPPED = Sample(
    "W-1", "Grey", Kind.WRAPPED_FILLET, GREY, face=mm(32), thickness=mm(3), bevel=mm(5)
)
WOOD = Sample(
    "F-1",
    "Grey",
    Kind.WOOD_FILLET,
    GREY,
    face=mm(8),
    thickness=mm(6),
    rabbet_width=mm(7),
    rabbet_depth=mm(Fraction(48, 10)),
)
LINER = Sample(
    "L-1",
    "Grey",
    Kind.LINER,
    GREY,
    face=mm(38),
    thickness=mm(14),
    rabbet_width=mm(6),
    rabbet_depth=mm(6),
)
FRAME = Sample(
    "R-1",
    "Grey",
    Kind.MOULDING,
    GREY,
    face=mm(30),
    thickness=mm(22),
    rabbet_width=mm(6),
    rabbet_depth=mm(18),
)


@pytest.mark.parametrize(
    "inner",
    [stack for count in range(4) for stack in product((MAT, WRAPPED, WOOD), repeat=count)],
    ids=lambda stack: "+".join(sample.code for sample in stack) or "frame only",
)
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_any_order_of_three_layers_can_be_sized_as_composed(
    inner: tuple[Sample, ...], unit: str
) -> None:
    design = compose((*inner, FRAME), ART, unit=unit)
    sizes = sizes_of(design)
    assert design.codes == (*(sample.code for sample in inner), "R-1")
    assert sizes.frame is not None
    assert all(length > mm(0) for length in sizes.frame.sight.lengths)


def test_a_liner_comes_last_and_holds_what_lies_in_it() -> None:
    sizes = sizes_of(compose((MAT, LINER, FRAME), ART))
    assert sizes.outer.width.value > sizes.contents.width.value


def test_the_outermost_mat_has_the_border_and_an_inner_mat_a_quarter_inch() -> None:
    inner, outer = compose((MAT, MAT, FRAME), ART).layers
    assert inner.reveal is not None
    assert inner.reveal.top == inch(Fraction(1, 4))
    assert outer.borders is not None
    assert outer.borders.top == usual_border(ART)


def test_a_wrapped_fillet_shows_its_bevel_and_a_wood_fillet_its_face() -> None:
    assert usual_reveal(WRAPPED) == mm(5)
    assert usual_reveal(WOOD) == mm(8)


def test_larger_art_gets_a_wider_border_but_less_than_in_proportion() -> None:
    borders = [usual_border(Art(inch(side), inch(side))) for side in (5, 8, 12, 20, 40)]
    assert borders == sorted(borders)
    assert borders[-1] / borders[0] < 40 / 5


def test_a_metric_shop_gets_whole_millimetres() -> None:
    design = compose(
        (MAT, MAT, FRAME), Art(mm(600), mm(420), overlap=usual_overlap("mm")), unit="mm"
    )
    lengths = [
        design.layers[0].reveal.top,
        design.layers[1].borders.left,
        design.art.overlap,
        design.moulding.allowance,
    ]
    assert all(length.mm.denominator == 1 for length in lengths)
    assert usual_border(design.art, "mm").mm % 5 == 0


def test_a_moulding_inside_is_refused() -> None:
    with pytest.raises(FieldError, match="comes last"):
        compose((FRAME, MAT), ART)


def test_a_moulding_of_unknown_rabbet_is_refused_by_its_code() -> None:
    bare = Sample("R-2", "Grey", Kind.MOULDING, GREY, face=mm(30))
    with pytest.raises(UnknownFactError, match="R-2 has no rabbet width"):
        compose((MAT, bare), ART)


def test_without_a_moulding_the_design_goes_out_unframed() -> None:
    design = compose((MAT,), ART, glazing=None, backing=None)
    assert design.moulding is None
    assert design.glazing is None
    assert sizes_of(design).frame is None
