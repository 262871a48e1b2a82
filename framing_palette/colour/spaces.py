"""From screen values to CIELAB D50 and back.

Inside the program a colour is CIELAB, D50, 2 degree observer. Screen values are sRGB, whose white
is D65; the two whites are connected by the Bradford adaptation, as in colour-managed files.

References
----------
IEC 61966-2-1:1999 (sRGB: primaries, the four-decimal matrix, transfer curve).
ISO/CIE 11664-4:2019 (CIELAB).
"""

from collections.abc import Iterator
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float32Array, FloatArray, UInt8Array, as_lab, as_srgb
from framing_palette.colour.adaptation import WHITE_D50_XYZ, WHITE_D65_XYZ, adaptation_matrix
from framing_palette.colour.slabs import SLAB_ELEMENTS, Slab, work_through
from framing_palette.errors import FieldError, ShapeError

_LINEAR_SRGB_TO_XYZ_D65 = np.array(
    [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]],
)
LINEAR_SRGB_TO_XYZ_D50 = adaptation_matrix(WHITE_D65_XYZ, WHITE_D50_XYZ) @ _LINEAR_SRGB_TO_XYZ_D65
XYZ_D50_TO_LINEAR_SRGB = np.linalg.inv(LINEAR_SRGB_TO_XYZ_D50)

_DELTA = 6.0 / 29.0  # where CIELAB's cube root hands over to a straight line
_DELTA_CUBED = np.float32(_DELTA**3)
_LINE_SLOPE = np.float32(1.0 / (3.0 * _DELTA**2))
_LINE_START = np.float32(4.0 / 29.0)
_RATIO_OF_LINEAR = (LINEAR_SRGB_TO_XYZ_D50 / WHITE_D50_XYZ[:, None]).astype(np.float32)


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
    ratio = xyz / WHITE_D50_XYZ.astype(xyz.dtype)
    line = ratio / (3.0 * _DELTA**2) + 4.0 / 29.0
    f = np.where(ratio > _DELTA**3, np.cbrt(ratio), line)
    lab = np.empty_like(f)
    lab[..., 0] = 116.0 * f[..., 1] - 16.0
    lab[..., 1] = 500.0 * (f[..., 0] - f[..., 1])
    lab[..., 2] = 200.0 * (f[..., 1] - f[..., 2])
    return lab


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
    lab = as_lab(lab_d50)
    f = np.empty_like(lab)
    f[..., 1] = (lab[..., 0] + 16.0) / 116.0
    f[..., 0] = f[..., 1] + lab[..., 1] / 500.0
    f[..., 2] = f[..., 1] - lab[..., 2] / 200.0
    ratio = np.where(f > _DELTA, f * f * f, (f - 4.0 / 29.0) * (3.0 * _DELTA**2))
    return ratio * WHITE_D50_XYZ.astype(lab.dtype)


def linear_srgb_to_lab_d50(linear_srgb: ArrayLike) -> FloatArray:
    """Return CIELAB from linear sRGB light, shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    linear = as_srgb(linear_srgb, name="linear_srgb")
    return xyz_d50_to_lab_d50(linear @ LINEAR_SRGB_TO_XYZ_D50.T.astype(linear.dtype))


def lab_d50_to_linear_srgb(lab_d50: ArrayLike) -> FloatArray:
    """Return linear sRGB light, not clipped: outside 0..1 a screen cannot show the colour.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    xyz = lab_d50_to_xyz_d50(lab_d50)
    return xyz @ XYZ_D50_TO_LINEAR_SRGB.T.astype(xyz.dtype)


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


def lab_d50_to_srgb_u8(lab_d50: ArrayLike) -> UInt8Array:
    """Return 8-bit sRGB values, clipped to what a screen shows, nan as black.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    srgb = np.nan_to_num(lab_d50_to_srgb(lab_d50), nan=0.0)
    levels: UInt8Array = np.rint(srgb * 255.0).astype(np.uint8)
    return levels


def srgb_u8_to_lab_d50(srgb_u8: ArrayLike) -> Float32Array:
    """Return CIELAB of 8-bit sRGB pixels, fast; within 0.001 of the float64 route in CIEDE2000.

    Parameters
    ----------
    srgb_u8
        Shape (..., 3), uint8.

    Returns
    -------
    Shape (..., 3), float32.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    FieldError
        When the pixels are not 8-bit.
    """
    pixels = np.asarray(srgb_u8)
    if pixels.ndim == 0 or pixels.shape[-1] != 3:
        raise ShapeError(name="srgb_u8", wanted="(..., 3)", got=pixels.shape)
    if pixels.dtype != np.uint8:
        raise FieldError("srgb_u8", got=f"of type {pixels.dtype}", wanted="give 8-bit pixels")
    lab = np.empty(pixels.shape, dtype=np.float32)
    flat_pixels, flat_lab = pixels.reshape(-1, 3), lab.reshape(-1, 3)

    def worker(slabs: Iterator[Slab]) -> None:
        room = np.empty((2, 3 * SLAB_ELEMENTS), dtype=np.float32)
        for slab in slabs:
            size = len(flat_lab[slab])
            linear, f = room[:, : 3 * size].reshape(2, 3, size)
            _fill_lab(flat_lab[slab], flat_pixels[slab], linear, f)

    work_through(flat_lab.shape[:1], worker)
    return lab


def _fill_lab(lab: Float32Array, pixels: UInt8Array, linear: Float32Array, f: Float32Array) -> None:
    """Convert one slab of pixels, shape (n, 3), with two buffers of shape (3, n)."""
    for channel in range(3):
        np.take(_linear_of_u8(), pixels[:, channel], out=linear[channel], mode="clip")
    ratio = np.matmul(_RATIO_OF_LINEAR, linear, out=f)
    flat = ratio.reshape(-1)
    dark = np.flatnonzero(flat <= _DELTA_CUBED)  # few pixels lie on the straight line near black
    line = flat[dark] * _LINE_SLOPE + _LINE_START
    np.cbrt(flat, out=flat)
    flat[dark] = line
    f_x, f_y, f_z = f
    np.multiply(np.subtract(f_x, f_y, out=f_x), 500.0, out=lab[:, 1])
    np.multiply(np.subtract(f_y, f_z, out=f_z), 200.0, out=lab[:, 2])
    np.subtract(np.multiply(f_y, 116.0, out=f_y), 16.0, out=lab[:, 0])


@cache
def _linear_of_u8() -> Float32Array:
    levels = np.arange(256) / 255.0
    curve = srgb_to_linear(np.stack([levels] * 3, axis=-1))[:, 0].astype(np.float32)
    curve.setflags(write=False)
    return curve
