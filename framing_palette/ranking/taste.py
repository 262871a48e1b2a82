"""Taste: a shop teaches the rule its own by what it accepts, rejects and compares.

Every comparison says that one sample suited a picture better than another. A regularised
Bradley-Terry model (a logistic regression on the difference of the two samples' qualities) finds
weights that would have foretold the choices. It starts from the house rule, may move each weight
only so far, is asked to foretell choices that it has not seen, and changes nothing until it rests
on enough of them.

References
----------
Bradley, Terry 1952, Rank analysis of incomplete block designs: I. The method of paired
comparisons, Biometrika 39(3/4):324-345.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.errors import FieldError
from framing_palette.ranking.judging import QUALITIES, qualities
from framing_palette.ranking.rankings import Ranking
from framing_palette.ranking.rule import HOUSE_RULE, Rule

TASTE_SCHEMA = "framing-palette/taste@1"
FEWEST_CHOICES = 12  # fewer change nothing: nobody learns a taste from one click
FOLDS = 5
MOVES_AT_MOST = 0.6  # part of its house value that a weight may move
SMALLEST_MOVE = 0.3  # and what even a small weight may move
REGULARISATION = 1.0  # scikit-learn's C: smaller holds closer to the house rule
HOUSE_COUNTS = 10.0  # scale that leaves the house rule's own merit all but unpenalised
EACH_SIDE = 12  # accepted and rejected samples of one picture that are paired at most


@dataclass(frozen=True, slots=True)
class Choice:
    """One sample preferred to another for one picture, by their qualities.

    ``better`` and ``worse`` are in the order of ``QUALITIES``; ``note`` says where it came from,
    such as the job and the two codes.
    """

    better: tuple[float, ...]
    worse: tuple[float, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Taste:
    """All choices that a shop has made, oldest first; a new value for each change."""

    choices: tuple[Choice, ...] = ()

    def with_choices(self, *choices: Choice) -> "Taste":
        """Return the taste with more choices."""
        return replace(self, choices=self.choices + choices)


@dataclass(frozen=True, slots=True)
class TasteFit:
    """What was learned.

    Parameters
    ----------
    rule
        The rule to use: the house rule until there is enough to go on.
    rests_on
        How many choices it rests on.
    foretold, house_foretold
        Share of held-back choices that the shop's own and the house rule foretell; None before
        there are enough choices.
    in_use
        Whether the rule differs from the house rule.
    words
        One sentence for people.
    """

    rule: Rule
    rests_on: int
    foretold: float | None
    house_foretold: float | None
    in_use: bool
    words: str

    def moved(self, house: Rule = HOUSE_RULE) -> dict[str, tuple[float, float]]:
        """Return each weight as (house, own), where they differ."""
        pairs = {
            name: (getattr(house.weights, name), getattr(self.rule.weights, name))
            for name in QUALITIES
        }
        return {name: pair for name, pair in pairs.items() if abs(pair[0] - pair[1]) > 1e-9}


def choice_between(ranked: Ranking, better: str, worse: str, *, note: str = "") -> Choice:
    """Return the choice of one code over another in a ranking.

    Raises
    ------
    UnknownSampleError
        When a code is not in it.
    """
    table = qualities(ranked.measures, ranked.rule)
    one, two = ranked.row(better), ranked.row(worse)
    return Choice(tuple(table[one].tolist()), tuple(table[two].tolist()), note)


def choices_from_work(
    ranked: Ranking, accepted: Sequence[str], rejected: Sequence[str], *, note: str = ""
) -> tuple[Choice, ...]:
    """Return every accepted sample as preferred to every rejected one, of one picture.

    Raises
    ------
    UnknownSampleError
        When a code is not in the ranking.
    """
    return tuple(
        choice_between(ranked, better, worse, note=note)
        for better in accepted[:EACH_SIDE]
        for worse in rejected[:EACH_SIDE]
        if better != worse
    )


def fit_taste(taste: Taste, house: Rule = HOUSE_RULE) -> TasteFit:
    """Return the rule that a shop's choices speak for, and how far to trust it.

    The house rule stays in use when there are too few choices, or when the learned weights foretell
    held-back choices no better than it does.
    """
    count = len(taste.choices)
    if count < FEWEST_CHOICES:
        words = f"{count} of {FEWEST_CHOICES} choices made: the house rule stays in use."
        return TasteFit(house, count, None, None, in_use=False, words=words)
    gaps = np.array([np.subtract(choice.better, choice.worse) for choice in taste.choices])
    own = _held_back(gaps, house)
    at_home = _foretold(gaps, _weights(house))
    if own <= at_home:
        words = (
            f"From {count} choices: the house rule foretells {at_home:.0%} of them, own weights "
            f"only {own:.0%} of those held back, so the house rule stays in use."
        )
        return TasteFit(house, count, own, at_home, in_use=False, words=words)
    rule = replace(house, weights=replace(house.weights, **_named(_fitted(gaps, house))))
    words = (
        f"From {count} choices: foretells {own:.0%} of held-back ones, "
        f"where the house rule foretells {at_home:.0%}."
    )
    return TasteFit(rule, count, own, at_home, in_use=True, words=words)


def taste_report(taste: Taste) -> dict[str, Any]:
    """Return a taste as plain values, for export."""
    return {
        "schema": TASTE_SCHEMA,
        "qualities": list(QUALITIES),
        "choices": [
            {"better": list(choice.better), "worse": list(choice.worse), "note": choice.note}
            for choice in taste.choices
        ],
    }


def taste_from_report(report: Mapping[str, Any]) -> Taste:
    """Return the taste of an exported report; qualities are matched by name.

    Raises
    ------
    FieldError
        When it is no such report, or a choice lacks a number.
    """
    if report.get("schema") != TASTE_SCHEMA:
        wanted = f'choose a file with schema "{TASTE_SCHEMA}"'
        raise FieldError("schema", got=report.get("schema"), wanted=wanted)
    names = list(report.get("qualities", ()))
    unknown = [name for name in QUALITIES if name not in names]
    if unknown:
        wanted = "export the taste again with this version"
        raise FieldError("qualities", got=f"without {', '.join(unknown)}", wanted=wanted)
    place = [names.index(name) for name in QUALITIES]
    return Taste(tuple(_choice(entry, place, len(names)) for entry in report.get("choices", ())))


def _choice(entry: Mapping[str, Any], place: Sequence[int], length: int) -> Choice:
    sides = []
    for side in ("better", "worse"):
        numbers = entry.get(side, ())
        if len(numbers) != length or not np.isfinite(np.array(numbers, dtype=np.float64)).all():
            raise FieldError(f"choices, {side}", got=numbers, wanted=f"give {length} numbers")
        sides.append(tuple(float(numbers[index]) for index in place))
    return Choice(sides[0], sides[1], str(entry.get("note", "")))


def _held_back(gaps: Float64Array, house: Rule) -> float:
    """Return the share of choices foretold by weights learned without them."""
    fold = np.arange(len(gaps)) % FOLDS
    right = [
        _right(gaps[fold == part], _fitted(gaps[fold != part], house)) for part in range(FOLDS)
    ]
    return float(np.concatenate(right).mean())


def _foretold(gaps: Float64Array, weights: Float64Array) -> float:
    return float(_right(gaps, weights).mean())


def _right(gaps: Float64Array, weights: Float64Array) -> Float64Array:
    """Return 1 for each choice foretold, 0.5 where the two are level."""
    lead = gaps @ weights
    return np.where(np.abs(lead) < 1e-9, 0.5, (lead > 0).astype(np.float64))


def _fitted(gaps: Float64Array, house: Rule) -> Float64Array:
    """Return bounded weights: the house's, moved as the choices ask.

    The house's own merit is one more column whose factor is all but free, so that what is
    regularised is only how far the weights move away from it.
    """
    from sklearn.linear_model import LogisticRegression

    start = _weights(house)
    table = np.column_stack([gaps, HOUSE_COUNTS * (gaps @ start)])
    both = np.concatenate([table, -table])
    wins = np.repeat([1, 0], len(table))
    model = LogisticRegression(C=REGULARISATION, fit_intercept=False, max_iter=1000)
    factors = model.fit(both, wins).coef_[0]
    trust = max(float(factors[-1]) * HOUSE_COUNTS, 0.2)
    return _bounded(start + factors[:-1] / trust, start)


def _bounded(weights: Float64Array, start: Float64Array) -> Float64Array:
    """Return weights within the bounds; no weight changes its sign."""
    reach = np.maximum(MOVES_AT_MOST * np.abs(start), SMALLEST_MOVE)
    held = np.clip(weights, start - reach, start + reach)
    return np.where(start >= 0, np.maximum(held, 0.0), np.minimum(held, 0.0))


def _weights(rule: Rule) -> Float64Array:
    return np.array([getattr(rule.weights, name) for name in QUALITIES])


def _named(weights: Float64Array) -> dict[str, float]:
    return {name: float(weight) for name, weight in zip(QUALITIES, weights, strict=True)}
