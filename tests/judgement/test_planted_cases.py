"""The samples that an experienced framer would pull from the wall win against their rivals."""

from collections import Counter
from functools import cache

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000_matrix
from framing_palette.ranking import columns_of, rank
from framing_palette.ranking.subjects import subject_of
from tests.judgement.cases import CASES, Case
from tests.judgement.pictures import FOCUS, reading

WANTED_RIGHT = 0.95


@cache
def _won(case: Case) -> bool:
    best = rank(reading(case.picture), (case.rival, case.winner))[0]
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
