"""Surfaces made from a small tile."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.preview.patches import Patches, blended, meets
from framing_palette.preview.tiling import Extent, rows_used, spread, window_of


def blotches(rows=48, columns=64, seed=3):
    """A seamless tile of soft blotches, mean 1."""
    import cv2

    noise = np.random.default_rng(seed).standard_normal((rows, columns)).astype(np.float32)
    soft = cv2.GaussianBlur(np.tile(noise, (3, 3)), (0, 0), 2.0)[rows:-rows, columns:-columns]
    return np.asarray(1.0 + 0.2 * soft / soft.std(), np.float32)


def likeness_at(field, shift):
    """Correlation of a surface with itself, so far along its columns."""
    one, two = field[:, :-shift].ravel(), field[:, shift:].ravel()
    return float(np.corrcoef(one, two)[0, 1])


def test_the_tiles_own_period_cannot_be_found_in_the_surface():
    tile = blotches()
    field = spread(tile, Extent(300, 600, strip=False), seed=1)
    plain = np.tile(tile, (7, 10))[:300, :600]
    assert likeness_at(plain, 64) > 0.99
    assert max(likeness_at(field, shift) for shift in range(20, 200)) < 0.3


@pytest.mark.parametrize("strip", [True, False])
def test_mean_and_contrast_of_the_tile_stay(strip):
    tile = blotches()
    field = spread(tile, Extent(40 if strip else 200, 800, strip=strip), seed=2)
    assert field.mean() == pytest.approx(tile.mean(), rel=1e-4)
    assert field.std() == pytest.approx(tile.std(), rel=0.1)


def test_colours_stay_within_the_tiles_own_range():
    tile = np.stack([blotches(seed=s) for s in (1, 2, 3)], axis=-1) * [0.5, 0.2, 0.1]
    field = spread(tile.astype(np.float32), Extent(100, 300, strip=False), seed=2)
    assert (field.min(axis=(0, 1)) >= 0.97 * tile.min(axis=(0, 1))).all()
    assert (field.max(axis=(0, 1)) <= 1.03 * tile.max(axis=(0, 1))).all()


def test_a_gilded_line_stays_where_it_lies_across_a_strip():
    tile = np.full((30, 60), 0.5, np.float32)
    tile[12:15] = 1.0
    tile += np.random.default_rng(0).normal(0, 0.01, tile.shape).astype(np.float32)
    field = spread(tile, Extent(30, 500, strip=True), seed=5)
    assert field[12:15].min() > 0.85
    assert field[:10].max() < 0.6


def test_a_tile_as_wide_as_the_strip_is_not_moved_across_it_by_a_rounding():
    tile = np.full((300, 400), 0.1, np.float32)
    tile[250:280] = 1.0
    tile += np.random.default_rng(0).normal(0, 0.01, tile.shape).astype(np.float32)
    field = spread(tile, Extent(304, 2000, strip=True), seed=5)
    assert field.shape == (304, 2000)
    assert field[255:275].min() > 0.85
    assert field[:240].max() < 0.2


def test_grain_runs_unbroken_along_a_strip_wider_than_its_tile():
    rng = np.random.default_rng(8)
    lines = np.repeat(1.0 + 0.3 * rng.standard_normal((30, 1)), 90, axis=1)
    tile = (lines + rng.normal(0, 0.02, lines.shape)).astype(np.float32)
    field = spread(tile, Extent(70, 900, strip=True), seed=5)
    assert np.abs(np.diff(field, axis=1)).max() < 0.2  # a line that ended would step by 0.3
    assert field.mean(axis=1).std() > 0.2


def test_a_narrow_strip_of_a_large_tile_keeps_its_mean_and_contrast():
    tile = blotches(400, 64)
    field = spread(tile[: rows_used(Extent(9, 700, strip=True))], Extent(9, 700, strip=True), 3)
    assert field.shape == (9, 700)
    assert field.mean() == pytest.approx(tile.mean(), rel=0.03)
    assert field.std() == pytest.approx(tile.std(), rel=0.15)


def test_the_same_mark_never_comes_twice_in_a_row():
    tile = blotches(60, 200)
    tile[30:34, 90:94] = 2.5  # one mark that the eye would find
    tile[::7] += 0.02
    field = spread(tile, Extent(20, 3000, strip=True), seed=3)
    near = [abs(a[1] - b[1]) <= 24 and abs(a[0] - b[0]) <= 7 for a, b in pairwise(_laid(tile))]
    assert not any(near)
    marks = np.flatnonzero((field > 2.2).any(axis=0))
    begins = marks[np.flatnonzero(np.diff(marks, prepend=-99) > 10)]
    assert (np.diff(begins) != 112).all()  # from one patch to the next


def _laid(tile):
    """The places of forty patches laid one after another."""
    rng = np.random.default_rng(3)
    patches = Patches.of(tile, height=20, wraps=True, free=True)
    laid = [patches.first(rng)]
    for tries in zip(*patches.tries(rng, 40), strict=True):
        before = patches.grey(laid[-1], patches.width)[:, -patches.overlap :]
        laid.append(patches.best_after(tries, laid, before)[0])
    return laid


def test_the_same_seed_gives_the_same_surface_and_another_seed_another():
    tile = blotches()
    extent = Extent(100, 200, strip=False)
    assert np.array_equal(spread(tile, extent, 7), spread(tile, extent, 7))
    assert not np.array_equal(spread(tile, extent, 7), spread(tile, extent, 8))


@settings(max_examples=40, deadline=None)
@given(
    shape=st.tuples(st.integers(1, 24), st.integers(1, 24)),
    rows=st.integers(1, 90),
    columns=st.integers(1, 90),
    strip=st.booleans(),
)
def test_any_tile_covers_any_extent(shape, rows, columns, strip):
    tile = np.random.default_rng(1).uniform(0.5, 1.5, shape).astype(np.float32)
    field = spread(tile, Extent(rows, columns, strip=strip), seed=1)
    assert field.shape[0] >= min(rows, 1)
    assert field.shape == (rows, columns)
    assert np.isfinite(field).all()


def test_an_even_board_is_just_repeated():
    tile = (1.0 + 0.001 * blotches()).astype(np.float32)
    field = spread(tile, Extent(96, 128, strip=False), seed=1)
    assert likeness_at(field, 64) > 0.99


def test_a_photograph_whose_edges_do_not_meet_is_mirrored_or_cut_not_stepped():
    ramp = np.linspace(0.5, 1.5, 40, dtype=np.float32)[None].repeat(40, 0)
    assert not meets(ramp, axis=1)
    assert meets(ramp, axis=0)
    field = spread(ramp, Extent(40, 200, strip=True), seed=1)
    assert np.abs(np.diff(field, axis=1)).max() < 0.35


def test_a_black_tile_stays_black():
    field = spread(np.zeros((20, 20), np.float32), Extent(50, 50, strip=False), seed=1)
    assert not field.any()


def test_unlike_patterns_keep_their_contrast_in_the_blend():
    rng = np.random.default_rng(4)
    old, new = rng.normal(0, 1, (2, 200, 60)).astype(np.float32)
    kept = blended(old, new, np.zeros((1, 1), np.float32), 0.0, axis=1)
    assert kept[:, 30].std() == pytest.approx(1.0, abs=0.15)
    assert (0.5 * (old + new))[:, 30].std() < 0.85


def test_beyond_its_edge_a_surface_begins_anew():
    field = np.arange(12, dtype=np.float32).reshape(3, 4)
    assert window_of(field, 1, 2, 1, 4).tolist() == [[6.0, 7.0, 4.0, 5.0]]
    assert window_of(field, 2, -1, 2, 1).tolist() == [[11.0], [3.0]]


@pytest.mark.parametrize("strip", [True, False])
def test_a_surface_closes_on_itself_without_a_step(strip):
    tile = blotches()
    field = spread(tile, Extent(40 if strip else 150, 300, strip=strip), seed=4)
    usual = np.abs(np.diff(field, axis=1)).mean()
    assert np.abs(field[:, 0] - field[:, -1]).mean() < 2 * usual
    if not strip:
        usual = np.abs(np.diff(field, axis=0)).mean()
        assert np.abs(field[0] - field[-1]).mean() < 2 * usual
