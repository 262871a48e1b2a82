"""A design, a picture and a catalogue in, an image out."""

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.colour import (
    linear_to_srgb,
)
from framing_palette.errors import FieldError, RenderingStoppedError, UnknownSampleError
from framing_palette.preview import (
    Easel,
    Options,
    Quality,
    plan_of,
    render,
    render_design,
    render_linear,
)
from framing_palette.preview.plans import Rect
from tests.preview.frames import (
    EVEN_WALL,
    RED,
    SHOP,
    WHITE,
    all_round,
    apart,
    block,
    busy_picture,
    mm,
    picture,
    sample,
    simple,
    textured,
)

ART = (42.0, -22.0, -6.0)  # as light as the mat, so that half a pixel counts as half
PICTURE = picture(lab=ART)


def shown(design, width_px=600, options=EVEN_WALL, **kwargs):
    return render(design, PICTURE, SHOP, width_px=width_px, options=options, **kwargs)


def test_the_same_input_gives_the_same_pixels_to_the_last_digit(tmp_path):
    relief = np.random.default_rng(1).normal(128, 14, (60, 80)).clip(0, 255).astype(np.uint8)
    shop = textured("WOVEN", Kind.MAT, RED, tmp_path, relief)
    design = simple(outer="WOVEN", shop=shop)
    one, two = (render_design(design, busy_picture(), shop, width_px=400) for _ in range(2))
    assert np.array_equal(one, two)


def test_bands_fit_together_to_the_last_digit(monkeypatch, tmp_path):
    relief = np.random.default_rng(1).normal(128, 14, (60, 80)).clip(0, 255).astype(np.uint8)
    shop = textured("WOVEN", Kind.MAT, RED, tmp_path, relief)
    design = simple(inner="WHITE-MAT", outer="WOVEN", moulding="GREY-LEAF", shop=shop)
    whole, _ = render_linear(design, busy_picture(30, 40), shop, width_px=400)
    monkeypatch.setattr("framing_palette.preview.rendering._BAND_PIXELS", 400 * 37)
    banded, _ = render_linear(design, busy_picture(30, 40), shop, width_px=400)
    assert np.array_equal(whole, banded)


def test_linear_light_comes_with_the_same_rendering():
    art = busy_picture()
    linear, done = render_linear(simple(), art, SHOP, width_px=300)
    same = render(simple(), art, SHOP, width_px=300)
    assert np.array_equal(done.srgb, same.srgb)
    assert done.plan == same.plan
    assert linear_to_srgb(linear.clip(0, 1)) * 255 == pytest.approx(done.srgb, abs=0.6)


def test_full_quality_agrees_with_the_draft_but_for_the_finest_lines():
    options = Options(wall=EVEN_WALL.wall, quality=Quality.FULL)
    draft, full = shown(simple(), 500), shown(simple(), 500, options)
    difference = np.abs(draft.srgb.astype(int) - full.srgb)
    assert full.srgb.shape == draft.srgb.shape
    assert difference.mean() < 1.0


def test_progress_runs_up_to_one_and_a_no_stops_the_work():
    told = []
    options = Options(quality=Quality.FULL)
    shown(simple(), 700, options, tell=lambda share: told.append(share) or True)
    assert told == sorted(told)
    assert told[0] == 0.0
    assert told[-1] == 1.0
    with pytest.raises(RenderingStoppedError):
        shown(simple(), 700, options, tell=lambda share: share < 0.3)


@pytest.mark.parametrize("width_px", [0, -5, 15, 20_001])
def test_an_image_of_impossible_width_is_refused(width_px):
    with pytest.raises(FieldError, match="width_px"):
        shown(simple(), width_px)


def test_an_unknown_code_is_refused_by_name():
    design = simple(inner=None)
    with pytest.raises(UnknownSampleError, match="RED-MAT"):
        render(design, picture(), type(SHOP)(SHOP.samples[:1]), width_px=300)


def test_a_colour_that_no_screen_shows_is_counted():
    vivid = sample("VIVID", Kind.MAT, (60.0, 90.0, 90.0))
    shop = type(SHOP)((*SHOP.samples, vivid))
    rendering = render(simple(inner=None, outer="VIVID", shop=shop), picture(), shop, width_px=400)
    plan, scale = rendering.plan, rendering.grid.px_per_mm
    hole = plan.layers[0].holes[0].rect
    sight = plan.layers[1].holes[0].rect
    area = (sight.width * sight.height - hole.width * hole.height) * scale**2
    share = area / (rendering.srgb.shape[0] * rendering.srgb.shape[1])
    assert rendering.clipped_share == pytest.approx(share, rel=0.12)
    assert shown(simple(), 400).clipped_share < 0.002


def test_a_picture_of_other_proportions_is_cut_in_the_middle_and_told():
    lab = np.zeros((100, 300, 3), np.float32)
    lab[..., 0] = 50
    lab[:, :60, 1] = 60  # only in the part that is cut away
    wide = type(picture())(lab, None, picture().colour_trust, 300, 100)
    rendering = render(simple(), wide, SHOP, width_px=500)
    assert "proportions differ" in " ".join(rendering.notices)
    assert abs(np.diff(block(rendering, Rect(40, 40, 260, 160)).astype(int), axis=2)).max() < 4


def test_the_clients_light_changes_colours_and_grey_stays_grey():
    warm = shown(simple(), 400, Options(wall=EVEN_WALL.wall, under="A"))
    day = shown(simple(), 400, Options(wall=EVEN_WALL.wall))
    assert not np.array_equal(warm.srgb, day.srgb)
    corner = warm.srgb[:8, :8].astype(int)
    assert np.abs(corner - corner.mean(axis=2, keepdims=True)).max() <= 2
    assert any("estimate" in notice for notice in warm.notices)
    with pytest.raises(FieldError, match="light"):
        shown(simple(), 400, Options(under="candle"))


def test_a_frame_without_layers_and_a_stack_without_a_frame_are_both_drawn():
    bare = simple(inner=None, borders=30)
    unframed = type(bare)(bare.art, bare.layers)
    rendering = shown(unframed, 400)
    assert rendering.plan.extent.width == pytest.approx(300 - 6 + 60)
    only = type(bare)(type(bare.art)(mm(300), mm(200)), (), moulding=bare.moulding)
    rendering = shown(only, 400)
    assert apart(block(rendering, Rect(60, 60, 240, 140)), ART) < 1


def test_an_easel_that_is_reused_draws_what_a_fresh_one_draws():
    easel = Easel()
    for design in (simple(), simple(outer="WHITE-MAT"), simple(moulding="GREY-LEAF"), simple()):
        again = shown(design, 500, easel=easel)
        fresh = shown(design, 500)
        assert np.array_equal(again.srgb, fresh.srgb)
    assert again.clipped_share == fresh.clipped_share


def test_nothing_is_redrawn_when_nothing_changed():
    easel = Easel()
    one, two = (shown(simple(), 400, easel=easel) for _ in range(2))
    assert one.srgb is two.srgb


def test_the_plan_of_a_rendering_is_the_plan_of_the_design():
    rendering = shown(simple(), 400)
    assert rendering.plan == plan_of(simple(), SHOP)
    assert rendering.plan.layers[0].skin.lab == WHITE
    assert all_round(3).top == mm(3)
