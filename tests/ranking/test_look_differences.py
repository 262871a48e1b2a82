"""Whole looks are compared part by part."""

from framing_palette.catalogue import Kind
from framing_palette.ranking.differences import difference_words
from framing_palette.ranking.look_differences import KIND_WORDS, look_difference_words
from tests.ranking.by_hand import lch, sample

PALE, DARK = sample("PALE", lch(80, 5, 90)), sample("DARK", lch(30, 5, 90))
OAK = sample("OAK", lch(50, 20, 70), kind=Kind.MOULDING)
INK = sample("INK", lch(15, 2, 270), kind=Kind.MOULDING)
SLIP = sample("SLIP", lch(60, 30, 40), kind=Kind.WRAPPED_FILLET)


def test_two_single_samples_are_compared_as_samples_are():
    assert look_difference_words([PALE], [DARK]) == (difference_words(PALE, DARK),)


def test_only_the_parts_that_differ_are_told_each_by_its_kind():
    said = look_difference_words([PALE, OAK], [PALE, INK])
    assert len(said) == 1
    assert said[0].startswith("Moulding: much lighter")
    assert said[0].endswith("than INK.")


def test_what_one_look_has_and_the_other_has_not_is_told_both_ways():
    assert look_difference_words([SLIP, PALE, OAK], [PALE, OAK]) == (
        "With SLIP as wrapped fillet.",
    )
    assert look_difference_words([PALE, OAK], [SLIP, PALE, OAK]) == (
        "Without the wrapped fillet SLIP.",
    )


def test_two_mats_are_compared_in_their_order_from_the_art():
    said = look_difference_words([DARK, PALE], [DARK, DARK])
    assert said == (
        f"Mat: {difference_words(PALE, DARK)[0].lower()}{difference_words(PALE, DARK)[1:]}",
    )


def test_a_design_beside_itself_is_the_same():
    assert look_difference_words([PALE, OAK], [PALE, OAK]) == ("The same samples.",)


def test_every_kind_has_its_words():
    assert set(KIND_WORDS) == set(Kind)
