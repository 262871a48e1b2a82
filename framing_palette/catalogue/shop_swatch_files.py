"""Photographed swatches of a shop: measured, and made into samples of its rack."""

import hashlib
import math
import re
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from framing_palette.arrays import UInt8Array
from framing_palette.catalogue.cells import why_not_a_code
from framing_palette.catalogue.contact_sheet import SheetSwatch, find_swatches, measure_sheet
from framing_palette.catalogue.samples import Kind, Sample
from framing_palette.catalogue.swatch import Swatch, measure_swatch, photograph_origin
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.errors import FieldError
from framing_palette.picture import Picture, read_picture_file
from framing_palette.picture.intake import INTAKE_SIDE, IntakeWishes, take_in
from framing_palette.picture.outlines import Outline, outline_area, rectangle
from framing_palette.picture.squaring import WHOLE
from framing_palette.units import Length

ALL_OF_IT = rectangle(0, 0, 1, 1)


@dataclass(frozen=True, slots=True, eq=False)
class SwatchPhotograph:
    """A photograph that swatches are measured from.

    Parameters
    ----------
    picture
        The whole of it, corrected by the colour chart when one lies in it.
    srgb
        The same to look at, 8-bit sRGB, shape (rows, columns, 3).
    swatches
        Outlines that were found, in reading order; the whole photograph when nothing stands out.
    chart
        The outline of the colour chart, or None.
    """

    picture: Picture
    srgb: UInt8Array
    swatches: tuple[Outline, ...]
    chart: Outline | None

    @property
    def single(self) -> Outline:
        """Round the one swatch that it shows: all of it, or beside a chart the largest found."""
        if self.chart is None:
            return ALL_OF_IT
        return max(self.swatches, key=outline_area)


def open_swatch_photograph(
    path: Path,
    width: Length | None = None,
    *,
    mm_per_px: float | None = None,
    uses_chart: bool = True,
) -> SwatchPhotograph:
    """Return a photograph of swatches, in the chart's colours when a chart lies beside them.

    Parameters
    ----------
    path
        The photograph.
    width
        Of what it shows from its left to its right edge.
    mm_per_px
        Its scale per pixel as stored, when that is known instead; without either textures have
        no scale.
    uses_chart
        False leaves a chart alone.

    Raises
    ------
    PictureFileError, FieldError
        When it cannot be read, or the width is none.
    """
    photograph = read_picture_file(path, max_side=INTAKE_SIDE, mm_per_px=mm_per_px)
    chart_wish: Literal["auto", "none"] = "auto" if uses_chart else "none"
    taken = take_in(photograph, IntakeWishes(corners=WHOLE, chart=chart_wish, light="none"))
    picture = taken.picture
    if taken.chart is None:
        picture = photograph  # as the file says; what is missing is told with the measures
    else:  # nothing was cut away, so the scale is still the photograph's
        picture = replace(picture, mm_per_px=photograph.mm_per_px)
    if width is not None:
        picture = picture.with_full_scale(width.as_float_mm() / picture.full_width_px)
    chart = None if taken.chart is None else tuple(taken.chart.corners)
    found = find_swatches(picture, ignored=() if chart is None else (chart,))
    small = picture.lab_d50[:: 1 + max(picture.rows, picture.columns) // 1600]
    small = small[:, :: 1 + max(picture.rows, picture.columns) // 1600]
    return SwatchPhotograph(picture, lab_d50_to_srgb_u8(small), found or (ALL_OF_IT,), chart)


def measured_photograph(
    photograph: SwatchPhotograph, outline: Outline, samples: Sequence[Sample] = ()
) -> Swatch:
    """Return the measures of one swatch of a photograph.

    Parameters
    ----------
    photograph
        As opened.
    outline
        Round the swatch.
    samples
        Samples with measured textures, for the guess of the surface.

    Raises
    ------
    FieldError
        When the outline is too small to measure.
    """
    return measure_swatch(photograph.picture, outline, samples=samples)


def measured_sheet(
    photograph: SwatchPhotograph,
    outlines: Sequence[Outline],
    codes: Sequence[str],
    samples: Sequence[Sample] = (),
) -> tuple[SheetSwatch, ...]:
    """Return the measures of all swatches of a sheet under their codes.

    Raises
    ------
    FieldError
        When codes and swatches do not go together, or one is too small to measure.
    """
    return measure_sheet(photograph.picture, codes, outlines=outlines, samples=samples)


def samples_of_sheet(swatches: Sequence[SheetSwatch], kind: Kind) -> tuple[Sample, ...]:
    """Return the swatches of a sheet as samples."""
    return tuple(sample_of_swatch(one.code, "", kind, one.swatch) for one in swatches)


def folder_results(racks: Path, folder: Path) -> Path:
    """Return the file that keeps what was measured of a folder of photographs.

    The folder of racks is made if need be; where it cannot be, writing the results tells why.
    """
    with suppress(OSError):
        racks.mkdir(parents=True, exist_ok=True)
    digest = hashlib.blake2b(str(folder.resolve()).encode(), digest_size=8).hexdigest()
    return racks / f"swatches-{digest}.jsonl"


def scale_of_text(text: str) -> float | None:
    """Return millimetres per pixel as typed; None for nothing.

    Raises
    ------
    FieldError
        When it is no number above zero.
    """
    if not text.strip():
        return None
    try:
        scale = float(text.strip().replace(",", "."))
    except ValueError:
        scale = math.nan
    if not (math.isfinite(scale) and scale > 0):
        raise FieldError("scale", got=text, wanted="type millimetres per pixel such as 0.05")
    return scale


def outline_of_text(text: str) -> Outline:
    """Return an outline of corners as typed, 0 to 1 across the photograph.

    Examples
    --------
    >>> outline_of_text("0,0 1,0 1,0.5")
    ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5))

    Raises
    ------
    FieldError
        When there are fewer than three corners, or one lies outside.
    """
    try:
        corners = tuple(
            (float(x), float(y)) for x, y in (corner.split(",") for corner in text.split())
        )
    except ValueError:
        corners = ()
    if len(corners) < 3 or not all(0 <= part <= 1 for corner in corners for part in corner):
        wanted = 'give three corners or more between 0 and 1, such as "0.1,0.1 0.9,0.1 0.9,0.9"'
        raise FieldError("outline", got=text, wanted=wanted)
    return corners


def listed_codes(text: str) -> tuple[str, ...]:
    r"""Return codes that are listed one a line, or parted by commas or semicolons.

    Examples
    --------
    >>> listed_codes("M-1, M-2\n\nM-3")
    ('M-1', 'M-2', 'M-3')
    """
    return tuple(code for part in re.split(r"[\n,;]", text) if (code := part.strip()))


def sample_of_swatch(code: str, name: str, kind: Kind, swatch: Swatch) -> Sample:
    """Return a measured swatch as a sample.

    Parameters
    ----------
    code
        A new one, or that of a sample which is to get these colours.
    name
        Empty leaves a known sample's name as it is.
    kind
        Of a new sample.
    swatch
        The measures.

    Raises
    ------
    FieldError
        When the text cannot be a code.
    """
    why = why_not_a_code(code)
    if why:
        raise FieldError("code", got=code or "nothing", wanted=why)
    return Sample(
        code=code,
        name=name or code,
        kind=kind,
        colours=swatch.sample_colours(),
        texture=swatch.texture if swatch.texture.mm_per_px is not None else None,
        finish=swatch.finish.finish,
        colour_origin=photograph_origin(swatch.uncertainty_delta_e),
    )
