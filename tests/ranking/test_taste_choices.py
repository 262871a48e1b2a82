"""What was done on a picture becomes paired choices, each pair once."""

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.errors import UnknownSampleError
from framing_palette.ranking import Answer, Work, choice_between, choices_from_work, ranking
from framing_palette.ranking.judging import QUALITIES, qualities
from framing_palette.ranking.taste_choices import PAIRS_OF_ONE, picture_mark, qualities_at
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])
RACK = [sample(f"S{n}", lch(20 + 7 * n, 5 * n, 37 * n)) for n in range(10)]
RACK += [sample(f"M{n}", lch(15 + 20 * n, 8, 60), kind=Kind.MOULDING) for n in range(3)]
RANKED = ranking(SEA_FINDINGS, RACK)


def pairs(work: Work) -> list[tuple[tuple[str, ...], tuple[str, ...]]]:
    made = choices_from_work(RANKED, work, picture="sea")
    return [(choice.better_codes, choice.worse_codes) for choice in made]


def test_qualities_of_some_rows_are_those_of_the_whole_table():
    whole = qualities(RANKED.measures, RANKED.rule)
    assert np.array_equal(qualities_at(RANKED, [3, 0]), whole[[3, 0]])


def test_a_choice_holds_the_measures_of_both_and_which_they_were():
    choice = choice_between(RANKED, "S1", "S5", picture="sea")
    whole = qualities(RANKED.measures, RANKED.rule)
    assert choice.better == pytest.approx(whole[1], abs=5e-5)
    assert choice.worse == pytest.approx(whole[5], abs=5e-5)
    assert (choice.better_codes, choice.worse_codes) == (("S1",), ("S5",))
    assert choice.picture == "sea"
    assert len(choice.better) == len(QUALITIES)


def test_a_choice_of_an_unknown_code_is_refused():
    with pytest.raises(UnknownSampleError, match="S99"):
        choice_between(RANKED, "S99", "S1")


def test_a_design_has_the_mean_of_its_layers():
    choice = choice_between(RANKED, ("S1", "M0"), ("S2",))
    both = qualities_at(RANKED, [RANKED.row("S1"), RANKED.row("M0")])
    assert choice.better == pytest.approx(both.mean(axis=0), abs=5e-5)


def test_a_kept_sample_is_preferred_to_those_of_its_kind_that_were_sent_away():
    made = pairs(Work(kept=("S1", "M0"), away=("S5", "M1", "S6")))
    assert made == [(("S1",), ("S5",)), (("M0",), ("M1",)), (("S1",), ("S6",))]


def test_a_sample_sent_away_counts_against_the_kept_ones_nearest_in_merit_only():
    made = pairs(Work(kept=("S1", "S2", "S3", "S4"), away=("S6",)))
    merit = RANKED.judgement.merit
    gaps = {code: abs(merit[RANKED.row(code)] - merit[6]) for code in ("S1", "S2", "S3", "S4")}
    nearest = sorted(gaps, key=lambda code: gaps[code])[:PAIRS_OF_ONE]
    assert [better[0] for better, _ in made] == nearest


def test_the_agreed_samples_are_preferred_to_those_kept_beside_them():
    made = pairs(Work(kept=("S1", "S2", "M0"), agreed=("S2", "M1")))
    assert made == [(("S2",), ("S1",)), (("M1",), ("M0",))]


def test_an_answer_stands_over_what_the_work_seems_to_say():
    made = pairs(Work(kept=("S1",), away=("S5",), answers=(Answer(("S5",), ("S1",)),)))
    assert made == [(("S5",), ("S1",))]


def test_a_pair_left_undecided_is_no_choice():
    assert pairs(Work(answers=(Answer(("S1",), ("S2",), is_open=True),))) == []


def test_samples_that_are_not_ranked_are_left_out():
    answered = (Answer(("S1",), ("GONE",)),)
    assert pairs(Work(kept=("S1", "GONE"), away=("LOST",), answers=answered)) == []


def test_nothing_done_is_no_choice():
    assert pairs(Work()) == []


def test_the_mark_of_a_picture_tells_nothing_of_what_it_is_made_of():
    mark = picture_mark("Client's name", "260115-100000")
    assert mark == picture_mark("Client's name", "260115-100000")
    assert mark != picture_mark("Client's name260115-100000")
    assert len(mark) == 12
    assert int(mark, 16) >= 0
