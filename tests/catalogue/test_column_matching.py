"""A spreadsheet with names of its own read as samples."""

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from framing_palette.catalogue import Kind, PriceBasis
from framing_palette.catalogue.column_matching import ColumnMatch, guess_match
from framing_palette.catalogue.conditions import Conditions
from framing_palette.catalogue.matched_table_files import preview_matched_file, read_matched_file
from framing_palette.catalogue.sample_rows import SAMPLE_COLUMNS
from framing_palette.colour import delta_e_2000
from framing_palette.errors import CatalogueError
from framing_palette.units import Length

from .folders import errors

SHEET = (
    "Item No.,Description,Face Width (in),Rebate depth mm,Net price,UoM,L*,a*,b*,Remarks\n"
    "R1,Oak flat,1 1/2,12,14.50,metre,60,8,22,nice\n"
    "R2,Ash flat,wide,12,14.50,metre,70,4,18,\n"
    "R3,Bare,1,12,14.50,metre,,,,\n"
    "R1,Again,1,12,1,metre,60,8,22,\n"
    "R5,Odd,1,12,1,metre,160,8,22,\n"
)


def supplied() -> ColumnMatch:
    """The guess for SHEET, once somebody has said what its colours hold for."""
    guess = guess_match(SHEET.splitlines()[0].split(","), kind=Kind.MOULDING)
    return replace(guess, stated=Conditions("D50", 2))


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "supplier.csv"
    path.write_text(SHEET)
    return path


def test_usual_words_are_matched_with_their_units() -> None:
    match = guess_match(SHEET.splitlines()[0].split(","), kind=Kind.MOULDING)
    assert match.columns == {
        "code": "Item No.",
        "name": "Description",
        "face_mm": "Face Width (in)",
        "rabbet_depth_mm": "Rebate depth mm",
        "price": "Net price",
        "price_per": "UoM",
        "L": "L*",
        "a": "a*",
        "b": "b*",
    }
    assert match.units == {"face_mm": "in", "rabbet_depth_mm": "mm"}


def test_our_own_columns_are_matched_with_themselves() -> None:
    match = guess_match([*SAMPLE_COLUMNS, "L", "a", "b"])
    lengths = {column for column in SAMPLE_COLUMNS if column.endswith("_mm")}
    assert lengths <= set(match.columns)
    for column in ("code", "name", "kind", "price", "finish", "tags", "L", "a", "b", *lengths):
        assert match.columns[column] == column


def test_a_slightly_misspelt_column_is_still_found_and_no_column_is_used_twice() -> None:
    match = guess_match(["SKU", "Descripton", "Thicknes"])
    assert match.columns == {"code": "SKU", "name": "Descripton", "thickness_mm": "Thicknes"}
    assert guess_match(["width"]).columns == {"face_mm": "width"}


def test_the_preview_shows_the_first_rows_and_what_is_not_used(sheet: Path) -> None:
    match = supplied()
    preview = preview_matched_file(sheet, match, rows=2)
    assert [sample.code for sample in preview.samples] == ["R1", "R2"]
    assert preview.unused == ("remarks",)
    assert len(preview.problems) == 1


def test_good_rows_are_read_and_bad_ones_told(sheet: Path) -> None:
    match = supplied()
    samples, problems = read_matched_file(sheet, match)
    assert [sample.code for sample in samples] == ["R1", "R2", "R3", "R5"]
    first = samples[0]
    assert first.face == Length.inches("1 1/2")
    assert first.rabbet_depth == Length.mm_of(12)
    assert first.price == Decimal("14.50")
    assert first.price_per is PriceBasis.METRE
    assert first.kind is Kind.MOULDING
    assert first.colours[0].lab == (60, 8, 22)
    assert (samples[1].face, samples[1].colours[0].lab) == (None, (70, 4, 18))
    assert samples[2].colours == samples[3].colours == ()
    told = errors(problems)
    assert len(told) == 3
    assert '"wide" is not a length' in told[0]
    assert "R1 stands in row 2 already" in told[1]
    assert "row 6, column l: 160 is outside" in told[2]


def test_the_unit_of_bare_lengths_is_the_one_that_was_stated(tmp_path: Path) -> None:
    path = tmp_path / "x.csv"
    path.write_text("c,w,k\nA,2.5,liner\n")
    match = ColumnMatch({"code": "c", "face_mm": "w", "kind": "k"}, Kind.MAT, unit="cm")
    (sample,), _ = read_matched_file(path, match)
    assert sample.face == Length.mm_of(25)
    assert sample.kind is Kind.LINER


def test_without_a_code_nothing_is_read(sheet: Path) -> None:
    with pytest.raises(CatalogueError, match="taken for the code"):
        read_matched_file(sheet, ColumnMatch({"name": "Description"}))


def test_colours_whose_light_nobody_tells_are_left_out_and_the_rest_is_read(sheet: Path) -> None:
    guess = guess_match(SHEET.splitlines()[0].split(","), kind=Kind.MOULDING)
    assert guess.lacks_light
    samples, problems = read_matched_file(sheet, guess)
    assert [sample.code for sample in samples] == ["R1", "R2", "R3", "R5"]
    assert all(sample.colours == () for sample in samples)
    assert "does not tell their illuminant" in errors(problems)[0]


def test_what_was_stated_of_the_light_is_used_and_kept_with_the_sample(sheet: Path) -> None:
    under_d65 = replace(supplied(), stated=Conditions("D65", 2))
    (first, *_), _ = read_matched_file(sheet, under_d65)
    (plain, *_), _ = read_matched_file(sheet, supplied())
    assert first.colour_origin == "stated at import: figures for D65, 2 degree observer"
    assert plain.colours[0].lab == (60, 8, 22)
    moved = delta_e_2000(first.colours[0].lab, plain.colours[0].lab)
    assert 0.2 < moved < 3  # Bradford from D65 moves an orange a little


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (("L", "a", "b"), Conditions("D50", 2)),
        (("L* (D65/10)", "a* (D65/10)", "b* (D65/10)"), Conditions("D65", 10)),
        (("L* D50 2°", "a*", "b*"), Conditions("D50", 2)),
        (("L*", "a*", "b*"), Conditions("", None)),
    ],
)
def test_the_light_is_known_where_the_names_of_the_columns_tell_it(
    names: tuple[str, str, str], told: Conditions
) -> None:
    match = guess_match(["code", *names])
    assert {match.columns[axis] for axis in ("L", "a", "b")} == set(names)
    assert match.told == told
    assert match.lacks_light == (told == Conditions())


def test_figures_for_ten_degrees_are_left_out_with_the_reason(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_text("code,kind,L*,a*,b*\nA,mat,50,1,2\n")
    match = replace(guess_match(["code", "kind", "L*", "a*", "b*"]), stated=Conditions("D65", 10))
    (sample,), problems = read_matched_file(path, match)
    assert sample.colours == ()
    assert "10 degree observer" in errors(problems)[0]


def test_a_column_taken_for_another_fact_is_given_up_where_it_was(sheet: Path) -> None:
    match = supplied().taking("rabbet_depth_mm", "Face Width (in)")
    assert "face_mm" not in match.columns
    assert match.units == {"rabbet_depth_mm": "in"}
    samples, _ = read_matched_file(sheet, match)
    assert samples[0].rabbet_depth == Length.inches("1 1/2")
    assert samples[0].face is None
    assert "rabbet_depth_mm" not in match.taking("rabbet_depth_mm", "").columns


def test_a_decimal_comma_can_be_stated_for_a_file_with_commas_between_its_cells(
    tmp_path: Path,
) -> None:
    path = tmp_path / "a.csv"
    path.write_text('code,kind,price\nA,mat,"12,5"\n')
    guess = guess_match(["code", "kind", "price"])
    assert read_matched_file(path, guess)[0][0].price is None
    stated = replace(guess, has_decimal_comma=True)
    assert read_matched_file(path, stated)[0][0].price == Decimal("12.5")


def test_the_first_rows_are_shown_as_they_are_read_with_what_is_wrong_in_each_cell(
    sheet: Path,
) -> None:
    first, second, _, again, odd = preview_matched_file(sheet, supplied()).rows
    assert first.cells["face_mm"] == "38.1"
    assert first.cells["L"] == "60.00"
    assert first.cells["price_per"] == "metre"
    assert first.faults == {}
    assert second.cells["face_mm"] == ""
    assert "is not a length" in second.faults["face_mm"]
    assert "stands in row 2 already" in again.faults["code"]
    assert again.cells["name"] == "Again"
    assert "outside 0 to 100" in odd.faults["L"]
