"""What of a design matches here, and whether it still does at home."""

import numpy as np
import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour, compare_under_lights
from framing_palette.catalogue.light import smooth_reflectance
from framing_palette.catalogue.matched_pairs import matched_pairs
from framing_palette.colour import WAVELENGTHS_NM, delta_e_2000, spectrum_to_lab_d50
from framing_palette.errors import FieldError

BRICK = (45.0, 30.0, 22.0)


def sample(code: str, lab: tuple[float, float, float], spectrum: object = None) -> Sample:
    curve = None if spectrum is None else tuple(np.asarray(spectrum).tolist())
    return Sample(code, code, Kind.MAT, (SampleColour(lab, 1.0, curve),))


def twin_of(lab: tuple[float, float, float]) -> Sample:
    """The same colour here by a reflectance with bumps that D50 does not see."""
    smooth = smooth_reflectance(lab)
    bumps = np.array([np.cos(k * (WAVELENGTHS_NM - 380) / 350 * np.pi) for k in range(4, 9)])
    seen = np.array([spectrum_to_lab_d50(smooth + 0.01 * bump) for bump in bumps])
    moves = (seen - spectrum_to_lab_d50(smooth)).T
    hidden = np.linalg.svd(moves)[2][-1]  # a mix of bumps that moves no colour, to first order
    return sample("twin", lab, smooth + 0.2 * hidden @ bumps)


def test_a_sample_that_matches_the_picture_is_told_with_what_the_light_does_to_it() -> None:
    brick, far = sample("Brick", BRICK), sample("Sea", (40.0, -10.0, -25.0))
    found = matched_pairs(
        [brick, far], [("dark red", (45.5, 30.0, 22.0)), ("sky", (80, 0, 0))], "A"
    )
    assert [(pair.first, pair.second) for pair in found] == [("Brick", "the picture's dark red")]
    assert found[0].sentence.startswith("Brick and the picture's dark red: matches here and ")
    assert found[0].sentence.endswith("(estimated: no measured reflectance).")


def test_two_samples_that_part_at_home_come_before_those_that_hold() -> None:
    twin, brick = twin_of(BRICK), sample("Brick", BRICK, smooth_reflectance(BRICK))
    assert float(delta_e_2000(twin.colours[0].lab, BRICK)) == 0.0
    found = matched_pairs([brick, twin], [("dark red", BRICK)], "A")
    assert (found[0].first, found[0].second) in {
        ("Brick", "twin"),
        ("twin", "the picture's dark red"),
    }
    indices = [pair.finding.drifts[0].index for pair in found]
    assert indices == sorted(indices, reverse=True)
    assert indices[0] > 1.0
    alone = compare_under_lights(brick.colours[0], twin.colours[0], ("A",))
    assert alone in [pair.finding for pair in found]


def test_colours_that_never_matched_are_not_told() -> None:
    bare = Sample("bare", "bare", Kind.MAT, ())
    assert matched_pairs([sample("a", (20, 0, 0)), sample("b", (60, 0, 0)), bare], [], "A") == ()
    sliver = Sample(
        "s", "s", Kind.MAT, (SampleColour((20, 0, 0), 0.95), SampleColour((60, 0, 0), 0.05))
    )
    assert matched_pairs([sliver, sample("b", (60, 0, 0))], [], "A") == ()


def test_a_light_that_is_none_is_refused() -> None:
    with pytest.raises(FieldError, match="candle"):
        matched_pairs([sample("a", BRICK), sample("b", BRICK)], [], "candle")
