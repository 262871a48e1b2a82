"""A spreadsheet with names of its own read as samples."""

from decimal import Decimal
from pathlib import Path

import pytest

from framing_palette.catalogue import Kind, PriceBasis
from framing_palette.catalogue.column_matching import (
    ColumnMatch,
    guess_match,
    preview_matched_file,
    read_matched_file,
)
from framing_palette.catalogue.sample_rows import SAMPLE_COLUMNS
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
    match = guess_match(SHEET.splitlines()[0].split(","), kind=Kind.MOULDING)
    preview = preview_matched_file(sheet, match, rows=2)
    assert [sample.code for sample in preview.samples] == ["R1", "R2"]
    assert preview.unused == ("remarks",)
    assert len(preview.problems) == 1


def test_good_rows_are_read_and_bad_ones_told(sheet: Path) -> None:
    match = guess_match(SHEET.splitlines()[0].split(","), kind=Kind.MOULDING)
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
