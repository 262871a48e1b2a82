"""Search: the samples of a catalogue that fit words and limits, found in its columns at once."""

from collections.abc import Collection
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray
from framing_palette.catalogue.columns import CatalogueColumns
from framing_palette.catalogue.samples import Finish, Kind, Lab, Surface
from framing_palette.catalogue.wording import plain_words
from framing_palette.colour import chroma, delta_e_2000, hue_deg
from framing_palette.errors import FieldError

HUE_FAMILIES_DEG = {
    "pink": (345.0, 15.0),
    "red": (15.0, 45.0),
    "orange": (45.0, 70.0),
    "yellow": (70.0, 105.0),
    "green": (105.0, 185.0),
    "blue-green": (185.0, 230.0),
    "blue": (230.0, 290.0),
    "violet": (290.0, 345.0),
}
NEUTRAL_CHROMA = 8.0
"""A mean colour weaker than this has no hue family but "neutral"; common practice."""

Range = tuple[float | None, float | None]
ANY: Range = (None, None)


@dataclass(frozen=True, slots=True)
class SampleFilter:
    """What samples must be; what is left at its default does not matter.

    Parameters
    ----------
    text
        Words that must all occur, at the beginning of a word or inside one.
    kinds, surfaces, finishes
        Any of these.
    near_lab, within_delta_e
        A colour of the sample with a share of a tenth or more must come this near (ΔE00).
    lightness
        Limits of the mean L*.
    hue_family
        A key of HUE_FAMILIES_DEG, or "neutral".
    face_mm, price
        Limits; a sample whose figure is unknown does not fit.
    in_stock
        True leaves out what is told to be out of stock; what is not told stays.
    """

    text: str = ""
    kinds: frozenset[Kind] = frozenset()
    surfaces: frozenset[Surface] = frozenset()
    finishes: frozenset[Finish] = frozenset()
    near_lab: Lab | None = None
    within_delta_e: float = 5.0
    lightness: Range = ANY
    hue_family: str = ""
    face_mm: Range = ANY
    price: Range = ANY
    in_stock: bool = field(default=False)


def find_samples(columns: CatalogueColumns, wanted: SampleFilter) -> NDArray[np.intp]:
    """Return the places of the samples that fit, nearest colour first or in catalogue order.

    Raises
    ------
    FieldError
        When the hue family is not known.
    """
    fits = _fits_words(columns, wanted)
    fits &= _fits_facts(columns, wanted)
    places = np.flatnonzero(fits)
    if wanted.near_lab is None or not len(places):
        return places
    distance = nearest_delta_e(columns, wanted.near_lab, places)
    near = distance <= wanted.within_delta_e
    return places[near][np.argsort(distance[near], kind="stable")]


def nearest_delta_e(
    columns: CatalogueColumns, lab: Lab, places: NDArray[np.intp]
) -> NDArray[np.float64]:
    """Return how near each sample's colours come to a colour, slivers left out.

    Parameters
    ----------
    columns
        The catalogue.
    lab
        Lab D50.
    places
        Shape (n,): which samples.

    Returns
    -------
    Shape (n,), ΔE00; inf for a sample without colours.
    """
    counts = (columns.colour_start[1:] - columns.colour_start[:-1])[places]
    owner = np.repeat(np.arange(len(places)), counts)
    offset = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    colours = np.repeat(columns.colour_start[:-1][places], counts) + offset
    nearest = np.full(len(places), np.inf)
    plain = columns.share[colours] >= 0.1
    distance = delta_e_2000(columns.lab[colours[plain]], lab)
    np.minimum.at(nearest, owner[plain], distance)
    return nearest


def _fits_words(columns: CatalogueColumns, wanted: SampleFilter) -> BoolArray:
    fits = np.ones(len(columns), dtype=np.bool_)
    for word in plain_words(wanted.text).split():
        fits &= _having(columns, word)
    return fits


def _having(columns: CatalogueColumns, word: str) -> BoolArray:
    """Return which samples have the word: letter by letter, all samples at once."""
    letters = np.frombuffer(word.encode("utf-8"), dtype=np.uint8)
    last = len(columns.words) - len(letters) + 1
    at = np.flatnonzero(columns.words[: max(last, 0)] == letters[0])
    for step, letter in enumerate(letters[1:], 1):
        at = at[columns.words[at + step] == letter]
    has = np.zeros(len(columns), dtype=np.bool_)
    if len(at) > len(columns):  # many hits: one pass over the words beats finding each one's owner
        hit = np.zeros(len(columns.words), dtype=np.bool_)
        hit[at] = True
        return np.asarray(np.logical_or.reduceat(hit, columns.word_start[:-1]))
    has[np.searchsorted(columns.word_start, at, side="right") - 1] = True
    return has


def _fits_facts(columns: CatalogueColumns, wanted: SampleFilter) -> BoolArray:
    fits = np.ones(len(columns), dtype=np.bool_)
    for column, all_words, chosen in (
        (columns.kind, tuple(Kind), wanted.kinds),
        (columns.surface, tuple(Surface), wanted.surfaces),
        (columns.finish, tuple(Finish), wanted.finishes),
    ):
        if chosen:
            fits &= np.isin(column, _places_of(all_words, chosen))
    for values, limits in (
        (columns.mean_lab[:, 0], wanted.lightness),
        (columns.face_mm, wanted.face_mm),
        (columns.price, wanted.price),
    ):
        fits &= _within(values, limits)
    if wanted.hue_family:
        fits &= in_family(columns.mean_lab, wanted.hue_family)
    if wanted.in_stock:
        fits &= columns.in_stock != 0
    return fits


def _places_of(all_words: Collection[str], chosen: Collection[str]) -> list[int]:
    return [place for place, word in enumerate(all_words) if word in chosen]


def _within(values: "NDArray[np.floating]", limits: Range) -> BoolArray:
    low, high = limits
    fits = np.ones(len(values), dtype=np.bool_)
    if low is not None:
        fits &= values >= low
    if high is not None:
        fits &= values <= high
    return fits


def in_family(mean_lab: "NDArray[np.floating]", family: str) -> BoolArray:
    """Return which of some colours are of a hue family.

    Parameters
    ----------
    mean_lab
        Shape (n, 3), Lab D50.
    family
        A key of HUE_FAMILIES_DEG, or "neutral".

    Raises
    ------
    FieldError
        When the hue family is not known.
    """
    strength = chroma(mean_lab)
    if family == "neutral":
        return np.asarray(strength < NEUTRAL_CHROMA)
    if family not in HUE_FAMILIES_DEG:
        known = ", ".join((*HUE_FAMILIES_DEG, "neutral"))
        raise FieldError("hue family", got=family, wanted=f"choose one of {known}")
    start, stop = HUE_FAMILIES_DEG[family]
    hue = hue_deg(mean_lab)
    inside = (hue >= start) & (hue < stop) if start < stop else (hue >= start) | (hue < stop)
    return np.asarray(inside & (strength >= NEUTRAL_CHROMA))
