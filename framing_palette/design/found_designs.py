"""Found designs: what a search hands back, in words and as plain values."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from framing_palette.catalogue import Kind, Sample
from framing_palette.ranking import RankedSample, Verdict

SEARCH_SCHEMA = "framing-palette/search@1"


@dataclass(frozen=True, slots=True)
class FoundDesign:
    """One whole design, from the art outward.

    Parameters
    ----------
    layers
        The samples.
    ranked
        Each of them judged against the picture.
    score
        0..1, higher is better.
    merit
        The sum that was maximised.
    reasons
        Two to four sentences.
    cautions
        What could not be checked because the catalogue leaves it empty, and clashes that a kept
        sample or a small catalogue made unavoidable.
    """

    layers: tuple[Sample, ...]
    ranked: tuple[RankedSample, ...]
    score: float
    merit: float
    reasons: tuple[str, ...]
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SearchResult:
    """The best designs, best first, and how many combinations they are the best of."""

    designs: tuple[FoundDesign, ...]
    candidates_considered: int


def found_design(ranked: tuple[RankedSample, ...], *, merit: float, score: float) -> FoundDesign:
    """Return a found design with its words."""
    return FoundDesign(
        layers=tuple(layer.sample for layer in ranked),
        ranked=ranked,
        score=score,
        merit=merit,
        reasons=_reasons(ranked),
        cautions=tuple(_cautions(ranked)),
    )


def search_report(result: SearchResult) -> dict[str, Any]:
    """Return the object that ``search --json`` prints."""
    return {
        "schema": SEARCH_SCHEMA,
        "designs": [
            {
                "score": round(design.score, 6),
                "layers": [
                    {"kind": sample.kind.value, "code": sample.code} for sample in design.layers
                ],
                "reasons": list(design.reasons),
                "cautions": list(design.cautions),
            }
            for design in result.designs
        ],
        "candidates_considered": result.candidates_considered,
    }


def _reasons(ranked: tuple[RankedSample, ...]) -> tuple[str, ...]:
    """Return the leading reason of each layer, four at most."""
    own = [f"{layer.sample.name or layer.sample.code}: {layer.reasons[0]}" for layer in ranked]
    return tuple(dict.fromkeys(own))[:4]


def _cautions(ranked: tuple[RankedSample, ...]) -> Iterator[str]:
    for layer in ranked:
        sample = layer.sample
        moulding = sample.kind is Kind.MOULDING
        known = sample.rabbet_depth if moulding else sample.thickness
        if known is None:
            fact = "rabbet depth" if moulding else "thickness"
            yield f"{sample.code} has no {fact}, so the depth is not fully checked."
        if layer.verdict is Verdict.CLASH:
            yield f"{sample.code} clashes with the picture."
