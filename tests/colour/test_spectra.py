import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from framing_palette.colour import (
    ILLUMINANTS,
    WAVELENGTHS_NM,
    WHITE_D50_XYZ,
    delta_e_2000,
    spectrum_to_lab_d50,
    spectrum_to_xyz,
    white_under,
    xyz_d50_to_lab_d50,
)
from framing_palette.colour.table_files import table
from framing_palette.errors import FieldError, ShapeError

REFLECTANCE = arrays(np.float64, 36, elements=st.floats(0, 1))
THEIR_NAMES = {"F11": "FL11"}


@pytest.fixture(scope="session")
def chart(science):
    """Measured reflectances of a 24-patch chart, 380 to 730 nm by 10, shape (24, 36)."""
    patches = science.SDS_COLOURCHECKERS["BabelColor Average"].values()
    return np.array([[patch[nm] for nm in WAVELENGTHS_NM] for patch in patches])


@pytest.mark.parametrize("light", ILLUMINANTS)
def test_a_chart_agrees_with_an_independent_integration(light, chart, science):
    # Theirs interpolates by Sprague's quintic, ours by cubics; both sum light and eye at 5 nm.
    shape = science.SpectralShape(380, 780, 5)
    eye = science.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(shape)
    power = science.SDS_ILLUMINANTS[THEIR_NAMES.get(light, light)].copy().align(shape)
    theirs = []
    for reflectance in chart:
        sample = science.SpectralDistribution(reflectance, WAVELENGTHS_NM)
        sample = sample.interpolate(science.SpectralShape(380, 730, 5)).extrapolate(shape)
        theirs.append(science.colorimetry.sd_to_XYZ_integration(sample, eye, power) / 100)
    white = white_under(light)
    lab = [
        xyz_d50_to_lab_d50(xyz / white * WHITE_D50_XYZ)
        for xyz in (spectrum_to_xyz(chart, light), np.array(theirs))
    ]
    assert delta_e_2000(*lab).max() < 0.02


@pytest.mark.parametrize("light", ILLUMINANTS)
def test_each_shipped_light_holds_the_numbers_of_an_independent_library(light, science):
    columns = table("lights.csv")
    theirs = science.SDS_ILLUMINANTS[THEIR_NAMES.get(light, light)]
    shipped = dict(zip(columns["nm"], columns[light], strict=True))
    assert len(shipped) == 81
    for nm, power in shipped.items():
        assert float(power) == pytest.approx(float(theirs[float(nm)]), rel=1e-9)


def test_the_conversion_needs_no_colour_library_at_run_time():
    program = (
        "import sys; from framing_palette.colour import *; "
        "spectrum_to_lab_d50([0.5] * 36, 'F11'); plain_name([50, 0, 0]); "
        "sys.exit(bool({'colour', 'scipy', 'skimage', 'sklearn', 'cv2'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0


def test_the_wavelengths_are_those_of_a_measured_sample():
    assert WAVELENGTHS_NM.tolist() == list(range(380, 731, 10))
    with pytest.raises(ValueError, match="read-only"):
        WAVELENGTHS_NM[0] = 0


@pytest.mark.parametrize(
    ("light", "x", "y"),
    [
        # CIE 015:2018, chromaticities of the illuminants, 2 degree observer.
        ("A", 0.44758, 0.40745),
        ("D50", 0.34567, 0.35851),
        ("D65", 0.31272, 0.32903),
        ("F11", 0.3805, 0.3769),
        ("LED-B1", 0.4560, 0.4078),
        ("LED-B2", 0.4357, 0.4012),
        ("LED-B3", 0.3756, 0.3723),
        ("LED-B4", 0.3422, 0.3502),
        ("LED-B5", 0.3118, 0.3236),
    ],
)
def test_each_light_has_its_published_chromaticity(light, x, y):
    white = white_under(light)
    assert white[1] == pytest.approx(1, abs=1e-12)
    assert white[:2] / white.sum() == pytest.approx([x, y], abs=1.5e-4)


@pytest.mark.parametrize("light", ILLUMINANTS)
def test_a_perfect_white_is_white_and_a_perfect_black_black_in_every_light(light):
    lab = spectrum_to_lab_d50([[1.0] * 36, [0.0] * 36], light)
    assert lab == pytest.approx(np.array([[100, 0, 0], [0, 0, 0]]), abs=1e-9)


@given(REFLECTANCE, REFLECTANCE, st.sampled_from(ILLUMINANTS))
def test_light_from_two_reflectances_adds_up(one, other, light):
    both = spectrum_to_xyz(one, light) + spectrum_to_xyz(other, light)
    assert spectrum_to_xyz(one + other, light) == pytest.approx(both, abs=1e-12)


@given(st.floats(0, 1), st.sampled_from(ILLUMINANTS))
def test_an_even_grey_stays_grey_in_every_light(share, light):
    lab = spectrum_to_lab_d50([share] * 36, light)
    assert lab[1:] == pytest.approx([0, 0], abs=1e-9)


def test_a_red_surface_looks_lighter_by_lamplight_than_by_daylight():
    red = np.where(WAVELENGTHS_NM > 600, 0.8, 0.05)
    assert spectrum_to_lab_d50(red, "A")[0] > spectrum_to_lab_d50(red, "D65")[0] + 3


def test_any_leading_axes_are_kept(chart):
    together = spectrum_to_lab_d50(chart.reshape(4, 6, 36), "LED-B3")
    assert together[3, 1] == pytest.approx(spectrum_to_lab_d50(chart[19], "LED-B3"))


def test_a_nan_band_spoils_its_own_sample_alone(chart):
    spectra = chart[:2].copy()
    spectra[0, 5] = np.nan
    lab = spectrum_to_lab_d50(spectra)
    assert np.isnan(lab[0]).all()
    assert np.isfinite(lab[1]).all()


def test_no_samples_give_no_colours():
    assert spectrum_to_lab_d50(np.empty((0, 36))).shape == (0, 3)


@pytest.mark.parametrize("shape", [(), (3,), (36, 2)])
def test_a_wrong_shape_is_refused_with_the_shape_it_got(shape):
    with pytest.raises(ShapeError) as refused:
        spectrum_to_xyz(np.zeros(shape))
    assert str(shape) in str(refused.value)


def test_an_unknown_light_is_refused_with_the_choice():
    with pytest.raises(FieldError, match=r"candle.*D50.*LED-B5"):
        spectrum_to_xyz([0.5] * 36, "candle")
