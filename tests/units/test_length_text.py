"""Lengths as people write them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.errors import FieldError, LengthError
from framing_palette.units import Length

SIXTEEN_THREE_EIGHTHS = Fraction(131, 8) * Fraction(127, 5)


@pytest.mark.parametrize(
    "text",
    [
        "16 3/8", "16-3/8", "16.375", '16 3/8"', "16 3/8 in", "16 3/8 inches", "16 3/8 in.",
        "16⅜", "16 ⅜", "16 3⁄8", "16 3 / 8", "  16   3/8 ", "131/8",
        "1' 4 3/8\"", "1'-4 3/8\"", "1′ 4 3/8″", "1 ft 4 3/8 in", "1' 4 3/8", "1 foot 4.375 inches",
        "16 3/8''", "16 3/8”", "415.925 mm", "41.5925 cm", "0.415925 m",
    ],
)  # fmt: skip
def test_every_accepted_form_of_sixteen_and_three_eighths_reads_as_the_same_length(text):
    assert Length.parse(text).mm == SIXTEEN_THREE_EIGHTHS


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("41.6 cm", 416), ("416 mm", 416), ("41,6 cm", 416), ("416mm", 416), (".5 mm", Fraction(1, 2)),
        ("1'", Fraction(3048, 10)), ("2 m", 2000), ("0", 0), ("-1/8", Fraction(-127, 40)),
        ("−3 mm", -3), ("- 3 mm", -3), ("-1 1/2 mm", Fraction(-3, 2)), ("7/8 mm", Fraction(7, 8)),
        ("16.", Fraction(4064, 10)), ("½", Fraction(127, 10)), ("5 1/2 MM", Fraction(11, 2)),
        ("0,125 mm", Fraction(1, 8)),
    ],
)  # fmt: skip
def test_a_written_length_reads_as_exact_millimetres(text, mm):
    assert Length.parse(text).mm == mm


@pytest.mark.parametrize(("unit", "mm"), [("in", Fraction(127, 5)), ("mm", 1), ("cm", 10)])
def test_a_bare_number_is_taken_in_the_given_unit_and_a_named_unit_wins(unit, mm):
    assert Length.parse("1", unit).mm == mm
    assert Length.parse("1 mm", unit).mm == 1


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "abc", "-", "--1", '"', "'", "1e3", "nan", "inf", "1_000", "٣", "16 3", "16 11/8",
        "16 8/8", "3/0", "16 3/0", "16 - 3/8", "16 -3/8", "16 3/8 3/8", "1.5 3/8", "3/8/2", "1' 14\"",
        "1,250 mm", "12,500", "1.2.3", "16 inch 3", "41 cm 6 mm", "16 3/8 ft 2 in", "+3", "0x10",
        "16 3/8 furlongs", "about 3 mm", "3 mm mm", "9" * 100, "1.5' 3\"",
    ],
)  # fmt: skip
def test_a_text_that_is_not_surely_one_length_is_refused_and_the_forms_are_named(text):
    with pytest.raises(LengthError, match=r"16 3/8, 16-3/8, 16\.375"):
        Length.parse(text)


def test_a_refusal_names_the_field_that_was_typed_into():
    with pytest.raises(LengthError, match=r'^art width: "wide" is not a length'):
        Length.parse("wide", field="art width")


def test_an_unknown_unit_is_refused():
    with pytest.raises(FieldError, match="choose in, mm or cm"):
        Length.parse("3", "furlong")


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused_in_one_sentence_and_nothing_else(text):
    try:
        Length.parse(text)
    except LengthError as error:
        assert str(error).endswith(".")


@given(st.text(alphabet="0123456789 /-.,'\"½⅜mcint", max_size=10))
def test_a_text_of_length_characters_reads_the_same_with_spaces_around_it(text):
    def read(written):
        try:
            return Length.parse(written)
        except LengthError:
            return None

    assert read(text) == read(f"  {text} ")
