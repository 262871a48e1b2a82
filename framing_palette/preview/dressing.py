"""Dressing: which skin and cross-section a layer wears, and what had to be assumed for it."""

from dataclasses import dataclass
from itertools import pairwise
from math import isfinite

from framing_palette.catalogue import Catalogue, Finish, Kind, Profile, Sample
from framing_palette.design import Layer, Moulding
from framing_palette.preview.plans import Polyline
from framing_palette.preview.skins import (
    REFERENCE_LIGHT,
    UNKNOWN_LAB,
    Skin,
    lab_in_light,
    skin_of,
)
from framing_palette.units import Length

BOARD_MM = 1.4  # common practice: a 4-ply board, where nothing says otherwise
_LIP_MM = 3.0


@dataclass(frozen=True, slots=True)
class Rack:
    """Where samples come from and in which light they are seen."""

    catalogue: Catalogue
    under: str = REFERENCE_LIGHT


@dataclass(frozen=True, slots=True)
class Look:
    """A layer's skin, its cross-section and sentences about what had to be assumed."""

    skin: Skin
    profile: Polyline
    notices: tuple[str, ...]


def layer_look(layer: Layer, name: str, rack: Rack) -> Look:
    """Return how a layer looks.

    Parameters
    ----------
    name
        What the notices call it when it has no code.

    Raises
    ------
    UnknownSampleError
        When its code is not in the catalogue.
    """
    sample = rack.catalogue[layer.code] if layer.code else None
    skin, notices = _skin(sample, name, rack)
    thick = thickness_mm(layer)
    if layer.thickness is None:
        notices = (*notices, f"{name} has no thickness and is drawn {BOARD_MM} mm thick.")
    if layer.kind is Kind.MAT:
        return Look(skin, ((0.0, 0.0), (bevel_mm(layer), thick)), notices)
    known = _known_profile(sample)
    if known:
        return Look(skin, known, notices)
    slope = min(in_mm(layer.bevel) or thick, in_mm(layer.face) or 4 * thick)
    face = max(in_mm(layer.face), slope + thick)
    plain = ((0.0, 0.2 * thick), (slope, thick), (face, thick))
    return Look(skin, plain, (*notices, _assumed(skin, name)))


def moulding_look(moulding: Moulding, rack: Rack) -> Look:
    """Return how a moulding looks, its heights above the wall.

    Raises
    ------
    UnknownSampleError
        When its code is not in the catalogue.
    """
    sample = rack.catalogue[moulding.code] if moulding.code else None
    skin, notices = _skin(sample, "The moulding", rack)
    known = _known_profile(sample)
    if known:
        return Look(skin, known, notices)
    lip = in_mm(moulding.rabbet_depth) + _LIP_MM
    plain = _plain_moulding(lip, in_mm(moulding.face), in_mm(moulding.height))
    return Look(skin, plain, (*notices, _assumed(skin, "The moulding")))


def thickness_mm(layer: Layer) -> float:
    """Return a layer's thickness, that of a usual board when it is unknown."""
    return BOARD_MM if layer.thickness is None else in_mm(layer.thickness)


def bevel_mm(layer: Layer) -> float:
    """Return the width of a mat's slope in plan."""
    return thickness_mm(layer) if layer.bevel_width is None else in_mm(layer.bevel_width)


def in_mm(length: Length | None) -> float:
    """Return a length for drawing; nothing is 0."""
    return 0.0 if length is None else length.as_float_mm()


def _skin(sample: Sample | None, name: str, rack: Rack) -> tuple[Skin, tuple[str, ...]]:
    if sample is not None:
        return skin_of(sample, rack.catalogue, under=rack.under)
    told = f"{name} names no sample and is drawn mid-grey."
    return Skin("", lab_in_light(UNKNOWN_LAB, rack.under), Finish.MATT), (told,)


def _assumed(skin: Skin, name: str) -> str:
    return f"{skin.code or name} has no cross-section and is drawn with a plain one."


def _known_profile(sample: Sample | None) -> Polyline | None:
    """Return a sample's cross-section when it has one that can be drawn."""
    profile: Profile | None = sample.profile if sample else None
    if profile is None or len(profile.points) < 2:
        return None
    points = tuple((float(x), float(height)) for x, height in profile.points)
    ordered = all(one[0] <= two[0] for one, two in pairwise(points))
    finite = all(isfinite(value) for point in points for value in point)
    return points if ordered and finite and points[-1][0] > points[0][0] else None


def _plain_moulding(lip: float, face: float, height: float) -> Polyline:
    """Return a softly rounded cross-section for a moulding of which only sizes are known."""
    height = max(height, lip + 0.1 * face)
    fall = min(0.12 * face, height / 2)
    return (
        (0.0, lip),
        (0.12 * face, lip + 0.1),
        (0.3 * face, height - 0.15 * (height - lip)),
        (0.5 * face, height),
        (0.8 * face, height),
        (face, height - fall),
    )
