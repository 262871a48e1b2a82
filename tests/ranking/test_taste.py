"""Taste: choices move the weights, within bounds, and never from one click."""

import json

import numpy as np
import pytest

from framing_palette.errors import FieldError, UnknownSampleError
from framing_palette.ranking import (
    HOUSE_RULE,
    Choice,
    Taste,
    choice_between,
    choices_from_work,
    fit_taste,
    ranking,
    taste_from_report,
    taste_report,
)
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.taste import FEWEST_CHOICES, MOVES_AT_MOST, SMALLEST_MOVE
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])
RACK = [sample(f"S{n}", lch(20 + 7 * n, 5 * n, 37 * n)) for n in range(10)]


def _shop(count, *, weights=None, seed=0):
    """Choices of a shop that follows its own weights without fail."""
    rng = np.random.default_rng(seed)
    own = np.array([getattr(HOUSE_RULE.weights, name) for name in QUALITIES])
    for name, weight in (weights or {}).items():
        own[QUALITIES.index(name)] = weight
    choices = []
    for _ in range(count):
        one, two = rng.uniform(0, 1, (2, len(QUALITIES)))
        better, worse = (one, two) if (one - two) @ own > 0 else (two, one)
        choices.append(Choice(tuple(better.tolist()), tuple(worse.tolist())))
    return Taste(tuple(choices))


VIVID_LOVERS = {"vivid": 0.0, "depth": -2.0, "foil": 0.2}


def test_one_click_changes_nothing():
    fit = fit_taste(_shop(1, weights=VIVID_LOVERS))
    assert fit.rule == HOUSE_RULE
    assert not fit.in_use
    assert f"1 of {FEWEST_CHOICES}" in fit.words


def test_many_choices_of_another_taste_move_the_weights_toward_it():
    fit = fit_taste(_shop(200, weights=VIVID_LOVERS))
    assert fit.in_use
    assert fit.rule.weights.vivid > HOUSE_RULE.weights.vivid
    assert fit.rule.weights.foil < HOUSE_RULE.weights.foil


def test_the_own_rule_foretells_held_back_choices_better_than_the_house_rule():
    fit = fit_taste(_shop(200, weights=VIVID_LOVERS))
    assert fit.foretold > fit.house_foretold
    assert fit.rests_on == 200


def test_a_shop_of_the_house_taste_keeps_the_house_rule():
    fit = fit_taste(_shop(120))
    assert fit.rule == HOUSE_RULE
    assert fit.house_foretold == 1.0


def test_choices_at_random_do_not_beat_the_house_rule_by_much():
    rng = np.random.default_rng(4)
    flips = rng.uniform(size=60) < 0.5
    mixed = [
        Choice(c.worse, c.better) if flip else c
        for c, flip in zip(_shop(60).choices, flips, strict=True)
    ]
    fit = fit_taste(Taste(tuple(mixed)))
    assert fit.foretold <= 0.7


def test_no_weight_moves_past_its_bounds_or_changes_its_sign():
    fit = fit_taste(_shop(300, weights=dict.fromkeys(QUALITIES[:6], 0.0)))
    for name in QUALITIES:
        house, own = getattr(HOUSE_RULE.weights, name), getattr(fit.rule.weights, name)
        assert abs(own - house) <= max(MOVES_AT_MOST * abs(house), SMALLEST_MOVE) + 1e-9
        assert own * house >= 0


def test_what_moved_is_told_against_the_house_rule():
    moved = fit_taste(_shop(200, weights=VIVID_LOVERS)).moved()
    assert moved["vivid"][0] == HOUSE_RULE.weights.vivid
    assert moved["vivid"][1] > moved["vivid"][0]


def test_accepted_and_rejected_samples_become_paired_choices():
    ranked = ranking(SEA_FINDINGS, RACK)
    choices = choices_from_work(ranked, ["S1", "S2"], ["S5", "S6", "S1"], note="job 7")
    assert len(choices) == 5
    assert choices[0] == choice_between(ranked, "S1", "S5", note="job 7")
    assert choices[0].note == "job 7"


def test_a_choice_of_an_unknown_code_is_refused():
    with pytest.raises(UnknownSampleError, match="S99"):
        choice_between(ranking(SEA_FINDINGS, RACK), "S99", "S1")


def test_an_exported_taste_comes_back_equal():
    taste = _shop(20)
    text = json.dumps(taste_report(taste))
    assert taste_from_report(json.loads(text)) == taste


def test_an_exported_taste_with_its_qualities_in_another_order_comes_back_equal():
    report = taste_report(_shop(3))
    turned = {
        "schema": report["schema"],
        "qualities": report["qualities"][::-1],
        "choices": [
            {"better": c["better"][::-1], "worse": c["worse"][::-1]} for c in report["choices"]
        ],
    }
    assert taste_from_report(turned) == _shop(3)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"schema": "something else"}, "schema"),
        ({"qualities": ["echo"]}, "qualities"),
        ({"choices": [{"better": [1.0], "worse": [0.0]}]}, "choices"),
    ],
)
def test_a_report_that_cannot_be_used_is_refused_with_its_field(change, said):
    with pytest.raises(FieldError, match=said):
        taste_from_report({**taste_report(_shop(2)), **change})


def test_a_shop_can_go_back_to_the_house_rule():
    assert fit_taste(Taste()).rule == HOUSE_RULE


def test_choices_are_added_without_losing_the_old_ones():
    taste = _shop(2).with_choices(*_shop(3, seed=1).choices)
    assert len(taste.choices) == 5
    assert taste.choices[:2] == _shop(2).choices
