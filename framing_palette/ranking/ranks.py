"""Ranks: the samples of a catalogue in order, each with verdict, score and reasons."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import isnan, nan
from typing import overload

import numpy as np
from numpy.typing import NDArray

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.colour import plain_name
from framing_palette.picture import Findings, Role
from framing_palette.ranking.columns import SampleColumns, columns_of
from framing_palette.ranking.judging import JudgementColumns, judge
from framing_palette.ranking.measuring import MeasureColumns, measure
from framing_palette.ranking.reasons import Facts, reasons, region_words
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.subjects import ColourShare, Subject, Target, subject_of
from framing_palette.ranking.verdicts import Measures, RankedSample
from framing_palette.units import Length


@dataclass(frozen=True, eq=False)
class Ranking(Sequence[RankedSample]):
    """A ranked catalogue, best first; a sample's words are made when it is looked at.

    Parameters
    ----------
    columns, subject, measures, judgement
        What went in and what came of it, in the catalogue's order.
    rule
        The rule that judged.
    order
        Catalogue positions, best first.
    focus, touched
        How the focus and what the samples touch are spoken of.
    """

    columns: SampleColumns
    subject: Subject
    measures: MeasureColumns
    judgement: JudgementColumns
    rule: Rule
    order: NDArray[np.intp]
    focus: str
    touched: str

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.order)

    @overload
    def __getitem__(self, place: int) -> RankedSample: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[RankedSample, ...]: ...
    def __getitem__(self, place: int | slice) -> RankedSample | tuple[RankedSample, ...]:
        """Return the sample at a place, 0 the best, or those of a slice."""
        if isinstance(place, slice):
            return tuple(self.at(int(index)) for index in self.order[place])
        return self.at(int(self.order[place]))

    def __iter__(self) -> Iterator[RankedSample]:
        """Yield the samples, best first."""
        return (self.at(int(index)) for index in self.order)

    def at(self, index: int) -> RankedSample:
        """Return the ranked sample at a position of the catalogue."""
        found = self.measures_at(index)
        facts = self._facts(index, found)
        return RankedSample(
            sample=self.columns.samples[index],
            verdict=facts.verdict,
            score=float(self.judgement.score[index]),
            reasons=reasons(facts, self.rule),
            measures=found,
        )

    def measures_at(self, index: int) -> Measures:
        """Return the measures of the sample at a position of the catalogue."""
        every = self.measures
        echoed = self.subject.targets[int(every.echo_target[index])]
        missed = self.subject.targets[int(every.near_miss_target[index])]
        numbers = {name: _number(getattr(every, name)[index]) for name in _SAME_NAMES}
        return Measures(
            echo_region=echoed.region,
            echo_name=self._named(echoed),
            echo_share=echoed.share,
            near_miss_region=missed.region,
            near_miss_name=self._named(missed),
            **numbers,
        )

    def _facts(self, index: int, found: Measures) -> Facts:
        mean = self.columns.mean_lab[index]
        echoed = self.subject.target_lab[int(self.measures.echo_target[index])]
        return Facts(
            verdict=self.judgement.verdict(index),
            measures=found,
            colour=plain_name(mean) if found.stray >= self.rule.limits.clash else "",
            light_gap=float(mean[0] - echoed[0]),
            chroma_gap=float(np.hypot(*mean[1:]) - np.hypot(*echoed[1:])),
            warm_gap=float(mean[2] - self.subject.white_ab[1]),
            focus=self.focus,
            rim=self.touched,
        )

    def _named(self, target: Target) -> str:
        return target.name or self._names[target.lab]

    @cached_property
    def _names(self) -> dict[tuple[float, float, float], str]:
        nameless = {target.lab for target in self.subject.targets if not target.name}
        return {lab: plain_name(lab) for lab in sorted(nameless)}


_SAME_NAMES = (
    "echo_delta_e", "separation_delta_e", "separation_lightness", "pull", "harmony", "texture",
    "chroma_excess", "warmth", "echo", "separation_chroma", "separation_hue", "vividness",
    "brightness", "overpowering", "near_miss", "stray", "glitter", "softness",
)  # fmt: skip


def ranking(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample] | SampleColumns,
    *,
    kinds: Sequence[Kind] | None = None,
    width: Length | None = None,
    rule: Rule = HOUSE_RULE,
    touching: Sequence[ColourShare] | None = None,
) -> Ranking:
    """Return a catalogue ranked for a picture, its words made only when looked at.

    Parameters
    ----------
    findings
        The reading of the picture.
    catalogue
        A catalogue, samples, or their columns.
    kinds
        Only these kinds; all when None.
    width
        Visible width of the border; patterns coarser than it do not count.
    rule
        Limits and weights.
    touching
        Colours of a neighbouring layer, when the sample does not touch the picture.
    """
    columns = columns_of(catalogue)
    if kinds is not None:
        columns = columns_of([sample for sample in columns.samples if sample.kind in kinds])
    subject = subject_of(findings, touching)
    width_mm = None if width is None else width.as_float_mm()
    measures = measure(columns, subject, rule.limits, width_mm)
    judgement = judge(measures, rule)
    return Ranking(
        columns=columns,
        subject=subject,
        measures=measures,
        judgement=judgement,
        rule=rule,
        order=np.argsort(-judgement.score, kind="stable"),
        focus=_focus_words(findings),
        touched="the layer beside it" if touching else region_words("rim"),
    )


def rank(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample] | SampleColumns,
    *,
    kinds: Sequence[Kind] | None = None,
    width: Length | None = None,
    rule: Rule = HOUSE_RULE,
    touching: Sequence[ColourShare] | None = None,
    top: int | None = None,
) -> tuple[RankedSample, ...]:
    """Return the samples of a catalogue for a picture, best first.

    A clash never stands above a complement or a blend; equal scores keep the catalogue's order.
    Parameters are those of :func:`ranking`; ``top`` stops after so many.
    """
    return ranking(findings, catalogue, kinds=kinds, width=width, rule=rule, touching=touching)[
        :top
    ]


def _number(value: float) -> float:
    """Return a plain number; one and the same nan, so that equal rankings compare equal."""
    return nan if isnan(value) else float(value)


def _focus_words(findings: Findings) -> str:
    focus = findings.by_role(Role.FOCUS)
    return region_words(focus[0].name) if focus else region_words("whole")
