"""Photographed swatches of a shop: measured, and made into samples of its rack."""

from collections.abc import Sequence
from pathlib import Path

from framing_palette.catalogue.cells import why_not_a_code
from framing_palette.catalogue.samples import Kind, Sample
from framing_palette.catalogue.swatch import Swatch, measure_swatch
from framing_palette.errors import FieldError
from framing_palette.picture import read_picture_file
from framing_palette.units import Length


def measured_photograph(path: Path, width: Length | None, samples: Sequence[Sample] = ()) -> Swatch:
    """Return the measures of a photograph that shows nothing but a swatch.

    Parameters
    ----------
    path
        The photograph.
    width
        Of what it shows from its left to its right edge; without it the texture has no scale.
    samples
        Samples with measured textures, for the guess of the surface.

    Raises
    ------
    PictureFileError, FieldError
        When it cannot be read or measured.
    """
    picture = read_picture_file(path)
    if width is not None:
        picture = picture.with_full_scale(width.as_float_mm() / picture.full_width_px)
    return measure_swatch(picture, samples=samples)


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
    )
