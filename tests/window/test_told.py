"""German of ranking, colour, picture and catalogue: every sentence of theirs is told, and whole."""

import re
import time
import tomllib
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from framing_palette.catalogue import Catalogue, Kind, read_catalogue_folder
from framing_palette.catalogue.light import HOME_LIGHTS, compare_under_lights
from framing_palette.catalogue.merging import Change
from framing_palette.colour import plain_names
from framing_palette.errors import FramingPaletteError
from framing_palette.picture import read_findings, read_picture_file, read_regions_file
from framing_palette.picture.findings import BANDS_MM, Texture
from framing_palette.picture.texture_words import texture_words
from framing_palette.ranking import Ranking, nearest_better, ranking
from framing_palette.ranking.differences import difference_words
from framing_palette.window.languages.language_files import pairs_of, phrasebook_of
from framing_palette.window.languages.patterns import SLOT, Phrasebook
from tests.window.german_forms import IN_OTHER_WORDS, NEVER_SHOWN_MODULES, NOT_SHOWN
from tests.window.sentences import modules_of, sentences_of

HOUSE = Path(__file__).parents[2]
FOLDERS = ("ranking", "colour", "picture", "catalogue")

DATA = {
    "face",
    "focus",
    "role",
    "mat",
    "liner",
    "code",
    "worse_codes",
    "face_mm",
    "fase_mm",
    "samples",
    "json",
    "csv",
}


def _told(text: str) -> str:
    return phrasebook_of("de").told(text)


@cache
def _book() -> dict[str, str]:
    return pairs_of("de")


@cache
def _english() -> frozenset[str]:
    """Return the words that the patterns of these folders have and their German has not."""
    pairs = _book()
    german = {word for told in pairs.values() for word in _words(SLOT.sub("", told))}
    return frozenset(_words(SLOT.sub("", " ".join(pairs)))) - german - DATA


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W\d_]{2,}", text.lower())


def _left_over(text: str, *names: str) -> set[str]:
    """Return the English words in a told text, but for names and what stands in „ “."""
    told = re.sub("„[^“]*“", "", _told(text))
    for name in sorted(filter(None, names), key=len, reverse=True):
        told = told.replace(name, "")
    return set(_words(told)) & _english()


@cache
def _shown() -> tuple[tuple[str, str], ...]:
    return tuple(_read())


def _read() -> Iterator[tuple[str, str]]:
    for folder in FOLDERS:
        for path in modules_of(HOUSE / "framing_palette" / folder):
            name = path.relative_to(HOUSE / "framing_palette").as_posix()
            if name not in NEVER_SHOWN_MODULES:
                yield from ((name, text) for text in sentences_of(path) if " " in text.strip())


def _is_in_book(text: str) -> bool:
    book = _book()
    bare = text.strip()
    return any(form in book for form in (text, bare, bare.strip(" ,;"), f"{bare}."))


def test_every_sentence_of_these_folders_is_in_the_phrasebook_or_accounted_for() -> None:
    strange = [
        f"{module}: {text}"
        for module, text in _shown()
        if not _is_in_book(text)
        and text not in NOT_SHOWN.get(module, ())
        and text not in IN_OTHER_WORDS.get(module, {})
        and module not in {"catalogue/light.py", "colour/names.py"}  # see below
    ]
    assert not strange, "no German for:\n" + "\n".join(strange)


def test_what_is_said_not_to_be_shown_still_stands_in_its_module() -> None:
    stands = set(_shown())
    listed = [*NOT_SHOWN.items(), *IN_OTHER_WORDS.items()]
    assert not [(m, text) for m, texts in listed for text in texts if (m, text) not in stands]


@pytest.mark.parametrize("module", IN_OTHER_WORDS)
def test_what_stands_in_other_forms_is_told_without_an_english_word(module: str) -> None:
    for text in (one for forms in IN_OTHER_WORDS[module].values() for one in forms):
        assert _told(text) != text
        assert not _left_over(text), f"{text} -> {_told(text)}"


def test_every_colour_name_has_a_german_noun() -> None:
    steps = np.stack(np.meshgrid(range(2, 100, 4), range(-96, 100, 8), range(-96, 100, 8)), axis=-1)
    for name in set(plain_names(steps.reshape(-1, 3).astype(float))):
        assert name in _book(), name
        assert any(letter.isupper() for letter in _told(name)), name


@cache
def _rack() -> Catalogue:
    return read_catalogue_folder(HOUSE / "catalog")[0]


@cache
def _ranked(picture: str, *, with_regions: bool) -> Ranking:
    place = HOUSE / "sample_images" / f"{picture}.jpg"
    regions = read_regions_file(place.with_suffix(".regions.json")) if with_regions else ()
    return ranking(read_findings(read_picture_file(place, max_side=320), regions), _rack())


RANKED = [("ferry_at_dusk", True), ("briar_rose", False)]


@pytest.mark.parametrize(("picture", "with_regions"), RANKED)
def test_every_reason_in_a_whole_rack_is_told_without_an_english_word(
    picture: str, with_regions: bool
) -> None:
    ranked = _ranked(picture, with_regions=with_regions)
    reasons = {reason for row in range(len(_rack().samples)) for reason in ranked.at(row).reasons}
    assert len(reasons) > 60
    for reason in reasons:
        assert not _left_over(reason), f"{reason} -> {_told(reason)}"
        assert _told(reason)[0].isupper() or _told(reason)[0] == "„"


@pytest.mark.parametrize(("picture", "with_regions"), RANKED)
def test_every_better_choice_is_told_and_names_what_it_offers(
    picture: str, with_regions: bool
) -> None:
    ranked = _ranked(picture, with_regions=with_regions)
    choices = [nearest_better(ranked, sample.code) for sample in _rack().samples[::4]]
    offered = [choice for choice in choices if choice is not None]
    assert len(offered) > 30
    for choice in offered:
        name = choice.offered.sample.name
        assert _told(choice.reason).startswith(f"{name} behält "), choice.reason
        assert not _left_over(choice.reason, name), _told(choice.reason)


def test_every_difference_between_neighbours_in_the_rack_is_told_with_its_name() -> None:
    for one, other in pairwise(_rack().samples):
        said = difference_words(one, other)
        assert other.name in _told(said)
        assert not _left_over(said, other.name), f"{said} -> {_told(said)}"


def test_every_finding_of_a_match_under_lights_is_told_whole() -> None:
    samples = [sample for sample in _rack().samples if sample.colours]
    for place in range(0, len(samples) - 5, 9):
        one, other = samples[place].colours[0], samples[place + 5].colours[0]
        near = (other.lab[0] + 0.4, other.lab[1], other.lab[2])
        for against in (one, one.lab, near):
            for lights in (HOME_LIGHTS, HOME_LIGHTS[place % 8 : place % 8 + 1]):
                said = compare_under_lights(against, other, lights).sentence
                assert not _left_over(said), f"{said} -> {_told(said)}"
                assert _told(f"{said[0].upper()}{said[1:]}.").endswith(".")


@pytest.mark.parametrize("contrast", [0.5, 1.0, 3.0, 9.0])
@pytest.mark.parametrize("band", range(len(BANDS_MM)))
@pytest.mark.parametrize("direction", [None, 0.0, 45.0, 90.0])
def test_every_texture_is_told(contrast: float, band: int, direction: float | None) -> None:
    for regularity, sparkle in ((0.0, 0.0), (0.9, 0.5)):
        texture = Texture(
            lightness_contrast=tuple(contrast * (n == band) for n in range(len(BANDS_MM))),
            direction_deg=direction or 0.0,
            direction_strength=0.0 if direction is None else 0.9,
            regularity=regularity,
            sparkle=sparkle,
            mm_per_px=0.2,
        )
        said = texture_words(texture)
        assert not _left_over(said), f"{said} -> {_told(said)}"


def test_a_merge_is_told_fact_by_fact_and_names_stay() -> None:
    assert _told(str(Change("M-1", "name", "Ivory", "Black"))) == "M-1: Name Ivory → Black"
    assert _told(str(Change("M-1", "rabbet_width", None, "6"))) == "M-1: Falzbreite unbekannt → 6"
    assert _told(str(Change("M-1", "surface", "leaf", "brushed_metal"))) == (
        "M-1: Oberfläche Blattmetall → gebürstetes Metall"
    )


def _bad_inputs(place: Path) -> Iterator[Path]:
    contents = {
        "empty.png": b"",
        "words.jpg": b"no picture at all",
        "cut.png": b"\x89PNG\r\n\x1a\n0000",
        "cut.tif": b"II*\x00",
        "list.regions.json": b"[]",
        "bad.regions.json": b"{",
        "nameless.regions.json": b'{"regions": [{"name": ""}]}',
        "role.regions.json": b'{"regions": [{"name": "Boot", "role": "x", "polygon": []}]}',
        "none.regions.json": b'{"regions": [{"name": "Boot"}]}',
        "two.regions.json": b'{"regions": [{"name": "Boot", "polygon": [[0, 0], [1, 1]]}]}',
    }
    for name, content in contents.items():
        (place / name).write_bytes(content)
        yield place / name
    yield place / "missing.png"
    yield place / "missing.regions.json"


def test_what_is_wrong_with_a_file_is_told_and_its_path_stays(tmp_path: Path) -> None:
    for path in _bad_inputs(tmp_path):
        read = read_regions_file if path.suffix == ".json" else read_picture_file
        with pytest.raises(FramingPaletteError) as caught:
            read(path)
        said = str(caught.value)
        assert _told(said).startswith(str(path)), said
        assert not _left_over(said, str(path)) - {"name", "polygon", "regions"}, _told(said)


def test_what_is_wrong_with_a_catalogue_is_told_row_by_row(tmp_path: Path) -> None:
    rows = ["code;name;kind;face_mm;fase_mm", "A;x;mat;zz;", "A;x;mat;;", ";x;mat;;", "B;x;hat;;"]
    (tmp_path / "samples.csv").write_text("\n".join([*rows, "C;x;liner;99999;", "D;x"]))
    (tmp_path / "colours.csv").write_text("code,share,L,a,b\nA,1,50,200,0\nQ,1,5,,0\n")
    problems = read_catalogue_folder(tmp_path)[1]
    assert len(problems) >= 8
    for problem in problems:
        assert not _left_over(str(problem), *Kind, problem.column), _told(str(problem))


def test_the_same_english_has_one_german() -> None:
    place = HOUSE / "framing_palette" / "window" / "languages" / "de.toml"
    seen: dict[str, str] = {}
    for section in tomllib.loads(place.read_text(encoding="utf-8")).values():
        for english, said in section.items():
            assert seen.setdefault(english, said) == said, english


def test_every_translation_keeps_the_slots_of_its_english() -> None:
    for english, said in _book().items():
        assert sorted(SLOT.findall(english)) == sorted(set(SLOT.findall(said))), english


def test_a_new_sentence_is_told_within_a_millisecond_of_work() -> None:
    ranked = _ranked("briar_rose", with_regions=False)
    reasons = {reason for row in range(len(_rack().samples)) for reason in ranked.at(row).reasons}
    book = Phrasebook(_book())
    started = time.thread_time()
    for reason in reasons:
        book.told(reason)
    assert (time.thread_time() - started) / len(reasons) < 1e-3
