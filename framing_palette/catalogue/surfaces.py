"""Surfaces: what was measured on the texture pictures, and what that means on each sample.

A grey picture is tone around the sample's own colour, so one measurement serves every sample that
wears it; it is turned into lightness and chroma through the slope of the sample's own colour.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.samples import Sample
from framing_palette.catalogue.table_files import guarded
from framing_palette.catalogue.texture_numbers import (
    texture_from_numbers,
    texture_names,
    texture_numbers,
)
from framing_palette.colour import lab_d50_to_srgb, srgb_to_lab_d50
from framing_palette.picture import Texture

SURFACE_COLUMNS = ("texture", "relief", "checksum", *texture_names())
GREY_SRGB = 128 / 255
_STEP = 0.02


@dataclass(frozen=True, slots=True)
class MeasuredSurface:
    """One measured texture picture.

    Parameters
    ----------
    texture_file
        Its name in the folder textures.
    is_relief
        True for a grey picture, whose tone goes around the sample's own colour.
    checksum
        CRC-32 of the file in hexadecimal, so that a picture put in its place is noticed.
    texture
        Measured as it is; for a relief, on the grey whose mean is 128.
    """

    texture_file: str
    is_relief: bool
    checksum: str
    texture: Texture


def read_surface_row(row: RowReader) -> MeasuredSurface | None:
    """Return one row of textures.csv, or None when a cell is bad."""
    before = row.problems.count
    values = [row.number(column) for column in texture_names()]
    is_relief = row.truth("relief")
    if row.problems.count > before:
        return None
    vector = [float("nan") if value is None else value for value in values]
    name, checksum = row.text("texture"), row.text("checksum").lower()
    return MeasuredSurface(name, bool(is_relief), checksum, texture_from_numbers(vector))


def surface_cells(surface: MeasuredSurface) -> tuple[str, ...]:
    """Return a surface as the cells of SURFACE_COLUMNS."""
    figures = ("" if np.isnan(x) else f"{x:.6g}" for x in texture_numbers(surface.texture))
    relief = "true" if surface.is_relief else "false"
    return (guarded(surface.texture_file), relief, surface.checksum, *figures)


def wear(sample: Sample, surface: MeasuredSurface) -> Sample:
    """Return the sample with the texture that this surface has in its colour.

    A surface measured at another scale than the sample states is left off.
    """
    if sample.texture_mm_per_px != surface.texture.mm_per_px:
        return sample
    if not surface.is_relief:
        return replace(sample, texture=surface.texture)
    if not sample.colours:
        return sample
    return replace(sample, texture=texture_in_colour(surface.texture, sample.mean_lab))


def texture_in_colour(grey: Texture, lab: tuple[float, float, float]) -> Texture:
    """Return what a relief measured on grey becomes on another colour.

    The contrasts scale with how fast the colour moves when its sRGB values are multiplied.

    Parameters
    ----------
    grey
        Measured on the relief itself, mean 128.
    lab
        The sample's colour, Lab D50.
    """
    own, neutral = _slope(lab), _slope(None)
    per_lightness = float(abs(own[0]) / neutral[0])
    per_chroma = float(np.hypot(own[1], own[2]) / neutral[0])
    return replace(
        grey,
        lightness_contrast=tuple(c * per_lightness for c in grey.lightness_contrast),
        chroma_contrast=tuple(c * per_chroma for c in grey.lightness_contrast),
        mean_lightness=lab[0],
    )


def surfaces_by_texture(
    surfaces: Iterator[MeasuredSurface],
) -> Mapping[tuple[str, float | None], MeasuredSurface]:
    """Return surfaces by file name in lower case and scale."""
    return {(s.texture_file.lower(), s.texture.mm_per_px): s for s in surfaces}


def _slope(lab: tuple[float, float, float] | None) -> Float64Array:
    """Return how Lab moves as sRGB is multiplied by 1 + t, at t = 0; grey 128 for None."""
    srgb = np.full(3, GREY_SRGB) if lab is None else lab_d50_to_srgb(np.asarray(lab))
    darker, lighter = (srgb_to_lab_d50(srgb * (1 + step)) for step in (-_STEP, _STEP))
    return np.asarray((lighter - darker) / (2 * _STEP), dtype=np.float64)
