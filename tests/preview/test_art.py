"""The picture in its place."""

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000, lab_d50_to_linear_srgb, srgb_u8_to_lab_d50
from framing_palette.preview import Easel, easels, render
from framing_palette.preview.art import linear_picture, placed_picture, working_picture
from framing_palette.preview.grids import Box
from framing_palette.preview.plans import Rect
from tests.preview.frames import SHOP, busy_picture, picture, simple

ART = Rect(0.0, 0.0, 120.0, 80.0)


def test_reducing_keeps_the_mean_light_and_not_the_mean_of_the_colours():
    lab = np.zeros((40, 60, 3), np.float32)
    lab[::2, :, 0] = 100.0  # black and white lines: half the light, far above the middle grey
    lines = type(picture())(lab, None, picture().colour_trust, 60, 40)
    grey = placed_picture(lines, ART, Box(0, 4, 0, 6), under="D50")
    assert grey == pytest.approx(np.full((4, 6, 3), 0.5), abs=2e-3)


def test_a_picture_reduced_by_stripes_is_the_whole_picture_reduced():
    import cv2

    art = busy_picture(333, 500)
    small = placed_picture(art, Rect(0, 0, 150, 99.9), Box(0, 67, 0, 101), under="D50")
    whole = lab_d50_to_linear_srgb(art.lab_d50)
    assert small == pytest.approx(
        cv2.resize(whole, (101, 67), interpolation=cv2.INTER_AREA), abs=1e-5
    )


def test_a_picture_smaller_than_its_place_is_taken_as_it_is():
    art = busy_picture(20, 30)
    as_it_is = placed_picture(art, ART, Box(0, 200, 0, 300), under="D50")
    assert np.array_equal(as_it_is, linear_picture(art))


def test_another_light_reaches_every_stripe():
    art = busy_picture(100, 150)
    warm = placed_picture(art, ART, Box(0, 50, 0, 75), under="A")
    day = placed_picture(art, ART, Box(0, 50, 0, 75), under="D50")
    assert (np.abs(warm - day).max(axis=(1, 2)) > 1e-4).all()


def test_a_large_picture_is_kept_reduced_and_looks_the_same(monkeypatch):
    art = busy_picture(700, 1050)
    plain = render(simple(), art, SHOP, width_px=300)
    monkeypatch.setattr(easels, "_LARGE_PX", 100_000)
    monkeypatch.setattr("framing_palette.preview.art._WORKING_PX", 200_000)
    kept = working_picture(art)
    assert kept.shape == (350, 525, 3)
    easel = Easel()
    reduced = render(simple(), art, SHOP, width_px=300, easel=easel)
    lab_d50 = [srgb_u8_to_lab_d50(done.srgb) for done in (reduced, plain)]
    assert np.quantile(delta_e_2000(*lab_d50), 0.999) < 1.0
    # Printed larger than what is kept, it is taken from the whole again.
    large = render(simple(), art, SHOP, width_px=1200, easel=easel)
    monkeypatch.undo()
    assert np.array_equal(large.srgb, render(simple(), art, SHOP, width_px=1200).srgb)
