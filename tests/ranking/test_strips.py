from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.errors import UnknownFactError
from framing_palette.picture import ColourTrust, Picture, TrustGrade
from framing_palette.ranking.strips import (
    Strip,
    is_on_strip,
    kept_on_art,
    lengthened,
    moved,
    new_strip,
    outline_mm,
    snapped_turn,
    strip_scale,
    turned,
    width_laid,
    width_seen,
)
from framing_palette.units import Length

PLACES = st.floats(-500, 500)
STRIPS = st.builds(
    Strip,
    number=st.just(1),
    code=st.just("a"),
    x_mm=PLACES,
    y_mm=PLACES,
    length_mm=st.floats(60, 400),
    width_mm=st.floats(5, 60),
    turn_deg=st.floats(0, 359.9),
    bent=st.booleans(),
)


def area(points: tuple[tuple[float, float], ...]) -> float:
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


@given(STRIPS)
def test_the_outline_encloses_the_strip_however_it_is_turned(strip: Strip) -> None:
    length, width = strip.length_mm, strip.width_mm
    wanted = length * width if not strip.bent else 2 * length * width - width**2
    assert area(outline_mm(strip)) == pytest.approx(wanted, rel=1e-6)


@given(STRIPS)
def test_a_point_just_inside_a_corner_is_on_the_strip_and_one_outside_is_not(strip: Strip) -> None:
    corner_x, corner_y = outline_mm(strip)[0]
    to_middle = (strip.x_mm - corner_x, strip.y_mm - corner_y)
    inside = (corner_x + 0.01 * to_middle[0], corner_y + 0.01 * to_middle[1])
    outside = (corner_x - 0.01 * to_middle[0], corner_y - 0.01 * to_middle[1])
    assert is_on_strip(strip, inside)
    assert not is_on_strip(strip, outside)


@given(STRIPS, PLACES, PLACES)
def test_moving_there_and_back_brings_the_strip_back(strip: Strip, x: float, y: float) -> None:
    back = moved(moved(strip, right_mm=x, down_mm=y), right_mm=-x, down_mm=-y)
    assert (back.x_mm, back.y_mm) == pytest.approx((strip.x_mm, strip.y_mm), abs=1e-9)


@given(STRIPS)
def test_four_quarter_turns_bring_the_strip_back(strip: Strip) -> None:
    again = strip
    for _ in range(4):
        again = turned(again, 90.0)
    assert again.turn_deg == pytest.approx(strip.turn_deg, abs=1e-9)


@given(STRIPS)
def test_a_strip_is_never_shorter_than_wide(strip: Strip) -> None:
    shorter = lengthened(strip, -1000.0)
    assert shorter.length_mm >= max(20.0, strip.width_mm)


@given(STRIPS)
def test_a_strip_brought_back_has_its_middle_on_the_art(strip: Strip) -> None:
    kept = kept_on_art(strip, width_mm=300.0, height_mm=200.0)
    assert 0.0 <= kept.x_mm <= 300.0
    assert 0.0 <= kept.y_mm <= 200.0


def test_turns_settle_on_the_nearest_fifteen_degrees() -> None:
    assert [snapped_turn(turn) for turn in (7.4, 7.6, 44.0, 353.0)] == [0.0, 15.0, 45.0, 0.0]


def test_the_open_side_of_a_corner_is_not_on_it() -> None:
    corner = Strip(1, "a", 0.0, 0.0, 100.0, 20.0, bent=True)
    assert is_on_strip(corner, (-45.0, 30.0))
    assert is_on_strip(corner, (30.0, -45.0))
    assert not is_on_strip(corner, (10.0, 10.0))


def sample(kind: Kind, face: Length | None) -> Sample:
    return Sample("a", "A", kind, (SampleColour((50.0, 0.0, 0.0), 1.0),), face=face)


def test_a_mat_is_seen_as_wide_as_the_shop_shows_it_and_all_else_by_its_face() -> None:
    border = Length.inches("2 1/2")
    assert width_seen(sample(Kind.MAT, None), mat_border=border) == border
    assert width_seen(sample(Kind.MOULDING, Length.mm_of(30)), mat_border=border) == Length.mm_of(
        30
    )
    with pytest.raises(UnknownFactError, match="no face width"):
        width_seen(sample(Kind.MOULDING, None), mat_border=border)


def test_a_new_strip_lies_level_where_it_was_put() -> None:
    strip = new_strip(
        7,
        sample(Kind.MOULDING, Length.mm_of(30)),
        at_mm=(40.0, 50.0),
        art_width_mm=500.0,
        mat_border=Length.inches(2),
    )
    assert (strip.number, strip.x_mm, strip.y_mm, strip.turn_deg) == (7, 40.0, 50.0, 0.0)
    assert strip.width_mm == 30.0
    assert strip.length_mm == pytest.approx(210.0)
    assert replace(strip, bent=True) != strip


@pytest.mark.parametrize(("known", "wanted"), [(0.5, 0.5), (None, 500.0 / 40)])
def test_the_scale_is_the_pictures_own_or_a_nominal_one(known: float | None, wanted: float) -> None:
    lab = np.zeros((20, 40, 3), dtype=np.float32)
    trust = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")
    assert strip_scale(Picture(lab, known, trust, 40, 20)) == wanted


def test_a_wrapped_fillet_in_a_frame_shows_its_bevel_and_other_samples_what_is_seen_of_them() -> (
    None
):
    border = Length.mm_of(50)
    fillet = replace(sample(Kind.WRAPPED_FILLET, Length.mm_of(32)), bevel=Length.mm_of(5))
    assert width_laid(fillet, mat_border=border) == Length.mm_of(5)
    assert width_laid(replace(fillet, bevel=None), mat_border=border) == Length.mm_of(32)
    assert width_laid(sample(Kind.MOULDING, Length.mm_of(30)), mat_border=border) == Length.mm_of(
        30
    )
