"""Care notes: what applies to this design, each source's caution where it belongs."""

from dataclasses import replace

from framing_palette.design import cautions_of
from framing_palette.papers.care import care_notes
from tests.papers.made_up import SAMPLES, all_designs, plain, rich


def notes(design):
    return " ".join(care_notes(design, SAMPLES))


def test_light_levels_are_those_of_museum_practice():
    assert "about 50 lux" in notes(plain())
    assert "150 to 300" in notes(plain())
    assert "slows fading but does not stop it" in notes(plain())


def test_glass_acrylic_and_open_surfaces_are_cleaned_differently():
    assert "Clean the glass" in notes(plain())
    assert "without ammonia" in notes(rich())
    assert "never wipe it" in notes(all_designs()["canvas"])
    assert "UV glazing" not in notes(all_designs()["canvas"])


def test_what_the_catalogue_states_is_quoted_as_its_statement_once():
    told = notes(rich())
    assert told.count("acid free") == 1
    assert "as the catalogue states: acid free" in told


def test_cautions_on_art_and_hanging_reach_the_client():
    friable = replace(rich(), art=replace(rich().art, friable=True))
    told = notes(friable)
    for caution in cautions_of(friable):
        if caution.topic in ("art", "hanging"):
            assert caution.sentence in told
    assert "static" in told


def test_a_canvas_is_not_said_to_be_hinged():
    assert "hinged" not in notes(all_designs()["canvas"])
