"""Stability: would the verdict be the same if the colours were a little off?

The picture's colours carry the error that its colour trust states, the same for the whole picture
(a wrong light tints everything alike), and every sample the error of its own measurement. A tint
of the picture acts on the verdict nearly as the opposite tint of the sample would, so that both are
drawn as errors of the sample. All samples meet the same draws, so that a sample's stability does
not hang on its company.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.picture import ColourTrust, TrustGrade
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.judging import JudgementColumns, judge
from framing_palette.ranking.measuring import measure
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.verdicts import RankedSample

DRAWS = 32
SEED = 20
SAMPLE_DELTA_E = 1.0  # mean error of a measured sample: instrument, batch and ageing together
GRADE_DELTA_E: Mapping[TrustGrade, float] = {  # mean error when only the grade is known
    TrustGrade.WHITES: 1.5,
    TrustGrade.HUES: 3.0,
    TrustGrade.FAMILIES: 6.0,
    TrustGrade.UNKNOWN: 5.0,
}
MEAN_OF_UNIT_NORMAL_3 = 1.5957691216057308  # mean length of a three-dimensional unit normal


def with_stability(
    ranked: Ranking,
    lines: Sequence[RankedSample] | None = None,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> tuple[RankedSample, ...]:
    """Return ranked samples with the share of drawn errors under which the verdict stays.

    Parameters
    ----------
    ranked
        The ranking.
    lines
        The first lines of it, all when None.
    draws, seed
        How many errors are drawn for each sample, and from where; the same seed gives the same
        answer.
    """
    lines = tuple(ranked) if lines is None else tuple(lines)
    rows = ranked.order[: len(lines)]
    stable = verdict_stability(ranked, rows, draws=draws, seed=seed)
    return tuple(
        replace(line, stability=float(share)) for line, share in zip(lines, stable, strict=True)
    )


def verdict_stability(
    ranked: Ranking, rows: NDArray[np.intp], *, draws: int = DRAWS, seed: int = SEED
) -> Float64Array:
    """Return the share of draws under which the verdict of each row stays, shape of ``rows``."""
    if not len(rows) or draws < 1:
        return np.ones(len(rows))
    rng = np.random.default_rng(seed)
    tint = _errors(rng, draws, picture_delta_e(ranked.findings.colour_trust))
    errors = tint + _errors(rng, draws, SAMPLE_DELTA_E)
    before = _verdicts(ranked.judgement)[rows]
    chosen = ranked.columns.at(rows)
    same = [_judged_again(ranked, chosen, error) == before for error in errors]
    return np.asarray(np.mean(same, axis=0))


def _judged_again(ranked: Ranking, columns: SampleColumns, error: Float64Array) -> NDArray[np.int8]:
    moved = replace(columns, lab=columns.lab + error, mean_lab=columns.mean_lab + error)
    measures = measure(moved, ranked.subject, ranked.rule.limits)
    return _verdicts(judge(measures, ranked.rule))


def picture_delta_e(trust: ColourTrust) -> float:
    """Return the mean error of a picture's colours: as measured, else as its grade says."""
    return GRADE_DELTA_E[trust.grade] if trust.mean_delta_e is None else trust.mean_delta_e


def _errors(rng: np.random.Generator, draws: int, mean: float) -> Float64Array:
    """Return errors in every direction of Lab, of that mean length, shape (draws, 3)."""
    return rng.normal(size=(draws, 3)) * (mean / MEAN_OF_UNIT_NORMAL_3)


def _verdicts(judged: JudgementColumns) -> NDArray[np.int8]:
    return np.where(judged.clash, 2, np.where(judged.blend, 1, 0)).astype(np.int8)
