"""What a design costs."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Catalogue, PriceBasis
from framing_palette.design import (
    Art,
    Basis,
    Board,
    Break,
    Charge,
    Design,
    Glazing,
    Part,
    PriceBook,
    layer_of,
    moulding_of,
    price_of,
    side_by_side,
    sizes_of,
)
from framing_palette.errors import FieldError, PriceMissingError, UnknownSampleError
from framing_palette.units import Money, money_total
from tests.design.random_stacks import designs
from tests.design.shop import (
    DEEP,
    FILLET,
    MAT,
    SHOP,
    STEP_FILLET,
    Sides,
    art,
    double_mat,
    inch,
    mat,
    mm,
    moulding,
    wrapped_fillet,
)


def charge(part, basis, rate, **facts):
    numbers = {"waste", "minutes", "minimum"}
    facts = {key: Decimal(value) if key in numbers else value for key, value in facts.items()}
    return Charge(f"{part} line", Part(part), Basis(basis), Decimal(rate), **facts)


FREE = [charge(part, "each", "0") for part in Part if part not in (Part.OPENING, Part.JOB)]


def book(*charges, **facts):
    """The given charges, and nothing for every part that they leave out."""
    told = {each.part for each in charges}
    return PriceBook("USD", (*charges, *(each for each in FREE if each.part not in told)), **facts)


def line(design, *charges, catalogue=None, **facts):
    price = price_of(design, book(*charges, **facts), catalogue)
    return next(one for one in price.lines if one.title == charges[0].title)


def usd(amount):
    return Money.of(amount, "USD")


PLAIN = Design(Art(inch(8), inch(10)), moulding=moulding())


def test_eight_by_ten_is_eighteen_united_inches():
    """Common practice: united inches are width and height together."""
    priced = line(PLAIN, charge("job", "united_inch", "1.50"))
    assert (priced.amount, priced.how) == (usd("27.00"), "18 united inches at 1.50 each")


@pytest.mark.parametrize(("up_to", "rate"), [("17", "2"), ("18", "1"), ("20", "1")])
def test_a_break_holds_up_to_and_with_its_size_and_for_the_whole_of_it(up_to, rate):
    breaks = (Break(Decimal(up_to), Decimal(1)),)
    assert line(PLAIN, charge("job", "united_inch", "2", breaks=breaks)).amount == usd(
        18 * int(rate)
    )


def test_a_length_is_charged_with_its_waste():
    priced = line(PLAIN, charge("moulding", "length", "4.00", per="ft", waste="0.15"))
    # 36 inches of art, 4 x 1/8 play, 8 x (1 1/2 - 1/4): 46 1/2 in.
    assert priced.amount == usd("17.83")
    assert priced.how == "about 3.88 ft and 15 % waste at 4.00 a ft"
    assert Fraction("46.5") / 12 * 4 * Fraction("1.15") == Fraction("17.825")


def test_an_area_is_charged_by_the_outside_of_the_pane():
    design = replace(PLAIN, glazing=Glazing("glass", mm(2)))
    priced = line(design, charge("glazing", "area", "9", per="ft2"))
    assert priced.amount == usd("5.00")
    assert line(design, charge("glazing", "area", "1", per="in2")).amount == usd(80)
    metric = line(design, charge("glazing", "area", "1000", per="m2"))
    assert metric.amount == usd("51.61")


def test_labour_is_charged_by_the_minute():
    priced = line(PLAIN, charge("job", "minutes", "54", minutes="20"))
    assert (priced.amount, priced.how) == (usd("18.00"), "20 minutes at 54 an hour")


def test_openings_are_counted_over_all_mats():
    priced = line(double_mat(), charge("opening", "each", "3.50"))
    assert (priced.amount, priced.how) == (usd("7.00"), "2 x at 3.50 each")


def test_a_least_amount_lifts_a_line_and_says_so():
    priced = line(PLAIN, charge("job", "united_inch", "0.10", minimum="12"))
    assert priced.amount == usd(12)
    assert priced.how == "18 united inches at 0.10 each, at least 12.00 USD"


def test_strips_are_charged_by_their_long_sides():
    design = Design(art(), (wrapped_fillet("1/4"), mat(borders="3")))
    assert line(design, charge("wrapped_fillet", "length", "1", per="in")).amount == usd(77)


def test_every_charge_that_fits_a_part_makes_a_line_and_others_none():
    design = replace(PLAIN, glazing=Glazing("acrylic", mm(2)))
    charges = (
        charge("glazing", "each", "1", material="acrylic"),
        charge("glazing", "each", "2", material="glass"),
        charge("glazing", "each", "4"),
    )
    price = price_of(design, book(*charges))
    assert money_total([one.amount for one in price.lines], "USD") == usd(5)


def test_codes_choose_among_charges_by_their_pattern():
    design = Design(art(), (mat(borders="2", code="MR-7"),))
    charges = (charge("mat", "each", "9", codes="MR-*"), charge("mat", "each", "5", codes="M-*"))
    assert line(design, *charges).amount == usd(9)


FROM_SHOP = Design(
    Art(mm(300), mm(400), overlap=mm(3)),
    (
        layer_of(STEP_FILLET, reveal=Sides.all_round(mm(5))),
        layer_of(MAT, borders=Sides.all_round(mm(60))),
    ),
    moulding=moulding_of(DEEP),
)


def test_a_catalogue_price_is_charged_by_what_it_is_sold_by():
    metres = line(FROM_SHOP, charge("moulding", "catalogue", "2"), catalogue=SHOP)
    length_m = sizes_of(FROM_SHOP).frame.moulding_length.value / mm(1000)
    assert metres.amount == usd("9.00").times(length_m * 2)
    sheet = line(FROM_SHOP, charge("mat", "catalogue", "2.5"), catalogue=SHOP)
    width, height = sizes_of(FROM_SHOP).contents.lengths
    share = width.mm * height.mm / (813 * 1016)
    assert sheet.amount == usd("12.80").times(share * Fraction("2.5"))
    feet = line(FROM_SHOP, charge("wood_fillet", "catalogue", "1", waste="0.2"), catalogue=SHOP)
    strips = 4 * mm(24) + 2 * mm(294) + 2 * mm(394)
    assert feet.amount == usd("1.50").times(strips / inch(12) * Fraction("1.2"))


@pytest.mark.parametrize(
    ("basis", "factor"), [(PriceBasis.STICK, Fraction(1, 2740)), (PriceBasis.PIECE, None)]
)
def test_sticks_and_pieces_are_charged_too(basis, factor):
    deep = replace(DEEP, price_per=basis)
    shop = Catalogue((deep, MAT, STEP_FILLET))
    length = sizes_of(FROM_SHOP).frame.moulding_length.value.mm
    priced = line(FROM_SHOP, charge("moulding", "catalogue", "1"), catalogue=shop)
    assert priced.amount == usd("9.00").times(length * factor if factor else 1)


def test_the_client_never_sees_a_purchase_price_or_a_factor():
    priced = line(FROM_SHOP, charge("moulding", "catalogue", "2.35", waste="0.2"), catalogue=SHOP)
    assert "9.00 a metre times 2.35" in priced.how
    assert "9.00" not in priced.client_how
    assert "2.35" not in priced.client_how
    assert priced.client_how.endswith("m and 20 % waste")


def test_private_lines_reach_the_client_only_as_one_sum():
    charges = (
        charge("job", "each", "10", private=True),
        charge("moulding", "minutes", "60", minutes="5", private=True),
        charge("moulding", "each", "30"),
    )
    price = price_of(PLAIN, book(*charges, private_title="Handwork"))
    shown = {one.title: one for one in price.client_lines}
    assert shown["Handwork"].amount == usd(15)
    assert shown["Handwork"].how == ""
    assert "job line" not in shown
    assert not any("60" in one.how or one.private for one in price.client_lines)
    assert money_total([one.amount for one in price.client_lines], "USD") == price.total


def test_a_least_price_of_a_job_tax_and_rounding_make_the_total():
    price = price_of(
        PLAIN,
        book(
            charge("job", "each", "40"),
            minimum=Decimal(45),
            tax_percent=Decimal("8.25"),
            tax_name="sales tax",
            round_total_to=Decimal("0.05"),
        ),
    )
    assert price.net == usd(45)
    assert price.tax == usd("3.71")
    assert price.tax_words == "sales tax 8.25 % added"
    assert price.total == usd("48.70")
    assert [one.title for one in price.lines][-2:] == ["Least price", "Rounding"]
    assert price.lines[-1].amount == usd("-0.01")


def test_included_tax_is_stated_and_not_added():
    price = price_of(
        PLAIN, book(charge("job", "each", "119"), tax_percent=Decimal(19), tax_included=True)
    )
    assert (price.total, price.tax) == (usd(119), usd(19))
    assert price.tax_words == "tax 19 % included"


def test_without_tax_no_words_are_made_of_it():
    assert price_of(PLAIN, book(charge("job", "each", "1"))).tax_words == ""


@settings(max_examples=40, deadline=None)
@given(
    designs(), st.decimals(0, 50, places=3), st.booleans(), st.sampled_from(["0.01", "0.05", "1"])
)
def test_the_lines_the_tax_and_the_rounding_add_up_to_the_total(design, rate, included, step):
    per_inch = Charge("size", Part.JOB, Basis.UNITED_INCH, rate, private=True)
    free = [replace(each, rate=rate) for each in FREE]
    shop = PriceBook(
        "EUR", (per_inch, *free), tax_percent=Decimal(19), tax_included=included,
        round_total_to=Decimal(step), minimum=Decimal(30),
    )  # fmt: skip
    price = price_of(design, shop)
    lines = money_total([one.amount for one in price.lines], "EUR")
    assert price.total == (lines if included else lines + price.tax)
    assert money_total([one.amount for one in price.client_lines], "EUR") == lines
    assert price.net >= Money.of(30, "EUR")
    assert price.total.amount % Decimal(step) == 0
    assert all(one.amount == one.amount.rounded() for one in price.lines)


def test_options_stand_side_by_side_as_the_client_sees_them():
    charges = (
        charge("moulding", "each", "30"),
        charge("glazing", "each", "9"),
        charge("job", "each", "5", private=True),
    )
    glazed = replace(PLAIN, glazing=Glazing("glass", mm(2)))
    table = side_by_side([price_of(PLAIN, book(*charges)), price_of(glazed, book(*charges))])
    assert table == (
        ("moulding line", (usd(30), usd(30))),
        ("Workmanship", (usd(5), usd(5))),
        ("glazing line", (None, usd(9))),
        ("Total", (usd(35), usd(44))),
    )


def test_a_part_without_a_charge_is_named_with_the_table_to_add():
    empty = PriceBook("USD", ())
    with pytest.raises(PriceMissingError) as caught:
        price_of(Design(art(), (mat(borders="2", code="M-1"),)), empty)
    assert str(caught.value) == (
        'layer 1, mat M-1 has no charge; add a charge for it to the price book (part = "mat").'
    )


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"price": None}, "R-DEEP has no price; add it to the catalogue"),
        ({"price_per": PriceBasis.SHEET}, "R-DEEP has no sheet size"),
    ],
)
def test_an_unknown_price_or_measure_in_the_catalogue_is_named(change, words):
    shop = Catalogue((replace(DEEP, **change), MAT, STEP_FILLET))
    with pytest.raises(PriceMissingError, match=words):
        line(FROM_SHOP, charge("moulding", "catalogue", "2"), catalogue=shop)


def test_a_stick_price_without_a_stick_length_is_named():
    stickless = replace(FROM_SHOP, moulding=replace(FROM_SHOP.moulding, stick=None))
    shop = Catalogue((replace(DEEP, price_per=PriceBasis.STICK), MAT, STEP_FILLET))
    with pytest.raises(PriceMissingError, match="R-DEEP has no stick length"):
        line(stickless, charge("moulding", "catalogue", "2"), catalogue=shop)


def test_a_catalogue_charge_needs_a_catalogue_and_a_code():
    with pytest.raises(PriceMissingError, match="moulding has no catalogue price"):
        line(FROM_SHOP, charge("moulding", "catalogue", "2"))
    with pytest.raises(PriceMissingError, match="moulding has no catalogue price"):
        line(PLAIN, charge("moulding", "catalogue", "2"), catalogue=SHOP)


def test_a_deleted_sample_cannot_be_priced():
    with pytest.raises(UnknownSampleError, match="R-DEEP"):
        line(
            FROM_SHOP,
            charge("moulding", "catalogue", "2"),
            catalogue=Catalogue((MAT, STEP_FILLET, FILLET)),
        )


def test_a_strip_of_unknown_face_cannot_be_charged_by_length():
    faceless = replace(wrapped_fillet("1/4"), face=None)
    design = Design(art(), (faceless, mat(borders="3")))
    with pytest.raises(PriceMissingError, match="layer 1, wrapped fillet has no length"):
        line(design, charge("wrapped_fillet", "length", "1", per="in"))


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        (("mat", "length", "1", {"per": "m"}), "a mat cannot be charged that way"),
        (("moulding", "area", "1", {"per": "m2"}), "a moulding cannot be charged that way"),
        (("job", "area", "1", {"per": "m2"}), "a job cannot be charged that way"),
        (("opening", "united_inch", "1", {}), "an? opening cannot be charged that way"),
        (("glazing", "catalogue", "1", {}), "a glazing cannot be charged that way"),
        (("moulding", "length", "1", {}), "per is ''; choose mm, cm, m, in, ft"),
        (("mat", "area", "1", {"per": "acre"}), "per is 'acre'; choose m2, ft2, in2"),
        (("mat", "each", "1", {"per": "m"}), "per is 'm'; leave it out"),
        (("mat", "each", "-1", {}), "rate is -1; give zero or more"),
        (("mat", "each", "NaN", {}), "rate is NaN; give zero or more"),
        (("mat", "each", "1", {"minimum": "-1"}), "minimum is -1"),
        (("mat", "each", "1", {"waste": "15"}), "waste is 15; it is a share: 0.15"),
        (("mat", "each", "1", {"breaks": (Break(Decimal(1), Decimal(1)),)}), "only a charge by the"),
    ],
)  # fmt: skip
def test_a_charge_that_makes_no_sense_is_refused_with_its_title_and_field(facts, words):
    with pytest.raises(FieldError, match=f'charge "{facts[0]} line" .*{words}'):
        charge(*facts[:3], **facts[3])


def test_breaks_must_ascend():
    breaks = (Break(Decimal(40), Decimal(1)), Break(Decimal(24), Decimal(2)))
    with pytest.raises(FieldError, match="let each up_to be larger"):
        charge("mat", "united_inch", "1", breaks=breaks)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("minimum", "-1"), ("tax_percent", "101"), ("tax_percent", "-1"), ("tax_percent", "NaN"),
        ("round_total_to", "0"), ("round_line_to", "-1"), ("minimum", "Infinity"),
    ],
)  # fmt: skip
def test_a_price_book_that_makes_no_sense_is_refused(field, value):
    with pytest.raises(FieldError, match=field.replace("_", "[ _]")):
        book(**{field: Decimal(value)})


def test_mount_and_backing_are_charged_by_area_and_materials_by_their_words():
    design = replace(
        PLAIN, mount=Board(inch("1/16"), "rag"), backing=Board(inch("1/8"), "foam board")
    )
    assert line(design, charge("mount", "area", "1", per="in2", material="rag")).amount == usd(80)
    assert line(design, charge("backing", "area", "1", per="in2")).amount == usd(80)
