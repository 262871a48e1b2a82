import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import (
    delta_e_2000_matrix,
    iscc_nbs_names,
    plain_name,
    plain_names,
    srgb_u8_to_lab_d50,
)
from framing_palette.colour.table_files import table
from framing_palette.errors import FieldError, ShapeError

LAB = st.tuples(st.floats(0, 100), st.floats(-90, 90), st.floats(-90, 90))


def name_of(red, green, blue):
    return plain_name(srgb_u8_to_lab_d50(np.array([red, green, blue], np.uint8)))


@pytest.mark.parametrize(
    ("lab", "name"),
    [
        ([97, 0, 0], "white"),
        ([89, 0.5, 0.5], "soft white"),
        ([86, 0, 0], "soft white"),
        ([94, 0.5, 5], "warm white"),
        ([94, -1, -4], "cold white"),
        ([94, 4, 1], "pinkish white"),
        ([94, 4, -0.5], "pinkish white"),
        ([94, -4, 1], "greenish white"),
        ([94, 2, -4], "purplish white"),
        ([94, 0, 9], "ivory"),
        ([90, 1, 16], "cream"),
        ([0, 0, 0], "black"),
        ([19, 2, -2], "black"),
        ([42, 37, 31], "brick red"),
        ([15, 2, -22], "navy blue"),
    ],
)
def test_everyday_colours_have_their_everyday_names(lab, name):
    assert plain_name(lab) == name


@pytest.mark.parametrize(
    ("pixel", "word"),
    [
        ((200, 30, 40), "red"),
        ((20, 60, 160), "blue"),
        ((40, 120, 50), "green"),
        ((240, 210, 60), "yellow"),
        ((230, 120, 30), "orange"),
        ((110, 40, 130), "purple"),
        ((90, 60, 40), "brown"),
        ((240, 170, 190), "pink"),
        ((128, 128, 128), "grey"),
        ((30, 30, 30), "black"),
        ((255, 255, 255), "white"),
        ((100, 100, 30), "olive"),
    ],
)
def test_the_basic_colour_words_are_where_people_put_them(pixel, word):
    assert word in name_of(*pixel)


def test_every_block_centre_has_its_own_spoken_name():
    columns = table("colour_names.csv")
    centres = np.array([columns[axis] for axis in "Lab"], float).T
    assert iscc_nbs_names(centres) == list(columns["name"])
    coloured = (centres[:, 0] > 20) & (centres[:, 0] < 85)  # whites and black have limits instead
    spoken = np.array(plain_names(centres))[coloured]
    assert len(set(spoken)) == coloured.sum()


@given(LAB)
def test_the_name_is_that_of_the_nearest_block_centre(lab):
    columns = table("colour_names.csv")
    centres = np.array([columns[axis] for axis in "Lab"], float).T
    distances = delta_e_2000_matrix([lab], centres)[0]
    [name] = iscc_nbs_names([lab])
    assert distances[columns["name"].index(name)] == distances.min()


@given(LAB)
def test_a_list_names_each_colour_as_alone(lab):
    assert plain_names([lab, [50, 0, 0]]) == [plain_name(lab), "mid grey"]


@given(st.floats(87, 100), st.floats(0, 6.9), st.floats(0, 360))
def test_every_light_near_neutral_is_called_some_white(lightness, chroma, hue):
    angle = np.radians(hue)
    assert "white" in plain_name([lightness, chroma * np.cos(angle), chroma * np.sin(angle)])


def test_names_are_spelt_the_british_way():
    assert not [name for name in table("colour_names.csv")["name"] if "gray" in name]


def test_no_colours_have_no_names():
    assert plain_names(np.empty((0, 3))) == []


@pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf])
def test_a_colour_that_is_not_a_number_is_not_named(bad):
    with pytest.raises(FieldError, match="finite"):
        plain_name([50, bad, 0])


def test_wrong_shapes_are_refused_with_the_shape_they_got():
    with pytest.raises(ShapeError, match=r"\(2, 3\)"):
        plain_name(np.zeros((2, 3)))
    with pytest.raises(ShapeError, match=r"\(2,\)"):
        plain_name([50, 0])
    with pytest.raises(ShapeError, match=r"\(3,\)"):
        plain_names([50, 0, 0])
