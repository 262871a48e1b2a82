"""Texture at true scale, on waves of known size and on real surfaces."""

import math

import cv2
import numpy as np
import pytest
import skimage.data
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import srgb_u8_to_lab_d50
from framing_palette.errors import FieldError, ShapeError
from framing_palette.picture import (
    BANDS_MM,
    TEXTURE_MEASURES,
    Texture,
    measure_texture,
    texture_distance,
    texture_distances,
    texture_from_vector,
    texture_vector,
)

SURFACES = ("brick", "grass", "gravel")


def wave(wave_mm, mm_per_px, *, direction_deg=0.0, deviation=8.0, channel=0, side=240):
    """An even wave whose crests run along a direction, averaged over each pixel's area."""
    row, column = np.mgrid[:side, :side] * mm_per_px
    across = math.radians(direction_deg + 90)
    f_x, f_y = math.cos(across) / wave_mm, -math.sin(across) / wave_mm  # rows count downward
    soft = np.sinc(f_x * mm_per_px) * np.sinc(f_y * mm_per_px)
    lab = np.zeros((side, side, 3), np.float32)
    lab[..., 0] = 50
    lab[..., channel] += (
        deviation * math.sqrt(2) * soft * np.sin(2 * np.pi * (f_x * column + f_y * row))
    )
    return lab


def surface(name):
    """A real surface as CIELAB; its scale is taken as 0.25 mm a pixel."""
    grey = getattr(skimage.data, name)()
    return srgb_u8_to_lab_d50(np.stack([grey] * 3, axis=-1))


def half_size(lab):
    return cv2.resize(lab, None, fx=0.5, fy=0.5, interpolation=cv2.INTER_AREA)


def turned(lab, degrees):
    side = lab.shape[0]
    turn = cv2.getRotationMatrix2D((side / 2, side / 2), degrees, 1)
    whole = cv2.warpAffine(lab, turn, (side, side), flags=cv2.INTER_CUBIC)
    edge = round(side * 0.15)  # the inscribed square of any turn
    return np.ascontiguousarray(whole[edge:-edge, edge:-edge])


def brighter(lab, stops):
    """The same surface lit by a factor of 2 ** stops: L* + 16 goes with the cube root of light."""
    lit = lab.copy()
    lit[..., 0] = (lab[..., 0] + 16) * 2 ** (stops / 3) - 16
    return lit


@pytest.mark.parametrize("mm_per_px", [0.1, 0.125, 0.25])
@pytest.mark.parametrize("wave_mm", [1, 2, 4, 8])
def test_a_wave_shows_its_deviation_in_its_own_band_whatever_the_resolution(wave_mm, mm_per_px):
    side = max(240, int(8 * wave_mm / mm_per_px))
    texture = measure_texture(wave(wave_mm, mm_per_px, direction_deg=20, side=side), mm_per_px)
    place = BANDS_MM.index(wave_mm)
    contrast = texture.lightness_contrast
    assert contrast[place] == pytest.approx(8.0, rel=0.08)
    others = [c for band, c in enumerate(contrast) if band != place and not math.isnan(c)]
    assert max(others) < 0.75 * contrast[place]
    assert (
        max(texture.chroma_contrast[: place + 1], key=lambda c: -math.inf if math.isnan(c) else c)
        < 0.01
    )


def test_a_wave_of_chroma_alone_shows_in_chroma_alone():
    texture = measure_texture(wave(2, 0.25, channel=1), 0.25)
    assert texture.chroma_contrast[2] == pytest.approx(8.0, rel=0.08)
    assert np.nanmax(texture.lightness_contrast) < 0.01


@pytest.mark.parametrize("direction_deg", [0, 30, 45, 90, 120, 170])
def test_the_grain_runs_where_the_crests_run(direction_deg):
    texture = measure_texture(wave(4, 0.25, direction_deg=direction_deg), 0.25)
    apart = (texture.direction_deg - direction_deg + 90) % 180 - 90
    assert abs(apart) < 3
    assert texture.direction_strength > 0.9


def test_random_grain_has_no_direction_and_no_repeats_but_a_weave_has():
    noise = np.zeros((300, 300, 3), np.float32)
    noise[..., 0] = 50 + np.random.default_rng(0).normal(0, 8, (300, 300))
    random = measure_texture(noise, 0.25)
    crossed = wave(2, 0.25, side=300) + wave(2, 0.25, direction_deg=90, side=300)
    weave = measure_texture(crossed / 2 + (noise - 50) / 10, 0.25)
    assert random.direction_strength < 0.1
    assert random.regularity < 0.15
    assert weave.regularity > 0.8
    assert weave.direction_strength < 0.1


def test_points_of_light_sparkle_and_dark_points_do_not():
    leaf = np.full((200, 200, 3), (60, 0, 20), np.float32)
    row, column = np.random.default_rng(1).integers(0, 200, (2, 300))
    leaf[row, column, 0] = 100
    holes = leaf.copy()
    holes[..., 0] = 120 - leaf[..., 0]
    assert measure_texture(leaf, 0.25).sparkle > 0.004
    assert measure_texture(holes, 0.25).sparkle == 0


def test_bands_beyond_resolution_or_size_are_unknown_and_the_others_known():
    texture = measure_texture(surface("grass")[:128, :128], 0.25)  # 32 mm: 16 mm waves do not fit
    known = [not math.isnan(c) for c in texture.lightness_contrast]
    assert known == [False, True, True, True, True, False]
    assert [not math.isnan(p) for p in texture.pattern] == [k for k in known for _ in range(10)]


def test_without_a_scale_every_band_is_unknown_and_the_rest_is_still_said():
    texture = measure_texture(wave(4, 0.25, direction_deg=30), None)
    assert np.isnan(texture.lightness_contrast).all()
    assert texture.mm_per_px is None
    assert texture.direction_deg == pytest.approx(30, abs=3)
    assert math.isnan(texture_distance(texture, texture))


@pytest.mark.parametrize("mm_per_px", [0.0, -1.0, math.nan, math.inf])
def test_an_impossible_scale_is_refused(mm_per_px):
    with pytest.raises(FieldError, match="mm_per_px"):
        measure_texture(surface("grass"), mm_per_px)


@pytest.mark.parametrize("size", [(1, 1), (12, 12), (5, 400)])
def test_a_surface_too_small_for_any_band_is_unknown_not_an_error(size):
    texture = measure_texture(np.full((*size, 3), 50.0), 0.5)
    assert np.isnan(texture.lightness_contrast).all()
    assert texture.direction_strength == texture.regularity == texture.sparkle == 0


def test_a_flat_surface_has_no_contrast_direction_or_repeats():
    texture = measure_texture(np.full((200, 200, 3), 50.0), 0.25)
    assert np.nanmax(texture.lightness_contrast) == pytest.approx(0, abs=1e-3)
    assert texture.direction_strength == texture.regularity == texture.sparkle == 0


def test_only_what_lies_inside_the_mask_is_measured():
    lab = wave(2, 0.25)
    lab[:, 120:] = np.random.default_rng(0).uniform(0, 100, (240, 120, 3))
    mask = np.zeros((240, 240), bool)
    mask[:, :120] = True
    inside = measure_texture(lab, 0.25, mask)
    alone = measure_texture(lab[:, :120], 0.25)
    assert inside.lightness_contrast[2] == pytest.approx(alone.lightness_contrast[2], rel=0.02)
    assert inside.mean_lightness == pytest.approx(50, abs=0.2)
    assert math.isnan(measure_texture(lab, 0.25, np.zeros_like(mask)).mean_lightness)


@pytest.mark.parametrize("name", SURFACES)
def test_resolution_rotation_and_exposure_change_a_real_surface_little(name):
    """Stated limits: known bands by a quarter at half resolution or turned; far nearer to itself
    than to any other surface."""
    lab = surface(name)
    first = measure_texture(lab, 0.25)
    again = {
        "half the pixels": measure_texture(half_size(lab), 0.5),
        "turned": measure_texture(turned(lab, 37), 0.25),
        "upright": measure_texture(np.rot90(lab).copy(), 0.25),
        "brighter": measure_texture(brighter(lab, 0.5), 0.25),
        "darker": measure_texture(brighter(lab, -0.5), 0.25),
    }
    others = [measure_texture(surface(other), 0.25) for other in SURFACES if other != name]
    nearest_other = min(texture_distance(first, other) for other in others)
    for way, texture in again.items():
        assert texture_distance(first, texture) < 0.6 * nearest_other, way
        if way not in {"brighter", "darker"}:  # exposure is taken out by the distance
            ratio = np.array(texture.lightness_contrast[:5]) / first.lightness_contrast[:5]
            assert np.nanmax(np.abs(ratio - 1)) < 0.25, way
    assert texture_distance(first, again["upright"]) < 0.1
    assert texture_distance(first, again["brighter"]) < 0.1


def test_turning_a_surface_turns_its_direction_and_nothing_else():
    lab = wave(4, 0.25, direction_deg=20)
    first, second = measure_texture(lab, 0.25), measure_texture(np.rot90(lab).copy(), 0.25)
    assert (second.direction_deg - first.direction_deg) % 180 == pytest.approx(90, abs=0.5)
    assert second.lightness_contrast == pytest.approx(
        first.lightness_contrast, rel=0.02, nan_ok=True
    )


def test_patches_of_real_surfaces_find_their_own_kind_left_one_out():
    """16 patches of each of three real surfaces, every other one at half the resolution."""
    textures, kinds = [], []
    for name in SURFACES:
        lab = surface(name)
        for row in range(0, 512, 128):
            for column in range(0, 512, 128):
                patch = lab[row : row + 128, column : column + 128]
                coarse = (row + column) // 128 % 2
                textures.append(
                    measure_texture(half_size(patch) if coarse else patch, 0.5 if coarse else 0.25)
                )
                kinds.append(name)
    rows = np.array([texture_vector(texture) for texture in textures])
    right = 0
    for index, texture in enumerate(textures):
        distance = texture_distances(texture, rows)
        distance[index] = np.inf
        right += kinds[int(np.nanargmin(distance))] == kinds[index]
    assert right / len(textures) >= 0.95


def test_a_texture_comes_back_from_its_row_and_a_short_row_leaves_the_rest_unknown():
    texture = measure_texture(surface("brick")[:200, :200], 0.25)
    row = texture_vector(texture)
    assert row.shape == (len(TEXTURE_MEASURES),)
    np.testing.assert_equal(texture_vector(texture_from_vector(row)), row)
    short = texture_from_vector(row[:17])
    assert short.lightness_contrast == pytest.approx(texture.lightness_contrast, nan_ok=True)
    assert np.isnan(short.pattern).all()
    assert texture_distance(short, texture) == pytest.approx(0, abs=0.2)
    with pytest.raises(ShapeError):
        texture_from_vector(row[:20])
    assert texture_from_vector(texture_vector(Texture())).mm_per_px is None


values = st.floats(0, 20)


@given(st.lists(values, min_size=6, max_size=6), st.lists(values, min_size=6, max_size=6))
def test_distance_is_symmetric_and_zero_to_itself_alone(one, two):
    first, second = Texture(lightness_contrast=tuple(one)), Texture(lightness_contrast=tuple(two))
    assert texture_distance(first, first) == 0
    assert texture_distance(first, second) == pytest.approx(texture_distance(second, first))
    if max(abs(a - b) for a, b in zip(one, two, strict=True)) > 0.1:
        assert texture_distance(first, second) > 0


def test_many_distances_are_the_single_ones():
    textures = [measure_texture(surface(name)[:200, :200], 0.25) for name in SURFACES]
    textures.append(Texture())
    rows = np.array([texture_vector(texture) for texture in textures])
    together = texture_distances(textures[0], rows)
    singly = [texture_distance(textures[0], texture) for texture in textures]
    np.testing.assert_allclose(together, singly)
    assert math.isnan(together[3])
