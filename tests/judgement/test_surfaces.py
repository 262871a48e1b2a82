"""The same colour in a fine and in a coarse surface: the picture's own surface decides.

Pictures and surfaces are painted at a known scale; each is judged with the picture's true size
known, and again with it unknown.
"""

from functools import cache

import cv2
import numpy as np
import pytest
from scipy import ndimage

from framing_palette.catalogue import Kind, Sample
from framing_palette.colour import lab_d50_to_srgb, srgb_u8_to_lab_d50
from framing_palette.picture import Findings, Texture, measure_texture, read_findings
from framing_palette.ranking import rank, ranking
from framing_palette.units import Length
from tests.judgement.pictures import blob, box, ground, photograph, picture_of
from tests.ranking.by_hand import lch, sample

PICTURE_MM_PER_PX, SURFACE_MM_PER_PX = 0.5, 0.25
ROWS, COLUMNS = 480, 640
COLOUR = (52.0, 7.0, 13.0)


def _weave(rows, columns, period_px, lightness):
    rng = np.random.default_rng(5)
    down, across = np.mgrid[:rows, :columns]
    turn = 2 * np.pi / period_px
    wobble = ndimage.gaussian_filter(rng.normal(size=(rows, columns)), period_px) * period_px
    thread = np.sin(turn * across + 0.6 * wobble) * np.sign(np.sin(turn * down / 2))
    slub = ndimage.gaussian_filter(rng.normal(size=(rows, columns)), period_px / 4) * period_px / 4
    both = thread + slub
    return lightness * both / both.std()


@cache
def _surface(period_mm: float, lightness: float) -> Texture:
    tone = np.zeros((320, 320, 3), np.float32) + np.float32(COLOUR)
    if period_mm:
        tone[..., 0] += _weave(320, 320, period_mm / SURFACE_MM_PER_PX, lightness)
    return measure_texture(tone, SURFACE_MM_PER_PX)


FINE, COARSE, FLAT = _surface(1.5, 2.5), _surface(9.0, 2.5), _surface(0.0, 0.0)


@cache
def _painted(name: str, *, is_scale_known: bool) -> Findings:
    rng = np.random.default_rng(2)
    if name == "photograph":
        image = cv2.resize(photograph("temple"), (COLUMNS, ROWS))
        lab = np.asarray(srgb_u8_to_lab_d50(image), np.float32)
    else:
        lab = ground(rng, lch(76, 8, 70), rows=ROWS, columns=COLUMNS, grain=0.4)
        lab = blob(rng, lab, lch(64, 13, 52), (0.5, 0.5, 0.24, 0.28), soft=20, grain=0.5)
    periods = {"fine canvas": (1.8, 2.5), "coarse canvas": (9.0, 4.0)}
    if name in periods:
        period_mm, lightness = periods[name]
        lab[..., 0] += _weave(ROWS, COLUMNS, period_mm / PICTURE_MM_PER_PX, lightness)
    srgb = (np.asarray(lab_d50_to_srgb(lab)) * 255 + 0.5).astype(np.uint8)
    scale = PICTURE_MM_PER_PX if is_scale_known else None
    return read_findings(picture_of(srgb, scale), (box(0.25, 0.2, 0.75, 0.8),))


def _sample(code: str, texture: Texture, colour=COLOUR) -> Sample:
    return sample(code, colour, kind=Kind.WRAPPED_FILLET, texture=texture)


BOTH = (_sample("coarse", COARSE), _sample("fine", FINE))


@pytest.mark.parametrize("is_scale_known", [True, False])
@pytest.mark.parametrize(
    ("picture", "best"),
    [
        ("pastel", "fine"),
        ("fine canvas", "fine"),
        ("photograph", "fine"),
        ("coarse canvas", "coarse"),
    ],
)
def test_the_surface_that_is_like_the_pictures_wins(picture, best, is_scale_known):
    found = _painted(picture, is_scale_known=is_scale_known)
    assert rank(found, BOTH)[0].sample.code == best


def test_a_pattern_coarser_than_the_border_does_not_count():
    found = _painted("pastel", is_scale_known=True)
    wide, narrow = (
        {line.sample.code: line.measures.texture for line in rank(found, BOTH, width=width)}
        for width in (None, Length.mm_of(3))
    )
    assert narrow["coarse"] > wide["coarse"]


def test_a_right_colour_in_the_wrong_surface_beats_a_wrong_colour_in_the_right_one():
    found = _painted("coarse canvas", is_scale_known=True)
    right = _sample("right colour", FINE, lch(62, 12, 52))
    wrong = _sample("right surface", COARSE, lch(55, 45, 250))
    assert rank(found, (wrong, right))[0].sample.code == "right colour"


def test_an_unmeasured_surface_has_no_affinity_and_loses_nothing_by_it():
    found = _painted("pastel", is_scale_known=True)
    plain = sample("plain", COLOUR, kind=Kind.WRAPPED_FILLET)
    line = rank(found, (plain,))[0]
    assert line.measures.texture != line.measures.texture
    merits = ranking(found, (plain, _sample("coarse", COARSE))).judgement.merit
    assert merits[0] > merits[1]


def test_crossed_grains_suit_less_than_parallel_ones():
    stripes = np.zeros((320, 320, 3), np.float32) + np.float32(COLOUR)
    stripes[..., 0] += 4 * np.sin(2 * np.pi * np.arange(320) * SURFACE_MM_PER_PX / 4.0)[:, None]
    level = measure_texture(stripes, SURFACE_MM_PER_PX)
    upright = measure_texture(np.ascontiguousarray(stripes.swapaxes(0, 1)), SURFACE_MM_PER_PX)
    lab = np.zeros((ROWS, COLUMNS, 3), np.float32) + np.float32(lch(70, 8, 70))
    lab[..., 0] += 4 * np.sin(2 * np.pi * np.arange(ROWS) * PICTURE_MM_PER_PX / 4.0)[:, None]
    srgb = (np.asarray(lab_d50_to_srgb(lab)) * 255 + 0.5).astype(np.uint8)
    found = read_findings(picture_of(srgb, PICTURE_MM_PER_PX), (box(0.25, 0.2, 0.75, 0.8),))
    lines = rank(found, (_sample("upright", upright), _sample("level", level)))
    assert lines[0].sample.code == "level"


def test_a_flat_surface_is_quiet_company_for_any_picture():
    for name in ("pastel", "photograph"):
        found = _painted(name, is_scale_known=True)
        lines = rank(found, (*BOTH, _sample("flat", FLAT)))
        assert lines[-1].sample.code != "flat"
