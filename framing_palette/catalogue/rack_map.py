"""The rack as points of colour: where every sample stands, and which stand near a colour."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.arrays import BoolArray, Float64Array, UInt8Array, as_lab
from framing_palette.catalogue.columns import LazySamples
from framing_palette.catalogue.samples import Kind, Sample
from framing_palette.catalogue.search import HUE_FAMILIES_DEG, in_family
from framing_palette.colour import delta_e_2000_matrix, hue_deg

COUNTS_FROM_SHARE = 0.15
"""A colour of a sample counts when it covers at least this share of its surface."""

_PAIRS_AT_ONCE = 1 << 19
_KINDS = tuple(Kind)


@dataclass(frozen=True, slots=True, eq=False)
class RackPoints:
    """The n samples that have a colour, with k colours in all.

    Parameters
    ----------
    place
        Shape (n,): the place of each in the catalogue.
    mean_lab
        Shape (n, 3), Lab D50, weighted by share: where the sample stands.
    kind
        Shape (n,): the place in the enumeration of kinds.
    is_there
        Shape (n,): False when the sample is told to be out of stock.
    lab, share, start
        Shapes (k, 3), (k,) and (n,): the colours, one sample's after another's, and where each
        sample's begin.
    """

    place: NDArray[np.intp]
    mean_lab: Float64Array
    kind: UInt8Array
    is_there: BoolArray
    lab: Float64Array
    share: Float64Array
    start: NDArray[np.intp]

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.place)

    def of_kinds(self, kinds: frozenset[Kind]) -> BoolArray:
        """Return which samples are of some kinds, shape (n,); none named means all."""
        if not kinds:
            return np.ones(len(self), dtype=np.bool_)
        return np.isin(self.kind, [_KINDS.index(kind) for kind in kinds])

    def of_family(self, family: str) -> BoolArray:
        """Return which samples are of a hue family, shape (n,); an empty name means all.

        Raises
        ------
        FieldError
            When the hue family is not known.
        """
        if not family:
            return np.ones(len(self), dtype=np.bool_)
        return in_family(self.mean_lab, family)

    def between(self, low: float, high: float) -> BoolArray:
        """Return which samples have a mean L* from ``low`` to ``high``, shape (n,)."""
        lightness = self.mean_lab[:, 0]
        return np.asarray((lightness >= low) & (lightness <= high))


def rack_points(samples: Sequence[Sample]) -> RackPoints:
    """Return where the samples of a catalogue stand; those without a colour are left out."""
    if isinstance(samples, LazySamples):
        columns = samples.columns
        counts = np.diff(columns.colour_start)
        place = np.flatnonzero(counts > 0)
        return RackPoints(
            place=place,
            mean_lab=np.asarray(columns.mean_lab[place], dtype=np.float64),
            kind=np.asarray(columns.kind[place]),
            is_there=np.asarray(columns.in_stock[place] != 0),
            lab=columns.lab,
            share=columns.share,
            start=np.asarray(columns.colour_start[:-1][place], dtype=np.intp),
        )
    coloured = [(at, sample) for at, sample in enumerate(samples) if sample.colours]
    counts = np.array([len(sample.colours) for _, sample in coloured], dtype=np.intp)
    colours = [colour for _, sample in coloured for colour in sample.colours]
    lab = np.array([colour.lab for colour in colours], dtype=np.float64).reshape(-1, 3)
    share = np.array([colour.share for colour in colours], dtype=np.float64)
    start = np.concatenate(([0], np.cumsum(counts)))[:-1].astype(np.intp)
    return RackPoints(
        place=np.array([at for at, _ in coloured], dtype=np.intp),
        mean_lab=_means(lab, share, start),
        kind=np.array([_KINDS.index(sample.kind) for _, sample in coloured], dtype=np.uint8),
        is_there=np.array([sample.in_stock is not False for _, sample in coloured], dtype=np.bool_),
        lab=lab,
        share=share,
        start=start,
    )


def distances(points: RackPoints, wanted_lab: ArrayLike) -> Float64Array:
    """Return how near every sample comes to each of some colours.

    Parameters
    ----------
    points
        The rack; colours that cover less than ``COUNTS_FROM_SHARE`` of a sample do not count.
    wanted_lab
        Shape (m, 3), Lab D50.

    Returns
    -------
    Shape (m, n), ΔE00; inf for a sample of slivers only.
    """
    wanted = as_lab(wanted_lab).reshape(-1, 3)
    nearest = np.full((len(wanted), len(points)), np.inf)
    if not len(points):
        return nearest
    counts = points.share >= COUNTS_FROM_SHARE
    step = max(1, _PAIRS_AT_ONCE // len(points.lab))
    for first in range(0, len(wanted), step):
        rows = slice(first, first + step)
        difference = np.asarray(delta_e_2000_matrix(wanted[rows], points.lab))
        difference = np.where(counts, difference, np.inf)
        nearest[rows] = np.minimum.reduceat(difference, points.start, axis=1)
    return nearest


def neighbours(
    points: RackPoints, lab: ArrayLike, *, within_delta_e: float, only: BoolArray | None = None
) -> tuple[tuple[int, float], ...]:
    """Return the rows of the samples near a colour with their ΔE00, nearest first.

    Parameters
    ----------
    points
        The rack.
    lab
        Shape (3,), Lab D50.
    within_delta_e
        The farthest that still counts as near.
    only
        Shape (n,): the samples to look among; all by default.
    """
    distance = distances(points, lab)[0]
    if only is not None:
        distance = np.where(only, distance, np.inf)
    rows = np.flatnonzero(distance <= within_delta_e)
    rows = rows[np.argsort(distance[rows], kind="stable")]
    return tuple((int(row), float(distance[row])) for row in rows)


def in_hue_order(points: RackPoints) -> NDArray[np.intp]:
    """Return all rows round the hue circle from pink on, and the neutral ones last by lightness."""
    lightness = points.mean_lab[:, 0]
    is_neutral = in_family(points.mean_lab, "neutral")
    start = HUE_FAMILIES_DEG["pink"][0]
    turned = (hue_deg(points.mean_lab) - start) % 360
    return np.lexsort((-lightness, np.where(is_neutral, 0.0, turned), is_neutral))


def _means(lab: Float64Array, share: Float64Array, start: NDArray[np.intp]) -> Float64Array:
    """Return the share-weighted mean colour of each sample; a plain mean where shares are 0."""
    if not len(start):
        return np.empty((0, 3))
    weight = np.add.reduceat(share, start)[:, None]
    weighted = np.add.reduceat(lab * share[:, None], start, axis=0)
    plain = np.add.reduceat(lab, start, axis=0)
    count = np.diff(np.append(start, len(lab)))[:, None]
    return np.asarray(
        np.where(weight > 0, weighted / np.where(weight > 0, weight, 1), plain / count)
    )
