"""Design files on disk: ``DESIGN.toml`` read and written.

A mistake is told in one sentence that names the file and the field. A code is looked up only when
a catalogue is given; measures in the file win over the catalogue's.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from framing_palette.catalogue import Catalogue
from framing_palette.design.design_writing import design_text
from framing_palette.design.designs import Design
from framing_palette.design.report import size_report
from framing_palette.design.sizes import sizes_of
from framing_palette.design.toml_files import field_problem, text_of, toml_of
from framing_palette.errors import DesignFileError, FramingPaletteError
from framing_palette.whole_files import write_whole


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
    return design_from_text(text_of(path, DesignFileError), path, catalogue, checked=True)


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


def design_from_text(
    text: str, path: Path | str, catalogue: Catalogue | None = None, *, checked: bool = False
) -> Design:
    """Read the text of a design file; ``path`` only names it in a refusal.

    Parameters
    ----------
    text : str
        As in a ``DESIGN.toml``.
    path : Path or str
        What the text is called.
    catalogue : Catalogue or None
        Where its codes are looked up.
    checked : bool
        Whether its sizes must come out; False also reads a design that is still being made.

    Raises
    ------
    DesignFileError
        Naming the file and the field.
    """
    from pydantic import ValidationError

    from framing_palette.design import design_tables
    from framing_palette.design.design_tables import DesignTable
    from framing_palette.design.table_reading import design_from

    raw = toml_of(text, path, DesignFileError)
    try:
        table = DesignTable.model_validate(raw)
    except ValidationError as error:
        problem, todo = field_problem(error, design_tables)
        raise DesignFileError(path, problem=problem, todo=todo) from error
    with naming(path):
        design = design_from(table, catalogue)
        if checked:
            sizes_of(design)
    return design


def write_design(design: Design, path: Path | str) -> None:
    """Write a design file; an older one stays whole until the new one is complete.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    write_whole(Path(path), design_text(design).encode())


@contextmanager
def naming(path: Path | str) -> Iterator[None]:
    """Put the file's name in front of any refusal of its contents."""
    try:
        yield
    except FramingPaletteError as error:
        todo = str(error).rstrip(".")
        raise DesignFileError(path, problem="cannot be used", todo=todo) from error
