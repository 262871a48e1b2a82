"""Bad input: exit code 2, one sentence that names the culprit, and never a traceback."""

import json
import os
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.cli import main as cli_main
from tests.cli.conftest import Command, Ended


def check_one_sentence(ended: Ended, *named: str) -> None:
    assert ended.code == 2, ended
    assert ended.out == ""
    told = [line for line in ended.err.splitlines() if line.startswith("framing-palette: ")]
    assert len(told) == 1, ended.err
    assert "Traceback" not in ended.err
    for name in named:
        assert name in told[0], told[0]


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("empty.jpg", b""),
        ("text.jpg", b"this is a letter, not a picture\n" * 20),
        ("cut.png", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00"),
        ("cut.jpg", b"\xff\xd8\xff\xe0\x00\x10JFIF\x00\x01"),
    ],
)
def test_a_broken_picture_is_named(
    command: Command, tmp_path: Path, name: str, content: bytes
) -> None:
    (tmp_path / name).write_bytes(content)
    check_one_sentence(command("palette", tmp_path / name), name)


def test_a_missing_picture_is_named(command: Command, tmp_path: Path) -> None:
    check_one_sentence(command("palette", tmp_path / "none.jpg", "--json"), "none.jpg")


def test_a_folder_given_as_a_picture_is_named(command: Command, tmp_path: Path) -> None:
    check_one_sentence(command("palette", tmp_path), str(tmp_path))


def test_a_picture_that_claims_a_hundred_thousand_pixels_a_side_is_refused(
    command: Command, tmp_path: Path
) -> None:
    path = tmp_path / "bomb.png"
    Image.fromarray(np.zeros((4, 4), np.uint8)).save(path)
    content = bytearray(path.read_bytes())
    content[16:24] = (100_000).to_bytes(4, "big") * 2
    import zlib

    content[29:33] = zlib.crc32(bytes(content[12:29])).to_bytes(4, "big")
    path.write_bytes(bytes(content))
    check_one_sentence(command("palette", path), "bomb.png")


@pytest.mark.parametrize("mode", ["L", "LA", "P", "RGBA", "CMYK", "I;16", "1"])
def test_every_common_kind_of_pixel_is_read(command: Command, tmp_path: Path, mode: str) -> None:
    ramp = np.linspace(0, 255, 60 * 80).reshape(60, 80).astype(np.uint8)
    if mode == "I;16":
        image = Image.fromarray(ramp.astype(np.uint16) * 257)
    else:
        image = Image.fromarray(ramp).convert("RGB").convert(mode)
    path = tmp_path / ("picture.tif" if mode == "CMYK" else "picture.png")
    image.save(path)
    ended = command("palette", path, "--json")
    assert ended.code == 0, ended.err
    lightness = [colour["lab"][0] for colour in ended.json["regions"][-1]["colours"]]
    assert max(lightness) - min(lightness) > 40


@pytest.mark.parametrize(
    "text",
    [
        "not json",
        "[]",
        "{}",
        '{"regions": 3}',
        '{"regions": [{"name": "boat", "role": "focus", "polygon": []}]}',
        '{"regions": [{"name": "boat", "role": "focus", "polygon": [[0,0],[2,0],[2,2]]}]}',
        '{"regions": [{"name": "boat", "role": "star", "polygon": [[0,0],[1,0],[1,1]]}]}',
        '{"regions": [{"name": "boat", "role": "focus", "polygon": [["a",0],[1,0],[1,1]]}]}',
    ],
)
def test_a_regions_file_that_cannot_be_used_is_named(
    command: Command, picture: Path, tmp_path: Path, text: str
) -> None:
    path = tmp_path / "broken.json"
    path.write_text(text)
    check_one_sentence(command("palette", picture, "--regions", path), "broken.json")


def test_an_outline_that_crosses_itself_holds_what_it_encloses(
    command: Command, picture: Path, tmp_path: Path
) -> None:
    path = tmp_path / "bow.json"
    polygon = [[0, 0], [1, 1], [1, 0], [0, 1]]  # two triangles, half of the picture
    path.write_text(json.dumps({"regions": [{"name": "bow", "role": "focus", "polygon": polygon}]}))
    ended = command("palette", picture, "--regions", path)
    assert ended.code == 0
    assert "bow (focus), 50% of the picture" in ended.out


def test_a_catalogue_without_a_needed_column_names_it(
    command: Command, picture: Path, rack: Path
) -> None:
    samples = rack / "samples.csv"
    samples.write_text(samples.read_text().replace("code,name,kind", "code,name,sort"))
    check_one_sentence(command("rank", picture, "--catalog", rack), "kind")


def test_a_catalogue_that_is_not_there_is_named(
    command: Command, picture: Path, tmp_path: Path
) -> None:
    check_one_sentence(command("rank", picture, "--catalog", tmp_path / "none"), "none")


def test_a_bad_row_is_told_and_the_good_rows_are_still_ranked(
    command: Command, picture: Path, rack: Path
) -> None:
    samples = rack / "samples.csv"
    samples.write_text(samples.read_text() + "M-1,Again,mat,,1.4,,,,8\n")
    ended = command("rank", picture, "--catalog", rack, "--json")
    assert ended.code == 0
    assert "samples.csv row 8" in ended.err
    assert len(ended.json["samples"]) >= 5


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ('width = "16"', 'width = "wide"', "width"),
        ('width = "16"', 'width = "-16"', "width"),
        ('width = "16"', 'width = "0"', "width"),
        ('overlap = "1/8"', 'overlap = "9"', "overlap"),
        ('reveal = "1/4"', "", "reveal"),
        ('material = "glass"', 'material = "paper"', "glazing"),
        ('kind = "mat"', 'kind = "carpet"', "kind"),
        ('rabbet_width = "1/4"', "", "rabbet_width"),
        ("[art]", "[art", "design.toml"),
    ],
)
def test_a_design_that_cannot_be_built_names_the_field(
    command: Command, design: Path, old: str, new: str, field: str
) -> None:
    design.write_text(design.read_text().replace(old, new, 1))
    check_one_sentence(command("size", design, "--json"), "design.toml", field)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ('width = "16"', 'width = "0"', "art width is 0; give a length above zero"),
        ('reveal = "1/4"', 'reveal = "0"', "layer 1 reveal, top is 0; give a length above zero"),
        ('"1/16"\nreveal', '"-2 mm"\nreveal', "layer 1 thickness is -2 mm; give a length above"),
    ],
)
def test_a_length_that_must_be_above_zero_is_told_with_its_layer_and_no_foreign_unit(
    command: Command, design: Path, old: str, new: str, sentence: str
) -> None:
    design.write_text(design.read_text().replace(old, new, 1))
    check_one_sentence(command("size", design), sentence)


def test_a_design_with_a_sample_that_is_gone_names_its_code(
    command: Command, design: Path, rack: Path
) -> None:
    design.write_text(
        design.read_text().replace('thickness = "1/16"\nreveal', 'code = "M-9"\nreveal')
    )
    check_one_sentence(command("size", design, "--catalog", rack), "M-9")


def test_an_output_that_cannot_be_written_is_named(
    command: Command, picture: Path, design: Path, rack: Path, tmp_path: Path
) -> None:
    out = tmp_path / "no" / "such" / "p.png"
    words = ("preview", design, "--picture", picture, "--catalog", rack, "--out", out)
    check_one_sentence(command(*words, "--width-px", 200), str(out.parent))


@pytest.mark.parametrize("name", ["preview.gif", "preview"])
def test_an_output_without_a_known_ending_is_named(
    command: Command, picture: Path, design: Path, rack: Path, tmp_path: Path, name: str
) -> None:
    words = ("preview", design, "--picture", picture, "--catalog", rack)
    check_one_sentence(command(*words, "--out", tmp_path / name), name)


@pytest.mark.parametrize(
    "words",
    [
        ("--top", "0"),
        ("--width", "broad"),
        ("--width", "0"),
        ("--width", "-2 in"),
        ("--art-width", "0"),
        ("--art-width", "-3 in"),
    ],
)
def test_a_word_that_cannot_be_used_is_named(
    command: Command, picture: Path, rack: Path, words: tuple[str, str]
) -> None:
    ended = command("rank", picture, "--catalog", rack, f"{words[0]}={words[1]}")
    check_one_sentence(ended, f"framing-palette: {words[0]}")


def test_search_with_an_unknown_kind_or_a_kept_code_that_is_gone_is_refused(
    command: Command, picture: Path, rack: Path
) -> None:
    words = ("search", picture, "--catalog", rack)
    check_one_sentence(command(*words, "--layers", "mat,carpet"), "carpet")
    for option in ("--keep", "--exclude"):
        ended = command(*words, option, "M-99")
        check_one_sentence(ended, f"{option} is M-99, which is not in the catalogue", "give a code")


@pytest.mark.parametrize("kinds", ["moulding,mat", "mat,moulding,moulding"])
def test_search_with_a_moulding_that_is_not_the_last_and_only_one_is_refused(
    command: Command, picture: Path, rack: Path, kinds: str
) -> None:
    ended = command("search", picture, "--catalog", rack, "--layers", kinds)
    check_one_sentence(ended, "layers is", kinds.replace(",", ", "), "once and last")


def test_a_defect_ends_with_1_and_says_that_it_is_not_the_users_fault(
    command: Command, picture: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from framing_palette.cli.commands import palette

    def broken(_arguments: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(palette, "run", broken)
    ended = command("palette", picture)
    assert ended.code == 1
    assert "defect of the program" in ended.err
    with pytest.raises(ZeroDivisionError):
        cli_main(["--debug", "palette", str(picture)])


def test_an_unknown_command_ends_with_2(command: Command) -> None:
    check_one_sentence(command("polish"), "polish")


@pytest.mark.parametrize(
    ("words", "named"),
    [
        (("rank",), "PICTURE"),
        (("rank", "sea.png", "--catalog", "rack", "--kind", "carpet"), "--kind"),
        (("search", "sea.png", "--catalog", "rack", "--top", "few"), "--top"),
        (("catalog", "dust"), "dust"),
        (("palette", "sea.png", "--loud"), "--loud"),
    ],
)
def test_words_that_no_command_knows_are_refused_in_one_line(
    command: Command, words: tuple[str, ...], named: str
) -> None:
    ended = command(*words)
    check_one_sentence(ended, named, "--help")
    assert ended.err.count("\n") == 1


def test_without_a_command_and_without_a_window_the_help_is_shown(command: Command) -> None:
    ended = command()
    assert ended.code == 0
    assert "rank" in ended.out


def test_without_a_command_the_window_opens_on_nothing() -> None:
    opened: list[Path | None] = []

    def open_window(job_file: Path | None) -> int:
        opened.append(job_file)
        return 5

    assert cli_main([], open_window=open_window) == 5
    assert opened == [None]


@pytest.mark.skipif(os.name == "nt", reason="names like these are not allowed on Windows")
def test_a_curious_file_name_is_read_and_named(
    command: Command, picture: Path, tmp_path: Path
) -> None:
    odd = tmp_path / 'läke \'n "sea" $(x); 100%.png'
    odd.write_bytes(picture.read_bytes())
    assert json.loads(command("palette", odd, "--json").out)["schema"]
