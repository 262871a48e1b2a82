import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import WHITE_D50_XYZ, WHITE_D65_XYZ, adapt
from framing_palette.colour.adaptation import adaptation_matrix
from framing_palette.errors import ShapeError

XYZ = st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))


@pytest.mark.parametrize(("ours", "theirs"), [("bradford", "Bradford"), ("cat16", "CAT16")])
def test_both_transforms_agree_with_an_independent_library(science, ours, theirs):
    matrix = science.adaptation.matrix_chromatic_adaptation_VonKries(
        WHITE_D65_XYZ, WHITE_D50_XYZ, transform=theirs
    )
    assert (
        np.abs(adaptation_matrix(WHITE_D65_XYZ, WHITE_D50_XYZ, transform=ours) - matrix).max()
        < 1e-9
    )


@pytest.mark.parametrize("transform", ["bradford", "cat16"])
def test_a_white_becomes_the_other_white(transform):
    adapted = adapt(WHITE_D65_XYZ, WHITE_D65_XYZ, WHITE_D50_XYZ, transform=transform)
    assert adapted == pytest.approx(WHITE_D50_XYZ, abs=1e-12)


def test_the_whites_are_those_of_the_standards():
    # CIE 015:2018: D50 96.42 100 82.51; D65 95.04 100 108.88 (rounded from the chromaticities).
    assert np.abs(WHITE_D50_XYZ - [0.9642, 1, 0.8251]).max() < 2e-4
    assert np.abs(WHITE_D65_XYZ - [0.9504, 1, 1.0888]).max() < 4e-4


@given(XYZ)
def test_there_and_back_is_where_it_was(xyz):
    there = adapt(xyz, WHITE_D65_XYZ, WHITE_D50_XYZ)
    assert adapt(there, WHITE_D50_XYZ, WHITE_D65_XYZ) == pytest.approx(xyz, abs=1e-12)


@given(XYZ, st.floats(0, 3))
def test_twice_the_light_stays_twice_the_light(xyz, times):
    once = adapt(xyz, WHITE_D65_XYZ, WHITE_D50_XYZ)
    assert adapt(np.array(xyz) * times, WHITE_D65_XYZ, WHITE_D50_XYZ) == pytest.approx(
        once * times, abs=1e-12
    )


def test_any_leading_axes_are_kept():
    xyz = np.random.default_rng(1).random((2, 3, 3))
    adapted = adapt(xyz, WHITE_D65_XYZ, WHITE_D50_XYZ)
    assert adapted[1, 2] == pytest.approx(adapt(xyz[1, 2], WHITE_D65_XYZ, WHITE_D50_XYZ))


def test_hostile_numbers_stay_with_their_colour():
    adapted = adapt([[np.nan, 0, 0], [0, 0, 0]], WHITE_D65_XYZ, WHITE_D50_XYZ)
    assert np.isnan(adapted[0]).all()
    assert adapted[1].tolist() == [0, 0, 0]


def test_wrong_shapes_are_refused_by_name():
    with pytest.raises(ShapeError, match=r"xyz .*\(2,\)"):
        adapt([1, 2], WHITE_D65_XYZ, WHITE_D50_XYZ)
    with pytest.raises(ShapeError, match="white_xyz"):
        adapt([1, 2, 3], [1, 1], WHITE_D50_XYZ)
