"""CGATS text: the tables of an instrument's export, as written, and the writing of one.

Fields, counts and quotes are checked; what the figures mean is for ``measurements``.

References
----------
ISO 28178:2009, Graphic technology: Exchange format for colour and process control data using XML
or ASCII text; and its forerunner ANSI CGATS.17.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from framing_palette.errors import ExchangeFileError

_TOKEN = re.compile(r"\"[^\"]*\"?|'[^']*'?|#.*|[^\s\"'#]\S*")
_KEYWORD_LINE = re.compile(r"[A-Za-z_][\w.]*\Z")
_MARKS = frozenset({"BEGIN_DATA_FORMAT", "END_DATA_FORMAT", "BEGIN_DATA", "END_DATA"})
MOST_ROWS = 1_000_000
_MOST_DIGITS = 12


@dataclass(frozen=True, slots=True)
class CgatsTable:
    """One table of a CGATS file.

    Parameters
    ----------
    keywords
        Values of the header by upper-case keyword; several values of one keyword are joined by
        "; ".
    fields
        Names of the columns as written.
    rows
        Text of the cells, quotes removed; each row has as many as there are fields.
    first_line
        Line of the first row in the file, for messages.
    """

    keywords: Mapping[str, str]
    fields: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    first_line: int = 0


@dataclass(slots=True)
class _Open:
    """The table that is being read."""

    keywords: dict[str, str] = field(default_factory=dict)
    fields: list[str] = field(default_factory=list)
    lines: list[tuple[int, list[str]]] = field(default_factory=list)
    part: str = ""


def parse_cgats(text: str, source: Path) -> tuple[CgatsTable, ...]:
    """Return the tables of a CGATS text.

    Parameters
    ----------
    text
        The whole file.
    source
        Its name, for messages.

    Raises
    ------
    ExchangeFileError
        When there is no table, a mark is missing, or a count is wrong; the line is named.
    """
    tables: list[CgatsTable] = []
    now = _Open()
    for number, tokens in _token_lines(text):
        first = tokens[0].upper()
        if first in _MARKS:
            _turn(now, first, tokens, number, source)
            if first == "END_DATA":
                tables.append(_closed(now, source))
                now = _Open(fields=now.fields)
        elif now.part == "BEGIN_DATA_FORMAT":
            now.fields += [_plain(token) for token in tokens]
        elif now.part == "BEGIN_DATA":
            now.lines.append((number, [_plain(token) for token in tokens]))
            if len(now.lines) > MOST_ROWS:
                raise _wrong(source, f"has more than {MOST_ROWS} rows", "split the file")
        else:
            _keep_keyword(now.keywords, tokens)
    if now.part:
        raise _wrong(source, f"stops inside {now.part}", "export it again, it is cut short")
    if not tables:
        raise _wrong(source, "holds no BEGIN_DATA", "choose an instrument's CGATS export")
    return tuple(tables)


def cgats_text(tables: Sequence[CgatsTable]) -> str:
    """Return tables as CGATS text that `parse_cgats` reads back.

    The identifier stands on the first line of the file alone; cells with spaces are quoted.
    """
    return "".join(_table_text(table, is_first=i == 0) for i, table in enumerate(tables))


def _table_text(table: CgatsTable, *, is_first: bool) -> str:
    lines = ["CGATS.17"] if is_first else [""]
    lines += [f'{key}\t"{_unquoted(value)}"' for key, value in table.keywords.items()]
    lines += [f"NUMBER_OF_FIELDS\t{len(table.fields)}", "BEGIN_DATA_FORMAT"]
    lines += ["\t".join(table.fields), "END_DATA_FORMAT", f"NUMBER_OF_SETS\t{len(table.rows)}"]
    lines += ["BEGIN_DATA", *("\t".join(map(_cell, row)) for row in table.rows), "END_DATA", ""]
    return "\n".join(lines)


def _cell(text: str) -> str:
    bare = text and not re.search(r"[\s\"'#]", text) and text.upper() not in _MARKS
    return text if bare else f'"{_unquoted(text)}"'


def _unquoted(text: str) -> str:
    """Return text that fits between double quotes on one line."""
    return re.sub(r"[\r\n\t]", " ", text).replace('"', "'")


def _token_lines(text: str) -> Iterator[tuple[int, list[str]]]:
    for number, line in enumerate(text.splitlines(), 1):
        tokens = [token for token in _TOKEN.findall(line) if not token.startswith("#")]
        if tokens:
            yield number, tokens


def _turn(now: _Open, mark: str, tokens: list[str], number: int, source: Path) -> None:
    """Go from one part of a table to the next, or say why that cannot be."""
    begins = {"END_DATA_FORMAT": "BEGIN_DATA_FORMAT", "END_DATA": "BEGIN_DATA"}.get(mark)
    if begins is not None and now.part != begins:
        raise _wrong(source, f"has {mark} in line {number} without {begins}", "export it again")
    if begins is None and now.part:
        raise _wrong(source, f"has {mark} in line {number} inside {now.part}", "export it again")
    if mark == "BEGIN_DATA_FORMAT":
        now.fields = []
    if mark == "BEGIN_DATA" and not now.fields:
        raise _wrong(source, f"has data in line {number} but names no fields", "export it again")
    now.part = mark if begins is None else ""
    if len(tokens) > 1 and mark == "BEGIN_DATA_FORMAT":
        now.fields += [_plain(token) for token in tokens[1:]]


def _closed(now: _Open, source: Path) -> CgatsTable:
    rows = _rows(now, source)
    _check_count(now.keywords, "NUMBER_OF_FIELDS", len(now.fields), source)
    _check_count(now.keywords, "NUMBER_OF_SETS", len(rows), source)
    first = now.lines[0][0] if now.lines else 0
    return CgatsTable(now.keywords, tuple(now.fields), rows, first)


def _rows(now: _Open, source: Path) -> tuple[tuple[str, ...], ...]:
    """Return the rows; a row may be broken over lines if the whole still comes out even."""
    width = len(now.fields)
    uneven = next(((n, len(cells)) for n, cells in now.lines if len(cells) != width), None)
    if uneven is None:
        return tuple(tuple(cells) for _, cells in now.lines)
    cells = [cell for _, line in now.lines for cell in line]
    wanted = _count(now.keywords.get("NUMBER_OF_SETS", ""))
    if wanted is None or len(cells) != wanted * width:
        number, found = uneven
        problem = f"has {found} values in line {number} but names {width} fields"
        raise _wrong(source, problem, "export it again; a name with spaces needs quotes")
    return tuple(tuple(cells[i : i + width]) for i in range(0, len(cells), width))


def _check_count(keywords: Mapping[str, str], key: str, found: int, source: Path) -> None:
    stated = keywords.get(key)
    if stated is not None and _count(stated) != found:
        problem = f"states {key} {stated[:20]} but holds {found}"
        raise _wrong(source, problem, "export it again, it is damaged or cut short")


def _count(text: str) -> int | None:
    return int(text) if text.isdecimal() and len(text) <= _MOST_DIGITS else None


def _keep_keyword(keywords: dict[str, str], tokens: list[str]) -> None:
    """Keep one header line; a bare word is the file's identifier."""
    key = tokens[0].upper()
    if not _KEYWORD_LINE.match(tokens[0]):
        return
    value = " ".join(_plain(token) for token in tokens[1:])
    if not value:
        keywords.setdefault("IDENTIFIER", tokens[0])
    elif key in keywords and not key.startswith("NUMBER_OF_"):
        keywords[key] += f"; {value}"
    else:
        keywords[key] = value


def _plain(token: str) -> str:
    mark = token[:1]
    return token[1:].removesuffix(mark) if mark in {'"', "'"} else token


def _wrong(source: Path, problem: str, todo: str) -> ExchangeFileError:
    return ExchangeFileError(source, problem=problem, todo=todo)
