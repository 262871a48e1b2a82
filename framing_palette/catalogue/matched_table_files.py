"""Matched tables: a spreadsheet with names of its own read as samples, after a look at it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import islice
from pathlib import Path

import numpy as np

from framing_palette.catalogue.cells import RowReader, length_text
from framing_palette.catalogue.column_matching import (
    AXES,
    LENGTH_TARGETS,
    TARGETS,
    ColumnMatch,
    LengthUnit,
)
from framing_palette.catalogue.conditions import (
    Conditions,
    known_light,
    lab_from,
    stated_origin,
)
from framing_palette.catalogue.palette_rows import read_colour_row
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.sample_rows import (
    LEFT_OUT,
    SAMPLE_COLUMNS,
    read_sample_row,
    sample_cells,
)
from framing_palette.catalogue.samples import Sample, SampleColour
from framing_palette.catalogue.table_files import TableRow, open_table, unguarded
from framing_palette.errors import CatalogueError, ExchangeFileError, FramingPaletteError
from framing_palette.units import Length


@dataclass(frozen=True, slots=True)
class ReadRow:
    """One row of a spreadsheet as it is read.

    Parameters
    ----------
    number
        As a spreadsheet counts.
    cells
        By our column, what was understood; for a row that is left out, what is written.
    faults
        By our column, why a cell is not; under an empty name what is wrong with the whole row.
    """

    number: int
    cells: Mapping[str, str]
    faults: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class MatchPreview:
    """The first rows of a spreadsheet as they would be read.

    Parameters
    ----------
    header
        The spreadsheet's columns, lower case.
    unused
        Those that no fact is taken from.
    samples
        Of the first good rows.
    problems
        Of the first rows.
    rows
        The first rows, good ones and others.
    """

    header: tuple[str, ...]
    unused: tuple[str, ...]
    samples: tuple[Sample, ...]
    problems: tuple[CellProblem, ...]
    rows: tuple[ReadRow, ...] = ()


def preview_matched_file(path: Path, match: ColumnMatch, *, rows: int = 20) -> MatchPreview:
    """Return what the first rows of a spreadsheet would give.

    Raises
    ------
    CatalogueError
        When the file cannot be read.
    """
    problems = ProblemList()
    header, lines = open_table(path, problems)
    first = list(islice(lines, rows))
    samples = tuple(_samples(first, path, match, problems))
    used = {name.lower() for name in match.columns.values()}
    unused = tuple(name for name in header if name and name not in used)
    told = problems.told()
    read = _as_read(first, samples, match, told)
    return MatchPreview(tuple(header), unused, samples, told, read)


def _as_read(
    lines: Sequence[TableRow],
    samples: Sequence[Sample],
    match: ColumnMatch,
    problems: Sequence[CellProblem],
) -> tuple[ReadRow, ...]:
    """Return what became of the cells of some rows."""
    by_code = {sample.code: sample for sample in samples}
    rows = []
    for line in lines:
        told = [problem for problem in problems if problem.row == line.number]
        written = {t: line.cells.get(name.lower(), "") for t, name in match.columns.items()}
        sample = by_code.pop(unguarded(written.get("code", "")), None)
        cells = written if sample is None else _understood(sample, tuple(match.columns))
        rows.append(ReadRow(line.number, cells, {_target(p.column): p.reason for p in told}))
    return tuple(rows)


def _understood(sample: Sample, targets: Sequence[str]) -> dict[str, str]:
    facts = dict(zip(SAMPLE_COLUMNS, sample_cells(sample), strict=True))
    if sample.colours:
        facts |= {
            axis: f"{value:.2f}" for axis, value in zip(AXES, sample.colours[0].lab, strict=True)
        }
    return {target: unguarded(facts.get(target, "")) for target in targets}


def _target(column: str) -> str:
    """Return one of TARGETS, whose letter case a problem does not keep."""
    return next((target for target in TARGETS if target.lower() == column.lower()), column)


def read_matched_file(
    path: Path, match: ColumnMatch
) -> tuple[tuple[Sample, ...], tuple[CellProblem, ...]]:
    """Return the good samples of a spreadsheet, and all that is wrong with it.

    Raises
    ------
    CatalogueError
        When the file cannot be read, or no column is taken for the code.
    """
    if "code" not in match.columns:
        raise CatalogueError(
            path, problem="has no column that is taken for the code", todo="say which one it is"
        )
    problems = ProblemList()
    _, lines = open_table(path, problems)
    return tuple(_samples(lines, path, match, problems)), problems.told()


def _samples(
    lines: Iterable[TableRow], path: Path, match: ColumnMatch, problems: ProblemList
) -> Iterator[Sample]:
    conditions = _known_conditions(match, path, problems)
    origin = "" if conditions is None else stated_origin(match.told, conditions)
    seen: dict[str, int] = {}
    for line in lines:
        row = RowReader(_renamed(line, match), path.name, problems)
        sample = read_sample_row(row)
        if sample is None:
            continue
        if sample.code in seen:
            row.tell("code", f"{sample.code} stands in row {seen[sample.code]} already{LEFT_OUT}")
            continue
        seen[sample.code] = line.number
        colours = () if conditions is None else _colours(row, conditions, path)
        yield replace(sample, colours=colours, colour_origin=origin if colours else "")


def _known_conditions(match: ColumnMatch, path: Path, problems: ProblemList) -> Conditions | None:
    """Return the light of a spreadsheet's colours; None when they have to be left out."""
    if not all(axis in match.columns for axis in AXES):
        return None
    try:
        known_light(match.conditions, path, what="Lab")
    except ExchangeFileError as error:
        reason = f"{error.problem}; {error.todo}; the colours are left out"
        problems.add(CellProblem(path.name, None, match.columns["L"], reason))
        return None
    return match.conditions


def _colours(row: RowReader, conditions: Conditions, path: Path) -> tuple[SampleColour, ...]:
    """Return the colour of a row; none when it has none, or a bad one, which is told."""
    if not any(row.text(axis) for axis in ("l", "a", "b")):
        return ()
    read = read_colour_row(row)
    if read is None or read.lab is None:
        return ()
    lightness, a, b = np.asarray(lab_from(np.array(read.lab), conditions, path)).tolist()
    return (SampleColour((lightness, a, b), 1.0),)


def _renamed(line: TableRow, match: ColumnMatch) -> TableRow:
    """Return a row under our column names, its bare lengths in millimetres."""
    cells = {
        target.lower(): line.cells.get(name.lower(), "") for target, name in match.columns.items()
    }
    if match.kind is not None and not cells.get("kind"):
        cells["kind"] = str(match.kind)
    for column in LENGTH_TARGETS:
        unit = match.units.get(column, match.unit)
        if unit != "mm" and cells.get(column):
            cells[column] = _in_millimetres(cells[column], unit)
    comma = line.decimal_comma if match.has_decimal_comma is None else match.has_decimal_comma
    return TableRow(line.number, cells, comma)


def _in_millimetres(text: str, unit: LengthUnit) -> str:
    """Return a length in millimetres; text that is none stays for the reader to refuse."""
    try:
        return length_text(Length.parse(text, unit))
    except FramingPaletteError:
        return text
