from math import nan

import pytest

from framing_palette.picture import Texture
from framing_palette.picture.texture_words import texture_words


def texture(contrast: tuple[float, ...], **facts: float) -> Texture:
    return Texture(lightness_contrast=contrast, mm_per_px=0.2, **facts)


@pytest.mark.parametrize(
    ("given", "wanted"),
    [
        (
            texture((1.0, 4.0, 1.0, 0.5, 0.5, 0.5), direction_strength=0.8, regularity=0.7),
            "fine level weave, about 1 mm",
        ),
        (
            texture((0.2, 0.2, 0.3, 0.4, 1.2, 0.5), direction_deg=92.0, direction_strength=0.6),
            "faint coarse upright grain, about 8 mm",
        ),
        (
            texture((1.0, 1.0, 9.0, 1.0, 1.0, 1.0), direction_deg=45.0, direction_strength=0.5),
            "strong middling slanting grain, about 2 mm",
        ),
        (texture((1.0, 1.0, 3.0, 1.0, 1.0, 1.0)), "middling mottle, about 2 mm"),
        (texture((0.1,) * 6), "smooth"),
        (texture((0.1,) * 6, sparkle=0.05), "smooth, with points of light"),
        (texture((nan,) * 6), "texture not measured: too little of it is seen"),
        (Texture(), "texture not measured: the size of the art is not known"),
    ],
)
def test_words_follow_the_measured_numbers(given: Texture, wanted: str) -> None:
    assert texture_words(given) == wanted


def test_directions_a_hair_below_and_above_level_are_both_level() -> None:
    for turn in (1.0, 179.0):
        words = texture_words(texture((4.0,) * 6, direction_deg=turn, direction_strength=0.9))
        assert "level grain" in words
