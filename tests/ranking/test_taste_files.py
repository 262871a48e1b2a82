"""A shop's choices on disk: whole or not at all, read with care."""

import json
from pathlib import Path

import pytest

from framing_palette.errors import OutputError, TasteFileError
from framing_palette.ranking import Taste, read_taste_file, taste_files, write_taste_file
from tests.ranking.taste_by_hand import shop


def test_a_written_taste_is_read_again_equal_and_its_folder_is_made(tmp_path: Path):
    path = tmp_path / "shop" / "taste.json"
    write_taste_file(path, shop(5))
    found = read_taste_file(path)
    assert found.taste == shop(5)
    assert found.faults == ()
    assert [one.name for one in path.parent.iterdir()] == ["taste.json"]


def test_a_damaged_entry_is_told_with_file_and_place_and_the_rest_is_read(tmp_path: Path):
    path = tmp_path / "taste.json"
    write_taste_file(path, shop(5))
    report = json.loads(path.read_text())
    report["choices"][1]["better"] = "much"
    path.write_text(json.dumps(report))
    found = read_taste_file(path)
    assert len(found.taste.choices) == 4
    assert len(found.faults) == 1
    assert str(path) in found.faults[0]
    assert "choices, number 2, better" in found.faults[0]


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "not whole JSON"),
        (b'{"schema": "framing-pal', "not whole JSON"),
        (b"\xff\xfe\x00", "not whole JSON"),
        (b"[" * 100_000, "not whole JSON"),
        (b"[1, 2]", "schema"),
        (b'{"schema": "framing-palette/taste@99"}', "schema"),
    ],
)
def test_what_is_no_taste_file_is_refused_in_one_sentence(tmp_path: Path, content, said):
    path = tmp_path / "taste.json"
    path.write_bytes(content)
    with pytest.raises(TasteFileError, match=said) as caught:
        read_taste_file(path)
    assert str(path) in str(caught.value)


def test_a_missing_file_is_named(tmp_path: Path):
    with pytest.raises(TasteFileError, match="cannot be read"):
        read_taste_file(tmp_path / "none.json")


def test_a_file_that_is_too_large_is_refused_before_it_is_read(tmp_path: Path, monkeypatch):
    path = tmp_path / "taste.json"
    write_taste_file(path, shop(5))
    monkeypatch.setattr(taste_files, "MOST_BYTES", 100)
    with pytest.raises(TasteFileError, match="larger than"):
        read_taste_file(path)


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path):
    (tmp_path / "shop").write_text("a file where the folder should be")
    with pytest.raises(OutputError, match="cannot be written"):
        write_taste_file(tmp_path / "shop" / "taste.json", Taste())


def test_a_damaged_file_is_set_aside_under_a_name_that_is_free(tmp_path: Path):
    names = []
    for content in ("first", "second"):
        path = tmp_path / "taste.json"
        path.write_text(content)
        aside = taste_files.set_aside(path)
        assert aside is not None
        assert aside.read_text() == content
        names.append(aside.name)
    assert names == ["taste-damaged-1.json", "taste-damaged-2.json"]
    assert taste_files.set_aside(tmp_path / "gone.json") is None
