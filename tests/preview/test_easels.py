"""What is remembered between renderings."""

from dataclasses import replace

import numpy as np

from framing_palette.catalogue import Kind
from framing_palette.preview import Easel, render
from framing_palette.preview.recent import Recent
from tests.preview.frames import RED, SHOP, mm, picture, sample, simple, textured


def counted(monkeypatch):
    """Count the strips and flats that are drawn."""
    from framing_palette.preview import shade, sheets, strips

    calls = []

    def counting(*args, **kwargs):
        calls.append(args[0])
        return shade.shade(*args, **kwargs)

    monkeypatch.setattr(sheets, "shade", counting)
    monkeypatch.setattr(strips, "shade", counting)
    return calls


def test_changing_one_layer_redraws_that_layer_alone(monkeypatch):
    art, easel = picture(), Easel()
    other = replace(SHOP["RED-MAT"], code="OTHER", colours=SHOP["WHITE-MAT"].colours)
    shop = replace(SHOP, samples=(*SHOP.samples, other))
    calls = counted(monkeypatch)
    render(simple(), art, shop, width_px=400, easel=easel)
    everything = len(calls)
    calls.clear()
    render(simple(outer="OTHER", shop=shop), art, shop, width_px=400, easel=easel)
    # The outer mat's four flats; its bevel's core, the inner mat and the frame stay.
    assert 0 < len(calls) < everything / 2


def test_an_easel_that_must_forget_everything_at_once_draws_the_same(monkeypatch):
    art = picture()
    wanted = render(simple(), art, SHOP, width_px=500)
    monkeypatch.setattr("framing_palette.preview.easels._MEGABYTE", 1_000)
    easel = Easel()
    for design in (simple(), simple(outer="WHITE-MAT"), simple()):
        got = render(design, art, SHOP, width_px=500, easel=easel)
    assert np.array_equal(got.srgb, wanted.srgb)


def test_going_back_to_an_earlier_design_draws_nothing(monkeypatch):
    art, easel = picture(), Easel()
    render(simple(), art, SHOP, width_px=400, easel=easel)
    render(simple(inner="THICK-MAT"), art, SHOP, width_px=400, easel=easel)
    calls = counted(monkeypatch)
    render(simple(), art, SHOP, width_px=400, easel=easel)
    assert calls == []


def test_a_thicker_board_changes_the_shade_of_what_lies_below(monkeypatch):
    art, easel = picture(lab=(70.0, 0.0, 0.0)), Easel()
    thin = render(simple(inner=None), art, SHOP, width_px=900, easel=easel)
    thick = sample("TALL", Kind.MAT, RED, thickness=mm(6), bevel=mm("1.4"))
    shop = replace(SHOP, samples=(*SHOP.samples, thick))
    deep = render(simple(inner=None, outer="TALL", shop=shop), art, shop, width_px=900, easel=easel)
    row = int(thin.grid.y_px(4.0))
    columns = slice(int(thin.grid.x_px(60)), int(thin.grid.x_px(240)))
    assert deep.srgb[row, columns].mean() < thin.srgb[row, columns].mean() - 3


def test_a_texture_that_cannot_be_read_is_left_out_and_told_each_time(tmp_path):
    relief = np.full((20, 20), 128, np.uint8)
    shop = textured("GONE", Kind.MAT, RED, tmp_path, relief)
    (tmp_path / "GONE.png").write_bytes(b"broken")
    easel = Easel()
    for _ in range(2):
        done = render(
            simple(inner=None, outer="GONE", shop=shop), picture(), shop, width_px=300, easel=easel
        )
        assert [notice for notice in done.notices if "GONE.png" in notice]


def test_a_new_picture_of_the_same_size_is_shown():
    easel = Easel()
    one = render(simple(), picture(lab=(20.0, 0.0, 0.0)), SHOP, width_px=300, easel=easel)
    two = render(simple(), picture(lab=(80.0, 0.0, 0.0)), SHOP, width_px=300, easel=easel)
    middle = one.srgb.shape[0] // 2
    assert two.srgb[middle, 150].mean() > one.srgb[middle, 150].mean() + 50


def test_a_rendering_cannot_be_written_over():
    done = render(simple(), picture(), SHOP, width_px=200)
    assert not done.srgb.flags.writeable


def test_the_longest_unused_value_is_forgotten_first():
    recent = Recent(25, len)
    for key in ("a", "b"):
        recent.get(key, lambda: "0123456789")
    recent.get("a", lambda: "never made")
    recent.get("c", lambda: "0123456789")
    assert ("a" in recent, "b" in recent, "c" in recent) == (True, False, True)
    assert recent.held_bytes == 20


def test_a_value_larger_than_the_memory_is_kept_while_it_is_the_newest():
    recent = Recent(5, len)
    assert recent.get("big", lambda: "0123456789") == "0123456789"
    assert "big" in recent
    recent.get("small", lambda: "01")
    assert "big" not in recent
