"""Trust: what a correction's error is good for, in grades and in plain words.

The limits stand beside the grades of art digitisation in FADGI (2023), mean ΔE00 under 2, 3.5, 5
and 6.5 (bound-collection category, from a secondary table): the best grade tells whites apart, the
last still holds for neighbouring hues, and what is worse only tells families of colour.
"""

from typing import Final

import numpy as np

from framing_palette.colour.charts import chart_lab, chart_names
from framing_palette.picture.correction import Correction, PatchReading
from framing_palette.picture.pictures import ColourTrust, PatchError, TrustGrade

WHITES_UP_TO: Final = 2.0
HUES_UP_TO: Final = 5.0
WHITES_WORST: Final = 6.0  # 95th percentile up to which whites may still be told apart

_MEANING: Final = {
    TrustGrade.WHITES: "enough to choose between whites",
    TrustGrade.HUES: "enough to choose between neighbouring hues, not between whites",
    TrustGrade.FAMILIES: "only for broad families of colour",
}
AT_THE_CHART: Final = (
    " This holds where the light is as on the chart; nothing tells how even it is across the art."
)
GREY_WORDS: Final = (
    "Only the colour of the light was taken out, by the picked grey: good for broad families of "
    "colour; put a colour chart beside the art to know more."
)


def grade_of(mean: float, p95: float) -> TrustGrade:
    """Return the grade of leave-one-out errors, in ΔE00."""
    if mean <= WHITES_UP_TO and p95 <= WHITES_WORST:
        return TrustGrade.WHITES
    return TrustGrade.HUES if mean <= HUES_UP_TO else TrustGrade.FAMILIES


def chart_trust(
    reading: PatchReading,
    correction: Correction,
    clipped_share: float,
    *,
    is_light_known: bool = True,
) -> ColourTrust:
    """Return what is known after a correction by the chart.

    Where nothing tells how even the light is, the words say that the error is that at the chart.
    """
    errors = correction.errors
    mean, p95 = float(errors.mean()), float(np.percentile(errors, 95))
    grade = grade_of(mean, p95)
    words = f"Colours good to about {mean:.1f} ΔE00: {_MEANING[grade]}."
    if not is_light_known:
        words += AT_THE_CHART
    if reading.faults:
        names = chart_names()
        left_out = ", ".join(f"{names[place]} ({why})" for place, why in reading.faults.items())
        words += f" Patches left out: {left_out}."
    return ColourTrust(
        method="chart",
        grade=grade,
        words=words,
        mean_delta_e=mean,
        p95_delta_e=p95,
        max_delta_e=float(errors.max()),
        clipped_share=clipped_share,
        patches=_patches(correction),
    )


def grey_trust(clipped_share: float) -> ColourTrust:
    """Return what is known after a balance by a picked grey: the hue of the light, no error."""
    return ColourTrust(
        method="grey",
        grade=TrustGrade.FAMILIES,
        words=GREY_WORDS,
        clipped_share=clipped_share,
    )


def _patches(correction: Correction) -> tuple[PatchError, ...]:
    names, reference = chart_names(), chart_lab(correction.vintage)
    return tuple(
        PatchError(
            name=names[place],
            measured_lab=(float(lab[0]), float(lab[1]), float(lab[2])),
            reference_lab=tuple(float(value) for value in reference[place]),  # type: ignore[arg-type]
            delta_e=float(error),
        )
        for place, lab, error in zip(
            correction.places, correction.measured_lab, correction.errors, strict=True
        )
    )
