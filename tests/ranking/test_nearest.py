"""The nearest better choice keeps what is liked and says so truly."""

import pytest

from framing_palette.catalogue import Finish, Kind, Surface
from framing_palette.errors import UnknownSampleError
from framing_palette.ranking import Aspect, Verdict, nearest_better, ranking
from framing_palette.ranking.nearest import look_distances, pattern_spread
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])
LINEN = {"surface": Surface.LINEN, "finish": Finish.MATT}
LOUD = sample("loud red linen", lch(60, 95, 40), **LINEN)
QUIET = sample("quiet red linen", lch(40, 45, 40), **LINEN)
METAL = sample(
    "quiet red metal", lch(42, 48, 40), surface=Surface.BRUSHED_METAL, finish=Finish.METALLIC
)
BLUE = sample("grey blue", lch(45, 16, 240), **LINEN)
CRIMSON = sample("crimson", lch(50, 60, 10), **LINEN)


def _better(*samples, code, **options):
    return nearest_better(ranking(SEA_FINDINGS, samples), code, **options)


def test_a_loud_red_is_answered_with_a_quiet_red_not_with_the_best_of_all():
    choice = _better(LOUD, QUIET, BLUE, code="loud red linen")
    assert choice.liked.verdict is Verdict.CLASH
    assert choice.offered.sample is QUIET
    assert choice.offered.verdict is not Verdict.CLASH


def test_a_liked_surface_is_kept_when_the_colours_are_as_near():
    assert _better(LOUD, METAL, QUIET, code="loud red linen").offered.sample is QUIET


def test_what_is_kept_is_told_and_true():
    choice = _better(LOUD, QUIET, code="loud red linen")
    assert set(choice.kept) == {Aspect.HUE, Aspect.SURFACE, Aspect.SHEEN}
    assert choice.reason == (
        "quiet red linen keeps the hue, the surface and the sheen of the one you like and is "
        "darker and quieter, so that the eye stays with the boat."
    )


def test_a_near_miss_is_answered_with_the_hue_that_was_missed():
    choice = _better(CRIMSON, QUIET, BLUE, code="crimson")
    assert choice.offered.sample is QUIET
    assert "failed match" in choice.reason


def test_another_kind_is_never_offered():
    moulding = sample("red moulding", lch(40, 45, 40), kind=Kind.MOULDING)
    assert _better(LOUD, moulding, code="loud red linen") is None


def test_what_works_already_is_bettered_only_by_a_clearly_better_one():
    nearly = sample("nearly", lch(39, 44, 40), **LINEN)
    assert _better(QUIET, nearly, code="quiet red linen") is None
    dull = sample("dull", lch(60, 3, 80))
    assert _better(dull, QUIET, code="dull").offered.sample is QUIET


def test_an_unknown_code_is_named_with_the_nearest_ones():
    with pytest.raises(UnknownSampleError, match="quiet red linen"):
        _better(LOUD, QUIET, code="quiet red line")


def test_the_wrong_white_is_answered_with_the_right_one():
    paper = findings([(lch(87, 16, 86), 0.9), (lch(35, 8, 60), 0.1)])
    samples = (sample("cold", lch(96, 5, 260)), sample("cream", lch(93, 12, 88)))
    choice = nearest_better(ranking(paper, samples), "cold")
    assert choice.offered.sample.code == "cream"
    assert "agrees with the whites of the picture" in choice.reason


def test_a_stray_hue_is_answered_with_one_of_the_picture():
    lime = sample("lime", lch(55, 48, 130))
    choice = _better(lime, BLUE, code="lime")
    assert choice.offered.sample is BLUE
    assert "foreign" in choice.reason or "eye stays" in choice.reason


def test_a_sample_looks_like_itself_and_a_liked_aspect_counts_more():
    columns = ranking(SEA_FINDINGS, (LOUD, QUIET, BLUE)).columns
    assert look_distances(columns, 0)[0] == 0
    by_hue = look_distances(columns, 0, (Aspect.HUE,))
    by_depth = look_distances(columns, 0, (Aspect.DEPTH,))
    assert by_hue[2] > by_depth[2]


def test_a_mottled_sample_has_a_pattern_and_a_plain_one_has_none():
    mottled = sample("m", lch(30, 20, 40), lch(60, 20, 90))
    spread = pattern_spread(ranking(SEA_FINDINGS, (mottled, QUIET)).columns)
    assert spread[0] > 10
    assert spread[1] == pytest.approx(0, abs=1e-9)


def test_a_pattern_that_stays_is_told():
    loud = sample("loud mottle", lch(60, 95, 40), lch(75, 95, 60))
    quiet = sample("quiet mottle", lch(45, 42, 40), lch(58, 42, 50))
    choice = _better(loud, quiet, code="loud mottle")
    assert Aspect.PATTERN in choice.kept
