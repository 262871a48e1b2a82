"""Rankings: a whole catalogue in order, its words made only when a sample is looked at."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cached_property
from math import isnan, nan
from typing import overload

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.colour import plain_name
from framing_palette.errors import UnknownSampleError
from framing_palette.picture import Findings
from framing_palette.ranking.columns import SampleColumns, columns_of
from framing_palette.ranking.judging import JudgementColumns, judge
from framing_palette.ranking.measuring import MeasureColumns, measure
from framing_palette.ranking.places import BESIDE, EDGE, focus_words, target_words
from framing_palette.ranking.reasons import Facts, reasons
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.subjects import ColourShare, Subject, Target, subject_of
from framing_palette.ranking.verdicts import Measures, RankedSample
from framing_palette.ranking.warmth import nearest_white
from framing_palette.units import Length

WORTH_TELLING = 0.05  # a near miss below it is none
WHITE_SHOWN = 0.5  # less of it, and the picture's white is rather guessed than seen


@dataclass(frozen=True, eq=False)
class Ranking(Sequence[RankedSample]):
    """A ranked catalogue, best first; a sample's words are made when it is looked at.

    Parameters
    ----------
    findings
        The reading of the picture.
    columns, subject, measures, judgement
        What was judged and what came of it, in the catalogue's order.
    rule
        The rule that judged.
    order
        Catalogue positions, best first.
    touched
        How what the samples touch is spoken of.
    """

    findings: Findings
    columns: SampleColumns
    subject: Subject
    measures: MeasureColumns
    judgement: JudgementColumns
    rule: Rule
    order: NDArray[np.intp]
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
        return RankedSample(
            sample=self.columns.sample(index),
            verdict=self.judgement.verdict(index),
            score=float(self.judgement.score[index]),
            reasons=reasons(self._facts(index, found), self.rule),
            measures=found,
        )

    def row(self, code: str) -> int:
        """Return the position of a code in the catalogue.

        Raises
        ------
        UnknownSampleError
            When it is not among the ranked samples.
        """
        if code not in self._rows:
            raise UnknownSampleError(code, near=get_close_matches(code, self._rows, n=3))
        return self._rows[code]

    def has(self, code: str) -> bool:
        """Tell whether a code is among the ranked samples."""
        return code in self._rows

    def measures_at(self, index: int) -> Measures:
        """Return the measures of the sample at a position of the catalogue."""
        every = self.measures
        echoed = self.subject.targets[int(every.echo_target[index])]
        missed = self.subject.targets[int(every.near_miss_target[index])]
        is_missed = every.near_miss[index] >= WORTH_TELLING
        numbers = {name: _number(getattr(every, name)[index]) for name in _SAME_NAMES}
        return Measures(
            echo_region=echoed.region,
            echo_name=self._name(echoed),
            echo_share=echoed.share,
            near_miss_region=missed.region if is_missed else "",
            near_miss_name=self._name(missed) if is_missed else "",
            relation=float(self.judgement.relation[index]),
            foreign=float(self.judgement.foreign[index]),
            **numbers,
        )

    def _facts(self, index: int, found: Measures) -> Facts:
        every, columns, limits = self.measures, self.columns, self.rule.limits
        first = int(columns.start[index])
        own = first + int(every.echo_colour[index])
        echoed = self.subject.target_lab[int(every.echo_target[index])]
        strange = columns.lab[first + int(every.stray_colour[index])]
        palest = np.array(max(colour.lab for colour in columns.sample(index).colours))
        is_wrong_white = found.warmth >= limits.warmth_limit
        is_strange = max(found.stray, found.foreign) >= limits.clash
        has_parts = int(columns.counts[index]) > 1
        return Facts(
            measures=found,
            colour=plain_name(strange) if is_strange else "",
            part=float(columns.share[own]),
            part_colour=plain_name(columns.lab[own]) if has_parts else "",
            light_gap=float(columns.lab[own][0] - echoed[0]),
            chroma_gap=float(np.hypot(*columns.lab[own][1:]) - np.hypot(*echoed[1:])),
            cast=self._cast(palest) if is_wrong_white else (0.0, 0.0),
            is_white_shown=self.subject.whites.shown >= WHITE_SHOWN,
            pale_chroma=float(np.hypot(palest[1], palest[2])),
            pale_colour=plain_name(palest) if is_wrong_white else "",
            focus=self._focus,
            touched=self.touched,
            echo_place=self._place(int(every.echo_target[index])),
            kin_place=self._place(int(every.kin_target[index])),
            miss_place=self._place(int(every.near_miss_target[index])),
            softness=float(columns.softness[index]),
        )

    def _cast(self, palest: Float64Array) -> tuple[float, float]:
        """Return (a*, b*) of a pale colour less the nearest white's."""
        white = nearest_white(palest[None, :], self.subject, self.rule.limits)[0]
        return float(palest[1] - white[0]), float(palest[2] - white[1])

    def _place(self, target: int) -> str:
        if target not in self._places:
            named = self.subject.targets[target]
            self._places[target] = target_words(self.findings, named, self._name(named))
        return self._places[target]

    def _name(self, target: Target) -> str:
        return target.name or self._names[target.lab]

    @cached_property
    def _rows(self) -> dict[str, int]:
        return {self.columns.sample(index).code: index for index in range(len(self.columns))}

    @cached_property
    def _focus(self) -> str:
        return focus_words(self.findings)

    @cached_property
    def _places(self) -> dict[int, str]:
        return {}

    @cached_property
    def _names(self) -> dict[tuple[float, float, float], str]:
        nameless = {target.lab for target in self.subject.targets if not target.name}
        return {lab: plain_name(lab) for lab in sorted(nameless)}


_SAME_NAMES = (
    "echo_delta_e", "separation_delta_e", "separation_lightness", "pull", "harmony", "texture",
    "chroma_excess", "warmth", "echo", "settling", "separation_chroma", "separation_hue",
    "vividness",
    "brightness", "overpowering", "near_miss", "stray", "glitter", "softness", "kin", "foil",
    "least_harmony", "neutral_pull", "cover", "meaning", "repeated", "own_hue", "plain", "depth",
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
    columns = columns_of(catalogue, kinds)
    subject = subject_of(findings, touching)
    width_mm = None if width is None else width.as_float_mm()
    measures = measure(columns, subject, rule.limits, width_mm)
    judgement = judge(measures, rule)
    return Ranking(
        findings=findings,
        columns=columns,
        subject=subject,
        measures=measures,
        judgement=judgement,
        rule=rule,
        order=np.argsort(-judgement.score, kind="stable"),
        touched=BESIDE if touching else EDGE,
    )


def _number(value: float) -> float:
    """Return a plain number; one and the same nan, so that equal rankings compare equal."""
    return nan if isnan(value) else float(value)
