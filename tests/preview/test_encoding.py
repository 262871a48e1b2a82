"""From linear light to screen values."""

import cv2
import numpy as np

from framing_palette.colour import linear_to_srgb, srgb_to_linear
from framing_palette.preview.encoding import clipped_pixels, srgb_u8

EVERY = np.linspace(0, 1, 3 * 40_000, dtype=np.float32).reshape(200, 200, 3)


def test_every_level_is_within_one_of_the_standards_curve():
    exact = linear_to_srgb(EVERY.astype(np.float64)) * 255
    assert np.abs(srgb_u8(EVERY) - exact).max() <= 0.5 + 0.06


def test_an_older_opencv_gives_the_same_levels(monkeypatch):
    now = srgb_u8(EVERY)
    monkeypatch.setattr(cv2, "__version__", "4.10.0")
    assert np.array_equal(srgb_u8(EVERY), now)


def test_what_a_screen_cannot_show_is_clipped_and_counted():
    linear = np.array([[[-0.2, 0.5, 0.5], [0.5, 1.3, 0.5], [0.0, 1.0, 0.5]]], np.float32)
    assert srgb_u8(linear)[0, 0, 0] == 0
    assert srgb_u8(linear)[0, 1, 1] == 255
    assert clipped_pixels(linear) == 2
    assert clipped_pixels(linear[:, 2:]) == 0
    assert clipped_pixels(np.empty((0, 3, 3), np.float32)) == 0


def test_every_8_bit_level_survives_the_round_trip():
    levels = np.arange(256, dtype=np.uint8).repeat(3).reshape(1, 256, 3)
    linear = srgb_to_linear(levels / 255.0).astype(np.float32)
    assert np.array_equal(srgb_u8(linear), levels)
