"""Places: where in the picture a colour lives, as a map to dim by and as one spot to point at."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float32Array, as_lab
from framing_palette.colour import delta_e_2000
from framing_palette.picture.findings import Lab
from framing_palette.picture.pictures import Picture
from framing_palette.picture.resampling import as_float32, blurred, shrunk

MAP_SIDE = 640
SAME_DELTA_E, OTHER_DELTA_E = 5.0, 14.0
"""Up to the first ΔE00 a pixel is that colour; from the second on it is another one."""

SPOT_SIDE = 160
_SPOT_DISTANCE = 10.0
_GATHER_SHARE = 0.025

Spot = tuple[float, float]


def presence(picture: Picture, lab: ArrayLike, *, max_side: int = MAP_SIDE) -> Float32Array:
    """Return how much each place of the picture has a colour, 0..1, shape (rows, columns).

    Parameters
    ----------
    picture
        The picture.
    lab
        The colour, Lab D50, shape (3,).
    max_side
        Longest side of the map; it is never larger than the picture.
    """
    small = shrunk(picture.lab_d50, max_side)
    difference = delta_e_2000(small, as_lab(lab))
    near = (OTHER_DELTA_E - difference) / (OTHER_DELTA_E - SAME_DELTA_E)
    return as_float32(np.clip(near, 0.0, 1.0))


def colour_at(picture: Picture, x: float, y: float, *, radius: float = 0.006) -> Lab:
    """Return the median colour around a place of the picture, Lab D50.

    Parameters
    ----------
    picture
        The picture.
    x, y
        The place, 0 to 1 across the picture; outside it the nearest pixel counts.
    radius
        Half the side of the square that is looked at, as a share of the picture's long side.
    """
    reach = max(1, round(radius * max(picture.rows, picture.columns)))
    row = min(max(int(y * picture.rows), 0), picture.rows - 1)
    column = min(max(int(x * picture.columns), 0), picture.columns - 1)
    around = picture.lab_d50[
        max(0, row - reach) : row + reach + 1, max(0, column - reach) : column + reach + 1
    ]
    lightness, a, b = np.median(around.reshape(-1, 3), axis=0)
    return float(lightness), float(a), float(b)


def spots(picture: Picture, labs: Sequence[ArrayLike]) -> tuple[Spot, ...]:
    """Return for each colour the spot, 0..1 across the picture, around which most of it gathers.

    A colour that the picture does not have gets the spot of its nearest pixel.

    Parameters
    ----------
    picture
        The picture.
    labs
        Colours, Lab D50, each of shape (3,).
    """
    small = shrunk(picture.lab_d50, SPOT_SIDE)
    sigma = max(1.0, _GATHER_SHARE * max(small.shape[:2]))
    return tuple(_spot(small, np.asarray(as_lab(lab), dtype=np.float32), sigma) for lab in labs)


def _spot(small: Float32Array, lab: Float32Array, sigma: float) -> Spot:
    # Plain distance in Lab: where a colour gathers does not hang on the finer formula.
    distance = np.sqrt(((small - lab) ** 2).sum(axis=-1))
    here = np.exp(-0.5 * (distance / _SPOT_DISTANCE) ** 2)
    gathered = blurred(as_float32(here), sigma) * here
    if not gathered.max() > 0:
        gathered = -distance
    row, column = np.unravel_index(int(np.argmax(gathered)), distance.shape)
    return (float(column) + 0.5) / small.shape[1], (float(row) + 0.5) / small.shape[0]
