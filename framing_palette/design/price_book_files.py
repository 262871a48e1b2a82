"""Price books on disk: the shop's own commented TOML, read and written."""

from dataclasses import fields
from decimal import Decimal
from importlib import resources
from pathlib import Path
from typing import Final

from framing_palette.design.price_book import Break, Charge, PriceBook
from framing_palette.design.toml_files import field_problem, quoted, text_of, toml_of
from framing_palette.errors import FramingPaletteError, PriceBookError
from framing_palette.whole_files import write_whole

EXAMPLE: Final = "price_book.toml"


def example_price_book_text() -> str:
    """Return a commented price book with invented figures, to start one's own from."""
    return resources.files("framing_palette.design").joinpath(EXAMPLE).read_text(encoding="utf-8")


def example_price_book() -> PriceBook:
    """Return the example as a price book."""
    return price_book_from_text(example_price_book_text(), EXAMPLE)


def read_price_book(path: Path | str) -> PriceBook:
    """Read a price book file.

    Raises
    ------
    PriceBookError
        When it cannot be read; the sentence names the file and the field.
    """
    return price_book_from_text(text_of(path, PriceBookError), path)


def price_book_from_text(text: str, path: Path | str) -> PriceBook:
    """Read the text of a price book; ``path`` only names it in a refusal.

    Raises
    ------
    PriceBookError
        Naming the file and the field.
    """
    from pydantic import ValidationError

    from framing_palette.design import price_book_tables
    from framing_palette.design.price_book_tables import PriceBookTable

    raw = toml_of(text, path, PriceBookError)
    try:
        table = PriceBookTable.model_validate(raw)
    except ValidationError as error:
        problem, todo = field_problem(error, price_book_tables)
        raise PriceBookError(path, problem=problem, todo=todo) from error
    try:
        charges = tuple(
            Charge(
                basis=row.by,
                breaks=tuple(Break(step.up_to, step.rate) for step in row.breaks),
                **row.model_dump(exclude={"by", "breaks"}),
            )
            for row in table.charge
        )
        return PriceBook(charges=charges, **table.model_dump(exclude={"charge"}))
    except FramingPaletteError as error:
        todo = str(error).rstrip(".")
        raise PriceBookError(path, problem="cannot be used", todo=todo) from error


def price_book_text(book: PriceBook) -> str:
    """Write a price book so that reading it gives the same one; the example's notes lead it."""
    notes = [line for line in example_price_book_text().splitlines() if line.startswith("#")]
    head = [
        f"{name} = {_value(getattr(book, name))}"
        for name in (field.name for field in fields(book))
        if name != "charges"
    ]
    return "\n".join([*notes[1:], "", *head, "", *(charge_text(charge) for charge in book.charges)])


def charge_text(charge: Charge) -> str:
    """Write one charge as its own table, without what is empty."""
    values: dict[str, str | Decimal | bool] = {
        "title": charge.title,
        "part": str(charge.part),
        "by": str(charge.basis),
        "rate": charge.rate,
        "per": charge.per,
        "waste": charge.waste,
        "minutes": charge.minutes,
        "minimum": charge.minimum,
        "material": charge.material,
        "codes": charge.codes,
        "private": charge.private,
    }
    lines = [
        f"{name} = {_value(value)}" for name, value in values.items() if value or name == "rate"
    ]
    if charge.breaks:
        steps = [
            f"{{ up_to = {_value(step.up_to)}, rate = {_value(step.rate)} }}"
            for step in charge.breaks
        ]
        lines.append(f"breaks = [{', '.join(steps)}]")
    return "\n".join(["[[charge]]", *lines, ""])


def _value(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return f'"{value:f}"' if isinstance(value, Decimal) else quoted(str(value))


def write_price_book(book: PriceBook, path: Path | str) -> None:
    """Write a price book; an older one stays whole until the new one is complete.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    write_whole(Path(path), price_book_text(book).encode())
