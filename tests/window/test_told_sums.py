"""Designs, jobs, previews, papers, measures and errors in the window's second language."""

import re
import time
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings

from framing_palette.design import (
    Art,
    Design,
    Glazing,
    cautions_of,
    depth_of,
    sizes_of,
    weight_of,
    wire_tension_n,
)
from framing_palette.design.depth_words import depth_words
from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length, Money
from framing_palette.window.languages.language_files import pairs_of, phrasebook_of
from framing_palette.window.languages.patterns import SLOT, Phrasebook
from tests.design.random_stacks import designs
from tests.design.shop import art, inch, liner, mat, mm, moulding, wrapped_fillet
from tests.window.german_parts import EXAMPLES, NEVER_SHOWN_MODULES, NOT_SHOWN, PUT_TOGETHER
from tests.window.sentences import modules_of, sentences_of

PACKAGE = Path(__file__).parents[2] / "framing_palette"
PLACES = ("design", "jobs", "preview", "papers", "units", "errors.py")
# English words that are German too, or keys and names that stay as they are.
DATA = {"in", "art", "mat", "liner", "sheet", "face", "wood", "handbook", "round", "rate", "code"}


@cache
def _shown() -> tuple[tuple[str, str], ...]:
    return tuple(
        (name, text)
        for place in PLACES
        for path in modules_of(PACKAGE / place)
        if (name := path.relative_to(PACKAGE).as_posix()) not in NEVER_SHOWN_MODULES
        for text in sentences_of(path)
        if " " in text.strip()
    )


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W\d_]{2,}", text.lower())


@cache
def _english() -> frozenset[str]:
    pairs = pairs_of("de")
    german = {word for told in pairs.values() for word in _words(SLOT.sub("", told))}
    return frozenset(_words(SLOT.sub("", " ".join(pairs)))) - german - DATA


def _left_over(text: str) -> set[str]:
    return set(_words(phrasebook_of("de").told(text))) & _english()


def test_every_sentence_of_these_folders_is_in_the_phrasebook_or_accounted_for() -> None:
    book = pairs_of("de")
    strange = [
        f"{module}: {text}"
        for module, text in _shown()
        if not {text, text.strip(), text.strip(" ,;")} & book.keys()
        and text not in NOT_SHOWN.get(module, ())
        and text not in PUT_TOGETHER.get(module, ())
    ]
    assert not strange, "no German for:\n" + "\n".join(strange)


def test_what_is_accounted_for_still_stands_in_its_module() -> None:
    stands = set(_shown())
    listed = [*NOT_SHOWN.items(), *PUT_TOGETHER.items()]
    assert not [(m, text) for m, texts in listed for text in texts if (m, text) not in stands]
    assert all((PACKAGE / module).is_file() for module in NEVER_SHOWN_MODULES)


def test_both_languages_have_the_same_slots() -> None:
    for english, told in pairs_of("de").items():
        assert set(SLOT.findall(english)) == set(SLOT.findall(told)), english


@pytest.mark.parametrize("sentence", EXAMPLES)
def test_what_is_put_together_is_told_without_an_english_word(sentence: str) -> None:
    assert phrasebook_of("de").told(sentence) != sentence
    assert not _left_over(sentence), phrasebook_of("de").told(sentence)


def _sentences(design: Design) -> list[str]:
    sizes, depth = sizes_of(design), depth_of(design)
    figures = [sizes.outer.width, sizes.contents.height, depth.stack]
    for layer in sizes.layers:
        figures += [
            figure for one in layer.openings for figure in (one.size.width, one.size.height)
        ]
    if sizes.frame:
        figures += [sizes.frame.rabbet.width, sizes.frame.sight.height, sizes.frame.moulding_length]
        figures += [rail.long_point for rail in sizes.frame.rails]
    return [
        *(f"Wide: {figure.how(design.unit)}." for figure in figures if figure.terms),
        depth_words(depth),
        *(caution.sentence for caution in cautions_of(design)),
        *(f"{part.name}: 1.00 kg, {part.basis}." for part in weight_of(design, sizes).parts),
    ]


BAD = (
    lambda: Art(mm(-3), mm(1)),
    lambda: Art(inch(1), inch(1), mm(-1)),
    lambda: Glazing("mica", mm(2)),
    lambda: Length.parse("wide", "in", field="art width"),
    lambda: moulding(face="1", rabbet_width="2"),
    lambda: sizes_of(Design(Art(inch(8), inch(10)), (mat(borders="2"),))),
    lambda: sizes_of(Design(art(overlap=inch("8 1/2")), (mat(borders="2"),))),
    lambda: sizes_of(Design(art(), (liner(), mat(borders="2")))),
    lambda: sizes_of(Design(art(), (mat("1/4"), mat("1/4")))),
    lambda: sizes_of(Design(art(), (mat("1", borders="2"), liner()))),
    lambda: sizes_of(Design(art(), (wrapped_fillet("5/8", face="3/4"), mat(borders="2")))),
    lambda: sizes_of(Design(art(), (mat("1/4"), mat(borders="3/16")))),
    lambda: sizes_of(Design(art(), (mat("1"), liner(rabbet_width="1/16")))),
    lambda: wire_tension_n(3.0, 120.0),
    lambda: Money.of("plenty", "EUR"),
)


@pytest.mark.parametrize("bad", BAD)
def test_what_is_wrong_with_an_input_is_told_wholly(bad: Callable[[], object]) -> None:
    with pytest.raises(FramingPaletteError) as caught:
        bad()
    said = str(caught.value).replace('"wide"', '"QX"').replace("mica", "QX").replace("plenty", "QX")
    assert phrasebook_of("de").told(said) != said
    assert not _left_over(said), phrasebook_of("de").told(said)


@settings(max_examples=16, deadline=None)
@given(designs())
def test_sizes_depth_weight_and_cautions_of_any_design_are_told_wholly(design: Design) -> None:
    for sentence in _sentences(design):
        told = phrasebook_of("de").told(sentence)
        assert told != sentence
        assert not _left_over(sentence), f"{sentence} -> {told}"
        figures = re.findall(r"\d+(?:[./]\d+)?", sentence)
        assert sorted(re.findall(r"\d+(?:[./]\d+)?", told)) == sorted(figures)


@settings(max_examples=1, deadline=None)
@given(designs(layered=True, framed=True))
def test_a_new_sentence_is_told_within_ten_milliseconds(design: Design) -> None:
    book = Phrasebook(pairs_of("de"))
    sentences = _sentences(design)
    started = time.process_time()
    for sentence in sentences:
        book.told(sentence)
    assert (time.process_time() - started) / len(sentences) < 0.01
