"""Ranks: the samples of a catalogue in order, each with verdict, score, reasons and stability."""

from collections.abc import Sequence
from dataclasses import replace
from math import nan

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.picture import Findings
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.rankings import ranking
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.stability import DRAWS, with_stability
from framing_palette.ranking.subjects import ColourShare
from framing_palette.ranking.verdicts import RankedSample
from framing_palette.units import Length

STABLE_LINES = 1000  # further down nobody reads, and drawing for all would take seconds


def rank(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample] | SampleColumns,
    *,
    kinds: Sequence[Kind] | None = None,
    width: Length | None = None,
    rule: Rule = HOUSE_RULE,
    touching: Sequence[ColourShare] | None = None,
    top: int | None = None,
    draws: int = DRAWS,
) -> tuple[RankedSample, ...]:
    """Return the samples of a catalogue for a picture, best first.

    A clash never stands above a complement or a blend; equal scores keep the catalogue's order.

    Parameters
    ----------
    findings, catalogue, kinds, width, rule, touching
        As for :func:`ranking`.
    top
        Only so many; all when None.
    draws
        Errors drawn for the stability of each verdict. It is nan, not drawn, beyond the first
        thousand samples, and everywhere when ``draws`` is 0.
    """
    ranked = ranking(findings, catalogue, kinds=kinds, width=width, rule=rule, touching=touching)
    lines = ranked[:top]
    drawn = with_stability(ranked, lines[:STABLE_LINES], draws=draws) if draws else ()
    return drawn + tuple(replace(line, stability=nan) for line in lines[len(drawn) :])
