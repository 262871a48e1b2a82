"""Writing a changed price book into the text that it had, so that the shop's own notes stay.

A charge keeps the notes inside its table while it stays or moves; those of a charge that is taken
away go with it.
"""

import re
from collections.abc import Callable
from dataclasses import fields
from typing import Any, Final

from framing_palette.design.price_book import Charge, PriceBook
from framing_palette.design.price_book_files import (
    charge_text,
    price_book_from_text,
    price_book_text,
)
from framing_palette.errors import PriceBookError

_EMPTY_LINES: Final = re.compile(r"\n(?:[ \t]*\n){2,}")
_Alike = Callable[[int, Charge, int, Charge], bool]


def price_book_text_like(book: PriceBook, text: str) -> str:
    """Return a price book written into an older text, which stays wherever nothing has changed.

    A text that is no price book is not kept: the book is then written with the example's notes.
    """
    import tomlkit

    try:
        former = price_book_from_text(text, "")
    except PriceBookError:
        return price_book_text(book)
    document = tomlkit.parse(text)
    for name in (field.name for field in fields(book) if field.name != "charges"):
        now = getattr(book, name)
        if now != getattr(former, name):
            document[name] = now if isinstance(now, bool) else _plain(now)
    if book.charges != former.charges:
        tables = _tables(list(document.get("charge", ())), former.charges, book.charges)
        document.pop("charge", None)
        if tables:
            document.append("charge", tomlkit.aot())
            for table in tables:
                table.value.add(tomlkit.nl())
                document["charge"].append(table)
        return _EMPTY_LINES.sub("\n\n", tomlkit.dumps(document)).rstrip() + "\n"
    return tomlkit.dumps(document)


def _plain(value: object) -> str:
    return str(value) if isinstance(value, str) else f"{value:f}"


def _tables(old: list[Any], former: tuple[Charge, ...], charges: tuple[Charge, ...]) -> list[Any]:
    """Return each charge's table: the one that it had before, with what is new put in."""
    import tomlkit

    tables = []
    for charge, place in zip(charges, _places_before(former, charges), strict=True):
        fresh: Any = tomlkit.parse(charge_text(charge) + "\n")["charge"]
        if place is None:
            tables.append(fresh[0])
            continue
        table, was = old[place], tomlkit.parse(charge_text(former[place]))["charge"]
        tables.append(_filled(table, was[0], fresh[0]))
    return tables


def _filled(table: Any, was: Any, now: Any) -> Any:
    """Return the table with what is different between two charges put into it."""
    import tomlkit

    filled = tomlkit.table()
    for key, item in table.value.body:
        if key is None:
            filled.add(item)
        elif key.key in now or key.key not in was:
            filled.append(key, item)
    while filled.value.body and filled.value.body[-1][0] is None and not _is_note(filled):
        filled.value.body.pop()
    for name, value in now.items():
        if name not in was or was[name] != value:
            filled[name] = value
    return filled


def _is_note(table: Any) -> bool:
    return str(table.value.body[-1][1].as_string()).strip() != ""


def _places_before(former: tuple[Charge, ...], charges: tuple[Charge, ...]) -> list[int | None]:
    """Return where each charge stood: as the same, else by its title, else what is most like it."""
    free = dict(enumerate(former))
    found: list[int | None] = [None] * len(charges)
    for is_alike in _ALIKE:
        for number, charge in enumerate(charges):
            if found[number] is not None:
                continue
            places = (place for place, old in free.items() if is_alike(place, old, number, charge))
            place = next(places, None)
            if place is not None:
                del free[place]
            found[number] = place
    return found


def _differing(one: Charge, other: Charge) -> int:
    """Return in how many fields two charges differ."""
    names = (field.name for field in fields(Charge))
    return sum(getattr(one, name) != getattr(other, name) for name in names)


_ALIKE: Final[tuple[_Alike, ...]] = (
    lambda _place, old, _number, charge: old == charge,
    lambda _place, old, _number, charge: old.title == charge.title,
    lambda _place, old, _number, charge: _differing(old, charge) <= 2,
    lambda place, old, number, charge: place == number and old.part is charge.part,
)
