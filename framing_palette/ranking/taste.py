"""Taste: a shop teaches the rule its own by what it accepts, rejects and compares.

Every comparison says that one sample suited a picture better than another. A regularised
Bradley-Terry model (a logistic regression on the difference of the two samples' qualities) finds
weights that would have foretold the choices. It starts from the house rule, may move each weight
only so far, is asked to foretell choices that it has not seen, and changes nothing until it rests
on enough of them. Verdicts hang on limits, not on weights: taste moves samples within a verdict
and never makes a clash of a complement.

References
----------
Bradley, Terry 1952, Rank analysis of incomplete block designs: I. The method of paired
comparisons, Biometrika 39(3/4):324-345.
"""

from collections import Counter
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.ramps import sigmoid
from framing_palette.ranking.rule import HOUSE_RULE, Rule

FEWEST_CHOICES = 12  # fewer change nothing: nobody learns a taste from one click
FOLDS = 5
MOVES_AT_MOST = 0.6  # part of its house value that a weight may move
SMALLEST_MOVE = 1.0  # and what even a small weight may move
PRIOR = 0.5  # of its reach that a weight is expected to stray: smaller holds closer to the house
UNPENALISED = 1e6  # scikit-learn's C, when the house rule's own choices hold the weights already
SURE_BY = 1.28  # standard deviations of chance by which the own rule must lead: 9 times in 10
MOST_CHOICES = 3000  # the oldest go first

Codes = tuple[str, ...]
"""A sample's code, or the codes of a design's layers from the art outward."""
PairKey = tuple[str, frozenset[Codes]]
"""Which picture, and which two looks, whatever came of it."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One look preferred to another for one picture, by their qualities.

    Parameters
    ----------
    better, worse
        Qualities of the two in the order of ``QUALITIES``: what the weights multiply, measured
        against the picture, which is all that learning needs.
    picture
        A mark of the picture that names nobody; choices on one picture are held back together.
    better_codes, worse_codes
        Which samples they were.
    """

    better: tuple[float, ...]
    worse: tuple[float, ...]
    picture: str = ""
    better_codes: Codes = ()
    worse_codes: Codes = ()

    @property
    def key(self) -> PairKey:
        """Which pair it is about."""
        return self.picture, frozenset((self.better_codes, self.worse_codes))


@dataclass(frozen=True, slots=True)
class TasteFit:
    """What was learned.

    Parameters
    ----------
    rule
        The rule to use: the house rule until there is enough to go on.
    rests_on, pictures
        How many choices it rests on, and how many pictures they were made on.
    foretold, house_foretold
        Share of held-back choices that the shop's own and the house rule foretell; None before
        there are enough choices.
    in_use
        Whether the rule differs from the house rule.
    """

    rule: Rule
    rests_on: int
    pictures: int
    foretold: float | None
    house_foretold: float | None
    in_use: bool

    @property
    def words(self) -> str:
        """What was learned and how far to trust it, for people."""
        if self.foretold is None or self.house_foretold is None:
            return f"{self.rests_on} of {FEWEST_CHOICES} choices made: the house rule stays in use."
        rests = f"From {_count(self.rests_on, 'choice')} on {_count(self.pictures, 'picture')}"
        own, house = f"{self.foretold * 100:.0f}\u00a0%", f"{self.house_foretold * 100:.0f}\u00a0%"
        if self.in_use:
            return f"{rests}: foretells {own} of held-back ones, the house rule {house}."
        return (
            f"{rests}: own weights foretell {own} of held-back ones, the house rule {house}; that "
            "may be chance, so the house rule stays in use."
        )

    def moved(self, house: Rule = HOUSE_RULE) -> dict[str, tuple[float, float]]:
        """Return each weight as (house, own), where they differ."""
        pairs = {
            name: (getattr(house.weights, name), getattr(self.rule.weights, name))
            for name in QUALITIES
        }
        return {name: pair for name, pair in pairs.items() if abs(pair[0] - pair[1]) > 1e-9}


@dataclass(frozen=True, slots=True)
class Taste:
    """All choices that a shop has made, oldest first; a new value for each change.

    Parameters
    ----------
    choices
        What was preferred to what.
    passed
        Pairs that were asked about and left undecided; they are not asked about again.
    learned
        What was learned when the framer last asked for it; None before.
    """

    choices: tuple[Choice, ...] = ()
    passed: tuple[PairKey, ...] = ()
    learned: TasteFit | None = None

    def with_choices(self, *choices: Choice) -> "Taste":
        """Return the taste with more choices; a later one on the same pair replaces the earlier."""
        newest = {choice.key: choice for choice in choices if any(choice.key[1])}
        old = (choice for choice in self.choices if choice.key not in newest)
        new = (choice for choice in choices if newest.get(choice.key, choice) is choice)
        return replace(self, choices=(*old, *new)[-MOST_CHOICES:])

    def with_passed(self, *passed: PairKey) -> "Taste":
        """Return the taste with more pairs that were left undecided."""
        return replace(self, passed=tuple(dict.fromkeys((*self.passed, *passed)))[-MOST_CHOICES:])

    def pairs_of(self, picture: str) -> frozenset[frozenset[Codes]]:
        """Return which pairs were compared on a picture, decided or not."""
        keys = (*(choice.key for choice in self.choices), *self.passed)
        return frozenset(pair for marked, pair in keys if marked == picture)


def fit_taste(taste: Taste, house: Rule = HOUSE_RULE) -> TasteFit:
    """Return the rule that a shop's choices speak for, and how far to trust it.

    The house rule stays in use when there are too few choices, or when the learned weights do not
    foretell held-back choices better than it does by more than chance would.
    """
    count = len(taste.choices)
    pictures = len({choice.picture for choice in taste.choices})
    if count < FEWEST_CHOICES:
        return TasteFit(house, count, pictures, None, None, in_use=False)
    gaps = np.array([np.subtract(choice.better, choice.worse) for choice in taste.choices])
    groups = _groups(taste)
    own = _held_back(gaps, groups, house)
    at_home = _right(gaps, weights_of(house))
    shares = float(own.mean()), float(at_home.mean())
    # Choices on one picture are alike; they are one piece of evidence, not many.
    lead = np.bincount(groups, own - at_home)
    if lead.sum() <= SURE_BY * float(np.sqrt((lead**2).sum())):
        return TasteFit(house, count, pictures, *shares, in_use=False)
    rule = with_weights(house, _fitted(gaps, house))
    return TasteFit(rule, count, pictures, *shares, in_use=True)


def weights_of(rule: Rule) -> Float64Array:
    """Return the weights of a rule in the order of ``QUALITIES``."""
    return np.array([getattr(rule.weights, name) for name in QUALITIES])


def with_weights(house: Rule, weights: Float64Array) -> Rule:
    """Return the house rule with other weights, held within their bounds."""
    held = bounded(weights, weights_of(house))
    named = {name: float(weight) for name, weight in zip(QUALITIES, held, strict=True)}
    return replace(house, weights=replace(house.weights, **named))


def reach(start: Float64Array) -> Float64Array:
    """Return how far each weight may move from its house value."""
    return np.maximum(MOVES_AT_MOST * np.abs(start), SMALLEST_MOVE)


def bounded(weights: Float64Array, start: Float64Array) -> Float64Array:
    """Return weights within the bounds; no weight changes its sign."""
    held = np.clip(weights, start - reach(start), start + reach(start))
    return np.where(start >= 0, np.maximum(held, 0.0), np.minimum(held, 0.0))


def _groups(taste: Taste) -> NDArray[np.intp]:
    """Return which choices are evidence of one kind: those of a picture where there are several.

    Where most choices were made on one picture, leaving it out would leave nothing to learn from;
    then each stands for itself.
    """
    counts = Counter(choice.picture for choice in taste.choices)
    if max(counts.values()) > len(taste.choices) / 2:
        return np.arange(len(taste.choices))
    number = {picture: place for place, picture in enumerate(counts)}
    return np.array([number[choice.picture] for choice in taste.choices])


def _held_back(gaps: Float64Array, groups: NDArray[np.intp], house: Rule) -> Float64Array:
    """Return for each choice whether weights learned without its group foretell it.

    Groups are held back a few at once, so that each of ``FOLDS`` parts has about as many choices.
    """
    sizes = np.bincount(groups)
    fold_of = np.empty(len(sizes), dtype=np.intp)
    heaped = [0] * FOLDS
    for group in np.argsort(-sizes, kind="stable"):
        fold_of[group] = int(np.argmin(heaped))
        heaped[fold_of[group]] += int(sizes[group])
    folds, right = fold_of[groups], np.empty(len(gaps))
    for fold in np.unique(folds):
        out = folds == fold
        right[out] = _right(gaps[out], _fitted(gaps[~out], house))
    return right


def _right(gaps: Float64Array, weights: Float64Array) -> Float64Array:
    """Return 1 for each choice foretold, 0.5 where the two are level."""
    lead = gaps @ weights
    return np.where(np.abs(lead) < 1e-9, 0.5, (lead > 0).astype(np.float64))


def _fitted(gaps: Float64Array, house: Rule) -> Float64Array:
    """Return bounded weights: the house's, moved as the choices ask.

    Merit is a log-odds, so that a gap in merit is the log-odds of the choice. The house rule takes
    part as choices of its own, one for each quality: so many, and as sure, that they alone would
    give the house weights with ``PRIOR`` of their reach as standard deviation.
    """
    from sklearn.linear_model import LogisticRegression

    own, counts = _house_choices(house)
    wins, losses = sigmoid(own @ weights_of(house)), sigmoid(-(own @ weights_of(house)))
    table = np.concatenate([gaps, -gaps, own, own])
    won = np.repeat([1, 0, 1, 0], [len(gaps), len(gaps), len(own), len(own)])
    # Each choice stands in the table from both its sides.
    heard = np.concatenate([np.full(2 * len(gaps), 0.5), counts * wins, counts * losses])
    model = LogisticRegression(C=UNPENALISED, fit_intercept=False, max_iter=1000)
    factors = model.fit(table, won, sample_weight=heard).coef_[0]
    return bounded(factors, weights_of(house))


def _house_choices(house: Rule) -> tuple[Float64Array, Float64Array]:
    """Return one gap for each quality, and how many choices of the house rule each stands for."""
    start = weights_of(house)
    size = 1.0 / np.maximum(np.abs(start), 1.0)
    unsure = sigmoid(size * start) * sigmoid(-size * start)
    counts = 1.0 / ((PRIOR * reach(start) * size) ** 2 * unsure)
    return np.diag(size), counts


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"
