"""A corner at life size, designs side by side, ovals, several openings and glazing."""

from dataclasses import replace

import numpy as np
import pytest

from framing_palette.catalogue import Kind, Profile
from framing_palette.design import (
    Arrangement,
    Art,
    Design,
    Shape,
    Window,
    layer_of,
    moulding_of,
)
from framing_palette.errors import FieldError
from framing_palette.preview import (
    Corner,
    Options,
    Pane,
    render,
    render_corner,
    render_side_by_side,
)
from framing_palette.preview.plans import Rect
from tests.preview.frames import (
    BLUE,
    EVEN_WALL,
    GREEN,
    RED,
    SHOP,
    all_round,
    apart,
    block,
    mm,
    picture,
    simple,
    textured,
)

ART = (20.0, 0.0, 0.0)


@pytest.mark.parametrize("corner", list(Corner))
def test_a_corner_is_drawn_at_the_scale_asked_for(corner):
    done = render_corner(
        simple(), picture(), SHOP, width_px=400, height_px=300, px_per_mm=4.0, corner=corner,
        options=EVEN_WALL,
    )  # fmt: skip
    assert done.srgb.shape == (300, 400, 3)
    assert done.grid.px_per_mm == 4.0
    extent = done.plan.extent
    x = extent.left + 15 if "left" in corner else extent.right - 15
    y = extent.top + 45 if "top" in corner else extent.bottom - 45
    assert apart(block(done, Rect(x - 4, y - 8, x + 4, y + 8)), BLUE) < 1.0
    beyond = 1 if "left" in corner else -2
    row = 1 if "top" in corner else -2
    assert np.abs(done.srgb[row, beyond].astype(int) - done.srgb[row, beyond, 0]).max() <= 1


def test_a_corner_at_life_size_is_the_same_corner_as_in_the_whole():
    done = render_corner(
        simple(), picture(), SHOP, width_px=300, height_px=200, px_per_mm=2.0, options=EVEN_WALL
    )
    whole = render(simple(), picture(), SHOP, width_px=int(1 + 2.0 * 500), options=EVEN_WALL)
    rect = Rect(-30, -30, 20, 20)
    assert apart(block(done, rect), [0, 0, 0]) == pytest.approx(
        apart(block(whole, rect), [0, 0, 0]), abs=1.0
    )


@pytest.mark.parametrize(
    ("px_per_mm", "field"), [(0.0, "px_per_mm"), (1e4, "px_per_mm"), (float("nan"), "px_per_mm")]
)
def test_a_corner_at_an_impossible_scale_is_refused(px_per_mm, field):
    with pytest.raises(FieldError, match=field):
        render_corner(simple(), picture(), SHOP, width_px=100, height_px=100, px_per_mm=px_per_mm)


def test_designs_hang_side_by_side_at_one_scale_with_their_middles_level():
    small, large = simple(width=150, height=100), simple()
    done = render_side_by_side([small, large], [picture()], SHOP, width_px=900)
    first, second = done.places
    single = render(large, picture(), SHOP, width_px=900).plan.extent
    ratio = second.columns / single.width
    assert second.rows / single.height == pytest.approx(ratio, abs=0.02)
    assert first.columns < second.columns
    assert first.column_1 < second.column_0
    assert abs((first.row_0 + first.row_1) - (second.row_0 + second.row_1)) <= 2
    assert done.srgb.shape[1] == 900


def test_each_design_beside_another_shows_its_own_picture_and_colours():
    pale, dark = picture(lab=(80.0, 0.0, 0.0)), picture(lab=ART)
    done = render_side_by_side(
        [simple(outer="WHITE-MAT"), simple()], [pale, dark], SHOP, width_px=900, options=EVEN_WALL
    )
    middles = [
        done.srgb[(box.row_0 + box.row_1) // 2, (box.column_0 + box.column_1) // 2]
        for box in done.places
    ]
    assert apart(middles[0][None, None], (80.0, 0, 0)) < 1
    assert apart(middles[1][None, None], ART) < 1


@pytest.mark.parametrize(("designs", "pictures"), [(0, 1), (2, 3), (1, 0)])
def test_designs_without_their_pictures_are_refused(designs, pictures):
    with pytest.raises(FieldError, match="designs"):
        render_side_by_side([simple()] * designs, [picture()] * pictures, SHOP, width_px=400)


def oval(layers=1, outer="RED-MAT"):
    stack = [layer_of(SHOP[outer], borders=all_round(50))]
    if layers == 2:
        stack.insert(0, layer_of(SHOP["WHITE-MAT"], reveal=all_round(8)))
    art = Art(mm(200), mm(260), mm(1), mm(3), Shape.OVAL)
    return Design(art, tuple(stack), moulding=moulding_of(SHOP["BLUE-FLAT"]))


def test_an_oval_opening_shows_an_ellipse_of_the_art():
    done = render(oval(), picture(260, 200), SHOP, width_px=700, options=EVEN_WALL)
    scale = done.grid.px_per_mm
    dark = done.srgb.max(axis=2) < 64  # the art alone is as dark as that
    box = done.grid.around(done.plan.arts[0])
    inside = dark[box.row_0 : box.row_1, box.column_0 : box.column_1].sum() / scale**2
    assert inside == pytest.approx(np.pi * 97 * 127, rel=0.02)
    corner = block(done, Rect(6, 6, 16, 16))
    assert apart(corner, RED) < 1.0


def test_the_reveal_of_a_double_oval_mat_is_exact_on_its_axes():
    done = render(oval(2), picture(260, 200), SHOP, width_px=900, options=EVEN_WALL)
    inner, outer = (layer.holes[0].rect for layer in done.plan.layers[:2])
    assert inner.left - outer.left == pytest.approx(8.0)
    band = block(done, Rect(inner.left - 5.5, 120, inner.left - 2.5, 140))
    assert apart(band, (92.0, 0.0, 4.0)) < 3.0


def test_an_ovals_bevel_is_brighter_toward_the_light():
    done = render(oval(outer="THICK-MAT"), picture(260, 200), SHOP, width_px=1200)
    hole = done.plan.layers[0].holes[0].rect
    x, y = hole.middle
    top = block(done, Rect(x - 5, hole.top - 2, x + 5, hole.top - 0.8)).mean()
    bottom = block(done, Rect(x - 5, hole.bottom + 0.8, x + 5, hole.bottom + 2)).mean()
    right = block(done, Rect(hole.right + 0.8, y - 5, hole.right + 2, y + 5)).mean()
    assert top < right < bottom


def test_a_bent_fillet_follows_an_oval():
    design = oval()
    fillet = layer_of(SHOP["STEP-FILLET"], reveal=all_round(5))
    design = replace(design, layers=(fillet, *design.layers))
    done = render(design, picture(260, 200), SHOP, width_px=900, options=EVEN_WALL)
    hole = done.plan.layers[0].holes[0].rect
    y = hole.middle[1]
    assert apart(block(done, Rect(hole.left - 3.5, y - 6, hole.left - 1.5, y + 6)), GREEN) < 4.0
    diagonal = hole.width / 2 * np.sqrt(0.5)
    x = hole.middle[0] - diagonal - 2.0
    corner = Rect(x - 1, y - hole.height / 2 * np.sqrt(0.5) - 2, x + 1, y)
    assert done.grid.inside(corner).rows > 0


def test_the_grain_of_a_bent_fillet_follows_the_curve(tmp_path):
    lines = np.zeros((30, 60), np.uint8) + 90
    lines[:4] = 240  # a bright line along the sight edge
    shop = textured(
        "LINED", Kind.WOOD_FILLET, GREEN, tmp_path, lines, scale=0.5, thickness=mm(3),
        profile=Profile(((0.0, 3.0), (12.0, 3.0))),
    )  # fmt: skip
    design = oval()
    fillet = layer_of(shop["LINED"], reveal=all_round(6))
    design = replace(design, layers=(fillet, *design.layers))
    done = render(design, picture(260, 200), shop, width_px=1000, options=EVEN_WALL)
    hole = done.plan.layers[0].holes[0].rect
    x, y = hole.middle
    for edge, across in ((hole.left, -1), (hole.right, 1)):
        sight, outer = (
            sorted((edge + across * 0.5, edge + across * 1.5)),
            sorted((edge + across * 3.5, edge + across * 5.0)),
        )
        bright = block(done, Rect(sight[0], y - 8, sight[1], y + 8)).mean()
        assert bright > 1.3 * block(done, Rect(outer[0], y - 8, outer[1], y + 8)).mean()
    bottom = block(done, Rect(x - 8, hole.bottom + 0.5, x + 8, hole.bottom + 1.5)).mean()
    assert bottom > 1.3 * block(done, Rect(x - 8, hole.bottom + 3.5, x + 8, hole.bottom + 5)).mean()


def test_every_window_of_a_multiple_mat_shows_art_bevel_and_mat():
    design = Design(
        Art(mm(80), mm(60), mm(1), mm(3)),
        (
            layer_of(SHOP["WHITE-MAT"], reveal=all_round(6)),
            layer_of(SHOP["RED-MAT"], borders=all_round(40)),
        ),
        moulding=moulding_of(SHOP["BLUE-FLAT"]),
        arrangement=Arrangement(tuple(Window(mm(80), mm(60)) for _ in range(6)), 3, mm(20)),
    )
    done = render(design, picture(60, 80), SHOP, width_px=1100, options=EVEN_WALL)
    for art in done.plan.arts:
        middle = Rect(art.left + 20, art.top + 15, art.right - 20, art.bottom - 15)
        assert apart(block(done, middle), ART) < 1.0
        reveal = Rect(art.left - 1.6, art.top + 20, art.left + 1.0, art.bottom - 20)
        assert apart(block(done, reveal), (92.0, 0.0, 4.0)) < 3.0
    one, two = done.plan.arts[:2]
    between = Rect(one.right + 10, one.top + 10, two.left - 10, one.bottom - 10)
    assert apart(block(done, between), RED) < 1.5


def test_a_plain_pane_mirrors_a_little_and_a_coated_one_much_less():
    design = simple(glazing=True)
    looks = {
        pane: render(
            design, picture(), SHOP, width_px=500, options=Options(pane=pane, wall=EVEN_WALL.wall)
        ).srgb.astype(int)
        for pane in Pane
    }
    bare = looks[Pane.NONE]
    plain = np.abs(looks[Pane.PLAIN] - bare)
    coated = np.abs(looks[Pane.LOW_REFLECTION] - bare)
    assert 2 < plain.max() < 60
    assert coated.mean() < 0.4 * plain.mean()
    assert plain[:20].max() == 0  # the wall is not behind the glass
    unglazed = render(
        simple(), picture(), SHOP, width_px=500,
        options=Options(pane=Pane.PLAIN, wall=EVEN_WALL.wall),
    )  # fmt: skip
    assert np.array_equal(unglazed.srgb, render(simple(), picture(), SHOP, width_px=500,
                                                options=EVEN_WALL).srgb)  # fmt: skip


def test_a_pane_out_of_sight_draws_nothing():
    done = render_corner(
        simple(glazing=True), picture(), SHOP, width_px=40, height_px=40, px_per_mm=4.0,
        options=Options(pane=Pane.PLAIN, wall=EVEN_WALL.wall),
    )  # fmt: skip
    bare = render_corner(
        simple(glazing=True), picture(), SHOP, width_px=40, height_px=40, px_per_mm=4.0,
        options=EVEN_WALL,
    )  # fmt: skip
    assert np.array_equal(done.srgb, bare.srgb)


def test_notices_of_several_designs_are_told_once():
    bare = simple(moulding="BARE-MOULDING")
    done = render_side_by_side([bare, bare], [picture()], SHOP, width_px=400)
    assert sum("BARE-MOULDING" in notice for notice in done.notices) == 1
