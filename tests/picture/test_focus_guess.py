"""The guessed focus: where colour stands out from what lies round it."""

from pathlib import Path

import numpy as np
import pytest
import sklearn.datasets

from framing_palette.picture import Part, Region, Role, read_picture_file, region_mask
from framing_palette.picture.focus_guess import guessed_focus


def flat(lab, rows=40, columns=60):
    return np.broadcast_to(np.float32(lab), (rows, columns, 3)).copy()


def test_it_lies_round_the_one_striking_place():
    lab = flat((60, 0, 0), 120, 200)
    lab[60:84, 120:150] = 45, 60, 40
    outline = np.array(guessed_focus(lab))
    low, high = outline.min(axis=0), outline.max(axis=0)
    assert low[0] < 0.675 < high[0]
    assert low[1] < 0.6 < high[1]
    assert np.prod(high - low) < 0.25


def test_what_has_the_colour_of_the_edge_is_taken_for_ground():
    lab = flat((80, 0, 0), 120, 200)
    lab[:, :30] = lab[:, -30:] = 25, 0, 0  # a dark surround that reaches the edge
    lab[50:70, 60:80] = 25, 0, 0  # a dark place
    lab[50:70, 120:140] = 45, 50, 30  # a red place
    outline = np.array(guessed_focus(lab))
    assert 0.55 < outline[:, 0].mean() < 0.75


def test_an_even_picture_has_its_middle():
    outline = np.array(guessed_focus(flat((50, 0, 0))))
    middle = (outline.min(axis=0) + outline.max(axis=0)) / 2
    assert middle == pytest.approx([0.5, 0.52], abs=0.02)


@pytest.mark.parametrize("size", [(1, 1), (16, 16), (2, 300)])
def test_tiny_pictures_still_have_one(size):
    outline = np.array(guessed_focus(np.random.default_rng(0).uniform(0, 90, (*size, 3))))
    assert len(outline) >= 3
    assert outline.min() >= 0
    assert outline.max() <= 1


def test_the_dahlia_of_a_real_photograph_is_found():
    path = Path(sklearn.datasets.__file__).parent / "images" / "flower.jpg"
    lab = read_picture_file(path).lab_d50
    guess = Region("guess", Role.FOCUS, (Part(guessed_focus(lab)),))
    mask = region_mask(guess, *lab.shape[:2])
    petals = lab[..., 2] > 25
    assert petals[mask].mean() > 0.9
    assert petals[~mask].mean() < 0.12
