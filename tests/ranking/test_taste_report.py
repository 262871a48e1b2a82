"""A taste goes out and comes back; what is damaged is left out and told of."""

import json
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.errors import FieldError
from framing_palette.ranking import (
    HOUSE_RULE,
    Choice,
    Taste,
    fit_taste,
    taste_from_report,
    taste_report,
)
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.taste import MOVES_AT_MOST, SMALLEST_MOVE
from framing_palette.ranking.taste_report import usable_taste
from tests.ranking.taste_by_hand import shop

VIVID_LOVERS = {"vivid": 0.0, "depth": -2.0, "foil": 0.2}


@cache
def whole_taste() -> Taste:
    taste = shop(120, weights=VIVID_LOVERS)
    named = Choice(*[(v,) * len(QUALITIES) for v in (0.2, 0.1)], "p9", ("A", "B"), ("C",))
    taste = taste.with_choices(named).with_passed(("p9", frozenset({("A",), ("D",)})))
    return Taste(taste.choices, taste.passed, fit_taste(taste))


def damaged(**changes: object) -> dict[str, object]:
    return {**json.loads(json.dumps(taste_report(whole_taste()))), **changes}


def test_an_exported_taste_comes_back_equal():
    taste = whole_taste()
    assert taste.learned is not None
    assert taste.learned.in_use
    assert taste_from_report(json.loads(json.dumps(taste_report(taste)))) == taste


def test_an_exported_taste_with_its_qualities_in_another_order_comes_back_equal():
    report = taste_report(shop(3))
    turned = {
        **report,
        "qualities": report["qualities"][::-1],
        "choices": [
            {**c, "better": c["better"][::-1], "worse": c["worse"][::-1]} for c in report["choices"]
        ],
    }
    assert taste_from_report(turned) == shop(3)


def test_a_quality_that_the_report_does_not_know_is_level():
    report = taste_report(shop(3))
    shorter = {
        **report,
        "qualities": report["qualities"][1:],
        "choices": [
            {**c, "better": c["better"][1:], "worse": c["worse"][1:]} for c in report["choices"]
        ],
    }
    for choice in taste_from_report(shorter).choices:
        assert choice.better[0] == choice.worse[0] == 0.0


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"schema": "something else"}, "schema"),
        ({"schema": ["a"] * 999}, "schema"),
        ({"qualities": ["echo"]}, "qualities"),
        ({"qualities": 7}, "qualities"),
        ({"choices": [{"better": [1.0], "worse": [0.0]}]}, "choices, number 1, better"),
        ({"choices": {"a": 1}}, "choices"),
        ({"choices": ["x"]}, "choices, number 1, entry"),
        ({"passed": [{"picture": "p", "looks": [["A"]]}]}, "passed, number 1, looks"),
        ({"passed": [{"picture": 3, "looks": [["A"], ["B"]]}]}, "passed, number 1, picture"),
        ({"learned": {"rests_on": -1, "pictures": 1}}, "learned"),
        ({"learned": {"rests_on": 1.5, "pictures": 1}}, "learned"),
        ({"learned": [1]}, "learned"),
        ({"learned": {"rests_on": 9, "pictures": 1, "foretold": 2}}, "learned, foretold"),
    ],
)
def test_a_report_that_cannot_be_used_is_refused_with_its_field(changes, said):
    with pytest.raises(FieldError, match=said):
        taste_from_report(damaged(**changes))


@pytest.mark.parametrize(
    ("side", "value"),
    [
        ("better", float("nan")),
        ("better", True),
        ("worse", "0.5"),
        ("worse", 10**400),
        ("worse", None),
    ],
)
def test_one_damaged_choice_is_left_out_and_told_of_and_the_others_load(side, value):
    report = damaged()
    report["choices"][2][side][4] = value
    taste, faults = usable_taste(report)
    kept = whole_taste().choices
    assert taste.choices == kept[:2] + kept[3:]
    assert [fault.field for fault in faults] == [f"choices, number 3, {side}"]


def test_codes_that_are_the_same_on_both_sides_or_too_many_are_left_out():
    report = damaged()
    report["choices"][-1]["worse_codes"] = ["A", "B"]
    report["choices"][0]["better_codes"] = ["A"] * 99
    report["choices"][1]["picture"] = "x" * 999
    taste, faults = usable_taste(report)
    assert len(taste.choices) == len(whole_taste().choices) - 3
    assert len(faults) == 3


def test_learned_weights_from_outside_are_held_within_their_bounds():
    report = damaged()
    report["learned"]["weights"] = dict.fromkeys(QUALITIES, 900.0)
    learned = taste_from_report(report).learned
    for name in QUALITIES:
        house, own = getattr(HOUSE_RULE.weights, name), getattr(learned.rule.weights, name)
        assert abs(own - house) <= max(MOVES_AT_MOST * abs(house), SMALLEST_MOVE) + 1e-9
        assert own * house >= 0


def test_weights_learned_against_another_house_rule_are_not_used():
    report = damaged()
    report["learned"]["house"]["echo"] = 1.0
    taste, faults = usable_taste(report)
    assert taste.learned is None
    assert taste.choices == whole_taste().choices
    assert "learn again" in str(faults[0])


def test_a_taste_learned_before_there_was_enough_comes_back():
    taste = Taste(shop(3).choices, (), fit_taste(shop(3)))
    assert taste_from_report(taste_report(taste)) == taste


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@given(
    st.dictionaries(
        st.sampled_from(["schema", "qualities", "choices", "passed", "learned"]), json_values
    )
)
@settings(max_examples=40, deadline=None)
def test_any_damage_is_refused_or_left_out_but_never_a_defect(changes):
    try:
        taste, _faults = usable_taste(damaged(**changes))
    except FieldError as error:
        assert error.field in ("schema", "qualities")
    else:
        assert all(len(choice.better) == len(QUALITIES) for choice in taste.choices)
