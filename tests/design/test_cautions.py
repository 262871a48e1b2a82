"""Cautions: said where they apply, and only there."""

from dataclasses import replace

import pytest

from framing_palette.design import (
    Arrangement,
    Art,
    Board,
    Design,
    Glazing,
    Shape,
    Sides,
    Window,
    cautions_of,
)
from framing_palette.design.cautions import air_gap
from framing_palette.units import ZERO
from tests.design.shop import SHOP, art, double_mat, inch, liner, mat, mm, moulding, wrapped_fillet


def said(design, topic=None, samples=()):
    return [c.sentence for c in cautions_of(design, samples) if topic in (None, c.topic)]


def has(design, words):
    return any(words in sentence for sentence in said(design))


def test_the_handbooks_design_is_cautioned_about_nothing_but_handling_and_hanging():
    assert {caution.topic for caution in cautions_of(double_mat())} == {"handling", "hanging"}


@pytest.mark.parametrize(
    ("overlap", "words"),
    [
        ("0", "exactly as large as the art"),
        ("1/16", "Only 1/16 in of the art is held on each side; 1/8 in is usual."),
        ("1/2", "1/2 in of the art is hidden on each side; up to 1/4 in is usual."),
        ("-1/2", "The art's edges show with 1/2 in around them"),
    ],
)
def test_an_unusual_overlap_is_told(overlap, words):
    assert has(double_mat(art=art(thickness=inch("1/16"), overlap=inch(overlap))), words)


@pytest.mark.parametrize("overlap", ["1/8", "3/16", "1/4"])
def test_a_usual_overlap_is_not(overlap):
    assert not said(double_mat(art=art(thickness=inch("1/16"), overlap=inch(overlap))), "measure")


def test_a_metric_shop_is_told_its_own_usual_overlap():
    metric = double_mat(unit="mm", art=art(thickness=mm(1), overlap=mm(3)))
    assert not said(metric, "measure")
    short = double_mat(unit="mm", art=art(thickness=mm(1), overlap=mm(2)))
    assert has(short, "Only 2 mm of the art is held on each side; 3 mm is usual.")


def test_a_size_that_looks_like_a_mixed_up_unit_is_told():
    assert has(double_mat(art=art("400", "500", thickness=inch(1))), "check that the unit is right")


def test_an_untold_thickness_is_told():
    assert has(double_mat(art=art()), "thickness is not told")


def test_a_stack_that_does_not_fit_is_told_with_what_would():
    shallow = double_mat(moulding=moulding(rabbet_depth="3/8"))
    (sentence,) = said(shallow, "fit", SHOP.samples)
    assert "take a moulding that fits (R-DEEP, R-DEEPER)" in sentence


def test_a_play_as_wide_as_the_rabbet_and_a_tight_one_are_told():
    loose = double_mat(moulding=moulding(allowance=inch("1/4")))
    tight = double_mat(moulding=moulding(allowance=inch("1/32")))
    assert has(loose, "pushed to one side, the stack shows its edge")
    assert has(tight, "The play of 1/32 in is tight")


def test_a_border_that_the_moulding_hides_is_named_by_its_side():
    layers = (replace(mat(), borders=replace(Sides.all_round(inch(2)), top=inch("3/16"))),)
    design = double_mat(layers=layers, art=art(thickness=inch("1/16"), overlap=inch("1/8")))
    assert has(design, "The moulding hides the whole border at the top.")
    assert not has(design, "at the top, right")


def test_a_reveal_less_than_its_bevel_is_told():
    assert has(double_mat(layers=(mat("1/32"), mat(borders="2"))), "1/32 in less than its bevel")
    assert not has(double_mat(layers=(mat("1/16"), mat(borders="2"))), "less than its bevel")


def test_an_unused_reveal_an_unknown_face_and_a_thin_board_are_told():
    assert has(double_mat(layers=(mat("1/4", borders="2"),)), "reveal of layer 1 is not used")
    faceless = replace(wrapped_fillet("1/4"), face=None)
    assert has(double_mat(layers=(faceless, mat(borders="2"))), "The face of layer 1 is not told")
    thin = replace(mat(borders="2"), thickness=inch("1/32"))
    assert has(double_mat(layers=(thin,)), "is thinner than 4-ply")


def test_a_mat_larger_than_its_sheet_is_told_whichever_way_it_lies():
    small = mat(borders="2", sheet_w=inch(24), sheet_h=inch(20))
    assert not has(double_mat(layers=(small,)), "stock sheet")
    assert has(
        double_mat(layers=(replace(small, sheet_h=inch(19)),)), "larger than its stock sheet"
    )


def test_straight_strips_around_an_oval_are_told():
    oval = art(thickness=inch("1/16"), shape=Shape.OVAL)
    assert has(double_mat(art=oval, layers=(wrapped_fillet("1/4"), mat(borders="2"))), "Straight")
    assert not has(double_mat(art=oval), "Straight")


def test_glazing_that_would_touch_the_art_is_told():
    bare = double_mat(layers=())
    assert has(bare, "The glazing would touch the art")
    assert not has(replace(bare, spacer=inch("1/8")), "would touch the art")
    assert not has(replace(bare, glazing=None), "would touch the art")


def test_too_little_air_and_static_over_pastel_are_told():
    pastel = art(thickness=inch("1/16"), friable=True)
    near = double_mat(art=pastel, glazing=Glazing("acrylic", mm(2)))
    assert has(near, "Only 1/8 in of air lie over the friable surface; at least 1/4 in")
    assert has(near, "Acrylic carries static")
    far = double_mat(art=pastel, spacer=inch("1/4"))
    assert not said(far, "art")


def test_the_air_gap_counts_mats_and_spacers_but_neither_art_nor_boards():
    design = double_mat(mount=Board(inch("1/16")), spacer=inch("1/4"))
    assert air_gap(design) == inch("3/8")
    assert air_gap(replace(design, glazing=None)) is None


def test_glass_and_blades_are_cautioned_where_they_are_used():
    assert has(double_mat(), "Glass edges cut")
    assert not has(double_mat(glazing=Glazing("acrylic", mm(2))), "Glass edges cut")
    assert has(double_mat(), "Mat blades cut")
    assert not has(Design(Art(inch(8), inch(10)), moulding=moulding()), "Mat blades cut")


def test_hanging_is_always_cautioned_and_above_ten_kilograms_an_installer_is_named():
    assert has(double_mat(), "is an estimate: use two points on the wall and two on the frame")
    assert has(double_mat(), "For masonry, plaster or hanging overhead ask a qualified installer")
    heavy = double_mat(art=art(thickness=inch("1/16"), mass_kg=9.9))
    assert has(heavy, "more than 10 kg: ask a qualified installer")
    assert not said(double_mat(moulding=None), "hanging")


def test_a_canvas_in_a_liner_with_several_openings_is_cautioned_without_a_fault():
    windows = (Window(inch(4), inch(6)),) * 2
    design = Design(
        Art(inch(4), inch(6), overlap=inch("1/8")),
        (mat(borders="2"), liner()),
        arrangement=Arrangement(windows, columns=2, gap=inch(1)),
        moulding=moulding(rabbet_depth="2"),
    )
    assert {caution.topic for caution in cautions_of(design)} == {"measure", "handling", "hanging"}
    assert design.spacer == ZERO
