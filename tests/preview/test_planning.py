"""From a design to millimetres."""

from dataclasses import replace

import pytest

from framing_palette.catalogue import Catalogue, Kind, Profile
from framing_palette.design import (
    Arrangement,
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Shape,
    Window,
    layer_of,
    moulding_of,
)
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Build, Rect, Side
from tests.preview.frames import SHOP, all_round, mm, sample, simple


def test_the_art_lies_at_the_origin_and_openings_follow_the_design():
    plan = plan_of(simple(), SHOP)
    assert plan.arts == (Rect(0.0, 0.0, 300.0, 200.0),)
    inner, outer, frame = plan.layers
    assert inner.holes[0].rect == Rect(3, 3, 297, 197)
    assert outer.holes[0].rect == Rect(-5, -5, 305, 205)
    hidden = 6 - 25.4 / 16
    assert frame.holes[0].rect.left == pytest.approx(-5 - 60 + hidden)
    assert plan.extent.width == pytest.approx(310 + 2 * (60 - hidden + 30))


def test_layers_stand_on_one_another_and_the_rabbet_rests_on_the_glass():
    plan = plan_of(simple(glazing=True), SHOP)
    inner, outer, frame = plan.layers
    assert (inner.base_mm, outer.base_mm) == pytest.approx((0.0, 1.4))
    # Two boards of 1.4 and 2 mm of glass in front of a rabbet 15 mm deep.
    assert frame.base_mm == pytest.approx(2.8 + 2 - 15)
    assert plan.wall_z_mm == frame.base_mm
    assert plan.pane_below == 2
    assert plan_of(simple(), SHOP).pane_below == 0


def test_a_mats_bevel_is_as_wide_as_its_board_is_thick():
    plan = plan_of(simple(inner=None, outer="THICK-MAT"), SHOP)
    assert plan.layers[0].bevel_mm == 3.0
    assert plan.layers[0].profile == ((0.0, 0.0), (3.0, 3.0))
    assert plan.layers[0].build is Build.SHEET


def test_strips_are_joined_as_the_sample_says():
    butted = replace(SHOP["GREEN-FILLET"], code="BUTTED", join="butt")
    shop = Catalogue((*SHOP.samples, butted))
    for code, build in (("GREEN-FILLET", Build.MITRED), ("BUTTED", Build.BUTTED)):
        design = simple(inner=code, shop=shop)
        assert plan_of(design, shop).layers[0].build is build


def test_what_is_unknown_is_drawn_in_a_stated_way():
    design = Design(
        Art(mm(300), mm(200), mm(1), mm(3)),
        (
            Layer(Kind.WRAPPED_FILLET, None, reveal=all_round(6), face=mm(30)),
            layer_of(SHOP["NAMELESS-COLOUR"], borders=all_round(50)),
        ),
        moulding=moulding_of(SHOP["BARE-MOULDING"]),
    )
    told = " ".join(plan_of(design, SHOP).notices)
    assert "Layer 1 names no sample" in told
    assert "Layer 1 has no thickness and is drawn 1.4 mm thick" in told
    assert "NAMELESS-COLOUR has no colour" in told
    assert "BARE-MOULDING has no cross-section" in told


def test_a_texture_without_a_scale_is_left_out_and_told():
    odd = replace(SHOP["RED-MAT"], texture_file="x.png")
    shop = Catalogue((odd,), textures_dir="/nowhere")
    plan = plan_of(replace(simple(inner=None), moulding=None), shop)
    assert plan.layers[0].skin.texture_file == ""
    assert "scale of RED-MAT's texture is unknown" in plan.notices[0]


def test_several_colours_without_a_surface_are_mixed_and_told():
    two = replace(
        SHOP["RED-MAT"],
        colours=tuple(replace(SHOP["RED-MAT"].colours[0], share=0.5) for _ in range(2)),
    )
    shop = Catalogue((two,))
    plan = plan_of(simple(inner=None, moulding=None, shop=shop), shop)
    assert plan.notices == ("RED-MAT has no surface to be drawn, so its colours are shown mixed.",)


@pytest.mark.parametrize(
    "points", [((0.0, 5.0),), ((0.0, 5.0), (0.0, 9.0)), ((5.0, 1.0), (2.0, 1.0)), ()]
)
def test_a_cross_section_that_cannot_be_drawn_is_replaced_and_told(points):
    odd = sample("ODD", Kind.MOULDING, (50.0, 0.0, 0.0), profile=Profile(points))
    shop = Catalogue((*SHOP.samples, odd))
    plan = plan_of(simple(moulding="ODD", shop=shop), shop)
    assert "ODD has no cross-section" in " ".join(plan.notices)
    assert plan.layers[-1].profile[-1][0] == 30.0


def test_a_moulding_without_sample_is_drawn_from_its_measures():
    moulding = Moulding(mm(25), mm(6), mm(14), height=mm(30))
    plan = plan_of(replace(simple(), moulding=moulding), SHOP)
    assert max(height for _, height in plan.layers[-1].profile) == 30.0
    assert "The moulding names no sample" in " ".join(plan.notices)


def test_a_liner_holds_the_stack_in_its_own_rabbet():
    design = Design(
        Art(mm(300), mm(200), mm(2)),
        (layer_of(SHOP["BLUE-LINER"]),),
        moulding=moulding_of(SHOP["BLUE-FLAT"]),
    )
    plan = plan_of(design, SHOP)
    liner, frame = plan.layers
    assert liner.base_mm < 0 < liner.top_mm
    assert frame.base_mm == pytest.approx(liner.base_mm + 12 - 15)
    assert plan.arts[0].width == pytest.approx(300.0)
    assert liner.holes[0].rect.middle == pytest.approx(plan.arts[0].middle)
    assert frame.holes[0].rect.middle == pytest.approx(plan.arts[0].middle)


def test_several_openings_each_get_their_art_and_holes():
    design = Design(
        Art(mm(80), mm(60), mm(1), mm(3)),
        (
            layer_of(SHOP["WHITE-MAT"], reveal=all_round(5)),
            layer_of(SHOP["RED-MAT"], borders=all_round(40)),
        ),
        moulding=moulding_of(SHOP["BLUE-FLAT"]),
        arrangement=Arrangement(tuple(Window(mm(80), mm(60)) for _ in range(4)), 2, mm(20)),
    )
    plan = plan_of(design, SHOP)
    assert len(plan.arts) == 4
    assert [len(layer.holes) for layer in plan.layers] == [4, 4, 1]
    # Openings of 84 mm and a gap of 20 lie 104 apart.
    assert plan.arts[1].left - plan.arts[0].left == pytest.approx(104.0)
    assert plan.layers[0].hole(3).rect == plan.arts[3].grown(-3)


def test_round_and_oval_openings_are_ovals():
    design = simple(inner=None)
    design = replace(design, art=replace(design.art, shape=Shape.OVAL))
    plan = plan_of(design, SHOP)
    assert plan.layers[0].holes[0].oval
    assert not plan.layers[1].holes[0].oval


def test_backing_and_art_stand_between_the_layers_and_the_wall_without_a_frame():
    design = replace(simple(moulding=None), backing=Board(mm(5)))
    assert plan_of(design, SHOP).wall_z_mm == pytest.approx(-6.0)


def test_a_floated_art_lets_the_layers_down_to_what_it_lies_on():
    design = simple(inner=None)
    floated = replace(design, art=Art(mm(200), mm(150), mm(4), mm(-10)))
    plan = plan_of(floated, SHOP)
    assert plan.layers[0].base_mm == -4.0
    assert plan.layers[0].holes[0].rect == Rect(-10, -10, 210, 160)


def test_a_spacer_lifts_the_glass():
    design = replace(simple(), glazing=Glazing("glass", mm(2)), spacer=mm(6))
    assert plan_of(design, SHOP).layers[-1].base_mm == pytest.approx(2.8 + 6 + 2 - 15)


def test_a_colour_without_reflectance_is_an_estimate_in_the_clients_light():
    plan = plan_of(simple(), SHOP, under="A")
    assert any("RED-MAT has no measured reflectance" in notice for notice in plan.notices)
    measured = replace(
        SHOP["RED-MAT"],
        colours=(replace(SHOP["RED-MAT"].colours[0], spectrum=(0.4,) * 36),),
    )
    shop = Catalogue((measured,))
    plan = plan_of(simple(inner=None, moulding=None, shop=shop), shop, under="A")
    assert plan.notices == ()
    # An even reflectance stays the same grey in every light.
    assert plan.layers[0].skin.lab[1:] == pytest.approx((0.0, 0.0), abs=0.05)


def test_sides_point_outward():
    rect = Rect(1, 2, 11, 22)
    assert [rect.edge(side) for side in Side] == [-2, 11, 22, -1]
    assert rect.grown(1).edge(Side.LEFT) == 0
