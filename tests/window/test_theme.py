"""Contrast by the Web Content Accessibility Guidelines 2.2 (W3C, 2023), success criteria 1.4.3
(text, 4.5 to 1) and 1.4.11 (edges of controls, 3 to 1)."""

import re
from itertools import product
from pathlib import Path

import numpy as np
import pytest

from framing_palette.colour import srgb_to_lab_d50, srgb_to_linear
from framing_palette.window import tokens as tokens_module
from framing_palette.window.theme import palette_of, style_sheet
from framing_palette.window.tokens import DARK, LIGHT, THEMES, Tokens

GROUNDS = ("chrome", "panel", "field", "hover", "pressed")
BOTH = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


def levels(tone: str) -> list[float]:
    return [int(tone[at : at + 2], 16) / 255 for at in (1, 3, 5)]


def luminance(tone: str) -> float:
    return float(srgb_to_linear(np.array(levels(tone))) @ np.array([0.2126, 0.7152, 0.0722]))


def contrast(first: str, second: str) -> float:
    lighter, darker = sorted((luminance(first), luminance(second)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


@BOTH
def test_text_stands_out_from_every_ground_by_four_and_a_half(theme: Tokens) -> None:
    for ink, ground in product(("ink", "quiet_ink"), GROUNDS):
        assert contrast(getattr(theme, ink), getattr(theme, ground)) >= 4.5, (ink, ground)
    assert contrast(theme.chosen_ink, theme.chosen) >= 4.5


@BOTH
def test_edges_of_controls_stand_out_by_three(theme: Tokens) -> None:
    for ground in ("chrome", "panel", "field"):
        assert contrast(theme.strong_line, getattr(theme, ground)) >= 3.0, ground


@BOTH
def test_every_tone_is_a_neutral_grey_between_18_and_95(theme: Tokens) -> None:
    for name in Tokens.__slots__[1:]:
        lightness, a, b = srgb_to_lab_d50(np.array(levels(getattr(theme, name))))
        assert 17.5 <= lightness <= 95.5, name
        assert max(abs(a), abs(b)) < 0.02, name


@BOTH
def test_one_line_of_the_focus_ring_stands_out_from_any_ground(theme: Tokens) -> None:
    for ground in (*(getattr(theme, name) for name in GROUNDS), theme.chosen, "#919191"):
        best = max(contrast(theme.ring_dark, ground), contrast(theme.ring_light, ground))
        assert best >= 3.0, ground


@BOTH
def test_sheet_and_palette_hold_greys_only(theme: Tokens, app: object) -> None:
    for tone in re.findall(r"#[0-9A-Fa-f]{6}", style_sheet(theme)):
        assert tone[1:3] == tone[3:5] == tone[5:7], tone
    palette = palette_of(theme)
    for role in (palette.ColorRole.Highlight, palette.ColorRole.Link, palette.ColorRole.Accent):
        color = palette.color(role)
        assert color.red() == color.green() == color.blue()


def test_the_comments_beside_the_greys_tell_their_lightness() -> None:
    source = Path(str(tokens_module.__file__)).read_text(encoding="utf-8")
    found = re.findall(r'"(#[0-9A-F]{6})",  # (\d+)', source)
    assert len(found) >= 20
    for tone, told in found:
        lightness = srgb_to_lab_d50(np.array(levels(tone)))[0]
        assert abs(lightness - int(told)) < 0.51, (tone, told)


def test_distances_lie_on_a_grid_of_four_pixels() -> None:
    for name in ("GAP", "MARGIN", "WIDE_MARGIN", "SECTION", "HIT", "PATH_WIDTH", "RAIL_HEIGHT"):
        assert getattr(tokens_module, name) % tokens_module.GRID == 0, name
    assert tokens_module.HIT >= 40
    assert set(THEMES) == {"light", "dark"}
