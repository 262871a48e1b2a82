"""German of ranking, colour, picture and catalogue: every sentence of theirs is told, and whole."""

import re
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
from framing_palette.window.languages.patterns import SLOT
from tests.window.sentences import modules_of, sentences_of

HOUSE = Path(__file__).parents[2]
FOLDERS = ("ranking", "colour", "picture", "catalogue")

NOT_SHOWN: dict[str, tuple[str, ...]] = {
    # the command line alone says what decided a verdict, part by part
    "ranking/explaining.py": (
        "{0}; merit {1} = {2}",
        "clash, by {0} (limit {1})",
        "(limit {0})",
        "blend, ΔE00 {0} to what it touches {1}",
        "relation {0} (limit {1})",
        "{0}, by {1}; worst fault {2} {3}",
        "rest {0}",
    ),
    # facts in sentences of errors that the design's folder raises
    "ranking/strips.py": ("face width", "showing it at scale"),
    # shapes of arrays, for developers
    "colour/difference.py": ("(n, 3)",),
    "picture/texture_comparison.py": ("texture rows",),
    # forms and names of files
    "picture/label_files.py": ("Framing Palette label",),
    "picture/regions_files.py": ('{"regions": [{0}]}',),
    "catalogue/cells.py": (r"[+-]?\d+,\d+( ?[a-z]+)?\Z",),
    "catalogue/column_files.py": ("columns 6",),
    "catalogue/conservation_rows.py": ("photographic activity", "iso 18916"),
    "catalogue/cxf.py": ("Framing Palette", "Framing samples"),
    "catalogue/exchange_files.py": (
        "Framing samples",
        "Framing Palette",
        "ILLUMINANT, D50; OBSERVER, 2 degree",
    ),
    "catalogue/folder_writing_files.py": (
        "Framing samples",
        "Framing samples; an empty cell is unknown.",
    ),
    "catalogue/library_schema.py": (
        "SELECT version_num FROM {0}",
        "SELECT value FROM library_facts WHERE name = 'version'",
        "SELECT pg_advisory_xact_lock(:lock)",
        "BEGIN IMMEDIATE",
    ),
    "catalogue/library_tables.py": (
        "PRAGMA busy_timeout = {0}",
        "PRAGMA journal_mode = WAL",
        "PRAGMA synchronous = NORMAL",
    ),
    "catalogue/palette_text.py": ("GIMP Palette", "Name: {0}", "Columns: {0}"),
}
"""Strings with a blank that no window shows, module by module."""

NEVER_SHOWN_MODULES = (
    "catalogue/column_matching.py",  # how other people head their columns
    "catalogue/package_description.py",  # written into a catalogue folder's description
)

IN_OTHER_WORDS: dict[str, dict[str, tuple[str, ...]]] = {
    "ranking/differences.py": {
        "{0}{1} than {2}{3}.": ("Much lighter, warmer than X1.", "Cooler than X1."),
        "; {0} instead of {1}": ("Wider than X1; plain wood instead of leaf.",),
        "much {0}": tuple(
            f"much {w}" for w in ("lighter", "darker", "stronger", "quieter", "warmer", "cooler")
        ),
    },
    "ranking/look_differences.py": {
        "Without the {0} {1}.": tuple(
            f"Without the {kind} X1."
            for kind in ("mat", "wrapped fillet", "wood fillet", "liner", "moulding")
        ),
    },
    "ranking/nearest.py": {
        "{0} keeps {1} of the one you like{2}, {3}.": (
            "X1 keeps the spirit of the one you like, so that no hue is foreign to the picture.",
        ),
        " and is {0}": (
            (
                "X1 keeps the hue and the depth of the one you like and is darker and quieter, and it "
                "agrees with the whites of the picture."
            ),
        ),
        "{0} and {1}": ("the hue, the surface and the pattern",),
    },
    "ranking/reasons.py": {
        "A {0} version of": ("A lighter and quieter version of the red of the picture.",),
        "Near to": ("Near to the red accent.",),
        ", which is only {0} of the picture": (
            "Repeats the red accent, which is only less than 0.1 % of the picture.",
            "A darker version of the red accent, which is only 1 % of the picture.",
            "Near to the red accent, which is only 1 % of the picture.",
        ),
        "Its {0}, {1} of it, {2} {3}.": (
            "Its red, 30 % of it, repeats the blue of the picture's edge.",
            "Its red, 30 % of it, repeats the blue accent, which is only 1 % of the picture.",
        ),
        "is near to": (
            "Its red, 30 % of it, is near to the blue of the picture.",
            "Its red, 30 % of it, is near to the blue accent, which is only 1 % of the picture.",
            "All of it repeats the picture: its red is near to the blue accent.",
            (
                "All of it repeats the picture: its red is near to the blue accent, which is only 2 % "
                "of the picture."
            ),
        ),
        "is a {0} version of": (
            "Its red, 30 % of it, is a darker version of the blue of the picture.",
            (
                "Its red, 30 % of it, is a darker and quieter version of the blue accent, which is "
                "only 1 % of the picture."
            ),
            "All of it repeats the picture: its red is a lighter version of the blue accent.",
            (
                "All of it repeats the picture: its red is a lighter version of the blue accent, which "
                "is only 2 % of the picture."
            ),
        ),
        "All of it repeats the picture: its {0} {1} {2}.": (
            "All of it repeats the picture: its red repeats the blue accent.",
            (
                "All of it repeats the picture: its red repeats the blue accent, which is only 1 % of "
                "the picture."
            ),
        ),
        "Stands out from the picture {0} than {1} does.": (
            "Stands out from the picture more than the place where the eye seems to rest does.",
            "Stands out from the picture less than the picture does.",
        ),
    },
    "ranking/taste.py": {
        "From {0} on {1}": (
            "From 1 choice on 1 picture: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0} {1}s": (
            "From 40 choices on 8 pictures: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0}: foretells {1} of held-back ones, the house rule {2}.": (
            "From 40 choices on 8 pictures: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0}: own weights foretell {1} of held-back ones, the house rule {2}; that may be chance, "
        "so the house rule stays in use.": (
            (
                "From 40 choices on 8 pictures: own weights foretell 60 % of held-back ones, the house "
                "rule 50 %; that may be chance, so the house rule stays in use."
            ),
        ),
    },
    "ranking/taste_effect.py": {
        "is held against a sample": (
            "The wrong white is held against a sample 20\u00a0% more.",
            "Drawing the eye is held against a sample 20\u00a0% less.",
            "Strong colour counts 20\u00a0% less.",
        ),
    },
    "ranking/taste_files.py": {
        "{0}, {1} It was left out.": (
            (
                "/x/a.json, choices, number 3, worse_codes is x; give two different looks. "
                "It was left out."
            ),
        ),
    },
    "picture/correction.py": {
        "glare or shadow": ("white 9.5 (glare or shadow)", "black 2 (clipped)"),
        "not even": ("the picked grey is not even", "the picked grey is black"),
    },
    "picture/evening.py": {
        "the plain sheet did not reach under all of the {0}": (
            "The plain sheet did not reach under all of the art.",
            "The plain sheet did not reach under all of the chart.",
        ),
    },
    "picture/pictures.py": {
        "the art's {0}": ("the art's width", "the art's height"),
        "The typed size is {0} {1} than the picture's proportions: check the size, and that the "
        "picture shows all of the art.": (
            (
                "The typed size is 5% wider than the picture's proportions: check the size, and that "
                "the picture shows all of the art."
            ),
            (
                "The typed size is 5% narrower than the picture's proportions: check the size, and "
                "that the picture shows all of the art."
            ),
        ),
    },
    "picture/regions_files.py": {
        " (line {0})": ("/x/a.json is not JSON (line 3): rename one of them.",),
        "is not JSON{0}": ("/x/a.json is not JSON: rename one of them.",),
    },
    "picture/scaling.py": {
        "The typed size is {0} {1} than the chart's own size says: measure the art again, and lay "
        "the chart level with it.": (
            (
                "The typed size is 5% larger than the chart's own size says: measure the art again, "
                "and lay the chart level with it."
            ),
            (
                "The typed size is 5% smaller than the chart's own size says: measure the art again, "
                "and lay the chart level with it."
            ),
        ),
    },
    "picture/texture_words.py": {
        "{0}{1} {2}, about {3} mm": ("faint middling mottle, about 2 mm", "fine grain, about 1 mm"),
        "level {0}": ("level weave", "level grain"),
        "upright {0}": ("upright weave", "upright grain"),
        "slanting {0}": ("slanting weave", "slanting grain"),
    },
    "picture/tiff_files.py": {"colour stored as YCbCr": ("colour stored as YCbCr",)},
    "catalogue/cells.py": {
        '"{0}" is not one of {1}{2}': ('"x1" is not one of mat, liner; this row is left out',),
    },
    "catalogue/conditions.py": {
        "holds {0} figures but does not tell their {1}": (
            "holds Lab figures but does not tell their illuminant",
            "holds XYZ figures but does not tell their observer",
        ),
    },
    "catalogue/folder_files.py": {
        " and no column ": ("has no column x1 and no column y1",),
        "the column is not known and is not read{0}": (
            (
                "samples.csv column fase_mm: the column is not known and is not read; is face_mm "
                "meant."
            ),
        ),
    },
    "catalogue/joining.py": {
        "{0}; it can be built with but not ranked": (
            (
                "samples.csv row 3, column code: X1 has no row in colours.csv; it can be built with "
                "but not ranked."
            ),
        ),
    },
    "catalogue/light.py": {},  # all of its sentences are made and told below
    "catalogue/matched_pairs.py": {
        "{0} and {1}: {2}.": (
            "X1 and the picture's red: matches here.",
            "X1 and X2: matches here and stays so in every light tried: ΔE00 0.4 at most.",
        ),
    },
    "catalogue/matched_table_files.py": {
        "{0} stands in row {1} already{2}": (
            "t.csv row 9, column code: X1 stands in row 3 already; this row is left out.",
        ),
        "{0}; {1}; the colours are left out": (
            (
                "t.csv column L: holds Lab figures for illuminant C; export reflectances, or figures "
                "for one of D50; the colours are left out."
            ),
        ),
    },
    "catalogue/measurements.py": {"A set": ("A set is left out: the code was measured before.",)},
    "catalogue/problems.py": {
        " row {0}": ("samples.csv row 3: the cell is empty.",),
        ", column {0}": ("samples.csv row 3, column a: the cell is empty.",),
        " column {0}": ("samples.csv column a: the cell is empty.",),
    },
    "catalogue/sample_rows.py": {
        "the kind is missing; write one of {0}{1}": (
            "the kind is missing; write one of mat, liner; this row is left out",
        ),
    },
    "catalogue/table_files.py": {
        "columns are separated by {0} instead of commas; read that way": (
            "columns are separated by semicolons instead of commas; read that way",
            "columns are separated by tabs instead of commas; read that way",
        ),
        "{0}; quote cells with commas": (
            (
                "samples.csv row 3: has 3 cells but the header names 5 columns; quote cells with "
                "commas."
            ),
        ),
    },
}
"""Patterns that stand in the phrasebook in other forms, each with what it can become."""

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


def _shown() -> Iterator[tuple[str, str]]:
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
    return ranking(read_findings(read_picture_file(place, max_side=500), regions), _rack())


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
    for place in range(0, len(samples) - 5, 5):
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
    import tomllib

    place = HOUSE / "framing_palette" / "window" / "languages" / "de.toml"
    seen: dict[str, str] = {}
    for section in tomllib.loads(place.read_text(encoding="utf-8")).values():
        for english, said in section.items():
            assert seen.setdefault(english, said) == said, english
