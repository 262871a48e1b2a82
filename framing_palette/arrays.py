"""Array types, and the one gate per colour space that every array passes."""

from typing import Any, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.errors import ShapeError

Float64Array: TypeAlias = NDArray[np.float64]
Float32Array: TypeAlias = NDArray[np.float32]
FloatArray: TypeAlias = NDArray[np.floating[Any]]
UInt8Array: TypeAlias = NDArray[np.uint8]
BoolArray: TypeAlias = NDArray[np.bool_]

SPECTRUM_LENGTH = 36  # 380 to 730 nm by 10


def as_lab(lab_d50: ArrayLike, *, name: str = "lab_d50") -> FloatArray:
    """Return CIELAB values as a floating array whose last axis is L*, a*, b*.

    Parameters
    ----------
    lab_d50
        Shape (..., 3); L* from 0 to 100. float32 stays float32, all else becomes float64.
    name
        What the message calls the array.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long; the message carries the shape it got.
    """
    return _gate(lab_d50, length=3, name=name)


def as_srgb(srgb: ArrayLike, *, name: str = "srgb") -> FloatArray:
    """Return sRGB values in 0..1, shape (..., 3), as a floating array.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    """
    return _gate(srgb, length=3, name=name)


def as_spectra(reflectance: ArrayLike, *, name: str = "reflectance") -> FloatArray:
    """Return reflectances in 0..1, shape (..., 36), 380 to 730 nm by 10, as a floating array.

    Raises
    ------
    ShapeError
        When the last axis is not 36 long.
    """
    return _gate(reflectance, length=SPECTRUM_LENGTH, name=name)


def _gate(values: ArrayLike, *, length: int, name: str) -> FloatArray:
    array = np.asarray(values)
    if array.dtype not in (np.float32, np.float64):
        array = array.astype(np.float64)
    if array.ndim == 0 or array.shape[-1] != length:
        raise ShapeError(name=name, wanted=f"(..., {length})", got=array.shape)
    return array
