"""What a frame weighs."""

from dataclasses import replace
from math import pi

import pytest

from framing_palette.design import Art, Board, Design, Shape, sizes_of, weight_of, wire_tension_n
from framing_palette.design.densities import (
    UNNAMED_BACKING,
    UNNAMED_WOOD,
    Density,
    board_density,
    measured,
    wood_density,
)
from framing_palette.errors import FieldError
from tests.design.shop import art, double_mat, inch, mat, mm, moulding, wood_fillet, wrapped_fillet


def parts(design):
    return {part.name: part for part in weight_of(design, sizes_of(design)).parts}


def test_every_part_of_the_handbooks_design_is_weighed_with_its_basis():
    weighed = parts(double_mat())
    assert list(weighed) == [
        "art", "layer 1, mat", "layer 2, mat", "glass glazing", "backing", "moulding",
    ]  # fmt: skip
    assert all(part.basis for part in weighed.values())


def test_a_mat_is_weighed_without_its_opening():
    part = parts(Design(art(), (mat(borders="2", density_kg_m3=1000.0),)))["layer 1, mat"]
    volume_m3 = (19.75 * 23.75 - 15.75 * 19.75) * 0.0254**2 * 0.0254 / 16
    assert part.likely_kg == pytest.approx(1000 * volume_m3)
    assert part.basis == "the catalogue"


def test_an_oval_opening_takes_less_away_than_its_rectangle():
    layer = mat(borders="2", density_kg_m3=1000.0)
    rectangle, oval = (
        parts(Design(art(shape=shape), (layer,)))["layer 1, mat"].likely_kg
        for shape in (Shape.RECTANGLE, Shape.OVAL)
    )
    hole_kg = 15.75 * 19.75 * 0.0254**3 / 16 * 1000
    assert oval - rectangle == pytest.approx(hole_kg * (1 - pi / 4))


def test_strips_are_weighed_by_their_own_frame():
    fillet = wrapped_fillet("1/4", density_kg_m3=500.0)
    part = parts(Design(art(), (fillet, mat(borders="2"))))["layer 1, wrapped fillet"]
    volume_m3 = (17.25 * 21.25 - 15.75 * 19.75) * 0.0254**3 / 8
    assert part.likely_kg == pytest.approx(500 * volume_m3)


def test_a_layer_of_unknown_size_is_left_out_rather_than_guessed():
    faceless = replace(wrapped_fillet("1/4"), face=None)
    assert "layer 1, wrapped fillet" not in parts(Design(art(), (faceless, mat(borders="2"))))


def test_a_weighed_art_counts_as_weighed_and_a_thick_one_as_stretched_canvas():
    assert parts(Design(art(mass_kg=0.4)))["art"].likely_kg == 0.4
    thin = parts(Design(Art(inch(16), inch(20), mm(6))))["art"]
    canvas = parts(Design(Art(inch(16), inch(20), mm(20))))["art"]
    assert canvas.likely_kg < thin.likely_kg


def test_wood_is_weighed_by_its_name_and_by_the_catalogues_density_first():
    fillet = wood_fillet("1/8", face="1/2", material="red oak")
    assert parts(Design(art(), (fillet, mat(borders="2"))))[
        "layer 1, wood fillet"
    ].basis.startswith("after the USDA Wood Handbook")
    stated = double_mat(moulding=moulding(density_kg_m3=600.0))
    assert parts(stated)["moulding"].basis == "the catalogue"
    assert parts(double_mat())["moulding"].basis == "wood not named"


def test_a_moulding_of_known_height_is_weighed_between_half_and_nine_tenths_of_its_outline():
    known = double_mat(moulding=moulding(height=inch(1), density_kg_m3=600.0))
    part, frame = parts(known)["moulding"], sizes_of(known).frame
    lengths = [r.long_point.value + r.short_point.value for r in frame.rails]
    length_m = sum(length.as_float_mm() for length in lengths) / 2000
    outline_m2 = 1.5 * 0.0254 * 0.0254
    rabbet_m2 = 0.25 * 0.625 * 0.0254**2
    assert part.likely_kg == pytest.approx((0.7 * outline_m2 - rabbet_m2) * length_m * 600)
    assert part.low_kg == pytest.approx((0.5 * outline_m2 - rabbet_m2) * length_m * 570)


def test_a_backing_without_a_name_reaches_from_foam_board_to_hardboard():
    named = parts(double_mat(backing=Board(inch("3/16"), "black foam board")))["backing"]
    unnamed = parts(double_mat())["backing"]
    assert unnamed.likely_kg == named.likely_kg
    assert unnamed.high_kg > 5 * named.high_kg
    stated = parts(double_mat(backing=Board(inch("3/16"), "", 300.0)))["backing"]
    assert stated.likely_kg == pytest.approx(named.likely_kg * 300 / 110)


def test_a_wire_angle_outside_its_range_is_refused():
    for angle in (0, -5, 91):
        with pytest.raises(FieldError, match="wire angle"):
            wire_tension_n(3, angle)
    assert wire_tension_n(2, 5) > wire_tension_n(2, 10) > wire_tension_n(2, 90)


def test_densities_are_found_by_the_longest_name_in_the_words():
    assert wood_density("stained white oak").likely == pytest.approx(1120 * 0.68)
    assert wood_density("tulipwood").likely == pytest.approx(1120 * 0.42)
    assert wood_density("gilded") is UNNAMED_WOOD
    assert board_density("archival foam board", UNNAMED_BACKING).likely == 110
    assert board_density("", UNNAMED_BACKING) is UNNAMED_BACKING
    assert measured(100).low < 100 < measured(100).high
    assert Density.within(100, 0.1, "x").high == pytest.approx(110)
