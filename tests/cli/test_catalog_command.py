"""``framing-palette catalog``: check, import, export."""

import json
from pathlib import Path

import pytest

from framing_palette.cli import main

CATALOGUE = Path(__file__).parents[2] / "catalog"
COLOURS = len((CATALOGUE / "colours.csv").read_text(encoding="utf-8").splitlines()) - 1
EXPORT = (
    "CGATS.17\n{light}BEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n"
    "BEGIN_DATA\nM-BRIGHT-WHITE 90 0 0\nNEW-1 50 1 2\nEND_DATA\n"
)
LIGHT = "ILLUMINANT D50\nOBSERVER 2\n"


def answer(*arguments: str | Path) -> int:
    try:
        return main([str(argument) for argument in arguments])
    except SystemExit as stopped:
        return int(stopped.code or 0)


def test_check_counts_the_good_samples_and_lists_the_bad_cells(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answer("catalog", "check", CATALOGUE, "--json") == 0
    assert json.loads(capsys.readouterr().out)["good_samples"] == 391
    (tmp_path / "samples.csv").write_text("code,kind,price\nA,mat,dear\nB,mat,1\n")
    (tmp_path / "colours.csv").write_text("code,L,a,b\nB,50,0,0\n")
    assert answer("catalog", "check", tmp_path) == 2
    told = capsys.readouterr()
    assert "samples.csv row 2, column price" in told.out
    assert "2 good samples; 1 problems." in told.err


def test_import_previews_and_then_writes_the_merged_folder(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    export, out = tmp_path / "x.txt", tmp_path / "new"
    export.write_text(EXPORT.format(light=LIGHT))
    common = ("catalog", "import", export, "--catalog", CATALOGUE, "--json")
    assert answer(*common, "--preview") == 0
    report = json.loads(capsys.readouterr().out)
    assert (report["read"], report["new"], report["out"]) == (2, 1, None)
    assert len(report["changes"]) == 1
    assert report["changes"][0].startswith("M-BRIGHT-WHITE: colours (96.80")
    assert not out.exists()
    assert answer(*common, "--out", out) == 0
    capsys.readouterr()
    assert answer("catalog", "check", out, "--json") == 0
    assert json.loads(capsys.readouterr().out)["good_samples"] == 392


def test_figures_of_unknown_light_are_refused_until_it_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    export = tmp_path / "x.txt"
    export.write_text(EXPORT.format(light=""))
    assert answer("catalog", "import", export, "--preview") == 2
    assert "does not tell their illuminant" in capsys.readouterr().err
    told = ("--light", "D50", "--observer", "2")
    assert answer("catalog", "import", export, "--preview", *told) == 0
    assert "2 samples read: 2 new, 0 facts changed." in capsys.readouterr().out


def test_a_long_list_of_changes_is_cut_and_counted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answer("catalog", "export", CATALOGUE, "--out", tmp_path / "x.cxf") == 0
    assert f"{COLOURS} colours written" in capsys.readouterr().out
    words = ("catalog", "import", tmp_path / "x.cxf", "--catalog", CATALOGUE, "--preview")
    assert answer(*words) == 0
    assert "more changes" in capsys.readouterr().out


def test_export_refuses_an_ending_that_names_no_form(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert answer("catalog", "export", CATALOGUE, "--out", tmp_path / "x.zip", "--json") == 2
    assert "ends in no form" in capsys.readouterr().err
    assert answer("catalog", "export", CATALOGUE, "--out", tmp_path / "x.gpl", "--json") == 0
    assert json.loads(capsys.readouterr().out)["colours"] == COLOURS


def test_import_tells_what_was_left_out_of_a_spreadsheet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet, broken = tmp_path / "x.csv", tmp_path / "broken"
    sheet.write_text("SKU,Thickness mm\nA1,1.4\nA2,thick\n")
    broken.mkdir()
    (broken / "samples.csv").write_text("code,kind,price\nA,mat,dear\nB,mat,1\n")
    (broken / "colours.csv").write_text("code,L,a,b\nB,50,0,0\n")
    assert answer("catalog", "import", sheet, "--catalog", broken, "--preview") == 0
    told = capsys.readouterr()
    assert '"thick" is not a length' in told.err
    assert '"dear" is not a price' in told.err
