"""Reading and writing a catalogue folder."""

import json
import tracemalloc
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import frictionless
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from framing_palette.catalogue import (
    Catalogue,
    ClaimScope,
    ConservationFact,
    Finish,
    Kind,
    PriceBasis,
    Profile,
    Sample,
    SampleColour,
    Surface,
    read_catalogue_folder,
    write_catalogue_folder,
)
from framing_palette.errors import CatalogueError, OutputError
from framing_palette.units import Length

from .folders import COLOURS, SAMPLES, errors, notices, write_folder


def test_a_good_folder_gives_its_samples_in_order_without_a_word(tmp_path: Path) -> None:
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path))
    assert [sample.code for sample in catalogue.samples] == ["A1", "B2"]
    assert problems == ()
    assert catalogue["B2"].face == Length.inches(1)
    assert catalogue["B2"].colours[0] == SampleColour((60.0, 8.0, 22.0), 0.7)


def test_every_bad_cell_is_told_with_its_row_and_column_and_the_good_rows_still_load(
    tmp_path: Path,
) -> None:
    samples = (
        "code,kind,face_mm,price,in_stock,finish,price_per,join\n"
        "A1,mat,wide,12,yes,matt,sheet\n"
        "B2,moulding,25,-3,maybe,shiny,metre\n"
        "C3,frame,25,3,no,gloss,metre\n"
        "D4,moulding,-1,3,no,gloss,yard\n"
        "E5,moulding,30,3.20,no,gloss,metre,butt\n"
        "F6,,30,3.20,no,gloss,metre,glued\n"
        "G7,moulding,99999,1e99,no,gloss,metre,\n"
    )
    colours = "code,L,a,b\nE5,50,0,0\nA1,70,1,2\n"
    catalogue, problems = read_catalogue_folder(
        write_folder(tmp_path, samples=samples, colours=colours)
    )
    assert [sample.code for sample in catalogue.samples] == ["A1", "B2", "D4", "E5", "G7"]
    first, second, fourth, last = (catalogue[code] for code in ("A1", "B2", "D4", "G7"))
    assert (first.face, first.price, first.in_stock) == (None, Decimal(12), True)
    assert (second.face, second.price, second.in_stock) == (Length.mm_of("25"), None, None)
    assert (second.finish, second.price_per) == (None, PriceBasis.METRE)
    assert (fourth.face, fourth.price_per, fourth.finish) == (None, None, Finish.GLOSS)
    assert (last.face, last.price) == (None, None)
    assert first.colours[0].lab == (70, 1, 2)
    left_out = [p.row for p in problems if p.reason.endswith("this row is left out")]
    assert sorted({row for row in left_out if row is not None}) == [4, 7]
    assert {(p.row, p.column) for p in problems if not p.is_notice} == {
        (2, "face_mm"),
        (3, "price"),
        (3, "in_stock"),
        (3, "finish"),
        (4, "kind"),
        (5, "face_mm"),
        (5, "price_per"),
        (7, "kind"),
        (7, "join"),
        (8, "face_mm"),
        (8, "price"),
    }
    assert 'samples.csv row 2, column face_mm: "wide" is not a length' in errors(problems)[0]


@pytest.mark.parametrize(
    ("code", "reason"),
    [
        ("../x", "looks like a path"),
        ("a/b", "looks like a path"),
        ("a\\b", "looks like a path"),
        ("", "the code is missing"),
        ('"two\nlines"', "line break"),
        ("x" * 101, "longer than 100"),
    ],
)
def test_a_code_that_cannot_be_one_is_refused(tmp_path: Path, code: str, reason: str) -> None:
    folder = write_folder(tmp_path, samples=f"{SAMPLES}{code},Bad,mat,,\n")
    catalogue, problems = read_catalogue_folder(folder)
    assert len(catalogue) == 2
    assert reason in errors(problems)[0]
    assert "this row is left out" in errors(problems)[0]


@pytest.mark.parametrize(
    ("word", "basis"),
    [
        *((word, PriceBasis.METRE) for word in ("m", "metre", "Meter", "M")),
        *((word, PriceBasis.FOOT) for word in ("ft", "foot")),
        *((word, PriceBasis.PIECE) for word in ("each", "ea", "piece")),
        *((word, PriceBasis.SHEET) for word in ("sheet", "board")),
        *((word, PriceBasis.STICK) for word in ("stick", "length")),
    ],
)
def test_what_a_price_buys_may_be_written_as_the_trade_writes_it(
    tmp_path: Path, word: str, basis: PriceBasis
) -> None:
    samples = f"code,kind,price,price_per\nA1,mat,2,{word}\nB2,mat,2,sheet\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert catalogue["A1"].price_per is basis
    assert problems == ()


def test_the_second_row_of_a_code_is_left_out_and_the_first_is_named(tmp_path: Path) -> None:
    folder = write_folder(tmp_path, samples=f"{SAMPLES}A1,Again,mat,,\n")
    catalogue, problems = read_catalogue_folder(folder)
    assert catalogue["A1"].name == "Chalk"
    assert "row 4" in errors(problems)[0]
    assert "stands in row 2 already" in errors(problems)[0]


@pytest.mark.parametrize(
    ("row", "column", "reason"),
    [
        ("A1,1,101,0,0", "l", "outside 0 to 100"),
        ("A1,1,50,260,0", "a", "outside"),
        ("A1,1,98,40,-60", "a", "nothing has the colour"),
        ("A1,1,1,0,60", "a", "nothing has the colour"),
        ("A1,1,100,0,-128", "a", "nothing has the colour"),
        ("A1,1,50,0,129", "b", "outside -128 to 128"),
        ("A1,1,50,inf,0", "a", "not a number"),
        ("A1,1,,0,0", "l", "empty"),
        ("A1,1,nan,0,0", "l", "not a number"),
    ],
)
def test_an_impossible_colour_is_told_and_its_sample_stays_without_colours(
    tmp_path: Path, row: str, column: str, reason: str
) -> None:
    colours = f"code,share,L,a,b\n{row}\nB2,1,50,0,0\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, colours=colours))
    assert [sample.code for sample in catalogue.samples] == ["A1", "B2"]
    assert catalogue["A1"].colours == ()
    assert catalogue["A1"].thickness == Length.mm_of("1.4")
    told = [p for p in problems if not p.is_notice]
    assert [(p.file, p.row, p.column) for p in told] == [("colours.csv", 2, column)]
    assert reason in told[0].reason
    assert any("A1 has a bad row in colours.csv" in text for text in notices(problems))


def test_a_bad_share_alone_costs_no_colour(tmp_path: Path) -> None:
    colours = "code,share,L,a,b\nA1,-1,50,0,0\nB2,0.7,60,8,22\nB2,some,45,9,18\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, colours=colours))
    assert catalogue["A1"].colours == (SampleColour((50, 0, 0), 1.0),)
    assert [round(c.share, 9) for c in catalogue["B2"].colours] == [0.7, 0.3]
    assert {(p.row, p.column) for p in problems if not p.is_notice} == {(2, "share"), (4, "share")}
    assert any("what the others leave is used" in text for text in notices(problems))


@pytest.mark.parametrize(
    ("shares", "left"),
    [
        (("0.6", "0.3", "0.1"), [0.6 / 0.9, 0.3 / 0.9]),
        (("60", "30", "10"), [0.6 / 0.9, 0.3 / 0.9]),
        (("0.5", "0.3", "0.2"), []),
        (("", "", ""), []),
        (("0.6", "0.3", ""), []),
    ],
)
def test_a_sample_outlives_a_small_bad_colour_and_loses_its_look_with_a_large_or_unknown_one(
    tmp_path: Path, shares: tuple[str, str, str], left: list[float]
) -> None:
    first, second, bad = shares
    spectra = SPECTRUM_HEADER + spectrum_line("B2", "3", "0.3")
    colours = (
        f"code,share,L,a,b\nA1,1,95,0,3\nB2,{bad},60,8,x\nB2,{first},60,8,22\nB2,{second},45,9,18\n"
    )
    folder = write_folder(tmp_path, colours=colours, spectra=spectra)
    catalogue, problems = read_catalogue_folder(folder)
    assert [colour.share for colour in catalogue["B2"].colours] == pytest.approx(left)
    assert [(p.file, p.row, p.column) for p in problems if not p.is_notice] == [
        ("colours.csv", 3, "b")
    ]
    assert any("bad row" in text and "B2" in text for text in notices(problems))
    # The reflectance is the third row's, though the first is bad.
    assert [c.spectrum is not None for c in catalogue["B2"].colours] == [False, True][: len(left)]


def test_a_brightened_white_that_reflects_a_little_blue_too_much_is_accepted(
    tmp_path: Path,
) -> None:
    colours = "code,share,L,a,b\nA1,1,97,1,-8\nB2,1,50,0,0\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, colours=colours))
    assert "A1" in catalogue
    assert not problems


@pytest.mark.parametrize("lab", ["85,-16,-42", "20,40,40", "30,50,55"])
def test_a_colour_more_vivid_than_a_surface_is_kept_with_a_remark(tmp_path: Path, lab: str) -> None:
    colours = f"code,share,L,a,b\nA1,1,{lab}\nB2,1,50,0,0\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, colours=colours))
    assert catalogue["A1"].colours[0].lab == tuple(float(part) for part in lab.split(","))
    assert errors(problems) == []
    assert "colours.csv row 2, column a: " in notices(problems)[0]
    assert "more vivid than a surface can be" in notices(problems)[0]


def test_shares_are_scaled_to_one_and_sorted_and_it_is_said_when_they_were_far_off(
    tmp_path: Path,
) -> None:
    colours = "code,share,L,a,b\nA1,30,40,0,0\nA1,70,50,0,0\nB2,,50,0,0\nB2,,60,0,0\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, colours=colours))
    assert [colour.share for colour in catalogue["A1"].colours] == [0.7, 0.3]
    assert [colour.share for colour in catalogue["B2"].colours] == [0.5, 0.5]
    assert "add up to 100" in notices(problems)[0]
    assert "equal shares" in notices(problems)[1]


def test_a_sample_without_colours_loads_and_says_that_it_cannot_be_ranked(tmp_path: Path) -> None:
    catalogue, problems = read_catalogue_folder(
        write_folder(tmp_path, colours="code,share,L,a,b\nA1,1,50,0,0\nZ9,1,50,0,0\n")
    )
    assert catalogue["B2"].colours == ()
    assert any("not ranked" in text for text in notices(problems))
    assert any("Z9 is no usable sample" in text for text in notices(problems))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252"])
def test_any_usual_encoding_gives_the_same_names(tmp_path: Path, encoding: str) -> None:
    samples = SAMPLES.replace("Chalk", "Crème brûlée")
    folder = write_folder(tmp_path, samples=samples.encode(encoding))
    catalogue, problems = read_catalogue_folder(folder)
    assert catalogue["A1"].name == "Crème brûlée"
    assert not errors(problems)
    assert bool(notices(problems)) == (encoding not in {"utf-8", "utf-8-sig"})


def test_semicolons_with_decimal_commas_are_read_and_told(tmp_path: Path) -> None:
    samples = "code;kind;thickness_mm;price\nA1;mat;1,4;12,50\nB2;mat;1.5;3\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert catalogue["A1"].thickness == Length.mm_of("1.4")
    assert catalogue["A1"].price == Decimal("12.50")
    assert "semicolons" in notices(problems)[0]


def test_a_comma_inside_a_figure_of_a_comma_file_is_refused_because_it_may_be_thousands(
    tmp_path: Path,
) -> None:
    samples = 'code,kind,sheet_w_mm\nA1,mat,"1,016"\nB2,mat,1016\n'
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert catalogue["A1"].sheet_w is None
    assert catalogue["B2"].sheet_w == Length.mm_of("1016")
    assert "contains a comma" in errors(problems)[0]


def test_missing_columns_and_files_are_one_sentence_each(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match=r"samples\.csv has no column kind"):
        read_catalogue_folder(write_folder(tmp_path, samples="code,name\nA1,x\n"))
    with pytest.raises(CatalogueError, match=r"colours\.csv has no column a and no column b"):
        read_catalogue_folder(write_folder(tmp_path, colours="code,L\nA1,5\n"))
    (tmp_path / "colours.csv").unlink()
    with pytest.raises(CatalogueError, match=r"has no colours\.csv"):
        read_catalogue_folder(write_folder_without(tmp_path))
    with pytest.raises(CatalogueError, match="is not there"):
        read_catalogue_folder(tmp_path / "nowhere")
    with pytest.raises(CatalogueError, match="cannot be read as a folder"):
        read_catalogue_folder(tmp_path / "samples.csv")


def write_folder_without(folder: Path) -> Path:
    """Write the samples alone."""
    (folder / "samples.csv").write_text(SAMPLES)
    return folder


def test_a_folder_without_one_good_row_names_the_first_thing_to_put_right(tmp_path: Path) -> None:
    folder = write_folder(tmp_path, samples="code,kind\nA1,window\n")
    with pytest.raises(CatalogueError, match=r"put this right first: .*row 2, column kind"):
        read_catalogue_folder(folder)


def test_an_unknown_column_is_told_with_what_may_be_meant(tmp_path: Path) -> None:
    samples = "code,kind,thicknes_mm\nA1,mat,1.4\n"
    _, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert "is thickness_mm meant" in notices(problems)[0]


def test_a_picture_in_other_letter_case_is_used_and_told(tmp_path: Path) -> None:
    folder = write_folder(tmp_path)
    (folder / "textures").mkdir()
    Image.new("L", (8, 8), 128).save(folder / "textures" / "a1.PNG")
    catalogue, problems = read_catalogue_folder(folder)
    assert catalogue["A1"].texture_file == "a1.PNG"
    assert "the picture is called a1.PNG" in notices(problems)[0]


def test_a_texture_that_is_missing_or_a_path_is_told(tmp_path: Path) -> None:
    samples = "code,kind,texture\nA1,mat,none.png\nB2,mat,../../secret.png\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert catalogue["A1"].texture_file == ""
    assert catalogue["B2"].texture_file == ""
    assert "textures/none.png is not there" in notices(problems)[-1]
    assert "is a path" in errors(problems)[0]


def spectrum_line(code: str, colour: str, value: str) -> str:
    return ",".join([code, colour, *[value] * 36]) + "\n"


SPECTRUM_HEADER = ",".join(["code", "colour", *(f"nm{nm}" for nm in range(380, 731, 10))]) + "\n"


@pytest.mark.parametrize(
    ("value", "reason"),
    [
        ("55", "not per cent"),
        ("1.5", "over 100 %"),
        ("-0.1", "negative"),
        ("", "all of these columns are needed"),
        ("x", "not a number"),
    ],
)
def test_a_bad_spectrum_is_unknown_but_its_sample_stays(
    tmp_path: Path, value: str, reason: str
) -> None:
    spectra = SPECTRUM_HEADER + spectrum_line("A1", "1", value) + spectrum_line("B2", "2", "0.3")
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, spectra=spectra))
    assert catalogue["A1"].colours[0].spectrum is None
    assert catalogue["B2"].colours[1].spectrum == (0.3,) * 36
    assert reason in errors(problems)[0]


def test_two_spectra_for_one_colour_keep_the_first(tmp_path: Path) -> None:
    spectra = SPECTRUM_HEADER + spectrum_line("A1", "1", "0.3") + spectrum_line("A1", "1", "0.4")
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, spectra=spectra))
    assert catalogue["A1"].colours[0].spectrum == (0.3,) * 36
    assert "already" in errors(problems)[0]


def test_a_cross_section_is_ordered_and_one_that_goes_back_is_unknown(tmp_path: Path) -> None:
    profiles = "code,order,x_mm,height_mm\nB2,2,25.4,22\nB2,1,0,20\nA1,1,3,1\nA1,2,1,1\nZ9,1,0,0\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, profiles=profiles))
    assert catalogue["B2"].profile == Profile(((0.0, 20.0), (25.4, 22.0)))
    assert catalogue["A1"].profile is None
    assert {p.row for p in problems if p.file == "profiles.csv"} == {4, 6}


@pytest.mark.parametrize("bad", ["B2,x,0,0", "B2,3,,4", "B2,3,30,-1"])
def test_a_cross_section_with_a_bad_point_is_unknown_and_its_sample_stays(
    tmp_path: Path, bad: str
) -> None:
    profiles = f"code,order,x_mm,height_mm\nB2,1,0,20\nB2,2,25.4,22\n{bad}\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, profiles=profiles))
    assert catalogue["B2"].profile is None
    assert len(catalogue["B2"].colours) == 2
    assert [p.row for p in problems if p.file == "profiles.csv" and not p.is_notice] == [4, 2]
    assert "stays unknown" in errors(problems)[1]


def test_problems_stand_in_the_order_of_the_files_however_the_rows_are_read(
    tmp_path: Path,
) -> None:
    samples = "code,kind,face_mm\nA1,mat,\nB2,moulding,wide\nA1,mat,\n"
    colours = "code,share,L,a,b\nQ1,1,0,0,0\nA1,1,x,0,0\nB2,1,50,0,0\n"
    folder = write_folder(tmp_path, samples=samples, colours=colours, spectra="code,colour\n")
    _, problems = read_catalogue_folder(folder)
    told = [(p.file, p.row) for p in problems]
    assert told[:2] == [("samples.csv", 3), ("samples.csv", 4)]
    assert told[2:4] == [("colours.csv", 2), ("colours.csv", 3)]
    assert len(told) == len(set(told))


def test_a_rabbet_as_wide_as_its_face_is_unknown_and_one_deeper_than_its_wood_is_remarked_on(
    tmp_path: Path,
) -> None:
    samples = (
        "code,kind,face_mm,thickness_mm,rabbet_width_mm,rabbet_depth_mm\n"
        "A1,moulding,6,20,6,10\nB2,moulding,30,20,6,21\nC3,wood_fillet,5,6,7,4\n"
    )
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert [sample.code for sample in catalogue.samples] == ["A1", "B2", "C3"]
    assert catalogue["A1"].rabbet_width is None
    assert catalogue["A1"].face == Length.mm_of("6")
    assert catalogue["B2"].rabbet_depth == Length.mm_of("21")
    assert catalogue["B2"].thickness == Length.mm_of("20")
    assert [p.column for p in problems if not p.is_notice] == ["rabbet_width_mm"]
    assert "deeper than the moulding is thick" in notices(problems)[0]


def test_claims_keep_scope_and_date_and_bad_ones_are_told(tmp_path: Path) -> None:
    claims = (
        "code,claim,scope,date,source\n"
        "A1,acid free core,core,2024-05-31,maker\n"
        "A1,passes the PAT (ISO 18916),range,,\n"
        "A1,,core,,\nA1,x,everywhere,,\nA1,x,core,31.5.24,\nZ9,x,core,,\n"
    )
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, conservation=claims))
    assert catalogue["A1"].conservation_facts == (
        ConservationFact("acid free core", ClaimScope.CORE, date(2024, 5, 31), "maker"),
        ConservationFact("passes the PAT (ISO 18916)", ClaimScope.RANGE),
    )
    assert [(p.row, p.column) for p in problems if not p.is_notice] == [
        (4, "claim"),
        (5, "scope"),
        (6, "date"),
    ]
    assert "holds for the tested colour" in notices(problems)[0]


def test_cells_beyond_the_header_and_an_open_quote_are_told(tmp_path: Path) -> None:
    samples = 'code,kind\nA1,mat\nB2,mat,12,5\nC3,"mat\nD4,mat\n' + "x" * 200_000
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert [sample.code for sample in catalogue.samples] == ["A1"]
    assert "4 cells but the header names 2" in errors(problems)[0]
    assert "quote mark never closed" in errors(problems)[1]


def test_a_broken_description_is_told_and_the_tables_are_read_without_it(tmp_path: Path) -> None:
    folder = write_folder(tmp_path)
    (folder / "datapackage.json").write_text("{")
    catalogue, problems = read_catalogue_folder(folder)
    assert len(catalogue) == 2
    assert "not readable JSON" in notices(problems)[0]


def test_problems_beyond_the_limit_are_counted_and_not_kept(tmp_path: Path) -> None:
    samples = "code,kind\nA1,mat\n" + "".join(f"X{i},bad\n" for i in range(2500))
    _, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert len(problems) == 2001
    assert "more problems are not listed" in str(problems[-1])


texts = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), max_size=20
).map(str.strip)
codes = texts.filter(lambda t: t and not set("/\\") & set(t) and ".." not in t and t != ".")
dates = st.none() | st.dates()
lengths = st.none() | st.fractions(0, 5000, max_denominator=1000).map(Length)
shares = st.lists(st.floats(0.01, 1), min_size=0, max_size=4)


@st.composite
def samples(draw: st.DrawFn) -> Sample:
    parts = draw(shares)
    colours = sorted(
        (
            SampleColour(
                (draw(st.floats(20, 95)), draw(st.floats(-8, 8)), draw(st.floats(-8, 8))),
                part / sum(parts),
                draw(st.none() | st.tuples(*[st.floats(0, 1)] * 36)),
            )
            for part in parts
        ),
        key=lambda colour: -colour.share,
    )
    points = draw(st.lists(st.tuples(st.floats(0, 90), st.floats(0, 40)), min_size=2, max_size=4))
    return Sample(
        code=draw(codes),
        name=draw(texts.filter(bool)),
        kind=draw(st.sampled_from(Kind)),
        colours=tuple(colours),
        thickness=draw(lengths),
        bevel=draw(lengths),
        stick=draw(lengths),
        surface=draw(st.none() | st.sampled_from(Surface)),
        finish=draw(st.none() | st.sampled_from(Finish)),
        material=draw(texts),
        density_kg_m3=draw(st.none() | st.floats(1, 30000)),
        texture_mm_per_px=draw(st.none() | st.floats(1e-3, 10)),
        price=draw(st.none() | st.decimals(0, 999, places=2)),
        price_per=draw(st.none() | st.sampled_from(PriceBasis)),
        in_stock=draw(st.none() | st.booleans()),
        profile=draw(st.none() | st.just(Profile(tuple(_rounded(sorted(points)))))),
        join=draw(st.sampled_from(["", "mitre", "butt"])),
        conservation=draw(texts),
        colour_origin=draw(texts),
        tags=tuple(draw(st.lists(texts.filter(lambda t: t and ";" not in t), max_size=3))),
        conservation_facts=tuple(
            ConservationFact(claim, draw(st.sampled_from([None, *ClaimScope])), draw(dates), "us")
            for claim in draw(st.lists(texts.filter(bool), max_size=2))
        ),
    )


def _rounded(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(round(x, 3), round(y, 3)) for x, y in points]


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(samples(), min_size=1, max_size=3, unique_by=lambda s: s.code))
def test_writing_and_reading_gives_back_the_very_same_samples(
    tmp_path_factory: pytest.TempPathFactory, written: list[Sample]
) -> None:
    folder = tmp_path_factory.mktemp("catalogue")
    write_catalogue_folder(folder, Catalogue(tuple(written), name="Round trip"))
    catalogue, problems = read_catalogue_folder(folder)
    assert errors(problems) == []
    assert catalogue.samples == tuple(written)
    assert catalogue.name == "Round trip"


def test_no_written_cell_starts_a_spreadsheet_formula(tmp_path: Path) -> None:
    sample = Sample("=1+1", "+cmd|' /C calc'!A0", Kind.MAT, (), tags=("@SUM(A1)",), material="-2")
    write_catalogue_folder(tmp_path, Catalogue((sample,)))
    cells = (tmp_path / "samples.csv").read_text().splitlines()[1].split(",")
    assert not [cell for cell in cells if cell.lstrip('"')[:1] in {"=", "+", "-", "@"}]
    assert read_catalogue_folder(tmp_path)[0].samples == (sample,)


def test_a_written_folder_is_a_valid_data_package_with_its_textures(tmp_path: Path) -> None:
    shipped = Path(__file__).parents[2] / "catalog"
    catalogue, _ = read_catalogue_folder(shipped)
    few = replace(catalogue, samples=catalogue.samples[::40])
    stated = replace(few.samples[0], colour_origin="stated at import: figures for D65")
    few = replace(few, samples=(stated, *few.samples[1:]))
    write_catalogue_folder(tmp_path, few)
    report = frictionless.validate(str(tmp_path / "datapackage.json"))
    assert report.valid, report.flatten(["type", "message"])
    again, problems = read_catalogue_folder(tmp_path)
    assert problems == ()
    assert repr(again.samples) == repr(few.samples)  # nan bands are unequal to themselves
    names = [
        r["name"] for r in json.loads((tmp_path / "datapackage.json").read_text())["resources"]
    ]
    assert names == ["samples", "colours", "spectra", "profiles", "conservation", "textures"]
    write_catalogue_folder(tmp_path, again)  # onto itself
    assert repr(read_catalogue_folder(tmp_path)[0].samples) == repr(few.samples)


def test_a_cross_section_of_one_point_is_none(tmp_path: Path) -> None:
    profiles = "code,order,x_mm,height_mm\nB2,1,0,20\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, profiles=profiles))
    assert catalogue["B2"].profile is None
    assert "needs two points" in errors(problems)[0]


def test_a_price_or_length_too_large_to_be_one_is_told(tmp_path: Path) -> None:
    samples = "code,kind,price,face_mm\nA1,mat,inf,3\nB2,mat,2,3e400\n"
    catalogue, problems = read_catalogue_folder(write_folder(tmp_path, samples=samples))
    assert (catalogue["A1"].price, catalogue["B2"].face) == (None, None)
    assert "inf is not a price that can be" in errors(problems)[0]
    assert "column face_mm" in errors(problems)[1]


def test_textures_that_cannot_be_copied_or_described_are_one_sentence(tmp_path: Path) -> None:
    sample = Sample("A", "A", Kind.MAT, (), texture_file="gone.png")
    catalogue = Catalogue((sample,), str(tmp_path / "none" / "textures"))
    with pytest.raises(OutputError, match="cannot be filled"):
        write_catalogue_folder(tmp_path / "out", catalogue)
    (tmp_path / "new" / "datapackage.json").mkdir(parents=True)
    with pytest.raises(OutputError, match="cannot be written"):
        write_catalogue_folder(tmp_path / "new", Catalogue((Sample("A", "A", Kind.MAT, ()),)))


def test_a_folder_that_cannot_be_written_is_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    catalogue = Catalogue((Sample("A", "A", Kind.MAT, ()),))
    with pytest.raises(OutputError, match="cannot be made"):
        write_catalogue_folder(tmp_path / "file" / "x", catalogue)
    (tmp_path / "samples.csv").mkdir()
    with pytest.raises(OutputError, match="cannot be written"):
        write_catalogue_folder(tmp_path, catalogue)


def test_rows_that_belong_to_no_sample_wait_in_no_memory(tmp_path: Path) -> None:
    def peak(orphans: int) -> int:
        colours = COLOURS + "".join(f"Q{i},1,50,{i % 20},0\n" for i in range(orphans))
        folder = write_folder(tmp_path, colours=colours)
        tracemalloc.start()
        read_catalogue_folder(folder)
        most = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return most

    few, many = peak(10_000), peak(24_000)  # both fill the caches of cells
    assert many < few + 700_000  # waiting, the further ones would take three million
