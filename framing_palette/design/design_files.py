"""Design files on disk: ``DESIGN.toml`` read and written.

A mistake is told in one sentence that names the file and the field. A code is looked up only when
a catalogue is given; measures in the file win over the catalogue's.
"""

import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from framing_palette.catalogue import Catalogue
from framing_palette.design.design_writing import design_text
from framing_palette.design.designs import Design
from framing_palette.design.report import size_report
from framing_palette.design.sizes import sizes_of
from framing_palette.errors import DesignFileError, FramingPaletteError, OutputError

if TYPE_CHECKING:
    from pydantic import ValidationError
    from pydantic_core import ErrorDetails

LARGEST_BYTES: Final = 1_000_000


def read_design(path: Path | str, catalogue: Catalogue | None = None) -> Design:
    """Read a design file and check that its sizes can be worked out.

    Parameters
    ----------
    path : Path or str
        A ``DESIGN.toml``.
    catalogue : Catalogue or None
        Where its codes are looked up; None keeps codes as labels and needs all measures.

    Raises
    ------
    DesignFileError
        When the file cannot be read; the sentence names the file and the field.
    """
    file = Path(path)
    design = design_from_text(_text_of(file), file, catalogue)
    with naming(file):
        sizes_of(design)
    return design


def read_size_report(path: Path | str, catalogue: Catalogue | None = None) -> dict[str, Any]:
    """Read a design file and return its sizes as JSON-ready data; see ``size_report``.

    Raises
    ------
    DesignFileError
        When the file cannot be read or its depth cannot be worked out, naming file and field.
    """
    design = read_design(path, catalogue)
    with naming(path):
        return size_report(design, catalogue.samples if catalogue else ())


def design_from_text(text: str, path: Path | str, catalogue: Catalogue | None = None) -> Design:
    """Read the text of a design file; ``path`` only names it in a refusal.

    Raises
    ------
    DesignFileError
        Naming the file and the field.
    """
    from pydantic import ValidationError

    from framing_palette.design.design_tables import DesignTable
    from framing_palette.design.table_reading import design_from

    try:
        raw = tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        problem = f"is not valid TOML ({str(error).rstrip('.')})"
        raise DesignFileError(path, problem=problem, todo="mend that place") from error
    try:
        table = DesignTable.model_validate(raw)
    except ValidationError as error:
        raise _refusal(path, error, DesignTable) from error
    with naming(path):
        return design_from(table, catalogue)


def write_design(design: Design, path: Path | str) -> None:
    """Write a design file; an older one stays whole until the new one is complete.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    file = Path(path)
    beside = file.with_name(f".{file.name}.new")
    try:
        beside.write_text(design_text(design), encoding="utf-8")
        beside.replace(file)
    except OSError as error:
        problem = f"cannot be written ({error.strerror})"
        raise OutputError(file, problem=problem, todo="choose a folder you may write to") from error


@contextmanager
def naming(path: Path | str) -> Iterator[None]:
    """Put the file's name in front of any refusal of its contents."""
    try:
        yield
    except DesignFileError:
        raise
    except FramingPaletteError as error:
        todo = str(error).rstrip(".")
        raise DesignFileError(path, problem="cannot be used", todo=todo) from error


def _text_of(file: Path) -> str:
    try:
        if file.stat().st_size > LARGEST_BYTES:
            raise DesignFileError(file, problem="is over 1 MB", todo="name a design file")
        return file.read_text(encoding="utf-8-sig")
    except OSError as error:
        problem = f"cannot be read ({error.strerror})"
        raise DesignFileError(file, problem=problem, todo="name an existing design file") from error
    except UnicodeDecodeError as error:
        raise DesignFileError(file, problem="is not UTF-8 text", todo="save it as UTF-8") from error


def _refusal(path: Path | str, error: "ValidationError", model: type) -> DesignFileError:
    first = error.errors()[0]
    place = _place(first["loc"])
    match first["type"]:
        case "missing":
            return DesignFileError(path, problem=f"has no {place}", todo="add it")
        case "extra_forbidden":
            near = get_close_matches(str(first["loc"][-1]), _keys(model), n=1)
            todo = f"perhaps {near[0]} is meant" if near else "take it out"
            return DesignFileError(path, problem=f"has an unknown {place}", todo=todo)
    got = first["input"]
    return DesignFileError(path, problem=f"has {place} = {got!r}", todo=_todo(first))


def _todo(detail: "ErrorDetails") -> str:
    message = detail["msg"].removeprefix("Value error, ")
    return message[0].lower() + message[1:].rstrip(".")


def _place(loc: tuple[int | str, ...]) -> str:
    """Write a pydantic place as people count: ``layer 2 reveal``."""
    return " ".join(str(part + 1) if isinstance(part, int) else part for part in loc)


def _keys(model: type) -> list[str]:
    from framing_palette.design import design_tables

    models = [model, *vars(design_tables).values()]
    names: set[str] = set()
    for each in models:
        names.update(getattr(each, "model_fields", {}))
    return sorted(names)
