"""Words follow from what was measured: Ou et al. 2004 for colour, the catalogue for the rest."""

from dataclasses import replace
from math import isnan

import numpy as np
import pytest

from framing_palette.catalogue import Finish, Kind, SampleColour, Surface
from framing_palette.colour import activity, heat, weight
from framing_palette.papers.vocabulary_files import shipped_vocabulary
from framing_palette.papers.words import character, characters, descriptors_of, gentle_change
from framing_palette.ranking import Measures, RankedSample, Verdict
from tests.papers.made_up import FRAME, LINER, MAT, SECOND_MAT, sample

WORDS = shipped_vocabulary()


def mat(code: str, lab, **facts):
    return sample(code, Kind.MAT, colours=(SampleColour(lab, 1.0),), **facts)


def ranked(one, **measures) -> RankedSample:
    usual = {
        "echo_delta_e": 5.0, "separation_delta_e": 20.0, "separation_lightness": 20.0, "pull": 0.5,
        "harmony": 0.5, "texture": 0.5,
    }  # fmt: skip
    return RankedSample(one, Verdict.COMPLEMENT, 0.5, (), Measures(**{**usual, **measures}))


def test_colour_emotions_are_means_by_share():
    labs, shares = ((40.0, 50.0, 30.0), (90.0, 0.0, 4.0)), (0.25, 0.75)
    colours = tuple(SampleColour(lab, share) for lab, share in zip(labs, shares, strict=True))
    found = descriptors_of(sample("X", Kind.MAT, colours=colours))
    for name, scale in (("heat", heat), ("weight", weight), ("activity", activity)):
        expected = np.average(scale(np.array(labs)), weights=shares)
        assert getattr(found, name) == pytest.approx(expected)


def test_what_the_catalogue_leaves_unknown_stays_unknown():
    bare = sample("X", Kind.MAT, surface=None, finish=None)
    found = descriptors_of(bare)
    assert all(isnan(getattr(found, name)) for name in ("grain", "order", "softness", "sheen"))
    assert not isnan(found.heat)
    colourless = descriptors_of(sample("Y", Kind.MAT, colours=()))
    assert isnan(colourless.heat)
    assert character(sample("Y", Kind.MAT, colours=()), WORDS) is None


@pytest.mark.parametrize(
    ("one", "word"),
    [
        (mat("RED", (40.0, 50.0, 30.0)), "rich"),
        (mat("SNOW", (96.0, 0.0, 2.0), texture=replace(FRAME.texture, lightness_contrast=(0.4,) * 6)), "crisp"),
        (mat("GREY", (55.0, 2.0, 12.0)), "quiet"),
        (mat("SUEDE", (80.0, 2.0, 8.0), surface=Surface.SUEDE), "soft"),
        (replace(FRAME, surface=Surface.DISTRESSED_WOOD, finish=Finish.MATT), "weathered"),
    ],
)  # fmt: skip
def test_a_plain_case_gets_its_word(one, word):
    told = character(one, WORDS)
    assert told is not None
    assert told[0] == word


def test_a_sentence_has_one_adjective_and_its_measure():
    told = character(replace(FRAME, surface=Surface.DISTRESSED_WOOD, finish=Finish.MATT), WORDS)
    assert told[1] == (
        "The frame is weathered: its surface varies by 4.5 steps of lightness and hardly shines."
    )


def test_no_adjective_is_said_twice_of_one_design():
    same = [mat(code, (55.0, 2.0, 12.0)) for code in ("A", "B")]
    sentences = characters(same, WORDS, most=2)
    adjectives = [sentence.split(" is ")[1].split(":")[0] for sentence in sentences]
    assert len(set(adjectives)) == len(adjectives)


def test_the_frame_is_spoken_of_first_and_no_more_than_wished():
    rustic = replace(FRAME, surface=Surface.DISTRESSED_WOOD)
    sentences = characters([mat("A", (55.0, 2.0, 12.0)), rustic], WORDS, most=1)
    assert len(sentences) == 1
    assert sentences[0].startswith("The frame")


def test_a_gentle_change_keeps_what_both_share_and_says_how_the_other_differs():
    liked = mat("A", (60.0, 30.0, 20.0), name="Brick", surface=Surface.LINEN)
    offered = mat("B", (61.0, 15.0, 10.0), name="Clay", surface=Surface.LINEN)
    told = gentle_change(ranked(liked), ranked(offered))
    assert told.keep == "Keep the hue, the depth and the linen surface of Brick."
    assert told.change.startswith("Try Clay, quieter in colour (by 18)")


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        ({"overpowering": 0.9}, {}, "the eye goes to the boat first"),
        ({"near_miss": 0.8, "near_miss_name": "brick red"}, {}, "missed match with the brick red"),
        ({"stray": 0.7}, {}, "stays among the picture's own hues"),
        ({"warmth": 6.0}, {"warmth": 1.0}, "agrees with the whites of the picture"),
        ({}, {"echo_delta_e": 1.0, "echo_name": "slate"}, "nearer to the slate of the picture"),
    ],
)
def test_a_reason_is_given_only_when_a_measured_fault_is_mended(before, after, told):
    one, two = mat("A", (60.0, 30.0, 20.0)), mat("B", (40.0, 10.0, 20.0))
    change = gentle_change(ranked(one, **before), ranked(two, **after), focus="the boat").change
    assert told in change
    worse = gentle_change(
        ranked(one, **before), ranked(two, **{**before, "echo_delta_e": 9.0}), focus="the boat"
    )
    assert "so that" not in worse.change


def test_two_samples_alike_are_told_apart_by_their_distance():
    one, two = mat("A", (60.0, 3.0, 2.0)), mat("B", (61.0, 3.0, 2.0))
    assert "only 0.9 ΔE away" in gentle_change(ranked(one), ranked(two)).change


def test_nothing_in_common_is_said_kindly_too():
    one = mat("A", (20.0, 3.0, 2.0), name="Ink", surface=None)
    two = mat("B", (90.0, 40.0, 60.0), name="Sun")
    told = gentle_change(ranked(one), ranked(two))
    assert told.keep == "Keep the idea of Ink."
    assert "lighter (by 70)" in told.change
    assert "nearer to" in told.change


def test_a_new_surface_and_an_equal_width_are_named():
    liked = replace(FRAME, surface=Surface.LEAF)
    told = gentle_change(ranked(liked), ranked(FRAME))
    assert "the width" in told.keep
    assert "with a smooth surface" in told.change


def test_every_kind_can_be_spoken_of():
    for one in (MAT, SECOND_MAT, LINER, FRAME):
        assert descriptors_of(one).lightness == pytest.approx(60.0)
