"""Taste choices: what is kept, sent away and compared on one picture, as paired choices.

Only samples of one kind are compared: nobody prefers a mat to a moulding.
"""

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.ranking.judging import qualities
from framing_palette.ranking.measuring import MeasureColumns
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.taste import Choice, Codes

PAIRS_OF_ONE = 2  # a sample sent away counts against this many kept ones of its kind, no more
DIGITS = 4  # what a measure can bear


@dataclass(frozen=True, slots=True)
class Answer:
    """One of two looks preferred for a picture, or neither of them.

    Parameters
    ----------
    better, worse
        Codes of the samples; a design has several, from the art outward.
    is_open
        True when neither was preferred: the pair is not asked about again, and nothing is learned.
    """

    better: Codes
    worse: Codes
    is_open: bool = False


@dataclass(frozen=True, slots=True)
class Work:
    """What was done on one picture.

    Parameters
    ----------
    kept, away
        Codes of single samples that were kept, and that were sent away for their looks.
    answers
        Looks that were compared with each other.
    agreed
        Codes of the design that was agreed on; empty before.
    """

    kept: Codes = ()
    away: Codes = ()
    answers: tuple[Answer, ...] = ()
    agreed: Codes = ()


def picture_mark(*facts: str) -> str:
    """Return a mark by which choices on one picture are known, and nobody is."""
    return hashlib.sha256("\n".join(facts).encode()).hexdigest()[:12]


def choice_between(
    ranked: Ranking, better: str | Codes, worse: str | Codes, *, picture: str = ""
) -> Choice:
    """Return the choice of one look over another in a ranking.

    The qualities of a design are the mean of its layers', so that a design is preferred for all
    that differs.

    Raises
    ------
    UnknownSampleError
        When a code is not in it.
    """
    sides = [(side,) if isinstance(side, str) else side for side in (better, worse)]
    rows = {code: ranked.row(code) for side in sides for code in side}
    table = dict(zip(rows, qualities_at(ranked, list(rows.values())), strict=True))
    return _choice(table, sides[0], sides[1], picture)


def choices_from_work(ranked: Ranking, work: Work, *, picture: str = "") -> tuple[Choice, ...]:
    """Return what was done on one picture as paired choices; each pair once, the last word counts.

    A kept sample is preferred to those of its kind that were sent away, the samples of the agreed
    design to those of their kind that were kept beside them; what was answered was meant and
    stands over both. Samples that are no longer in the ranking are left out.
    """
    rows = _rows(ranked, work)
    kinds = {code: ranked.columns.sample(row).kind for code, row in rows.items()}
    kept = [code for code in work.kept if code in kinds]
    pairs: dict[frozenset[Codes], tuple[Codes, Codes]] = {}
    for worse in (code for code in work.away if code in kinds):
        rivals = [code for code in kept if kinds[code] is kinds[worse] and code != worse]
        for better in _nearest(ranked, worse, rivals)[:PAIRS_OF_ONE]:
            _add(pairs, (better,), (worse,))
    for better in (code for code in work.agreed if code in kinds):
        for worse in kept:
            if kinds[better] is kinds[worse] and worse not in work.agreed:
                _add(pairs, (better,), (worse,))
    for answer in work.answers:
        if answer.is_open:
            pairs.pop(frozenset((answer.better, answer.worse)), None)
        elif all(code in kinds for code in (*answer.better, *answer.worse)):
            _add(pairs, answer.better, answer.worse)
    table = dict(zip(rows, qualities_at(ranked, list(rows.values())), strict=True))
    return tuple(_choice(table, *pair, picture) for pair in pairs.values())


def qualities_at(ranked: Ranking, rows: Sequence[int] | NDArray[np.intp]) -> Float64Array:
    """Return the qualities of some samples, shape (rows, number of ``QUALITIES``)."""
    places = np.asarray(rows, dtype=np.intp)
    columns: dict[str, Any] = {
        field.name: getattr(ranked.measures, field.name)[places] for field in fields(MeasureColumns)
    }
    return qualities(MeasureColumns(**columns), ranked.rule)


def _choice(table: Mapping[str, Float64Array], better: Codes, worse: Codes, picture: str) -> Choice:
    means = [np.mean([table[code] for code in side], axis=0) for side in (better, worse)]
    one, two = (tuple(np.round(mean, DIGITS).tolist()) for mean in means)
    return Choice(one, two, picture, better, worse)


def _rows(ranked: Ranking, work: Work) -> dict[str, int]:
    answered = [code for one in work.answers for code in (*one.better, *one.worse)]
    wanted = dict.fromkeys((*work.kept, *work.away, *work.agreed, *answered))
    return {code: ranked.row(code) for code in wanted if ranked.has(code)}


def _nearest(ranked: Ranking, code: str, rivals: Sequence[str]) -> list[str]:
    """Return rivals, those nearest in merit first: they tell the most."""
    merit = ranked.judgement.merit
    here = merit[ranked.row(code)]
    return sorted(rivals, key=lambda other: abs(float(merit[ranked.row(other)] - here)))


def _add(
    pairs: dict[frozenset[Codes], tuple[Codes, Codes]],
    better: Codes,
    worse: Codes,
) -> None:
    if better != worse:
        pair = frozenset((better, worse))
        pairs.pop(pair, None)
        pairs[pair] = (better, worse)
