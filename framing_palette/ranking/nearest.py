"""Nearest better choice: keep what the client likes about a sample, and offer what works.

Closeness of look is a sum over the aspects that people name when they like something: hue, depth,
strength, surface, sheen and pattern. The nearest sample with a better verdict is offered, and the
reason says what is kept, what changes, and why that helps.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import hypot

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.places import focus_words, target_words
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.verdicts import RankedSample


class Aspect(StrEnum):
    """What people like about a sample."""

    HUE = "hue"
    DEPTH = "depth"
    STRENGTH = "strength"
    SURFACE = "surface"
    SHEEN = "sheen"
    PATTERN = "pattern"


USUALLY_LIKED = (Aspect.HUE, Aspect.SURFACE)
LIKED_COUNTS = 3.0  # how much more a liked aspect counts than another
BETTER_SCORE = 0.1  # a choice that is no clash already is bettered by this much or not at all
KEPT_HUE, KEPT_DEPTH, KEPT_STRENGTH = 8.0, 8.0, 6.0  # ΔE units, L* and C*ab: still the same
SURFACE_GAP, PATTERN_GAP = 6.0, 10.0  # ΔE units that another surface or a lost pattern is worth
MOTTLED_SPREAD = 6.0  # ΔE units between a sample's colours from which it has a pattern


@dataclass(frozen=True, slots=True)
class BetterChoice:
    """What to offer instead of a sample that the client likes.

    Parameters
    ----------
    liked, offered
        The two, as ranked.
    kept
        The aspects that stay the same.
    look_distance
        How far apart they look, in ΔE units over the aspects.
    reason
        One or two kind sentences.
    """

    liked: RankedSample
    offered: RankedSample
    kept: tuple[Aspect, ...]
    look_distance: float
    reason: str


def nearest_better(
    ranked: Ranking, code: str, liked: Sequence[Aspect] = USUALLY_LIKED
) -> BetterChoice | None:
    """Return the nearest sample by look that works better, None when none does.

    Parameters
    ----------
    ranked
        A ranking of the catalogue, the liked sample in it.
    code
        The liked sample.
    liked
        What is liked about it; these aspects count most.

    Raises
    ------
    UnknownSampleError
        When the code is not in the ranking.
    """
    index = ranked.row(code)
    better = _better(ranked, index)
    if not better.any():
        return None
    distance = np.where(better, look_distances(ranked.columns, index, liked), np.inf)
    chosen = int(np.lexsort((-ranked.judgement.score, distance))[0])
    mine, offered = ranked.at(index), ranked.at(chosen)
    kept = tuple(_kept(ranked.columns, index, chosen))
    return BetterChoice(
        liked=mine,
        offered=offered,
        kept=kept,
        look_distance=float(distance[chosen]),
        reason=_reason(ranked, (index, chosen), (mine, offered), kept),
    )


def look_distances(
    columns: SampleColumns, index: int, liked: Sequence[Aspect] = USUALLY_LIKED
) -> Float64Array:
    """Return how far each sample looks from one of them, in ΔE units, shape (n,)."""
    gaps = _gaps(columns, index)
    weight = {aspect: LIKED_COUNTS if aspect in liked else 1.0 for aspect in Aspect}
    total = sum(weight.values())
    square = sum(weight[aspect] * gaps[aspect] ** 2 for aspect in Aspect)
    return np.sqrt(np.asarray(square) / total)


def _gaps(columns: SampleColumns, index: int) -> dict[Aspect, Float64Array]:
    lab = columns.mean_lab
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    own = lab[index]
    product = chroma * chroma[index]
    dot = lab[:, 1] * own[1] + lab[:, 2] * own[2]
    hue = np.sqrt(np.maximum(2.0 * (product - dot), 0.0)) / (1.0 + 0.015 * np.sqrt(product))
    spread = pattern_spread(columns)
    soft = np.nan_to_num(np.abs(columns.softness - columns.softness[index]), nan=0.5)
    return {
        Aspect.HUE: hue,
        Aspect.DEPTH: np.abs(lab[:, 0] - own[0]),
        Aspect.STRENGTH: np.abs(chroma - chroma[index]) / (1.0 + 0.045 * chroma[index]),
        Aspect.SURFACE: SURFACE_GAP * (2.0 * soft),
        Aspect.SHEEN: SURFACE_GAP * np.abs(columns.glitter - columns.glitter[index]),
        Aspect.PATTERN: PATTERN_GAP * np.abs(np.tanh((spread - spread[index]) / MOTTLED_SPREAD)),
    }


def pattern_spread(columns: SampleColumns) -> Float64Array:
    """Return how far a sample's colours spread about their mean, in Lab units, shape (n,)."""
    mean = np.repeat(columns.mean_lab, columns.counts, axis=0)
    return np.sqrt(columns.per_sample(((columns.lab - mean) ** 2).sum(axis=1)))


def _better(ranked: Ranking, index: int) -> BoolArray:
    """Return who has a better verdict, or, when it works already, a clearly better score."""
    judged = ranked.judgement
    same_kind = ranked.columns.kind == ranked.columns.kind[index]
    if judged.clash[index]:
        return np.asarray(~judged.clash & same_kind)
    higher = judged.score >= judged.score[index] + BETTER_SCORE
    return np.asarray(~judged.clash & higher & same_kind)


def _kept(columns: SampleColumns, index: int, chosen: int) -> Iterator[Aspect]:
    gaps = {aspect: float(gap[chosen]) for aspect, gap in _gaps(columns, index).items()}
    mine, other = columns.mean_lab[index], columns.mean_lab[chosen]
    if gaps[Aspect.HUE] <= KEPT_HUE:
        yield Aspect.HUE
    if gaps[Aspect.DEPTH] <= KEPT_DEPTH:
        yield Aspect.DEPTH
    if abs(hypot(*mine[1:]) - hypot(*other[1:])) <= KEPT_STRENGTH:
        yield Aspect.STRENGTH
    one, two = columns.sample(index), columns.sample(chosen)
    if one.surface is not None and one.surface is two.surface:
        yield Aspect.SURFACE
    if one.finish is not None and one.finish is two.finish:
        yield Aspect.SHEEN
    spread = pattern_spread(columns)
    if min(spread[index], spread[chosen]) >= MOTTLED_SPREAD:
        yield Aspect.PATTERN


def _reason(
    ranked: Ranking,
    rows: tuple[int, int],
    pair: tuple[RankedSample, RankedSample],
    kept: tuple[Aspect, ...],
) -> str:
    offered = pair[1].sample
    name = offered.name or offered.code
    keeps = _and([f"the {aspect}" for aspect in kept]) or "the spirit"
    change = _change(ranked.columns.mean_lab[rows[0]], ranked.columns.mean_lab[rows[1]])
    changed = f" and is {change}" if change else ""
    return f"{name} keeps {keeps} of the one you like{changed}, {_gain(ranked, rows, pair)}."


def _change(mine: Float64Array, other: Float64Array) -> str:
    words = []
    depth, strength = other[0] - mine[0], hypot(*other[1:]) - hypot(*mine[1:])
    if abs(depth) > KEPT_DEPTH:
        words.append("lighter" if depth > 0 else "darker")
    if abs(strength) > KEPT_STRENGTH:
        words.append("stronger" if strength > 0 else "quieter")
    return _and(words)


def _gain(ranked: Ranking, rows: tuple[int, int], pair: tuple[RankedSample, RankedSample]) -> str:
    """Return why it helps, from the fault that is gone, else from what it now does."""
    before, after = pair[0].measures, pair[1].measures
    limit = ranked.rule.limits.clash
    focus = focus_words(ranked.findings)
    if before.overpowering >= limit > after.overpowering:
        return f"so that the eye stays with {focus}"
    if before.near_miss >= limit > after.near_miss:
        missed = ranked.subject.targets[int(ranked.measures.near_miss_target[rows[0]])]
        place = target_words(ranked.findings, missed, before.near_miss_name)
        return f"so that it no longer looks like a failed match for {place}"
    if before.warmth >= ranked.rule.limits.warmth_limit > after.warmth:
        return "and it agrees with the whites of the picture"
    if max(before.stray, before.foreign) >= limit > max(after.stray, after.foreign):
        return "so that no hue is foreign to the picture"
    if after.echo >= before.echo:
        return "and it repeats the picture's own colours more closely"
    return f"so that it sits more quietly beside {focus}"


def _and(words: Sequence[str]) -> str:
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"
