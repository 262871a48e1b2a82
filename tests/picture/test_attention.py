"""Where the eye goes, and the pull of borders in closed form."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from framing_palette.colour import delta_e_2000
from framing_palette.errors import FieldError, ShapeError
from framing_palette.picture import border_strength, grey_pulls, pull, strength_map

MEAN = np.array([50.0, 10.0, -5.0])


def flat(lab, rows=40, columns=60):
    return np.broadcast_to(np.float32(lab), (rows, columns, 3)).copy()


def test_strength_is_the_difference_to_the_mean_of_the_art():
    lab = flat((40, 0, 0))
    lab[:, 30:] = 60, 30, 0
    strength = strength_map(lab)
    mean = np.array([50, 15, 0])
    assert strength[20, 5] == pytest.approx(delta_e_2000((40, 0, 0), mean), abs=1e-3)
    assert strength[20, 55] == pytest.approx(delta_e_2000((60, 30, 0), mean), abs=1e-3)


def test_a_flat_picture_has_no_strength_and_a_large_one_is_looked_at_smaller():
    assert strength_map(flat((30, 5, 5))).max() == pytest.approx(0, abs=1e-4)
    assert strength_map(flat((30, 5, 5), 1000, 2000)).shape == (200, 400)


def test_a_border_of_one_colour_pulls_by_its_own_difference():
    colours = np.array([[[80.0, 0, 0]], [[20.0, 40, 30]]])
    strength = border_strength(colours, np.ones((2, 1)), MEAN)
    assert strength == pytest.approx(delta_e_2000(colours[:, 0], MEAN))


@given(
    arrays(np.float64, (5, 3, 3), elements=st.floats(-60, 90)),
    arrays(np.float64, (5, 3), elements=st.floats(0.01, 1)),
)
def test_the_closed_form_equals_the_mean_over_a_painted_border(colours, shares):
    """A border painted pixel by pixel with each colour's share has the same mean strength."""
    count = np.round(shares * 100).astype(int).clip(1)
    painted = [
        delta_e_2000(np.repeat(c, n, axis=0), MEAN).mean()
        for c, n in zip(colours, count, strict=True)
    ]
    assert border_strength(colours, count, MEAN) == pytest.approx(np.array(painted))


def test_colours_without_a_share_do_not_count_and_no_share_at_all_is_unknown():
    colours = np.full((2, 2, 3), np.nan)
    colours[0, 0] = 80, 0, 0
    strength = border_strength(colours, [[1, 0], [0, 0]], MEAN)
    assert strength[0] == pytest.approx(float(delta_e_2000((80, 0, 0), MEAN)))
    assert np.isnan(strength[1])


def test_a_border_of_wrong_shape_is_refused():
    with pytest.raises(ShapeError):
        border_strength(np.zeros((2, 2, 4)), np.ones((2, 2)), MEAN)


def test_pull_is_one_where_border_and_focus_are_equally_strong():
    assert pull([10.0, 20.0], 20.0) == pytest.approx([0.5, 1.0])
    assert np.isfinite(pull([10.0], 0.0)).all()
    with pytest.raises(FieldError, match="focus strength"):
        pull([1.0], float("nan"))


def test_the_grey_nearest_to_the_mean_pulls_least_and_pull_grows_both_ways():
    greys = grey_pulls((52.0, 3.0, 3.0), 20.0)
    assert list(greys) == list(range(0, 101, 10))
    values = list(greys.values())
    least = values.index(min(values))
    assert list(greys)[least] == 50
    assert values[: least + 1] == sorted(values[: least + 1], reverse=True)
    assert values[least:] == sorted(values[least:])
