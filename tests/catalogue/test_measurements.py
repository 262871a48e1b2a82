"""What an instrument's figures mean: light, observer, reflectances, and the refusals."""

from pathlib import Path

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.catalogue.cgats import CgatsTable
from framing_palette.catalogue.conditions import (
    Conditions,
    conditions_of,
    known_light,
    lab_from,
    lab_from_xyz,
)
from framing_palette.catalogue.measurements import (
    Measurement,
    measurements_of,
    sample_from,
    samples_from,
)
from framing_palette.catalogue.wavelengths import reflectances_at_ten
from framing_palette.colour import delta_e_2000, spectrum_to_lab_d50, spectrum_to_xyz, white_under
from framing_palette.errors import ExchangeFileError

SOURCE = Path("export.txt")
NM = np.arange(380, 731, 10)
CURVE = 0.1 + 0.5 * np.exp(-(((NM - 590) / 60.0) ** 2))
D50 = {"WEIGHTING_FUNCTION": "ILLUMINANT, D50; OBSERVER, 2 degree"}


def lab_table(keywords: dict[str, str], *rows: tuple[str, ...]) -> CgatsTable:
    return CgatsTable(keywords, ("SAMPLE_ID", "LAB_L", "LAB_A", "LAB_B"), rows)


def spectral_table(spelling: str, values: np.ndarray, nm: np.ndarray = NM) -> CgatsTable:
    fields = ("SampleID", "SAMPLE_NAME", *(spelling.format(w) for w in nm))
    return CgatsTable({}, fields, (("A1", "brass", *(f"{v:.6f}" for v in values)),))


@pytest.mark.parametrize(
    "spelling",
    ["SPECTRAL_NM{}", "SPECTRAL_NM_{}", "SPECTRAL_{}", "SPEC_{}", "nm{}", "NM_{}", "R_{}", "{}"],
)
def test_every_spelling_of_a_spectral_field_gives_the_same_colour(spelling: str) -> None:
    if spelling == "{}":
        with pytest.raises(ExchangeFileError, match="names no field with a colour"):
            measurements_of(spectral_table(spelling, CURVE), SOURCE)
        return
    (one,) = measurements_of(spectral_table(spelling, CURVE), SOURCE).measurements
    assert (one.identity, one.name) == ("A1", "brass")
    assert one.lab == pytest.approx(spectrum_to_lab_d50(CURVE.round(6)).tolist(), abs=1e-9)
    assert one.spectrum == pytest.approx(CURVE, abs=1e-6)


def test_per_cent_is_noticed_and_divided() -> None:
    found = measurements_of(spectral_table("nm{}", CURVE * 100), SOURCE)
    assert found.measurements[0].spectrum == pytest.approx(CURVE, abs=1e-6)
    assert "per cent" in found.notices[0]


def test_a_decimal_comma_is_read_and_told() -> None:
    table = lab_table(D50, ("1", "50,5", "1,25", "-2"))
    found = measurements_of(table, SOURCE)
    assert found.measurements[0].lab == pytest.approx((50.5, 1.25, -2))
    assert "decimal commas" in found.notices[0]


@pytest.mark.parametrize(
    ("keywords", "expected"),
    [
        (D50, Conditions("D50", 2)),
        ({"ILLUMINATION_NAME": "D50", "OBSERVER_ANGLE": "2"}, Conditions("D50", 2)),
        (
            {"MEASUREMENT_SOURCE": "Illumination=D65\tObserverAngle=10°\tWhiteBase=Abs"},
            Conditions("D65", 10),
        ),
        ({"ILLUMINANT": "A", "OBSERVER": "CIE 1931 2 degree"}, Conditions("A", 2)),
        ({"ILLUMINANT": "F11"}, Conditions("F11", None)),
        ({"DESCRIPTOR": "illuminant D50"}, Conditions("", None)),
        ({}, Conditions("", None)),
    ],
)
def test_the_light_and_observer_of_usual_headers_are_found(
    keywords: dict[str, str], expected: Conditions
) -> None:
    assert conditions_of(keywords) == expected


@pytest.mark.parametrize(
    ("keywords", "message"),
    [
        ({}, "does not tell their illuminant"),
        ({"ILLUMINANT": "D50"}, "does not tell their observer"),
        ({"ILLUMINANT": "D50", "OBSERVER": "10"}, "for the 10 degree observer"),
        ({"ILLUMINANT": "F2", "OBSERVER": "2"}, "for illuminant F2"),
    ],
)
def test_figures_for_an_unknown_light_are_refused(keywords: dict[str, str], message: str) -> None:
    with pytest.raises(ExchangeFileError, match=message):
        measurements_of(lab_table(keywords, ("1", "50", "0", "0")), SOURCE)


def test_a_light_that_the_user_states_fills_what_the_file_does_not_tell() -> None:
    table = lab_table({"ILLUMINANT": "D50"}, ("1", "50", "0", "0"))
    found = measurements_of(table, SOURCE, Conditions("D65", 2))
    assert found.measurements[0].lab == (50, 0, 0)  # the file's own D50 stands


@pytest.mark.parametrize("light", ["D65", "A", "F11"])
def test_lab_and_xyz_for_another_light_come_to_d50_as_the_same_colour(light: str) -> None:
    xyz = spectrum_to_xyz(CURVE, light)
    expected = spectrum_to_lab_d50(CURVE, light)
    assert lab_from_xyz(xyz, Conditions(light, 2), SOURCE) == pytest.approx(expected, abs=1e-9)
    ratio = xyz / white_under(light)
    root = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    lab = np.array([116 * root[1] - 16, 500 * (root[0] - root[1]), 200 * (root[1] - root[2])])
    assert lab_from(lab, Conditions(light, 2), SOURCE) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("scale", [1.0, 100.0])
def test_xyz_of_either_scale_is_understood(scale: float) -> None:
    xyz = spectrum_to_xyz(CURVE) * scale
    table = CgatsTable(D50, ("NAME", "XYZ_X", "XYZ_Y", "XYZ_Z"), (("n", *(f"{v}" for v in xyz)),))
    (one,) = measurements_of(table, SOURCE).measurements
    assert delta_e_2000(one.lab, spectrum_to_lab_d50(CURVE)) < 0.01
    assert one.name == "n"
    assert one.identity == "1"


def test_reflectances_are_believed_over_a_lab_that_disagrees_and_it_is_told() -> None:
    table = spectral_table("nm{}", CURVE)
    wrong = CgatsTable(
        D50, (*table.fields, "LAB_L", "LAB_A", "LAB_B"), ((*table.rows[0], "20", "0", "0"),)
    )
    found = measurements_of(wrong, SOURCE)
    assert found.measurements[0].lab[0] == pytest.approx(
        float(spectrum_to_lab_d50(CURVE)[0]), abs=0.01
    )
    assert "disagree" in found.notices[0]
    lab = spectrum_to_lab_d50(CURVE)
    right = CgatsTable(D50, wrong.fields, ((*table.rows[0], *(f"{v:.4f}" for v in lab.tolist())),))
    assert measurements_of(right, SOURCE).notices == ()
    silent = CgatsTable({}, wrong.fields, wrong.rows)  # unknown light: the Lab cannot be compared
    assert measurements_of(silent, SOURCE).notices == ()


@pytest.mark.parametrize(
    ("row", "message"),
    [
        (("1", "5.9M", "0", "0"), '"5.9M" for LAB_L in set 1'),
        (("1", "nan", "0", "0"), '"nan" for LAB_L'),
        (("1", "120", "0", "0"), "set 1 the colour 120.0"),
        (("1", "50", "0", "190"), "nothing has that colour"),
        (("1", "-1", "0", "0"), "set 1 the colour -1.0"),
    ],
)
def test_a_bad_figure_is_refused_with_its_place(row: tuple[str, ...], message: str) -> None:
    with pytest.raises(ExchangeFileError, match=message):
        measurements_of(lab_table(D50, row), SOURCE)


def test_a_reflectance_beyond_the_possible_is_refused_with_its_set() -> None:
    with pytest.raises(ExchangeFileError, match=r"set 1 1\.4 is over 100 % reflectance"):
        measurements_of(spectral_table("nm{}", np.full(36, 1.4)), SOURCE)
    with pytest.raises(ExchangeFileError, match="negative"):
        measurements_of(spectral_table("nm{}", np.full(36, -0.2)), SOURCE)


def test_an_empty_table_is_refused() -> None:
    with pytest.raises(ExchangeFileError, match="holds no row"):
        measurements_of(lab_table(D50), SOURCE)
    with pytest.raises(ExchangeFileError, match="holds no row"):
        measurements_of(CgatsTable({}, spectral_table("nm{}", CURVE).fields, ()), SOURCE)


@pytest.mark.parametrize(
    ("nm", "message"),
    [
        ([400, 410, 430], "steps of 10 and 20 nm"),
        (list(range(400, 701, 50)), "steps of 50 nm"),
        ([400], "one wavelength"),
        (list(range(420, 731, 10)), "from 420 to 730 nm only"),
        (list(range(380, 671, 10)), "from 380 to 670 nm only"),
    ],
)
def test_wavelengths_that_will_not_do_are_refused(nm: list[int], message: str) -> None:
    with pytest.raises(ExchangeFileError, match=message):
        reflectances_at_ten(nm, np.full((1, len(nm)), 0.5), SOURCE)


@pytest.mark.parametrize("step", [1, 2, 5, 10])
def test_finer_steps_are_read_at_the_tens(step: int) -> None:
    nm = np.arange(380, 731, step)
    values, remarks = reflectances_at_ten(nm.tolist(), (nm / 1000.0)[np.newaxis], SOURCE)
    assert values[0] == pytest.approx(NM / 1000)
    assert remarks == []


def test_steps_of_twenty_are_interpolated_and_told() -> None:
    nm = np.arange(380, 741, 20)
    curve = 0.1 + 0.5 * np.exp(-(((nm - 590) / 60.0) ** 2))
    values, remarks = reflectances_at_ten(nm.tolist(), curve[np.newaxis], SOURCE)
    assert values[0] == pytest.approx(CURVE, abs=0.003)
    assert "20 nm" in remarks[0]
    none, _ = reflectances_at_ten(nm.tolist(), np.zeros((0, len(nm))), SOURCE)
    assert none.shape == (0, 36)


def test_missing_ends_keep_the_last_value_and_it_is_told() -> None:
    nm = list(range(400, 701, 10))
    values, remarks = reflectances_at_ten(nm, np.linspace(0.2, 0.8, 31)[np.newaxis], SOURCE)
    assert values[0][:3] == pytest.approx([0.2, 0.2, 0.2])
    assert values[0][-4:] == pytest.approx([0.8] * 4)
    assert "from 400 to 700 nm" in remarks[0]


def test_a_measurement_makes_a_new_sample() -> None:
    measurement = Measurement("A1", "brass", (50, 1, 2), tuple([0.2] * 36))
    made = sample_from(measurement, Kind.MAT)
    assert (made.code, made.name, made.colours[0].lab) == ("A1", "brass", (50, 1, 2))
    assert sample_from(measurement, Kind.MAT, code="Z").code == "Z"


def test_numbered_measurements_are_the_colours_of_one_sample_and_odd_ones_are_told() -> None:
    names = ["A1", "A1:2", "B:7", "A1", "A1:3", "../x", "C:1"]
    found, remarks = samples_from([Measurement(n, n, (50, 1, 2)) for n in names], Kind.MAT)
    assert [sample.code for sample in found] == ["A1", "B:7", "C:1"]
    assert [colour.share for colour in found[0].colours] == pytest.approx([1 / 3] * 3)
    assert remarks[0] == "A1 is left out: the code was measured before."
    assert remarks[1].startswith("../x is left out:")


def test_the_light_of_the_figures_is_named_in_the_refusal() -> None:
    with pytest.raises(ExchangeFileError, match="XYZ figures"):
        known_light(Conditions(), SOURCE, what="XYZ")
