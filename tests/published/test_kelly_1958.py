"""Kelly 1958, Central notations for the revised ISCC-NBS color-name blocks, Journal of Research of
the National Bureau of Standards 61(5):427-431: Munsell notations of 267 block centres.

The shipped CIELAB values are recomputed here by an independent library's Munsell renotation
(illuminant C), adapted to D50."""

import warnings

import numpy as np
import pytest

from framing_palette.colour import WHITE_D50_XYZ, adapt, xyz_d50_to_lab_d50
from framing_palette.colour.table_files import table


@pytest.fixture(scope="module")
def science():
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # its import tells that plotting is not installed
        import colour
    return colour


def test_the_table_holds_every_numbered_block_once():
    columns = table("colour_names.csv")
    assert [int(number) for number in columns["number"]] == list(range(1, 268))
    assert len(set(columns["name"])) == 267


@pytest.mark.parametrize("row", range(0, 267, 5))
def test_a_shipped_centre_is_its_munsell_notation_in_cielab(row, science):
    columns = table("colour_names.csv")
    notation = columns["munsell"][row]
    shipped = [float(columns[axis][row]) for axis in "Lab"]
    white_c = science.xy_to_XYZ(science.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["C"])
    xyz = science.xyY_to_XYZ(science.munsell_colour_to_xyY(notation))
    lab = xyz_d50_to_lab_d50(adapt(xyz, white_c, WHITE_D50_XYZ))
    assert np.abs(lab - shipped).max() <= 0.005 + 1e-9
