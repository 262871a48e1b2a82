"""The arguments that several commands share, and how each is read."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.cli.printing import progress, tell

if TYPE_CHECKING:
    from framing_palette.catalogue import Catalogue
    from framing_palette.picture import Findings, Picture
    from framing_palette.units import Length

KINDS = ("mat", "wrapped_fillet", "wood_fillet", "liner", "moulding")


def add_json(parser: argparse.ArgumentParser) -> None:
    """Add ``--json``."""
    parser.add_argument(
        "--json",
        action="store_true",
        help="print one JSON object on stdout and nothing else there",
    )


def add_picture(parser: argparse.ArgumentParser) -> None:
    """Add the picture, its regions and its true size."""
    parser.add_argument("picture", type=Path, metavar="PICTURE", help="photograph of the art")
    parser.add_argument(
        "--regions",
        type=Path,
        metavar="FILE",
        help="regions drawn on the picture (JSON); without it the focus is a guess, and said so",
    )
    parser.add_argument(
        "--art-width",
        metavar="LENGTH",
        help="true width of the art as photographed, edge to edge; without it texture has no scale "
        "and is left unknown",
    )


def add_catalogue(parser: argparse.ArgumentParser, *, required: bool = True) -> None:
    """Add ``--catalog``."""
    parser.add_argument(
        "--catalog",
        type=Path,
        metavar="DIR",
        required=required,
        help="catalogue folder (samples.csv, colours.csv, …)",
    )


def read_length(text: str | None, *, field: str) -> "Length | None":
    """Read a length from the command line, where a bare number is inches.

    Raises
    ------
    LengthError
        When it is none of the accepted forms.
    FieldError
        When it is not above zero.
    """
    from framing_palette.errors import FieldError
    from framing_palette.units import ZERO, Length

    if text is None:
        return None
    length = Length.parse(text, field=field)
    if length <= ZERO:
        raise FieldError(field, got=f'"{text}"', wanted="give a length above zero")
    return length


def read_picture(arguments: argparse.Namespace) -> "tuple[Picture, Findings]":
    """Read the picture of the command line and look at it.

    Raises
    ------
    PictureFileError, RegionsFileError, LengthError, FieldError
        When one of them cannot be used.
    """
    from framing_palette.picture import read_findings, read_picture_file, read_regions_file

    width = read_length(arguments.art_width, field="--art-width")
    regions = read_regions_file(arguments.regions) if arguments.regions else ()
    with progress(f"Reading {arguments.picture}"):
        picture = read_picture_file(arguments.picture)
    if width is not None:
        picture = picture.with_full_scale(width.as_float_mm() / picture.full_width_px)
    for notice in picture.notices:
        tell(notice)
    with progress("Looking at the picture"):
        return picture, read_findings(picture, regions)


def read_catalogue(folder: Path, *, measure: bool = True) -> "Catalogue":
    """Read a catalogue folder, telling on stderr what was wrong with it.

    Parameters
    ----------
    folder
        Holds samples.csv and the other tables.
    measure
        False leaves textures that textures.csv does not tell of unmeasured, for work that compares
        no surfaces.

    Raises
    ------
    CatalogueError
        When nothing in it can be used.
    """
    from framing_palette.catalogue import read_catalogue_folder
    from framing_palette.catalogue.surface_files import with_measured_surfaces

    catalogue, problems = read_catalogue_folder(folder)
    for problem in problems:
        tell(str(problem))
    if not measure:
        return catalogue
    catalogue, unmeasured = with_measured_surfaces(catalogue)
    for problem in unmeasured:
        tell(str(problem))
    return catalogue
