"""What the shelf lists of a ranking: light enough that ten thousand of them are made at once."""

from dataclasses import dataclass

from framing_palette.catalogue import Sample
from framing_palette.ranking import Ranking, Verdict


@dataclass(frozen=True, slots=True)
class Listed:
    """A sample of the list by its position in the ranking; its words are made when it is seen."""

    sample: Sample
    position: int
    verdict: Verdict


def listed_of(ranked: Ranking) -> tuple[Listed, ...]:
    """Return all samples of a ranking, best first."""
    samples, judged, order = ranked.columns.samples, ranked.judgement, ranked.order
    # A ranking of some kinds only has rows of its own; each knows its sample's place in the rack.
    places = ranked.columns.place[order].tolist()
    columns = (order.tolist(), judged.clash[order].tolist(), judged.blend[order].tolist())
    return tuple(
        Listed(samples[place], row, _verdict(is_clash=clash, is_blend=blend))
        for place, row, clash, blend in zip(places, *columns, strict=True)
    )


def _verdict(*, is_clash: bool, is_blend: bool) -> Verdict:
    if is_clash:
        return Verdict.CLASH
    return Verdict.BLEND if is_blend else Verdict.COMPLEMENT
