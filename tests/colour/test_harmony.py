import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import harmony
from framing_palette.errors import ShapeError

AXIS = st.floats(-120, 120)
LAB = st.tuples(st.floats(0, 100), AXIS, AXIS)


@given(LAB, LAB)
def test_the_order_of_two_colours_does_not_matter(lab_1, lab_2):
    assert harmony(lab_1, lab_2) == pytest.approx(harmony(lab_2, lab_1), abs=1e-12)


@given(st.floats(0, 60), st.floats(0, 30), st.floats(0.1, 10))
def test_two_greys_made_lighter_by_the_same_step_harmonise_better(light, apart, step):
    before = harmony([light, 0, 0], [light + apart, 0, 0])
    assert harmony([light + step, 0, 0], [light + apart + step, 0, 0]) > before


def test_any_leading_axes_broadcast():
    lab = np.random.default_rng(1).random((4, 5, 3)) * 60
    both = harmony(lab, lab[0])
    assert both.shape == (4, 5)
    assert both[3, 2] == pytest.approx(harmony(lab[3, 2], lab[0, 2]))


def test_greys_and_black_have_a_finite_harmony():
    assert np.isfinite(harmony([[0, 0, 0], [50, 0, 0], [100, 0, 0]], [0, 0, 0])).all()


def test_a_nan_stays_a_nan():
    assert np.isnan(harmony([np.nan, 0, 0], [50, 0, 0]))


def test_no_colours_have_no_harmony():
    assert harmony(np.empty((0, 3)), [50, 0, 0]).shape == (0,)


def test_a_wrong_shape_is_refused_by_name():
    with pytest.raises(ShapeError, match="lab_d50_2"):
        harmony([50, 0, 0], [50, 0])
