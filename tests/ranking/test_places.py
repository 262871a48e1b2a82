"""How places of a picture are spoken of."""

from dataclasses import replace

import pytest

from framing_palette.picture import Accent, Role
from framing_palette.ranking.places import focus_words, region_words, target_words
from framing_palette.ranking.subjects import Target, subject_of
from tests.ranking.by_hand import BOAT, SEA, findings, lch

FOUND = findings(SEA, focus=BOAT)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("boat", "the boat"),
        ("rim", "the picture's edge"),
        ("whole", "the picture"),
        ("nowhere", "the picture"),
    ],
)
def test_a_region_is_spoken_of_in_plain_words(name, said):
    assert region_words(FOUND, name) == said


def test_a_name_that_brings_its_article_keeps_it():
    boat = replace(FOUND.regions[0], name="The old boat")
    assert (
        region_words(replace(FOUND, regions=(boat, *FOUND.regions[1:])), "The old boat")
        == "The old boat"
    )


def test_a_guessed_focus_is_not_spoken_of_as_if_it_had_been_drawn():
    guessed = replace(FOUND, focus_guessed=True)
    assert focus_words(guessed) == "the place where the eye seems to rest"


def test_without_a_focus_the_picture_itself_is_meant():
    bare = replace(FOUND, regions=FOUND.regions[1:])
    assert focus_words(bare) == "the picture"
    assert subject_of(bare).focus_chroma > 0


def test_an_accent_inside_a_drawn_region_is_told_with_it():
    accent = Accent(lch(50, 60, 40), 0.01, 0.5, 0.5, 30.0, 0.5)
    target = Target(accent.lab, accent.share, "accent", "red", 1.0, None)
    assert target_words(FOUND, target, "red") == "the red accent"
    boat = replace(FOUND.regions[0], accents=(accent,))
    inside = replace(FOUND, regions=(boat, *FOUND.regions[1:]))
    assert target_words(inside, target, "red") == "the red accent in the boat"


def test_a_colour_of_a_region_is_told_with_it():
    target = Target(lch(50, 60, 40), 0.1, "boat", "red", 1.0, Role.FOCUS)
    assert target_words(FOUND, target, "red") == "the red of the boat"
