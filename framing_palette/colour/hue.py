"""Chroma, hue angle and hue difference in CIELAB (ISO/CIE 11664-4)."""

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.arrays import FloatArray, as_lab


def chroma(lab_d50: ArrayLike) -> FloatArray:
    """Return chroma, the distance from grey.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Returns
    -------
    Shape (...).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.

    Examples
    --------
    >>> float(chroma([50.0, 3.0, 4.0]))
    5.0
    """
    lab = as_lab(lab_d50)
    return _array(np.hypot(lab[..., 1], lab[..., 2]))


def hue_deg(lab_d50: ArrayLike) -> FloatArray:
    """Return the hue angle in degrees, from 0 up to but not reaching 360; 0 for greys.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Returns
    -------
    Shape (...), anticlockwise from the a* axis.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.

    Examples
    --------
    >>> float(hue_deg([50.0, 0.0, -10.0]))
    270.0
    """
    lab = as_lab(lab_d50)
    angle = np.degrees(np.arctan2(lab[..., 2], lab[..., 1])) % 360.0
    # A hue a hair below 0 comes out of the modulo as 360 itself.
    return _array(np.where(angle >= 360.0, np.zeros_like(angle), angle))


def metric_hue_difference(lab_d50_1: ArrayLike, lab_d50_2: ArrayLike) -> FloatArray:
    """Return the part of a colour difference that is hue, in CIELAB units (ΔH*ab).

    Parameters
    ----------
    lab_d50_1, lab_d50_2
        Shapes (..., 3) that broadcast together.

    Returns
    -------
    Shape (...), positive when the second colour lies anticlockwise of the first.

    Raises
    ------
    ShapeError
        When a last axis is not 3 long.
    """
    lab_1, lab_2 = as_lab(lab_d50_1, name="lab_d50_1"), as_lab(lab_d50_2, name="lab_d50_2")
    a_1, b_1, a_2, b_2 = lab_1[..., 1], lab_1[..., 2], lab_2[..., 1], lab_2[..., 2]
    turn = np.arctan2(a_1 * b_2 - a_2 * b_1, a_1 * a_2 + b_1 * b_2)
    return _array(2.0 * np.sqrt(np.hypot(a_1, b_1) * np.hypot(a_2, b_2)) * np.sin(turn / 2.0))


def _array(values: Any) -> NDArray[np.floating[Any]]:
    return np.asarray(values)
