"""White points, and what a colour becomes when the eye settles to another white.

References
----------
Lam 1985, Metamerism and Colour Constancy (Bradford); ICC.1:2022 annex E (its linear form).
Li, Li, Wang et al. 2017, Color Research and Application 42(6):703-718 (CAT16).
CIE 015:2018 table of white points: chromaticities of D50 and D65.
"""

from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array
from framing_palette.errors import ShapeError

Transform = Literal["bradford", "cat16"]

_CONES: dict[Transform, Float64Array] = {
    "bradford": np.array(
        [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]],
    ),
    "cat16": np.array(
        [
            [0.401288, 0.650173, -0.051461],
            [-0.250268, 1.204414, 0.045854],
            [-0.002079, 0.048952, 0.953127],
        ],
    ),
}


def white_xyz(x: float, y: float) -> Float64Array:
    """Return the tristimulus values, Y = 1, of a white given by its chromaticity."""
    return np.array([x / y, 1.0, (1.0 - x - y) / y])


WHITE_D50_XYZ = white_xyz(0.3457, 0.3585)
WHITE_D65_XYZ = white_xyz(0.3127, 0.3290)


def adaptation_matrix(
    from_white_xyz: ArrayLike,
    to_white_xyz: ArrayLike,
    *,
    transform: Transform = "bradford",
) -> Float64Array:
    """Return the 3 x 3 matrix that carries colours seen under one white to another.

    Parameters
    ----------
    from_white_xyz, to_white_xyz
        Shape (3,), Y = 1.
    transform
        "bradford", the connection used throughout, or "cat16".
    """
    cones = _CONES[transform]
    gains = (cones @ _white(to_white_xyz)) / (cones @ _white(from_white_xyz))
    matrix: Float64Array = np.linalg.inv(cones) @ (gains[:, None] * cones)
    return matrix


def adapt(
    xyz: ArrayLike,
    from_white_xyz: ArrayLike,
    to_white_xyz: ArrayLike,
    *,
    transform: Transform = "bradford",
) -> Float64Array:
    """Return colours as they look once the eye has settled from one white to another.

    Parameters
    ----------
    xyz
        Shape (..., 3), white has Y = 1.
    from_white_xyz, to_white_xyz
        Shape (3,).
    transform
        "bradford" or "cat16".

    Raises
    ------
    ShapeError
        When an array's last axis is not 3 long.

    Examples
    --------
    >>> adapt(WHITE_D65_XYZ, WHITE_D65_XYZ, WHITE_D50_XYZ).round(4).tolist()
    [0.9643, 1.0, 0.8251]
    """
    colours = np.asarray(xyz, dtype=np.float64)
    if colours.ndim == 0 or colours.shape[-1] != 3:
        raise ShapeError(name="xyz", wanted="(..., 3)", got=colours.shape)
    matrix = adaptation_matrix(from_white_xyz, to_white_xyz, transform=transform)
    return colours @ matrix.T


def _white(xyz: ArrayLike) -> Float64Array:
    white = np.asarray(xyz, dtype=np.float64)
    if white.shape != (3,):
        raise ShapeError(name="white_xyz", wanted="(3,)", got=white.shape)
    return white
