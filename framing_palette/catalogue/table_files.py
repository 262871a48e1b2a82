"""Table files: rows of text out of whatever a spreadsheet saved, and rows of text into a file.

Encoding, byte-order mark and separator are found out and told; the file is read as a stream, so
that its size costs time but not memory.
"""

import codecs
import csv
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.errors import CatalogueError, OutputError
from framing_palette.whole_files import check_ordinary

LARGEST_FILE_BYTES = 4 << 30
MOST_ROWS = 5_000_000
MOST_COLUMNS = 2000
_CHUNK = 1 << 20
_LARGEST_CELL = 100_000
_FORMULA = re.compile(r"'*[=+\-@\t\r]")


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of a table.

    Parameters
    ----------
    number
        As a spreadsheet counts; the header is row 1.
    cells
        Stripped text by lower-case column name; a missing cell is not there.
    decimal_comma
        True when the file's separator leaves the comma free for decimals.
    """

    number: int
    cells: dict[str, str]
    decimal_comma: bool = False


@dataclass(frozen=True, slots=True)
class TableForm:
    """How a table file is written."""

    encoding: str
    delimiter: str
    decimal_comma: bool


def find_table_form(path: Path, problems: ProblemList) -> TableForm:
    """Return the encoding and separator of a table file, telling what is unusual.

    Raises
    ------
    CatalogueError
        When the file cannot be read or is absurdly large.
    """
    try:
        check_ordinary(path)
        size = path.stat().st_size
        if size > LARGEST_FILE_BYTES:
            raise CatalogueError(
                path,
                problem=f"has {size / 2**30:.1f} GiB, too much for a sample table",
                todo="split it into several catalogues",
            )
        encoding = _encoding_of(path, problems)
        with path.open(encoding=encoding, newline="") as file:
            header = file.readline(_LARGEST_CELL)
    except OSError as error:
        raise CatalogueError(
            path, problem=f"cannot be read ({error.strerror})", todo="check the file and its rights"
        ) from error
    delimiter = max(",;\t", key=header.count)
    if delimiter != ",":
        name = "semicolons" if delimiter == ";" else "tabs"
        reason = f"columns are separated by {name} instead of commas; read that way"
        problems.add(CellProblem(path.name, None, "", reason, is_notice=True))
    return TableForm(encoding, delimiter, decimal_comma=delimiter != ",")


def open_table(path: Path, problems: ProblemList) -> tuple[list[str], Iterator[TableRow]]:
    """Return a table's column names in lower case, and its rows as a stream without empty ones.

    Raises
    ------
    CatalogueError
        When the file cannot be read, has no header, or has more rows than any catalogue.
    """
    form = find_table_form(path, problems)
    csv.field_size_limit(_LARGEST_CELL)
    with path.open(encoding=form.encoding, newline="") as file:
        header = _header(csv.reader(file, delimiter=form.delimiter), path)
    return header, _stream(path, form, problems, header)


def _stream(
    path: Path, form: TableForm, problems: ProblemList, header: list[str]
) -> Iterator[TableRow]:
    with path.open(encoding=form.encoding, newline="") as file:
        reader = csv.reader(file, delimiter=form.delimiter)
        next(reader)
        yield from _rows(reader, header, path, problems, decimal_comma=form.decimal_comma)


def write_table(path: Path, header: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
    """Write a table as UTF-8, comma separated; a cell never starts a spreadsheet formula.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    try:
        with path.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file, lineterminator="\n")
            writer.writerow(header)
            writer.writerows(rows)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be written ({error.strerror})",
            todo="choose another folder or free some space",
        ) from error


def guarded(text: str) -> str:
    """Return text that a spreadsheet shows as it is instead of working it out.

    Examples
    --------
    >>> guarded("=1+1"), guarded("chalk")
    ("'=1+1", 'chalk')
    """
    return f"'{text}" if _FORMULA.match(text) else text


def unguarded(text: str) -> str:
    """Return the text that was guarded; any other text comes back unchanged."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text) else text


def _encoding_of(path: Path, problems: ProblemList) -> str:
    with path.open("rb") as file:
        start = file.read(4)
    for name, is_it in (
        ("utf-16", start.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))),
        ("utf-16-le", len(start) == 4 and start[1] == start[3] == 0),
        ("utf-16-be", len(start) == 4 and start[0] == start[2] == 0),
    ):
        if is_it:
            _tell_encoding(path, problems, "UTF-16")
            return _checked(path, name, problems)
    if start.startswith(codecs.BOM_UTF8):
        return _checked(path, "utf-8-sig", problems)
    return _checked(path, "utf-8", problems)


def _checked(path: Path, encoding: str, problems: ProblemList) -> str:
    """Return the encoding if the whole file obeys it, else a Western 8-bit one with a notice."""
    if _obeys(path, encoding):
        return encoding
    if encoding.startswith("utf-16"):
        raise CatalogueError(
            path, problem="is UTF-16 text cut short", todo="save the table again as UTF-8"
        )
    _tell_encoding(path, problems, "Latin-1")
    return "cp1252" if _obeys(path, "cp1252") else "latin-1"


def _obeys(path: Path, encoding: str) -> bool:
    decoder = codecs.getincrementaldecoder(encoding)()
    try:
        with path.open("rb") as file:
            while chunk := file.read(_CHUNK):
                decoder.decode(chunk)
        decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        return False
    return True


def _tell_encoding(path: Path, problems: ProblemList, name: str) -> None:
    reason = f"is {name} text; read that way, but save it as UTF-8 to be safe"
    problems.add(CellProblem(path.name, None, "", reason, is_notice=True))


def _rows(
    reader: Iterator[list[str]],
    header: list[str],
    path: Path,
    problems: ProblemList,
    *,
    decimal_comma: bool,
) -> Iterator[TableRow]:
    number, width = 1, len(header)
    while True:
        number += 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            reason = f"cannot be split into cells ({error}); look for a quote mark never closed"
            problems.add(CellProblem(path.name, number, "", reason))
            return
        if number > MOST_ROWS:
            raise CatalogueError(
                path, problem=f"has more than {MOST_ROWS} rows", todo="split the catalogue"
            )
        texts = [cell.strip() for cell in cells]
        if not any(texts):
            continue
        if len(texts) > width and any(texts[width:]):
            reason = f"has {len(cells)} cells but the header names {width} columns"
            problems.add(CellProblem(path.name, number, "", f"{reason}; quote cells with commas"))
            continue
        yield TableRow(number, dict(zip(header, texts, strict=False)), decimal_comma)


def _header(reader: Iterator[list[str]], path: Path) -> list[str]:
    try:
        header = next(reader, None)
    except csv.Error as error:
        raise CatalogueError(
            path, problem=f"has no readable header ({error})", todo="save the table again as CSV"
        ) from error
    if header is None:
        raise CatalogueError(path, problem="is empty", todo="put the column names in its first row")
    if len(header) > MOST_COLUMNS:
        raise CatalogueError(
            path,
            problem=f"names {len(header)} columns",
            todo=f"keep at most {MOST_COLUMNS} of them",
        )
    names = [name.strip().lower() for name in header]
    twice = sorted({name for name in names if name and names.count(name) > 1})
    if twice:
        raise CatalogueError(
            path,
            problem=f"names the column {twice[0]} twice",
            todo="rename or remove one of them",
        )
    return names
