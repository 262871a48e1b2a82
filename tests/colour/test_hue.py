import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import chroma, hue_deg, metric_hue_difference
from framing_palette.errors import ShapeError

AXIS = st.floats(-128, 128)
LAB = st.tuples(st.floats(0, 100), AXIS, AXIS)


def test_chroma_and_hue_agree_with_an_independent_library(science):
    lab = np.random.default_rng(1).random((500, 3)) * [100, 200, 200] - [0, 100, 100]
    lch = science.Lab_to_LCHab(lab)
    assert np.allclose(chroma(lab), lch[:, 1], atol=1e-12)
    assert np.allclose(hue_deg(lab), lch[:, 2], atol=1e-10)


@pytest.mark.parametrize(
    ("a", "b", "hue"), [(1, 0, 0), (0, 1, 90), (-1, 0, 180), (0, -1, 270), (0, 0, 0), (1, 1, 45)]
)
def test_hue_turns_anticlockwise_from_the_red_axis(a, b, hue):
    assert hue_deg([50, a, b]) == pytest.approx(hue)


@given(LAB)
def test_hue_stays_below_360(lab):
    assert 0 <= hue_deg(lab) < 360


@pytest.mark.parametrize("dtype", [np.float32, np.float64])
def test_a_hue_a_hair_below_the_red_axis_does_not_come_out_as_360(dtype):
    assert hue_deg(np.array([50, 100, -1e-30], dtype)) < 360


@given(LAB, LAB)
def test_hue_lightness_and_chroma_parts_make_up_the_cielab_difference(lab_1, lab_2):
    whole = np.sum((np.array(lab_1) - lab_2) ** 2)
    parts = (lab_1[0] - lab_2[0]) ** 2 + (chroma(lab_1) - chroma(lab_2)) ** 2
    assert parts + metric_hue_difference(lab_1, lab_2) ** 2 == pytest.approx(whole, abs=1e-8)


@given(LAB, LAB)
def test_swapping_the_colours_turns_the_hue_difference_about(lab_1, lab_2):
    there, back = metric_hue_difference(lab_1, lab_2), metric_hue_difference(lab_2, lab_1)
    assert abs(there) == pytest.approx(abs(back), abs=1e-10)


def test_the_sign_of_a_hue_difference_is_that_of_the_shorter_turn():
    assert metric_hue_difference([50, 10, -1], [50, 10, 1]) > 0
    assert metric_hue_difference([50, 10, 1], [50, 10, -1]) < 0


def test_any_leading_axes_broadcast():
    lab = np.random.default_rng(2).random((2, 1, 3, 3)) * 50
    assert chroma(lab).shape == hue_deg(lab).shape == (2, 1, 3)
    assert metric_hue_difference(lab, lab[0, 0]).shape == (2, 1, 3)


@pytest.mark.parametrize("measure", [chroma, hue_deg, lambda lab: metric_hue_difference(lab, lab)])
def test_a_nan_stays_a_nan(measure):
    assert np.isnan(measure([50, np.nan, 0]))


@pytest.mark.parametrize("measure", [chroma, hue_deg, lambda lab: metric_hue_difference(lab, lab)])
def test_a_wrong_shape_is_refused(measure):
    with pytest.raises(ShapeError, match=r"\(2,\)"):
        measure([50, 10])
