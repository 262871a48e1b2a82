"""``framing-palette intake``: the agreed form, and one sentence for what cannot be used."""

import json
from pathlib import Path

import pytest
from PIL import Image

from tests.cli.conftest import Command
from tests.cli.test_bad_input import check_one_sentence
from tests.picture.counters import counter


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
    ],
)
def test_a_word_that_cannot_be_used_is_refused(
    command: Command, photo: Path, corners: Path, tmp_path: Path, words: tuple[str, ...]
) -> None:
    base = ("intake", photo, "--corners", corners, "--out", tmp_path / "p.png")
    check_one_sentence(command(*base, *words))
