"""Taste questions: which two samples to ask about, so that the answer tells something.

Worth asking is a pair whose answer the present rule does not know (near in score) and the weights
could change (different in qualities, by as much as each weight may move), about something that
the earlier choices have not told already.
"""

from collections import Counter

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Kind
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.taste import Codes, Taste, reach, weights_of
from framing_palette.ranking.taste_choices import qualities_at

ASKED_OF = 40  # samples of a kind, best first, that are asked about; nobody frames with the others
FRESHNESS = 0.7  # what is taken from a pair that earlier choices have told of
TIRED_AFTER = 2  # questions on one sample before others are preferred


def next_question(
    ranked: Ranking,
    taste: Taste,
    *,
    picture: str,
    kind: Kind | None = None,
    left_out: frozenset[str] = frozenset(),
) -> tuple[str, str] | None:
    """Return the codes of the two samples to ask about next; None when all were asked.

    Parameters
    ----------
    ranked
        The picture's shortlist.
    taste
        What was asked before; a pair is never asked about twice on one picture.
    picture
        The picture's mark.
    kind
        Only of this kind; of whichever tells most when None.
    left_out
        Codes that are not to be asked about, such as those that were sent away.
    """
    asked = taste.pairs_of(picture)
    best: tuple[float, str, str] | None = None
    for one in Kind if kind is None else (kind,):
        found = _best_of(ranked, taste, one, asked, left_out)
        if found is not None and (best is None or found[0] > best[0]):
            best = found
    return None if best is None else best[1:]


def _best_of(
    ranked: Ranking,
    taste: Taste,
    kind: Kind,
    asked: frozenset[frozenset[Codes]],
    left_out: frozenset[str],
) -> tuple[float, str, str] | None:
    rows = _candidates(ranked, kind, left_out)
    if len(rows) < 2:
        return None
    codes = [ranked.columns.sample(row).code for row in rows]
    table = qualities_at(ranked, rows)
    first, second = np.triu_indices(len(rows), 1)
    gaps = table[first] - table[second]
    gain = _gain(gaps, ranked) * _freshness(gaps, taste) * _rest(codes, asked, first, second)
    gain[_is_asked(codes, asked, first, second)] = -np.inf
    place = int(np.argmax(gain))
    if not np.isfinite(gain[place]):
        return None
    return float(gain[place]), codes[first[place]], codes[second[place]]


def _candidates(ranked: Ranking, kind: Kind, left_out: frozenset[str]) -> list[int]:
    """Return the best samples of a kind that do not clash."""
    rows: list[int] = []
    for row in ranked.order.tolist():
        if len(rows) == ASKED_OF or ranked.judgement.clash[row]:
            break  # no clash stands above another verdict
        sample = ranked.columns.sample(row)
        if sample.kind is kind and sample.code not in left_out:
            rows.append(row)
    return rows


def _gain(gaps: Float64Array, ranked: Ranking) -> Float64Array:
    """Return how much the weights could change of a pair, less what the rule is sure of."""
    weights = weights_of(ranked.rule)
    could = np.sqrt(((gaps * reach(weights)) ** 2).sum(axis=1))
    lead = np.abs(gaps @ weights)
    return np.asarray(could / (1.0 + lead) ** 2 + 1e-9)


def _freshness(gaps: Float64Array, taste: Taste) -> Float64Array:
    """Return 1 for a pair unlike all earlier ones, less for one that tells the same again."""
    if not taste.choices:
        return np.ones(len(gaps))
    told = np.array([np.subtract(one.better, one.worse) for one in taste.choices[-200:]])
    return np.asarray(1.0 - FRESHNESS * np.abs(_unit(gaps) @ _unit(told).T).max(axis=1))


def _rest(
    codes: list[str],
    asked: frozenset[frozenset[Codes]],
    first: NDArray[np.intp],
    second: NDArray[np.intp],
) -> Float64Array:
    """Return less for pairs with a sample that was asked about again and again."""
    counts = Counter(code for pair in asked for side in pair for code in side)
    seen = np.array([max(0, counts[code] - TIRED_AFTER + 1) for code in codes], dtype=np.float64)
    return np.asarray(1.0 / (1.0 + seen[first] + seen[second]))


def _is_asked(
    codes: list[str],
    asked: frozenset[frozenset[Codes]],
    first: NDArray[np.intp],
    second: NDArray[np.intp],
) -> BoolArray:
    pairs = zip(first.tolist(), second.tolist(), strict=True)
    return np.array([frozenset({(codes[a],), (codes[b],)}) in asked for a, b in pairs])


def _unit(rows: Float64Array) -> Float64Array:
    return np.asarray(rows / np.maximum(np.linalg.norm(rows, axis=1, keepdims=True), 1e-9))
