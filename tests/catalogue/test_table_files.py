"""Rows of text out of whatever a spreadsheet saved."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.table_files import guarded, open_table, unguarded, write_table
from framing_palette.errors import CatalogueError


def rows(path: Path) -> tuple[list[str], list[dict[str, str]], list[str]]:
    problems = ProblemList()
    header, found = open_table(path, problems)
    return header, [row.cells for row in found], [str(problem) for problem in problems]


@given(st.text())
def test_guarding_is_undone_exactly_and_leaves_no_formula(text: str) -> None:
    assert unguarded(guarded(text)) == text
    assert not guarded(text).startswith(("=", "+", "-", "@", "\t", "\r"))


def test_tabs_separate_columns_and_empty_rows_are_skipped(tmp_path: Path) -> None:
    path = tmp_path / "x.csv"
    path.write_text("Code\tName\n\nA\tone, two\n\t\n")
    header, found, told = rows(path)
    assert header == ["code", "name"]
    assert found == [{"code": "A", "name": "one, two"}]
    assert "separated by tabs" in told[0]


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "is empty"),
        (b"code,name,Code\n", "names the column code twice"),
        (b'code,"' + b"x" * 200_000, "has no readable header"),
        ("code,näme\n".encode("utf-16")[:-1], "is UTF-16 text cut short"),
    ],
)
def test_a_table_that_cannot_be_one_is_refused(
    tmp_path: Path, content: bytes, message: str
) -> None:
    (tmp_path / "x.csv").write_bytes(content)
    with pytest.raises(CatalogueError, match=message):
        rows(tmp_path / "x.csv")


def test_a_missing_or_huge_table_is_one_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(CatalogueError, match="cannot be read"):
        rows(tmp_path / "none.csv")
    monkeypatch.setattr("framing_palette.catalogue.table_files.LARGEST_FILE_BYTES", 3)
    (tmp_path / "x.csv").write_text("code\n")
    with pytest.raises(CatalogueError, match="too much for a sample table"):
        rows(tmp_path / "x.csv")


def test_ten_million_lines_are_refused_and_not_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("framing_palette.catalogue.table_files.MOST_ROWS", 10)
    (tmp_path / "x.csv").write_text("code\n" + "A\n" * 50)
    _, stream = open_table(tmp_path / "x.csv", ProblemList())
    with pytest.raises(CatalogueError, match="more than 10 rows"):
        for _ in stream:
            pass


def test_bytes_that_windows_leaves_undefined_are_still_read(tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_bytes(b"code,name\nA,\x81\xe9\n")
    assert rows(tmp_path / "x.csv")[1] == [{"code": "A", "name": "\x81é"}]


def test_what_is_written_is_read(tmp_path: Path) -> None:
    write_table(tmp_path / "x.csv", ["code", "name"], [["A", 'a "b", c'], ["B", "é"]])
    assert rows(tmp_path / "x.csv")[1] == [
        {"code": "A", "name": 'a "b", c'},
        {"code": "B", "name": "é"},
    ]


def test_a_problem_names_its_place_as_far_as_it_has_one() -> None:
    assert str(CellProblem("a.csv", 3, "x", "bad")) == "a.csv row 3, column x: bad."
    assert str(CellProblem("a.csv", None, "x", "bad")) == "a.csv column x: bad."
    assert str(CellProblem("a.csv", None, "", "bad")) == "a.csv: bad."


def test_problems_are_counted_beyond_what_is_kept_and_remarks_do_not_count() -> None:
    problems = ProblemList(limit=2)
    problems.extend([CellProblem("a", i, "", "bad", is_notice=i == 0) for i in range(5)])
    assert problems.count == 4
    assert len(list(problems)) == 2
    assert "3 more problems" in str(problems.told()[-1])
