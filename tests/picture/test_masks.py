"""Which pixels regions, rim and sides cover."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from skimage.draw import polygon2mask

from framing_palette.errors import FieldError
from framing_palette.picture import (
    Part,
    Region,
    Role,
    ellipse,
    rectangle,
    region_mask,
    rim_mask,
    rim_side_masks,
)
from framing_palette.picture.masks import polygon_mask

UNIT = st.floats(0, 1)


def region(*parts):
    return Region("drawn", Role.FOCUS, parts)


def test_a_rectangle_covers_exactly_its_pixels():
    mask = polygon_mask(rectangle(0.25, 0.5, 0.75, 1.0), 40, 80)
    wanted = np.zeros((40, 80), bool)
    wanted[20:, 20:60] = True
    assert np.array_equal(mask, wanted)


@given(st.lists(st.tuples(UNIT, UNIT), min_size=3, max_size=3, unique=True))
def test_triangles_agree_with_an_independent_rasteriser_off_the_edges(points):
    ours = polygon_mask(tuple(points), 30, 50)
    corners = np.array([(y * 30 - 0.5, x * 50 - 0.5) for x, y in points])
    theirs = polygon2mask((30, 50), corners)
    differing = np.argwhere(ours != theirs)
    for row, column in differing:  # only pixel centres on an edge may differ
        assert distance_to_edges(corners, (row, column)) < 1e-6


def distance_to_edges(corners, point):
    ends = np.roll(corners, -1, axis=0)
    way = ends - corners
    length = np.maximum((way**2).sum(axis=1), 1e-30)
    along = np.clip(((np.array(point) - corners) * way).sum(axis=1) / length, 0, 1)
    return np.hypot(*(corners + along[:, None] * way - point).T).min()


def test_a_lasso_that_crosses_itself_covers_both_loops():
    bow = ((0.1, 0.1), (0.9, 0.9), (0.9, 0.1), (0.1, 0.9))
    mask = polygon_mask(bow, 100, 100)
    assert mask[50, 20]
    assert mask[50, 80]
    assert not mask[20, 50]


def test_a_loop_drawn_twice_stays_inside():
    twice = rectangle(0.2, 0.2, 0.8, 0.8) * 2
    assert polygon_mask(twice, 10, 10).sum() == 36


def test_parts_add_and_subtract_in_order():
    whole, hole = rectangle(0, 0, 1, 1), rectangle(0.25, 0.25, 0.75, 0.75)
    ring = region_mask(region(Part(whole), Part(hole, subtract=True)), 40, 40)
    assert ring.sum() == 1600 - 400
    refilled = region_mask(region(Part(whole), Part(hole, subtract=True), Part(hole)), 40, 40)
    assert refilled.all()


def test_a_region_that_is_subtracted_away_is_refused():
    whole = rectangle(0, 0, 1, 1)
    with pytest.raises(FieldError, match='region "drawn" is empty inside the picture'):
        region_mask(region(Part(whole), Part(whole, subtract=True)), 40, 40)


def test_a_region_smaller_than_a_pixel_covers_the_pixel_under_it():
    speck = rectangle(0.501, 0.501, 0.502, 0.502)
    mask = region_mask(region(Part(speck)), 10, 10)
    assert np.argwhere(mask).tolist() == [[5, 5]]
    corner = rectangle(0.9999, 0.9999, 1.0, 1.0)
    assert np.argwhere(region_mask(region(Part(corner)), 10, 10)).tolist() == [[9, 9]]


def test_what_reaches_out_of_the_picture_is_cut_off():
    mask = region_mask(region(Part(rectangle(-0.5, -0.5, 0.5, 1.4))), 20, 20)
    assert mask[:, :10].all()
    assert not mask[:, 10:].any()


def test_thousands_of_vertices_give_the_same_area_as_the_shape():
    angle = np.linspace(0, 2 * np.pi, 20_000, endpoint=False)
    circle = tuple(
        zip((0.5 + 0.4 * np.cos(angle)).tolist(), (0.5 + 0.4 * np.sin(angle)).tolist(), strict=True)
    )
    assert region_mask(region(Part(circle)), 500, 500).mean() == pytest.approx(
        np.pi * 0.16, rel=1e-3
    )
    assert region_mask(region(Part(ellipse(0.1, 0.1, 0.9, 0.9))), 500, 500).mean() == pytest.approx(
        np.pi * 0.16, rel=2e-3
    )


def test_the_rim_is_as_deep_as_asked_on_every_side():
    mask = rim_mask(100, 200)
    assert mask[:6].all()
    assert mask[:, -6:].all()
    assert not mask[6:-6, 6:-6].any()
    assert rim_mask(100, 200, depth=0.5).all()


@given(st.integers(1, 40), st.integers(1, 40), st.floats(0.01, 0.5))
def test_the_four_sides_make_up_the_rim(rows, columns, depth):
    sides = rim_side_masks(rows, columns, depth=depth)
    rim = rim_mask(rows, columns, depth=depth)
    assert list(sides) == ["top", "right", "bottom", "left"]
    assert np.array_equal(np.logical_or.reduce(list(sides.values())), rim)
    assert rim[0].all()
    assert rim[:, 0].all()


@pytest.mark.parametrize("depth", [0, -0.1, 0.6, float("nan")])
def test_an_impossible_depth_of_the_rim_is_refused(depth):
    with pytest.raises(FieldError, match="depth of the rim"):
        rim_mask(10, 10, depth=depth)
