"""The last gate before anything is cut."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Design,
    Reading,
    Window,
    agree,
    check_cuttable,
    layer_of,
    moulding_of,
    with_measured_art,
)
from framing_palette.errors import (
    FieldError,
    StackTooDeepError,
    UnknownFactError,
    UnknownSampleError,
)
from tests.design.shop import (
    DEEP,
    FILLET,
    MAT,
    SHOP,
    UNKNOWN_RABBET,
    Sides,
    double_mat,
    inch,
    mm,
    moulding,
)

DESIGN = Design(
    Art(mm(300), mm(400), mm(2), overlap=mm(4)),
    (
        layer_of(FILLET, reveal=Sides.all_round(mm(6))),
        layer_of(MAT, borders=Sides.all_round(mm(60))),
    ),
    moulding=moulding_of(DEEP),
)


def test_a_design_that_can_be_cut_comes_with_its_sizes_depth_and_cautions():
    cuttable = check_cuttable(DESIGN, SHOP)
    assert cuttable.design is DESIGN
    assert cuttable.depth.fits
    assert cuttable.sizes.frame is not None
    assert {caution.topic for caution in cuttable.cautions} == {"handling", "hanging"}


def test_a_stack_that_does_not_fit_stops_the_ticket_unless_somebody_agreed_to_it():
    shallow = double_mat(moulding=moulding(rabbet_depth="3/8"))
    with pytest.raises(StackTooDeepError, match="R-DEEP"):
        check_cuttable(shallow, SHOP)
    assert not check_cuttable(shallow, SHOP, out_of_rabbet=True).depth.fits


def test_a_design_with_a_deleted_sample_stops_the_ticket():
    without = Catalogue(tuple(sample for sample in SHOP.samples if sample is not FILLET))
    with pytest.raises(UnknownSampleError, match="no sample W-1"):
        check_cuttable(DESIGN, without)
    assert check_cuttable(DESIGN).design is DESIGN


def measured(width, height, **facts):
    at = datetime(2024, 5, 2, tzinfo=UTC)
    first, second = (Reading(width, height, by, at, **facts) for by in ("AB", "CD"))
    return agree(first, second)


def test_openings_go_by_the_measured_art():
    design = with_measured_art(double_mat(), measured(inch("15 7/8"), inch("19 15/16")))
    assert (design.art.width, design.art.height) == (inch("15 7/8"), inch("19 15/16"))
    assert design.art.overlap == double_mat().art.overlap


def test_a_frame_sized_on_leaning_art_goes_by_what_holds_it_and_openings_by_what_lies_in_it():
    leaning = measured(mm(300), mm(400), diagonals=(mm("503.1"), mm("497.1")))
    assert leaning.height < mm(400) < leaning.outer_height
    bare = Design(Art(mm(300), mm(400)), moulding=moulding())
    assert with_measured_art(bare, leaning).art.height == leaning.outer_height
    assert with_measured_art(DESIGN, leaning).art.height == leaning.height


def test_one_measurement_cannot_stand_for_several_pieces_of_art():
    windows = (Window(inch(4), inch(6)),) * 2
    several = double_mat(arrangement=Arrangement(windows, columns=2, gap=inch(1)))
    with pytest.raises(FieldError, match="one of several"):
        with_measured_art(several, measured(inch(4), inch(6)))


def test_a_moulding_of_unknown_rabbet_is_named_with_what_it_is_needed_for():
    with pytest.raises(
        UnknownFactError, match="R-UNKNOWN has no rabbet width, which is needed for"
    ):
        moulding_of(UNKNOWN_RABBET)


def test_samples_only_become_the_parts_that_they_are():
    with pytest.raises(FieldError, match="sample M-1 is a mat; choose a moulding"):
        moulding_of(MAT)
    with pytest.raises(FieldError, match="sample R-DEEP is a moulding"):
        layer_of(DEEP)
    assert layer_of(FILLET).join == "butt"
    assert layer_of(MAT).kind is Kind.MAT
    assert layer_of(replace(MAT, join="")).join == "mitre"
