"""Catalogue folders: read with all their problems told at once."""

import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.companion_files import read_companions
from framing_palette.catalogue.folder_files import (
    file_names,
    package_name,
    rows_of,
    textures_place,
)
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.sample_rows import (
    RARE_SAMPLE_COLUMNS,
    REQUIRED_SAMPLE_COLUMNS,
    SAMPLE_COLUMNS,
    read_sample_row,
    usable_code,
)
from framing_palette.catalogue.samples import Catalogue, Sample
from framing_palette.errors import CatalogueError


def read_catalogue_folder(folder: Path) -> tuple[Catalogue, tuple[CellProblem, ...]]:
    """Return the good samples of a catalogue folder, and everything that is wrong with it.

    A bad cell leaves one fact unknown and costs no sample: a bad colour makes the colours unknown
    unless it covers little, a bad point the cross-section. Only a row of samples.csv without a
    usable code or kind is left out.

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

    samples.csv is gone through twice, so that neither its samples nor rows of other tables that
    belong to none of them need to wait in the memory.

    Raises
    ------
    CatalogueError
        As `read_catalogue_folder`, except that no good row gives no sample.
    """
    names = file_names(folder)
    rows = _sample_rows(folder, names, ProblemList(0))
    codes = {sys.intern(code) for row in rows if (code := usable_code(row))}
    beside = ProblemList()
    facts = read_companions(folder, names, codes, beside)
    seen: dict[str, int] = {}
    for row in _sample_rows(folder, names, problems):
        sample = read_sample_row(row)
        if sample is None:
            continue
        if sample.code in seen:
            first = seen[sample.code]
            row.tell("code", f"{sample.code} stands in row {first} already; this row is left out")
            continue
        seen[sample.code] = row.row.number
        yield facts.complete(sample, row.row.number)
    problems.take_over(beside)


def names_of_folder(folder: Path, problems: ProblemList) -> tuple[str, str]:
    """Return where a folder's textures lie, empty for nowhere, and what the catalogue is called.

    Raises
    ------
    CatalogueError
        When it is no folder that can be read.
    """
    names = file_names(folder)
    textures = textures_place(folder, names)
    return str(textures or ""), package_name(folder, names, problems)


def no_usable_sample(folder: Path, problems: ProblemList) -> CatalogueError:
    """Return the error for a folder without one good row, naming the first thing to put right."""
    first = next((str(p) for p in problems if not p.is_notice), "samples.csv has no rows.")
    return CatalogueError(
        folder, problem="holds no usable sample", todo=f"put this right first: {first[:-1]}"
    )


def _sample_rows(
    folder: Path, names: Mapping[str, str], problems: ProblemList
) -> Iterator[RowReader]:
    return rows_of(
        folder,
        names,
        "samples.csv",
        problems,
        required=REQUIRED_SAMPLE_COLUMNS,
        known=(*SAMPLE_COLUMNS, *RARE_SAMPLE_COLUMNS),
    )
