"""Ou, Luo, Woodcock, Wright 2004, A study of colour emotion and colour preference. Part I: colour
emotions for single colours, Color Research and Application 29(3):232-240.

Values worked out by hand from the three published equations.
"""

import pytest

from framing_palette.colour import activity, heat, weight


@pytest.mark.parametrize(
    ("lab", "expected"),
    [
        # The paper: heat = -0.5 + 0.02 C^1.07 cos(h - 50)
        ([50, 0, 0], -0.5),
        ([50, 100 * 0.6427876097, 100 * 0.7660444431], -0.5 + 0.02 * 100**1.07),
        ([50, -100 * 0.6427876097, -100 * 0.7660444431], -0.5 - 0.02 * 100**1.07),
        ([50, 100 * 0.7660444431, -100 * 0.6427876097], -0.5),
    ],
)
def test_heat_peaks_at_a_hue_of_50_degrees(lab, expected):
    assert heat(lab) == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize(
    ("lab", "expected"),
    [
        # The paper: weight = -1.8 + 0.04 (100 - L) + 0.45 cos(h - 100)
        ([100, -0.1736481777, 0.9848077530], -1.35),
        ([0, -0.1736481777, 0.9848077530], 2.65),
        ([50, 0.9848077530, 0.1736481777], 0.2),
        ([50, 0.1736481777, -0.9848077530], -0.25),
    ],
)
def test_weight_falls_with_lightness_and_peaks_at_a_hue_of_100_degrees(lab, expected):
    assert weight(lab) == pytest.approx(expected, abs=1e-8)


@pytest.mark.parametrize(
    ("lab", "expected"),
    [
        # The paper: activity = -2.1 + 0.06 [(L - 50)^2 + (a - 3)^2 + ((b - 17) / 1.4)^2]^(1/2)
        ([50, 3, 17], -2.1),
        ([80, 3, 17], -0.3),
        ([50, 43, 17], 0.3),
        ([50, 3, 87], 0.9),
        ([80, 43, 17], 0.9),
    ],
)
def test_activity_grows_with_the_distance_from_a_dull_brown(lab, expected):
    assert activity(lab) == pytest.approx(expected, abs=1e-9)
