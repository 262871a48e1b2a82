"""The window's second language: the phrasebook and the putting on of a language."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QCoreApplication, QTranslator
from PySide6.QtWidgets import QApplication, QDialogButtonBox

from framing_palette.window.languages import LANGUAGES, speak, told
from framing_palette.window.languages.language_files import translation_of
from framing_palette.window.languages.patterns import Pattern, Phrasebook
from tests.window import renew_languages

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


GERMAN = renew_languages.LANGUAGES / "de.ts"
FIELD = re.compile(r"\{[^{}]*\}|%\d|%n|\(\*[^)]*\)")


@pytest.fixture(scope="module")
def collected(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The texts of the window as they are marked now, with the translations there are."""
    ts = tmp_path_factory.mktemp("languages") / "de.ts"
    ts.write_bytes(GERMAN.read_bytes())
    renew_languages.collect(ts)
    return ts


def test_every_text_that_the_window_marks_has_a_finished_translation(collected: Path) -> None:
    lacking = [
        f"{context}: {source!r}"
        for context, source, told, is_finished in renew_languages.messages(collected)
        if not told or not is_finished
    ]
    assert not lacking, "run tests/window/renew_languages.py, then translate\n" + "\n".join(lacking)


def test_no_translation_is_of_a_text_that_the_window_has_no_more(collected: Path) -> None:
    there = {(context, source) for context, source, *_ in renew_languages.messages(collected)}
    kept = {(context, source) for context, source, *_ in renew_languages.messages(GERMAN)}
    assert kept == there


def test_a_translation_has_the_same_placeholders_as_its_source() -> None:
    different = [
        f"{context}: {source!r} is {told!r}"
        for context, source, told, _ in renew_languages.messages(GERMAN)
        if sorted(FIELD.findall(source)) != sorted(FIELD.findall(told))
    ]
    assert different == []


def test_a_translation_begins_and_ends_as_its_source_does() -> None:
    # What is set beside something else keeps its spaces, and a sentence its stop.
    different = [
        f"{context}: {source!r} is {told!r}"
        for context, source, told, _ in renew_languages.messages(GERMAN)
        if (source[:1] == " ", source[-1:] == " ", source[-1:] == ".", source[-1:] == "…")
        != (told[:1] == " ", told[-1:] == " ", told[-1:] == ".", told[-1:] == "…")
    ]
    assert different == []


def test_what_qt_reads_says_what_the_text_file_says(app: QApplication) -> None:
    worn, content = QTranslator(), translation_of("de")
    assert worn.load(content)
    for context, source, said, _ in renew_languages.messages(GERMAN):
        assert worn.translate(context, source) == said


def test_a_released_file_says_what_the_shipped_one_says(app: QApplication, tmp_path: Path) -> None:
    renew_languages.release(GERMAN, tmp_path / "de.qm")
    fresh, shipped, content = QTranslator(), QTranslator(), translation_of("de")
    assert fresh.load(str(tmp_path / "de.qm"))
    assert shipped.load(content)
    for context, source, *_ in renew_languages.messages(GERMAN):
        assert fresh.translate(context, source) == shipped.translate(context, source)


def test_speaking_german_and_then_english_again_leaves_nothing_german(app: QApplication) -> None:
    assert speak(app, "de") == "de"
    try:
        assert QCoreApplication.translate("Rail", "Side by side") == "Nebeneinander"
        assert told("Nothing here is known.") == "Nothing here is known."
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        assert buttons.buttons()[0].text().replace("&", "") == "Abbrechen"
    finally:
        speak(app, "en")
    assert QCoreApplication.translate("Rail", "Side by side") == "Side by side"


def test_a_language_that_nobody_knows_is_english(app: QApplication) -> None:
    assert speak(app, "xx") == "en"
    assert set(LANGUAGES) == {"en", "de"}
