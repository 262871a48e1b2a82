"""Catalogue folders written so that nothing is lost, textures included."""

import json
import shutil
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from framing_palette.catalogue.conservation_rows import (
    CONSERVATION_COLUMNS,
    conservation_cells,
)
from framing_palette.catalogue.package_description import describe_package
from framing_palette.catalogue.palette_rows import (
    COLOUR_COLUMNS,
    PROFILE_COLUMNS,
    SPECTRUM_COLUMNS,
    colour_cells,
    profile_cells,
    spectrum_cells,
)
from framing_palette.catalogue.sample_rows import columns_for, sample_cells
from framing_palette.catalogue.samples import Catalogue, Sample
from framing_palette.catalogue.table_files import write_table
from framing_palette.errors import OutputError


def write_catalogue_folder(
    folder: Path, catalogue: Catalogue, *, title: str = "", description: str = ""
) -> None:
    """Write a catalogue as a folder that reads back exactly, its texture pictures included.

    Raises
    ------
    OutputError
        When the folder cannot be written.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            folder, problem=f"cannot be made ({error.strerror})", todo="choose another folder"
        ) from error
    samples = catalogue.samples
    columns = columns_for(samples)
    rows = (sample_cells(sample, columns) for sample in samples)
    write_table(folder / "samples.csv", columns, rows)
    write_table(folder / "colours.csv", COLOUR_COLUMNS, _all(colour_cells, samples))
    optional = []
    if any(colour.spectrum for sample in samples for colour in sample.colours):
        write_table(folder / "spectra.csv", SPECTRUM_COLUMNS, _all(spectrum_cells, samples))
        optional.append("spectra")
    if any(sample.profile for sample in samples):
        write_table(folder / "profiles.csv", PROFILE_COLUMNS, _all(profile_cells, samples))
        optional.append("profiles")
    if any(sample.conservation_facts for sample in samples):
        claims = _all(conservation_cells, samples)
        write_table(folder / "conservation.csv", CONSERVATION_COLUMNS, claims)
        optional.append("conservation")
    if catalogue.textures_dir:
        optional += _copy_textures(Path(catalogue.textures_dir), folder, samples)
    package = describe_package(
        name=_slug(catalogue.name) or "sample-catalogue",
        title=title or catalogue.name or "Framing samples",
        description=description or "Framing samples; an empty cell is unknown.",
        columns=columns,
        optional=optional,
    )
    path = folder / "datapackage.json"
    try:
        path.write_text(json.dumps(package, indent=1) + "\n", encoding="utf-8")
    except OSError as error:
        raise OutputError(
            path, problem=f"cannot be written ({error.strerror})", todo="choose another folder"
        ) from error


def _copy_textures(source: Path, folder: Path, samples: Sequence[Sample]) -> list[str]:
    """Copy the pictures in use and their measures; return the tables that were copied."""
    target = folder / "textures"
    if source.resolve() == target.resolve():
        return ["textures"] if (folder / "textures.csv").is_file() else []
    measures = source.parent / "textures.csv"
    try:
        target.mkdir(exist_ok=True)
        for name in {sample.texture_file for sample in samples if sample.texture_file}:
            shutil.copyfile(source / name, target / name)
        if measures.is_file():
            shutil.copyfile(measures, folder / "textures.csv")
    except OSError as error:
        raise OutputError(
            target, problem=f"cannot be filled ({error.strerror})", todo="free some space"
        ) from error
    return ["textures"] if measures.is_file() else []


def _all(
    cells: Callable[[Sample], Iterator[tuple[str, ...]]], samples: Sequence[Sample]
) -> Iterator[tuple[str, ...]]:
    for sample in samples:
        yield from cells(sample)


def _slug(text: str) -> str:
    """Return text as lower-case words joined by hyphens."""
    words = "".join(c if c.isascii() and c.isalnum() else " " for c in text.lower()).split()
    return "-".join(words)
