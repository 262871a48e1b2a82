"""Accents: a red buoy on a grey sea is there; noise, dust and glints are not."""

from pathlib import Path

import cv2
import numpy as np
import pytest
import skimage.data
import sklearn.datasets

from framing_palette.colour import delta_e_2000, lab_d50_to_srgb, srgb_u8_to_lab_d50
from framing_palette.picture import find_accents, read_picture_file
from framing_palette.picture.accents import accent_strength

RED = (45.0, 62.0, 45.0)


def sea(rows=300, columns=450, seed=0):
    """A grey sea with waves under a paler sky, with grain."""
    rng = np.random.default_rng(seed)
    lab = np.zeros((rows, columns, 3), np.float32)
    lab[..., 0] = np.linspace(75, 55, rows)[:, None]
    lab[rows // 2 :, :, 0] -= 12
    waves = cv2.resize(
        rng.normal(0, 3, (rows // 8, columns // 20)).astype(np.float32), (columns, rows)
    )
    lab[..., 0] += waves
    lab[..., 2] -= 4
    lab[..., 0] += rng.normal(0, 2, (rows, columns))
    return lab


def with_disc(lab, x, y, share, colour):
    rows, columns = lab.shape[:2]
    radius = np.sqrt(share * rows * columns / np.pi)
    drawn = np.zeros((rows * 4, columns * 4), np.uint8)
    cv2.circle(drawn, (round(x * columns * 4), round(y * rows * 4)), round(radius * 4), 255, -1)
    cover = cv2.resize(drawn, (columns, rows), interpolation=cv2.INTER_AREA)[..., None] / 255.0
    return (lab * (1 - cover) + np.float32(colour) * cover).astype(np.float32)


@pytest.mark.parametrize("share", [0.001, 0.003, 0.01])
def test_a_red_buoy_on_a_grey_sea_is_found_with_its_place_size_and_colour(share):
    (buoy,) = find_accents(with_disc(sea(), 0.3, 0.7, share, RED), mm_per_px=2.0)
    assert (buoy.x, buoy.y) == (pytest.approx(0.3, abs=0.01), pytest.approx(0.7, abs=0.01))
    assert buoy.share == pytest.approx(share, rel=0.35)
    assert delta_e_2000(buoy.lab, RED) < 3
    assert buoy.delta_e == pytest.approx(float(delta_e_2000(RED, sea()[210, 135])), abs=4)
    wanted_mm = 2 * np.sqrt(share * 300 * 450 / np.pi) * 2.0
    assert buoy.size_mm == pytest.approx(wanted_mm, rel=0.2)
    assert "red" in buoy.name


def test_the_sea_alone_has_none_and_an_unknown_scale_leaves_the_size_unknown():
    assert find_accents(sea()) == ()
    (buoy,) = find_accents(with_disc(sea(), 0.3, 0.7, 0.003, RED))
    assert buoy.size_mm is None


def test_noise_dust_and_glints_are_no_accents():
    rng = np.random.default_rng(2)
    assert find_accents(rng.uniform(0, 100, (200, 300, 3)).astype(np.float32)) == ()
    lab = sea()
    for row, column in rng.integers(4, 290, (40, 2)):
        lab[row : row + 2, column : column + 2] = (5, 0, 0) if row % 2 else (99, 0, 0)
    assert find_accents(lab) == ()
    glint = with_disc(sea(), 0.5, 0.7, 0.0015, (98, 0, 1))
    assert find_accents(glint) == ()


def test_a_white_sail_large_enough_to_be_seen_is_an_accent():
    assert len(find_accents(with_disc(sea(), 0.5, 0.7, 0.006, (98, 0, 1)))) == 1


def test_the_same_colour_all_over_is_a_pattern_and_a_thread_is_no_place():
    lab = sea()
    for x in np.linspace(0.06, 0.94, 6):
        for y in (0.2, 0.5, 0.8):
            lab = with_disc(lab, x, y, 0.003, RED)
    assert find_accents(lab) == ()
    thread = sea()
    thread[100:102, 40:400] = RED
    assert find_accents(thread) == ()


def test_three_buoys_of_one_colour_are_all_there():
    lab = sea()
    for x in (0.2, 0.5, 0.8):
        lab = with_disc(lab, x, 0.7, 0.008, RED)
    assert len(find_accents(lab)) == 3


def test_an_accent_on_the_horizon_between_two_areas_is_found():
    assert len(find_accents(with_disc(sea(), 0.6, 0.5, 0.002, RED))) == 1


@pytest.mark.parametrize("rows", [600, 1500])
def test_a_larger_photograph_of_the_same_scene_has_the_same_accent(rows):
    lab = with_disc(sea(rows, rows * 3 // 2), 0.3, 0.7, 0.002, RED)
    (buoy,) = find_accents(lab)
    assert buoy.share == pytest.approx(0.002, rel=0.3)


def test_strength_grows_with_difference_and_size():
    assert accent_strength(30, 0.003) == pytest.approx(0.5)
    assert accent_strength(40, 0.003) > accent_strength(30, 0.003)
    assert accent_strength(30, 0.01) > accent_strength(30, 0.003)


@pytest.mark.parametrize("size", [(16, 16), (1, 1), (3, 200)])
def test_tiny_pictures_have_no_accents(size):
    assert find_accents(np.random.default_rng(0).uniform(0, 90, (*size, 3))) == ()


REAL = [
    *(
        Path(skimage.data.__file__).parent / name
        for name in ("coffee.png", "chelsea.png", "rocket.jpg", "ihc.png")
    ),
    *(
        Path(sklearn.datasets.__file__).parent / "images" / name
        for name in ("china.jpg", "flower.jpg")
    ),
]


@pytest.mark.parametrize("path", REAL, ids=lambda path: path.stem)
def test_plain_real_photographs_have_at_most_five_accents(path):
    assert len(find_accents(read_picture_file(path).lab_d50)) <= 5


@pytest.mark.parametrize("path", REAL, ids=lambda path: path.stem)
def test_a_rare_colour_planted_into_a_real_photograph_is_found(path):
    lab = read_picture_file(path).lab_d50
    rare = max(
        ((55.0, a, b) for a in (-50, 0, 60) for b in (-50, 0, 50)),
        key=lambda colour: (
            np.percentile(delta_e_2000(lab[::5, ::5], colour), 2)
            * float(lab_d50_to_srgb(colour, clip=False).min() >= 0)
        ),
    )
    planted = with_disc(lab, 0.35, 0.4, 0.004, rare)
    assert any(
        abs(a.x - 0.35) < 0.02 and abs(a.y - 0.4) < 0.02 and delta_e_2000(a.lab, rare) < 8
        for a in find_accents(planted)
    )


def test_a_small_place_in_two_shades_is_one_accent():
    lab = with_disc(sea(), 0.3, 0.7, 0.0016, (50, 61, 49))
    lab[:, 135:] = with_disc(sea(), 0.3, 0.7, 0.0016, (33, 46, 29))[:, 135:]
    (buoy,) = find_accents(lab)
    assert buoy.x == pytest.approx(0.3, abs=0.01)


def test_the_red_buoy_of_the_shipped_ferry_is_found():
    shipped = Path(__file__).parents[2] / "sample_images" / "ferry_at_dusk.jpg"
    reds = [a for a in find_accents(read_picture_file(shipped).lab_d50) if a.lab[1] > 35]
    assert len(reds) == 1
    assert reds[0].x > 0.6
    assert reds[0].y > 0.6


def test_accents_do_not_depend_on_8_bit_storage():
    lab = with_disc(sea(), 0.3, 0.7, 0.003, RED)
    stored = srgb_u8_to_lab_d50((lab_d50_to_srgb(lab) * 255 + 0.5).astype(np.uint8))
    assert len(find_accents(stored)) == len(find_accents(lab)) == 1
