"""Money."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.errors import FieldError
from framing_palette.units import Money, money_total

AMOUNT = st.decimals(-100_000, 100_000, places=4)


@pytest.mark.parametrize(
    ("amount", "rounded"),
    [("12.345", "12.35"), ("12.344", "12.34"), ("-12.345", "-12.35"), ("0.005", "0.01"), ("2.675", "2.68")],
)  # fmt: skip
def test_a_half_cent_goes_away_from_zero(amount, rounded):
    assert Money.of(amount, "EUR").rounded() == Money.of(rounded, "EUR")


@given(AMOUNT, st.sampled_from(["0.01", "0.05", "0.10", "1", "5"]))
def test_rounding_lands_on_the_step_within_half_of_it(amount, step):
    rounded = Money(amount, "USD").rounded(Decimal(step)).amount
    assert rounded % Decimal(step) == 0
    assert abs(rounded - amount) * 2 <= Decimal(step)


@given(AMOUNT, st.fractions(0, 500, max_denominator=97))
def test_multiplying_rounds_once_and_only_once(amount, factor):
    exact = Fraction(amount) * factor
    assert 2 * abs(Fraction(Money(amount, "USD").times(factor).amount) - exact) <= Fraction(1, 100)


@given(st.lists(AMOUNT, max_size=12))
def test_a_total_is_the_exact_sum_in_any_order(amounts):
    money = [Money(amount, "USD") for amount in amounts]
    assert money_total(money, "USD") == money_total(reversed(money), "USD")
    assert Fraction(money_total(money, "USD").amount) == sum(map(Fraction, amounts))


@pytest.mark.parametrize(
    ("text", "amount"), [("12.50", "12.50"), ("12,50", "12.50"), (" 7 ", "7"), ("-3", "-3")]
)
def test_a_plain_number_reads_as_written(text, amount):
    assert Money.of(text, "EUR").amount == Decimal(amount)


@pytest.mark.parametrize(
    "text", ["", "abc", "1,250", "1.250,00", "1e3", "NaN", "1_000", "٣", "9" * 80, "--1", "$5"]
)
def test_an_amount_that_is_not_a_plain_number_is_refused_with_its_field(text):
    with pytest.raises(FieldError, match=r"^rate is .*like 12\.50"):
        Money.of(text, "EUR", field="rate")


@pytest.mark.parametrize("currency", ["", "eur", "EURO", "€", "E1R"])
def test_a_currency_is_three_capital_letters(currency):
    with pytest.raises(FieldError, match="currency"):
        Money.of(1, currency)


def test_an_endless_amount_and_a_float_are_refused():
    with pytest.raises(FieldError):
        Money(Decimal("Infinity"), "EUR")
    with pytest.raises(FieldError):
        Money.of(1.5, "EUR")


def test_sums_of_two_currencies_are_refused():
    with pytest.raises(FieldError, match="takes only EUR"):
        Money.of(1, "EUR") + Money.of(1, "USD")


def test_a_rounding_step_must_be_above_zero():
    with pytest.raises(FieldError, match="rounding step"):
        Money.of(1, "EUR").rounded(Decimal(0))


@pytest.mark.parametrize(
    ("amount", "shown"),
    [("1250", "1250.00 EUR"), ("0.125", "0.125 EUR"), ("1E+3", "1000.00 EUR"), ("-2.5", "-2.50 EUR")],
)  # fmt: skip
def test_money_shows_at_least_two_places_and_its_currency(amount, shown):
    assert Money(Decimal(amount), "EUR").show() == shown


def test_fractions_signs_and_emptiness_behave_as_numbers_do():
    third = Money.of(Fraction(1, 3), "EUR")
    assert third.rounded() == Money.of("0.33", "EUR")
    assert -Money.of(2, "EUR") == Money.of(-2, "EUR")
    assert Money.of(5, "EUR") - Money.of(2, "EUR") == Money.of(3, "EUR")
    assert not Money.zero("EUR")
    assert Money.of(1, "EUR") < Money.of(2, "EUR")
