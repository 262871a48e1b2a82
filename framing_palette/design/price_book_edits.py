"""Changing a price book field by field, as it is typed; every refusal names the row and the field.

A change gives a whole new book. What no longer goes with a changed part or basis is put right by
the way: breaks go when the charge is no longer by the united inch, and a unit is chosen that does.
"""

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING, Any, Final

from framing_palette.design.price_book import (
    AREA_UNITS,
    LENGTH_UNITS,
    Basis,
    Break,
    Charge,
    Part,
    PriceBook,
    allowed_bases,
)
from framing_palette.errors import FieldError
from framing_palette.units import Money

if TYPE_CHECKING:
    from collections.abc import Callable

_USUAL_UNITS: Final = {Basis.LENGTH: "m", Basis.AREA: "m2"}


def units_of(basis: Basis) -> tuple[str, ...]:
    """Return the units that a basis can be charged in; none where it has none."""
    if basis is Basis.LENGTH:
        return tuple(LENGTH_UNITS)
    return tuple(AREA_UNITS) if basis is Basis.AREA else ()


def breaks_text(breaks: tuple[Break, ...]) -> str:
    """Write breaks as they are typed: ``24: 0.70; 40: 0.80``."""
    return "; ".join(f"{each.up_to:f}: {each.rate:f}" for each in breaks)


def percent_text(share: Decimal) -> str:
    """Write a share as a percentage: 0.15 is ``15``."""
    return f"{(share * 100).normalize():f}"


def with_book_field(book: PriceBook, name: str, value: object) -> PriceBook:
    """Return the book with one field of its head as it was typed or chosen.

    Raises
    ------
    FieldError
        When it is no such value, naming the field.
    """
    reading: dict[str, Callable[[str], Any]] = {
        "currency": lambda text: text.strip().upper(),
        "tax_name": str.strip,
        "private_title": lambda text: _words(text, "title of the private lines"),
    }
    facts: dict[str, Any] = {name: value}
    if isinstance(value, str):
        read = reading.get(name)
        facts[name] = read(value) if read else _number(value, name.replace("_", " "))
    return replace(book, **facts)


def with_charge_field(book: PriceBook, place: int, name: str, value: object) -> PriceBook:
    """Return the book with one field of a charge, counted from 0, as it was typed or chosen.

    ``waste`` is typed as a percentage, ``breaks`` as ``24: 0.70; 40: 0.80``.

    Raises
    ------
    FieldError
        When it is no such value, naming the charge and the field.
    """
    charge = book.charges[place]
    where = f'Charge {place + 1}, "{charge.title}", {name.replace("_", " ")}'
    try:
        changed = _changed(charge, name, value, where)
    except FieldError as error:
        if error.field == where:
            raise
        raise FieldError(where, got=error.got, wanted=error.wanted) from error
    return _with_charges(book, (*book.charges[:place], changed, *book.charges[place + 1 :]))


def with_new_charge(book: PriceBook, title: str, part: Part = Part.JOB) -> PriceBook:
    """Return the book with one more charge at its end, of nothing for each part."""
    return _with_charges(book, (*book.charges, Charge(title, part, Basis.EACH, Decimal(0))))


def without_charge(book: PriceBook, place: int) -> PriceBook:
    """Return the book without a charge."""
    return _with_charges(book, book.charges[:place] + book.charges[place + 1 :])


def with_moved_charge(book: PriceBook, place: int, to: int) -> PriceBook:
    """Return the book with a charge at another place, which is the order of the lines."""
    charges = list(book.charges)
    charges.insert(max(0, min(to, len(charges) - 1)), charges.pop(place))
    return _with_charges(book, tuple(charges))


def _with_charges(book: PriceBook, charges: tuple[Charge, ...]) -> PriceBook:
    return replace(book, charges=charges)


def _changed(charge: Charge, name: str, value: object, where: str) -> Charge:
    if name == "part":
        return _for_part(charge, Part(str(value)))
    if name == "basis":
        return _by(charge, Basis(str(value)))
    facts: dict[str, Any] = {name: value}
    if not isinstance(value, str):
        return replace(charge, **facts)
    reading: dict[str, Callable[[str], Any]] = {
        "title": lambda text: _words(text, where),
        "per": str.strip,
        "material": str.strip,
        "codes": str.strip,
        "waste": lambda text: _number(text.removesuffix("%"), where) / 100,
        "breaks": lambda text: _breaks(text, where),
    }
    read = reading.get(name)
    facts[name] = read(value) if read else _number(value, where)
    return replace(charge, **facts)


def _for_part(charge: Charge, part: Part) -> Charge:
    bases = allowed_bases(part)
    if charge.basis in bases:
        return replace(charge, part=part)
    return replace(_by(charge, Basis.EACH), part=part)


def _by(charge: Charge, basis: Basis) -> Charge:
    if basis is charge.basis:
        return charge
    return replace(
        charge,
        basis=basis,
        per=_USUAL_UNITS.get(basis, ""),
        breaks=charge.breaks if basis is Basis.UNITED_INCH else (),
    )


def _words(text: str, where: str) -> str:
    words = " ".join(text.split())
    if not words:
        raise FieldError(where, got="empty", wanted="write what the line is called")
    return words


def _number(text: str, where: str) -> Decimal:
    """Read an amount; nothing written is zero."""
    any_currency = "XTS"  # ISO 4217's code for trials: only the amount is kept
    return Money.of(text.strip() or "0", any_currency, field=where).amount


def _breaks(text: str, where: str) -> tuple[Break, ...]:
    steps = [step for step in text.split(";") if step.strip()]
    found = []
    for step in steps:
        up_to, colon, rate = step.partition(":")
        if not colon:
            wanted = "write each size and its rate like 24: 0.70; 40: 0.80"
            raise FieldError(where, got=f'"{step.strip()}"', wanted=wanted)
        found.append(Break(_number(up_to, where), _number(rate, where)))
    return tuple(found)
