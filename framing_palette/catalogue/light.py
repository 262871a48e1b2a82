"""Light: what a sample looks like at home, and whether a match made in the shop holds there.

With a measured reflectance the colour under another light is computed; without one it is estimated
from the smoothest reflectance that has the colour, and everything that comes of it says so.

References
----------
CIE 015:2018 Colorimetry: illuminants A, D50, D65, F11 and LED-B1 to LED-B5; special metamerism
index for a change of illuminant.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, FloatArray
from framing_palette.catalogue.samples import Lab, Sample, SampleColour
from framing_palette.colour import (
    WAVELENGTHS_NM,
    WHITE_D50_XYZ,
    adapt,
    delta_e_2000,
    lab_d50_to_xyz_d50,
    metamerism_index,
    spectrum_to_lab_d50,
    spectrum_to_xyz,
    white_under,
    xyz_d50_to_lab_d50,
)
from framing_palette.errors import FieldError

REFERENCE = "D50"
LIGHT_WORDS = {
    "D50": "print-viewing daylight",
    "D65": "north daylight",
    "A": "warm bulbs",
    "LED-B1": "warm LEDs (2700 K)",
    "LED-B2": "warm LEDs (3000 K)",
    "LED-B3": "neutral LEDs (4100 K)",
    "LED-B4": "cool LEDs (5100 K)",
    "LED-B5": "cold LEDs (6600 K)",
    "F11": "shop tubes",
}
HOME_LIGHTS = tuple(light for light in LIGHT_WORDS if light != REFERENCE)

# ΔE00 in words; common practice: about 1 is the least that a trained eye sees side by side.
MATCHES_BELOW = 2.0
HOLDS_BELOW = 1.0
CLEAR_FROM = 3.0
_DIRECTIONS = ("pink", "orange", "yellow", "lime", "green", "teal", "blue", "violet")


@dataclass(frozen=True, slots=True)
class Drift:
    """How a pair parts when the light changes.

    Parameters
    ----------
    light
        A key of LIGHT_WORDS.
    index
        Special metamerism index in ΔE00, 0 for none.
    toward
        The way the first colour goes against the second: a hue word, "lighter" or "darker".
    is_estimate
        True when a reflectance had to be estimated.
    """

    light: str
    index: float
    toward: str
    is_estimate: bool


@dataclass(frozen=True, slots=True)
class MatchUnderLights:
    """A pair of colours judged in the shop's light and in others.

    Parameters
    ----------
    difference
        ΔE00 under D50.
    drifts
        One for each light asked for, in that order.
    sentence
        The finding in plain words.
    """

    difference: float
    drifts: tuple[Drift, ...]
    sentence: str

    @property
    def worst(self) -> Drift | None:
        """The light in which the pair parts most."""
        return max(self.drifts, key=lambda drift: drift.index, default=None)


def colour_under(colour: SampleColour, light: str) -> SampleColour:
    """Return a sample's colour as the settled eye sees it in a light, as CIELAB D50.

    Raises
    ------
    FieldError
        When the light is not known.
    """
    if light == REFERENCE:
        return colour
    if colour.spectrum is None:
        return replace(colour, lab=_triple(lab_under(colour.lab, light)))
    return replace(colour, lab=_triple(spectrum_to_lab_d50(colour.spectrum, light)))


def sample_under(sample: Sample, light: str) -> Sample:
    """Return a sample with its colours as they look in a light.

    Raises
    ------
    FieldError
        When the light is not known.
    """
    return replace(sample, colours=tuple(colour_under(c, light) for c in sample.colours))


def is_estimated(sample: Sample) -> bool:
    """Whether the colours of `sample_under` would be estimates, for want of a reflectance."""
    return any(colour.spectrum is None for colour in sample.colours)


def lab_under(lab_d50: ArrayLike, light: str) -> FloatArray:
    """Return colours without a known reflectance as they would look in a light; an estimate.

    Parameters
    ----------
    lab_d50
        Shape (..., 3); whole pictures too, since the estimate is one matrix.
    light
        A key of LIGHT_WORDS.

    Raises
    ------
    FieldError
        When the light is not known.

    Examples
    --------
    >>> lab_under([100.0, 0.0, 0.0], "A").round(6).tolist()[0]
    100.0
    """
    if light == REFERENCE:
        return np.asarray(lab_d50, dtype=np.float64)
    return xyz_d50_to_lab_d50(lab_d50_to_xyz_d50(lab_d50) @ _light_matrix(light))


def smooth_reflectance(lab_d50: ArrayLike) -> Float64Array:
    """Return the reflectance of least squared slope that has a colour under D50.

    It may leave 0..1 a little for very strong colours; it is exact for whites and greys.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).

    Returns
    -------
    Shape (..., 36), 380 to 730 nm by 10.
    """
    return np.asarray(lab_d50_to_xyz_d50(lab_d50) @ _reflectance_matrix().T)


def compare_under_lights(
    first: SampleColour | Lab, second: SampleColour | Lab, lights: Sequence[str] = HOME_LIGHTS
) -> MatchUnderLights:
    """Return whether two colours that are held together match, here and in other lights.

    Parameters
    ----------
    first
        A sample's colour, or a bare colour of the picture (Lab D50).
    second
        What it is held against.
    lights
        Keys of LIGHT_WORDS.

    Raises
    ------
    FieldError
        When a light is not known.
    """
    one, two = _as_colour(first), _as_colour(second)
    difference = float(delta_e_2000(one.lab, two.lab))
    drifts = tuple(_drift(one, two, light) for light in lights)
    return MatchUnderLights(difference, drifts, _sentence(difference, drifts))


def nearest_colour(sample: Sample, lab: Lab) -> SampleColour:
    """Return the colour of a sample that comes closest to a colour of the picture.

    Raises
    ------
    FieldError
        When the sample has no colour.
    """
    if not sample.colours:
        raise FieldError(
            "colours",
            got=f"empty for {sample.code}",
            wanted="a sample needs a colour to be matched",
        )
    return min(sample.colours, key=lambda colour: float(delta_e_2000(colour.lab, lab)))


def _drift(one: SampleColour, two: SampleColour, light: str) -> Drift:
    if light not in LIGHT_WORDS:
        raise FieldError("light", got=light, wanted=f"choose one of {', '.join(LIGHT_WORDS)}")
    first, second = _reflectance_of(one), _reflectance_of(two)
    index = float(metamerism_index(first, second, light=light, reference=REFERENCE))
    apart = np.subtract(colour_under(one, light).lab, colour_under(two, light).lab)
    before = np.subtract(one.lab, two.lab)
    is_estimate = one.spectrum is None or two.spectrum is None
    return Drift(light, index, _direction(apart - before), is_estimate)


def _sentence(difference: float, drifts: Sequence[Drift]) -> str:
    if difference < MATCHES_BELOW:
        start = "matches here"
    else:
        start = f"does not match here (ΔE00 {difference:.1f})"
    worst = max(drifts, key=lambda drift: drift.index, default=None)
    if worst is None:
        return start
    if worst.index < HOLDS_BELOW:
        where = "in every light tried" if len(drifts) > 1 else f"under {LIGHT_WORDS[worst.light]}"
        rest = "stays so" if difference < MATCHES_BELOW else "parts no further"
        return f"{start} and {rest} {where}: ΔE00 {worst.index:.1f} at most{_remark(worst)}"
    verb = "drifts" if worst.index >= CLEAR_FROM else "drifts a little"
    way = worst.toward if worst.toward in {"lighter", "darker"} else f"toward {worst.toward}"
    light = LIGHT_WORDS[worst.light]
    return f"{start}, {verb} {way} under {light}: ΔE00 {worst.index:.1f}{_remark(worst)}"


def _remark(drift: Drift) -> str:
    return " (estimated: no measured reflectance)" if drift.is_estimate else ""


def _direction(step: Float64Array) -> str:
    """Return the way of a Lab difference in one word."""
    if abs(step[0]) > np.hypot(step[1], step[2]):
        return "lighter" if step[0] > 0 else "darker"
    sector = round(np.degrees(np.arctan2(step[2], step[1])) / 45) % 8
    return _DIRECTIONS[int(sector)]


def _as_colour(colour: SampleColour | Lab) -> SampleColour:
    return colour if isinstance(colour, SampleColour) else SampleColour(colour, 1.0)


def _reflectance_of(colour: SampleColour) -> Float64Array:
    if colour.spectrum is None:
        return smooth_reflectance(colour.lab)
    return np.asarray(colour.spectrum, dtype=np.float64)


def _triple(lab: ArrayLike) -> Lab:
    lightness, a, b = np.asarray(lab, dtype=np.float64).tolist()
    return (lightness, a, b)


@cache
def _reflectance_matrix() -> Float64Array:
    """Return the (36, 3) matrix from XYZ under D50 to the reflectance of least slope.

    The stationary point of the slope under the three tristimulus constraints.
    """
    count = WAVELENGTHS_NM.size
    slope = np.diff(np.eye(count), axis=0)
    weights = spectrum_to_xyz(np.eye(count), REFERENCE)
    system = np.block([[2 * slope.T @ slope, weights], [weights.T, np.zeros((3, 3))]])
    goal = np.vstack([np.zeros((count, 3)), np.eye(3)])
    # The table's D50 and the white of CIELAB differ in the last digits; carry one to the other.
    to_table = adapt(np.eye(3), WHITE_D50_XYZ, white_under(REFERENCE))
    return np.asarray(np.linalg.solve(system, goal)[:count] @ to_table.T)


@cache
def _light_matrix(light: str) -> Float64Array:
    """Return the (3, 3) matrix, to be put behind a row of XYZ D50, that changes the light."""
    rows = spectrum_to_xyz(_reflectance_matrix().T, light)
    return np.asarray(adapt(rows, white_under(light), WHITE_D50_XYZ))
