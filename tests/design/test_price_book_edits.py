"""A price book changed field by field: each change is exact, each refusal names row and field."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.design import Basis, Break, Charge, Part, PriceBook, example_price_book
from framing_palette.design.price_book import allowed_bases
from framing_palette.design.price_book_edits import (
    breaks_text,
    percent_text,
    units_of,
    with_book_field,
    with_charge_field,
    with_moved_charge,
    with_new_charge,
    without_charge,
)
from framing_palette.errors import FieldError

BOOK = example_price_book()
MAT = next(place for place, charge in enumerate(BOOK.charges) if charge.part is Part.MAT)


@pytest.mark.parametrize(
    ("name", "typed", "value"),
    [
        ("rate", "1.25", Decimal("1.25")),
        ("rate", "1,25", Decimal("1.25")),
        ("rate", "", Decimal(0)),
        ("title", "  Mat   board ", "Mat board"),
        ("waste", "12.5", Decimal("0.125")),
        ("waste", "12.5 %", Decimal("0.125")),
        ("breaks", "24: 0.70; 40: 0.80", (Break(Decimal(24), Decimal("0.70")), Break(Decimal(40), Decimal("0.80")))),
        ("breaks", "", ()),
        ("codes", " M-* ", "M-*"),
        ("private", True, True),
    ],
)  # fmt: skip
def test_what_is_typed_into_a_charge_is_what_it_becomes(name, typed, value):
    changed = with_charge_field(BOOK, MAT, name, typed)
    assert getattr(changed.charges[MAT], name) == value
    assert changed.charges[MAT + 1 :] == BOOK.charges[MAT + 1 :]


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("rate", "much", 'rate is "much"; write a number'),
        ("rate", "1.2.3", "write a number"),
        ("rate", "-1", "give zero or more"),
        ("rate", "nan", "write a number"),
        ("title", "  ", "title is empty"),
        ("waste", "400", "it is a share"),
        ("breaks", "24", "like 24: 0.70"),
        ("breaks", "40: 1; 24: 2", "let each up_to be larger"),
        ("breaks", "x: 1", "write a number"),
        ("per", "yard", "leave it out"),
    ],
)
def test_what_cannot_be_is_refused_by_row_and_field(name, typed, words):
    with pytest.raises(FieldError) as caught:
        with_charge_field(BOOK, MAT, name, typed)
    assert str(caught.value).startswith(f'Charge {MAT + 1}, "Mat board, cut", {name} is ')
    assert words in str(caught.value)


@pytest.mark.parametrize(
    ("name", "typed", "value"),
    [
        ("currency", " eur ", "EUR"),
        ("minimum", "50,5", Decimal("50.5")),
        ("tax_percent", "", Decimal(0)),
        ("tax_name", " VAT ", "VAT"),
        ("tax_included", True, True),
        ("round_total_to", "0.10", Decimal("0.10")),
        ("private_title", "Handwork", "Handwork"),
    ],
)
def test_what_is_typed_into_the_head_is_what_it_becomes(name, typed, value):
    assert getattr(with_book_field(BOOK, name, typed), name) == value


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("currency", "dollars", "three capital letters"),
        ("minimum", "lots", 'minimum is "lots"'),
        ("tax_percent", "101", "0 to 100"),
        ("round_line_to", "0", "above zero"),
        ("private_title", "", "is empty"),
    ],
)
def test_a_head_that_cannot_be_is_refused_by_its_field(name, typed, words):
    with pytest.raises(FieldError, match=words):
        with_book_field(BOOK, name, typed)


@pytest.mark.parametrize("part", Part)
@pytest.mark.parametrize("basis", Basis)
def test_any_basis_that_a_part_allows_can_be_chosen_and_makes_a_whole_charge(part, basis):
    book = with_charge_field(with_new_charge(BOOK, "New"), len(BOOK.charges), "part", part)
    if basis in allowed_bases(part):
        charge = with_charge_field(book, -1 + len(book.charges), "basis", basis).charges[-1]
        assert (charge.part, charge.basis) == (part, basis)
        assert (charge.per in units_of(basis)) if units_of(basis) else not charge.per
    else:
        with pytest.raises(FieldError, match="cannot be charged that way"):
            with_charge_field(book, len(book.charges) - 1, "basis", basis)


def test_breaks_go_when_a_charge_is_no_longer_by_the_united_inch():
    by_area = with_charge_field(BOOK, MAT, "basis", "area").charges[MAT]
    assert (by_area.breaks, by_area.per) == ((), "m2")
    assert with_charge_field(BOOK, MAT, "basis", "united_inch") == BOOK


def test_a_part_that_cannot_be_charged_so_falls_back_to_a_charge_for_each():
    moved = with_charge_field(BOOK, MAT, "part", "opening").charges[MAT]
    assert (moved.part, moved.basis, moved.breaks) == (Part.OPENING, Basis.EACH, ())


def test_charges_are_added_moved_and_taken_away():
    more = with_new_charge(BOOK, "Varnish")
    assert more.charges[-1] == Charge("Varnish", Part.JOB, Basis.EACH, Decimal(0))
    first = with_moved_charge(more, len(BOOK.charges), 0)
    assert first.charges == (more.charges[-1], *BOOK.charges)
    assert with_moved_charge(first, 0, 99).charges == more.charges
    assert without_charge(more, len(BOOK.charges)) == BOOK


AMOUNTS = st.decimals(0, 1000, places=3, allow_nan=False)


@given(st.lists(st.tuples(AMOUNTS, AMOUNTS), max_size=4, unique_by=lambda step: step[0]))
def test_breaks_written_and_typed_again_are_the_same(steps):
    breaks = tuple(Break(up_to, rate) for up_to, rate in sorted(steps))
    again = with_charge_field(BOOK, MAT, "breaks", breaks_text(breaks))
    assert again.charges[MAT].breaks == breaks


@given(st.decimals(0, 3, places=4, allow_nan=False))
def test_a_share_shown_as_a_percentage_and_typed_again_is_the_same(share):
    assert with_charge_field(BOOK, MAT, "waste", percent_text(share)).charges[MAT].waste == share


def test_an_empty_book_takes_its_first_charge():
    assert with_new_charge(PriceBook("EUR", ()), "Work").charges[0].title == "Work"
