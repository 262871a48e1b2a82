"""The window's second language: the phrasebook and the putting on of a language."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.window.languages.patterns import Pattern, Phrasebook

BOOK = Phrasebook(
    {
        "brick red": "Ziegelrot",
        "the boat": "das Boot",
        "Repeats {0} of {1}.": "Wiederholt {0} ({1}).",
        "Repeats {0} of {1}, which is only {2} % of the picture.": (
            "Nur {2} % des Bildes, und doch wiederholt: {0} ({1})."
        ),
        "Too bright.": "Zu hell.",
    }
)


def test_a_sentence_is_told_by_its_pattern_and_its_slots_by_theirs() -> None:
    assert BOOK.told("Repeats brick red of the boat.") == "Wiederholt Ziegelrot (das Boot)."


def test_the_surer_of_two_patterns_is_taken_and_slots_may_change_places() -> None:
    said = BOOK.told("Repeats brick red of the boat, which is only 1 % of the picture.")
    assert said == "Nur 1 % des Bildes, und doch wiederholt: Ziegelrot (das Boot)."


def test_names_and_figures_stay_as_they_are() -> None:
    assert BOOK.told("Repeats R-1042 of Aunt May.") == "Wiederholt R-1042 (Aunt May)."


def test_several_sentences_are_told_one_by_one() -> None:
    said = BOOK.told("Too bright. Repeats brick red of the boat.\nToo bright.")
    assert said == "Zu hell. Wiederholt Ziegelrot (das Boot).\nZu hell."


def test_a_word_that_opens_a_sentence_is_found_as_well() -> None:
    assert BOOK.told("Brick red") == "Ziegelrot"


def test_a_translation_that_loses_a_slot_is_refused() -> None:
    with pytest.raises(ValueError, match="same slots"):
        Pattern.of("Repeats {0} of {1}.", "Wiederholt {0}.")


@given(st.text(max_size=80))
def test_any_text_can_be_told_and_without_letters_stays(text: str) -> None:
    said = BOOK.told(text)
    assert isinstance(said, str)
    if not any(letter.isalpha() for letter in text):
        assert said == text
