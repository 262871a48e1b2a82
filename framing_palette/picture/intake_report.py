"""The intake as a plain dictionary, schema "framing-palette/intake@1"."""

from typing import Any

from framing_palette.picture.intake import Intake
from framing_palette.picture.report import trust_report

INTAKE_SCHEMA = "framing-palette/intake@1"


def intake_report(intake: Intake) -> dict[str, Any]:
    """Return what ``framing-palette intake --json`` prints."""
    trust = intake.picture.colour_trust
    chart = intake.chart
    return {
        "schema": INTAKE_SCHEMA,
        "corners": [list(point) for point in intake.corners],
        "corners_found": intake.are_corners_found,
        "chart": {
            "found": chart is not None,
            "corners": [list(point) for point in chart.corners] if chart else None,
            "patches": [
                {
                    "name": patch.name,
                    "measured_lab": [round(value, 3) for value in patch.measured_lab],
                    "reference_lab": [round(value, 3) for value in patch.reference_lab],
                    "delta_e": round(patch.delta_e, 3),
                }
                for patch in trust.patches
            ],
        },
        "correction": {
            "method": intake.method,
            "leave_one_out": {
                "mean": _rounded(trust.mean_delta_e),
                "p95": _rounded(trust.p95_delta_e),
                "max": _rounded(trust.max_delta_e),
            },
        },
        "light": {
            "evened_by": intake.light.source,
            "fall_off": _rounded(intake.light.fall_off),
            "words": intake.light.words,
        },
        "colour_trust": trust_report(trust),
        "mm_per_px": _rounded(intake.picture.mm_per_px, 6),
        "width_px": intake.picture.columns,
        "height_px": intake.picture.rows,
        "notices": list(intake.picture.notices),
    }


def _rounded(value: float | None, digits: int = 4) -> float | None:
    return None if value is None else round(value, digits)
