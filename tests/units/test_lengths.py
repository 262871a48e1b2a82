"""The exact length."""

import pickle
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length, exact_fraction, total

WHOLE = st.integers(-100_000, 100_000)
ANY_LENGTH = st.fractions(-10_000, 10_000, max_denominator=5000).map(Length)


@given(WHOLE, st.sampled_from([16, 32, 64]))
def test_showing_and_reading_inches_gives_the_same_length_at_every_precision(steps, denominator):
    length = Length.inches(Fraction(steps, denominator))
    assert Length.parse(length.show("in", denominator)) == length
    assert Length.parse(length.figures("in", denominator), "in") == length


@given(WHOLE, st.integers(0, 6), st.sampled_from(["mm", "cm"]))
def test_showing_and_reading_metric_gives_the_same_length_at_every_precision(steps, places, unit):
    length = Length.mm_of(Fraction(steps, 10**places))
    assert Length.parse(length.show(unit, decimals=places)) == length
    assert Length.parse(length.figures(unit, decimals=places), unit) == length


@given(ANY_LENGTH, st.sampled_from(["in", "mm", "cm"]), st.sampled_from([16, 32, 64]))
def test_showing_says_about_exactly_when_it_rounds_and_is_within_half_a_step(length, unit, fine):
    shown = length.show(unit, fine)
    nearest = Length.parse(shown.removeprefix("about "))
    assert shown.startswith("about ") == (nearest != length)
    step = Length.inches(Fraction(1, fine)) if unit == "in" else Length.mm_of(Fraction(1, 10))
    assert 2 * abs(nearest - length) <= step
    assert nearest == length.rounded(unit, fine)


@given(ANY_LENGTH, st.sampled_from([16, 32, 64]))
def test_rounding_down_and_up_enclose_the_length_within_one_step(length, fine):
    down, up = (length.rounded("in", fine, way=way) for way in ("down", "up"))
    assert down <= length <= up
    assert up - down in (ZERO, Length.inches(Fraction(1, fine)))


@given(ANY_LENGTH, ANY_LENGTH, ANY_LENGTH)
def test_a_sum_does_not_depend_on_its_order(a, b, c):
    assert (a + b) + c == a + (b + c) == total((c, a, b))


@given(st.lists(WHOLE, max_size=8))
def test_a_sum_does_not_depend_on_the_unit_it_was_typed_in(hundredths):
    typed_in = total(Length.parse(f"{Decimal(n) / 100} in") for n in hundredths)
    typed_mm = total(Length.parse(f"{Decimal(n) * 254 / 1000} mm") for n in hundredths)
    typed_cm = total(Length.parse(f"{Decimal(n) * 254 / 10000} cm") for n in hundredths)
    assert typed_in == typed_mm == typed_cm


@given(ANY_LENGTH, st.fractions(-50, 50, max_denominator=64).filter(bool))
def test_multiplying_and_dividing_by_the_same_number_leaves_the_length(length, factor):
    assert (length * factor) / factor == length == (factor * length) / factor
    if length:
        assert (length * factor) / length == factor


def test_halves_round_away_from_zero_so_that_signs_mirror():
    half = Length.inches(Fraction(1, 32))
    assert half.show("in", 16) == "about 1/16 in"
    assert (-half).show("in", 16) == "about -1/16 in"


def test_three_hundred_millimetres_are_about_eleven_and_thirteen_sixteenths():
    assert Length.mm_of(300).show("in") == "about 11 13/16 in"
    assert Length.mm_of(300).show("in", 64) == "about 11 13/16 in"
    assert Length.mm_of(300).show("mm") == "300 mm"


def test_lengths_are_made_from_exact_numbers_and_texts():
    assert Length.inches(1) == Length.mm_of(Fraction(127, 5)) == Length.mm_of(Decimal("25.4"))
    assert Length.inches("3/8") == Length.inches(Fraction(3, 8)) == Length.mm_of("9.525")
    assert Length.mm_of("1 in") == Length.inches(1)
    assert Length.inches(2).as_inches() == 2
    assert Length.mm_of(5).as_float_mm() == 5.0


@pytest.mark.parametrize(
    "amount", [1.5, True, None, Decimal("NaN"), Decimal("Infinity"), object(), 1j]
)
def test_an_inexact_or_endless_number_is_refused(amount):
    with pytest.raises(FieldError, match="an exact amount"):
        exact_fraction(amount)
    with pytest.raises(FieldError):
        Length.inches(1) * amount


@pytest.mark.parametrize("denominator", [0, 3, 10, 128, -16])
def test_a_fraction_of_an_inch_that_is_not_shown_is_refused(denominator):
    with pytest.raises(FieldError, match="1/16, 1/32 or 1/64"):
        Length.inches(1).show("in", denominator)


def test_too_many_decimals_and_an_unknown_unit_are_refused():
    with pytest.raises(FieldError, match="0 to 6"):
        Length.mm_of(1).show("mm", decimals=7)
    with pytest.raises(FieldError, match="in, mm or cm"):
        Length.mm_of(1).show("ell")


def test_a_length_is_ordered_hashed_and_kept_as_a_value():
    short, long = Length.mm_of(1), Length.inches(1)
    assert short < long
    assert max(short, long) is long
    assert {short, Length.mm_of(1)} == {short}
    assert pickle.loads(pickle.dumps(long)) == long  # noqa: S301
    assert not ZERO
    assert abs(-long) == long
    with pytest.raises(AttributeError):
        short.mm = Fraction(2)


def test_dividing_by_a_zero_length_is_a_defect_that_is_not_hidden():
    with pytest.raises(ZeroDivisionError):
        _ = Length.mm_of(1) / ZERO
