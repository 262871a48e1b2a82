"""Exchange files: instruments' exports of any kind read, and the catalogue written for others."""

import codecs
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from framing_palette.catalogue.cgats import CgatsTable, cgats_text, parse_cgats
from framing_palette.catalogue.column_matching import guess_match
from framing_palette.catalogue.conditions import Conditions
from framing_palette.catalogue.cxf import cxf_document, parse_cxf
from framing_palette.catalogue.matched_table_files import read_matched_file
from framing_palette.catalogue.measurements import (
    PLACE_MARK,
    Measurement,
    MeasurementSet,
    measurements_of,
    samples_from,
)
from framing_palette.catalogue.palette_text import palette_text
from framing_palette.catalogue.problems import ProblemList
from framing_palette.catalogue.samples import Catalogue, Kind, Sample
from framing_palette.catalogue.table_files import guarded, open_table
from framing_palette.colour import WAVELENGTHS_NM
from framing_palette.errors import ExchangeFileError, OutputError
from framing_palette.whole_files import read_whole, write_whole

LARGEST_FILE_BYTES = 256 << 20


def read_measurement_file(
    path: Path, *, assumed: Conditions | None = None
) -> tuple[MeasurementSet, ...]:
    """Return the colours of a CGATS or CxF3 file, one set for each of its tables.

    Parameters
    ----------
    path
        The file; its kind is told by its content.
    assumed
        Light and observer to use where a CGATS file tells none.

    Raises
    ------
    ExchangeFileError
        When the file is neither, damaged, or its colours hold for an unknown light.
    """
    content = _content(path)
    if content.lstrip(codecs.BOM_UTF8).lstrip().startswith(b"<"):
        return (parse_cxf(content, path),)
    tables = parse_cgats(_text(content, path), path)
    return tuple(measurements_of(table, path, assumed) for table in tables)


def measurements_from(catalogue: Catalogue) -> tuple[Measurement, ...]:
    """Return every colour of a catalogue as a measurement, CODE or CODE:2 and so on."""
    return tuple(
        Measurement(
            identity=sample.code if place == 1 else f"{sample.code}{PLACE_MARK}{place}",
            name=sample.name,
            lab=colour.lab,
            spectrum=colour.spectrum,
        )
        for sample in catalogue.samples
        for place, colour in enumerate(sample.colours, 1)
    )


def write_cgats_file(path: Path, measurements: Sequence[Measurement]) -> None:
    """Write measurements as CGATS text, those with a reflectance in a table of their own.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    spectral = [one for one in measurements if one.spectrum is not None]
    plain = [one for one in measurements if one.spectrum is None]
    tables = [_table(group, with_spectra=group is spectral) for group in (spectral, plain) if group]
    write_whole(path, cgats_text(tables).encode("utf-8"))


def write_cxf_file(path: Path, measurements: Sequence[Measurement], *, created: datetime) -> None:
    """Write measurements as a CxF3 document.

    Raises
    ------
    ExchangeFileError
        When the optional library is not installed.
    OutputError
        When the file cannot be written.
    """
    write_whole(path, cxf_document(measurements, created=created))


def write_palette_file(path: Path, catalogue: Catalogue) -> None:
    """Write the colours of a catalogue as a palette for drawing programs.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    colours = [
        (f"{sample.code} {sample.name}", colour.lab)
        for sample in catalogue.samples
        for colour in sample.colours
    ]
    write_whole(path, palette_text(catalogue.name or "Framing samples", colours).encode("utf-8"))


def export_catalogue(path: Path, catalogue: Catalogue, *, created: datetime) -> None:
    """Write the colours of a catalogue in the form that the file's ending names.

    Parameters
    ----------
    path
        Ending in .txt (CGATS), .cxf (CxF3) or .gpl (a palette for drawing programs).
    catalogue
        What to write.
    created
        Date that stands in a CxF document.

    Raises
    ------
    OutputError
        When the ending names no form, or the file cannot be written.
    """
    suffix = path.suffix.lower()
    if suffix == ".gpl":
        write_palette_file(path, catalogue)
    elif suffix == ".cxf":
        write_cxf_file(path, measurements_from(catalogue), created=created)
    elif suffix in {".txt", ".cgats", ".it8"}:
        write_cgats_file(path, measurements_from(catalogue))
    else:
        raise OutputError(
            path,
            problem="ends in no form that colours can be written in",
            todo="end it in .txt (CGATS), .cxf (CxF3) or .gpl (palette)",
        )


def samples_from_file(
    path: Path, kind: Kind, *, assumed: Conditions | None = None
) -> tuple[tuple[Sample, ...], tuple[str, ...]]:
    """Return the samples of any file that a shop may bring, and sentences worth telling.

    A spreadsheet (.csv, .tsv) is read by the names of its columns, anything else as CGATS or CxF.

    Parameters
    ----------
    path
        The file.
    kind
        Of the samples that tell none.
    assumed
        Light and observer where a CGATS file or a spreadsheet tells none.

    Raises
    ------
    ExchangeFileError, CatalogueError
        When the file cannot be used.
    """
    if path.suffix.lower() in {".csv", ".tsv"}:
        header, _ = open_table(path, ProblemList())
        match = replace(guess_match(header, kind=kind), stated=assumed or Conditions())
        samples, problems = read_matched_file(path, match)
        return samples, tuple(str(problem) for problem in problems)
    sets = read_measurement_file(path, assumed=assumed)
    samples, remarks = samples_from(
        [one for measured in sets for one in measured.measurements], kind
    )
    return samples, (*(notice for measured in sets for notice in measured.notices), *remarks)


def _table(measurements: Sequence[Measurement], *, with_spectra: bool) -> CgatsTable:
    fields = ["SAMPLE_ID", "SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B"]
    if with_spectra:
        fields += [f"SPECTRAL_NM{nm:.0f}" for nm in WAVELENGTHS_NM]
    rows = tuple(
        (
            guarded(one.identity),
            guarded(one.name),
            *(repr(float(x)) for x in (*one.lab, *(one.spectrum or ()))),
        )
        for one in measurements
    )
    keywords = {
        "ORIGINATOR": "Framing Palette",
        "WEIGHTING_FUNCTION": "ILLUMINANT, D50; OBSERVER, 2 degree",
    }
    return CgatsTable(keywords, tuple(fields), rows)


def _content(path: Path) -> bytes:
    try:
        if path.stat().st_size > LARGEST_FILE_BYTES:
            raise ExchangeFileError(
                path,
                problem=f"is larger than {LARGEST_FILE_BYTES >> 20} MiB",
                todo="export fewer colours at a time",
            )
        content = read_whole(path, LARGEST_FILE_BYTES)
    except OSError as error:
        raise ExchangeFileError(
            path, problem=f"cannot be read ({error.strerror})", todo="check its name and rights"
        ) from error
    if not content.strip():
        raise ExchangeFileError(path, problem="is empty", todo="export it again")
    return content


def _text(content: bytes, path: Path) -> str:
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        encodings = ["utf-16"]
    else:
        encodings = ["utf-8-sig", "cp1252", "latin-1"]
    if b"\0" in content and encodings[0] != "utf-16":
        raise ExchangeFileError(
            path, problem="is not text", todo="choose an instrument's CGATS or CxF3 export"
        )
    for encoding in encodings:
        try:
            return content.decode(encoding)
        except UnicodeDecodeError:
            continue
    raise ExchangeFileError(path, problem="is text cut short", todo="export it again")
