"""Stability: the share of likely colour errors under which a verdict stays."""

from dataclasses import replace

import pytest

from framing_palette.colour import delta_e_2000
from framing_palette.picture import ColourTrust, TrustGrade
from framing_palette.ranking import HOUSE_RULE, rank, ranking, verdict_stability, with_stability
from framing_palette.ranking.stability import picture_delta_e
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

EXACT = ColourTrust("chart", TrustGrade.WHITES, "", mean_delta_e=0.2)
ROUGH = ColourTrust("assumed", TrustGrade.UNKNOWN, "", mean_delta_e=9.0)
RACK = [sample(f"S{n}", lch(20 + 7 * n, 6 * n, 37 * n)) for n in range(10)]


def _reading(trust):
    return findings(SEA, focus=BOAT, rim=SEA[:3], trust=trust)


def test_a_plain_case_is_stable_and_a_borderline_case_is_not():
    rim = SEA[0][0]
    edge = (rim[0], rim[1], rim[2])
    while delta_e_2000(edge, rim) < HOUSE_RULE.limits.blend_delta_e:  # just where blending ends
        edge = (edge[0] + 0.01, edge[1], edge[2])
    reading = findings([(rim, 1.0)], trust=EXACT)
    ranked = rank(reading, [sample("far", lch(8, 5, 240)), sample("edge", edge)])
    stable = {line.sample.code: line.stability for line in ranked}
    assert stable["far"] == 1.0
    assert 0.1 < stable["edge"] < 0.9


def test_rougher_colours_make_verdicts_less_stable():
    exact = verdict_stability(ranking(_reading(EXACT), RACK), ranking(_reading(EXACT), RACK).order)
    rough = verdict_stability(ranking(_reading(ROUGH), RACK), ranking(_reading(ROUGH), RACK).order)
    assert rough.mean() < exact.mean()


def test_the_same_seed_draws_the_same_errors():
    ranked = ranking(_reading(ROUGH), RACK)
    assert with_stability(ranked) == with_stability(ranked)


def test_a_samples_stability_does_not_hang_on_its_company():
    together = {x.sample.code: x.stability for x in rank(_reading(ROUGH), RACK)}
    alone = {x.code: rank(_reading(ROUGH), [x])[0].stability for x in RACK}
    assert together == alone


def test_stability_is_a_share():
    assert all(0 <= line.stability <= 1 for line in rank(_reading(ROUGH), RACK))


def test_without_draws_the_stability_is_unknown():
    assert all(line.stability != line.stability for line in rank(_reading(EXACT), RACK, draws=0))


def test_nothing_is_stable_in_an_empty_ranking():
    assert with_stability(ranking(_reading(EXACT), [])) == ()


def test_a_measured_error_goes_before_the_grade():
    assert picture_delta_e(EXACT) == pytest.approx(0.2)
    assert picture_delta_e(replace(EXACT, mean_delta_e=None)) == pytest.approx(1.5)
