"""Companion files: what the tables beside samples.csv say of its samples, kept by code."""

import math
from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping
from pathlib import Path
from typing import TypeVar

from framing_palette.arrays import SPECTRUM_LENGTH
from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.conservation_rows import (
    CONSERVATION_COLUMNS,
    ConservationRow,
    read_conservation_row,
)
from framing_palette.catalogue.figure_rows import FigureRows
from framing_palette.catalogue.folder_files import (
    file_names,
    optional_rows,
    rows_of,
    textures_place,
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
from framing_palette.catalogue.problems import ProblemList
from framing_palette.catalogue.samples import ConservationFact
from framing_palette.catalogue.surface_files import read_surface_table
from framing_palette.catalogue.surfaces import MeasuredSurface, surfaces_by_texture

CodedRow = TypeVar("CodedRow", ColourRow, SpectrumRow, PointRow, ConservationRow)
_UNKNOWN = math.nan


def read_companions(
    folder: Path, names: Mapping[str, str], codes: Collection[str], problems: ProblemList
) -> FactsBySample:
    """Return what the tables beside samples.csv say of some samples.

    Parameters
    ----------
    folder, names
        The folder, and the names in it by their lower-case form.
    codes
        Of the usable samples; rows of others are remarked on and left out.
    problems
        Where bad cells are told, in the order of the tables.

    Raises
    ------
    CatalogueError
        When colours.csv or a needed column is missing.
    """
    textures = textures_place(folder, names)
    return FactsBySample(
        colours=_read_colours(folder, names, codes, problems),
        spectra=_read_spectra(folder, names, codes, problems),
        points=_read_points(folder, names, codes, problems),
        claims=_read_claims(folder, names, codes, problems),
        textures={} if textures is None else file_names(textures),
        surfaces=_read_surfaces(folder, names, problems),
        problems=problems,
    )


def _read_colours(
    folder: Path, names: Mapping[str, str], codes: Collection[str], problems: ProblemList
) -> FigureRows:
    needed = ("code", "L", "a", "b")
    found = rows_of(folder, names, "colours.csv", problems, required=needed, known=COLOUR_COLUMNS)
    colours = FigureRows(4)
    for _, read in _usable(found, read_colour_row, codes):
        lab = (_UNKNOWN,) * 3 if read.lab is None else read.lab
        colours.add(read.code, *lab, _UNKNOWN if read.share is None else read.share)
    return colours


def _read_spectra(
    folder: Path, names: Mapping[str, str], codes: Collection[str], problems: ProblemList
) -> FigureRows:
    spectra = FigureRows(1 + SPECTRUM_LENGTH)
    found = optional_rows(folder, names, "spectra.csv", problems, SPECTRUM_COLUMNS)
    for row, read in _usable(found, read_spectrum_row, codes):
        if read.colour in spectra.first_figures(read.code):
            row.tell("colour", f"{read.code} has a spectrum for colour {read.colour} already")
        else:
            spectra.add(read.code, read.colour, *read.reflectance)
    return spectra


def _read_points(
    folder: Path, names: Mapping[str, str], codes: Collection[str], problems: ProblemList
) -> FigureRows:
    points = FigureRows(4)
    found = optional_rows(folder, names, "profiles.csv", problems, PROFILE_COLUMNS)
    for row, read in _usable(found, read_point_row, codes):
        point = (_UNKNOWN, _UNKNOWN) if read.point is None else read.point
        points.add(read.code, read.order, *point, row.row.number)
    return points


def _read_claims(
    folder: Path, names: Mapping[str, str], codes: Collection[str], problems: ProblemList
) -> dict[str, list[ConservationFact]]:
    claims: dict[str, list[ConservationFact]] = defaultdict(list)
    found = optional_rows(folder, names, "conservation.csv", problems, CONSERVATION_COLUMNS)
    for _, read in _usable(found, read_conservation_row, codes):
        claims[read.code].append(read.fact)
    return claims


def _read_surfaces(
    folder: Path, names: Mapping[str, str], problems: ProblemList
) -> Mapping[tuple[str, float | None], MeasuredSurface]:
    textures = textures_place(folder, names)
    if "textures.csv" not in names or textures is None:
        return {}
    return surfaces_by_texture(
        read_surface_table(folder / names["textures.csv"], textures, problems)
    )


def _usable(
    rows: Iterator[RowReader],
    reader: Callable[[RowReader], CodedRow | None],
    codes: Collection[str],
) -> Iterator[tuple[RowReader, CodedRow]]:
    """Return the rows that can be read and belong to a sample."""
    for row in rows:
        read = reader(row)
        if read is None:
            continue
        if read.code in codes:
            yield row, read
        else:
            reason = f"{read.code} is no usable sample of samples.csv; this row is left out"
            row.tell("code", reason, is_notice=True)
