"""Palettes that list what a trained eye would, and nothing that nobody sees."""

import io

import cv2
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from framing_palette.colour import delta_e_2000, delta_e_2000_matrix, srgb_u8_to_lab_d50
from framing_palette.picture import palette, palette_of_srgb
from framing_palette.picture.clusters import clustered
from framing_palette.picture.histograms import coarser, folded, folded_srgb
from framing_palette.picture.seeing import as_seen


def colours_apart(rng, count, least=15):
    chosen = []
    while len(chosen) < count:
        srgb = rng.integers(15, 245, 3).astype(np.uint8)
        lab = srgb_u8_to_lab_d50(srgb)
        if all(delta_e_2000(lab, other) > least for _, other in chosen):
            chosen.append((srgb, lab))
    return np.array([c[0] for c in chosen]), np.array([c[1] for c in chosen])


def poster(seed, *, grain=0.0, blur=0.0, quality=None, size=(150, 200)):
    """Flat shapes drawn four times finer and averaged in light: edges are mixtures."""
    rng = np.random.default_rng(seed)
    srgb, lab = colours_apart(rng, int(rng.integers(2, 6)))
    rows, columns = size
    drawn = np.zeros((rows * 4, columns * 4), np.uint8)
    for _ in range(12):
        centre = rng.integers(0, (columns * 4, rows * 4)).tolist()
        axes = rng.integers(60, 400, 2).tolist()
        cv2.ellipse(
            drawn,
            centre,
            axes,
            float(rng.integers(0, 180)),
            0,
            360,
            int(rng.integers(0, len(srgb))),
            -1,
        )
    share = np.bincount(drawn.ravel(), minlength=len(srgb)) / drawn.size
    light = cv2.resize(
        ((srgb / 255.0) ** 2.2)[drawn].astype(np.float32),
        (columns, rows),
        interpolation=cv2.INTER_AREA,
    )
    pixels = light ** (1 / 2.2) * 255
    if blur:
        pixels = cv2.GaussianBlur(pixels, (0, 0), blur)
    pixels = np.clip(pixels + rng.normal(0, grain, (rows, columns, 1)) + 0.5, 0, 255).astype(
        np.uint8
    )
    if quality:
        stream = io.BytesIO()
        Image.fromarray(pixels).save(stream, "JPEG", quality=quality)
        pixels = np.asarray(Image.open(stream))
    return pixels, lab, share


def read_palette(pixels):
    cells = folded(as_seen(srgb_u8_to_lab_d50(pixels)))
    return palette(cells.lab_d50, cells.counts())


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize(
    "spoilt", [{}, {"grain": 8.0}, {"blur": 1.2}, {"quality": 75, "grain": 2.0}], ids=str
)
def test_edges_grain_blur_and_jpeg_create_no_colour_that_nobody_sees(seed, spoilt):
    pixels, lab, share = poster(seed, **spoilt)
    found = read_palette(pixels)
    distance = delta_e_2000_matrix(np.array([c.lab for c in found]), lab)
    assert distance.min(axis=1).max() < 5.0  # each colour found is one that was painted
    assert distance[:, share >= 0.03].min(axis=0).max() < 5.0  # each painted one is found
    for index in np.flatnonzero(share >= 0.03):
        nearest = distance.argmin(axis=1) == index
        total = sum(c.share for c, mine in zip(found, nearest, strict=True) if mine)
        assert total == pytest.approx(share[index], abs=0.02)


def test_specular_glints_and_dust_are_not_dominant_colours():
    pixels = np.full((200, 300, 3), (60, 80, 110), np.uint8)
    rng = np.random.default_rng(0)
    for row, column in rng.integers(3, 197, (30, 2)):
        pixels[row : row + 2, column : column + 2] = 255
    assert [c.name for c in read_palette(pixels)] == [read_palette(pixels[:2, :2])[0].name]


def test_near_twins_are_one_colour_and_clear_differences_are_two():
    twins = np.zeros((40, 40, 3), np.uint8)
    twins[:] = 120, 120, 120
    twins[:20] = 126, 126, 126
    assert len(read_palette(twins)) == 1
    twins[:20] = 150, 120, 120
    assert len(read_palette(twins)) == 2


def test_an_even_area_has_one_colour_and_shares_always_sum_to_one():
    even = read_palette(np.full((10, 10, 3), 77, np.uint8))
    assert [c.share for c in even] == [1.0]
    noise = read_palette(np.random.default_rng(0).integers(0, 256, (60, 60, 3)).astype(np.uint8))
    assert 2 <= len(noise) <= 8
    assert sum(c.share for c in noise) == pytest.approx(1.0)


def test_cells_without_weight_are_left_out_and_nothing_gives_nothing():
    lab = np.array([[50.0, 0, 0], [90.0, 0, 0]])
    (only,) = palette(lab, np.array([0.0, 5.0]))
    assert only.lab == pytest.approx((90, 0, 0))
    assert palette(lab, np.zeros(2)) == ()


def test_a_fixed_number_of_colours_is_plain_k_means_of_all_pixels():
    """Against scikit-learn's KMeans on every pixel, begun at our own centres."""
    from sklearn.cluster import KMeans
    from sklearn.datasets import load_sample_image

    pixels = load_sample_image("flower.jpg")
    ours = palette_of_srgb(pixels, count=8)
    centres = np.array([c.lab for c in ours])
    every = srgb_u8_to_lab_d50(pixels).reshape(-1, 3).astype(np.float64)
    theirs = KMeans(8, init=centres, n_init=1, tol=0, max_iter=60).fit(every)
    distance = delta_e_2000_matrix(centres, theirs.cluster_centers_)
    assert distance.min(axis=1).mean() < 0.15
    assert distance.min(axis=1).max() < 0.4
    share = np.bincount(theirs.labels_) / len(every)
    assert np.abs(np.array([c.share for c in ours]) - share[distance.argmin(axis=1)]).max() < 0.01


@given(st.integers(1, 12), st.integers(0, 2**32 - 1))
@settings(max_examples=25, deadline=None)
def test_clusters_partition_the_weight_and_each_is_the_mean_of_its_cells(count, seed):
    rng = np.random.default_rng(seed)
    lab, weight = rng.uniform(-40, 90, (int(rng.integers(1, 500)), 3)), rng.uniform(0.1, 5, 500)
    weight = weight[: len(lab)]
    found = clustered(lab, weight, count, starts=2)
    assert len(found.share) <= count
    assert found.share.sum() == pytest.approx(1.0)
    for index, centre in enumerate(found.lab_d50):
        mine = found.label == index
        assert centre == pytest.approx(np.average(lab[mine], axis=0, weights=weight[mine]))


def test_folding_keeps_the_number_and_the_mean_of_the_pixels():
    lab = np.random.default_rng(1).uniform(-60, 90, (40, 50, 3)).astype(np.float32)
    cells = folded(lab)
    assert cells.counts().sum() == 2000
    mean = np.average(cells.lab_d50, axis=0, weights=cells.counts())
    assert mean == pytest.approx(lab.reshape(-1, 3).mean(axis=0), abs=1e-4)
    larger, weight = coarser(cells.lab_d50, cells.counts(), cell=16.0)
    assert len(larger) < len(cells.lab_d50)
    assert np.average(larger, axis=0, weights=weight) == pytest.approx(mean)


def test_folding_8_bit_pixels_keeps_their_number_and_mean():
    pixels = np.random.default_rng(1).integers(0, 256, (70, 50, 3)).astype(np.uint8)
    lab, weight = folded_srgb(pixels[:, ::-1])  # views with odd strides too
    assert weight.sum() == 3500
    wanted = srgb_u8_to_lab_d50(pixels).reshape(-1, 3).mean(axis=0)
    assert np.average(lab, axis=0, weights=weight) == pytest.approx(wanted, abs=1e-3)


def test_colours_outside_every_gamut_still_have_a_cell():
    cells = folded(np.array([[[500.0, 900.0, -900.0], [-90.0, 0, 0]]]))
    assert cells.counts().tolist() == [1.0, 1.0]


def test_a_thin_line_keeps_its_colour_while_its_mixed_edges_go():
    lab = np.full((40, 40, 3), (95, 0, 5), np.float32)
    lab[:, 18:22] = 20, 0, 0
    lab[:, [17, 22]] = 57, 0, 2.5  # mixtures
    seen = as_seen(lab)
    assert np.abs(seen[20, 18:22] - [20, 0, 0]).max() < 2
    lightness = seen[..., 0]
    assert not ((lightness > 30) & (lightness < 85)).any()


def test_smooth_shading_is_left_as_it_is():
    lab = np.zeros((40, 200, 3), np.float32)
    lab[..., 0] = np.linspace(20, 90, 200)
    assert np.abs(as_seen(lab)[:, 3:-3] - lab[:, 3:-3]).max() < 0.5
