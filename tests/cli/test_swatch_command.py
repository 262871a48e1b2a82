"""``framing-palette swatch``: one swatch, a part of it, a sheet, a folder."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.colour import delta_e_2000, spectrum_to_lab_d50, srgb_u8_to_lab_d50
from tests.picture.counters import ART_COLUMNS, ART_ROWS, art_reflectances, counter

from .conftest import Command

COLOURS = ((190, 120, 90), (60, 90, 130))


def lab(colour: tuple[int, int, int]) -> np.ndarray:
    return srgb_u8_to_lab_d50(np.array(colour, dtype=np.uint8))


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    pixels = np.full((160, 400, 3), 128, dtype=np.uint8)
    for at, colour in enumerate(COLOURS):
        pixels[30:130, 40 + 180 * at : 180 + 180 * at] = colour
    Image.fromarray(pixels).save(tmp_path / "sheet.png")
    return tmp_path / "sheet.png"


def test_only_what_lies_in_the_outline_is_measured(sheet: Path, command: Command) -> None:
    ended = command(
        "swatch", sheet, "--outline", "0.12,0.25 0.42,0.25 0.42,0.75 0.12,0.75", "--json"
    )
    (colour,) = ended.json["colours"]
    assert float(delta_e_2000(colour["lab"], lab(COLOURS[0]))) < 1
    assert ended.json["schema"] == "framing-palette/swatch@1"


def test_a_sheet_is_measured_under_its_codes_and_wrong_counts_are_one_sentence(
    sheet: Path, command: Command
) -> None:
    ended = command("swatch", sheet, "--codes", "T-1,T-2", "--json")
    found = ended.json["swatches"]
    assert [one["code"] for one in found] == ["T-1", "T-2"]
    for one, colour in zip(found, COLOURS, strict=True):
        assert float(delta_e_2000(one["colours"][0]["lab"], lab(colour))) < 1
    assert "T-2" in command("swatch", sheet, "--codes", "T-1,T-2").out
    wrong = command("swatch", sheet, "--codes", "T-1")
    assert wrong.code == 2
    assert "list one code for each swatch" in wrong.err


@pytest.mark.parametrize("outline", ["0.1,0.1", "0,0 1,0 2,2", "a,b c,d e,f"])
def test_an_outline_that_is_none_is_refused(sheet: Path, command: Command, outline: str) -> None:
    ended = command("swatch", sheet, "--outline", outline)
    assert ended.code == 2
    assert "three corners or more" in ended.err


def test_a_folder_is_measured_once_and_what_cannot_be_is_told(
    sheet: Path, command: Command, tmp_path: Path
) -> None:
    (tmp_path / "bad.png").write_bytes(b"no picture")
    kept = tmp_path / "kept.jsonl"
    words = ("swatch", sheet.parent, "--results", kept, "--backend", "threading")
    ended = command(*words, "--json")
    assert [one["file"] for one in ended.json["swatches"]] == ["bad.png", "sheet.png"]
    assert ended.json["swatches"][0]["problem"]
    assert len(ended.json["swatches"][1]["colours"]) >= 2
    assert "sheet.png: " in command(*words).out
    assert len(kept.read_text().splitlines()) == 2


def test_a_chart_beside_the_swatch_corrects_its_colours_and_says_how_far_they_may_be_off(
    command: Command, tmp_path: Path
) -> None:
    scene = counter("A")
    path = tmp_path / "warm.png"
    Image.fromarray(scene.srgb_u8).save(path)
    corners = np.asarray(scene.art_corners)
    at = 3 * ART_COLUMNS + 2  # one tile of the art stands for the swatch
    across, down = at % ART_COLUMNS, at // ART_COLUMNS

    def place(x: float, y: float) -> str:
        u, v = (across + x) / ART_COLUMNS, (down + y) / ART_ROWS
        top = corners[0] * (1 - u) + corners[1] * u
        bottom = corners[3] * (1 - u) + corners[2] * u
        spot = top * (1 - v) + bottom * v
        return f"{spot[0]:.5f},{spot[1]:.5f}"

    outline = " ".join(place(x, y) for x, y in ((0.3, 0.3), (0.7, 0.3), (0.7, 0.7), (0.3, 0.7)))
    true = spectrum_to_lab_d50(art_reflectances()[at])

    def off(*more: str) -> float:
        found = command("swatch", path, "--outline", outline, "--json", *more).json
        assert (found["uncertainty_delta_e"] is None) == (not more)
        return float(delta_e_2000(found["colours"][0]["lab"], true))

    with_chart, without = off("--chart"), off()
    assert with_chart < 3
    assert with_chart < without / 2
