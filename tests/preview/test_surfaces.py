"""Samples at the scale of the picture, true to their measured colour."""

from dataclasses import replace

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000, linear_srgb_to_lab_d50
from framing_palette.preview.skins import Skin
from framing_palette.preview.surfaces import seed_of, surface_of
from framing_palette.preview.texture_files import TextureImage
from framing_palette.preview.tiling import Extent

SKIN = Skin("S", (52.0, 14.0, 25.0), texture_file="S.png", texture_mm_per_px=0.1)


def lab_mean(surface):
    return linear_srgb_to_lab_d50(np.maximum(surface.tile, 0)).reshape(-1, 3).mean(axis=0)


def speckled(rows=120, columns=160):
    """Dark bole through gold leaf: two colours far apart, in blots."""
    import cv2

    noise = np.random.default_rng(5).standard_normal((rows, columns)).astype(np.float32)
    blots = cv2.GaussianBlur(noise, (0, 0), 3.0)
    worn = (blots > np.quantile(blots, 0.75))[..., None]
    return np.where(worn, [0.10, 0.03, 0.02], [0.52, 0.34, 0.10]).astype(np.float32)


@pytest.mark.parametrize("px_per_mm", [0.8, 3.0, 12.0])
@pytest.mark.parametrize("strip", [True, False])
def test_a_photographed_surface_has_the_samples_mean_lab_at_every_scale(px_per_mm, strip):
    extent = Extent(90, 700, strip=strip)
    surface = surface_of(SKIN, TextureImage(speckled()), px_per_mm, extent)
    assert surface.tile.shape == (90, 700, 3)
    assert float(delta_e_2000(lab_mean(surface), SKIN.lab)) < 0.6


def test_a_relief_has_mean_one():
    relief = np.random.default_rng(0).uniform(0.1, 0.3, (80, 90)).astype(np.float32)
    surface = surface_of(SKIN, TextureImage(relief), 2.0, Extent(50, 300, strip=True))
    assert surface.tile.mean() == pytest.approx(1.0, abs=1e-3)


def test_a_texture_is_drawn_at_its_true_scale():
    stripes = np.zeros((10, 200), np.float32) + 0.2
    stripes[:, ::20] = 0.6  # one every 2 mm
    tile = surface_of(SKIN, TextureImage(stripes), 5.0).tile
    assert tile.shape == (5, 100)
    lines = np.flatnonzero(tile[2] > 1.2)
    assert np.diff(lines).tolist() == [10] * 9


def test_a_texture_that_was_averaged_down_keeps_its_scale():
    whole = surface_of(SKIN, TextureImage(np.ones((100, 100), np.float32)), 10.0)
    reduced = surface_of(SKIN, TextureImage(np.ones((25, 25), np.float32), 4), 10.0)
    assert whole.tile.shape == reduced.tile.shape


def test_a_huge_enlargement_is_cut_and_not_made():
    tiny_scale = replace(SKIN, texture_mm_per_px=5.0)
    surface = surface_of(tiny_scale, TextureImage(np.ones((400, 400), np.float32)), 20.0)
    assert max(surface.tile.shape) <= 1600


def test_a_seed_depends_on_its_words_alone():
    assert seed_of("A", 1) == seed_of("A", 1)
    assert seed_of("A", 1) != seed_of("A", 2)


def test_a_seamless_tile_stays_seamless_when_it_is_enlarged():
    import cv2

    noise = np.random.default_rng(2).standard_normal((40, 60)).astype(np.float32)
    soft = cv2.GaussianBlur(np.tile(noise, (3, 3)), (0, 0), 1.0)[40:80, 60:120]
    tile = np.asarray(0.5 + 0.1 * soft, np.float32)
    large = surface_of(replace(SKIN, texture_mm_per_px=1.0), TextureImage(tile), 6.0).tile
    assert large.shape == (240, 360)
    for axis in (0, 1):
        usual = np.abs(np.diff(large, axis=axis)).mean()
        step = np.abs(large.take(0, axis) - large.take(-1, axis)).mean()
        assert step < 2 * usual


def test_a_narrow_strip_takes_no_more_of_a_large_scan_than_it_needs():
    extent = Extent(6, 300, strip=True)
    scan = np.full((900, 900, 3), 0.2, np.float32)
    scan[:60] += np.random.default_rng(1).normal(0, 0.02, (60, 900, 1)).astype(np.float32)
    scan[100:] = np.nan  # must never be looked at
    surface = surface_of(SKIN, TextureImage(scan), 10.0, extent)
    assert np.isfinite(surface.tile).all()
    assert float(delta_e_2000(lab_mean(surface), SKIN.lab)) < 0.6
