"""What a design costs by the shop's own price book, every line explained.

Each line is exact until it is rounded once, half up. Lines marked private reach the client only as
one sum under a title of the shop's choosing, and a purchase price or a factor on it never does.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from framing_palette.catalogue import Catalogue, PriceBasis, Sample
from framing_palette.design.designs import Design
from framing_palette.design.price_book import (
    AREA_UNITS,
    LENGTH_UNITS,
    Basis,
    Charge,
    Part,
    PriceBook,
)
from framing_palette.design.priced_parts import PricedPart, priced_parts
from framing_palette.design.sizes import sizes_of
from framing_palette.errors import PriceMissingError
from framing_palette.units import Length, Money, money_total


@dataclass(frozen=True, slots=True)
class PriceLine:
    """One line of a price.

    Parameters
    ----------
    title
        What it is for.
    how
        The sum in words, for the shop.
    client_how
        The same for the client, without purchase prices and factors; empty for none.
    amount
        Rounded once.
    private
        Whether the client never sees it.
    charge
        Which charge of the book it is of, counted from 0; None for the least price and for
        rounding.
    """

    title: str
    how: str
    client_how: str
    amount: Money
    private: bool = False
    charge: int | None = None


@dataclass(frozen=True, slots=True)
class Price:
    """A design's price: the shop's lines, and how they add up.

    ``net`` is the sum of the lines, or the least price of a job; ``tax`` is added to it, or
    contained in it when the book's prices include it; ``total`` is what the client pays.
    """

    lines: tuple[PriceLine, ...]
    net: Money
    tax: Money
    tax_words: str
    total: Money
    private_title: str

    @property
    def client_lines(self) -> tuple[PriceLine, ...]:
        """The lines that the client may see; private ones appear as one sum."""
        shown = [
            PriceLine(line.title, line.client_how, line.client_how, line.amount)
            for line in self.lines
            if not line.private
        ]
        private = [line.amount for line in self.lines if line.private]
        if private:
            amount = money_total(private, self.net.currency)
            shown.append(PriceLine(self.private_title, "", "", amount))
        return tuple(shown)


def price_of(design: Design, book: PriceBook, catalogue: Catalogue | None = None) -> Price:
    """Price a design.

    Parameters
    ----------
    design : Design
        Any design that can be sized.
    book : PriceBook
        The shop's charges.
    catalogue : Catalogue or None
        Needed by charges on the catalogue's own prices.

    Raises
    ------
    PriceMissingError
        When a part has no charge, or a charge needs a price or measure that is not known.
    UnknownSampleError
        When a code is no longer in the catalogue.
    """
    parts = priced_parts(design, sizes_of(design))
    lines = [line for part in parts for line in _lines(part, book, catalogue)]
    subtotal = money_total((line.amount for line in lines), book.currency)
    least = Money(book.minimum, book.currency)
    if subtotal < least:
        how = f"least price of a job {least.show()}, less {subtotal.show()}"
        lines.append(PriceLine("Least price", how, "", least - subtotal))
        subtotal = least
    return _totalled(tuple(lines), subtotal, book)


def _totalled(lines: tuple[PriceLine, ...], subtotal: Money, book: PriceBook) -> Price:
    percent = Fraction(book.tax_percent)
    share = percent / (100 + percent) if book.tax_included else percent / 100
    unrounded = subtotal if book.tax_included else subtotal + subtotal.times(share)
    total = unrounded.rounded(book.round_total_to)
    included = "included" if book.tax_included else "added"
    words = f"{book.tax_name} {book.tax_percent.normalize():f} % {included}" if percent else ""
    if total != unrounded:
        how = f"total rounded to {Money(book.round_total_to, book.currency).show()}"
        lines = (*lines, PriceLine("Rounding", how, how, total - unrounded))
    return Price(lines, subtotal, subtotal.times(share), words, total, book.private_title)


def _lines(part: PricedPart, book: PriceBook, catalogue: Catalogue | None) -> Iterator[PriceLine]:
    charges = [
        (place, charge)
        for place, charge in enumerate(book.charges)
        if charge.is_for(part.part, part.code, part.material)
    ]
    if not charges and part.part not in (Part.OPENING, Part.JOB):
        words = " ".join(word for word in (part.name, part.code) if word)
        todo = f'add a charge for it to the price book (part = "{part.part}")'
        raise PriceMissingError(words, missing="charge", todo=todo)
    for place, charge in charges:
        yield replace(_line(part, charge, book, catalogue), charge=place)


def _line(
    part: PricedPart, charge: Charge, book: PriceBook, catalogue: Catalogue | None
) -> PriceLine:
    quantity, words, rate, rate_words = _QUANTITIES[charge.basis](part, charge, catalogue)
    amount = Money(rate, book.currency).times(quantity, book.round_line_to)
    how = f"{words} at {rate_words}"
    least = Money(charge.minimum, book.currency)
    if amount < least:
        amount, how = least, f"{how}, at least {least.show()}"
    client_how = words if charge.basis is Basis.CATALOGUE else how
    return PriceLine(charge.title, how, client_how, amount, charge.private)


_Quantity = tuple[Fraction, str, Decimal, str]


def _united_inches(part: PricedPart, charge: Charge, _catalogue: Catalogue | None) -> _Quantity:
    rate = charge.rate_for(part.united_inches)
    words = f"{_number(part.united_inches)} united inches"
    return part.united_inches * part.count, _counted(words, part.count), rate, f"{rate} each"


def _length(part: PricedPart, charge: Charge, _catalogue: Catalogue | None) -> _Quantity:
    unit = LENGTH_UNITS[charge.per]
    length = _known_length(part)
    quantity = length / unit * (1 + Fraction(charge.waste))
    words = f"{_number(length / unit)} {charge.per}{_waste_words(charge)}"
    return quantity, words, charge.rate, f"{charge.rate} a {charge.per}"


def _area(part: PricedPart, charge: Charge, _catalogue: Catalogue | None) -> _Quantity:
    area = part.area_mm2 / AREA_UNITS[charge.per] * part.count
    quantity = area * (1 + Fraction(charge.waste))
    words = f"{_number(area)} {charge.per}{_waste_words(charge)}"
    return quantity, words, charge.rate, f"{charge.rate} a {charge.per}"


def _each(part: PricedPart, charge: Charge, _catalogue: Catalogue | None) -> _Quantity:
    return Fraction(part.count), f"{part.count} x", charge.rate, f"{charge.rate} each"


def _minutes(part: PricedPart, charge: Charge, _catalogue: Catalogue | None) -> _Quantity:
    minutes = Fraction(charge.minutes) * part.count
    words = f"{_number(minutes)} minutes"
    return minutes / 60, words, charge.rate, f"{charge.rate} an hour"


def _catalogue_price(part: PricedPart, charge: Charge, catalogue: Catalogue | None) -> _Quantity:
    """Charge the sample's own price times the charge's rate as a factor."""
    sample = _sample(part, catalogue)
    if sample.price is None or sample.price_per is None:
        raise PriceMissingError(sample.code, missing="price", todo="add it to the catalogue")
    bought, words = _bought(part, sample, sample.price_per)
    quantity = bought * (1 + Fraction(charge.waste)) * Fraction(charge.rate)
    rate_words = f"{sample.price} a {sample.price_per} times {charge.rate}"
    return quantity, words + _waste_words(charge), sample.price, rate_words


_QUANTITIES = {
    Basis.UNITED_INCH: _united_inches,
    Basis.LENGTH: _length,
    Basis.AREA: _area,
    Basis.EACH: _each,
    Basis.MINUTES: _minutes,
    Basis.CATALOGUE: _catalogue_price,
}


def _bought(part: PricedPart, sample: Sample, basis: PriceBasis) -> tuple[Fraction, str]:
    """Return how many of what the sample is sold by are needed, and that in words."""
    match basis:
        case PriceBasis.METRE:
            metres = _known_length(part) / LENGTH_UNITS["m"]
            return metres, f"{_number(metres)} m"
        case PriceBasis.FOOT:
            feet = _known_length(part) / LENGTH_UNITS["ft"]
            return feet, f"{_number(feet)} ft"
        case PriceBasis.STICK:
            if part.stick is None:
                todo = "add its stick length to the catalogue"
                raise PriceMissingError(sample.code, missing="stick length", todo=todo)
            sticks = _known_length(part) / part.stick
            return sticks, f"{_number(sticks)} sticks"
        case PriceBasis.SHEET:
            if part.sheet_mm2 is None:
                todo = "add its sheet size to the catalogue"
                raise PriceMissingError(sample.code, missing="sheet size", todo=todo)
            sheets = part.area_mm2 * part.count / part.sheet_mm2
            return sheets, f"{_number(sheets)} of a sheet"
        case PriceBasis.PIECE:
            return Fraction(part.count), f"{part.count} x"


def _sample(part: PricedPart, catalogue: Catalogue | None) -> Sample:
    if not part.code or catalogue is None:
        todo = "charge it otherwise, or name the catalogue and its code"
        raise PriceMissingError(part.name, missing="catalogue price", todo=todo)
    return catalogue[part.code]


def _known_length(part: PricedPart) -> Length:
    if part.length is None:
        todo = "write its face so that its strips can be measured"
        raise PriceMissingError(part.name, missing="length", todo=todo)
    return part.length


def _number(value: Fraction) -> str:
    """Write a quantity to two places; ``about`` says that it had to be rounded."""
    hundredths = (200 * value + 1) // 2
    text = f"{Decimal(hundredths) / 100:.2f}".rstrip("0").rstrip(".")
    return text if 100 * value == hundredths else f"about {text}"


def _counted(words: str, count: int) -> str:
    return words if count == 1 else f"{count} x {words}"


def _waste_words(charge: Charge) -> str:
    return f" and {_number(100 * Fraction(charge.waste))} % waste" if charge.waste else ""


def side_by_side(prices: Iterable[Price]) -> tuple[tuple[str, tuple[Money | None, ...]], ...]:
    """Return what the client sees of several prices as rows: a title, and each one's amount.

    Lines of the same title are added; an option without such a line has None there. The last row
    is the total.
    """
    options: Sequence[Price] = tuple(prices)
    titles = list(dict.fromkeys(line.title for price in options for line in price.client_lines))
    rows = [(title, tuple(_amount(price, title) for price in options)) for title in titles]
    return (*rows, ("Total", tuple(price.total for price in options)))


def _amount(price: Price, title: str) -> Money | None:
    amounts = [line.amount for line in price.client_lines if line.title == title]
    return money_total(amounts, price.total.currency) if amounts else None
