"""How well a planted taste is recovered, and what it costs beside ranking, in the same run.

Run with ``python -m pytest tests/benchmarks/bench_taste.py -s``. A planted framer weighs some
qualities otherwise than the house rule does and is not quite sure; the program asks them its own
questions on ten pictures, and what was learned foretells their choices on eight others.
"""

from time import process_time

import pytest

from framing_palette.ranking import (
    HOUSE_RULE,
    Taste,
    Work,
    choices_from_work,
    fit_taste,
    judged_by,
    next_question,
    ranking,
)
from framing_palette.ranking.taste import weights_of
from tests.benchmarks.bench_ranking import _rack
from tests.ranking.taste_by_hand import framer, pictures, rankings, shop
from tests.ranking.test_taste import DARK_AND_MUTED, foretold, taught

FRAMERS = {
    "dark and muted": DARK_AND_MUTED,
    "loves strong colour": {"vivid": 1.0, "depth": -2.0},
    "plain neutrals": {"foil": 5.0, "kin": 1.0, "vivid": -6.0},
}


def _seconds(action, rounds: int = 5) -> float:
    best = float("inf")
    for _ in range(rounds):
        start = process_time()
        action()
        best = min(best, process_time() - start)
    return best


@pytest.mark.parametrize("name", FRAMERS)
def test_a_planted_taste_is_recovered(name):
    shortlists, sure = rankings(18), framer(FRAMERS[name])
    house = foretold(weights_of(HOUSE_RULE), sure, shortlists[10:], 400)
    for count in (20, 40, 80):
        shares, used = [], 0
        for seed in range(5):
            fit = fit_taste(
                taught(framer(FRAMERS[name], noise=0.2, seed=seed), shortlists[:10], count)
            )
            used += fit.in_use
            shares.append(foretold(weights_of(fit.rule), sure, shortlists[10:], 400))
        mean = sum(shares) / len(shares)
        print(
            f"\n{name}, {count} choices: in use {used} of 5, foretells {mean:.1%}, house {house:.1%}"
        )
        assert mean >= house - 0.01


def test_a_shop_without_a_taste_of_its_own_seldom_leaves_the_house_rule():
    shortlists = rankings(18)
    fits = [
        fit_taste(taught(framer({}, noise=1.0, seed=seed), shortlists[:10], 40))
        for seed in range(20)
    ]
    used = [fit for fit in fits if fit.in_use]
    kept = [foretold(weights_of(fit.rule), framer({}), shortlists[10:], 300) for fit in used]
    print(
        f"\nunsure framers of the house taste: own rule in use {len(used)} of {len(fits)}, ", end=""
    )
    print("then agreeing with the house in", [f"{share:.0%}" for share in kept])
    assert len(used) <= 5


def test_taste_costs_little_beside_ranking():
    rack, found = _rack(10_000), pictures(1)[0]
    ranked = ranking(found, rack)
    reference = _seconds(lambda: ranking(found, rack))
    mats = [line.sample.code for line in ranked[:70]]
    work = Work(kept=tuple(mats[:4]), away=tuple(mats[4:64]))
    rule = fit_taste(shop(200, weights={"vivid": 0.0, "depth": -2.0, "foil": 0.2})).rule
    taste = shop(200)
    print(f"\nranking 10,000 samples {reference * 1000:.0f} ms of processor time")
    for name, action, most in (
        ("one question", lambda: next_question(ranked, taste, picture="p"), 2.0),
        ("counting 4 kept, 60 sent away", lambda: choices_from_work(ranked, work), 0.5),
        ("the order of another rule", lambda: judged_by(ranked, rule), 0.5),
        ("learning from 200 choices", lambda: fit_taste(taste), 40.0),
        ("learning from 3,000", lambda: fit_taste(Taste(shop(3000).choices)), 100.0),
    ):
        spent = _seconds(action, 2)
        print(f"{name}: {spent * 1000:.1f} ms, {spent / reference:.2f} times the ranking")
        assert spent <= most * reference
