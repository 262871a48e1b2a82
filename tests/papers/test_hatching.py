"""Hatching stays inside its outline and covers it evenly."""

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.papers.hatching import hatched
from framing_palette.papers.shapes import Pen

SQUARE = ((0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0))
NOTCHED = ((0, 0), (40, 0), (40, 30), (20, 30), (20, 10), (0, 10))


@given(st.sampled_from([0.0, 30.0, 45.0, -45.0, 60.0, 90.0]))
def test_the_lines_times_their_distance_come_to_the_area(angle):
    lines = hatched(SQUARE, angle_deg=angle, apart=0.25, pen=Pen())
    length = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in ((x.start, x.end) for x in lines))
    assert length * 0.25 == pytest.approx(40 * 30, rel=0.02)


def test_a_notch_is_left_free():
    lines = list(hatched(NOTCHED, angle_deg=0, apart=1.0, pen=Pen()))
    for line in lines:
        if line.start[1] > 10.01:
            assert min(line.start[0], line.end[0]) >= 20 - 1e-9
    assert any(line.start[1] > 10.01 for line in lines)


def test_lines_run_in_the_direction_that_was_told():
    for line in hatched(SQUARE, angle_deg=45, apart=3.0, pen=Pen()):
        across, up = line.end[0] - line.start[0], line.start[1] - line.end[1]
        assert across == pytest.approx(up)
