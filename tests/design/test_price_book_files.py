"""Price books on disk."""

from decimal import Decimal

import pytest

from framing_palette.design import (
    Basis,
    Break,
    Charge,
    Part,
    PriceBook,
    example_price_book,
    example_price_book_text,
    price_book_from_text,
    price_book_text,
    price_of,
    read_price_book,
    write_price_book,
)
from framing_palette.errors import OutputError, PriceBookError
from tests.design.shop import SHOP
from tests.design.test_price import FROM_SHOP


def refusal(text):
    with pytest.raises(PriceBookError) as caught:
        price_book_from_text(text, "prices.toml")
    sentence = str(caught.value)
    assert sentence.startswith("prices.toml ")
    return sentence


def test_the_example_prices_a_design_from_the_catalogue_and_says_its_figures_are_invented():
    assert "All figures here are invented" in example_price_book_text()
    price = price_of(FROM_SHOP, example_price_book(), SHOP)
    assert [line.title for line in price.lines][:3] == ["Wood fillet", "Mat board, cut", "Moulding"]
    assert {line.title for line in price.lines if line.private} == {
        "Joining", "Fitting and hanging hardware",
    }  # fmt: skip


def test_the_example_charges_every_part_there_is():
    assert {charge.part for charge in example_price_book().charges} == set(Part)


def test_a_price_book_is_written_with_its_notes_and_reads_back_the_same(tmp_path):
    path = tmp_path / "prices.toml"
    book = PriceBook(
        "EUR",
        (
            Charge(
                'The "good" mat', Part.MAT, Basis.UNITED_INCH, Decimal("0.125"),
                breaks=(Break(Decimal("24.5"), Decimal("0.10")),), minimum=Decimal(9),
                material="rag", codes="M-*", private=True,
            ),
            Charge("Rails", Part.MOULDING, Basis.LENGTH, Decimal(0), per="m", waste=Decimal("0.15")),
            Charge("Work", Part.JOB, Basis.MINUTES, Decimal(60), minutes=Decimal("7.5")),
        ),
        minimum=Decimal("1E+2"),
        tax_percent=Decimal(19),
        tax_name="VAT",
        tax_included=True,
        round_total_to=Decimal("0.10"),
        private_title="Handwork",
    )  # fmt: skip
    write_price_book(book, path)
    assert read_price_book(path) == book
    assert "# Each [[charge]] is one line of the price." in path.read_text(encoding="utf-8")
    assert price_book_from_text(price_book_text(example_price_book()), "x") == example_price_book()


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "has no currency: add it"),
        ('currency = "USD"\nminimum = "much"', """has minimum = 'much': write a number like "12.50"."""),
        ('currency = "USD"\nminimum = true', "has minimum = True"),
        ('currency = "USD"\nminimum = "NaN"', "has minimum = 'NaN'"),
        ('currency = "USD"\nminimun = 3', "has an unknown minimun: perhaps minimum is meant"),
        ('currency = "USD"\n[[charge]]\npart = "mat"', "has no charge 1 title: add it"),
        ('currency = "USD"\n[[charge]]\ntitle = "A"\npart = "rug"', "has charge 1 part = 'rug'"),
        ('currency = "USD"\ntax_percent = 250', "cannot be used: tax percent is 250"),
        ('currency = "dollars"', "cannot be used: currency is 'dollars'"),
        ('currency = "USD"\n[[charge]]\ntitle = "A"\npart = "mat"\nby = "length"\nrate = 1\nper = "m"',
         'cannot be used: charge "A" by is length; a mat cannot be charged that way'),
        ("currency = ", "is not valid TOML"),
    ],
)  # fmt: skip
def test_a_mistake_in_a_price_book_is_told_by_file_and_field(text, sentence):
    assert sentence in refusal(text)


def test_bare_numbers_in_a_price_book_are_exact():
    book = price_book_from_text('currency = "USD"\nminimum = 0.1\ntax_percent = 8', "x")
    assert (book.minimum, book.tax_percent) == (Decimal("0.1"), Decimal(8))


def test_a_price_book_that_is_missing_or_cannot_be_written_is_told(tmp_path):
    with pytest.raises(PriceBookError, match="name a file that exists"):
        read_price_book(tmp_path / "none.toml")
    with pytest.raises(OutputError, match="cannot be written"):
        write_price_book(example_price_book(), tmp_path / "no" / "prices.toml")
