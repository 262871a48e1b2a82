"""Report: a ranking as plain values for the command line's JSON and for saved jobs."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from math import isfinite
from typing import Any

from framing_palette.ranking.verdicts import Measures, RankedSample

RANK_SCHEMA = "framing-palette/rank@1"


def rank_report(picture_part: Mapping[str, Any], ranked: Sequence[RankedSample]) -> dict[str, Any]:
    """Return the object that ``rank --json`` prints.

    Parameters
    ----------
    picture_part
        The picture's own part: "picture" and "regions".
    ranked
        The samples to tell of, best first.
    """
    samples = [sample_report(line) for line in ranked]
    return {"schema": RANK_SCHEMA, **picture_part, "samples": samples}


def sample_report(line: RankedSample) -> dict[str, Any]:
    """Return one ranked sample as plain values; a measure that is unknown is None."""
    return {
        "code": line.sample.code,
        "name": line.sample.name,
        "kind": line.sample.kind.value,
        "verdict": line.verdict.value,
        "score": round(line.score, 6),
        "stability": _plain(line.stability),
        "reasons": list(line.reasons),
        "measures": measures_report(line.measures),
    }


def measures_report(measures: Measures) -> dict[str, Any]:
    """Return the measures as plain values, numbers rounded to what they can bear."""
    return {name: _plain(value) for name, value in asdict(measures).items()}


def _plain(value: float | str) -> float | str | None:
    if isinstance(value, str):
        return value
    return round(value, 4) if isfinite(value) else None
