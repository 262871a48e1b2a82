"""What cannot be drawn, and what can be drawn although it looks as if it could not."""

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Kind
from framing_palette.errors import FieldError, OutputError
from framing_palette.preview import (
    WallPhoto,
    render,
    render_corner,
    render_on_wall,
    render_side_by_side,
    write_preview_file,
)
from framing_palette.preview.plans import Rect
from tests.preview.frames import RED, SHOP, apart, block, mm, picture, sample, simple, textured

CORNERS = ((0.1, 0.1), (0.3, 0.1), (0.3, 0.4), (0.1, 0.4))


def shop_with(*samples):
    return type(SHOP)((*SHOP.samples, *samples))


@pytest.mark.parametrize(
    ("design", "field"),
    [
        (lambda: simple(reveal=0), "reveal"),
        (lambda: simple(inner=None, borders=0), "borders"),
        (lambda: simple(width=0), "width"),
    ],
)
def test_a_layer_of_no_width_is_refused_with_the_field_to_mend(design, field):
    with pytest.raises(FieldError, match=f"{field}.* is 0; give a length above zero"):
        render(design(), picture(), SHOP, width_px=300)


@pytest.mark.parametrize("kind", [Kind.MOULDING, Kind.WOOD_FILLET])
def test_a_stick_of_no_width_is_refused(kind):
    shop = shop_with(sample("THIN", kind, RED, face=mm(0)))
    where = {"moulding": "THIN"} if kind is Kind.MOULDING else {"inner": "THIN"}
    with pytest.raises(FieldError, match="face is 0"):
        render(simple(shop=shop, **where), picture(), shop, width_px=300)


def test_a_sample_of_which_nothing_is_known_is_drawn_plain_and_told():
    bare = sample("BARE", Kind.WOOD_FILLET, None, thickness=None)
    shop = shop_with(bare)
    done = render(simple(inner="BARE", reveal=5, shop=shop), picture(), shop, width_px=300)
    told = " ".join(done.notices)
    for missing in ("no colour", "no cross-section", "no thickness"):
        assert f"BARE has {missing}" in told or f"Layer 1 has {missing}" in told


def test_a_picture_without_a_known_size_takes_the_designs():
    art = picture()
    assert art.mm_per_px is None
    done = render(simple(width=320, height=210), art, SHOP, width_px=400)
    hole = done.plan.layers[0].holes[0].rect
    assert (hole.width, hole.height) == pytest.approx((314, 204))


def test_a_picture_of_one_pixel_fills_its_place():
    done = render(simple(), picture(1, 1, (42.0, -22.0, -6.0)), SHOP, width_px=400)
    assert apart(block(done, Rect(40, 40, 260, 160)), (42.0, -22.0, -6.0)) < 1


@pytest.mark.parametrize(
    "show",
    [
        lambda art: render(simple(), art, SHOP, width_px=300),
        lambda art: render_side_by_side([simple()], [art], SHOP, width_px=300),
        lambda art: render_corner(
            simple(), art, SHOP, width_px=300, height_px=200, px_per_mm=2.0
        ),
        lambda art: render_on_wall(
            simple(), art, SHOP, WallPhoto(picture(), CORNERS, 200.0, 200.0), middle_mm=(400, 200)
        ),
    ],
)  # fmt: skip
def test_a_picture_of_no_pixels_is_refused_in_every_scene(show):
    with pytest.raises(FieldError, match="picture is 5 x 0 pixels; give one with something on it"):
        show(picture(0, 5))


def test_pixels_that_are_no_numbers_do_no_harm_beyond_themselves():
    art = picture(lab=(42.0, -22.0, -6.0))
    art.lab_d50[:20] = np.nan
    art.lab_d50[20:30] = 1e9
    done = render(simple(), art, SHOP, width_px=400)
    assert apart(block(done, Rect(40, 60, 260, 160)), (42.0, -22.0, -6.0)) < 1


@pytest.mark.parametrize("shape", [(1, 1), (1, 8000), (8000, 40)])
def test_textures_of_one_pixel_and_of_eight_thousand_are_drawn_in_the_samples_colour(
    tmp_path, shape
):
    relief = np.random.default_rng(2).normal(128, 10, shape).clip(0, 255).astype(np.uint8)
    shop = textured("ODD", Kind.MAT, RED, tmp_path, relief, scale=0.05)
    done = render(simple(inner=None, outer="ODD", shop=shop), picture(), shop, width_px=500)
    hole = done.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20)
    assert apart(block(done, flat), RED) < 1.0
    assert not done.notices


def test_a_texture_that_is_no_image_is_left_out_and_the_rest_is_drawn(tmp_path):
    shop = textured("TEXT", Kind.MAT, RED, tmp_path, np.full((9, 9), 128, np.uint8))
    (tmp_path / "TEXT.png").write_text("not an image")
    done = render(simple(inner=None, outer="TEXT", shop=shop), picture(), shop, width_px=300)
    assert "TEXT.png" in " ".join(done.notices)


@pytest.mark.parametrize("ending", [".png", ".tif", ".html"])
def test_a_place_that_cannot_be_written_is_told_and_what_lies_there_stays(tmp_path, ending):
    taken = tmp_path / f"taken{ending}"
    taken.mkdir()
    (taken / "keep.txt").write_text("mine")
    with pytest.raises(OutputError, match="taken"):
        write_preview_file(taken, simple(), picture(), SHOP, width_px=64)
    assert (taken / "keep.txt").read_text() == "mine"
    assert [path.name for path in tmp_path.iterdir()] == [taken.name]


def test_a_path_below_a_file_is_told(tmp_path):
    Image.new("RGB", (2, 2)).save(tmp_path / "file.png")
    with pytest.raises(OutputError, match=r"file\.png"):
        write_preview_file(
            tmp_path / "file.png" / "out.png", simple(), picture(), SHOP, width_px=64
        )
