import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.colour import delta_e_2000, drawn_colours
from framing_palette.errors import FieldError, ShapeError

COLOURS = np.array([[50, 60, 40], [30, 10, -60], [95, 0, 0], [5, 0, 0], [70, -40, 20]], float)


@pytest.mark.parametrize("mean", [0.5, 2.0, 5.0])
def test_the_draws_have_the_mean_difference_asked_for(mean):
    drawn = drawn_colours(COLOURS, mean_delta_e=mean, draws=4000, seed=1)
    means = delta_e_2000(COLOURS, drawn).mean(axis=0)
    # Four standard errors of the mean of 4000 draws of a length whose spread is 0.42 of its mean.
    assert np.abs(means / mean - 1).max() < 4 * 0.42 / np.sqrt(4000)


def test_the_draws_lie_evenly_about_the_colour():
    offsets = drawn_colours(COLOURS, mean_delta_e=1.0, draws=4000, seed=2) - COLOURS
    spread = offsets.std(axis=0)
    assert np.abs(offsets.mean(axis=0) / spread).max() < 0.15


def test_the_same_seed_draws_the_same_and_another_seed_does_not():
    first, again, other = (
        drawn_colours(COLOURS, mean_delta_e=2, draws=3, seed=seed) for seed in (7, 7, 8)
    )
    assert np.array_equal(first, again)
    assert not np.array_equal(first, other)


@settings(max_examples=20)
@given(st.tuples(st.floats(0, 100), st.floats(-80, 80), st.floats(-80, 80)))
def test_no_error_draws_the_colour_itself(lab):
    assert drawn_colours(lab, mean_delta_e=0, draws=2, seed=1).tolist() == [list(lab)] * 2


def test_any_leading_axes_are_kept_behind_the_draws():
    drawn = drawn_colours(np.zeros((2, 4, 3)), mean_delta_e=1, draws=5, seed=1)
    assert drawn.shape == (5, 2, 4, 3)


def test_a_nan_spoils_its_own_colour_alone():
    drawn = drawn_colours([[np.nan, 0, 0], [50, 0, 0]], mean_delta_e=1, draws=4, seed=1)
    assert np.isnan(drawn[:, 0, 0]).all()
    assert np.isfinite(drawn[:, 1]).all()


def test_bad_requests_are_refused():
    with pytest.raises(ShapeError, match=r"\(2,\)"):
        drawn_colours([50, 0], mean_delta_e=1, draws=1, seed=1)
    for mean in (-1.0, np.nan, np.inf):
        with pytest.raises(FieldError, match="mean_delta_e"):
            drawn_colours(COLOURS, mean_delta_e=mean, draws=1, seed=1)
    with pytest.raises(FieldError, match="draws"):
        drawn_colours(COLOURS, mean_delta_e=1, draws=0, seed=1)
