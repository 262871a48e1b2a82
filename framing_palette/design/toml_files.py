"""TOML files at the edge: read with exact numbers, refused in one sentence, written whole."""

import tomllib
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

from framing_palette.errors import FileProblemError
from framing_palette.whole_files import read_whole

if TYPE_CHECKING:
    from pydantic import ValidationError

LARGEST_BYTES: Final = 1_000_000
Refusal = type[FileProblemError]


def text_of(path: Path | str, refusal: Refusal) -> str:
    """Read a small text file.

    Raises
    ------
    FileProblemError
        As ``refusal``, when it cannot be read.
    """
    file = Path(path)
    try:
        if file.stat().st_size > LARGEST_BYTES:
            raise refusal(file, problem="is over 1 MB", todo="name the file that is meant")
        text = read_whole(file, LARGEST_BYTES).decode("utf-8-sig")
        return text.replace("\r\n", "\n").replace("\r", "\n")
    except OSError as error:
        problem = f"cannot be read ({error.strerror})"
        raise refusal(file, problem=problem, todo="name a file that exists") from error
    except UnicodeDecodeError as error:
        raise refusal(file, problem="is not UTF-8 text", todo="save it as UTF-8") from error


def toml_of(text: str, path: Path | str, refusal: Refusal) -> dict[str, Any]:
    """Read TOML, its decimal numbers exact.

    Raises
    ------
    FileProblemError
        As ``refusal``, naming the line.
    """
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        problem = f"is not valid TOML ({str(error).rstrip('.')})"
        raise refusal(path, problem=problem, todo="mend that place") from error
    except (ValueError, RecursionError, ArithmeticError) as error:
        problem = "holds a number of thousands of digits or is nested hundreds of levels deep"
        raise refusal(path, problem=problem, todo="mend that place") from error


def field_problem(error: "ValidationError", tables: ModuleType) -> tuple[str, str]:
    """Say what is wrong with the first bad field, and what to do about it.

    ``tables`` is the module whose models name the fields that exist.
    """
    first = error.errors()[0]
    place = _place(first["loc"])
    if first["type"] == "missing":
        return f"has no {place}", "add it"
    if first["type"] == "extra_forbidden":
        near = get_close_matches(str(first["loc"][-1]), _fields(tables), n=1)
        return f"has an unknown {place}", f"perhaps {near[0]} is meant" if near else "take it out"
    message = first["msg"].removeprefix("Value error, ").rstrip(".")
    return f"has {place} = {first['input']!r}", message[0].lower() + message[1:]


def _place(loc: tuple[int | str, ...]) -> str:
    """Write a place as people count: ``layer 2 reveal``."""
    return " ".join(str(part + 1) if isinstance(part, int) else part for part in loc)


def _fields(tables: ModuleType) -> list[str]:
    names: set[str] = set()
    for each in vars(tables).values():
        names.update(getattr(each, "model_fields", {}))
    return sorted(names)


def quoted(text: str) -> str:
    """Write a text as a basic TOML string."""
    return '"' + "".join(_escaped(character) for character in text) + '"'


def _escaped(character: str) -> str:
    if character in '"\\':
        return "\\" + character
    is_control = ord(character) < 32 or ord(character) == 127
    return f"\\u{ord(character):04x}" if is_control else character
