"""Colours and matches under other lights."""

import warnings
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.catalogue.light import (
    HOME_LIGHTS,
    LIGHT_WORDS,
    colour_under,
    compare_under_lights,
    is_estimated,
    lab_under,
    nearest_colour,
    sample_under,
    smooth_reflectance,
)
from framing_palette.colour import delta_e_2000, metamerism_index, spectrum_to_lab_d50
from framing_palette.errors import FieldError

NM = np.arange(380, 731, 10)
GREEN = 0.08 + 0.45 * np.exp(-(((NM - 530) / 45.0) ** 2))


def measured(reflectance: np.ndarray, share: float = 1.0) -> SampleColour:
    lab = spectrum_to_lab_d50(reflectance).tolist()
    return SampleColour((lab[0], lab[1], lab[2]), share, tuple(reflectance.tolist()))


def metameric_twin(colour: SampleColour) -> SampleColour:
    """The same colour under D50 made with the smoothest reflectance instead."""
    return measured(smooth_reflectance(colour.lab))


@pytest.mark.parametrize("light", LIGHT_WORDS)
def test_a_measured_colour_under_a_light_is_what_its_reflectance_gives(light: str) -> None:
    colour = measured(GREEN)
    assert colour_under(colour, light).lab == pytest.approx(
        spectrum_to_lab_d50(GREEN, light).tolist(), abs=1e-9
    )


@pytest.mark.parametrize("light", LIGHT_WORDS)
def test_white_stays_white_and_grey_keeps_its_lightness_under_every_light(light: str) -> None:
    greys = np.array([[100.0, 0, 0], [50.0, 0, 0], [5.0, 0, 0]])
    assert lab_under(greys, light) == pytest.approx(greys, abs=1e-6)


@given(st.floats(30, 90), st.floats(-20, 20), st.floats(-20, 20))
def test_the_smoothest_reflectance_has_the_colour_it_was_made_for(
    lightness: float, a: float, b: float
) -> None:
    reflectance = smooth_reflectance([lightness, a, b])
    assert spectrum_to_lab_d50(reflectance) == pytest.approx([lightness, a, b], abs=1e-6)


def test_the_estimate_of_a_colour_equals_that_of_its_smooth_reflectance() -> None:
    lab = (55.0, 12.0, -9.0)
    estimate = colour_under(SampleColour(lab, 1.0), "A").lab
    truth = spectrum_to_lab_d50(smooth_reflectance(lab), "A")
    assert estimate == pytest.approx(truth.tolist(), abs=1e-9)


def test_the_estimate_comes_close_on_published_patches() -> None:
    """24 patches of the BabelColor average of the ColorChecker, as colour-science ships them.

    Measured when written: mean ΔE00 0.4 to 1.3 and at most 6.4 (LED-B1), against a change of 0.6
    to 2.8 by the light itself under the same lights.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour
    shape = colour.SpectralShape(380, 730, 10)
    patches = colour.SDS_COLOURCHECKERS["BabelColor Average"].values()
    spectra = np.array([patch.copy().align(shape).values for patch in patches])
    lab = spectrum_to_lab_d50(spectra)
    for light in HOME_LIGHTS:
        error = delta_e_2000(spectrum_to_lab_d50(spectra, light), lab_under(lab, light))
        assert error.mean() < 1.4
        assert error.max() < 6.5


def test_any_leading_axes_pass_through_the_estimate() -> None:
    picture = np.full((2, 3, 3), [60.0, 10.0, 20.0])
    assert lab_under(picture, "A").shape == (2, 3, 3)
    assert lab_under(np.zeros((0, 3)), "A").shape == (0, 3)
    assert np.isfinite(lab_under([0.0, 0.0, 0.0], "F11")).all()


def test_a_sample_under_a_light_changes_its_colours_alone() -> None:
    sample = Sample("A", "A", Kind.MAT, (measured(GREEN, 0.6), SampleColour((40, 0, 0), 0.4)))
    seen = sample_under(sample, "A")
    assert replace(seen, colours=sample.colours) == sample
    assert seen.colours[0].lab != sample.colours[0].lab
    assert sample_under(sample, "D50") == sample
    assert is_estimated(sample)
    assert not is_estimated(replace(sample, colours=sample.colours[:1]))


def test_a_pair_of_equal_spectra_stays_a_match_everywhere() -> None:
    match = compare_under_lights(measured(GREEN), measured(GREEN))
    assert match.difference == 0
    assert match.sentence == "matches here and stays so in every light tried: ΔE00 0.0 at most"
    assert compare_under_lights(measured(GREEN), measured(GREEN), ["A"]).sentence.startswith(
        "matches here and stays so under warm bulbs"
    )


def test_a_metameric_pair_is_told_with_its_worst_light_and_direction() -> None:
    one = measured(0.3 + 0.45 * np.exp(-(((NM - 640) / 18.0) ** 2)))
    match = compare_under_lights(one, metameric_twin(one))
    assert match.difference < 0.01
    assert match.worst is not None
    assert [drift.light for drift in match.drifts] == list(HOME_LIGHTS)
    assert match.worst.index == max(drift.index for drift in match.drifts) > 3
    twin = smooth_reflectance(one.lab)
    expected = metamerism_index(one.spectrum or (), twin, light=match.worst.light)
    assert match.worst.index == pytest.approx(float(expected))
    assert match.sentence == (
        f"matches here, drifts toward {match.worst.toward} under "
        f"{LIGHT_WORDS[match.worst.light]}: ΔE00 {match.worst.index:.1f}"
    )


@pytest.mark.parametrize(
    ("centre", "light", "ways"),
    [(640, "A", {"pink", "orange"}), (450, "LED-B5", {"violet", "blue", "pink"})],
)
def test_the_direction_is_that_of_the_light_which_the_extra_band_meets(
    centre: int, light: str, ways: set[str]
) -> None:
    one = measured(0.3 + 0.25 * np.exp(-(((NM - centre) / 15.0) ** 2)))
    match = compare_under_lights(one, metameric_twin(one), [light])
    assert match.drifts[0].toward in ways


def test_the_way_of_the_drift_turns_round_with_the_pair() -> None:
    one = measured(0.3 + 0.25 * np.exp(-(((NM - 640) / 15.0) ** 2)))
    opposite = {"pink": "green", "orange": "teal", "lighter": "darker", "yellow": "blue"}
    there = compare_under_lights(one, metameric_twin(one), ["A"]).drifts[0].toward
    back = compare_under_lights(metameric_twin(one), one, ["A"]).drifts[0].toward
    assert opposite.get(there) == back or opposite.get(back) == there


def test_a_pair_apart_here_is_called_no_match_and_an_estimate_is_called_one() -> None:
    match = compare_under_lights((50.0, 0.0, 0.0), (60.0, 0.0, 0.0))
    assert match.sentence.startswith("does not match here (ΔE00 9")
    assert match.sentence.endswith("(estimated: no measured reflectance)")
    assert all(drift.is_estimate for drift in match.drifts)
    assert compare_under_lights((50, 0, 0), (50, 0, 0), []).sentence == "matches here"
    assert compare_under_lights((50, 0, 0), (50, 0, 0), []).worst is None


def test_a_small_drift_is_called_little() -> None:
    one = measured(0.3 + 0.06 * np.exp(-(((NM - 640) / 15.0) ** 2)))
    match = compare_under_lights(one, metameric_twin(one))
    assert match.worst is not None
    assert 1 <= match.worst.index < 3
    assert "drifts a little" in match.sentence


def test_lightness_alone_is_told_as_lighter_or_darker() -> None:
    from framing_palette.catalogue.light import _direction

    assert _direction(np.array([2.0, 0.5, 0])) == "lighter"
    assert _direction(np.array([-2.0, 0.5, 0])) == "darker"
    assert _direction(np.array([0.0, -1.0, 0.0])) == "green"
    assert _direction(np.array([0.0, 0.0, -1.0])) == "blue"


def test_an_unknown_light_and_a_sample_without_colour_are_refused() -> None:
    with pytest.raises(FieldError, match="light is candle"):
        compare_under_lights((50, 0, 0), (50, 0, 0), ["candle"])
    with pytest.raises(FieldError, match="light"):
        colour_under(SampleColour((50, 0, 0), 1), "candle")
    with pytest.raises(FieldError, match="needs a colour"):
        nearest_colour(Sample("A", "A", Kind.MAT, ()), (50, 0, 0))


def test_the_nearest_colour_of_a_sample_is_the_one_to_hold_against_the_picture() -> None:
    sample = Sample(
        "A", "A", Kind.MAT, (SampleColour((80, 0, 0), 0.7), SampleColour((40, 30, 20), 0.3))
    )
    assert nearest_colour(sample, (45, 28, 20)).share == 0.3
