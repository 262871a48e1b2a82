"""The shop's price book on disk, beside its settings: written whole after each change."""

from dataclasses import dataclass
from pathlib import Path

from framing_palette.design import PriceBook
from framing_palette.errors import OutputError, PriceBookError
from framing_palette.whole_files import write_whole

SET_ASIDE = "-set-aside"


@dataclass(frozen=True, slots=True)
class ShopPrices:
    """A price book, and the text that it was read from, whose notes are kept.

    ``fault`` says why the shop's own file could not be read; the example stands in its place then.
    """

    book: PriceBook
    text: str
    fault: str = ""


def price_book_place() -> Path:
    """Return where the price book of this shop is kept."""
    from platformdirs import user_config_path

    return user_config_path("framing-palette", appauthor=False) / "price_book.toml"


def shop_prices(path: Path) -> ShopPrices:
    """Return the shop's prices; the invented example while the shop has none of its own."""
    from framing_palette.design import example_price_book_text

    if not path.exists():
        return prices_of_text(example_price_book_text(), path)
    try:
        return prices_of_file(path)
    except PriceBookError as error:
        example = prices_of_text(example_price_book_text(), path)
        return ShopPrices(example.book, example.text, str(error))


def prices_of_file(path: Path) -> ShopPrices:
    """Read a price book with its text.

    Raises
    ------
    PriceBookError
        When it cannot be read; the sentence names the file and the field.
    """
    from framing_palette.design.toml_files import text_of

    return prices_of_text(text_of(path, PriceBookError), path)


def prices_of_text(text: str, path: Path) -> ShopPrices:
    """Read the text of a price book; ``path`` names it in a refusal.

    Raises
    ------
    PriceBookError
        Naming the file and the field.
    """
    from framing_palette.design import price_book_from_text

    return ShopPrices(price_book_from_text(text, path), text)


def save_prices(path: Path, book: PriceBook, text: str) -> str:
    """Write a price book into the text that it had, and return the text as it is now.

    A file that cannot be read is set aside under another name instead of being written over.

    Raises
    ------
    OutputError
        When it cannot be written; the old file is whole then.
    """
    from framing_palette.design.price_book_notes import price_book_text_like

    written = price_book_text_like(book, text)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        _set_aside(path)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be written ({error.strerror or error})",
            todo="check the disk and your rights; the prices hold until the window closes",
        ) from error
    write_whole(path, written.encode(), private=True)  # what the shop pays is its own affair
    return written


def _set_aside(path: Path) -> None:
    """Move a price book that cannot be read out of the way of a new one."""
    if not path.exists():
        return
    try:
        prices_of_file(path)
    except PriceBookError:
        place, number = path.with_stem(path.stem + SET_ASIDE), 1
        while place.exists():
            number += 1
            place = path.with_stem(f"{path.stem}{SET_ASIDE}-{number}")
        path.rename(place)
