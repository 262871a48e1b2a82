"""Outlines to draw with."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.picture import ellipse, lasso, outline_fault, rectangle
from framing_palette.picture.masks import polygon_mask
from framing_palette.picture.outlines import outline_area

UNIT = st.floats(0, 1)


@given(UNIT, UNIT, UNIT, UNIT)
def test_a_rectangle_is_the_same_from_any_pair_of_opposite_corners(a, b, c, d):
    assert rectangle(a, b, c, d) == rectangle(c, d, a, b) == rectangle(a, d, c, b)


def test_an_ellipse_fills_pi_quarters_of_its_rectangle():
    area = outline_area(ellipse(0.1, 0.2, 0.7, 0.5))
    assert area == pytest.approx(np.pi / 4 * 0.6 * 0.3, rel=0.002)


def test_a_lasso_keeps_its_shape_with_far_fewer_points():
    angle = np.linspace(0, 2 * np.pi, 4000, endpoint=False)
    reach = 0.3 + 0.05 * np.sin(5 * angle)
    hand = tuple(
        zip(
            (0.5 + reach * np.cos(angle)).tolist(),
            (0.5 + reach * np.sin(angle)).tolist(),
            strict=True,
        )
    )
    simple = lasso(hand)
    assert len(simple) < 120
    before, after = (polygon_mask(points, 400, 400) for points in (hand, simple))
    assert (before != after).mean() < 0.003


def test_a_lasso_of_few_points_or_on_one_spot_is_left_as_it_is():
    few = ((0.1, 0.1), (0.5, 0.1), (0.3, 0.6))
    assert lasso(few) == few
    spot = ((0.5, 0.5),) * 9
    assert outline_fault(lasso(spot)) is not None


@given(st.lists(st.tuples(UNIT, UNIT), min_size=3, max_size=12))
def test_an_outline_is_refused_exactly_when_it_spans_nothing(points):
    spread = np.linalg.svd(np.array(points) - np.mean(points, axis=0), compute_uv=False)
    fault = outline_fault(tuple(points))
    low, high = np.min(points, axis=0), np.max(points, axis=0)
    outside = (high <= 0).any() or (low >= 1).any()
    if fault is None:
        assert spread[1] > 0
        assert not outside
    elif fault.problem == "has no area":
        assert spread[1] < 1e-4
