"""``framing-palette intake``: the agreed form, and one sentence for what cannot be used."""

import json
from pathlib import Path

import pytest
from PIL import Image

from tests.cli.conftest import ROOT, Command
from tests.cli.test_bad_input import check_one_sentence
from tests.picture.counters import counter, plain_sheet


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    path = tmp_path / "counter.png"
    Image.fromarray(counter("D50").srgb_u8).save(path)
    return path


@pytest.fixture
def corners(tmp_path: Path) -> Path:
    path = tmp_path / "corners.json"
    path.write_text(json.dumps({"corners": counter("D50").art_corners.tolist()}))
    return path


def test_a_photograph_with_a_chart_is_taken_in(
    command: Command, photo: Path, corners: Path, tmp_path: Path
) -> None:
    out = tmp_path / "picture.png"
    words = ("intake", photo, "--corners", corners, "--width", "40 cm", "--height", "30 cm")
    report = command(*words, "--out", out, "--json").json
    assert report["schema"] == "framing-palette/intake@1"
    assert report["chart"]["found"] is True
    assert report["correction"]["leave_one_out"]["mean"] < 3
    assert report["mm_per_px"] > 0
    assert out.read_bytes().startswith(b"\x89PNG")
    read = command("palette", out, "--json").json["picture"]
    assert read["colour_trust"] == report["colour_trust"]
    full = report["width_px"] / read["working_width_px"]
    assert read["mm_per_working_px"] == pytest.approx(report["mm_per_px"] * full, rel=1e-4)


def test_in_words_the_trust_is_said(
    command: Command, photo: Path, corners: Path, tmp_path: Path
) -> None:
    chart = tmp_path / "chart.json"
    chart.write_text(json.dumps({"corners": counter("D50").chart_corners.tolist()}))
    words = ("intake", photo, "--corners", corners, "--chart", chart)
    ended = command(*words, "--out", tmp_path / "p.tif")
    assert ended.code == 0
    assert "Colours good to about" in ended.out


@pytest.mark.parametrize(
    "text",
    ["no json", "[]", '{"corners": [[0, 0]]}', '{"corners": [[0,0],[1,1],[1,0],[0,1]]}', "{}"],
)
def test_a_corners_file_that_cannot_be_used_is_refused(
    command: Command, photo: Path, tmp_path: Path, text: str
) -> None:
    path = tmp_path / "bad.json"
    path.write_text(text)
    check_one_sentence(command("intake", photo, "--corners", path, "--out", tmp_path / "p.png"))


@pytest.mark.parametrize(
    "words",
    [
        ("--width", "40 cm"),
        ("--height", "40 cm"),
        ("--grey", "left"),
        ("--chart", "nowhere.json"),
        ("--width", "0", "--height", "1"),
        ("--chart-width", "0"),
        ("--plain", "nowhere.jpg"),
    ],
)
def test_a_word_that_cannot_be_used_is_refused(
    command: Command, photo: Path, corners: Path, tmp_path: Path, words: tuple[str, ...]
) -> None:
    base = ("intake", photo, "--corners", corners, "--out", tmp_path / "p.png")
    check_one_sentence(command(*base, *words))


def test_a_plain_sheet_and_the_charts_width_are_taken(
    command: Command, corners: Path, tmp_path: Path
) -> None:
    uneven = {"vignette": 0.3, "slant": 0.15}
    photo, sheet, out = (tmp_path / name for name in ("counter.png", "sheet.png", "picture.tif"))
    Image.fromarray(counter("D50", **uneven).srgb_u8).save(photo)
    Image.fromarray(plain_sheet("D50", **uneven)).save(sheet)
    words = ("intake", photo, "--corners", corners, "--out", out, "--json")
    report = command(*words, "--plain", sheet, "--chart-width", "20 cm").json
    assert report["light"]["evened_by"] == "plain sheet"
    assert report["light"]["fall_off"] == pytest.approx(1.7, abs=0.05)
    assert report["mm_per_px"] > 0
    read = command("palette", out, "--json").json["picture"]
    assert read["colour_trust"] == report["colour_trust"]
    assert read["mm_per_working_px"] > 0
    assert report["light"]["words"] in read["notices"]


def test_a_sheet_that_tells_nothing_is_refused_by_name(
    command: Command, photo: Path, corners: Path, tmp_path: Path
) -> None:
    words = ("intake", photo, "--corners", corners, "--out", tmp_path / "p.png")
    check_one_sentence(command(*words, "--plain", photo), "counter.png")


def test_a_mirrored_photograph_is_refused_and_nothing_is_written(
    command: Command, tmp_path: Path
) -> None:
    photo, out = tmp_path / "mirrored.png", tmp_path / "p.png"
    Image.fromarray(counter("D50", mirrored=True).srgb_u8).save(photo)
    check_one_sentence(command("intake", photo, "--out", out), "mirrored")
    assert not out.exists()


def test_the_taken_in_picture_brings_its_error_to_the_ranking(
    command: Command, photo: Path, corners: Path, tmp_path: Path
) -> None:
    out = tmp_path / "picture.png"
    words = ("intake", photo, "--corners", corners, "--width", "40 cm", "--height", "30 cm")
    report = command(*words, "--out", out, "--json").json
    ranked = command(
        "rank", out, "--catalog", ROOT / "catalog", "--kind", "liner", "--top", 1, "--json"
    ).json
    assert ranked["picture"]["colour_trust"] == report["colour_trust"]
