"""Conditions: the light and observer that figures hold for, and the way to D50, 2 degree.

Figures for an unknown light are refused, because a guess here would be believed everywhere.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from framing_palette.arrays import FloatArray
from framing_palette.colour import (
    ILLUMINANTS,
    WHITE_D50_XYZ,
    adapt,
    lab_d50_to_xyz_d50,
    white_under,
    xyz_d50_to_lab_d50,
)
from framing_palette.errors import ExchangeFileError, UnknownLightError

_CONDITION_KEYS = (
    "ILLUMINANT",
    "ILLUMINATION_NAME",
    "OBSERVER",
    "OBSERVER_ANGLE",
    "WEIGHTING_FUNCTION",
    "MEASUREMENT_SOURCE",
    "MEASUREMENT_CONDITION",
)


@dataclass(frozen=True, slots=True)
class Conditions:
    """The light and the observer that Lab or XYZ figures hold for; empty or None: not told."""

    illuminant: str = ""
    observer_deg: int | None = None

    @property
    def are_known(self) -> bool:
        """Whether both are told."""
        return bool(self.illuminant) and self.observer_deg is not None

    def filled_from(self, others: "Conditions") -> "Conditions":
        """Return these with what is not told taken from others."""
        return Conditions(
            self.illuminant or others.illuminant, self.observer_deg or others.observer_deg
        )


def stated_origin(told: Conditions, used: Conditions) -> str:
    """Return what was stated of figures in words; empty when they told it themselves.

    Examples
    --------
    >>> stated_origin(Conditions(), Conditions("D65", 2))
    'stated at import: figures for D65, 2 degree observer'
    """
    if told == used or not used.are_known:
        return ""
    return f"stated at import: figures for {used.illuminant}, {used.observer_deg} degree observer"


def conditions_in_names(names: Iterable[str]) -> Conditions:
    """Return the illuminant and observer that columns' names tell, as in ``L* (D65/10)``."""
    text = " ; ".join(names)
    light = re.search(r"(?<![a-z0-9])(D\d\d|F\d{1,2}|LED-B[1-5])(?!\d)", text, re.IGNORECASE)
    angle = re.search(r"(?<!\d)(2|10)\s*(?:°|deg)|D\d\d\s*/\s*(2|10)(?!\d)", text, re.IGNORECASE)
    return Conditions(
        light[1].upper() if light else "", int(angle[1] or angle[2]) if angle else None
    )


def conditions_of(keywords: Mapping[str, str]) -> Conditions:
    """Return the illuminant and observer that a header tells."""
    text = " ; ".join(f"{key}={keywords[key]}" for key in _CONDITION_KEYS if key in keywords)
    light = re.search(
        r"illumin[a-z_]*\W+(?:CIE\W*)?([A-F]\d{0,3}|LED-B[1-5])\b", text, re.IGNORECASE
    )
    angle = re.search(r"observer[a-z_]*\W+(?:CIE\W*)?(?:19\d\d\W+)?(2|10)\b", text, re.IGNORECASE)
    return Conditions(light[1].upper() if light else "", int(angle[1]) if angle else None)


def lab_from(
    lab: FloatArray, conditions: Conditions, source: Path, *, what: str = "Lab"
) -> FloatArray:
    """Return Lab figures for a light as Lab D50, 2 degree.

    Parameters
    ----------
    lab
        Shape (..., 3), relative to the white of the illuminant.
    conditions
        What the file tells.
    source, what
        For messages.

    Raises
    ------
    ExchangeFileError
        When the light or observer is unknown or cannot be converted.
    """
    light = known_light(conditions, source, what=what)
    if light == "D50":
        return lab
    white = white_under(light)
    relative = np.asarray(lab_d50_to_xyz_d50(lab)) / WHITE_D50_XYZ
    return xyz_d50_to_lab_d50(adapt(relative * white, white, WHITE_D50_XYZ))


def known_light(conditions: Conditions, source: Path, *, what: str) -> str:
    """Return the illuminant, once it is sure that figures for it can be converted.

    Raises
    ------
    ExchangeFileError
        When they cannot.
    """
    if not conditions.illuminant or conditions.observer_deg is None:
        missing = "illuminant" if not conditions.illuminant else "observer"
        raise UnknownLightError(
            source,
            problem=f"holds {what} figures but does not tell their {missing}",
            todo="export reflectances, or say under which light and observer they hold",
        )
    if conditions.observer_deg != 2:
        raise _wrong(
            source,
            f"holds {what} figures for the {conditions.observer_deg} degree observer",
            "export reflectances or figures for 2 degree; the one cannot be made from the other",
        )
    if conditions.illuminant not in ILLUMINANTS:
        raise _wrong(
            source,
            f"holds {what} figures for illuminant {conditions.illuminant}",
            f"export reflectances, or figures for one of {', '.join(ILLUMINANTS)}",
        )
    return conditions.illuminant


def lab_from_xyz(
    xyz: FloatArray, conditions: Conditions, source: Path, *, what: str = "XYZ"
) -> FloatArray:
    """Return XYZ figures for a light, white Y = 1, as Lab D50, 2 degree.

    Raises
    ------
    ExchangeFileError
        When the light or observer is unknown or cannot be converted.
    """
    white = white_under(known_light(conditions, source, what=what))
    return xyz_d50_to_lab_d50(adapt(xyz, white, WHITE_D50_XYZ))


def _wrong(source: Path, problem: str, todo: str) -> ExchangeFileError:
    return ExchangeFileError(source, problem=problem, todo=todo)
