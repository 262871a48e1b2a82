"""Sharma, Wu, Dalal 2005, The CIEDE2000 color-difference formula: implementation notes, Color
Research and Application 30(1):21-30, table 1. Printed to four decimals."""

from pathlib import Path

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000, delta_e_2000_matrix

TABLE = np.genfromtxt(
    Path(__file__).with_name("ciede2000_sharma_2005.csv"), delimiter=",", skip_header=2
)
LAB_1, LAB_2, PUBLISHED = TABLE[:, 1:4], TABLE[:, 4:7], TABLE[:, 7]
HALF_A_UNIT = 5e-5


def test_the_table_holds_all_34_pairs():
    assert TABLE.shape == (34, 8)


@pytest.mark.parametrize("pair", range(34))
def test_each_published_pair_agrees_within_half_a_unit_of_the_last_digit(pair):
    assert abs(float(delta_e_2000(LAB_1[pair], LAB_2[pair])) - PUBLISHED[pair]) <= HALF_A_UNIT


@pytest.mark.parametrize("pair", range(34))
def test_each_published_pair_agrees_with_its_colours_swapped(pair):
    assert abs(float(delta_e_2000(LAB_2[pair], LAB_1[pair])) - PUBLISHED[pair]) <= HALF_A_UNIT


def test_the_published_pairs_agree_inside_arrays_large_enough_for_threads():
    times = 4_000
    difference = delta_e_2000(np.tile(LAB_1, (times, 1)), np.tile(LAB_2, (times, 1)))
    assert np.abs(difference - np.tile(PUBLISHED, times)).max() <= HALF_A_UNIT


def test_the_published_pairs_are_the_diagonal_of_their_matrix():
    assert np.abs(np.diag(delta_e_2000_matrix(LAB_1, LAB_2)) - PUBLISHED).max() <= HALF_A_UNIT
