"""What sRGB values mean: the standard's matrix and transfer curve, carried to D50.

References
----------
IEC 61966-2-1:1999: primaries, the four-decimal matrix, transfer curve.
"""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import FloatArray, as_srgb
from framing_palette.colour.adaptation import WHITE_D50_XYZ, WHITE_D65_XYZ, adaptation_matrix

_LINEAR_SRGB_TO_XYZ_D65 = np.array(
    [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]],
)
LINEAR_SRGB_TO_XYZ_D50 = adaptation_matrix(WHITE_D65_XYZ, WHITE_D50_XYZ) @ _LINEAR_SRGB_TO_XYZ_D65
XYZ_D50_TO_LINEAR_SRGB = np.linalg.inv(LINEAR_SRGB_TO_XYZ_D50)


def srgb_to_linear(srgb: ArrayLike) -> FloatArray:
    """Return light in proportion to energy from sRGB values; values below 0 mirror.

    Parameters
    ----------
    srgb
        Shape (..., 3), 0..1.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    encoded = as_srgb(srgb)
    size = np.abs(encoded)
    linear = np.where(size <= 0.04045, size / 12.92, ((size + 0.055) / 1.055) ** 2.4)
    return np.copysign(linear, encoded)


def linear_to_srgb(linear_srgb: ArrayLike) -> FloatArray:
    """Return sRGB values from light in proportion to energy; values below 0 mirror.

    Parameters
    ----------
    linear_srgb
        Shape (..., 3), 0..1 inside the gamut.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    linear = as_srgb(linear_srgb, name="linear_srgb")
    size = np.abs(linear)
    encoded = np.where(size <= 0.0031308, size * 12.92, 1.055 * size ** (1.0 / 2.4) - 0.055)
    return np.copysign(encoded, linear)
