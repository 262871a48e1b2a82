"""What single colours feel like: warm or cool, heavy or light, active or quiet.

References
----------
Ou, Luo, Woodcock, Wright 2004, A study of colour emotion and colour preference. Part I, Color
Research and Application 29(3):232-240. Three factors of the ratings of 20 colours by 31 British
and Chinese observers; the paper works in CIELAB under D65, and hue differs a little under D50.
"""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import FloatArray, as_lab
from framing_palette.colour.hue import chroma, hue_deg


def heat(lab_d50: ArrayLike) -> FloatArray:
    """Return how warm colours feel; positive is warm, negative cool.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.

    Examples
    --------
    >>> bool(heat([50.0, 50.0, 40.0]) > 0 > heat([50.0, -10.0, -40.0]))
    True
    """
    C, h = chroma(lab_d50), hue_deg(lab_d50)
    return np.asarray(-0.5 + 0.02 * C**1.07 * np.cos(np.radians(h - 50.0)))


def weight(lab_d50: ArrayLike) -> FloatArray:
    """Return how heavy colours feel; positive is heavy, negative light.

    A grey has no hue; its hue term is that of angle 0, as the formula gives.

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
    hue_term = 0.45 * np.cos(np.radians(hue_deg(lab) - 100.0))
    return np.asarray(-1.8 + 0.04 * (100.0 - lab[..., 0]) + hue_term)


def activity(lab_d50: ArrayLike) -> FloatArray:
    """Return how active colours feel; positive is active, negative quiet.

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
    L, a, b = lab[..., 0], lab[..., 1], lab[..., 2]
    distance = np.sqrt((L - 50.0) ** 2 + (a - 3.0) ** 2 + ((b - 17.0) / 1.4) ** 2)
    return np.asarray(-2.1 + 0.06 * distance)
