import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from framing_palette.colour import WAVELENGTHS_NM, metamerism_index, spectrum_to_xyz
from framing_palette.errors import FieldError, ShapeError

REFLECTANCE = arrays(np.float64, 36, elements=st.floats(0.02, 0.95))
CORRECTIONS = ["multiplicative", "additive"]


def metamer_of(reflectance, light="D50", size=0.15, seed=1):
    """A different spectrum of the same colour: add what the eye cannot see in that light."""
    weights = spectrum_to_xyz(np.eye(36), light)
    noise = np.random.default_rng(seed).normal(size=36)
    black = noise - weights @ np.linalg.lstsq(weights, noise, rcond=None)[0]
    return reflectance + size * black / np.abs(black).max()


GREY = np.full(36, 0.4)


@pytest.mark.parametrize("correction", CORRECTIONS)
def test_a_metamer_parts_by_lamplight_and_matches_in_the_reference(correction):
    other = metamer_of(GREY)
    parted = metamerism_index(GREY, other, light="A", correction=correction)
    kept = metamerism_index(GREY, other, light="D50", correction=correction)
    assert parted > 0.5
    assert kept == pytest.approx(0, abs=1e-6)


def test_the_corrections_agree_when_the_pair_matches_already():
    other = metamer_of(GREY)
    indices = [metamerism_index(GREY, other, light="F11", correction=kind) for kind in CORRECTIONS]
    assert indices[0] == pytest.approx(float(indices[1]), abs=1e-6)


@given(REFLECTANCE)
def test_equal_spectra_match_in_every_light(reflectance):
    assert metamerism_index(reflectance, reflectance, light="LED-B1") == pytest.approx(0, abs=1e-9)


@given(REFLECTANCE, st.floats(0.5, 1.0))
def test_a_sample_and_its_darker_likeness_are_no_metamers_once_scaled(reflectance, share):
    assert metamerism_index(reflectance, reflectance * share, light="A") == pytest.approx(
        0, abs=1e-6
    )


@pytest.mark.parametrize("correction", CORRECTIONS)
def test_the_index_agrees_with_its_definition_worked_out_in_an_independent_library(
    science, correction
):
    one = 0.2 + 0.5 / (1 + np.exp((560 - WAVELENGTHS_NM) / 15))
    two = metamer_of(one) * 1.03
    xyz = {
        (n, light): spectrum_to_xyz(s, light)
        for n, s in ((1, one), (2, two))
        for light in ("D50", "A")
    }
    lab = science.XYZ_to_Lab
    xy = {light: science.XYZ_to_xy(spectrum_to_xyz(np.ones(36), light)) for light in ("D50", "A")}
    if correction == "multiplicative":
        lab_2 = lab(xyz[2, "A"] * xyz[1, "D50"] / xyz[2, "D50"], xy["A"])
    else:
        lab_2 = (
            lab(xyz[2, "A"], xy["A"])
            + lab(xyz[1, "D50"], xy["D50"])
            - lab(xyz[2, "D50"], xy["D50"])
        )
    expected = science.difference.delta_E_CIE2000(lab(xyz[1, "A"], xy["A"]), lab_2)
    index = metamerism_index(one, two, light="A", correction=correction)
    assert index == pytest.approx(float(expected), abs=1e-9)


def test_samples_broadcast():
    others = np.stack([metamer_of(GREY, seed=seed) for seed in range(6)]).reshape(2, 3, 36)
    index = metamerism_index(GREY, others, light="A")
    assert index.shape == (2, 3)
    assert index[1, 2] == pytest.approx(float(metamerism_index(GREY, others[1, 2], light="A")))


def test_a_perfect_black_is_compared_without_a_warning():
    assert np.isfinite(metamerism_index(GREY, np.zeros(36), light="A"))
    assert metamerism_index(np.zeros(36), np.zeros(36), light="A") == 0


def test_a_nan_band_gives_a_nan():
    assert np.isnan(metamerism_index(GREY, np.full(36, np.nan), light="A"))


def test_bad_choices_are_refused_with_the_good_ones():
    with pytest.raises(FieldError, match="multiplicative or additive"):
        metamerism_index(GREY, GREY, light="A", correction="none")
    with pytest.raises(FieldError, match="LED-B1"):
        metamerism_index(GREY, GREY, light="moon")
    with pytest.raises(ShapeError, match=r"\(35,\)"):
        metamerism_index(GREY, GREY[1:], light="A")
