"""CGATS text: parsing, refusing, writing, and LittleCMS as a second opinion."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue.cgats import CgatsTable, cgats_text, parse_cgats
from framing_palette.errors import ExchangeFileError

from .littlecms import read_with_littlecms, write_with_littlecms

SOURCE = Path("export.txt")
PLAIN = """CGATS.17
ORIGINATOR "An instrument"
# a remark with BEGIN_DATA in it
NUMBER_OF_FIELDS 4
BEGIN_DATA_FORMAT
SAMPLE_ID LAB_L LAB_A LAB_B
END_DATA_FORMAT
NUMBER_OF_SETS 2
BEGIN_DATA
1 95.1 0.2 3.4   # paper
"2 b" 20 0 0
END_DATA
"""


def test_keywords_fields_and_rows_come_out_as_they_stand() -> None:
    (table,) = parse_cgats(PLAIN, SOURCE)
    assert table.keywords["ORIGINATOR"] == "An instrument"
    assert table.keywords["IDENTIFIER"] == "CGATS.17"
    assert table.fields == ("SAMPLE_ID", "LAB_L", "LAB_A", "LAB_B")
    assert table.rows == (("1", "95.1", "0.2", "3.4"), ("2 b", "20", "0", "0"))
    assert table.first_line == 10


def test_a_second_table_without_a_format_keeps_the_fields_of_the_first() -> None:
    second = 'DESCRIPTOR "more"\nNUMBER_OF_SETS 1\nBEGIN_DATA\n3 50 1 2\nEND_DATA\n'
    tables = parse_cgats(PLAIN + second, SOURCE)
    assert len(tables) == 2
    assert tables[1].fields == tables[0].fields
    assert tables[1].rows == (("3", "50", "1", "2"),)
    assert tables[1].keywords["DESCRIPTOR"] == "more"


def test_values_of_a_repeated_keyword_are_kept_together() -> None:
    text = PLAIN.replace("ORIGINATOR", 'KEYWORD "A"\nKEYWORD "B"\nORIGINATOR')
    assert parse_cgats(text, SOURCE)[0].keywords["KEYWORD"] == "A; B"


def test_a_row_broken_over_lines_is_put_together_when_the_count_comes_out() -> None:
    text = PLAIN.replace("1 95.1 0.2 3.4", "1 95.1\n0.2 3.4")
    assert parse_cgats(text, SOURCE)[0].rows[0] == ("1", "95.1", "0.2", "3.4")


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (("NUMBER_OF_SETS 2", "NUMBER_OF_SETS 3"), "states NUMBER_OF_SETS 3 but holds 2"),
        (("NUMBER_OF_SETS 2", "NUMBER_OF_SETS two"), "states NUMBER_OF_SETS two but holds 2"),
        (("NUMBER_OF_FIELDS 4", "NUMBER_OF_FIELDS 5"), "states NUMBER_OF_FIELDS 5 but holds 4"),
        (("END_DATA\n", ""), "stops inside BEGIN_DATA"),
        (("END_DATA_FORMAT\n", ""), "BEGIN_DATA in line 8 inside BEGIN_DATA_FORMAT"),
        (("BEGIN_DATA\n1", "1"), "END_DATA in line 11 without BEGIN_DATA"),
        (("SAMPLE_ID LAB_L LAB_A LAB_B\n", ""), "data in line 8 but names no fields"),
        (("1 95.1 0.2", "1 95.1"), "has 3 values in line 10 but names 4 fields"),
    ],
)
def test_a_damaged_file_is_refused_with_its_line_or_count(
    change: tuple[str, str], message: str
) -> None:
    assert change[0] in PLAIN
    with pytest.raises(ExchangeFileError, match=message):
        parse_cgats(PLAIN.replace(*change, 1), SOURCE)


def test_text_without_data_is_refused() -> None:
    with pytest.raises(ExchangeFileError, match="holds no BEGIN_DATA"):
        parse_cgats("a letter to a friend\n", SOURCE)


def test_fields_may_stand_beside_their_mark_and_rows_have_an_end(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = PLAIN.replace("BEGIN_DATA_FORMAT\nSAMPLE_ID", "BEGIN_DATA_FORMAT SAMPLE_ID")
    assert parse_cgats(text, SOURCE)[0].fields[0] == "SAMPLE_ID"
    monkeypatch.setattr("framing_palette.catalogue.cgats.MOST_ROWS", 1)
    with pytest.raises(ExchangeFileError, match="more than 1 rows"):
        parse_cgats(PLAIN, SOURCE)


cells = st.text(st.characters(min_codepoint=32, max_codepoint=126), max_size=12).map(
    lambda text: text.replace('"', "'")
)
names = st.from_regex(r"[A-Z][A-Z_]{0,8}", fullmatch=True).filter(
    lambda n: n not in {"BEGIN_DATA", "END_DATA"}
)


@given(st.data(), st.lists(names, min_size=1, max_size=5, unique=True))
def test_writing_and_parsing_gives_back_the_cells(data: st.DataObject, fields: list[str]) -> None:
    rows = data.draw(st.lists(st.tuples(*[cells.filter(_survives)] * len(fields)), max_size=4))
    table = CgatsTable({"ORIGINATOR": "us"}, tuple(fields), tuple(rows))
    (again,) = parse_cgats(cgats_text([table]), SOURCE)
    assert again.fields == table.fields
    assert again.rows == table.rows


def _survives(text: str) -> bool:
    """A single quote at an end is a quote mark to the format and cannot be told from one."""
    return text == text.strip("'") and text == " ".join(text.split())


def test_littlecms_reads_what_is_written(tmp_path: Path) -> None:
    first = CgatsTable(
        {"ORIGINATOR": "us", "DESCRIPTOR": "two tables"},
        ("SAMPLE_ID", "SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B"),
        (("M-1", "chalk white", "95.25", "-0.5", "2.125"), ("M-2", "black", "16", "0", "0")),
    )
    second = CgatsTable({"ORIGINATOR": "us"}, ("SAMPLE_ID", "XYZ_Y"), (("M-3", "50.5"),))
    path = tmp_path / "ours.txt"
    path.write_text(cgats_text([first, second]))
    tables = read_with_littlecms(path)
    assert [fields for fields, _ in tables] == [list(first.fields), list(second.fields)]
    assert [tuple(row) for row in tables[0][1]] == list(first.rows)
    assert [tuple(row) for row in tables[1][1]] == list(second.rows)


def test_what_littlecms_writes_is_read(tmp_path: Path) -> None:
    path = tmp_path / "theirs.txt"
    fields = ["SAMPLE_ID", "SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B"]
    rows = [["A1", "warm white", "94.2", "0.3", "5.5"], ["A2", "slate", "46.1", "-2", "-4.5"]]
    write_with_littlecms(
        path,
        [({"ORIGINATOR": "LittleCMS"}, fields, rows), ({"DESCRIPTOR": "b"}, fields, rows[:1])],
    )
    tables = parse_cgats(path.read_text(), path)
    assert [list(table.fields) for table in tables] == [fields, fields]
    assert [list(row) for row in tables[0].rows] == rows
    assert [list(row) for row in tables[1].rows] == rows[:1]
    assert tables[0].keywords["ORIGINATOR"] == "LittleCMS"
