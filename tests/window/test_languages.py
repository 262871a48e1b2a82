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


COUNTER = Phrasebook(
    {
        "and": "und",
        "lighter": "heller",
        "much warmer": "viel wärmer",
        "black": "Schwarz",
        "{0} than {1}.": "{0} als {1!}.",
        "is empty": "ist leer",
        "has {0} rows": "hat {0} Zeilen",
        "copy it again": "kopieren Sie es noch einmal",
        "the light falls off {0} times": "das Licht fällt {0}fach ab",
        "the {0} accent": "die Akzentfarbe {0}",
        "Too near {0}.": "{0} liegt zu nahe.",
    }
)


def test_what_people_named_themselves_is_kept_even_where_it_is_a_word() -> None:
    assert COUNTER.told("Lighter than Black.") == "Heller als Black."


def test_a_full_stop_in_a_name_does_not_tear_the_sentence_apart() -> None:
    assert COUNTER.told("Lighter than No. 3 Black.") == "Heller als No. 3 Black."


def test_a_list_is_told_word_by_word_with_its_and() -> None:
    said = COUNTER.told("Lighter and much warmer than Chalk.")
    assert said == "Heller und viel wärmer als Chalk."


def test_what_is_said_of_a_file_is_told_and_its_path_stays() -> None:
    said = COUNTER.told("/the black/A and B.png has 3 rows: copy it again.")
    assert said == "/the black/A and B.png hat 3 Zeilen: Kopieren Sie es noch einmal."


def test_a_known_part_of_a_sentence_opens_it_with_a_capital() -> None:
    assert COUNTER.told("The light falls off 2 times.") == "Das Licht fällt 2fach ab."
    assert COUNTER.told("Too near the black accent.") == "Die Akzentfarbe Schwarz liegt zu nahe."


def test_an_order_opens_with_a_capital_behind_a_colon_alone() -> None:
    assert COUNTER.told("x is empty; copy it again.") == "x ist leer; kopieren Sie es noch einmal."


def test_sentences_nobody_knows_stay_and_their_neighbours_are_told() -> None:
    said = COUNTER.told("Qwx zzz. Lighter than Chalk.\n· Qwx")
    assert said == "Qwx zzz. Heller als Chalk.\n· Qwx"


def test_a_pattern_of_slots_alone_is_refused() -> None:
    with pytest.raises(ValueError, match="beside its slots"):
        Pattern.of("{0} {1}", "{1} {0}")


def test_a_text_too_long_for_a_sentence_stays_and_comes_to_an_end() -> None:
    text = " and ".join(["the black accent, lighter"] * 400)
    assert COUNTER.told(f"the {text} accent\nIs empty") == f"the {text} accent\nIst leer"


@given(st.text(max_size=80))
def test_any_text_can_be_told_and_without_letters_stays(text: str) -> None:
    said = BOOK.told(text)
    assert isinstance(said, str)
    if not any(letter.isalpha() for letter in text):
        assert said == text
