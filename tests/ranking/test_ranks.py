"""The ranking as a whole."""

import numpy as np
import pytest

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.ranking import Verdict, rank, ranking
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])


def _rack():
    rng = np.random.default_rng(3)
    colours = rng.uniform([8, -60, -60], [97, 60, 60], (60, 3))
    return Catalogue(
        tuple(sample(f"S{i:02d}", tuple(map(float, lab))) for i, lab in enumerate(colours))
    )


def test_no_clash_stands_above_a_complement_or_a_blend():
    verdicts = [line.verdict is Verdict.CLASH for line in rank(SEA_FINDINGS, _rack())]
    assert any(verdicts)
    assert verdicts == sorted(verdicts)


def test_scores_fall_from_first_to_last_and_stay_within_0_and_1():
    scores = [line.score for line in rank(SEA_FINDINGS, _rack())]
    assert scores == sorted(scores, reverse=True)
    assert 0.0 <= scores[-1] <= scores[0] <= 1.0


def test_the_same_input_gives_the_same_ranking_to_the_last_digit():
    assert rank(SEA_FINDINGS, _rack()) == rank(SEA_FINDINGS, _rack())


def test_the_order_of_the_catalogue_changes_no_score():
    rack = _rack()
    forward = {line.sample.code: line.score for line in rank(SEA_FINDINGS, rack)}
    backward = {line.sample.code: line.score for line in rank(SEA_FINDINGS, rack.samples[::-1])}
    assert forward == pytest.approx(backward, abs=1e-12)


def test_only_the_kinds_asked_for_are_ranked():
    rack = [sample("M", lch(30, 10, 20)), sample("F", lch(30, 10, 20), kind=Kind.MOULDING)]
    codes = [line.sample.code for line in rank(SEA_FINDINGS, rack, kinds=(Kind.MOULDING,))]
    assert codes == ["F"]


def test_an_empty_catalogue_gives_an_empty_ranking():
    assert rank(SEA_FINDINGS, ()) == ()


def test_a_sample_without_a_colour_is_left_out():
    assert [
        line.sample.code for line in rank(SEA_FINDINGS, [sample("none"), sample("S", SEA[0][0])])
    ] == ["S"]


def test_a_darker_quieter_red_beats_a_stronger_red_beside_a_red_boat():
    rack = [sample("loud", lch(58, 80, 40)), sample("quiet", lch(33, 31, 40))]
    assert [line.sample.code for line in rank(SEA_FINDINGS, rack)] == ["quiet", "loud"]


def test_a_sample_equal_to_the_rim_blends():
    flat = findings([(lch(60, 12, 80), 1.0)])
    assert rank(flat, [sample("same", lch(60, 12, 80))])[0].verdict is Verdict.BLEND


def test_top_cuts_the_ranking_and_a_lazy_ranking_counts_all():
    assert rank(SEA_FINDINGS, _rack(), top=5) == rank(SEA_FINDINGS, _rack())[:5]
    assert len(ranking(SEA_FINDINGS, _rack())) == 60
