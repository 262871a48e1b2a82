"""The stack against the rabbet."""

from dataclasses import replace

import pytest

from framing_palette.design import Art, Board, Design, Glazing, depth_of, mouldings_that_fit
from framing_palette.design.depth import too_deep
from framing_palette.errors import FieldError
from framing_palette.units import ZERO
from tests.design.shop import (
    DEEP,
    DEEPER,
    SHOP,
    art,
    double_mat,
    inch,
    liner,
    mat,
    mm,
    moulding,
    wood_fillet,
    wrapped_fillet,
)


def stack(design):
    return depth_of(design).stack.value


def test_the_handbooks_stack_adds_up_every_sheet_on_its_deepest_path():
    depth = depth_of(double_mat())
    assert depth.stack.how("in") == (
        "3/16 in backing, plus 1/16 in art, plus 1/16 in layer 1, mat, plus 1/16 in layer 2, mat, "
        "plus about 3/32 in glazing"
    )
    assert depth.stack.value == inch("3/8") + mm(2)
    assert depth.clearance == inch("1/8")
    assert depth.fits


def test_floated_art_lies_beside_the_mats_and_the_deeper_of_the_two_counts():
    floated = Design(art(overlap=inch("-1/2"), thickness=inch("1/32")), (mat(borders="2"),))
    assert stack(floated) == inch("1/16")
    thick = replace(floated, art=replace(floated.art, thickness=inch("1/4")))
    assert stack(thick) == inch("1/4")


def test_art_that_is_just_met_by_its_opening_counts_as_lying_under_the_mat():
    met = Design(art(overlap=ZERO, thickness=inch("1/16")), (mat(borders="2"),))
    assert stack(met) == inch("1/8")


def test_a_double_thick_wrapped_fillet_counts_with_its_whole_height():
    single = Design(art(), (wrapped_fillet("1/4", thickness=inch("1/16")), mat(borders="2")))
    double = Design(art(), (wrapped_fillet("1/4", thickness=inch("1/8")), mat(borders="2")))
    assert stack(double) - stack(single) == inch("1/16")


def test_the_mat_beside_a_wood_fillet_that_shows_its_whole_face_rests_on_its_step():
    step = wood_fillet("3/8", thickness=inch("1/4"), rabbet_width=mm(7), rabbet_depth=inch("3/16"))
    # The step is 1/16 high and carries the 1/16 mat; the fillet's own 1/4 is higher.
    assert stack(Design(art(), (step, mat(borders="2")))) == inch("1/4")
    thick = replace(mat(borders="2"), thickness=inch("1/4"))
    assert stack(Design(art(), (step, thick))) == inch("5/16")


def test_a_mat_that_covers_part_of_a_fillets_face_rests_on_its_full_height():
    step = wood_fillet("1/4", thickness=inch("1/4"), rabbet_width=mm(7), rabbet_depth=inch("3/16"))
    assert stack(Design(art(), (step, mat(borders="2")))) == inch("5/16")


def test_a_spacer_a_mount_and_a_pane_each_add_their_own_thickness():
    bare = Design(art(), (mat(borders="2"),))
    built = replace(
        bare, spacer=inch("1/4"), mount=Board(inch("1/16")), glazing=Glazing("acrylic", inch("1/8"))
    )
    assert stack(built) - stack(bare) == inch("7/16")


def test_a_liner_adds_its_lip_in_front_of_what_it_holds():
    canvas = Art(inch(16), inch(20), thickness=inch("3/4"))
    assert stack(Design(canvas, (liner(),))) == inch("3/4") + inch("5/8") - inch("3/8")


def test_a_liner_deeper_than_what_it_holds_counts_whole():
    print_ = Art(inch(16), inch(20), thickness=inch("1/16"))
    assert stack(Design(print_, (liner(),))) == inch("5/8")


def test_the_depth_of_a_layer_whose_thickness_is_unknown_is_refused():
    unknown = replace(mat(borders="2"), thickness=None)
    with pytest.raises(FieldError, match="layer 1 thickness is missing; the depth of the stack"):
        depth_of(Design(art(), (unknown,)))
    with pytest.raises(FieldError, match="layer 1 rabbet_depth is missing"):
        depth_of(Design(art(), (liner(rabbet_depth=None),)))


def test_a_stack_that_is_too_deep_names_the_shortfall_and_what_would_hold_it():
    design = double_mat(moulding=moulding(rabbet_depth="1/2"))
    depth = depth_of(design)
    assert not depth.fits
    assert depth.shortfall == mm(2)
    error = too_deep(depth, SHOP.samples)
    assert error.fitting == ("R-DEEP", "R-DEEPER")
    assert "2 mm are missing; take a moulding that fits (R-DEEP, R-DEEPER)" in str(error)
    assert "build up the back of the frame by 2 mm" in str(error)
    assert "take a deeper moulding" in str(too_deep(depth))


def test_a_stack_that_just_fits_fits():
    design = double_mat()
    needed = depth_of(design).needed
    exact = replace(design.moulding, rabbet_depth=needed)
    assert depth_of(replace(design, moulding=exact)).fits
    short = replace(design.moulding, rabbet_depth=needed - mm("0.01"))
    assert depth_of(replace(design, moulding=short)).shortfall == mm("0.01")


def test_mouldings_that_fit_come_shallowest_first_and_only_mouldings_do():
    assert mouldings_that_fit(mm(20), SHOP.samples) == (DEEP, DEEPER)
    assert mouldings_that_fit(mm(40), SHOP.samples) == (DEEPER,)
    assert mouldings_that_fit(mm(41), SHOP.samples) == ()


def test_without_a_moulding_nothing_is_too_deep():
    depth = depth_of(double_mat(moulding=None))
    assert depth.rabbet_depth is None
    assert depth.fits
    assert depth.clearance == ZERO


def test_a_frame_around_nothing_thick_has_an_empty_stack():
    depth = depth_of(Design(Art(inch(8), inch(10)), moulding=moulding()))
    assert depth.stack.value == ZERO
    assert depth.stack.how("in") == "nothing"
