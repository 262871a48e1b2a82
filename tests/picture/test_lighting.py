"""Uneven light: what a plain sheet or a plain table tells, against counters whose truth is known."""

import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from framing_palette.colour import srgb_to_linear
from framing_palette.errors import LightError, PictureFileError
from framing_palette.picture import (
    Intake,
    IntakeWishes,
    LightField,
    intake_report,
    read_light_file,
    take_in,
)
from framing_palette.picture.light_fields import degree_of
from framing_palette.picture.lighting import light_of_sheet, light_of_surroundings
from framing_palette.picture.trust import AT_THE_CHART
from tests.picture.counters import Counter, counter, fall_off, plain_sheet
from tests.picture.test_intake import art_errors, corners_of, photograph

UNEVEN = {"vignette": 0.4, "slant": 0.2}  # brightest over darkest 2.2


def linear(srgb_u8: np.ndarray) -> np.ndarray:
    return np.asarray(srgb_to_linear(srgb_u8 / 255.0), np.float32)


@cache
def sheet(**kind: float) -> LightField:
    return light_of_sheet(linear(plain_sheet("LED-B3", **kind)))


@cache
def scene() -> Counter:
    return counter("LED-B3", **UNEVEN)


@cache
def taken(light: str) -> Intake:
    field = sheet(**UNEVEN, marks=12) if light == "sheet" else light
    chart = tuple(tuple(map(float, point)) for point in scene().chart_corners)
    wishes = IntakeWishes(corners=corners_of(scene()), chart=chart, light=field)
    return take_in(photograph(scene().srgb_u8), wishes)


def off_by(field: LightField, vignette: float, slant: float) -> np.ndarray:
    """Return by what share the found light is wrong, everywhere."""
    ratio = field.across(1000, 1500) / fall_off(vignette, slant)
    return np.abs(ratio / np.median(ratio) - 1)


@pytest.mark.parametrize(("vignette", "slant"), [(0.0, 0.0), (0.3, 0.15), (0.5, 0.0), (0.2, -0.4)])
def test_a_marked_sheet_tells_the_light_within_a_hundredth(vignette: float, slant: float) -> None:
    field = sheet(vignette=vignette, slant=slant, marks=12)
    assert off_by(field, vignette, slant).max() < 0.01
    true = fall_off(vignette, slant)
    assert field.fall_off == pytest.approx(true.max() / true.min(), rel=0.04)


def test_marks_on_the_sheet_change_little() -> None:
    clean, marked = sheet(**UNEVEN), sheet(**UNEVEN, marks=25)
    ratio = clean.across(100, 150) / marked.across(100, 150)
    assert np.abs(ratio / np.median(ratio) - 1).max() < 0.005


@pytest.mark.parametrize("told_by", ["sheet", "auto"])
def test_evening_out_takes_the_error_across_the_art_down_to_a_quarter(told_by: str) -> None:
    left = art_errors(taken("none").picture, scene())
    evened = art_errors(taken(told_by).picture, scene())
    assert left.mean() > 3.5
    assert evened.mean() < left.mean() / 4
    assert evened.max() < left.max() / 4
    # As good as under light that was even from the start.
    assert evened.mean() < 1.5


def test_what_was_done_is_said_in_notice_and_report() -> None:
    for told_by, source in (("sheet", "plain sheet"), ("auto", "table")):
        intake = taken(told_by)
        report = intake_report(intake)["light"]
        assert report["evened_by"] == source
        assert report["fall_off"] == pytest.approx(2.1, abs=0.1)
        assert report["words"] in intake.picture.notices
        assert AT_THE_CHART not in intake.picture.colour_trust.words


def test_light_that_is_left_alone_is_said_and_the_trust_speaks_of_the_chart_alone() -> None:
    intake = taken("none")
    assert intake_report(intake)["light"]["evened_by"] == "none"
    assert AT_THE_CHART in intake.picture.colour_trust.words


def test_even_light_is_found_even_and_nothing_is_divided_out() -> None:
    even = counter("LED-B3")
    told, left = (
        take_in(
            photograph(even.srgb_u8),
            IntakeWishes(corners=corners_of(even), chart="none", light=light),
        )
        for light in ("auto", "none")
    )
    assert told.light.source == "none"
    assert told.light.fall_off == pytest.approx(1.0, abs=0.01)
    np.testing.assert_array_equal(told.picture.lab_d50, left.picture.lab_d50)


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        ({"grain": 0.08}, "pattern or texture"),
        ({"exposure": 2.0}, "burnt out"),
        ({"exposure": 0.01}, "too dark"),
        ({"second_light": "A"}, "lights of two kinds"),
        ({"slant": 0.9}, "falls off"),
    ],
)
def test_a_sheet_that_cannot_tell_is_refused_saying_why(kind: dict, said: str) -> None:
    with pytest.raises(LightError, match=said) as told:
        light_of_sheet(linear(plain_sheet("D50", **kind)))
    assert "\n" not in str(told.value)


def test_a_picture_full_of_things_is_no_plain_sheet() -> None:
    with pytest.raises(LightError):
        light_of_sheet(linear(np.ascontiguousarray(scene().srgb_u8[150:800, 100:790])))


def test_a_sheet_with_the_art_still_on_it_is_refused() -> None:
    with pytest.raises(LightError, match="covered in part"):
        light_of_sheet(linear(scene().srgb_u8))


def test_a_sheet_that_ends_before_the_art_does_is_refused() -> None:
    field = sheet(**UNEVEN, covers=0.6)
    wishes = IntakeWishes(corners=corners_of(scene()), chart="none", light=field)
    with pytest.raises(LightError, match="did not reach under all of the art"):
        take_in(photograph(scene().srgb_u8), wishes)


def test_a_sheet_photographed_in_another_shape_is_refused() -> None:
    field = light_of_sheet(linear(np.ascontiguousarray(plain_sheet("D50")[:, :500])))
    wishes = IntakeWishes(corners=corners_of(scene()), chart="none", light=field)
    with pytest.raises(LightError, match="another shape"):
        take_in(photograph(scene().srgb_u8), wishes)


def test_a_table_with_a_grain_is_not_believed() -> None:
    rng = np.random.default_rng(3)
    grain = np.kron(rng.normal(1, 0.06, (50, 75)), np.ones((20, 20)))[..., None]
    found = Counter(
        np.clip(scene().srgb_u8 * grain, 0, 255).astype(np.uint8),
        scene().art_corners,
        scene().chart_corners,
    )
    wishes = IntakeWishes(corners=corners_of(found), chart="none")
    light = take_in(photograph(found.srgb_u8), wishes).light
    assert (light.source, light.fall_off) == ("none", None)
    assert "not plain enough" in light.words


def test_a_table_that_the_chart_contradicts_is_not_believed() -> None:
    even = counter("D50")
    light = linear(even.srgb_u8)
    painted = light * np.linspace(0.7, 1.3, 1500)[None, :, None]  # brighter to the right
    left, top, right, low = 920, 280, 1400, 640  # the chart's card is not, nor is its light
    painted[top:low, left:right] = light[top:low, left:right]
    srgb = np.where(painted <= 0.0031308, 12.92 * painted, 1.055 * painted ** (1 / 2.4) - 0.055)
    photo = photograph(np.rint(np.clip(srgb, 0, 1) * 255).astype(np.uint8))
    chart = tuple(tuple(map(float, point)) for point in even.chart_corners)
    found = take_in(photo, IntakeWishes(corners=corners_of(even), chart=chart)).light
    assert found.source == "none"
    assert "different things" in found.words


def test_too_little_table_around_the_art_tells_nothing() -> None:
    close = np.ascontiguousarray(scene().srgb_u8[160:810, 70:820])
    corners = np.array([[0.06, 0.03], [0.97, 0.03], [0.97, 0.97], [0.03, 0.97]])
    with pytest.raises(LightError, match=r"[Tt]oo little|not in sight"):
        light_of_surroundings(linear(close), [corners])


def test_a_clipped_patch_in_bright_light_is_still_called_clipped() -> None:
    bright = counter("D50", exposure=1.15, slant=0.5)
    field = light_of_sheet(linear(plain_sheet("D50", slant=0.5)))
    chart = tuple(tuple(map(float, point)) for point in bright.chart_corners)
    wishes = IntakeWishes(corners=corners_of(bright), chart=chart, light=field)
    patches = take_in(photograph(bright.srgb_u8), wishes).patches
    assert patches is not None
    assert patches.faults
    assert set(patches.faults.values()) == {"clipped"}
    assert patches.linear[18].max() < 0.985  # once evened it would not have shown


@given(st.integers(2, 40), st.integers(2, 40), st.integers(0, 50))
@settings(max_examples=25)
def test_a_light_field_is_finite_positive_and_bounded_at_any_size(
    rows: int, columns: int, seed: int
) -> None:
    wild = tuple(np.random.default_rng(seed).normal(0, 5, 28).tolist())
    field = LightField(wild, ((0, 0), (1, 0), (1, 1)), 1.5, 2.0).across(rows, columns)
    assert field.shape == (rows, columns)
    assert ((field >= 0.24) & (field <= 4.1)).all()


def test_a_number_of_terms_that_no_degree_has_is_refused() -> None:
    assert [degree_of(terms) for terms in (1, 3, 6, 10, 15, 21, 28)] == list(range(7))
    for terms in (0, 2, 27, 36):
        with pytest.raises(LightError):
            degree_of(terms)


def test_the_sheet_is_read_from_its_file(tmp_path: Path) -> None:
    path = tmp_path / "sheet.png"
    Image.fromarray(plain_sheet("LED-B3", **UNEVEN)).save(path)
    assert off_by(read_light_file(path), **UNEVEN).max() < 0.01


def test_a_file_of_a_sheet_that_cannot_tell_is_named(tmp_path: Path) -> None:
    path = tmp_path / "sheet.png"
    Image.fromarray(plain_sheet("D50", exposure=2.0)).save(path)
    with pytest.raises(PictureFileError, match=r"sheet\.png tells nothing of the light, because"):
        read_light_file(path)
    with pytest.raises(PictureFileError, match="does not exist"):
        read_light_file(tmp_path / "none.png")


def test_the_report_is_json(tmp_path: Path) -> None:
    path = tmp_path / "report.json"
    path.write_text(json.dumps(intake_report(taken("sheet")), allow_nan=False))
    assert path.stat().st_size > 0
