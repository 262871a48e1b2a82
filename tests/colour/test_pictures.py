"""Whole pictures to linear light the short way."""

import numpy as np
import pytest

from framing_palette.colour import lab_d50_to_linear_srgb
from framing_palette.colour.pictures import lab_picture_to_linear_srgb
from framing_palette.errors import ShapeError


@pytest.mark.parametrize("shape", [(1, 1), (3, 700), (400, 130), (2, 20_000)])
def test_the_short_way_agrees_with_the_formulas_for_every_colour_and_shape(shape):
    rng = np.random.default_rng(5)
    lab = rng.uniform((0, -120, -120), (100, 120, 120), (*shape, 3))
    lab[..., 0] *= rng.random(shape) ** 2  # the straight line near black counts too
    short = lab_picture_to_linear_srgb(lab.astype(np.float32))
    assert short.dtype == np.float32
    assert np.abs(short - lab_d50_to_linear_srgb(lab)).max() < 5e-6


def test_a_picture_cut_out_of_another_is_read_where_it_lies():
    lab = np.random.default_rng(1).uniform(0, 80, (40, 60, 3)).astype(np.float32)
    part = lab[5:30, 7:44]
    whole = lab_picture_to_linear_srgb(lab)
    assert lab_picture_to_linear_srgb(part) == pytest.approx(whole[5:30, 7:44], abs=1e-6)


@pytest.mark.parametrize("shape", [(0, 5, 3), (5, 0, 3)])
def test_nothing_at_all_stays_nothing(shape):
    assert lab_picture_to_linear_srgb(np.empty(shape, np.float32)).shape == shape


def test_a_colour_that_is_not_a_number_harms_no_other_pixel():
    lab = np.full((2, 3, 3), 50.0, np.float32)
    lab[1, 2, 0] = np.nan
    linear = lab_picture_to_linear_srgb(lab)
    assert np.isnan(linear[1, 2]).all()
    assert np.isfinite(linear.reshape(-1, 3)[:5]).all()


def test_two_channels_are_no_picture():
    with pytest.raises(ShapeError, match="2, 3, 2"):
        lab_picture_to_linear_srgb(np.zeros((2, 3, 2), np.float32))
