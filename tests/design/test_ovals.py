"""Oval openings: a fillet round one is a bent piece, and its reveal narrows between the axes."""

from fractions import Fraction
from math import cos, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import ellipe

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Design,
    Layer,
    Shape,
    Sides,
    Window,
    cautions_of,
    narrowest_reveal,
    oval_frames,
    perimeter,
    plan_day,
    sizes_of,
    strip_frames,
    weight_of,
)
from framing_palette.design.priced_parts import priced_parts
from framing_palette.errors import FieldError
from framing_palette.units import Length
from tests.design.shop import inch, liner, mat, mm, wrapped_fillet

OVAL = Art(mm(300), mm(400), overlap=mm(3), shape=Shape.OVAL)


def design(*layers, **facts):
    return Design(facts.pop("art", OVAL), layers, **{"unit": "mm", **facts})


SIDES = st.integers(50, 1500)


@settings(max_examples=50)
@given(SIDES, SIDES)
def test_the_perimeter_is_that_of_the_elliptic_integral(width, height):
    """4 a E(m), m = 1 - (b/a)^2, by SciPy's complete elliptic integral of the second kind."""
    a, b = max(width, height) / 2, min(width, height) / 2
    exact = 4 * a * ellipe(1 - (b / a) ** 2)
    found = perimeter(mm(width), mm(height)).as_float_mm()
    assert -0.0005 * exact <= found - exact <= 0.1 + 1e-6
    if a <= 4 * b:
        assert found - exact >= -1e-5 * exact


def test_a_circle_s_perimeter_is_pi_times_its_width_rounded_up_to_a_tenth():
    assert perimeter(mm(100), mm(100)) == mm("314.2")


@settings(max_examples=25)
@given(SIDES, SIDES, st.integers(2, 40))
def test_the_narrowest_reveal_is_the_least_distance_between_the_two_outlines(width, height, reveal):
    """By brute force: points of the outer ellipse against points of the inner one."""
    import numpy as np

    found = narrowest_reveal((mm(width), mm(height)), Sides.all_round(mm(reveal))).as_float_mm()
    t = np.linspace(0, 2 * pi, 1440)
    inner = np.stack([width / 2 * np.cos(t), height / 2 * np.sin(t)])
    s = np.linspace(0, pi / 2, 120)
    outer = np.stack([(width / 2 + reveal) * np.cos(s), (height / 2 + reveal) * np.sin(s)])
    least = min(np.hypot(*(inner - point[:, None])).min() for point in outer.T)
    step = 2 * pi * max(width, height) / 2 / 1440
    assert found <= least + 0.01
    assert found >= least - 0.11 - step**2 / (2 * reveal) - 0.1 * reveal * 0.02
    assert 0 < found <= reveal


def test_a_round_reveal_is_even():
    assert narrowest_reveal((mm(200), mm(200)), Sides.all_round(mm(10))) == mm(10)


def test_unequal_reveals_count_with_the_shift_of_the_middle():
    """Left 4, right 10, top and bottom 7 round a circle: the outlines come as near as 4."""
    assert narrowest_reveal((mm(200), mm(200)), Sides(mm(7), mm(10), mm(7), mm(4))) == mm(4)


def test_a_fillet_round_an_oval_is_one_bent_piece_with_its_lengths():
    """Opening 294 x 394; strip 20 wide, so that it is 334 x 434 outside.

    By hand (Ramanujan): a = 147, b = 197: h = (50/344)^2 = 0.0211263; 1 + 3h/(10 + sqrt(4 - 3h)) =
    1.0052889; pi x 344 x 1.0052889 = 1086.423 mm. Outside a = 167, b = 217: h = (50/384)^2 =
    0.0169542; 1.0042434; pi x 384 x 1.0042434 = 1211.490 mm.
    """
    sizes = sizes_of(design(wrapped_fillet("6 mm", face="20 mm"), mat(borders="60 mm")))
    assert strip_frames(sizes) == ()
    (frame,) = oval_frames(sizes)
    assert frame.inside.lengths == (mm(294), mm(394))
    assert frame.outside.lengths == (mm(334), mm(434))
    assert (frame.sight_length, frame.outer_length) == (mm("1086.5"), mm("1211.5"))


def test_the_shop_is_told_what_straight_strips_cannot_do_and_how_uneven_the_reveal_is():
    art = Art(mm(200), mm(600), overlap=mm(3), shape=Shape.OVAL)
    said = [
        caution.sentence
        for caution in cautions_of(
            design(wrapped_fillet("10 mm", face="20 mm"), mat(borders="60 mm"), art=art)
        )
    ]
    bent = next(sentence for sentence in said if "Straight strips" in sentence)
    assert "one bent, laminated or turned piece, about 1318.9 mm" in bent
    uneven = next(sentence for sentence in said if "narrows" in sentence)
    assert "the reveal of layer 1, 10 mm at the ends of the axes" in uneven
    assert "narrows to about 8.6 mm in between" in uneven


def test_a_rectangle_hears_nothing_of_ovals():
    art = Art(mm(300), mm(400), overlap=mm(3))
    told = design(wrapped_fillet("6 mm", face="20 mm"), mat(borders="60 mm"), art=art)
    assert not any("oval" in c.sentence or "Straight" in c.sentence for c in cautions_of(told))
    assert oval_frames(sizes_of(told)) == ()


@pytest.mark.parametrize("shape", [Shape.OVAL, Shape.ROUND])
def test_without_a_mat_to_hold_it_a_fillet_or_liner_round_an_oval_is_refused(shape):
    art = Art(mm(300), mm(300), overlap=mm(3), shape=shape)
    for layer in (wrapped_fillet("6 mm", face="20 mm"), liner()):
        with pytest.raises(FieldError, match=r"layer 1 kind is .*needs a mat over it"):
            sizes_of(design(layer, art=art))


def test_a_fillet_between_an_oval_mat_and_the_frame_is_straight():
    """It goes round the mat's outer edges, which are straight whatever the opening is."""
    last = Layer(Kind.WOOD_FILLET, mm(5), face=mm(10))
    sizes = sizes_of(design(mat("50 mm"), last))
    assert sizes.layers[1].opening.shape is Shape.RECTANGLE
    assert len(strip_frames(sizes)) == 1


def test_of_two_windows_only_the_oval_one_is_bent():
    windows = (Window(mm(200), mm(250)), Window(mm(200), mm(250), Shape.OVAL))
    mixed = design(
        wrapped_fillet("6 mm", face="15 mm"), mat(borders="60 mm"),
        arrangement=Arrangement(windows, 2, mm(40)),
    )  # fmt: skip
    sizes = sizes_of(mixed)
    assert [frame.opening_number for frame in strip_frames(sizes)] == [1]
    assert [frame.opening_number for frame in oval_frames(sizes)] == [2]
    fillet = priced_parts(mixed, sizes)[0]
    straight, bent = strip_frames(sizes)[0], oval_frames(sizes)[0]
    assert fillet.length == straight.strip_length + bent.outer_length


def test_an_oval_fillet_weighs_as_a_ring_and_is_not_planned_out_of_sticks():
    """Ring between 294 x 394 and 334 x 434: pi/4 (144956 - 115836) = 22871 mm2, by 4 mm, 800."""
    fillet = wrapped_fillet("6 mm", face="20 mm", thickness=mm(4), density_kg_m3=800.0)
    told = design(fillet, mat(borders="60 mm"))
    part = next(p for p in weight_of(told, sizes_of(told)).parts if p.name.startswith("layer 1"))
    assert part.likely_kg == pytest.approx(22871e-9 * 4 * 800, rel=1e-4)
    day = plan_day([("A", told)])
    assert any("A, layer 1: a fillet round an oval comes in one piece" in s for s in day.unplanned)


def test_the_integral_agrees_with_the_perimeter_of_a_known_ellipse():
    """Arc length by quadrature of a 2:1 ellipse, semi-axes 100 and 50 mm: 484.42 mm."""
    length, _ = quad(lambda t: hypot(100 * sin(t), 50 * cos(t)), 0, 2 * pi)
    assert perimeter(mm(200), mm(100)).as_float_mm() == pytest.approx(length, abs=0.1)
    assert Length(Fraction(4845, 10)) == perimeter(mm(200), mm(100))


def test_inches_are_spoken_in_inches():
    art = Art(inch(12), inch(16), overlap=inch("1/8"), shape=Shape.OVAL)
    told = design(wrapped_fillet("1/4"), mat(borders="3"), art=art, unit="in")
    sentence = next(c.sentence for c in cautions_of(told) if "Straight" in c.sentence)
    assert "piece, about 43 27/64 in along its sight edge" in sentence
