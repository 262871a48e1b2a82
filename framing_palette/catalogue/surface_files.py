"""Surface files: texture pictures measured once, and the table that remembers the measures."""

import os
import zlib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from framing_palette.arrays import UInt8Array
from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.samples import Catalogue, Sample
from framing_palette.catalogue.surfaces import (
    SURFACE_COLUMNS,
    MeasuredSurface,
    read_surface_row,
    surface_cells,
    surfaces_by_texture,
    wear,
)
from framing_palette.catalogue.table_files import open_table, write_table
from framing_palette.colour import srgb_u8_to_lab_d50
from framing_palette.errors import CatalogueError
from framing_palette.picture import measure_texture
from framing_palette.picture.still_files import CODEC_FAULTS
from framing_palette.whole_files import check_ordinary

if TYPE_CHECKING:
    from PIL.Image import Image

FORMATS = ("PNG", "JPEG", "TIFF", "WEBP", "BMP", "GIF")
"""No others are tried on a texture file: to decode some, an outside program would be started."""
LARGEST_SIDE_PX = 8192
MEASURED_AT_ONCE = 500
"""Samples whose textures are measured while a catalogue is opened; two minutes' work at most."""
MEASURED_SIDE_PX = 1200
"""Of a larger texture the middle is measured, so many pixels a side; a surface repeats itself."""
_NEEDED_MM_PER_PX = 0.125  # four pixels to the finest measured wavelength, half a millimetre


def read_texture_picture(
    path: Path, *, reduced_by: int = 1, most_px: int = LARGEST_SIDE_PX
) -> tuple[UInt8Array, bool]:
    """Return a texture picture as sRGB, shape (rows, columns, 3), and whether it is a grey relief.

    Parameters
    ----------
    path
        The picture.
    reduced_by
        So many pixels along each side become one.
    most_px
        Of what is larger after that, the middle is returned, at most so many pixels a side.

    Raises
    ------
    CatalogueError
        When the file is no picture, or a huge one.
    """
    from PIL import Image

    try:
        check_ordinary(path)
        with Image.open(path, formats=FORMATS) as image:
            _check_side(path, image.size)
            is_relief = image.mode in {"L", "LA", "I;16", "1"}
            return np.asarray(_middle_of(image, reduced_by, most_px).convert("RGB")), is_relief
    except CatalogueError:
        raise
    except (*CODEC_FAULTS, Image.DecompressionBombError) as error:
        raise CatalogueError(
            path, problem="is not a readable picture", todo="save it as PNG or JPEG"
        ) from error


def _check_side(path: Path, size: tuple[int, int]) -> None:
    if max(size) > LARGEST_SIDE_PX:
        raise CatalogueError(
            path,
            problem=f"has {size[0]} x {size[1]} pixels",
            todo=f"cut a texture of at most {LARGEST_SIDE_PX} pixels a side",
        )


def _middle_of(image: "Image", reduced_by: int, most_px: int) -> "Image":
    """Return a picture reduced, and cut to its middle when it is larger than needed."""
    if reduced_by > 1:
        image = (image if image.mode == "L" else image.convert("RGB")).reduce(reduced_by)
    width, height = (min(most_px, side) for side in image.size)
    left, top = (image.width - width) // 2, (image.height - height) // 2
    return image.crop((left, top, left + width, top + height))


def measure_surface_file(path: Path, mm_per_px: float) -> MeasuredSurface:
    """Return the measures of one texture picture at a known scale.

    A picture finer than the finest wavelength needs is reduced first, and of what then has more
    than ``MEASURED_SIDE_PX`` a side the middle is measured.

    Raises
    ------
    CatalogueError
        When the file is no picture.
    """
    reduced_by = max(1, int(_NEEDED_MM_PER_PX / mm_per_px))
    srgb, is_relief = read_texture_picture(path, reduced_by=reduced_by, most_px=MEASURED_SIDE_PX)
    texture = measure_texture(srgb_u8_to_lab_d50(srgb), mm_per_px * reduced_by)
    texture = replace(texture, mm_per_px=mm_per_px)  # as the sample states it
    return MeasuredSurface(path.name, is_relief, checksum_of(path), texture)


def measure_surfaces(
    catalogue: Catalogue, *, tell: Callable[[int, int], None] | None = None
) -> tuple[tuple[MeasuredSurface, ...], tuple[CellProblem, ...]]:
    """Return the measures of every texture that a catalogue uses, and what could not be measured.

    Parameters
    ----------
    catalogue
        Its textures_dir is read.
    tell
        Called with how many are done and how many there are.
    """
    folder = Path(catalogue.textures_dir)
    wanted = sorted(
        {
            (sample.texture_file, sample.texture_mm_per_px)
            for sample in catalogue.samples
            if sample.texture_file and sample.texture_mm_per_px is not None
        }
    )
    surfaces, problems = [], ProblemList()
    for done, (name, mm_per_px) in enumerate(wanted):
        if tell:
            tell(done, len(wanted))
        try:
            surfaces.append(measure_surface_file(folder / name, float(mm_per_px or 0)))
        except CatalogueError as error:
            problems.add(CellProblem(f"textures/{name}", None, "", error.problem))
    return tuple(surfaces), problems.told()


def with_measured_surfaces(
    catalogue: Catalogue, *, tell: Callable[[int, int], None] | None = None
) -> tuple[Catalogue, tuple[CellProblem, ...]]:
    """Return a catalogue whose textures are measured, and what could not be measured.

    Textures that textures.csv tells of already are left as they are, and so is a catalogue that has
    more unmeasured ones than ``MEASURED_AT_ONCE``: they are measured once and kept in textures.csv.

    Parameters
    ----------
    catalogue
        As read from its folder.
    tell
        Called with how many are done and how many there are.
    """
    missing = [
        sample
        for sample in catalogue.samples
        if sample.texture is None and sample.texture_file and sample.texture_mm_per_px is not None
    ]
    if not missing or len(missing) > MEASURED_AT_ONCE:
        return catalogue, ()
    wanted = Catalogue(tuple(missing), catalogue.textures_dir)
    found, problems = measure_surfaces(wanted, tell=tell)
    surfaces = surfaces_by_texture(iter(found))
    codes = {sample.code for sample in missing}
    samples = [
        _worn(sample, surfaces) if sample.code in codes else sample for sample in catalogue.samples
    ]
    return replace(catalogue, samples=tuple(samples)), problems


def _worn(sample: Sample, surfaces: Mapping[tuple[str, float | None], MeasuredSurface]) -> Sample:
    surface = surfaces.get((sample.texture_file.lower(), sample.texture_mm_per_px))
    return sample if surface is None else wear(sample, surface)


def write_surface_table(path: Path, surfaces: tuple[MeasuredSurface, ...]) -> None:
    """Write textures.csv.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    write_table(path, SURFACE_COLUMNS, map(surface_cells, surfaces))


def read_surface_table(
    path: Path, textures: Path, problems: ProblemList
) -> Iterator[MeasuredSurface]:
    """Return the measures whose picture is still the one that was measured.

    Raises
    ------
    CatalogueError
        When the table cannot be read at all.
    """
    _, rows = open_table(path, problems)
    for row in rows:
        reader = RowReader(row, path.name, problems)
        surface = read_surface_row(reader)
        if surface is None:
            continue
        picture = textures / surface.texture_file
        if picture.parent != textures or not os.path.isfile(picture):  # noqa: PTH113 - any name
            continue
        if checksum_of(picture) != surface.checksum:
            reason = f"{surface.texture_file} has changed since it was measured; measure it again"
            reader.tell("checksum", reason, is_notice=True)
            continue
        yield surface


def checksum_of(path: Path) -> str:
    """Return the CRC-32 of a file in hexadecimal."""
    return f"{zlib.crc32(path.read_bytes()):08x}"
