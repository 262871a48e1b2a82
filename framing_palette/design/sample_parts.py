"""Layers and mouldings made from catalogue samples, their measures filled in."""

from framing_palette.catalogue import Kind, Sample
from framing_palette.design.layers import (
    DEFAULT_ALLOWANCE,
    DEFAULT_CLEARANCE,
    Join,
    Layer,
    Moulding,
    Sides,
)
from framing_palette.errors import FieldError, UnknownFactError
from framing_palette.units import Length


def layer_of(sample: Sample, *, reveal: Sides | None = None, borders: Sides | None = None) -> Layer:
    """Make a layer of a sample.

    Parameters
    ----------
    sample : Sample
        Any kind but a moulding; what it leaves unknown stays unknown.
    reveal, borders : Sides or None
        What shows, or the outermost mat's borders.

    Raises
    ------
    FieldError
        When the sample is a moulding.
    """
    if sample.kind is Kind.MOULDING:
        wanted = "choose a mat, fillet or liner for a layer"
        raise FieldError(f"sample {sample.code}", got="a moulding", wanted=wanted)
    join: Join = "butt" if sample.join == "butt" else "mitre"
    return Layer(
        kind=sample.kind,
        thickness=sample.thickness,
        code=sample.code,
        reveal=reveal,
        borders=borders,
        face=sample.face,
        bevel=sample.bevel,
        rabbet_width=sample.rabbet_width,
        rabbet_depth=sample.rabbet_depth,
        join=join,
        material=sample.material,
        density_kg_m3=sample.density_kg_m3,
        sheet_w=sample.sheet_w,
        sheet_h=sample.sheet_h,
        stick=sample.stick,
    )


def moulding_of(
    sample: Sample,
    *,
    allowance: Length = DEFAULT_ALLOWANCE,
    clearance: Length = DEFAULT_CLEARANCE,
) -> Moulding:
    """Make a moulding of a sample.

    Raises
    ------
    UnknownFactError
        When the catalogue leaves its face or rabbet empty.
    FieldError
        When the sample is not a moulding.
    """
    if sample.kind is not Kind.MOULDING:
        wanted = "choose a moulding for the frame"
        raise FieldError(f"sample {sample.code}", got=f"a {sample.kind}", wanted=wanted)
    return Moulding(
        face=known(sample, "face", "the rails' lengths"),
        rabbet_width=known(sample, "rabbet_width", "the frame's sight size"),
        rabbet_depth=known(sample, "rabbet_depth", "the depth of the stack"),
        allowance=allowance,
        clearance=clearance,
        code=sample.code,
        height=sample.thickness,
        material=sample.material,
        density_kg_m3=sample.density_kg_m3,
        stick=sample.stick,
    )


def known(sample: Sample, fact: str, needed_for: str) -> Length:
    """Return one of a sample's lengths.

    Raises
    ------
    UnknownFactError
        When the catalogue leaves it empty.
    """
    length: Length | None = getattr(sample, fact)
    if length is None:
        raise UnknownFactError(sample.code, fact=fact.replace("_", " "), needed_for=needed_for)
    return length
