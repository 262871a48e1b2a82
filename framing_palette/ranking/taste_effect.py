"""Taste effect: what the shop's own weights change in a shortlist, sample by sample."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from framing_palette.ranking.judging import judge
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.rule import Rule

QUALITY_WORDS = {
    "echo": "repeating a colour of the picture",
    "kin": "belonging to the family of a telling colour",
    "meaning": "taking up a small colour that tells",
    "cover": "repeating much of the picture's palette",
    "foil": "a plain neutral that stands clear",
    "harmony": "harmony by the published model",
    "texture": "a surface like the picture's",
    "softness": "a surface as soft as the subject",
    "depth": "darkness",
    "vivid": "strong colour",
    "bright": "being lighter than the focus",
    "pull": "drawing the eye",
    "warmth": "the wrong white",
    "near_miss": "a failed match",
    "stray": "a strong hue that the picture lacks",
    "glitter": "shine",
}
"""What each quality is called when it is said what taste moved."""


@dataclass(frozen=True, slots=True)
class Move:
    """Where a sample stands among those of its verdict, counted from 1, by each of two rules."""

    code: str
    house_place: int
    own_place: int

    @property
    def places(self) -> int:
        """How many places it moved up; below 0 down."""
        return self.house_place - self.own_place


@dataclass(frozen=True, slots=True)
class Shift:
    """How two orders of the same samples differ.

    Parameters
    ----------
    moves
        Samples that stand elsewhere, the farthest first, those that are high on either list
        before others.
    same_at_top, top
        How many of the first few are the first few of the other order too.
    """

    moves: tuple[Move, ...]
    same_at_top: int
    top: int


def judged_by(ranked: Ranking, rule: Rule) -> Ranking:
    """Return the same samples in the order of another rule, from the measures already made.

    The rule must have the same limits, because the measures hang on them; weights are free.
    """
    if rule == ranked.rule:
        return ranked
    judgement = judge(ranked.measures, rule)
    order = np.argsort(-judgement.score, kind="stable")
    return replace(ranked, rule=rule, judgement=judgement, order=order)


def places_in(ranked: Ranking) -> NDArray[np.intp]:
    """Return the place of every sample among those of its verdict, from 1, in catalogue order."""
    verdicts = np.where(ranked.judgement.clash, 2, np.where(ranked.judgement.blend, 1, 0))
    places = np.zeros(len(ranked.judgement.score), dtype=np.intp)
    for verdict in (0, 1, 2):
        rows = ranked.order[verdicts[ranked.order] == verdict]
        places[rows] = np.arange(1, len(rows) + 1)
    return places


def shift_between(house: Ranking, own: Ranking, *, top: int = 12, told: int = 8) -> Shift:
    """Return what the own rule moved against the house rule.

    Parameters
    ----------
    house, own
        The same samples by both rules.
    top
        Only samples among so many of their verdict by either rule are worth telling of.
    told
        How many moves to tell at most.
    """
    before, after = places_in(house), places_in(own)
    seen = np.flatnonzero((np.minimum(before, after) <= top) & (before != after))
    farthest = sorted(seen.tolist(), key=lambda row: (-abs(int(before[row] - after[row])), row))
    code_of = house.columns.sample
    moves = tuple(
        Move(code_of(row).code, int(before[row]), int(after[row])) for row in farthest[:told]
    )
    first = len(house.order[:top])
    same = len(np.intersect1d(house.order[:top], own.order[:top]))
    return Shift(moves, same, first)


def weights_words(moved: dict[str, tuple[float, float]]) -> tuple[str, ...]:
    """Return what counts more and what less than in the house rule, the most moved first."""
    parts = {name: abs(own) / max(abs(house), 1e-9) for name, (house, own) in moved.items()}
    by_size = sorted(parts, key=lambda name: -abs(parts[name] - 1.0))
    return tuple(_weight_words(name, moved[name], parts[name]) for name in by_size)


def _weight_words(name: str, pair: tuple[float, float], part: float) -> str:
    told = QUALITY_WORDS.get(name, name.replace("_", " "))
    speaks = "counts" if pair[0] >= 0 else "is held against a sample"
    change = "more" if part >= 1.0 else "less"
    return f"{told[0].upper()}{told[1:]} {speaks} {abs(part - 1.0) * 100:.0f}\u00a0% {change}."
