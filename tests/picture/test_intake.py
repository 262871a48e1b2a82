"""Intake against simulated counters whose truth is known, and the shipped counter photograph."""

import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000, lab_d50_to_srgb_u8, srgb_u8_to_lab_d50
from framing_palette.errors import ChartError, FieldError, OutputError
from framing_palette.picture import (
    ColourTrust,
    Intake,
    IntakeWishes,
    Picture,
    TrustGrade,
    intake_report,
    read_picture_file,
    take_in,
    write_picture_file,
)
from framing_palette.picture.squaring import WHOLE
from framing_palette.units import Length
from tests.picture.counters import ART_COLUMNS, ART_ROWS, Counter, counter

SAMPLES = Path(__file__).resolve().parents[2] / "sample_images"
UNTOLD = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")


def photograph(srgb_u8: np.ndarray) -> Picture:
    rows, columns = srgb_u8.shape[:2]
    lab = np.asarray(srgb_u8_to_lab_d50(srgb_u8), np.float32)
    return Picture(lab, None, UNTOLD, columns, rows)


def corners_of(scene: Counter) -> tuple:
    return tuple((float(x), float(y)) for x, y in scene.art_corners)


def art_errors(picture: Picture, scene: Counter) -> np.ndarray:
    """Return ΔE00 of every tile of the painted art; no correction has seen them."""
    high, wide = picture.rows / ART_ROWS, picture.columns / ART_COLUMNS
    seen = [
        np.median(
            picture.lab_d50[
                int((row + 0.3) * high) : int((row + 0.7) * high),
                int((column + 0.3) * wide) : int((column + 0.7) * wide),
            ].reshape(-1, 3),
            axis=0,
        )
        for row in range(ART_ROWS)
        for column in range(ART_COLUMNS)
    ]
    return delta_e_2000(np.array(seen), scene.art_lab)


@cache
def taken_in(light: str) -> tuple[Intake, Counter]:
    scene = counter(light)
    return take_in(photograph(scene.srgb_u8), IntakeWishes(corners=corners_of(scene))), scene


@pytest.mark.parametrize(
    ("light", "most"),
    [("D50", 1.5), ("D65", 1.5), ("LED-B3", 1.5), ("LED-B5", 1.5), ("LED-B1", 2.5), ("A", 2.5)],
)
def test_colours_that_the_correction_never_saw_come_out_true(light: str, most: float) -> None:
    intake, scene = taken_in(light)
    errors = art_errors(intake.picture, scene)
    assert errors.mean() <= most
    as_shot = take_in(
        photograph(scene.srgb_u8), IntakeWishes(corners=corners_of(scene), chart="none")
    )
    assert errors.mean() < art_errors(as_shot.picture, scene).mean() / 2


def test_the_told_error_is_no_smaller_than_half_the_true_one() -> None:
    for light in ("D50", "A", "LED-B3"):
        intake, scene = taken_in(light)
        told = intake.picture.colour_trust.mean_delta_e
        assert told is not None
        assert told > art_errors(intake.picture, scene).mean() / 2


def test_the_chart_lies_where_it_was_laid() -> None:
    intake, scene = taken_in("D50")
    assert intake.chart is not None
    off = np.abs(np.asarray(intake.chart.corners) - scene.chart_corners).max()
    assert off < 0.012  # a quarter of a patch; the middle half of each is read


@pytest.mark.parametrize("turn", [1, 2, 3])
def test_a_chart_lying_on_its_side_or_head_is_read_the_right_way(turn: int) -> None:
    scene = counter("D50", turn=turn)
    intake = take_in(photograph(scene.srgb_u8), IntakeWishes(corners=corners_of(scene)))
    assert intake.chart is not None
    assert art_errors(intake.picture, scene).mean() < 1.5


def test_a_photograph_without_a_chart_keeps_its_colours_and_says_so() -> None:
    scene = counter("D50", with_chart=False)
    intake = take_in(photograph(scene.srgb_u8), IntakeWishes(corners=corners_of(scene)))
    assert intake.chart is None
    assert intake.picture.colour_trust.grade is TrustGrade.UNKNOWN
    assert any("chart" in notice for notice in intake.picture.notices)


def test_a_clipped_chart_is_refused_by_naming_patches() -> None:
    scene = counter("D50", exposure=2.6)
    with pytest.raises(ChartError, match=r"white 9\.5 \(clipped\)"):
        take_in(
            photograph(scene.srgb_u8),
            IntakeWishes(chart=tuple(tuple(map(float, p)) for p in scene.chart_corners)),
        )


def test_light_that_falls_off_across_the_chart_is_said() -> None:
    scene = counter("D50", vignette=0.5)
    wishes = IntakeWishes(corners=corners_of(scene), light="none")
    intake = take_in(photograph(scene.srgb_u8), wishes)
    assert any("brighter than the other" in notice for notice in intake.picture.notices)


def test_a_picked_grey_takes_the_lights_colour_out() -> None:
    scene = counter("A", with_chart=False, balance=0.3)
    wishes = IntakeWishes(corners=corners_of(scene), grey=(0.62, 0.9))  # the grey table top
    balanced = take_in(photograph(scene.srgb_u8), wishes)
    as_shot = take_in(photograph(scene.srgb_u8), IntakeWishes(corners=corners_of(scene)))
    before = art_errors(as_shot.picture, scene).mean()
    assert art_errors(balanced.picture, scene).mean() < before / 1.5
    assert balanced.picture.colour_trust.method == "grey"


@pytest.mark.parametrize("place", [(1.2, 0.5), (0.5, -0.1)])
def test_a_grey_outside_the_photograph_is_refused(place: tuple[float, float]) -> None:
    scene = counter("D50", with_chart=False)
    with pytest.raises(FieldError, match="between 0 and 1"):
        take_in(photograph(scene.srgb_u8), IntakeWishes(grey=place))


def test_a_clipped_grey_is_refused() -> None:
    white = photograph(np.full((60, 90, 3), 255, np.uint8))
    with pytest.raises(ChartError, match="clipped"):
        take_in(white, IntakeWishes(chart="none", grey=(0.5, 0.5)))


def test_the_same_photograph_gives_the_same_picture_to_the_last_digit() -> None:
    scene = counter("LED-B2")
    first, second = (take_in(photograph(scene.srgb_u8)) for _ in range(2))
    assert np.array_equal(first.picture.lab_d50, second.picture.lab_d50)


def test_the_typed_size_gives_the_scale_and_a_wrong_one_is_noticed() -> None:
    scene = counter("D50")
    wishes = IntakeWishes(
        corners=corners_of(scene), art_size=(Length.mm_of(400), Length.mm_of(300))
    )
    intake = take_in(photograph(scene.srgb_u8), wishes)
    assert intake.picture.mm_per_px == pytest.approx(400 / intake.picture.columns, rel=0.01)
    wrong = IntakeWishes(corners=corners_of(scene), art_size=(Length.mm_of(800), Length.mm_of(300)))
    notices = take_in(photograph(scene.srgb_u8), wrong).picture.notices
    assert any("proportions" in notice for notice in notices)


def test_the_charts_own_size_gives_the_scale_when_it_lies_in_the_arts_plane() -> None:
    scene = counter("D50")
    wishes = IntakeWishes(
        corners=corners_of(scene), chart_size=(Length.mm_of(250), Length.mm_of(160))
    )
    scale = take_in(photograph(scene.srgb_u8), wishes).picture.mm_per_px
    assert scale is not None
    assert 0.3 < scale < 1.2  # 430 px of photograph are 250 mm


@cache
def shipped_photo() -> Picture:
    return read_picture_file(SAMPLES / "ferry_counter_photo.jpg", max_side=1600)


@cache
def shipped() -> tuple[Intake, dict]:
    truth = json.loads((SAMPLES / "ferry_counter_photo.truth.json").read_text())
    return take_in(shipped_photo()), truth


def test_the_shipped_counter_photographs_art_is_found_where_it_lies() -> None:
    intake, truth = shipped()
    wide, high = truth["image"]["width_px"], truth["image"]["height_px"]
    wanted = (np.asarray(truth["art"]["corners_px"]) + 0.5) / (wide, high)
    assert intake.are_corners_found
    assert np.abs(np.asarray(intake.corners) - wanted).max() < 0.015


def test_the_shipped_counter_photograph_comes_out_in_the_pictures_own_colours() -> None:
    _, truth = shipped()
    wide, high = truth["image"]["width_px"], truth["image"]["height_px"]
    exact = tuple(((x + 0.5) / wide, (y + 0.5) / high) for x, y in truth["art"]["corners_px"])
    photo = shipped_photo()
    size = (Length.mm_of(600), Length.mm_of(420))
    intake = take_in(photo, IntakeWishes(corners=exact, art_size=size))
    original = read_picture_file(SAMPLES / "ferry_at_dusk.jpg", max_side=100)
    import cv2

    small = cv2.resize(
        intake.picture.lab_d50, (original.columns, original.rows), interpolation=cv2.INTER_AREA
    )
    # The lamp's light falls off across the art and is left alone, so lightness is not compared.
    hue = np.hypot(*(small - original.lab_d50)[..., 1:].reshape(-1, 2).T)
    as_shot = take_in(photo, IntakeWishes(corners=exact, art_size=size, chart="none"))
    raw = cv2.resize(
        as_shot.picture.lab_d50, (original.columns, original.rows), interpolation=cv2.INTER_AREA
    )
    raw_hue = np.hypot(*(raw - original.lab_d50)[..., 1:].reshape(-1, 2).T)
    assert hue.mean() < raw_hue.mean() / 2
    assert hue.mean() < 6


def test_the_report_has_the_agreed_form() -> None:
    intake, _ = taken_in("D50")
    report = intake_report(intake)
    assert report["schema"] == "framing-palette/intake@1"
    assert len(report["corners"]) == 4
    assert report["chart"]["found"] is True
    assert {"name", "measured_lab", "reference_lab", "delta_e"} <= set(
        report["chart"]["patches"][0]
    )
    assert set(report["correction"]["leave_one_out"]) == {"mean", "p95", "max"}
    assert report["colour_trust"]["grade"] in {grade.value for grade in TrustGrade}


def test_the_leave_one_out_error_is_that_of_the_patches() -> None:
    intake, _ = taken_in("D50")
    trust = intake.picture.colour_trust
    errors = [patch.delta_e for patch in trust.patches]
    assert trust.mean_delta_e == pytest.approx(np.mean(errors))
    assert trust.max_delta_e == pytest.approx(max(errors))


@pytest.mark.parametrize("ending", [".png", ".tif"])
def test_a_written_picture_reads_back_in_the_same_colours(tmp_path: Path, ending: str) -> None:
    srgb = np.random.default_rng(5).integers(0, 256, (40, 60, 3)).astype(np.uint8)
    picture = photograph(srgb)
    path = write_picture_file(tmp_path / f"picture{ending}", picture)
    back = read_picture_file(path)
    assert delta_e_2000(back.lab_d50, picture.lab_d50).max() < 0.05
    assert (back.columns, back.rows) == (60, 40)
    assert np.abs(lab_d50_to_srgb_u8(back.lab_d50).astype(int) - srgb).max() <= 1


def test_colours_beyond_srgb_survive_the_file(tmp_path: Path) -> None:
    # Vivid cyan and orange surfaces, outside sRGB and inside Pointer's gamut of real surfaces.
    lab = np.tile(np.array([[60.0, -45.0, -38.0], [70.0, 45.0, 85.0]], np.float32), (8, 4, 1))
    picture = Picture(lab, None, UNTOLD, 8, 8)
    back = read_picture_file(write_picture_file(tmp_path / "vivid.png", picture))
    assert delta_e_2000(back.lab_d50, lab).max() < 0.05


def test_another_ending_is_refused(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="no PNG or TIFF"):
        write_picture_file(tmp_path / "picture.jpg", photograph(np.zeros((4, 4, 3), np.uint8)))


def test_a_picture_that_was_taken_in_before_keeps_its_trust_without_a_chart_in_sight() -> None:
    intake, _ = taken_in("D50")
    again = take_in(intake.picture, IntakeWishes(corners=WHOLE)).picture
    assert again.colour_trust == intake.picture.colour_trust
    assert again.notices == intake.picture.notices
