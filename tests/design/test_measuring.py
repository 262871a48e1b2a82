"""Measure twice."""

from datetime import UTC, datetime
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.design import Reading, agree, default_tolerance
from framing_palette.errors import FieldError, MeasurementError, MeasurementsDisagreeError
from framing_palette.units import ZERO, Length
from tests.design.random_stacks import lengths
from tests.design.shop import inch, mm

MORNING = datetime(2024, 5, 2, 9, 0, tzinfo=UTC)
NOON = datetime(2024, 5, 2, 12, 0, tzinfo=UTC)


def reading(width, height, by="AB", at=MORNING, diagonals=None):
    return Reading(width, height, by, at, diagonals)


def pair(first, second, **facts):
    return agree(reading(*first, **facts), reading(*second, by="CD"))


@settings(max_examples=60, deadline=None)
@given(lengths(50, 900), lengths(50, 900), st.fractions(-1, 1, max_denominator=64))
def test_two_measurements_within_the_tolerance_agree_on_the_smaller_and_bigger_of_each(w, h, share):
    off = Length.inches(Fraction(1, 32)) * share
    agreed = pair((w, h), (w + off, h - off))
    assert (agreed.width, agreed.height) == (min(w, w + off), min(h, h - off))
    assert (agreed.outer_width, agreed.outer_height) == (max(w, w + off), max(h, h - off))
    assert agreed.is_square
    assert not agreed.square_checked


@settings(max_examples=60, deadline=None)
@given(lengths(50, 900), lengths(50, 900), lengths(1, 40), st.sampled_from(["width", "height"]))
def test_a_difference_beyond_the_tolerance_stops_and_names_the_side(w, h, more, side):
    other = (w + more, h) if side == "width" else (w, h + more)
    with pytest.raises(MeasurementsDisagreeError, match=f"^The {side} was measured as") as caught:
        pair((w, h), other)
    assert caught.value.side == side
    with pytest.raises(MeasurementsDisagreeError):
        pair(other, (w, h))


def test_the_disagreement_is_told_with_both_readings_and_the_tolerance():
    with pytest.raises(MeasurementsDisagreeError) as caught:
        pair((inch(16), inch(20)), (inch("16 1/16"), inch(20)))
    assert str(caught.value) == (
        "The width was measured as 16 in and as 16 1/16 in, 1/16 in apart where at most 1/32 in "
        "is allowed: measure the width again before anything is cut."
    )


def test_a_difference_of_exactly_the_tolerance_is_allowed():
    agreed = pair((inch(16), inch(20)), (inch("16 1/32"), inch(20)))
    assert agreed.width == inch(16)


def test_the_usual_tolerance_is_a_thirty_second_or_a_millimetre():
    assert default_tolerance("in") == inch("1/32")
    assert default_tolerance("mm") == default_tolerance("cm") == mm(1)
    first, second = reading(mm(400), mm(500)), reading(mm(401), mm(500), by="CD")
    assert agree(first, second, mm(1)).width == mm(400)
    with pytest.raises(MeasurementsDisagreeError):
        agree(first, second)


@pytest.mark.parametrize("by", ["AB", " ab "])
def test_the_same_hand_at_the_same_time_is_no_second_measurement(by):
    first = reading(mm(400), mm(500))
    with pytest.raises(MeasurementError, match="same hand and time"):
        agree(first, reading(mm(400), mm(500), by=by))
    assert agree(first, reading(mm(400), mm(500), by=by, at=NOON)).width == mm(400)


def test_a_measurement_that_is_not_above_zero_and_a_negative_tolerance_are_refused():
    with pytest.raises(FieldError, match="second measurement, height is 0; "):
        pair((mm(4), mm(5)), (mm(4), ZERO))
    with pytest.raises(FieldError, match="tolerance"):
        agree(reading(mm(4), mm(5)), reading(mm(4), mm(5), by="CD"), mm(-1))


def test_equal_diagonals_say_that_the_art_is_square():
    agreed = pair((mm(300), mm(400)), (mm(300), mm(400)), diagonals=(mm(500), mm("500.5")))
    assert agreed.is_square
    assert agreed.square_checked
    assert (agreed.width, agreed.height) == (mm(300), mm(400))


def leaning(width, height, lean):
    """Sides and diagonals of a parallelogram whose upright sides lean by ``lean``."""
    rise = (height**2 - lean**2) ** 0.5
    diagonals = [((width + sign * lean) ** 2 + rise**2) ** 0.5 for sign in (1, -1)]
    return tuple(mm(Fraction(round(100 * d), 100)) for d in diagonals)


@pytest.mark.parametrize(
    ("width", "height", "lean"), [(300, 400, 5), (400, 300, -5), (500, 200, 8)]
)
def test_the_safe_size_of_leaning_art_lies_within_it(width, height, lean):
    agreed = pair(
        (mm(width), mm(height)),
        (mm(width), mm(height)),
        diagonals=leaning(width, height, lean),
    )
    assert not agreed.is_square
    assert abs(agreed.skew.as_float_mm() - abs(lean)) < 0.05
    lies_along_width = agreed.height.as_float_mm() > height - 1
    if lies_along_width:
        assert agreed.width.as_float_mm() == pytest.approx(width - abs(lean), abs=0.05)
        assert agreed.outer_width.as_float_mm() == pytest.approx(width + abs(lean), abs=0.05)
    else:
        tilt = abs(lean) * width / height
        assert agreed.height.as_float_mm() == pytest.approx(height - tilt, abs=0.1)
    other_w, other_h = _other_candidate(width, height, abs(lean))
    assert agreed.width.as_float_mm() * agreed.height.as_float_mm() >= other_w * other_h - 60


def _other_candidate(width, height, lean):
    along_width = (width - lean, (height**2 - lean**2) ** 0.5)
    tilt = lean * width / height
    along_height = ((width**2 - tilt**2) ** 0.5, height - tilt)
    return max(along_width, along_height, key=lambda size: size[0] * size[1])


def test_diagonals_of_both_measurements_must_agree_too():
    first = reading(mm(300), mm(400), diagonals=(mm(500), mm(500)))
    second = reading(mm(300), mm(400), by="CD", diagonals=(mm(500), mm(503)))
    with pytest.raises(MeasurementsDisagreeError, match="second diagonal"):
        agree(first, second)


def test_diagonals_that_cannot_belong_to_the_sides_are_refused():
    with pytest.raises(MeasurementError, match="cannot belong to art of 300 mm by 400 mm"):
        pair((mm(300), mm(400)), (mm(300), mm(400)), diagonals=(mm(520), mm(500)))
