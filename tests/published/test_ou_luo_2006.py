"""Ou, Luo 2006, A colour harmony model for two-colour combinations, Color Research and
Application 31(3):191-204.

The three effects are written out here from the paper's equations, one colour pair at a time in
plain arithmetic, apart from the array code under test.
"""

import math

import numpy as np
import pytest

from framing_palette.colour import harmony


def hue_effect(lightness, c, h):
    e_c = 0.5 + 0.5 * math.tanh(-2 + 0.5 * c)
    h_s = -0.08 - 0.14 * math.sin(math.radians(h + 50)) - 0.07 * math.sin(math.radians(2 * h + 90))
    e_y = (0.22 * lightness - 12.8) / 10 * math.exp((90 - h) / 10 - math.exp((90 - h) / 10))
    return e_c * (h_s + e_y)


def ou_luo(lch_1, lch_2):
    (l_1, c_1, h_1), (l_2, c_2, h_2) = lch_1, lch_2
    turn = abs(h_1 - h_2)
    d_h = 2 * math.sqrt(c_1 * c_2) * math.sin(math.radians(min(turn, 360 - turn)) / 2)
    d_c = math.sqrt(d_h**2 + ((c_1 - c_2) / 1.46) ** 2)
    h_c = 0.04 + 0.53 * math.tanh(0.8 - 0.045 * d_c)
    h_l = 0.28 + 0.54 * math.tanh(-3.88 + 0.029 * (l_1 + l_2))
    h_l += 0.14 + 0.15 * math.tanh(-2 + 0.2 * abs(l_1 - l_2))
    return h_c + h_l + hue_effect(*lch_1) + hue_effect(*lch_2)


def lab(lightness, c, h):
    return [lightness, c * math.cos(math.radians(h)), c * math.sin(math.radians(h))]


@pytest.mark.parametrize("seed", range(40))
def test_harmony_follows_the_three_published_effects(seed):
    lch_1, lch_2 = np.random.default_rng(seed).random((2, 3)) * [100, 90, 360]
    assert harmony(lab(*lch_1), lab(*lch_2)) == pytest.approx(ou_luo(lch_1, lch_2), abs=1e-9)


def test_light_pairs_of_one_hue_are_more_harmonious_than_dark_pairs_of_opposite_hues():
    assert harmony(lab(80, 30, 240), lab(60, 30, 240)) > harmony(lab(30, 60, 300), lab(30, 60, 120))
