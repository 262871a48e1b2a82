"""What a rendering shows, measured in its pixels: widths, joints, colours, form and shade."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Finish, Kind
from framing_palette.colour import (
    delta_e_2000,
    lab_d50_to_linear_srgb,
    srgb_to_linear,
    srgb_u8_to_lab_d50,
)
from framing_palette.design import Sides
from framing_palette.preview import (
    Light,
    Options,
    Wall,
    render,
)
from framing_palette.preview.plans import Rect
from tests.preview.frames import (
    BLUE,
    EVEN_WALL,
    RED,
    SHOP,
    WHITE,
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
OVERHEAD = Options(
    light=Light(elevation_deg=89.0), wall=Wall((74.0, 0.0, 0.0), fall_off=0.0, dapple=0.0)
)


def shown(design, width_px=600, options=EVEN_WALL, **kwargs):
    return render(design, PICTURE, SHOP, width_px=width_px, options=options, **kwargs)


WALL = (74.0, 0.0, 0.0)


def edge_px(line, before, after, expected_px):
    """Where a line of pixels changes from one colour to another, to a part of a pixel.

    What a pixel on the edge holds of both is read in linear light; how bright it is does not
    count, so that the shade beside an edge does not move it.
    """
    start = int(expected_px) - 4
    linear = srgb_to_linear(line[start : start + 9] / 255.0)
    both = np.stack([lab_d50_to_linear_srgb(np.asarray(lab)) for lab in (before, after)], axis=1)
    parts = np.maximum(np.linalg.lstsq(both, linear.T)[0], 0.0)
    return start + 9 - (parts[1] / parts.sum(axis=0)).sum()


@settings(max_examples=12, deadline=None)
@given(
    width=st.integers(120, 700),
    height=st.integers(120, 700),
    left=st.integers(30, 90),
    right=st.integers(30, 90),
    width_px=st.integers(420, 900),
)
def test_widths_in_pixels_are_millimetres_times_the_scale_within_one_pixel(
    width, height, left, right, width_px
):
    borders = Sides(top=mm(40), right=mm(right), bottom=mm(55), left=mm(left))
    design = simple(width=width, height=height, inner=None, outer="EDGE-MAT", borders=borders)
    rendering = shown(design, width_px, OVERHEAD)
    scale = rendering.grid.px_per_mm
    line = rendering.srgb[int(rendering.grid.y_px(height / 2))]
    # The rabbet hides 6 mm of the mat less half of the play, 1/16 inch; 3 mm of the art hide.
    hidden = 6 - 25.4 / 16
    sight_left, sight_right = 3 - left + hidden, width - 3 + right - hidden
    edges_mm = [sight_left - 30, sight_left, 3, width - 3, sight_right, sight_right + 30]
    colours = [WALL, BLUE, RED, ART, RED, BLUE, WALL]
    edges = [
        edge_px(line, one, two, rendering.grid.x_px(mm))
        for one, two, mm in zip(colours, colours[1:], edges_mm, strict=False)
    ]
    widths = np.diff(edges)
    assert np.abs(widths - np.diff(edges_mm) * scale).max() <= 1
    assert np.abs(widths - np.diff(edges_mm) * scale).mean() <= 0.5


def test_a_column_through_the_middle_measures_the_heights():
    rendering = shown(simple(height=240, inner=None, outer="EDGE-MAT"), 500, OVERHEAD)
    scale = rendering.grid.px_per_mm
    line = rendering.srgb[:, int(rendering.grid.x_px(150))]
    y_px = rendering.grid.y_px
    top, bottom = edge_px(line, RED, ART, y_px(3)), edge_px(line, ART, RED, y_px(237))
    assert abs((bottom - top) - 234 * scale) <= 0.5


def test_a_bevel_of_45_degrees_shows_the_thickness_of_the_board():
    rendering = shown(simple(inner=None, outer="THICK-MAT"), 1600, OVERHEAD)
    scale = rendering.grid.px_per_mm
    line = rendering.srgb[int(rendering.grid.y_px(100))]
    dark_core = delta_e_2000(srgb_u8_to_lab_d50(line), np.asarray(WHITE)) > 3.5
    hole = rendering.plan.layers[0].holes[0].rect
    edge = int(rendering.grid.x_px(hole.left))
    flat = np.flatnonzero(~dark_core[:edge])[-1]
    assert abs((edge - flat) - 3 * scale) <= 1.5


def test_the_mitre_of_a_moulding_runs_at_45_degrees():
    rendering = shown(simple(moulding="GREY-ROUND"), 900)
    box = rendering.grid.around(rendering.plan.extent)
    face = int(30 * rendering.grid.px_per_mm)
    corner = rendering.srgb[
        box.row_0 : box.row_0 + face, box.column_0 : box.column_0 + face
    ].astype(int)
    top_side, left_side = corner[:, -1], corner[-1, :]
    # Above the mitre a pixel looks like the top rail at its row, below it like the left rail.
    like_top = np.abs(corner - top_side[:, None]).sum(axis=2)
    like_left = np.abs(corner - left_side[None, :]).sum(axis=2)
    rows, columns = np.mgrid[0:face, 0:face]
    clear = (np.abs(top_side[:, None] - left_side[None, :]).sum(axis=2) > 20) & (
        np.abs(rows - columns) > 3
    )
    above = columns > rows
    assert clear.sum() > 200
    assert (like_top[clear & above] < like_left[clear & above]).mean() > 0.99
    assert (like_left[clear & ~above] < like_top[clear & ~above]).mean() > 0.99


@pytest.mark.parametrize("finish", list(Finish))
def test_level_parts_have_the_samples_own_colour_whatever_the_finish(finish):
    shop = SHOP
    flat = sample("FINISH", Kind.MOULDING, BLUE, finish=finish, profile=SHOP["BLUE-FLAT"].profile)
    shop = type(SHOP)((*SHOP.samples, flat))
    rendering = render(
        simple(moulding="FINISH", shop=shop), picture(), shop, width_px=900, options=EVEN_WALL
    )
    extent = rendering.plan.extent
    rail = Rect(extent.left + 80, extent.bottom - 22, extent.right - 80, extent.bottom - 8)
    assert apart(block(rendering, rail), BLUE) < 0.5


@pytest.mark.parametrize("code", ["WHITE-MAT", "RED-MAT"])
def test_the_flat_of_a_mat_has_the_samples_own_colour(code):
    rendering = shown(simple(inner=None, outer=code), 900)
    hole = rendering.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 30, hole.left - 15, hole.bottom - 30)
    assert apart(block(rendering, flat), SHOP[code].mean_lab) < 0.5


def test_a_relief_texture_keeps_the_mean_of_the_flat_and_shows(tmp_path):
    relief = np.random.default_rng(1).normal(128, 14, (120, 120)).clip(0, 255).astype(np.uint8)
    shop = textured("WOVEN", Kind.MAT, RED, tmp_path, relief, scale=0.5)
    rendering = render(
        simple(inner=None, outer="WOVEN", shop=shop), picture(), shop, width_px=900,
        options=EVEN_WALL,
    )  # fmt: skip
    hole = rendering.plan.layers[0].holes[0].rect
    flat = block(rendering, Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20))
    assert apart(flat, RED) < 1.0
    assert srgb_u8_to_lab_d50(flat)[..., 0].std() > 1.0


def test_a_photographed_surface_is_moved_to_the_samples_colour(tmp_path):
    noise = np.random.default_rng(2).normal(0, 18, (90, 120, 1))
    wrong = (np.array([120, 150, 90]) + noise).clip(0, 255).astype(np.uint8)
    shop = textured("SPOTTED", Kind.MAT, RED, tmp_path, wrong, scale=0.4)
    rendering = render(
        simple(inner=None, outer="SPOTTED", shop=shop), picture(), shop, width_px=900,
        options=EVEN_WALL,
    )  # fmt: skip
    hole = rendering.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20)
    assert apart(block(rendering, flat), RED) < 1.0


def test_a_near_white_board_with_a_strong_relief_is_not_darkened_by_clipping(tmp_path):
    relief = np.random.default_rng(3).normal(128, 25, (120, 120)).clip(0, 255).astype(np.uint8)
    shop = textured("SNOW", Kind.MAT, (96.0, 0.0, 1.0), tmp_path, relief, scale=0.5)
    rendering = render(
        simple(inner=None, outer="SNOW", shop=shop), picture(), shop, width_px=900,
        options=EVEN_WALL,
    )  # fmt: skip
    hole = rendering.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20)
    assert apart(block(rendering, flat), (96.0, 0.0, 1.0)) < 1.0
    assert rendering.clipped_share < 0.01


def test_a_black_texture_leaves_the_samples_colour(tmp_path):
    shop = textured("BLACK", Kind.MAT, RED, tmp_path, np.zeros((8, 8), np.uint8))
    rendering = render(
        simple(inner=None, outer="BLACK", shop=shop), picture(), shop, width_px=500,
        options=EVEN_WALL,
    )  # fmt: skip
    hole = rendering.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20)
    assert apart(block(rendering, flat), RED) < 0.5


def test_a_texture_of_one_pixel_is_an_even_surface(tmp_path):
    shop = textured("DOT", Kind.MAT, RED, tmp_path, np.full((1, 1, 3), 77, np.uint8))
    rendering = render(
        simple(inner=None, outer="DOT", shop=shop), picture(), shop, width_px=500,
        options=EVEN_WALL,
    )  # fmt: skip
    hole = rendering.plan.layers[0].holes[0].rect
    flat = Rect(hole.left - 40, hole.top + 20, hole.left - 12, hole.bottom - 20)
    assert apart(block(rendering, flat), RED) < 0.5


def test_the_art_shows_its_own_colours_away_from_the_mat():
    rendering = shown(simple(), 900)
    assert apart(block(rendering, Rect(40, 40, 260, 160)), ART) < 0.5


@pytest.mark.parametrize(
    ("azimuth", "shaded", "lit"),
    [(0, "bottom", "top"), (90, "left", "right"), (180, "top", "bottom"), (270, "right", "left")],
)
def test_the_frames_shadow_falls_away_from_the_light(azimuth, shaded, lit):
    options = Options(light=Light(azimuth_deg=azimuth), wall=EVEN_WALL.wall)
    rendering = shown(simple(), 500, options)
    e = rendering.plan.extent
    beside = {
        "top": Rect(e.left + 60, e.top - 9, e.right - 60, e.top - 3),
        "bottom": Rect(e.left + 60, e.bottom + 3, e.right - 60, e.bottom + 9),
        "left": Rect(e.left - 9, e.top + 60, e.left - 3, e.bottom - 60),
        "right": Rect(e.right + 3, e.top + 60, e.right + 9, e.bottom - 60),
    }
    light = {side: block(rendering, rect).mean() for side, rect in beside.items()}
    assert light[shaded] < 0.8 * light[lit]
    assert light[shaded] == min(light.values())


def test_a_mat_throws_its_shadow_onto_the_art_on_the_side_of_the_light():
    options = Options(light=Light(azimuth_deg=0.0), wall=EVEN_WALL.wall)
    pale = picture(lab=(70.0, 0.0, 0.0))
    rendering = render(
        simple(inner=None, outer="THICK-MAT"), pale, SHOP, width_px=1400, options=options
    )
    hole = rendering.plan.layers[0].holes[0].rect
    near_top = block(rendering, Rect(60, hole.top + 0.3, 240, hole.top + 1.5)).mean()
    near_bottom = block(rendering, Rect(60, hole.bottom - 1.5, 240, hole.bottom - 0.3)).mean()
    middle = block(rendering, Rect(60, 80, 240, 120)).mean()
    assert near_top < 0.94 * middle
    assert near_bottom > near_top + 5
    assert near_bottom <= middle


def test_the_bevel_that_faces_the_light_is_the_brighter_one():
    rendering = shown(simple(inner=None, outer="THICK-MAT"), 1400)
    hole = rendering.plan.layers[0].holes[0].rect
    top = block(rendering, Rect(60, hole.top - 2.4, 240, hole.top - 0.6)).mean()
    bottom = block(rendering, Rect(60, hole.bottom + 0.6, 240, hole.bottom + 2.4)).mean()
    left = block(rendering, Rect(hole.left - 2.4, 60, hole.left - 0.6, 140)).mean()
    right = block(rendering, Rect(hole.right + 0.6, 60, hole.right + 2.4, 140)).mean()
    assert top < right < bottom or top < bottom
    assert left < right
    assert top < left  # the light stands a little nearer to the top than to the left


def test_a_quarter_turn_of_everything_turns_the_picture():
    design = simple(width=260, height=180, moulding="GREY-ROUND")
    light = Light(azimuth_deg=300.0)
    options = Options(light=light, wall=EVEN_WALL.wall, height_px=400)
    upright = render(design, busy_picture(), SHOP, width_px=520, options=options)
    turned_picture = busy_picture()
    turned_picture = type(turned_picture)(
        np.ascontiguousarray(np.rot90(turned_picture.lab_d50, -1)),
        None,
        turned_picture.colour_trust,
        turned_picture.rows,
        turned_picture.columns,
    )
    turned_options = Options(light=Light(azimuth_deg=30.0), wall=EVEN_WALL.wall, height_px=520)
    turned = render(design.turned(), turned_picture, SHOP, width_px=400, options=turned_options)
    difference = np.abs(np.rot90(upright.srgb, -1).astype(int) - turned.srgb)
    assert difference.mean() < 0.4
    assert (difference.max(axis=2) > 12).mean() < 0.01


def test_a_margin_round_a_floated_art_shows_the_ground():
    design = simple(inner=None)
    art = type(design.art)(mm(200), mm(150), mm(2), mm(-15))
    floated = type(design)(art, design.layers, moulding=design.moulding)
    rendering = shown(floated, 700)
    ground = block(rendering, Rect(-12, 20, -4, 130))
    assert apart(ground, (95.0, -0.2, 2.6)) < 4
    assert apart(block(rendering, Rect(40, 30, 160, 120)), ART) < 1


def test_a_moulding_wider_than_the_picture_is_drawn_true():
    wide = sample(
        "BEAM", Kind.MOULDING, BLUE, face=mm(150), profile=type(SHOP["BLUE-FLAT"].profile)(
            ((0.0, 20.0), (150.0, 20.0))
        ),
    )  # fmt: skip
    shop = type(SHOP)((*SHOP.samples, wide))
    design = simple(width=60, height=50, inner=None, borders=20, moulding="BEAM", shop=shop)
    rendering = render(design, picture(50, 60), shop, width_px=600, options=OVERHEAD)
    line, x_px = rendering.srgb[int(rendering.grid.y_px(25))], rendering.grid.x_px
    sight = 3 - 20 + 6 - 25.4 / 16
    outer, inner = (
        edge_px(line, WALL, BLUE, x_px(sight - 150)),
        edge_px(line, BLUE, RED, x_px(sight)),
    )
    assert abs((inner - outer) - 150 * rendering.grid.px_per_mm) <= 1


def test_the_slopes_of_a_round_moulding_that_face_the_lamp_are_the_bright_ones():
    rendering = shown(simple(moulding="GREY-ROUND"), 900)
    e = rendering.plan.extent
    top_outer = block(rendering, Rect(e.left + 60, e.top + 3, e.right - 60, e.top + 9)).mean()
    top_inner = block(rendering, Rect(e.left + 60, e.top + 21, e.right - 60, e.top + 27)).mean()
    low_inner = block(
        rendering, Rect(e.left + 60, e.bottom - 27, e.right - 60, e.bottom - 21)
    ).mean()
    assert top_outer > top_inner  # its outer slope faces the lamp
    assert low_inner > top_inner


def test_leaf_gleams_more_than_matt_on_the_same_form():
    def spread(code):
        rendering = shown(simple(moulding=code), 900)
        e = rendering.plan.extent
        rail = block(rendering, Rect(e.left + 60, e.top + 1, e.right - 60, e.top + 29))
        return np.ptp(rail.mean(axis=(1, 2)))

    assert spread("GREY-LEAF") > 1.15 * spread("GREY-ROUND")
    assert spread("GREY-GLOSS") >= spread("GREY-ROUND")


def test_the_grain_of_wood_runs_the_length_of_every_stick(tmp_path):
    lines = 128 + 25 * np.random.default_rng(4).standard_normal((150, 1))
    grain = np.repeat(lines, 400, axis=1).clip(0, 255).astype(np.uint8)
    shop = textured("WOOD", Kind.MOULDING, RED, tmp_path, grain, profile=SHOP["BLUE-FLAT"].profile)
    rendering = render(
        simple(moulding="WOOD", shop=shop), picture(), shop, width_px=1200, options=EVEN_WALL
    )
    e = rendering.plan.extent
    level = Rect(e.left + 60, e.top + 4, e.right - 60, e.top + 26)
    upright = Rect(e.left + 4, e.top + 60, e.left + 26, e.bottom - 60)
    for rail, along in ((level, 1), (upright, 0)):
        tone = block(rendering, rail).astype(float).mean(axis=2)
        assert (
            np.abs(np.diff(tone, axis=along)).mean()
            < 0.1 * np.abs(np.diff(tone, axis=1 - along)).mean()
        )
