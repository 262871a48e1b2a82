"""Folder files: the tables of a catalogue folder by name, each with its header checked."""

import json
from collections.abc import Iterator, Mapping, Sequence
from difflib import get_close_matches
from pathlib import Path

from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.table_files import open_table
from framing_palette.errors import CatalogueError
from framing_palette.whole_files import read_whole

LARGEST_DESCRIPTION_BYTES = 20_000_000


def file_names(folder: Path) -> dict[str, str]:
    """Return the names in a folder by their lower-case form.

    Raises
    ------
    CatalogueError
        When it is no folder that can be read.
    """
    try:
        return {name.lower(): name for name in sorted(entry.name for entry in folder.iterdir())}
    except FileNotFoundError as error:
        raise CatalogueError(
            folder, problem="is not there", todo="name a folder that holds samples.csv"
        ) from error
    except OSError as error:
        raise CatalogueError(
            folder,
            problem=f"cannot be read as a folder ({error.strerror})",
            todo="name a folder that holds samples.csv",
        ) from error


def rows_of(
    folder: Path,
    names: Mapping[str, str],
    name: str,
    problems: ProblemList,
    *,
    required: Sequence[str],
    known: Sequence[str],
) -> Iterator[RowReader]:
    """Return the rows of a table that must be there; its header is checked at once.

    Parameters
    ----------
    folder, names
        The folder, and the names in it by their lower-case form.
    name
        Of the table, lower case.
    problems
        Where bad cells are told.
    required, known
        Columns that must be there, and all that are read.

    Raises
    ------
    CatalogueError
        When the table or a needed column is missing.
    """
    if name not in names:
        raise CatalogueError(
            folder,
            problem=f"has no {name}",
            todo="a catalogue folder holds samples.csv and colours.csv",
        )
    path = folder / names[name]
    header, rows = open_table(path, problems)
    _check_header(path, header, problems, required, known)
    return (RowReader(row, path.name, problems) for row in rows)


def optional_rows(
    folder: Path,
    names: Mapping[str, str],
    name: str,
    problems: ProblemList,
    columns: Sequence[str],
) -> Iterator[RowReader]:
    """Return the rows of a table that may be there, the first of its columns being needed.

    Raises
    ------
    CatalogueError
        When it is there without that column.
    """
    if name not in names:
        return iter(())
    return rows_of(folder, names, name, problems, required=columns[:1], known=columns)


def textures_place(folder: Path, names: Mapping[str, str]) -> Path | None:
    """Return the folder of texture pictures, None when there is none."""
    return folder / names["textures"] if "textures" in names else None


def package_name(folder: Path, names: Mapping[str, str], problems: ProblemList) -> str:
    """Return the title in datapackage.json, or the folder's name."""
    if "datapackage.json" not in names:
        return folder.resolve().name
    path = folder / names["datapackage.json"]
    try:
        package = json.loads(read_whole(path, LARGEST_DESCRIPTION_BYTES).decode("utf-8-sig"))
        return str(package.get("title") or package.get("name") or folder.resolve().name)
    except (OSError, ValueError, AttributeError, RecursionError):
        reason = "is not readable JSON; the tables are read without it"
        problems.add(CellProblem(path.name, None, "", reason, is_notice=True))
        return folder.resolve().name


def _check_header(
    path: Path,
    header: Sequence[str],
    problems: ProblemList,
    required: Sequence[str],
    known: Sequence[str],
) -> None:
    missing = [column for column in required if column.lower() not in header]
    if missing:
        raise CatalogueError(
            path,
            problem=f"has no column {' and no column '.join(missing)}",
            todo=f"its first row must name at least {', '.join(required)}",
        )
    usual = {column.lower(): column for column in known}
    for column in header:
        if column and column not in usual:
            near = get_close_matches(column, usual, n=1)
            hint = f"; is {usual[near[0]]} meant" if near else ""
            reason = f"the column is not known and is not read{hint}"
            problems.add(CellProblem(path.name, 1, column, reason, is_notice=True))
