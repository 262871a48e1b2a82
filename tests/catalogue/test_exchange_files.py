"""Measurement files of every kind, in and out."""

import builtins
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import colour_cxf
import numpy as np
import pytest

from framing_palette.catalogue import (
    Catalogue,
    Kind,
    Sample,
    SampleColour,
    merged_samples,
    read_catalogue_folder,
)
from framing_palette.catalogue.conditions import Conditions
from framing_palette.catalogue.exchange_files import (
    export_catalogue,
    measurements_from,
    read_measurement_file,
    samples_from_file,
    write_cgats_file,
    write_cxf_file,
    write_palette_file,
)
from framing_palette.catalogue.measurements import Measurement
from framing_palette.catalogue.palette_text import palette_text
from framing_palette.colour import delta_e_2000, spectrum_to_lab_d50
from framing_palette.errors import ExchangeFileError, OutputError

NOON = datetime(2026, 1, 2, 12, tzinfo=UTC)
CURVE = tuple(np.linspace(0.1, 0.7, 36).tolist())
LAB = tuple(spectrum_to_lab_d50(CURVE).tolist())
MEASURED = Measurement("M-1", "warm stone", LAB, CURVE)
BARE = Measurement("M-2", "=black", (16.5, 0.25, -1.0))
PUBLIC_CXF = Path(colour_cxf.__file__).parent / "tests" / "resources" / "sample.cxf"


def close(first: Measurement, second: Measurement) -> bool:
    return (
        first.identity == second.identity
        and first.name == second.name
        and np.allclose(first.lab, second.lab, atol=1e-9)
        and (first.spectrum is None) == (second.spectrum is None)
        and np.allclose(first.spectrum or 0, second.spectrum or 0)
    )


def test_cgats_written_and_read_gives_the_same_measurements(tmp_path: Path) -> None:
    path = tmp_path / "out.txt"
    write_cgats_file(path, [MEASURED, BARE])
    with_spectrum, without = read_measurement_file(path)
    assert close(with_spectrum.measurements[0], MEASURED)
    assert close(without.measurements[0], BARE)
    assert with_spectrum.notices == without.notices == ()


def test_cxf_written_and_read_gives_the_same_measurements(tmp_path: Path) -> None:
    path = tmp_path / "out.cxf"
    write_cxf_file(path, [MEASURED, BARE], created=NOON)
    (found,) = read_measurement_file(path)
    assert all(map(close, found.measurements, [MEASURED, BARE]))


def test_the_public_cxf_document_agrees_with_its_own_lab() -> None:
    """144 patches that ship with colour-cxf: the Lab stored beside each reflectance is a second
    program's; it holds 380 to 680 nm only, and its ends were filled by another rule than ours.
    """
    (found,) = read_measurement_file(PUBLIC_CXF)
    assert len(found.measurements) == 144
    document = colour_cxf.read_cxf_from_file(PUBLIC_CXF)
    stored = [
        (value.l, value.a, value.b)
        for item in document.resources.object_collection.object_value
        for value in item.color_values.choice
        if type(value).__name__ == "ColorCielab"
    ]
    apart = delta_e_2000([one.lab for one in found.measurements], stored)
    assert apart.max() < 0.16
    assert apart.mean() < 0.06
    assert found.notices == (
        "The reflectances reach from 380 to 680 nm; beyond, the last value is kept.",
    )


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "latin-1"])
def test_any_usual_encoding_is_read(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "x.txt"
    text = (
        "CGATS.17\nILLUMINANT D50\nOBSERVER 2\nBEGIN_DATA_FORMAT\nNAME LAB_L LAB_A LAB_B\n"
        'END_DATA_FORMAT\nBEGIN_DATA\n"crème" 90 0 8\nEND_DATA\n'
    )
    path.write_bytes(text.encode(encoding))
    assert read_measurement_file(path)[0].measurements[0].name == "crème"


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "is empty"),
        (b"\x89PNG\r\n\x1a\n\0\0\0", "is not text"),
        ("x".encode("utf-16")[:3], "is text cut short"),
        (b"<html><body/></html>", "not a readable CxF3 document"),
        (b"<CxF", "not a readable CxF3 document"),
        (
            b'<!DOCTYPE x [<!ENTITY a "b">]><CxF xmlns="http://colorexchangeformat.com/CxF3-core">&a;</CxF>',
            "defines its own entities",
        ),
        (b'<CxF xmlns="http://colorexchangeformat.com/CxF3-core"/>', "holds no objects"),
    ],
)
def test_what_is_no_measurement_file_is_one_sentence(
    tmp_path: Path, content: bytes, message: str
) -> None:
    path = tmp_path / "x"
    path.write_bytes(content)
    with pytest.raises(ExchangeFileError, match=message):
        read_measurement_file(path)


def test_a_missing_or_huge_file_is_one_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(ExchangeFileError, match="cannot be read"):
        read_measurement_file(tmp_path / "none.txt")
    monkeypatch.setattr("framing_palette.catalogue.exchange_files.LARGEST_FILE_BYTES", 10)
    (tmp_path / "big").write_text("x" * 11)
    with pytest.raises(ExchangeFileError, match="is larger than"):
        read_measurement_file(tmp_path / "big")


def cxf_text(values: str, specification: str = "", wavelengths: str = "") -> bytes:
    return f"""<CxF xmlns="http://colorexchangeformat.com/CxF3-core"><Resources>
    <ObjectCollection><Object ObjectType="Standard" Name="one" Id="1">
    <ColorValues>{values}</ColorValues></Object></ObjectCollection>
    <ColorSpecificationCollection><ColorSpecification Id="S">{specification}
    <MeasurementSpec>{wavelengths}</MeasurementSpec>
    </ColorSpecification></ColorSpecificationCollection></Resources></CxF>""".encode()


def light(name: str, observer: str = "2_Degree") -> str:
    return (
        f"<TristimulusSpec><Illuminant>{name}</Illuminant><Observer>{observer}</Observer>"
        "</TristimulusSpec>"
    )


LAB_VALUES = '<ColorCIELab ColorSpecification="S"><L>50</L><A>10</A><B>-5</B></ColorCIELab>'
XYZ_VALUES = '<ColorCIEXYZ ColorSpecification="S"><X>48.2</X><Y>50</Y><Z>41.3</Z></ColorCIEXYZ>'
FLAT = " ".join(["0.2"] * 36)
SPECTRUM = f'<ReflectanceSpectrum StartWL="380" ColorSpecification="S">{FLAT}</ReflectanceSpectrum>'


def read_cxf(tmp_path: Path, content: bytes) -> Measurement:
    path = tmp_path / "x.cxf"
    path.write_bytes(content)
    return read_measurement_file(path)[0].measurements[0]


def test_cxf_lab_and_xyz_are_brought_to_d50(tmp_path: Path) -> None:
    assert read_cxf(tmp_path, cxf_text(LAB_VALUES, light("D50"))).lab == (50, 10, -5)
    assert read_cxf(tmp_path, cxf_text(LAB_VALUES, light("D65"))).lab != (50, 10, -5)
    grey = read_cxf(tmp_path, cxf_text(XYZ_VALUES, light("D50"))).lab
    assert grey == pytest.approx((76.07, 0, 0), abs=0.1)


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (cxf_text(LAB_VALUES), "does not tell their illuminant"),
        (cxf_text(LAB_VALUES, light("D50", "10_Degree")), "10 degree observer"),
        (cxf_text(LAB_VALUES, light("TL84")), "illuminant TL84"),
        (cxf_text("<ColorSRGB><R>1</R><G>2</G><B>3</B></ColorSRGB>"), "holds no Lab, XYZ or"),
        (cxf_text(SPECTRUM.replace('StartWL="380" ', "")), "tells no start of its wavelengths"),
        (cxf_text(SPECTRUM.replace("0.2", "1.5")), "over 100 %"),
    ],
)
def test_cxf_that_cannot_be_trusted_is_refused(
    tmp_path: Path, content: bytes, message: str
) -> None:
    with pytest.raises(ExchangeFileError, match=message):
        read_cxf(tmp_path, content)


def test_what_a_maker_adds_to_a_document_does_not_matter(tmp_path: Path) -> None:
    extra = SPECTRUM + '<Sheen xmlns="urn:a-maker">7</Sheen>'
    assert read_cxf(tmp_path, cxf_text(extra)).spectrum == (0.2,) * 36


def test_cxf_reflectances_need_no_light_and_may_state_their_wavelengths_beside(
    tmp_path: Path,
) -> None:
    assert read_cxf(tmp_path, cxf_text(SPECTRUM + LAB_VALUES)).spectrum == (0.2,) * 36
    band = '<WavelengthRange StartWL="380" Increment="10"/>'
    bare = SPECTRUM.replace('StartWL="380" ', "")
    assert read_cxf(tmp_path, cxf_text(bare, wavelengths=band)).spectrum == (0.2,) * 36


def test_without_the_optional_library_the_sentence_says_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = builtins.__import__

    def refuse(name: str, *rest: Any, **named: Any) -> Any:
        if name.startswith("colour_cxf"):
            raise ImportError(name)
        return real(name, *rest, **named)

    monkeypatch.setattr(builtins, "__import__", refuse)
    with pytest.raises(ExchangeFileError, match=r"install framing-palette\[cxf\]"):
        read_cxf(tmp_path, cxf_text(LAB_VALUES, light("D50")))


def test_a_stated_light_reaches_the_figures(tmp_path: Path) -> None:
    path = tmp_path / "x.txt"
    path.write_text(
        "BEGIN_DATA_FORMAT\nNAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\na 9 0 0\nEND_DATA\n"
    )
    (found,) = read_measurement_file(path, assumed=Conditions("D50", 2))
    assert found.measurements[0].lab == (9, 0, 0)


def test_every_colour_of_a_catalogue_is_exported_under_its_own_name(tmp_path: Path) -> None:
    sample = Sample(
        "G1",
        "gilded",
        Kind.MOULDING,
        (SampleColour((70, 5, 40), 0.8), SampleColour((40, 25, 20), 0.2)),
    )
    catalogue = Catalogue((sample,))
    assert [one.identity for one in measurements_from(catalogue)] == ["G1", "G1:2"]
    write_palette_file(tmp_path / "x.gpl", catalogue)
    lines = (tmp_path / "x.gpl").read_text().splitlines()
    assert lines[:3] == ["GIMP Palette", "Name: Framing samples", "Columns: 8"]
    assert [line.split("\t")[1] for line in lines[4:]] == ["G1 gilded", "G1 gilded"]


def test_palette_text_holds_the_srgb_of_the_colour_and_one_line_each() -> None:
    text = palette_text("a\nb", [("white\tpaper", (100.0, 0.0, 0.0)), ("black", (0.0, 0.0, 0.0))])
    assert text.splitlines()[1] == "Name: a b"
    assert text.splitlines()[4:] == ["255 255 255\twhite paper", "  0   0   0\tblack"]
    assert palette_text("none", []).endswith("#\n")


def test_an_export_that_cannot_be_written_is_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="cannot be written"):
        write_cgats_file(tmp_path / "no" / "x.txt", [BARE])


@pytest.mark.parametrize("suffix", [".txt", ".cxf", ".gpl"])
def test_the_ending_of_an_export_names_its_form(tmp_path: Path, suffix: str) -> None:
    catalogue = Catalogue((Sample("A", "a", Kind.MAT, (SampleColour((50, 0, 0), 1.0),)),))
    path = tmp_path / f"out{suffix}"
    export_catalogue(path, catalogue, created=NOON)
    start = {".txt": b"CGATS.17", ".cxf": b"<?xml", ".gpl": b"GIMP Palette"}[suffix]
    assert path.read_bytes().startswith(start)
    with pytest.raises(OutputError, match="ends in no form"):
        export_catalogue(tmp_path / "x.zip", catalogue, created=NOON)


@pytest.mark.parametrize("suffix", [".txt", ".cxf"])
def test_an_exported_catalogue_merges_back_without_a_new_sample_or_another_colour(
    tmp_path: Path, suffix: str
) -> None:
    rack, _ = read_catalogue_folder(Path(__file__).parents[2] / "catalog")
    few = Catalogue(rack.samples[::30])
    export_catalogue(tmp_path / f"x{suffix}", few, created=NOON)
    found, notices = samples_from_file(tmp_path / f"x{suffix}", Kind.MAT)
    assert notices == ()
    merged, changes = merged_samples(few.samples, found)
    assert [sample.code for sample in merged] == [sample.code for sample in few.samples]
    assert {change.fact for change in changes} <= {"colours"}
    for old, new in zip(few.samples, merged, strict=True):
        assert [c.share for c in new.colours] == [c.share for c in old.colours]
        apart = delta_e_2000([c.lab for c in new.colours], [c.lab for c in old.colours])
        assert apart.max() < 0.05


def test_a_spreadsheet_is_read_by_the_names_of_its_columns(tmp_path: Path) -> None:
    path = tmp_path / "x.csv"
    path.write_text("SKU,Colour,Thickness mm,L*,a*,b*\nA1,stone,1.4,60,2,5\nA2,,x,1,1,1\n")
    (sample, other), notices = samples_from_file(path, Kind.MAT, assumed=Conditions("D50", 2))
    assert (other.code, other.thickness, other.colours[0].lab) == ("A2", None, (1, 1, 1))
    assert (sample.code, sample.name, sample.kind) == ("A1", "stone", Kind.MAT)
    assert "not a length" in notices[0]


def test_merging_keeps_what_the_newcomer_does_not_know() -> None:
    old = Sample("A", "Chalk", Kind.LINER, (SampleColour((90, 0, 3), 1.0),), material="linen")
    new = Sample("A", "A", Kind.MAT, (SampleColour((91, 0, 3), 1.0),), tags=("x",))
    other = Sample("B", "B", Kind.MAT, ())
    merged, changes = merged_samples([old], [new, other])
    assert merged == (
        Sample("A", "Chalk", Kind.LINER, new.colours, material="linen", tags=("x",)),
        other,
    )
    assert [change.fact for change in changes] == ["colours", "tags"]
    two = replace(new, colours=(SampleColour((1, 0, 0), 0.5), SampleColour((2, 0, 0), 0.5)))
    assert merged_samples([old], [two])[0][0].colours == two.colours


def test_no_exported_cell_starts_a_spreadsheet_formula_and_it_comes_back_as_it_was(
    tmp_path: Path,
) -> None:
    path = tmp_path / "out.txt"
    names = ["=1+1", "+cmd|' /C calc'!A0", "@SUM(A1)", "-2", "'=quoted", "plain 'name'"]
    written = [replace(BARE, identity=f"={i}", name=name) for i, name in enumerate(names)]
    write_cgats_file(path, written)
    rows = path.read_text(encoding="utf-8").split("BEGIN_DATA\n")[1].splitlines()
    cells = [cell.strip('"') for row in rows for cell in row.split("\t")[:2]]
    assert not [cell for cell in cells if cell[:1] in "=+@-" and cell]
    (read,) = read_measurement_file(path)
    assert [one.name for one in read.measurements] == names
    assert [one.identity for one in read.measurements] == [one.identity for one in written]
