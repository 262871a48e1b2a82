"""The vocabulary: one adjective, only with its measure, never praise; bad files told by word."""

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Kind, Surface
from framing_palette.errors import FieldError, VocabularyError
from framing_palette.papers.vocabulary import (
    MEASURES,
    Descriptors,
    Limit,
    Vocabulary,
    Word,
    figure_words,
    limits_from_text,
)
from framing_palette.papers.vocabulary_files import (
    read_vocabulary,
    shipped_vocabulary,
    vocabulary_from_text,
)

QUIET = Word("quiet", "its colours rate {activity}", (Limit("activity", "<=", -0.7),))


def test_a_limit_itself_counts_as_met_and_an_unknown_never_does():
    limit = Limit("heat", ">=", 0.5)
    assert limit.is_met(Descriptors(heat=0.5))
    assert not limit.is_met(Descriptors(heat=0.49))
    assert not limit.is_met(Descriptors(heat=nan))


@given(st.builds(Descriptors, **{name: st.floats(-5, 100) | st.just(nan) for name in MEASURES}))
def test_every_shipped_word_that_is_said_has_all_its_measures(found):
    for kind in Kind:
        word = shipped_vocabulary().word_for(found, kind, Surface.LINEN)
        if word:
            assert all(limit.is_met(found) for limit in word.needs)
            assert "nan" not in word.reason(found)
            assert "{" not in word.reason(found)


def test_nothing_is_said_of_what_nothing_is_known_of():
    assert shipped_vocabulary().word_for(Descriptors(), Kind.MAT) is None


def test_words_are_said_in_the_order_of_the_file_and_not_twice():
    airy = Word("airy", "it weighs {weight}", (Limit("weight", "<=", 0.0),))
    words, found = Vocabulary((QUIET, airy)), Descriptors(activity=-1.0, weight=-1.0)
    assert words.word_for(found, Kind.MAT) == QUIET
    assert words.word_for(found, Kind.MAT, besides=frozenset({"quiet"})) == airy


def test_a_word_for_one_kind_or_surface_is_not_said_of_another():
    woven = Word(
        "woven", "order {order}", (Limit("order", ">=", 0.3),), (Kind.MAT,), (Surface.LINEN,)
    )
    found = Descriptors(order=0.5)
    assert woven.fits(found, Kind.MAT, Surface.LINEN)
    assert not woven.fits(found, Kind.MOULDING, Surface.LINEN)
    assert not woven.fits(found, Kind.MAT, Surface.SUEDE)
    assert not woven.fits(found, Kind.MAT, None)


@pytest.mark.parametrize("praise", ["stunning", "Perfect", "elegant"])
def test_praise_is_refused_as_a_word_and_in_a_reason(praise):
    with pytest.raises(FieldError, match="nothing measures that"):
        Word(praise, "{heat}", (Limit("heat", ">=", 0),))
    with pytest.raises(FieldError, match="nothing measures that"):
        Word("warm", f"a {praise} {{heat}}", (Limit("heat", ">=", 0),))


def test_a_reason_must_show_a_measure_that_it_needs():
    with pytest.raises(FieldError, match='word "warm" because'):
        Word("warm", "everybody can see it", (Limit("heat", ">=", 0),))
    with pytest.raises(FieldError, match="show at least one of heat"):
        Word("warm", "it weighs {weight}", (Limit("heat", ">=", 0),))


def test_more_than_one_word_is_not_one_adjective():
    with pytest.raises(FieldError, match="one adjective"):
        Word("warm and soft", "{heat}", (Limit("heat", ">=", 0),))


@pytest.mark.parametrize(
    ("measure", "value", "text"),
    [("heat", 0.44, "+0.4"), ("heat", -1.23, "−1.2"), ("heat", 0.01, "0.0"), ("lightness", 96.6, "97"),
     ("grain", 5.23, "5.2")],
)  # fmt: skip
def test_measures_are_written_with_the_places_that_they_deserve(measure, value, text):
    assert figure_words(measure, Descriptors(**{measure: value})) == text


def test_sheen_and_softness_are_told_in_words():
    found = Descriptors(sheen=0.35, finish="satin", softness=1.0, surface="suede")
    assert figure_words("sheen", found) == "satin"
    assert figure_words("softness", found) == "suede"


def test_limits_are_read_alone_and_as_a_range():
    assert limits_from_text({"heat": ">= 0.4, <= 1"}, "x") == (
        Limit("heat", ">=", 0.4), Limit("heat", "<=", 1.0),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("needs", "told"),
    [({"charm": ">= 1"}, '"charm"'), ({"heat": "warm"}, '"warm"'), ({"heat": "> 1"}, "write it like")],
)  # fmt: skip
def test_limits_that_cannot_be_read_are_told(needs, told):
    with pytest.raises(FieldError, match=told):
        limits_from_text(needs, 'word "x"')


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[[word]", "is not TOML"),
        ("[[word]]\nsay = 'warm'", "word.0.because"),
        ("[[word]]\nsay='warm'\nbecause='{heat}'\nneeds={heat='>= 0'}\nmood='x'", "word.0.mood"),
        ("[[word]]\nsay='warm'\nbecause='{heat}'\nneeds={heat='hot'}", 'word "warm" needs heat'),
        (
            "[[word]]\nsay='warm'\nbecause='{heat}'\nneeds={heat='>= 0'}\nkinds=['rug']",
            "word.0.kinds",
        ),
    ],
)
def test_a_bad_vocabulary_names_the_file_and_the_entry(text, told):
    with pytest.raises(VocabularyError, match=r"words\.toml") as caught:
        vocabulary_from_text(text, "words.toml")
    assert told in str(caught.value)


def test_a_missing_vocabulary_is_told(tmp_path):
    with pytest.raises(VocabularyError, match="cannot be read as text"):
        read_vocabulary(tmp_path / "none.toml")


def test_the_shipped_vocabulary_has_the_words_that_framers_say():
    said = {word.say for word in shipped_vocabulary().words}
    assert {
        "rich", "quiet", "formal", "casual", "weathered", "polished", "playful", "stately", "soft",
        "crisp",
    } <= said  # fmt: skip
