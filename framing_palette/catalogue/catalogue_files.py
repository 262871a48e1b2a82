"""Catalogue folders: read with all their problems told at once."""

import json
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from pathlib import Path
from typing import TypeVar

from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.conservation_rows import (
    CONSERVATION_COLUMNS,
    ConservationRow,
    read_conservation_row,
)
from framing_palette.catalogue.joining import FactsBySample
from framing_palette.catalogue.palette_rows import (
    COLOUR_COLUMNS,
    PROFILE_COLUMNS,
    SPECTRUM_COLUMNS,
    ColourRow,
    PointRow,
    SpectrumRow,
    read_colour_row,
    read_point_row,
    read_spectrum_row,
)
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.sample_rows import (
    REQUIRED_SAMPLE_COLUMNS,
    SAMPLE_COLUMNS,
    read_sample_row,
)
from framing_palette.catalogue.samples import Catalogue, ConservationFact, Sample
from framing_palette.catalogue.surface_files import read_surface_table
from framing_palette.catalogue.surfaces import MeasuredSurface, surfaces_by_texture
from framing_palette.catalogue.table_files import open_table
from framing_palette.errors import CatalogueError

CodedRow = TypeVar("CodedRow", SpectrumRow, PointRow, ConservationRow)


def read_catalogue_folder(folder: Path) -> tuple[Catalogue, tuple[CellProblem, ...]]:
    """Return the good samples of a catalogue folder, and everything that is wrong with it.

    A bad cell of samples.csv leaves that one fact unknown, and so does a bad spectrum or
    cross-section; without a usable code or kind the row is left out, and a sample with a bad colour
    is, too.

    Parameters
    ----------
    folder
        Holds samples.csv and colours.csv, and if there are any, spectra.csv, profiles.csv and
        textures/.

    Returns
    -------
    The samples in the order of samples.csv, and the problems in the order of the files.

    Raises
    ------
    CatalogueError
        When nothing can be used: no such folder, no samples.csv, a needed column is missing, or
        not one row is good.
    """
    problems = ProblemList()
    whole = tuple(stream_samples(folder, problems))
    if not whole:
        raise no_usable_sample(folder, problems)
    textures_dir, name = names_of_folder(folder, problems)
    return Catalogue(whole, textures_dir, name), problems.told()


def stream_samples(folder: Path, problems: ProblemList) -> Iterator[Sample]:
    """Return the good samples of a folder one after another, for whoever need not keep them all.

    Raises
    ------
    CatalogueError
        As `read_catalogue_folder`, except that no good row gives no sample.
    """
    names = _file_names(folder)
    samples = _read_samples(folder, names, problems)
    bad_colours, colours = _read_colours(folder, names, samples, problems)
    spectra = _read_spectra(folder, names, samples, problems)
    points = _read_points(folder, names, samples, problems)
    claims = _read_claims(folder, names, samples, problems)
    textures = _file_names(folder / names["textures"]) if "textures" in names else {}
    surfaces = _read_surfaces(folder, names, problems)
    joined = FactsBySample(colours, spectra, points, claims, textures, surfaces, problems)
    for code in list(samples):
        sample, number = samples.pop(code)
        if code not in bad_colours:
            yield joined.complete(sample, number)


def names_of_folder(folder: Path, problems: ProblemList) -> tuple[str, str]:
    """Return where a folder's textures lie, empty for nowhere, and what the catalogue is called.

    Raises
    ------
    CatalogueError
        When it is no folder that can be read.
    """
    names = _file_names(folder)
    textures_dir = str(folder / names["textures"]) if "textures" in names else ""
    return textures_dir, _package_name(folder, names, problems)


def no_usable_sample(folder: Path, problems: ProblemList) -> CatalogueError:
    """Return the error for a folder without one good row, naming the first thing to put right."""
    first = next((str(p) for p in problems if not p.is_notice), "samples.csv has no rows.")
    return CatalogueError(
        folder, problem="holds no usable sample", todo=f"put this right first: {first[:-1]}"
    )


def _file_names(folder: Path) -> dict[str, str]:
    """Return the names in a folder by their lower-case form."""
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


def _rows_of(
    folder: Path, name: str, problems: ProblemList, required: Sequence[str], known: Sequence[str]
) -> Iterator[RowReader]:
    """Return the rows of a table after its header has passed."""
    path = folder / name
    header, rows = open_table(path, problems)
    _check_header(path, header, problems, required, known)
    for row in rows:
        yield RowReader(row, name, problems)


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


def _read_samples(
    folder: Path, names: dict[str, str], problems: ProblemList
) -> dict[str, tuple[Sample, int]]:
    """Return the good samples and their row numbers by code."""
    name = _needed(folder, names, "samples.csv")
    samples: dict[str, tuple[Sample, int]] = {}
    rows = _rows_of(folder, name, problems, REQUIRED_SAMPLE_COLUMNS, SAMPLE_COLUMNS)
    for row in rows:
        sample = read_sample_row(row)
        if sample is None:
            continue
        if sample.code in samples:
            first = samples[sample.code][1]
            row.tell("code", f"{sample.code} stands in row {first} already; this row is left out")
        else:
            samples[sample.code] = (sample, row.row.number)
    return samples


def _read_colours(
    folder: Path,
    names: dict[str, str],
    samples: dict[str, tuple[Sample, int]],
    problems: ProblemList,
) -> tuple[frozenset[str], dict[str, list[ColourRow]]]:
    """Return the codes with a bad colour, and the colours by code in the order of the file."""
    name = _needed(folder, names, "colours.csv")
    bad: set[str] = set()
    colours: dict[str, list[ColourRow]] = defaultdict(list)
    for row in _rows_of(folder, name, problems, ("code", "L", "a", "b"), COLOUR_COLUMNS):
        read = read_colour_row(row)
        if read is None:
            bad.add(row.text("code"))
        elif read.code in samples:
            colours[read.code].append(read)
        else:
            row.tell("code", _unknown_code(read.code), is_notice=True)
    return frozenset(bad), colours


def _read_spectra(
    folder: Path,
    names: dict[str, str],
    samples: dict[str, tuple[Sample, int]],
    problems: ProblemList,
) -> dict[str, dict[int, tuple[float, ...]]]:
    spectra: dict[str, dict[int, tuple[float, ...]]] = defaultdict(dict)
    found = _optional_rows(folder, names, "spectra.csv", problems, SPECTRUM_COLUMNS)
    for row, read in _good(found, read_spectrum_row, samples):
        if read.colour in spectra[read.code]:
            row.tell("colour", f"{read.code} has a spectrum for colour {read.colour} already")
        else:
            spectra[read.code][read.colour] = read.reflectance
    return spectra


def _read_points(
    folder: Path,
    names: dict[str, str],
    samples: dict[str, tuple[Sample, int]],
    problems: ProblemList,
) -> dict[str, list[PointRow]]:
    points: dict[str, list[PointRow]] = defaultdict(list)
    found = _optional_rows(folder, names, "profiles.csv", problems, PROFILE_COLUMNS)
    for _, read in _good(found, read_point_row, samples):
        points[read.code].append(read)
    return points


def _read_claims(
    folder: Path,
    names: dict[str, str],
    samples: dict[str, tuple[Sample, int]],
    problems: ProblemList,
) -> dict[str, list[ConservationFact]]:
    claims: dict[str, list[ConservationFact]] = defaultdict(list)
    found = _optional_rows(folder, names, "conservation.csv", problems, CONSERVATION_COLUMNS)
    for _, read in _good(found, read_conservation_row, samples):
        claims[read.code].append(read.fact)
    return claims


def _good(
    rows: Iterator[RowReader],
    reader: Callable[[RowReader], CodedRow | None],
    samples: dict[str, tuple[Sample, int]],
) -> Iterator[tuple[RowReader, CodedRow]]:
    """Return the rows that can be read and belong to a sample."""
    for row in rows:
        read = reader(row)
        if read is None:
            continue
        if read.code in samples:
            yield row, read
        else:
            row.tell("code", _unknown_code(read.code), is_notice=True)


def _read_surfaces(
    folder: Path, names: dict[str, str], problems: ProblemList
) -> Mapping[tuple[str, float | None], MeasuredSurface]:
    if "textures.csv" not in names or "textures" not in names:
        return {}
    table, textures = folder / names["textures.csv"], folder / names["textures"]
    return surfaces_by_texture(read_surface_table(table, textures, problems))


def _optional_rows(
    folder: Path, names: dict[str, str], name: str, problems: ProblemList, columns: Sequence[str]
) -> Iterator[RowReader]:
    if name in names:
        yield from _rows_of(folder, names[name], problems, columns[:1], columns)


def _unknown_code(code: str) -> str:
    return f"{code} is no usable sample of samples.csv; this row is left out"


def _needed(folder: Path, names: dict[str, str], name: str) -> str:
    if name not in names:
        raise CatalogueError(
            folder,
            problem=f"has no {name}",
            todo="a catalogue folder holds samples.csv and colours.csv",
        )
    return names[name]


def _package_name(folder: Path, names: dict[str, str], problems: ProblemList) -> str:
    """Return the title in datapackage.json, or the folder's name."""
    if "datapackage.json" not in names:
        return folder.resolve().name
    path = folder / names["datapackage.json"]
    try:
        package = json.loads(path.read_text(encoding="utf-8-sig"))
        return str(package.get("title") or package.get("name") or folder.resolve().name)
    except (OSError, ValueError, AttributeError):
        reason = "is not readable JSON; the tables are read without it"
        problems.add(CellProblem(path.name, None, "", reason, is_notice=True))
        return folder.resolve().name
