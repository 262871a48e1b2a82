"""Intake: from a photograph of the art on the counter to a squared picture in trusted colour.

In order of trust: the 24-patch chart, a grey that the designer picked, or nothing but the file's
own profile. What could not be known is said in ``notices``, never guessed.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.colour import lab_d50_to_linear_srgb, lab_d50_to_srgb_u8
from framing_palette.errors import FieldError
from framing_palette.picture.chart_finding import Chart, chart_at, find_chart
from framing_palette.picture.chart_layout import sampled_patches
from framing_palette.picture.correction import (
    Correction,
    GreyBalance,
    PatchReading,
    fit_correction,
    grey_balance,
    light_slope,
    read_patches,
)
from framing_palette.picture.evening import Evened, evened_out
from framing_palette.picture.light_fields import LightField
from framing_palette.picture.pictures import ColourTrust, Picture
from framing_palette.picture.scaling import scaled
from framing_palette.picture.squaring import (
    WHOLE,
    Corners,
    checked_corners,
    find_corners,
    squared_up,
)
from framing_palette.picture.trust import HUES_UP_TO, chart_trust, grey_trust
from framing_palette.units import Length

INTAKE_SIDE: Final = 3200
"""Longest side, in pixels, at which a photograph is taken in."""

UNEVEN_LIGHT: Final = 1.12
GREY_REACH: Final = 0.006  # half side of the patch around a picked grey, over the longest side

NO_CHART: Final = (
    "No whole 24-patch colour chart was found: put one flat beside the art, out of glare, or mark "
    "its corners."
)

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class IntakeWishes:
    """What the designer knows and wants.

    Parameters
    ----------
    corners
        Of the art, 0..1 across the photograph; found automatically when None, and the whole
        photograph when they cannot be found.
    chart
        "auto" looks for the chart, "none" ignores it, four corners say where it is.
    grey
        A place that should be neutral, 0..1; used when there is no chart.
    art_size
        True width and height.
    chart_size
        True width and height between the outer edges of the corner patches, when the chart lies
        in the plane of the art; gives the scale when the art's size is not known, and a check of
        the art's size when it is.
    light
        What a photographed plain sheet told of the light; "auto" asks the table around the art,
        "none" leaves uneven light alone.
    """

    corners: Corners | None = None
    chart: Literal["auto", "none"] | Corners = "auto"
    grey: Point | None = None
    art_size: tuple[Length, Length] | None = None
    chart_size: tuple[Length, Length] | None = None
    light: Literal["auto", "none"] | LightField = "auto"


@dataclass(frozen=True, slots=True, eq=False)
class Intake:
    """What came of it.

    Parameters
    ----------
    picture
        Squared, corrected, with its scale and trust.
    corners
        Those used.
    are_corners_found
        True when the program found them itself.
    chart
        The chart, or None.
    patches
        The chart as photographed, or None.
    method
        What corrected the colour, in words.
    light
        What was done about uneven light.
    """

    picture: Picture
    corners: Corners
    are_corners_found: bool
    chart: Chart | None
    patches: PatchReading | None
    method: str
    light: Evened


def take_in(photograph: Picture, wishes: IntakeWishes | None = None) -> Intake:
    """Return the art of a photograph, squared up and corrected.

    Parameters
    ----------
    photograph
        As read, at ``INTAKE_SIDE`` for the best result.
    wishes
        Nothing known when None.

    Raises
    ------
    ChartError
        When the chart or the grey cannot be used, or no chart is where it was marked.
    CornersError
        When the corners cannot be those of a picture.
    FieldError
        When a size is not above zero.
    LightError
        When the plain sheet does not fit this photograph.
    """
    wishes = wishes or IntakeWishes()
    linear = np.asarray(lab_d50_to_linear_srgb(photograph.lab_d50), np.float32)
    seen = lab_d50_to_srgb_u8(photograph.lab_d50)
    chart = _chart(wishes, linear, seen)
    corners, found, notices = _corners(wishes, seen, chart)
    light = evened_out(linear, wishes.light, corners, chart)
    corrected = _corrected(photograph, wishes, linear, light, chart)
    squared = squared_up(light.linear, corners, proportions=_proportions(wishes))
    if light.source != "none":
        notices.append(light.words)
    lab = corrected.convert(squared.image)
    lab.flags.writeable = False
    picture = replace(
        photograph,
        lab_d50=lab,
        mm_per_px=None,
        colour_trust=corrected.trust,
        full_width_px=lab.shape[1],
        full_height_px=lab.shape[0],
        notices=(*photograph.notices, *notices, *squared.notices, *corrected.notices),
    )
    picture = scaled(picture, corners, chart, wishes.art_size, wishes.chart_size)
    return Intake(picture, corners, found, chart, corrected.patches, corrected.method, light)


@dataclass(frozen=True, slots=True, eq=False)
class _Corrected:
    convert: Callable[[Float32Array], Float32Array]
    trust: ColourTrust
    method: str
    patches: PatchReading | None = None
    notices: tuple[str, ...] = ()


def _chart(wishes: IntakeWishes, linear: Float32Array, seen: UInt8Array) -> Chart | None:
    if wishes.chart == "none":
        return None
    if wishes.chart != "auto":
        return chart_at(wishes.chart, linear)
    return find_chart(seen, linear)


def _corrected(
    photograph: Picture,
    wishes: IntakeWishes,
    linear: Float32Array,
    light: Evened,
    chart: Chart | None,
) -> _Corrected:
    clipped = photograph.colour_trust.clipped_share
    if chart is not None:
        # Whether a patch is clipped shows in the photograph, how bright it is once light is even.
        patches = read_patches(
            sampled_patches(chart.corners, linear), sampled_patches(chart.corners, light.linear)
        )
        correction = fit_correction(patches)
        is_known = light.fall_off is not None
        trust = chart_trust(patches, correction, clipped, is_light_known=is_known)
        notices = tuple(_light_notices(patches, correction))
        return _Corrected(correction, trust, f"chart, {correction.kind}", patches, notices)
    is_known = photograph.colour_trust.method == "chart"  # taken in before, and cut out since
    missing = () if wishes.chart == "none" or is_known else (NO_CHART,)
    if wishes.grey is not None:
        balance: GreyBalance = grey_balance(_around(linear, wishes.grey))  # one place, one light
        method = "grey, the light's colour taken out"
        return _Corrected(balance, grey_trust(clipped), method, notices=missing)
    method = "none, as the file says"
    return _Corrected(_as_it_is, photograph.colour_trust, method, notices=missing)


def _as_it_is(linear: Float32Array) -> Float32Array:
    from framing_palette.colour import linear_srgb_to_lab_d50

    return np.asarray(linear_srgb_to_lab_d50(linear), np.float32)


def _light_notices(patches: PatchReading, correction: Correction) -> list[str]:
    found = []
    if float(correction.errors.mean()) > HUES_UP_TO:
        found.append(
            "The chart's patches do not go together as those of a clean chart in even light do: "
            "look for glare, haze or a shadow on it, or a faded chart, and take the photograph "
            "again."
        )
    slope = light_slope(patches, correction)
    if slope < UNEVEN_LIGHT:
        return found
    words = (
        f"One end of the chart is lit {slope - 1:.0%} brighter than the other; the light across "
        "the art is left as it is: even the lamps out and take the photograph again."
    )
    return [*found, words]


def _around(linear: Float32Array, place: Point) -> Float32Array:
    rows, columns = linear.shape[:2]
    if not (0 <= place[0] <= 1 and 0 <= place[1] <= 1):
        raise FieldError("grey", got=place, wanted="give x and y between 0 and 1")
    reach = max(2, round(GREY_REACH * max(rows, columns)))
    row, column = int(place[1] * (rows - 1)), int(place[0] * (columns - 1))
    part = linear[
        max(0, row - reach) : row + reach + 1, max(0, column - reach) : column + reach + 1
    ]
    return part.reshape(-1, 3)


def _corners(
    wishes: IntakeWishes, seen: UInt8Array, chart: Chart | None
) -> tuple[Corners, bool, list[str]]:
    if wishes.corners is not None:
        return checked_corners(wishes.corners), False, []
    found = find_corners(seen, avoid=chart.corners if chart else None)
    if found is not None:
        return found, True, []
    words = "The art's edge could not be found, so the whole photograph is taken: mark the corners."
    return WHOLE, False, [words]


def _proportions(wishes: IntakeWishes) -> float | None:
    if wishes.art_size is None:
        return None
    width, height = wishes.art_size
    if width.mm <= 0 or height.mm <= 0:
        raise FieldError("art size", got="zero or less", wanted="give lengths above zero")
    return float(width.mm / height.mm)
