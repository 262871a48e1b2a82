"""Evening out: which light is divided out of a photograph, and what is said about it.

A photographed plain sheet is believed when it reaches under the art and the chart. Without one the
plain table around the art is asked, and believed only when the chart's own grey row, where there is
one, does not disagree. Otherwise the light is left alone, and that is said.
"""

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.colour import lab_d50_to_xyz_d50
from framing_palette.colour.charts import CHART_COLUMNS, CHART_ROWS, chart_lab
from framing_palette.errors import LightError
from framing_palette.picture.chart_finding import Chart
from framing_palette.picture.chart_layout import sampled_patches
from framing_palette.picture.light_fields import LightField
from framing_palette.picture.lighting import EVEN_WITHIN, light_of_surroundings
from framing_palette.picture.squaring import WHOLE, Corners

_SAME_SHAPE: Final = 0.01
# In the logarithm of light, from edge to edge of the chart. Under even light simulated charts came
# to 0.02 to 0.055, since no linear map makes a camera see as the eye does.
_CHART_MAY_DIFFER: Final = 0.07
_TURNS: Final = 12
_BRIGHT: Final = 0.08  # luminance from which a patch tells it without the haze of the lens
_CARD_SHARE: Final = 1.25  # of the chart's card over its patches


@dataclass(frozen=True, slots=True, eq=False)
class Evened:
    """A photograph after its light was looked at.

    Parameters
    ----------
    linear
        Shape (rows, columns, 3), linear light; as it came when nothing was divided out.
    source
        "plain sheet", "table" or "none": what told the light that was divided out.
    fall_off
        Brightest over darkest light across what told it; None when it is not known.
    words
        One sentence on what was done and why.
    """

    linear: Float32Array
    source: Literal["plain sheet", "table", "none"]
    fall_off: float | None
    words: str


def evened_out(
    linear: Float32Array,
    light: Literal["auto", "none"] | LightField,
    corners: Corners,
    chart: Chart | None,
) -> Evened:
    """Return a photograph with its uneven light divided out, where that is known.

    Raises
    ------
    LightError
        When a plain sheet was given and does not reach under the art and the chart, or was
        photographed in another shape.
    """
    if isinstance(light, LightField):
        _check_sheet(light, linear, corners, chart)
        words = (
            f"The light fell off {light.fall_off:.2f} times across the plain sheet and was divided "
            "out."
        )
        return Evened(_divided(linear, light), "plain sheet", light.fall_off, words)
    if light == "none":
        return Evened(linear, "none", None, "The light across the art is left as it is.")
    return _by_the_table(linear, corners, chart)


def _by_the_table(linear: Float32Array, corners: Corners, chart: Chart | None) -> Evened:
    if corners == WHOLE:
        words = "No table is in sight to tell how even the light is; it is left as it is."
        return Evened(linear, "none", None, words)
    hidden = [np.asarray(corners)] + ([_card(chart)] if chart else [])
    try:
        light = light_of_surroundings(linear, hidden)
    except LightError:
        words = (
            "The table around the art is not plain enough to tell how even the light is; it is "
            "left as it is."
        )
        return Evened(linear, "none", None, words)
    if not light.reaches(np.asarray(corners)):
        words = "Too little of the table is in sight to tell how even the light is."
        return Evened(linear, "none", None, words)
    if light.fall_off <= EVEN_WITHIN:
        words = f"The light is even within {light.fall_off - 1:.0%}."
        return Evened(linear, "none", light.fall_off, words)
    evened = _divided(linear, light)
    if chart is not None and _contradicts(chart, linear, evened):
        words = (
            "Table and chart tell different things of how even the light is; it is left as it is."
        )
        return Evened(linear, "none", None, words)
    words = (
        f"The light fell off {light.fall_off:.2f} times across the table around the art and was "
        "divided out."
    )
    return Evened(evened, "table", light.fall_off, words)


def _divided(linear: Float32Array, light: LightField) -> Float32Array:
    field = light.across(*linear.shape[:2])
    return np.asarray(linear / field[..., np.newaxis], np.float32)


def _check_sheet(
    light: LightField, linear: Float32Array, corners: Corners, chart: Chart | None
) -> None:
    rows, columns = linear.shape[:2]
    if abs(light.proportions * rows / columns - 1) > _SAME_SHAPE:
        raise LightError(
            "the plain sheet was photographed in another shape than the art",
            todo="take both with the same camera from the same place, held the same way",
        )
    needed = [("art", corners)] + ([("chart", chart.corners)] if chart else [])
    for what, outline in needed:
        if not light.reaches(np.asarray(outline)):
            raise LightError(
                f"the plain sheet did not reach under all of the {what}",
                todo="lay it so that it fills the picture, or take a larger one",
            )


def _card(chart: Chart) -> Float64Array:
    outline = np.asarray(chart.corners)
    middle = outline.mean(axis=0)
    return np.asarray(middle + (outline - middle) * _CARD_SHARE, np.float64)


def _contradicts(chart: Chart, linear: Float32Array, evened: Float32Array) -> bool:
    """Tell whether the chart is lit less evenly after evening out than it may be."""
    left = _unevenness(chart, evened)
    return left > _CHART_MAY_DIFFER and left > _unevenness(chart, linear) / 2


def _unevenness(chart: Chart, linear: Float32Array) -> float:
    """Return by how much the light differs across the chart, in the logarithm of light.

    A plain linear map to the published colours and a plane of light over columns and rows are
    fitted in turn, since either alone would take a part of the other for its own.
    """
    seen = np.array([np.median(patch, axis=0) for patch in sampled_patches(chart.corners, linear)])
    known = lab_d50_to_xyz_d50(chart_lab())
    weight = 1.0 / (known[:, 1:2] + 0.02)
    place = np.arange(CHART_ROWS * CHART_COLUMNS)
    across = place % CHART_COLUMNS / (CHART_COLUMNS - 1) - 0.5
    down = place // CHART_COLUMNS / (CHART_ROWS - 1) - 0.5
    ground = np.column_stack([across, down, np.ones(len(place))])
    bright = known[:, 1] > _BRIGHT
    plane = np.zeros(3)
    for _ in range(_TURNS):
        even = seen * np.exp(-ground @ plane)[:, np.newaxis]
        solved = np.linalg.lstsq(even * weight, known * weight, rcond=None)[0]
        ratio = np.log(np.maximum((seen @ solved)[bright, 1], 1e-4) / known[bright, 1])
        plane = np.linalg.lstsq(ground[bright], ratio, rcond=None)[0]
    return float(np.hypot(plane[0], plane[1]))
