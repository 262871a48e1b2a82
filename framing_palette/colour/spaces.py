"""From screen values to CIELAB D50 and back.

Inside the program a colour is CIELAB, D50, 2 degree observer. Screen values are sRGB, whose white
is D65; the two whites are connected by the Bradford adaptation, as in colour-managed files.
`pixels` does the same for 8-bit pictures, faster.

References
----------
IEC 61966-2-1:1999 (sRGB). ISO/CIE 11664-4:2019 (CIELAB).
"""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import FloatArray, as_lab, as_srgb
from framing_palette.colour.adaptation import WHITE_D50_XYZ
from framing_palette.colour.cielab import (
    compress,
    converted,
    expand,
    fill_f_of_lab,
    fill_lab_of_f,
    fill_lab_of_linear,
    fill_linear_of_lab,
)
from framing_palette.colour.pixels import lab_d50_to_srgb_u8, srgb_u8_to_lab_d50
from framing_palette.colour.srgb import linear_to_srgb, srgb_to_linear

__all__ = [
    "lab_d50_to_linear_srgb",
    "lab_d50_to_srgb",
    "lab_d50_to_srgb_u8",
    "lab_d50_to_xyz_d50",
    "linear_srgb_to_lab_d50",
    "linear_to_srgb",
    "srgb_gamut_excess",
    "srgb_to_lab_d50",
    "srgb_to_linear",
    "srgb_u8_to_lab_d50",
    "xyz_d50_to_lab_d50",
]


def xyz_d50_to_lab_d50(xyz_d50: ArrayLike) -> FloatArray:
    """Return CIELAB from tristimulus values relative to D50.

    Parameters
    ----------
    xyz_d50
        Shape (..., 3), white has Y = 1.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.

    Examples
    --------
    >>> xyz_d50_to_lab_d50([0.0, 0.0, 0.0]).tolist()
    [0.0, 0.0, 0.0]
    """
    xyz = as_srgb(xyz_d50, name="xyz_d50")
    return converted(xyz, _fill_lab_of_xyz)


def lab_d50_to_xyz_d50(lab_d50: ArrayLike) -> FloatArray:
    """Return tristimulus values relative to D50, white with Y = 1, from CIELAB.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    return converted(as_lab(lab_d50), _fill_xyz_of_lab)


def linear_srgb_to_lab_d50(linear_srgb: ArrayLike) -> FloatArray:
    """Return CIELAB from linear sRGB light, shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    linear = as_srgb(linear_srgb, name="linear_srgb")
    return converted(linear, _fill_lab_of_linear)


def lab_d50_to_linear_srgb(lab_d50: ArrayLike) -> FloatArray:
    """Return linear sRGB light, not clipped: outside 0..1 a screen cannot show the colour.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    return converted(as_lab(lab_d50), _fill_linear_of_lab)


def srgb_to_lab_d50(srgb: ArrayLike) -> FloatArray:
    """Return CIELAB from sRGB values in 0..1, shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.

    Examples
    --------
    >>> srgb_to_lab_d50([0.0, 0.0, 1.0]).round(2).tolist()
    [29.57, 68.29, -112.02]
    """
    return linear_srgb_to_lab_d50(srgb_to_linear(srgb))


def lab_d50_to_srgb(lab_d50: ArrayLike, *, clip: bool = True) -> FloatArray:
    """Return sRGB values; colours that a screen cannot show are clipped channel by channel.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).
    clip
        False keeps values outside 0..1 as they are.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    srgb = linear_to_srgb(lab_d50_to_linear_srgb(lab_d50))
    return np.clip(srgb, 0.0, 1.0) if clip else srgb


def srgb_gamut_excess(lab_d50: ArrayLike) -> FloatArray:
    """Return how far a colour lies outside what an sRGB screen shows, 0 when it can be shown.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Returns
    -------
    Shape (...), the largest overshoot of a channel beyond 0..1, in encoded sRGB units.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    srgb = lab_d50_to_srgb(lab_d50, clip=False)
    excess: FloatArray = np.maximum(np.maximum(srgb - 1.0, -srgb), 0.0).max(axis=-1)
    return excess


def _fill_lab_of_xyz(lab: FloatArray, xyz: FloatArray, planes: FloatArray, f: FloatArray) -> None:
    planes[...] = xyz.T
    np.divide(planes, WHITE_D50_XYZ[:, None], out=f, casting="same_kind")
    compress(f)
    fill_lab_of_f(lab, f)


def _fill_xyz_of_lab(xyz: FloatArray, lab: FloatArray, f: FloatArray, room: FloatArray) -> None:
    fill_f_of_lab(f, lab)
    expand(f, room)
    np.multiply(f.T, WHITE_D50_XYZ, out=xyz, casting="same_kind")


def _fill_lab_of_linear(
    lab: FloatArray, linear: FloatArray, planes: FloatArray, f: FloatArray
) -> None:
    planes[...] = linear.T
    fill_lab_of_linear(lab, planes, f)


def _fill_linear_of_lab(
    linear: FloatArray, lab: FloatArray, planes: FloatArray, f: FloatArray
) -> None:
    fill_linear_of_lab(planes, lab, f)
    linear[...] = planes.T
