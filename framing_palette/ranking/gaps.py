"""Gaps: the colours that a picture asks for, and what the rack has that comes near them.

A border repeats a colour of the picture, or speaks of it more quietly: weaker, paler or deeper.
Which relations are asked for, and how far they lie, is common practice of the trade, not a
published scale.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from math import inf

import numpy as np

from framing_palette.arrays import BoolArray
from framing_palette.catalogue.rack_map import RackPoints, distances
from framing_palette.colour import delta_e_2000, plain_name
from framing_palette.picture import Findings

NEAR_ENOUGH = 5.0
"""ΔE00 from which a border no longer seems to repeat a colour; common practice."""

_TWIN = 5.0  # two colours nearer than this are asked for once
_QUIET = 0.5  # share of the chroma that a quieter colour keeps
_PALE_CHROMA, _PALE_TO = 0.6, 95.0  # a paler colour lies halfway to a white board
_DEEP_CHROMA, _DEEP_TO = 0.8, 20.0  # a deeper one halfway to a black frame

Lab = tuple[float, float, float]


class Relation(StrEnum):
    """How a border may speak of a colour of the picture."""

    SAME = "same"
    QUIETER = "quieter"
    PALER = "paler"
    DEEPER = "deeper"


@dataclass(frozen=True, slots=True)
class Reach:
    """One colour that the picture asks for, and the nearest that the rack has.

    Parameters
    ----------
    lab, name
        The colour, Lab D50, and what it is called.
    relation
        To the colour of the picture that it speaks of.
    share
        Of that colour in the picture, 0..1.
    row
        The nearest sample's row in the points; -1 when there is none at all.
    delta_e
        How near it comes, ΔE00; inf when there is none.
    """

    lab: Lab
    name: str
    relation: Relation
    share: float
    row: int = -1
    delta_e: float = inf

    @property
    def is_gap(self) -> bool:
        """Whether nothing comes near enough."""
        return self.delta_e > NEAR_ENOUGH


def wanted_colours(findings: Findings) -> tuple[Reach, ...]:
    """Return what a picture asks for: its colours first, then what speaks of them quietly.

    Twins are asked for once.
    """
    own = _without_twins(_own_colours(findings), ())
    quiet = _without_twins((quiet for one in own for quiet in _quieter(one)), own)
    return (*own, *quiet)


def reaches(
    findings: Findings, points: RackPoints, *, only: BoolArray | None = None
) -> tuple[Reach, ...]:
    """Return everything that a picture asks for with the nearest that the rack has.

    Parameters
    ----------
    findings
        Of the picture.
    points
        The rack.
    only
        Shape (n,): the samples that may be used; what is in stock by default.
    """
    wanted = wanted_colours(findings)
    usable = points.is_there if only is None else only
    if not wanted or not usable.any():
        return wanted
    distance = np.where(usable, distances(points, [one.lab for one in wanted]), np.inf)
    rows = distance.argmin(axis=1)
    return tuple(
        Reach(one.lab, one.name, one.relation, one.share, int(row), float(near[row]))
        for one, row, near in zip(wanted, rows, distance, strict=True)
    )


def _own_colours(findings: Findings) -> Iterator[Reach]:
    """Return the colours of the whole, then of the regions, then the accents."""
    whole = findings.whole
    for region in (whole, *(one for one in findings.regions if one is not whole)):
        for colour in region.colours:
            yield _asked(colour.lab, Relation.SAME, colour.share * region.share)
    for accent in findings.accents:
        yield _asked(accent.lab, Relation.SAME, accent.share)


def _quieter(one: Reach) -> Iterator[Reach]:
    lightness, a, b = one.lab
    yield _asked((lightness, a * _QUIET, b * _QUIET), Relation.QUIETER, one.share)
    for relation, keeps, goal in (
        (Relation.PALER, _PALE_CHROMA, _PALE_TO),
        (Relation.DEEPER, _DEEP_CHROMA, _DEEP_TO),
    ):
        yield _asked(((lightness + goal) / 2, a * keeps, b * keeps), relation, one.share)


def _asked(lab: Lab, relation: Relation, share: float) -> Reach:
    return Reach(lab, plain_name(lab), relation, share)


def _without_twins(found: Iterable[Reach], known: tuple[Reach, ...]) -> tuple[Reach, ...]:
    """Return those that nothing before them, known or found, comes very near."""
    kept = list[Reach]()
    for one in found:
        others = [other.lab for other in (*known, *kept)]
        if not others or float(np.min(delta_e_2000(np.array(others), one.lab))) >= _TWIN:
            kept.append(one)
    return tuple(kept)
