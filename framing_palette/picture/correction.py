"""Correction: from the camera's linear light to the chart's true colours, with an honest error.

The error that is told is the leave-one-out error: each patch predicted by a fit that has not seen
it. The error of the fit itself misleads, since a map with more terms always fits better.

References
----------
Finlayson, Mackiewicz and Hurlbert (2015), "Color correction using root-polynomial regression",
IEEE Transactions on Image Processing 24(5), 1460-1470, for the root-polynomial terms.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array, FloatArray
from framing_palette.colour import (
    adapt,
    delta_e_2000,
    lab_d50_to_xyz_d50,
    linear_srgb_to_lab_d50,
    xyz_d50_to_lab_d50,
)
from framing_palette.colour.charts import NEUTRAL_PATCHES, VINTAGES, Vintage, chart_lab, chart_names
from framing_palette.errors import ChartError

CLIPPED_FROM: Final = 0.985
"""Linear light of a channel from which a patch counts as clipped."""

DARK_BELOW: Final = 0.0008
UNEVEN_FROM: Final = 0.18  # spread inside a patch over its mean, from which light lies on it
MOST_BAD_PATCHES: Final = 4
CLIPPED, BLACK, GLARE = "clipped", "black", "glare or shadow"
MARGIN: Final = 0.15  # ΔE00 by which the longer map must be better to be taken


class MapKind(StrEnum):
    """The form of the map from camera light to true colour."""

    LINEAR = "3x3 matrix, least ΔE00"
    ROOT_POLYNOMIAL = "root-polynomial of degree 2, least ΔE00"


@dataclass(frozen=True, slots=True)
class PatchReading:
    """The chart as photographed: linear light of each patch, and which cannot be used.

    ``linear`` has shape (24, 3); ``faults`` names, by position, what is wrong with a patch.
    """

    linear: Float64Array
    faults: dict[int, str]

    @property
    def usable(self) -> list[int]:
        """Positions of the patches that can be used."""
        return [place for place in range(len(self.linear)) if place not in self.faults]


@dataclass(frozen=True, slots=True)
class Correction:
    """A map from the camera's linear sRGB to XYZ D50, and how far it can be trusted.

    Parameters
    ----------
    kind
        Its form.
    weights
        Shape (3, 3) or (6, 3).
    vintage
        Which published chart it was fitted to.
    errors
        Leave-one-out ΔE00 of each usable patch, in the order of ``places``.
    places
        Positions of the usable patches.
    measured_lab
        Each usable patch as predicted by the fit without it, Lab D50.
    """

    kind: MapKind
    weights: Float64Array
    vintage: Vintage
    errors: Float64Array
    places: tuple[int, ...]
    measured_lab: Float64Array

    def __call__(self, linear_srgb: FloatArray) -> Float32Array:
        """Return CIELAB D50 from the camera's linear sRGB, any leading axes."""
        xyz = _terms(np.asarray(linear_srgb), self.kind) @ self.weights.astype(linear_srgb.dtype)
        return np.asarray(xyz_d50_to_lab_d50(np.maximum(xyz, 0.0)), dtype=np.float32)


@dataclass(frozen=True, slots=True)
class GreyBalance:
    """A neutral patch that the designer picked: the light's colour is taken out, no more.

    ``white_xyz`` is the light's colour as the camera saw it, scaled to Y = 1.
    """

    white_xyz: Float64Array

    def __call__(self, linear_srgb: FloatArray) -> Float32Array:
        """Return CIELAB D50 from the camera's linear sRGB, any leading axes."""
        xyz = lab_d50_to_xyz_d50(linear_srgb_to_lab_d50(linear_srgb))
        d50 = lab_d50_to_xyz_d50(np.array([100.0, 0.0, 0.0]))
        return np.asarray(xyz_d50_to_lab_d50(adapt(xyz, self.white_xyz, d50)), dtype=np.float32)


def read_patches(
    patches: Sequence[FloatArray], evened: Sequence[FloatArray] | None = None
) -> PatchReading:
    """Return the patches' linear light, and name those that are clipped, black or in glare.

    Parameters
    ----------
    patches
        24 arrays of shape (pixels, 3), linear sRGB, as photographed: faults are looked for here.
    evened
        The same after uneven light was divided out: light is read here.

    Raises
    ------
    ChartError
        When too few are left; the patches are named.
    """
    linear = np.array([np.median(patch, axis=0) for patch in patches], dtype=np.float64)
    faults = {
        place: fault
        for place, patch in enumerate(patches)
        if (fault := _fault(patch, linear[place]))
    }
    if evened is not None:
        linear = np.array([np.median(patch, axis=0) for patch in evened], dtype=np.float64)
    reading = PatchReading(linear, faults)
    if len(faults) > MOST_BAD_PATCHES:
        names = chart_names()
        listed = ", ".join(f"{names[place]} ({fault})" for place, fault in faults.items())
        raise ChartError(
            f"{len(faults)} of the chart's patches cannot be used: {listed}",
            todo=f"take the photograph again {_advice(set(faults.values()))}",
        )
    return reading


def _advice(faults: set[str]) -> str:
    ways = {GLARE: "without glare or shadow", CLIPPED: "a little darker", BLACK: "brighter"}
    return " and ".join(way for fault, way in ways.items() if fault in faults)


def _fault(patch: FloatArray, middle: Float64Array) -> str:
    if float(np.max(middle)) >= CLIPPED_FROM:
        return CLIPPED
    if float(np.max(middle)) < DARK_BELOW:
        return BLACK
    brightness = patch.mean(axis=-1)
    low, high = np.percentile(brightness, (10, 90))
    if high - low > UNEVEN_FROM * 2 * max(float(brightness.mean()), 0.02):
        return GLARE
    return ""


def fit_correction(reading: PatchReading) -> Correction:
    """Return the correction with the least leave-one-out error.

    Both published charts and both forms of the map are tried; the longer map must be better by a
    margin, since it follows noise and odd lights more readily.
    """
    linear = min(
        (_fitted(reading, MapKind.LINEAR, vintage) for vintage in VINTAGES),
        key=lambda one: one.errors.mean(),
    )
    longer = _fitted(reading, MapKind.ROOT_POLYNOMIAL, linear.vintage)
    return longer if longer.errors.mean() < linear.errors.mean() - MARGIN else linear


def _fitted(reading: PatchReading, kind: MapKind, vintage: Vintage) -> Correction:
    places = reading.usable
    reference = chart_lab(vintage)[places]
    terms = np.asarray(_terms(reading.linear[places], kind), dtype=np.float64)
    whole = _least_delta_e(terms, reference)
    predicted = np.empty_like(reference)
    for place in range(len(places)):
        others = np.arange(len(places)) != place
        weights = _least_delta_e(terms[others], reference[others], start=whole, most_steps=8)
        predicted[place] = xyz_d50_to_lab_d50(np.maximum(terms[place] @ weights, 0.0))
    errors = delta_e_2000(predicted, reference)
    return Correction(kind, whole, vintage, errors, tuple(places), predicted)


def _terms(linear: FloatArray, kind: MapKind) -> FloatArray:
    """Return the terms of the map; all of degree one, so that exposure does not matter."""
    if kind is MapKind.LINEAR:
        return linear
    safe = np.maximum(linear, 0.0)
    red, green, blue = safe[..., 0], safe[..., 1], safe[..., 2]
    roots = [np.sqrt(red * green), np.sqrt(green * blue), np.sqrt(blue * red)]
    return np.concatenate([linear, np.stack(roots, axis=-1)], axis=-1)


def _least_delta_e(
    terms: Float64Array,
    reference: Float64Array,
    start: Float64Array | None = None,
    most_steps: int = 40,
) -> Float64Array:
    """Return the weights whose predictions have the least ΔE00 to the reference.

    Least squares on XYZ, weighted so that dark patches count, gives the start; Gauss-Newton steps
    with a soft limit on single large errors do the rest.
    """
    from scipy.optimize import least_squares

    wanted = lab_d50_to_xyz_d50(reference)
    weight = 1.0 / (wanted[:, 1:2] + 0.02)
    if start is None:
        start = np.linalg.lstsq(terms * weight, wanted * weight, rcond=None)[0]
    shape = start.shape

    def errors(candidates: Float64Array) -> Float64Array:
        xyz = np.maximum(terms @ candidates.reshape(-1, *shape), 0.0)
        return np.asarray(delta_e_2000(xyz_d50_to_lab_d50(xyz), reference))

    def residuals(flat: Float64Array) -> Float64Array:
        return np.asarray(errors(flat)[0], dtype=np.float64)

    def slopes(flat: Float64Array) -> Float64Array:
        step = 1e-6 * max(1.0, float(np.abs(flat).max()))
        moved = errors(np.vstack([flat, flat + step * np.eye(len(flat))]))
        return np.asarray((moved[1:] - moved[0]).T / step)

    found = least_squares(
        residuals,
        start.ravel(),
        slopes,
        loss="soft_l1",
        f_scale=3.0,
        max_nfev=most_steps,
        xtol=1e-6,
    )
    return np.asarray(found.x.reshape(shape), dtype=np.float64)


def grey_balance(linear_srgb: FloatArray) -> GreyBalance:
    """Return the balance that makes a picked neutral neutral.

    Parameters
    ----------
    linear_srgb
        Shape (pixels, 3): the pixels that should be grey.

    Raises
    ------
    ChartError
        When the place is clipped, black or not of one colour.
    """
    middle = np.median(linear_srgb, axis=0).astype(np.float64)
    fault = _fault(linear_srgb, middle)
    if fault:
        raise ChartError(
            f"the picked grey is {fault if fault != GLARE else 'not even'}",
            todo="pick an evenly lit place of a grey card that is neither white nor black",
        )
    xyz = lab_d50_to_xyz_d50(linear_srgb_to_lab_d50(middle))
    return GreyBalance(np.asarray(xyz / xyz[1], dtype=np.float64))


def light_slope(reading: PatchReading, correction: Correction) -> float:
    """Return how much brighter one end of the chart is lit than the other, as a ratio over 1.

    From the neutral row and the light patches after correction: predicted over published
    luminance, against the column of the patch.
    """
    places = [place for place in reading.usable if place < NEUTRAL_PATCHES.stop]
    reference = lab_d50_to_xyz_d50(chart_lab(correction.vintage)[places])[:, 1]
    seen = (_terms(reading.linear[places], correction.kind) @ correction.weights)[:, 1]
    columns = np.array([place % 6 for place in places], dtype=np.float64)
    bright = reference > 0.08
    slope = np.polyfit(
        columns[bright], np.log(np.maximum(seen[bright] / reference[bright], 1e-3)), 1
    )
    return float(np.exp(abs(slope[0]) * 5.0))
