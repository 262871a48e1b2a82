"""How a photograph is taken in, as a part of the job's document and back."""

from dataclasses import asdict
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, FiniteFloat

from framing_palette.design.design_writing import exact_text
from framing_palette.jobs.taking_in import HowTaken
from framing_palette.picture import LightField
from framing_palette.picture.light_fields import degree_of
from framing_palette.units import Length

_Point = tuple[float, float]
_FourPoints = tuple[_Point, _Point, _Point, _Point]


class LightModel(BaseModel):
    """What a photographed plain sheet told of the light."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    coefficients: tuple[FiniteFloat, ...] = Field(max_length=100)
    area: tuple[tuple[FiniteFloat, FiniteFloat], ...] = Field(min_length=3, max_length=400)
    proportions: FiniteFloat = Field(gt=0)
    fall_off: FiniteFloat = Field(ge=1)


class IntakeModel(BaseModel):
    """How the photograph is taken in."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    corners: _FourPoints | None = None
    chart: Literal["auto", "none"] | _FourPoints = "auto"
    grey: tuple[float, float] | None = None
    light: Literal["auto", "none"] | LightModel = "auto"
    chart_width: str | None = Field(None, max_length=40)


def intake_document(how: HowTaken) -> dict[str, Any]:
    """Return what is wanted of the intake as plain values.

    What was said of the light and of the chart's width is left out where nothing was, so that
    older programs read the job.
    """
    said: dict[str, Any] = {"corners": how.corners, "chart": how.chart, "grey": how.grey}
    if how.light != "auto":
        said["light"] = asdict(how.light) if isinstance(how.light, LightField) else how.light
    if how.chart_width is not None:
        said["chart_width"] = exact_text(how.chart_width)
    return said


def how_taken(model: IntakeModel) -> HowTaken:
    """Return what is wanted of the intake.

    Raises
    ------
    LightError
        When the light has a number of terms that none of ours has.
    LengthError
        When the chart's width is no length.
    """
    width = model.chart_width
    return HowTaken(
        model.corners,
        model.chart,
        model.grey,
        model.light if isinstance(model.light, str) else _light(model.light),
        None if width is None else Length.parse(width, field="chart_width"),
    )


def _light(light: LightModel) -> LightField:
    degree_of(len(light.coefficients))
    return LightField(light.coefficients, light.area, light.proportions, light.fall_off)
