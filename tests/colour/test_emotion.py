import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import activity, heat, weight
from framing_palette.errors import ShapeError

FEELINGS = [heat, weight, activity]
AXIS = st.floats(-120, 120)


@given(st.floats(0, 99), AXIS, AXIS)
def test_a_darker_colour_of_the_same_hue_is_heavier(lightness, a, b):
    assert weight([lightness, a, b]) > weight([lightness + 1, a, b])


@given(st.floats(0, 100), st.floats(0, 1))
def test_lightness_does_not_warm_or_cool(lightness, share):
    assert heat([lightness, 40 * share, 30]) == heat([50, 40 * share, 30])


@pytest.mark.parametrize("feeling", FEELINGS)
def test_any_leading_axes_are_kept(feeling):
    lab = np.random.default_rng(1).random((2, 3, 3)) * 60
    assert feeling(lab).shape == (2, 3)
    assert feeling(lab)[1, 2] == pytest.approx(feeling(lab[1, 2]))


@pytest.mark.parametrize("feeling", FEELINGS)
def test_hostile_numbers_stay_with_their_colour(feeling):
    values = feeling([[50, np.nan, np.nan], [0, 0, 0], [50, 10, 10]])
    assert np.isfinite(values[1:]).all()
    assert np.isnan(feeling([np.nan, np.nan, np.nan]))


@pytest.mark.parametrize("feeling", FEELINGS)
def test_no_colours_have_no_feeling(feeling):
    assert feeling(np.empty((0, 3))).shape == (0,)


@pytest.mark.parametrize("feeling", FEELINGS)
def test_a_wrong_shape_is_refused(feeling):
    with pytest.raises(ShapeError, match=r"\(4,\)"):
        feeling([50, 1, 2, 3])
