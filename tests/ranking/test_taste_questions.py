"""Questions tell something, and none is asked twice."""

import numpy as np

from framing_palette.catalogue import Kind
from framing_palette.ranking import Taste, choice_between, next_question, ranking
from framing_palette.ranking.taste import weights_of
from framing_palette.ranking.taste_choices import qualities_at
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample
from tests.ranking.taste_by_hand import rankings

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])


def test_a_question_is_near_in_score_and_different_in_qualities():
    for ranked in rankings(4):
        one, two = next_question(ranked, Taste(), picture="p")
        rows = [ranked.row(one), ranked.row(two)]
        gap = np.subtract(*qualities_at(ranked, rows))
        pool = ranked.order[:40]
        every = qualities_at(ranked, pool)
        first, second = np.triu_indices(len(pool), 1)
        leads = np.abs((every[first] - every[second]) @ weights_of(ranked.rule))
        sizes = np.linalg.norm(every[first] - every[second], axis=1)
        assert abs(gap @ weights_of(ranked.rule)) <= np.percentile(leads, 40)
        assert np.linalg.norm(gap) >= np.percentile(sizes, 60)


def test_no_pair_is_asked_twice_until_there_is_none_left():
    rack = [sample(f"S{n}", lch(30 + 6 * n, 6 + n, 240)) for n in range(5)]
    ranked = ranking(SEA_FINDINGS, rack)
    good = int((~ranked.judgement.clash).sum())
    taste, asked = Taste(), []
    while (question := next_question(ranked, taste, picture="sea")) is not None:
        asked.append(frozenset(question))
        if len(asked) % 2:
            taste = taste.with_choices(choice_between(ranked, *question, picture="sea"))
        else:
            pair = frozenset((code,) for code in question)
            taste = taste.with_passed(("sea", pair))
    assert len(set(asked)) == len(asked) == good * (good - 1) // 2


def test_questions_go_round_the_rack_instead_of_staying_with_one_sample():
    ranked = rankings(1)[0]
    taste, seen = Taste(), []
    for _ in range(10):
        question = next_question(ranked, taste, picture="p")
        seen += question
        taste = taste.with_choices(choice_between(ranked, *question, picture="p"))
    assert max(seen.count(code) for code in seen) <= 4


def test_a_clash_or_a_sample_sent_away_is_not_asked_about():
    rack = [
        sample("QUIET", lch(45, 16, 240)),
        sample("GREY", lch(60, 3, 240)),
        sample("LIME", lch(85, 95, 110)),
        sample("AWAY", lch(50, 12, 230)),
    ]
    ranked = ranking(SEA_FINDINGS, rack)
    assert ranked.judgement.clash[ranked.row("LIME")]
    question = next_question(ranked, Taste(), picture="sea", left_out=frozenset({"AWAY"}))
    assert set(question) == {"QUIET", "GREY"}


def test_two_kinds_are_never_asked_about_together():
    rack = [
        sample("MAT", lch(45, 16, 240)),
        sample("ROD", lch(60, 3, 240), kind=Kind.MOULDING),
        sample("BAR", lch(40, 5, 240), kind=Kind.MOULDING),
    ]
    ranked = ranking(SEA_FINDINGS, rack)
    assert set(next_question(ranked, Taste(), picture="sea")) == {"ROD", "BAR"}
    assert next_question(ranked, Taste(), picture="sea", kind=Kind.MAT) is None


def test_the_same_shelf_asks_the_same_question():
    first, second = rankings(1)[0], rankings(1)[0]
    asked = [next_question(ranked, Taste(), picture="p") for ranked in (first, second)]
    assert asked[0] == asked[1]
