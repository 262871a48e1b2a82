"""Blocks laid over one another."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.pieces import Piece, lay
from framing_palette.preview.plans import Hole, Rect

CANVAS = Box(0, 30, 0, 40)


def even(box, light, **cover):
    return Piece(box, np.full((box.rows, box.columns, 3), light, np.float32), **cover)


@given(
    left=st.floats(1, 15), top=st.floats(1, 12), width=st.floats(0.2, 20), height=st.floats(0.2, 15)
)
def test_an_upright_rectangle_covers_its_true_area_to_a_part_of_a_pixel(left, top, width, height):
    grid = Grid(0.0, 0.0, 1.0)
    rect = Rect(left, top, left + width, top + height)
    box = grid.around(rect)
    rows, columns = grid.cover(rect, box)
    canvas = lay([even(box, 1.0, cover_rows=rows, cover_columns=columns)], CANVAS)
    assert canvas[..., 0].sum() == pytest.approx(width * height, rel=1e-4)


def test_what_is_laid_later_lies_on_top_and_mixes_on_its_edge():
    below = even(CANVAS, 0.2)
    box = Box(5, 10, 5, 10)
    cover = np.array([0.5, 1, 1, 1, 0.25], np.float32)
    above = even(box, 1.0, cover_rows=cover, cover_columns=np.ones(5, np.float32))
    canvas = lay([below, above], CANVAS)[..., 0]
    assert canvas[4, 7] == pytest.approx(0.2)
    assert canvas[5, 7] == pytest.approx(0.6)
    assert canvas[7, 7] == pytest.approx(1.0)
    assert canvas[9, 7] == pytest.approx(0.4)


def test_a_part_of_the_picture_is_the_part_of_the_whole():
    rng = np.random.default_rng(0)
    pieces = [
        Piece(
            Box(3, 23, 4, 34),
            rng.random((20, 30, 3), np.float32),
            rng.random(20, np.float32).round(),
            rng.random(30, np.float32),
        ),
        Piece(
            Box(10, 20, 0, 40),
            rng.random((10, 40, 3), np.float32),
            cover=rng.random((10, 40), np.float32),
        ),
    ]
    part = Box(7, 18, 9, 31)
    assert np.array_equal(lay(pieces, CANVAS)[part.within(CANVAS)], lay(pieces, part))


def test_blocks_meet_where_they_overlap_and_else_nowhere():
    assert Box(0, 10, 0, 10).meet(Box(5, 20, 8, 9)) == Box(5, 10, 8, 9)
    assert Box(0, 10, 0, 10).meet(Box(12, 20, 0, 5)).empty


def test_an_ovals_distance_is_zero_on_it_and_true_on_its_axes():
    grid = Grid(0.0, 0.0, 2.0)
    hole = Hole(Rect(10, 20, 50, 50), oval=True)
    distance, across, down = grid.oval_distance_mm(hole, Box(0, 140, 0, 120))
    row, column = 70, 20  # pixel middles at y = 35.25, x = 10.25
    assert distance[row, column] == pytest.approx(-0.25, abs=0.02)
    assert (across[row, column], down[row, column]) == pytest.approx((-1, 0), abs=0.05)
    inside = (distance < 0).sum() / 4.0
    assert inside == pytest.approx(np.pi * 20 * 15, rel=0.01)
