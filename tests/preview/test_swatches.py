"""Pieces of samples for lists and strips."""

from dataclasses import replace

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.errors import CatalogueError
from framing_palette.preview import Piece, flat_srgb_u8, swatch_srgb_u8
from tests.preview.frames import BLUE, RED, SHOP, apart, sample, textured


def test_a_swatch_has_the_size_asked_for_and_the_samples_colour():
    pixels = swatch_srgb_u8(SHOP["RED-MAT"], SHOP, Piece(90, 40, 3.0, formed=False))
    assert pixels.shape == (40, 90, 3)
    assert apart(pixels, RED) < 0.5
    assert apart(np.asarray([[flat_srgb_u8(SHOP["RED-MAT"])]], np.uint8), RED) < 0.5


def test_a_sample_without_colour_is_a_mid_grey():
    red, green, blue = flat_srgb_u8(SHOP["NAMELESS-COLOUR"])
    assert red == green == blue


def test_a_formed_strip_is_lit_as_the_side_that_it_will_become():
    moulding = SHOP["GREY-ROUND"]
    top, bottom = (
        swatch_srgb_u8(moulding, SHOP, Piece(60, 90, 3.0, turn)).mean(axis=(1, 2))
        for turn in (0.0, 180.0)
    )
    # The outer slope is the upper part of the image: lit on the top side, in shade on the bottom.
    assert top[8] > top[80]
    assert bottom[8] < bottom[80]


def test_an_unformed_moulding_is_even():
    pixels = swatch_srgb_u8(SHOP["GREY-ROUND"], SHOP, Piece(50, 50, 2.0, formed=False))
    assert np.ptp(pixels[2:-2].astype(int)) <= 2


def test_a_turn_changes_the_light_and_not_the_surface(tmp_path):
    relief = np.random.default_rng(1).normal(128, 20, (60, 60)).clip(0, 255).astype(np.uint8)
    shop = textured("WOOD", Kind.MOULDING, BLUE, tmp_path, relief)
    plain = [
        swatch_srgb_u8(shop["WOOD"], shop, Piece(80, 40, 2.0, turn, formed=False))
        for turn in (0.0, 90.0, 180.0, 270.0, 360.0)
    ]
    assert all(np.array_equal(plain[0], other) for other in plain[1:])
    assert plain[0].std() > 5


def test_a_mat_is_never_formed_beyond_its_flat():
    mat = swatch_srgb_u8(SHOP["RED-MAT"], SHOP, Piece(40, 40, 2.0))
    assert np.ptp(mat.astype(int), axis=(0, 1)).max() <= 1


def test_a_swatch_tells_of_a_texture_that_is_not_there(tmp_path):
    lost = sample("LOST", Kind.MAT, RED, texture_file="lost.png", texture_mm_per_px=0.1)
    shop = replace(SHOP, samples=(lost,), textures_dir=str(tmp_path))
    with pytest.raises(CatalogueError, match=r"lost\.png"):
        swatch_srgb_u8(lost, shop, Piece(20, 20, 2.0))
