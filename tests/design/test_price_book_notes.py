"""A changed price book written into its old text keeps the shop's own notes."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.design import Part, PriceBook, price_book_from_text
from framing_palette.design.price_book_edits import (
    with_book_field,
    with_charge_field,
    with_moved_charge,
    with_new_charge,
    without_charge,
)
from framing_palette.design.price_book_notes import price_book_text_like

TEXT = """\
# Our prices, put together by Ada.
currency = "EUR"
minimum = "40.00"   # since the rent went up

# mats first
[[charge]]
# ask Jo before changing this one
title = "Mat"
part = "mat"
by = "united_inch"
rate = "0.95"  # spring list
breaks = [{ up_to = "24", rate = "0.70" }]

[[charge]]
title = "Rails"  # long points
part = "moulding"
by = "length"
per = "m"
rate = 12.5
waste = "0.15"

[[charge]]
title = "Fitting"
part = "job"
by = "minutes"
minutes = "30"
rate = "54.00"
private = true  # never shown
"""
BOOK = price_book_from_text(TEXT, "x")


def written(book: PriceBook) -> str:
    text = price_book_text_like(book, TEXT)
    assert price_book_from_text(text, "x") == book
    return text


def test_an_unchanged_book_is_written_to_the_letter_as_it_was():
    assert price_book_text_like(BOOK, TEXT) == TEXT


def test_one_changed_rate_changes_one_line_and_keeps_its_note():
    changed = written(with_charge_field(BOOK, 0, "rate", "1.05"))
    assert changed == TEXT.replace('rate = "0.95"  # spring list', 'rate = "1.05"  # spring list')


def test_a_changed_head_keeps_every_note():
    book = with_book_field(with_book_field(BOOK, "minimum", "45"), "tax_percent", "19")
    text = written(book)
    assert 'minimum = "45"   # since the rent went up' in text
    assert "# Our prices, put together by Ada." in text
    assert 'tax_percent = "19"' in text


def test_a_field_that_is_new_in_a_charge_stands_in_it_and_one_that_is_gone_is_gone():
    text = written(with_charge_field(BOOK, 0, "minimum", "12"))
    assert text.index('minimum = "12"') < text.index('title = "Rails"')
    assert "waste" not in written(with_charge_field(BOOK, 1, "waste", ""))
    assert "# long points" in written(with_charge_field(BOOK, 1, "waste", ""))


def test_a_charge_takes_its_notes_along_when_it_moves_and_when_it_goes():
    moved = written(with_moved_charge(BOOK, 0, 2))
    assert moved.index("never shown") < moved.index("ask Jo") < moved.index("spring list")
    gone = written(without_charge(BOOK, 0))
    assert "spring list" not in gone
    assert "never shown" in gone


def test_a_charge_with_another_title_is_still_the_same_one():
    text = written(with_moved_charge(with_charge_field(BOOK, 1, "title", "Wood"), 1, 0))
    assert 'title = "Wood"  # long points' in text


def test_the_last_charge_can_go_and_another_come():
    empty = replace(BOOK, charges=())
    text = written(empty)
    again = price_book_text_like(with_new_charge(empty, "First"), text)
    assert price_book_from_text(again, "x").charges[0].title == "First"


@pytest.mark.parametrize("text", ["", "currency = ", "not a price book"])
def test_a_text_that_is_no_price_book_is_replaced_by_one_with_the_usual_notes(text):
    fresh = price_book_text_like(BOOK, text)
    assert price_book_from_text(fresh, "x") == BOOK
    assert "# Each [[charge]] is one line of the price." in fresh


EDITS = st.lists(
    st.one_of(
        st.tuples(st.just("rate"), st.integers(0, 9), st.decimals(0, 99, places=2)),
        st.tuples(st.just("part"), st.integers(0, 9), st.sampled_from(Part)),
        st.tuples(st.just("move"), st.integers(0, 9), st.integers(0, 9)),
        st.tuples(st.just("drop"), st.integers(0, 9), st.none()),
        st.tuples(st.just("add"), st.integers(0, 9), st.none()),
    ),
    max_size=8,
)


@settings(max_examples=40)
@given(EDITS)
def test_whatever_is_changed_in_whatever_order_reads_back_as_the_same_book(edits):
    book, text = BOOK, TEXT
    for what, place, value in edits:
        at = place % max(1, len(book.charges))
        if what == "add" or not book.charges:
            book = with_new_charge(book, f"Charge {place}")
        elif what == "drop":
            book = without_charge(book, at)
        elif what == "move":
            book = with_moved_charge(book, at, value)
        else:
            typed = f"{value:f}" if isinstance(value, Decimal) else value
            book = with_charge_field(book, at, what, typed)
        text = price_book_text_like(book, text)
        assert price_book_from_text(text, "x") == book
    assert "# Our prices, put together by Ada." in text
    assert "\n\n\n" not in text
