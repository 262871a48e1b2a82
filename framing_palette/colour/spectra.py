"""From a reflectance spectrum to a colour, under whichever light it is seen.

The weights of the 36 measured bands are made from the light and the eye at 5 nm, the reflectance
being interpolated between its bands by cubics; summing at 10 nm alone would miss the narrow
peaks of lamps. Beyond 730 nm a reflectance is taken to stay as it is there.

References
----------
CIE 015:2018 Colorimetry, section 7 (tristimulus values, interpolation, missing ends).
ASTM E2022-16 (weights by Lagrange cubics, parabolas in the end intervals).
"""

from functools import cache
from typing import Final

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, FloatArray, as_spectra
from framing_palette.colour.adaptation import WHITE_D50_XYZ, adapt
from framing_palette.colour.spaces import xyz_d50_to_lab_d50
from framing_palette.colour.table_files import table
from framing_palette.errors import FieldError

WAVELENGTHS_NM: Final[Float64Array] = np.arange(380.0, 731.0, 10.0)
WAVELENGTHS_NM.setflags(write=False)

ILLUMINANTS: Final = (
    "D50",
    "D65",
    "A",
    "LED-B1",
    "LED-B2",
    "LED-B3",
    "LED-B4",
    "LED-B5",
    "F11",
)


def spectrum_to_xyz(reflectance: ArrayLike, illuminant: str = "D50") -> Float64Array:
    """Return tristimulus values under a light, relative to that light's own white (Y = 1).

    Parameters
    ----------
    reflectance
        Shape (..., 36), 0..1, 380 to 730 nm by 10.
    illuminant
        One of ILLUMINANTS.

    Returns
    -------
    Shape (..., 3); 2 degree observer.

    Raises
    ------
    ShapeError
        When the last axis is not 36 long.
    FieldError
        When the light is not in the table.
    """
    spectra = as_spectra(reflectance).astype(np.float64, copy=False)
    return np.asarray(spectra @ _weights(illuminant))


def white_under(illuminant: str) -> Float64Array:
    """Return the tristimulus values of a perfect white under a light, Y = 1, shape (3,).

    Raises
    ------
    FieldError
        When the light is not in the table.
    """
    return np.asarray(_weights(illuminant).sum(axis=0))


def spectrum_to_lab_d50(reflectance: ArrayLike, illuminant: str = "D50") -> FloatArray:
    """Return the colour under a light, once the eye has settled to it, as CIELAB D50.

    Parameters
    ----------
    reflectance
        Shape (..., 36), 0..1, 380 to 730 nm by 10.
    illuminant
        One of ILLUMINANTS; the light's white is carried to D50 by the Bradford adaptation.

    Returns
    -------
    Shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 36 long.
    FieldError
        When the light is not in the table.

    Examples
    --------
    >>> spectrum_to_lab_d50([1.0] * 36, "A").round(6).tolist()[0]
    100.0
    """
    xyz = spectrum_to_xyz(reflectance, illuminant)
    return xyz_d50_to_lab_d50(adapt(xyz, white_under(illuminant), WHITE_D50_XYZ))


@cache
def _weights(illuminant: str) -> Float64Array:
    """Return the (36, 3) weights of the bands; a perfect white comes out with Y = 1."""
    if illuminant not in ILLUMINANTS:
        raise FieldError("light", got=illuminant, wanted=f"choose one of {', '.join(ILLUMINANTS)}")
    columns = table("lights.csv")
    eye = np.array([columns[name] for name in ("x_bar", "y_bar", "z_bar")], dtype=np.float64)
    power = np.array(columns[illuminant], dtype=np.float64)
    weights = _interpolation(np.array(columns["nm"], dtype=np.float64)).T @ (eye * power).T
    weights /= (eye[1] * power).sum()
    weights.setflags(write=False)
    return weights


def _interpolation(wanted_nm: Float64Array) -> Float64Array:
    """Return the matrix that interpolates 36 bands to other wavelengths, shape (m, 36)."""
    matrix = np.zeros((wanted_nm.size, WAVELENGTHS_NM.size))
    for row, nm in zip(matrix, np.minimum(wanted_nm, WAVELENGTHS_NM[-1]), strict=True):
        interval = min(int((nm - WAVELENGTHS_NM[0]) // 10.0), WAVELENGTHS_NM.size - 2)
        nodes = np.arange(max(0, interval - 1), min(WAVELENGTHS_NM.size, interval + 3))
        for node in nodes:
            others = WAVELENGTHS_NM[nodes[nodes != node]]
            row[node] = np.prod((nm - others) / (WAVELENGTHS_NM[node] - others))
    return matrix
