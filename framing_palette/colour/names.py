"""What to call a colour in plain English when a client is listening.

The words are those of the ISCC-NBS system, each colour taking the name of the nearest of its 267
block centres. Two small layers of our own make them easier to say: whites and black are told
by the limits written here, and some blocks have an everyday word.

References
----------
Kelly 1958, Central notations for the revised ISCC-NBS color-name blocks, J. Res. NBS 61(5).
Kelly, Judd 1976, Color: universal language and dictionary of names, NBS Special Publication 440.
The limits of whites and black and the everyday words are this program's own choice.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, as_lab
from framing_palette.colour.difference import delta_e_2000_matrix
from framing_palette.colour.hue import chroma, hue_deg
from framing_palette.colour.table_files import table
from framing_palette.errors import FieldError, ShapeError


@dataclass(frozen=True, slots=True)
class _Neutral:
    """A kind of white or black: lower limits are included, upper ones are not; hue in degrees."""

    name: str
    lightness: tuple[float, float]
    chroma: tuple[float, float]
    hue: tuple[float, float] = (0.0, 360.0)


_NEUTRALS = (
    _Neutral("white", (92.0, np.inf), (0.0, 2.0)),
    _Neutral("soft white", (87.0, 92.0), (0.0, 2.0)),
    _Neutral("warm white", (87.0, np.inf), (2.0, 7.0), (55.0, 115.0)),
    _Neutral("greenish white", (87.0, np.inf), (2.0, 7.0), (115.0, 195.0)),
    _Neutral("cold white", (87.0, np.inf), (2.0, 7.0), (195.0, 290.0)),
    _Neutral("purplish white", (87.0, np.inf), (2.0, 7.0), (290.0, 335.0)),
    _Neutral("pinkish white", (87.0, np.inf), (2.0, 7.0), (335.0, 360.0)),
    _Neutral("pinkish white", (87.0, np.inf), (2.0, 7.0), (0.0, 55.0)),
    _Neutral("ivory", (87.0, np.inf), (7.0, 12.0), (75.0, 110.0)),
    _Neutral("cream", (85.0, np.inf), (12.0, 24.0), (75.0, 105.0)),
    _Neutral("black", (-np.inf, 20.0), (0.0, 3.0)),
)

_EVERYDAY = {
    "white": "soft white",
    "dark reddish orange": "brick red",
    "greyish reddish orange": "terracotta",
    "strong reddish brown": "rust",
    "dark purplish red": "wine red",
    "dark orange yellow": "ochre",
    "deep orange yellow": "amber",
    "strong yellowish brown": "golden brown",
    "deep yellow": "mustard",
    "dark yellow": "old gold",
    "light yellowish brown": "tan",
    "light greyish yellowish brown": "beige",
    "greyish yellow": "sand",
    "yellowish grey": "stone",
    "dark greyish yellow": "khaki",
    "dark brown": "chocolate brown",
    "greyish yellow green": "sage green",
    "moderate yellowish green": "leaf green",
    "moderate bluish green": "teal",
    "dark bluish green": "dark teal",
    "brilliant bluish green": "turquoise",
    "very light blue": "sky blue",
    "dark purplish blue": "ink blue",
    "dark blue": "navy blue",
    "dark bluish grey": "slate grey",
    "light violet": "lavender",
    "light purple": "lilac",
    "light yellowish pink": "peach",
    "dark yellowish pink": "old rose",
    "deep yellowish pink": "coral",
    "medium grey": "mid grey",
}


def plain_name(lab_d50: ArrayLike) -> str:
    """Return a plain English name of one colour, such as "brick red" or "warm white".

    Parameters
    ----------
    lab_d50
        Shape (3,).

    Raises
    ------
    ShapeError
        When it is not one colour.
    FieldError
        When a value is not a finite number.

    Examples
    --------
    >>> plain_name([42.0, 37.0, 31.0]), plain_name([94.0, 0.5, 5.0])
    ('brick red', 'warm white')
    """
    lab = as_lab(lab_d50)
    if lab.ndim != 1:
        raise ShapeError(name="lab_d50", wanted="(3,)", got=lab.shape)
    return plain_names(lab[None])[0]


def plain_names(lab_d50: ArrayLike) -> list[str]:
    """Return a plain English name of each colour of a list.

    Parameters
    ----------
    lab_d50
        Shape (n, 3).

    Raises
    ------
    ShapeError
        When it is not a list of colours.
    FieldError
        When a value is not a finite number.
    """
    lab = _as_list(lab_d50)
    return [
        neutral or _spoken(name)
        for neutral, name in zip(_neutral_names(lab), iscc_nbs_names(lab), strict=True)
    ]


def iscc_nbs_names(lab_d50: ArrayLike) -> list[str]:
    """Return the ISCC-NBS level 3 name of each colour of a list, in British spelling.

    Parameters
    ----------
    lab_d50
        Shape (n, 3).

    Raises
    ------
    ShapeError
        When it is not a list of colours.
    FieldError
        When a value is not a finite number.
    """
    lab = _as_list(lab_d50)
    names, centres = _blocks()
    return [names[nearest] for nearest in delta_e_2000_matrix(lab, centres).argmin(axis=1)]


def _as_list(lab_d50: ArrayLike) -> Float64Array:
    lab = as_lab(lab_d50).astype(np.float64, copy=False)
    if lab.ndim != 2:
        raise ShapeError(name="lab_d50", wanted="(n, 3)", got=lab.shape)
    if not np.isfinite(lab).all():
        raise FieldError("A colour", got="not a finite number", wanted="measure it again")
    return lab


def _neutral_names(lab: Float64Array) -> list[str]:
    names = np.full(lab.shape[0], "", dtype=object)
    values = (lab[:, 0], chroma(lab), hue_deg(lab))
    for neutral in _NEUTRALS:
        inside = np.ones(lab.shape[0], dtype=bool)
        for value, (low, high) in zip(
            values, (neutral.lightness, neutral.chroma, neutral.hue), strict=True
        ):
            inside &= (value >= low) & (value < high)
        names[inside] = neutral.name
    return [str(name) for name in names]


def _spoken(iscc_nbs_name: str) -> str:
    plain = _EVERYDAY.get(iscc_nbs_name, iscc_nbs_name)
    return plain.removeprefix("moderate ").replace("brilliant", "bright")


@cache
def _blocks() -> tuple[tuple[str, ...], Float64Array]:
    columns = table("colour_names.csv")
    centres = np.array([columns[axis] for axis in "Lab"], dtype=np.float64).T
    return columns["name"], centres
