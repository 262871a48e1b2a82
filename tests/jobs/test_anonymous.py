"""Reports without names: nothing that points to a person or a place on the computer stays."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.jobs.anonymous import without_names


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("saved for Ada Example.", "saved for <name>."),
        ("ADA called, example said", "<name> called, <name> said"),
        ("Adam and exampled stay", "Adam and exampled stay"),
        ("write to ada.e+x@mail.example.invalid now", "write to <address> now"),
        ("call +49 (0)30 1234567 today", "call <number> today"),
        ("in /home/ada/My Pictures/x.jpg, gone", "in <path>, gone"),
        (r"in C:\Users\Ada Example\jobs.sqlite is damaged", "in <path> is damaged"),
        (r"on \\server\share\file: busy", "on <path>: busy"),
        ("see ~/jobs", "see <path>"),
        ("391 good samples, 1/2 of them", "391 good samples, 1/2 of them"),
        ("2026-03-04T12:00:00Z 4711 backup taken", "2026-03-04T12:00:00Z 4711 backup taken"),
        ("within 4.2e-05 of the published pairs", "within 4.2e-05 of the published pairs"),
        ("framing_palette/jobs/store.py:120", "framing_palette/jobs/store.py:120"),
    ],
)
def test_names_and_places_go_and_everything_else_stays(text: str, expected: str) -> None:
    assert without_names(text, ["Ada Example", "  ", "/srv/My Shop"]) == expected


def test_a_folder_goes_whole_and_its_words_stay_elsewhere() -> None:
    text = "at my shop/ada.sqlite, not of a shop"
    assert without_names(text, ["my shop/ada.sqlite"]) == "at <name>, not of a shop"


NAMES = st.lists(st.from_regex(r"[A-Z][a-zé]{2,8}( [A-Z][a-z]{2,8})?", fullmatch=True), max_size=3)


@settings(deadline=None)
@given(st.text(max_size=80), NAMES, st.text(max_size=80))
def test_no_word_of_any_name_is_left(before: str, names: list[str], after: str) -> None:
    found = without_names(f"{before} {' '.join(names)} {after}", names)
    for word in {word for name in names for word in name.split()} - {"name", "path", "Name"}:
        if word.casefold() not in ("name", "path", "address", "number"):
            assert not re.search(rf"(?<!\w){word}(?!\w)", found)
