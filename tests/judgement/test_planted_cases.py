"""The samples that an experienced framer would pull from the wall win against their rivals."""

from collections import Counter
from functools import cache

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000_matrix
from framing_palette.ranking import columns_of, rank, ranking
from framing_palette.ranking.subjects import subject_of
from tests.judgement.cases import CASES, Case
from tests.judgement.pictures import FOCUS, reading
from tests.judgement.second_cases import (
    ACCENTS,
    FOLIAGE,
    GLITTER,
    NEAR_MISSES,
    SECOND_CASES,
    STRONG_AND_STRAY,
    TWO_MATCHES,
    WHITES,
)
from tests.judgement.second_pictures import second_reading

WANTED_RIGHT = 0.95
CLEAR_LEAD = 0.4  # of merit: the better one is preferred three times in five


@cache
def _won(case: Case) -> bool:
    read = reading if case in CASES else second_reading
    best = rank(read(case.picture), (case.rival, case.winner), draws=0)[0]
    return best.sample.code == case.winner.code


def test_there_are_at_least_sixty_cases_on_real_and_painted_pictures():
    real = sum(case.picture in FOCUS for case in CASES)
    assert len(CASES) >= 60
    assert real >= 30
    assert len(CASES) - real >= 30


def test_each_principle_of_choice_has_at_least_three_cases():
    counts = Counter(case.principle for case in CASES)
    assert min(counts[principle] for principle in range(1, 7)) >= 3, counts


def test_at_least_95_in_100_cases_are_judged_right():
    wrong = [str(case) for case in CASES if not _won(case)]
    assert len(wrong) <= (1 - WANTED_RIGHT) * len(CASES), wrong


@pytest.mark.parametrize("principle", range(1, 7))
def test_no_principle_is_broken_in_more_than_one_case_of_eight(principle):
    ours = [case for case in CASES if case.principle == principle]
    wrong = [str(case) for case in ours if not _won(case)]
    assert len(wrong) <= max(1, len(ours) // 8), wrong


def test_the_nearest_colour_alone_would_get_many_cases_wrong():
    """Else the cases would prove nothing about judgement."""
    right = []
    for case in CASES:
        columns = columns_of((case.winner, case.rival))
        nearest = np.asarray(
            delta_e_2000_matrix(columns.lab, subject_of(reading(case.picture)).target_lab)
        ).min(axis=1)
        winner, rival = columns.per_sample(nearest)
        right.append(winner < rival)
    assert np.mean(right) <= 0.85


FAMILIES = {
    "two matches, one loud": TWO_MATCHES,
    "glitter round a soft subject": GLITTER,
    "mottles against foliage": FOLIAGE,
    "whites": WHITES,
    "near misses": NEAR_MISSES,
    "accents against areas": ACCENTS,
    "strong and stray": STRONG_AND_STRAY,
}


def test_at_least_95_in_100_of_the_second_set_are_judged_right():
    wrong = [str(case) for case in SECOND_CASES if not _won(case)]
    assert len(SECOND_CASES) >= 80
    assert len(wrong) <= (1 - WANTED_RIGHT) * len(SECOND_CASES), wrong


@pytest.mark.parametrize("family", FAMILIES)
def test_each_family_has_three_pictures_of_its_own_and_at_most_one_order_in_ten_wrong(family):
    cases = FAMILIES[family]
    wrong = [str(case) for case in cases if not _won(case)]
    assert len({case.picture for case in cases}) >= 3
    assert len(wrong) <= len(cases) // 10, wrong


def _lead(case: Case) -> float:
    read = reading if case in CASES else second_reading
    merit = ranking(read(case.picture), (case.winner, case.rival)).judgement.merit
    return float(merit[0] - merit[1])


def test_a_small_accent_repeated_beats_a_large_grey_area_by_a_clear_lead():
    leads = {
        str(case): round(_lead(case), 2)
        for case in (*CASES, *ACCENTS)
        if case.principle == 4 and ("grey" in case.rival.code or "fawn" in case.rival.code)
    }
    assert len(leads) >= 8
    assert min(leads.values()) >= CLEAR_LEAD, leads


def test_warm_whites_win_under_a_pale_sky_and_cold_ones_in_snow_by_a_clear_lead():
    cases = [case for case in WHITES if case.picture in {"desert", "harvest", "winter barn"}]
    leads = {str(case): round(_lead(case), 2) for case in cases}
    assert min(leads.values()) >= CLEAR_LEAD, leads
