"""What cannot be taken in as it is: each told in one sentence that says what to do, never guessed."""

import re
from collections.abc import Callable

import numpy as np
import pytest

from framing_palette.colour import srgb_to_linear
from framing_palette.errors import ChartError, CornersError, FramingPaletteError
from framing_palette.picture import IntakeWishes, TrustGrade, chart_size, take_in
from framing_palette.picture.chart_layout import patch_outlines
from framing_palette.picture.correction import DARK_BELOW
from framing_palette.units import Length
from tests.picture.counters import Counter, counter
from tests.picture.test_intake import art_errors, corners_of, photograph

SENTENCE = re.compile(r"^[A-Z0-9][^\n]{10,}: [^\n]{8,}\.$")


def lit(scene: Counter, light: np.ndarray, factor: float = 1.0) -> np.ndarray:
    """Return a photograph with light added, shape (1000, 1500), linear."""
    linear = srgb_to_linear(scene.srgb_u8 / 255.0) * factor + light[..., None]
    srgb = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    return np.rint(np.clip(srgb, 0, 1) * 255).astype(np.uint8)


def spot(at: np.ndarray, size: float, strength: float) -> np.ndarray:
    y, x = np.mgrid[0:1000, 0:1500]
    return strength * np.exp(-(((x - at[0]) / size) ** 2 + ((y - at[1]) / size) ** 2))


def cut_at(scene: Counter, column: int) -> np.ndarray:
    return np.ascontiguousarray(scene.srgb_u8[:, :column])


def chart_middle(scene: Counter) -> np.ndarray:
    return scene.chart_corners.mean(axis=0) * (1500, 1000)


def marked(scene: Counter) -> tuple:
    return tuple((float(x), float(y)) for x, y in scene.chart_corners)


@pytest.mark.parametrize(
    ("pixels", "said"),
    [
        (lambda: counter("D50", charts=2).srgb_u8, "two colour charts"),
        (lambda: counter("D50", mirrored=True).srgb_u8, "mirrored"),
        (lambda: cut_at(counter("D50"), 1350), "cut by the edge"),
        (lambda: cut_at(counter("D50", turn=2), 1360), "cut by the edge"),
    ],
)
def test_a_chart_that_cannot_be_used_is_refused_in_a_sentence(
    pixels: Callable[[], np.ndarray], said: str
) -> None:
    with pytest.raises(ChartError, match=rf"(?i){said}") as told:
        take_in(photograph(pixels()))
    assert SENTENCE.match(str(told.value))


def test_less_than_two_thirds_of_a_chart_is_no_chart_and_that_is_said() -> None:
    intake = take_in(photograph(cut_at(counter("D50"), 1150)))
    assert intake.chart is None
    assert any(notice.startswith("No whole 24-patch") for notice in intake.picture.notices)
    assert intake.picture.colour_trust.grade is TrustGrade.UNKNOWN


def test_glare_on_some_patches_leaves_them_out_and_names_them() -> None:
    scene = counter("D50")
    photo = photograph(lit(scene, spot(chart_middle(scene), 30, 0.5)))
    intake = take_in(photo, IntakeWishes(corners=corners_of(scene), chart=marked(scene)))
    assert intake.patches is not None
    assert set(intake.patches.faults.values()) == {"glare or shadow"}
    assert "Patches left out: purple (glare or shadow), red (glare or shadow)." in (
        intake.picture.colour_trust.words
    )
    assert art_errors(intake.picture, scene).mean() < 1.5


def test_glare_over_much_of_the_chart_is_refused_naming_every_patch() -> None:
    scene = counter("D50")
    middles = patch_outlines(scene.chart_corners)[:6].mean(axis=1) * (1500, 1000)
    photo = photograph(lit(scene, np.sum([spot(at, 12, 0.3) for at in middles], axis=0)))
    with pytest.raises(ChartError, match="of the chart's patches cannot be used") as told:
        take_in(photo, IntakeWishes(corners=corners_of(scene), chart=marked(scene)))
    assert str(told.value).count("(glare or shadow)") > 4
    assert SENTENCE.match(str(told.value))


def test_a_veil_of_light_over_the_whole_chart_is_noticed() -> None:
    scene = counter("D50")
    photo = photograph(lit(scene, spot(chart_middle(scene), 250, 0.3)))
    wishes = IntakeWishes(corners=corners_of(scene), chart=marked(scene))
    intake = take_in(photo, wishes)
    assert intake.picture.colour_trust.grade is TrustGrade.FAMILIES
    assert any("glare, haze or a shadow" in notice for notice in intake.picture.notices)


def test_a_chart_in_the_dark_is_refused_naming_patches() -> None:
    scene = counter("D50", exposure=0.004, noise=0.0)
    assert srgb_to_linear(scene.srgb_u8 / 255.0).max() < 20 * DARK_BELOW
    with pytest.raises(FramingPaletteError) as told:
        take_in(photograph(scene.srgb_u8), IntakeWishes(chart=marked(scene)))
    assert SENTENCE.match(str(told.value))
    assert str(told.value).endswith("take the photograph again brighter.")


def test_a_marked_place_without_a_chart_is_refused_where_one_was_promised() -> None:
    scene = counter("D50", with_chart=False)
    with pytest.raises(ChartError, match="does not look like the 24-patch chart") as told:
        take_in(photograph(scene.srgb_u8), IntakeWishes(chart=marked(scene)))
    assert SENTENCE.match(str(told.value))


@pytest.mark.parametrize(
    ("corners", "said"),
    [
        (((0.1, 0.1), (0.9, 0.9), (0.9, 0.1), (0.1, 0.9)), "cross or fold"),
        (((0.1, 0.1), (0.9, 0.1), (0.2, 0.2), (0.1, 0.9)), "cross or fold"),
        (((0.1, 0.1), (0.105, 0.1), (0.9, 0.9), (0.1, 0.9)), "nearly coincide"),
        (((0.1, 0.1), (1.9, 0.1), (0.9, 0.9), (0.1, 0.9)), "outside"),
        (((float("nan"), 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)), "four corners"),
    ],
)
def test_corners_that_cannot_be_are_told_apart(corners: tuple, said: str) -> None:
    grey = photograph(np.full((40, 60, 3), 120, np.uint8))
    with pytest.raises(CornersError, match=rf"(?i){said}") as told:
        take_in(grey, IntakeWishes(corners=corners, chart="none"))
    assert SENTENCE.match(str(told.value))


def test_a_size_that_the_chart_does_not_bear_out_is_noticed() -> None:
    scene = counter("D50")
    chart = chart_size(Length.mm_of(200))
    by_chart = take_in(
        photograph(scene.srgb_u8),
        IntakeWishes(corners=corners_of(scene), chart=marked(scene), chart_size=chart),
    ).picture
    assert by_chart.mm_per_px is not None
    true = by_chart.columns * by_chart.mm_per_px, by_chart.rows * by_chart.mm_per_px
    for share, is_said in ((1.03, False), (0.8, True)):
        size = (Length.mm_of(round(true[0] * share)), Length.mm_of(round(true[1] * share)))
        wishes = IntakeWishes(
            corners=corners_of(scene), chart=marked(scene), art_size=size, chart_size=chart
        )
        notices = take_in(photograph(scene.srgb_u8), wishes).picture.notices
        assert any("chart's own size" in notice for notice in notices) == is_said


def test_the_charts_height_follows_from_its_width() -> None:
    width, height = chart_size(Length.mm_of(65))
    assert (width.as_float_mm(), height.as_float_mm()) == pytest.approx((65, 43))
