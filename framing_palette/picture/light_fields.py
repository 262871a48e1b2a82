"""The light across a photograph: a smooth surface, and where it is known.

The surface is a polynomial in the logarithm of the light; what tells it is in ``lighting``.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array, FloatArray
from framing_palette.errors import LightError

HIGHEST_DEGREE: Final = 6
LARGEST_FALL_OFF: Final = 4.0
"""Brightest over darkest light up to which uneven light is divided out."""

_REACH = 0.03  # by which the told area is stretched

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class LightField:
    """The light across a photograph, 1 in the mean over where it was told.

    Parameters
    ----------
    coefficients
        Of the polynomial in the logarithm of the light, x and y from -1 to 1 across the
        photograph, terms in the order of ``_powers``.
    area
        Outline, 0..1, of where something plain told the light.
    proportions
        Width over height of the photograph that it was told by.
    fall_off
        Brightest over darkest light within the area.
    """

    coefficients: tuple[float, ...]
    area: tuple[Point, ...]
    proportions: float
    fall_off: float

    def across(self, rows: int, columns: int) -> Float32Array:
        """Return the relative light of every pixel, shape (rows, columns), float32."""
        import cv2

        small = max(2, min(rows, 400)), max(2, min(columns, 400))
        x, y = places(*small)
        log_light = light_terms(x, y, self.degree) @ np.array(self.coefficients)
        # Where nothing told it the polynomial may run away; it is held to what was seen.
        limit = float(np.log(LARGEST_FALL_OFF))
        field = np.exp(np.clip(log_light, -limit, limit)).astype(np.float32)
        size = columns, rows
        return np.asarray(cv2.resize(field.reshape(small), size, interpolation=cv2.INTER_LINEAR))

    @property
    def degree(self) -> int:
        """Degree of the polynomial."""
        return degree_of(len(self.coefficients))

    def reaches(self, points: FloatArray) -> bool:
        """Tell whether all points (n, 2), 0..1, lie where the light is known."""
        import cv2

        area = np.asarray(self.area, np.float32)
        return all(
            cv2.pointPolygonTest(area, (float(x), float(y)), measureDist=True) >= -_REACH
            for x, y in points
        )


def degree_of(terms: int) -> int:
    """Return the degree whose polynomial in two variables has so many terms.

    Raises
    ------
    LightError
        When there is none, or it is higher than is ever fitted.
    """
    for degree in range(HIGHEST_DEGREE + 1):
        if terms == (degree + 1) * (degree + 2) // 2:
            return degree
    raise LightError(
        f"a light of {terms} terms is none of ours", todo="photograph the plain sheet again"
    )


def places(rows: int, columns: int) -> tuple[Float64Array, Float64Array]:
    """Return x and y of every cell's middle, -1..1, flattened row by row."""
    across = (np.arange(columns) + 0.5) / columns * 2 - 1
    down = (np.arange(rows) + 0.5) / rows * 2 - 1
    x, y = np.meshgrid(across, down)
    return x.ravel(), y.ravel()


def _powers(degree: int) -> list[tuple[int, int]]:
    return [(total - j, j) for total in range(degree + 1) for j in range(total + 1)]


def light_terms(x: Float64Array, y: Float64Array, degree: int) -> Float64Array:
    """Return the polynomial's terms at places (n,), shape (n, terms)."""
    return np.stack([x**i * y**j for i, j in _powers(degree)], axis=-1)
