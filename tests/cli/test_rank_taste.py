"""``rank --taste FILE``: a shop's own taste on the command line."""

import json
from pathlib import Path

import pytest

from framing_palette.ranking import Taste, fit_taste, write_taste_file
from tests.cli.conftest import Command
from tests.ranking.taste_by_hand import shop

LOVES_LIGHT = {"vivid": 0.0, "depth": -2.0, "foil": 0.2}


@pytest.fixture
def taste_file(tmp_path: Path) -> Path:
    taste = shop(200, weights=LOVES_LIGHT)
    path = tmp_path / "taste.json"
    write_taste_file(path, Taste(taste.choices, (), fit_taste(taste)))
    return path


def test_a_shops_taste_moves_samples_and_changes_no_verdict(
    command: Command, picture: Path, regions: Path, rack: Path, taste_file: Path
) -> None:
    asked = ("rank", picture, "--regions", regions, "--catalog", rack, "--json")
    house, own = command(*asked).json, command(*asked, "--taste", taste_file).json
    verdicts = [{s["code"]: s["verdict"] for s in report["samples"]} for report in (house, own)]
    scores = [{s["code"]: s["score"] for s in report["samples"]} for report in (house, own)]
    assert verdicts[0] == verdicts[1]
    assert scores[0] != scores[1]
    assert "taste" not in house
    assert own["taste"]["in_use"]
    assert own["taste"]["rests_on"] == 200
    assert own["taste"]["foretold"] > own["taste"]["house_foretold"]


def test_a_taste_of_few_choices_leaves_the_house_rule_and_says_so(
    command: Command, picture: Path, regions: Path, rack: Path, tmp_path: Path
) -> None:
    path = tmp_path / "few.json"
    write_taste_file(path, shop(1, weights=LOVES_LIGHT))
    asked = ("rank", picture, "--regions", regions, "--catalog", rack, "--json")
    ended = command(*asked, "--taste", path)
    assert "1 of 12 choices made" in ended.err
    assert ended.json["samples"] == command(*asked).json["samples"]


def test_a_damaged_taste_file_ends_with_2_and_names_it(
    command: Command, picture: Path, rack: Path, tmp_path: Path
) -> None:
    path = tmp_path / "taste.json"
    path.write_text("{")
    ended = command("rank", picture, "--catalog", rack, "--taste", path)
    assert ended.code == 2
    assert str(path) in ended.err
    assert ended.out == ""


def test_one_damaged_choice_is_told_and_the_others_are_used(
    command: Command, picture: Path, rack: Path, taste_file: Path
) -> None:
    report = json.loads(taste_file.read_text())
    report["choices"][0]["better"] = []
    taste_file.write_text(json.dumps(report))
    ended = command("rank", picture, "--catalog", rack, "--taste", taste_file, "--json")
    assert ended.code == 0
    assert "choices, number 1, better" in ended.err
    assert ended.json["taste"]["in_use"]


def test_the_help_says_what_taste_does(command: Command) -> None:
    assert "changes no verdict" in " ".join(command("rank", "--help").out.split())
