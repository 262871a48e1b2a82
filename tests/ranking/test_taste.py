"""Taste: choices move the weights, within bounds, and never from one click."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.ranking import (
    HOUSE_RULE,
    Choice,
    Ranking,
    Taste,
    choice_between,
    fit_taste,
    next_question,
)
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.taste import (
    FEWEST_CHOICES,
    MOST_CHOICES,
    MOVES_AT_MOST,
    SMALLEST_MOVE,
    bounded,
    weights_of,
)
from framing_palette.ranking.taste_choices import qualities_at
from tests.ranking.taste_by_hand import Framer, framer, rankings, shop

VIVID_LOVERS = {"vivid": 0.0, "depth": -2.0, "foil": 0.2}
DARK_AND_MUTED = {"depth": 4.0, "vivid": -6.0, "bright": -3.0}


def taught(prefers: Framer, shortlists: list[Ranking], count: int) -> Taste:
    """A framer answers the questions that the program asks."""
    taste = Taste()
    for number in range(count):
        at = number % len(shortlists)
        question = next_question(shortlists[at], taste, picture=str(at))
        assert question is not None
        better, worse = prefers(shortlists[at], *question)
        made = choice_between(shortlists[at], better, worse, picture=str(at))
        taste = taste.with_choices(made)
    return taste


def foretold(weights: np.ndarray, prefers: Framer, shortlists: list[Ranking], count: int) -> float:
    """Share of choices between any two of a shortlist's first half that weights foretell."""
    rng = np.random.default_rng(1)
    hits = 0
    for number in range(count):
        ranked = shortlists[number % len(shortlists)]
        one, two = (
            ranked.columns.sample(int(row)).code
            for row in rng.choice(ranked.order[: len(ranked) // 2], 2, replace=False)
        )
        better, worse = prefers(ranked, one, two)
        merit = qualities_at(ranked, [ranked.row(better), ranked.row(worse)]) @ weights
        hits += bool(merit[0] > merit[1])
    return hits / count


def test_one_click_changes_nothing():
    fit = fit_taste(shop(1, weights=VIVID_LOVERS))
    assert fit.rule == HOUSE_RULE
    assert not fit.in_use
    assert f"1 of {FEWEST_CHOICES}" in fit.words


def test_a_framer_who_prefers_dark_and_muted_is_recovered_from_forty_choices():
    """Three such framers, none of them quite sure; one may look like chance."""
    shortlists, unseen = rankings(18), framer(DARK_AND_MUTED)
    house = foretold(weights_of(HOUSE_RULE), unseen, shortlists[10:], 300)
    recovered = 0
    for seed in range(3):
        prefers = framer(DARK_AND_MUTED, noise=0.2, seed=seed)
        fit = fit_taste(taught(prefers, shortlists[:10], 40))
        assert (fit.rests_on, fit.pictures) == (40, 10)
        if not fit.in_use:
            continue
        recovered += 1
        assert fit.rule.weights.depth > HOUSE_RULE.weights.depth + 0.3
        assert fit.rule.weights.bright < HOUSE_RULE.weights.bright
        own = foretold(weights_of(fit.rule), unseen, shortlists[10:], 300)
        assert own >= 0.85
        assert 1.0 - own <= 0.75 * (1.0 - house)
    assert recovered >= 2


def test_a_framer_of_the_house_taste_keeps_the_house_rule():
    fit = fit_taste(taught(framer({}), rankings(8), 40))
    assert fit.rule == HOUSE_RULE
    assert fit.house_foretold >= 0.95  # measures are kept rounded: a tie may fall either way
    assert "the house rule stays in use" in fit.words


def test_many_choices_of_another_taste_move_the_weights_toward_it():
    fit = fit_taste(shop(200, weights=VIVID_LOVERS))
    assert fit.in_use
    assert fit.rule.weights.vivid > HOUSE_RULE.weights.vivid
    assert fit.rule.weights.foil < HOUSE_RULE.weights.foil


def test_the_own_rule_foretells_held_back_choices_better_than_the_house_rule():
    fit = fit_taste(shop(200, weights=VIVID_LOVERS))
    assert fit.foretold > fit.house_foretold
    assert fit.rests_on == 200
    assert "200 choices on 8 pictures" in fit.words


def test_choices_at_random_seldom_put_a_rule_in_use():
    rng = np.random.default_rng(4)
    used = 0
    for seed in range(4):
        flips = rng.uniform(size=40) < 0.5
        mixed = [
            Choice(c.worse, c.better, c.picture) if flip else c
            for c, flip in zip(shop(40, seed=seed).choices, flips, strict=True)
        ]
        used += fit_taste(Taste(tuple(mixed))).in_use
    assert used <= 1


def test_choices_of_one_picture_are_held_back_together():
    """Each picture has one pair, many times over: seen in one fold, known in every other."""
    rng = np.random.default_rng(2)
    choices = []
    for number in range(10):
        one, two = (tuple(side) for side in rng.uniform(0, 1, (2, len(QUALITIES))).tolist())
        pair = (one, two) if rng.uniform() < 0.5 else (two, one)
        choices += [Choice(*pair, f"p{number}")] * 6
    apart = fit_taste(Taste(tuple(choices)))
    mixed = fit_taste(
        Taste(tuple(Choice(c.better, c.worse, f"q{i % 10}") for i, c in enumerate(choices)))
    )
    assert apart.foretold <= mixed.foretold - 0.1
    assert not apart.in_use


@given(st.integers(0, 10_000), st.sampled_from(QUALITIES), st.floats(-8, 8))
@settings(max_examples=4, deadline=None)
def test_no_weight_moves_past_its_bounds_or_changes_its_sign(seed, name, want):
    fit = fit_taste(shop(60, weights={name: want}, seed=seed))
    for quality in QUALITIES:
        house, own = getattr(HOUSE_RULE.weights, quality), getattr(fit.rule.weights, quality)
        assert abs(own - house) <= max(MOVES_AT_MOST * abs(house), SMALLEST_MOVE) + 1e-9
        assert own * house >= 0


def test_weights_out_of_bounds_are_brought_to_the_nearest_bound():
    start = weights_of(HOUSE_RULE)
    assert bounded(start, start) == pytest.approx(start)
    far = bounded(start + 100.0, start)
    assert far[QUALITIES.index("depth")] == pytest.approx(HOUSE_RULE.weights.depth + SMALLEST_MOVE)
    assert far[QUALITIES.index("bright")] == 0.0


def test_what_moved_is_told_against_the_house_rule():
    moved = fit_taste(shop(200, weights=VIVID_LOVERS)).moved()
    assert moved["vivid"][0] == HOUSE_RULE.weights.vivid
    assert moved["vivid"][1] > moved["vivid"][0]


def test_a_shop_can_go_back_to_the_house_rule():
    assert fit_taste(Taste()).rule == HOUSE_RULE


def test_choices_are_added_without_losing_the_old_ones():
    taste = shop(2).with_choices(*shop(3, seed=1).choices)
    assert len(taste.choices) == 5
    assert taste.choices[:2] == shop(2).choices


def test_a_later_choice_on_the_same_pair_of_a_picture_replaces_the_earlier():
    low, high = (0.0,) * len(QUALITIES), (1.0,) * len(QUALITIES)
    first = Choice(high, low, "sea", ("A",), ("B",))
    second = Choice(low, high, "sea", ("B",), ("A",))
    elsewhere = Choice(high, low, "land", ("A",), ("B",))
    taste = Taste().with_choices(first, elsewhere).with_choices(second)
    assert taste.choices == (elsewhere, second)
    assert Taste().with_choices(first, second).choices == (second,)


def test_no_more_choices_are_kept_than_the_file_is_to_hold():
    many = shop(MOST_CHOICES + 5).choices
    assert Taste().with_choices(*many).choices == many[5:]


def test_a_pair_left_undecided_is_remembered_once():
    pair = ("sea", frozenset({("A",), ("B",)}))
    taste = Taste().with_passed(pair).with_passed(pair)
    assert taste.passed == (pair,)
    assert taste.pairs_of("sea") == {pair[1]}
    assert taste.pairs_of("land") == frozenset()


def test_choices_on_one_picture_alone_are_each_held_back_for_themselves():
    fit = fit_taste(shop(200, weights=VIVID_LOVERS, on=1))
    assert fit.pictures == 1
    assert fit.in_use
    assert "on 1 picture:" in fit.words
