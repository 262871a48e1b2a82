"""Every command with good input: the forms that others may rely on, and what people read."""

from pathlib import Path

import pytest

from tests.cli.conftest import ROOT, Command

MEASURES = {
    "echo_delta_e",
    "separation_delta_e",
    "separation_lightness",
    "pull",
    "harmony",
    "texture",
}


def test_rank_prints_one_object_of_the_agreed_form_and_nothing_else(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    ended = command("rank", picture, "--regions", regions, "--catalog", rack, "--json")
    report = ended.json
    assert ended.code == 0
    assert report["schema"] == "framing-palette/rank@1"
    assert (report["picture"]["width_px"], report["picture"]["height_px"]) == (180, 120)
    assert report["picture"]["colour_trust"]["words"]
    assert {"boat", "rim", "whole"} <= {region["name"] for region in report["regions"]}
    for region in report["regions"]:
        assert sum(colour["share"] for colour in region["colours"]) == pytest.approx(1, abs=1e-3)
        assert all(len(colour["lab"]) == 3 for colour in region["colours"])
    assert len(report["samples"]) == 6
    for sample in report["samples"]:
        assert sample["verdict"] in {"complement", "blend", "clash"}
        assert 0 <= sample["score"] <= 1
        assert sample["reasons"]
        assert set(sample["measures"]) >= MEASURES


def test_rank_lists_best_first_and_no_clash_above_the_rest(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    samples = command("rank", picture, "--regions", regions, "--catalog", rack, "--json").json[
        "samples"
    ]
    scores = [sample["score"] for sample in samples]
    assert scores == sorted(scores, reverse=True)
    clashes = [sample["verdict"] == "clash" for sample in samples]
    assert clashes == sorted(clashes)
    assert samples[-1]["code"] == "M-3"


def test_rank_keeps_to_the_kinds_and_the_number_asked_for(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    words = ("rank", picture, "--regions", regions, "--catalog", rack, "--json")
    mats = command(*words, "--kind", "mat", "--top", 2).json["samples"]
    assert [sample["kind"] for sample in mats] == ["mat", "mat"]
    both = command(*words, "--kind", "moulding", "--kind", "wrapped_fillet").json["samples"]
    assert sorted(sample["code"] for sample in both) == ["R-1", "R-2", "W-1"]


def test_the_same_call_prints_the_same_bytes(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    words = ("rank", picture, "--regions", regions, "--catalog", rack, "--json")
    assert command(*words).out == command(*words).out


def test_rank_in_words_names_code_verdict_and_reason(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    ended = command("rank", picture, "--regions", regions, "--catalog", rack, "--explain")
    assert "M-3" in ended.out
    assert "clash" in ended.out
    assert "pull" in ended.out
    assert "clash, by " in ended.out
    assert ended.out.count("merit ") == ended.out.count("; pull ")


def test_without_regions_the_focus_is_said_to_be_a_guess(command: Command, picture: Path) -> None:
    ended = command("palette", picture)
    assert ended.code == 0
    assert "guess" in ended.out


def test_palette_finds_the_red_buoy_as_an_accent(
    command: Command, picture: Path, regions: Path
) -> None:
    report = command(
        "palette", picture, "--regions", regions, "--art-width", "18 in", "--json"
    ).json
    assert report["schema"] == "framing-palette/palette@1"
    red = [accent for accent in report["accents"] if accent["lab"][1] > 30]
    assert red, report["accents"]
    assert red[0]["x"] == pytest.approx(144 / 180, abs=0.03)
    assert red[0]["y"] == pytest.approx(100 / 120, abs=0.03)


def test_search_prints_designs_in_the_order_of_the_layers(
    command: Command, picture: Path, regions: Path, rack: Path
) -> None:
    words = ("search", picture, "--regions", regions, "--catalog", rack, "--json")
    report = command(*words, "--layers", "wrapped_fillet,mat,moulding", "--keep", "M-2").json
    assert report["schema"] == "framing-palette/search@1"
    assert report["candidates_considered"] >= 1
    for design in report["designs"]:
        kinds = [layer["kind"] for layer in design["layers"]]
        assert kinds == ["wrapped_fillet", "mat", "moulding"]
        assert "M-2" in [layer["code"] for layer in design["layers"]]
        assert design["reasons"]


def test_search_in_words_says_how_many_combinations_it_is_the_best_of(
    command: Command, picture: Path, rack: Path
) -> None:
    words = ("search", picture, "--catalog", rack, "--layers", "mat,moulding")
    ended = command(*words)
    assert "combinations considered" in ended.out
    assert "pull" not in ended.out
    explained = command(*words, "--explain").out
    assert "pull" in explained
    assert "merit " in explained


def test_size_of_the_published_form_agrees_with_the_sums_by_hand(
    command: Command, design: Path
) -> None:
    report = command("size", design, "--json").json
    assert report["schema"] == "framing-palette/size@1"
    inner, outer = report["layers"]
    assert (inner["opening"]["width_in"], inner["opening"]["height_in"]) == ("15 3/4", "19 3/4")
    assert (outer["opening"]["width_in"], outer["opening"]["height_in"]) == ("16 1/4", "20 1/4")
    assert (outer["outer"]["width_in"], outer["outer"]["height_in"]) == ("21 1/4", "25 3/4")
    assert report["rabbet_size"]["width_in"] == "21 3/8"
    assert report["sight_size"]["height_in"] == "25 3/8"
    assert sorted(rail["long_point_in"] for rail in report["rails"]) == [
        "23 7/8",
        "23 7/8",
        "28 3/8",
        "28 3/8",
    ]
    assert report["moulding_length_mm"] == pytest.approx((23.875 + 28.375) * 2 * 25.4)
    assert report["stack_depth_mm"] == pytest.approx(3 * 25.4 / 16 + 2 + 3 * 25.4 / 16)
    assert report["depth_ok"] is True
    assert report["weight_kg"] > 0


def test_size_in_words_gives_every_rail(command: Command, design: Path) -> None:
    ended = command("size", design)
    assert ended.code == 0
    for side in ("top", "right", "bottom", "left"):
        assert f"rail {side}" in ended.out


@pytest.mark.parametrize("ending", [".png", ".tif", ".html"])
def test_preview_writes_the_form_that_the_ending_names(
    command: Command, picture: Path, design: Path, rack: Path, tmp_path: Path, ending: str
) -> None:
    text = design.read_text().replace('kind = "mat"', 'kind = "mat"\ncode = "M-1"')
    text = text.replace("[moulding]", '[moulding]\ncode = "R-1"')
    design.write_text(text)
    out = tmp_path / f"preview{ending}"
    words = ("preview", design, "--picture", picture, "--catalog", rack, "--out", out)
    report = command(*words, "--width-px", 300, "--json").json
    starts = {".png": b"\x89PNG", ".tif": b"II*", ".html": b"<!DOCTYPE html>"}
    assert out.read_bytes().startswith(starts[ending])
    assert report["width_px"] == 300


def test_catalog_check_finds_nothing_wrong_in_the_shipped_rack(command: Command) -> None:
    ended = command("catalog", "check", ROOT / "catalog", "--json")
    assert ended.code == 0
    assert ended.json["good_samples"] >= 360


def test_catalog_check_names_file_row_and_column_and_ends_with_2(
    command: Command, rack: Path
) -> None:
    samples = rack / "samples.csv"
    samples.write_text(samples.read_text().replace("M-2,Warm white,mat,,1.4", "M-2,W,mat,,thick"))
    ended = command("catalog", "check", rack)
    assert ended.code == 2
    assert "samples.csv row 3, column thickness_mm" in ended.out
    assert "6 good samples" in ended.err


def test_doctor_finds_this_installation_sound(command: Command) -> None:
    ended = command("doctor", "--json")
    assert ended.code == 0
    assert ended.json["sound"] is True
    assert "colour engine" in {finding["what"] for finding in ended.json["findings"]}


def test_doctor_says_what_is_not_in_order(command: Command, tmp_path: Path) -> None:
    ended = command("doctor", "--catalog", tmp_path)
    assert ended.code == 2
    assert "NOT  catalogue" in ended.out
