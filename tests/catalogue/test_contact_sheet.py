"""One photograph of many swatches."""

import cv2
import numpy as np
import pytest

from framing_palette.catalogue.contact_sheet import find_swatches, measure_sheet
from framing_palette.colour import delta_e_2000
from framing_palette.errors import FieldError
from framing_palette.picture import ColourTrust, Picture, TrustGrade
from framing_palette.picture.outlines import rectangle

COLOURS = [(80, 5, 20), (35, 30, 10), (60, -20, 5), (25, 5, -20), (92, 0, 3), (50, 40, 40)]


def sheet(*, turned_deg: float = 0, with_chart: bool = False) -> Picture:
    """Six swatches in two rows of three on grey, one a little lower than its row."""
    rng = np.random.default_rng(3)
    lab = np.zeros((600, 900, 3), np.float32) + np.array([65, 0, 0], np.float32)
    for place, colour in enumerate(COLOURS):
        x, y = 80 + 270 * (place % 3), 60 + 260 * (place // 3) + (12 if place == 1 else 0)
        lab[y : y + 190, x : x + 200] = colour
    if turned_deg:
        turn = cv2.getRotationMatrix2D((450, 300), turned_deg, 0.9)
        lab = cv2.warpAffine(lab, turn, (900, 600), borderValue=(65, 0, 0))
    if with_chart:
        lab[540:595, 30:200] = (20, 0, 0)
    lab[5:25, 860:890] = (10, 0, 0)  # a crumb
    cv2.line(lab, (700, 560), (895, 590), (10.0, 0.0, 0.0), 3)  # a thread
    lab += rng.normal(0, 0.4, lab.shape).astype(np.float32)
    trust = ColourTrust("chart", TrustGrade.HUES, "good", p95_delta_e=1.0)
    return Picture(lab, 0.2, trust, 900, 600)


@pytest.mark.parametrize("turned_deg", [0, 3, -4])
def test_swatches_are_found_in_reading_order_and_measured(turned_deg: float) -> None:
    codes = [f"S{i}" for i in range(6)]
    found = measure_sheet(sheet(turned_deg=turned_deg), codes)
    assert [one.code for one in found] == codes
    for one, colour in zip(found, COLOURS, strict=True):
        assert len(one.swatch.colours) == 1
        assert delta_e_2000(one.swatch.colours[0].lab, colour) < 0.5


def test_the_outlines_stay_inside_their_swatches() -> None:
    first = np.array(find_swatches(sheet())[0]) * [900, 600]
    assert first.min(axis=0) == pytest.approx([80 + 16, 60 + 15], abs=3)
    assert first.max(axis=0) == pytest.approx([280 - 16, 250 - 15], abs=3)


def test_what_is_to_be_ignored_is_not_taken_for_a_swatch() -> None:
    picture = sheet(with_chart=True)
    assert len(find_swatches(picture)) == 7
    assert len(find_swatches(picture, ignored=[rectangle(0, 0.85, 0.3, 1)])) == 6


def test_swatches_that_are_drawn_by_hand_are_taken_as_drawn() -> None:
    (one,) = measure_sheet(sheet(), ["ONE"], outlines=[rectangle(0.12, 0.15, 0.28, 0.35)])
    assert delta_e_2000(one.swatch.colours[0].lab, COLOURS[0]) < 0.5


@pytest.mark.parametrize(
    ("codes", "message"),
    [
        (["A"], "1 for 6 swatches"),
        (["A", "A", "B", "C", "D", "E"], "one of them twice"),
        (["../A", "B", "C", "D", "E", "F"], "looks like a path"),
    ],
)
def test_codes_that_do_not_fit_are_refused(codes: list[str], message: str) -> None:
    with pytest.raises(FieldError, match=message):
        measure_sheet(sheet(), codes)


def test_an_even_photograph_has_no_swatch() -> None:
    picture = sheet()
    empty = np.zeros_like(picture.lab_d50) + np.array([65, 0, 0], np.float32)
    assert find_swatches(Picture(empty, None, picture.colour_trust, 900, 600)) == ()
