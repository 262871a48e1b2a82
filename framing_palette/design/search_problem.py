"""Search problem: the numbers of a search, and what makes two designs a choice or impossible."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from itertools import pairwise

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Kind, Sample
from framing_palette.colour import delta_e_2000
from framing_palette.design.best_stacks import Budget, Masks, StackProblem
from framing_palette.design.layers import DEFAULT_CLEARANCE
from framing_palette.design.search_places import Place
from framing_palette.errors import FieldError
from framing_palette.ranking import Rule
from framing_palette.ranking.neighbours import neighbour_merit
from framing_palette.units import Length

BROAD = {Kind.MAT, Kind.LINER, Kind.MOULDING}  # what is seen of a design across the counter
TWIN_DELTA_E = 10.0


@dataclass(frozen=True, slots=True)
class ProblemMaker:
    """Makes the numbers of a search out of candidates."""

    rule: Rule
    inside: Length
    price_of: Callable[[Sample], Decimal | None]
    price_limit: Decimal | None

    def problem(self, places: list[Place]) -> StackProblem:
        """Return the merits, twins and budgets of some candidates."""
        labs = [place.lab for place in places]

        @cache
        def differs(layer: int, index: int) -> BoolArray:
            return np.asarray(delta_e_2000(labs[layer], labs[layer][index]) >= TWIN_DELTA_E)

        return StackProblem(
            single=tuple(place.single for place in places),
            pair=tuple(neighbour_merit(one, two, self.rule) for one, two in pairwise(labs)),
            differs=differs,
            apart=_apart([place.kind for place in places]),
            budgets=tuple(self._budgets(places)),
            alike=_alike([place.kind for place in places]),
        )

    def _budgets(self, places: list[Place]) -> Iterator[Budget]:
        if places[-1].kind is Kind.MOULDING:
            depth = [self._depths(place, last=place is places[-2]) for place in places[:-1]]
            spare = np.array([_rabbet_mm(sample) for sample in places[-1].samples])
            needed = (self.inside + DEFAULT_CLEARANCE).as_float_mm()
            yield Budget((*depth, -spare), -needed)
        if self.price_limit is not None:
            prices = [
                np.array([float(self.price_of(sample) or 0) for sample in place.samples])
                for place in places
            ]
            yield Budget(tuple(prices), float(self.price_limit))

    def _depths(self, place: Place, *, last: bool) -> Float64Array:
        return np.array([_depth_mm(sample, last=last) for sample in place.samples])


def _apart(kinds: Sequence[Kind]) -> tuple[tuple[int, ...], ...]:
    """Return which layers must differ for two designs to be a choice: a broad one and one more."""
    layers = range(len(kinds))
    broad = [layer for layer in layers if kinds[layer] in BROAD] or list(layers)
    if len(kinds) < 3:
        return tuple((layer,) for layer in broad)
    pairs = {(min(one, two), max(one, two)) for one in broad for two in layers if one != two}
    return tuple(sorted(pairs))


def _alike(kinds: Sequence[Kind]) -> tuple[tuple[int, ...], ...]:
    """Return the layers of each kind that there is more than one of."""
    groups = [
        tuple(layer for layer, other in enumerate(kinds) if other is kind)
        for kind in dict.fromkeys(kinds)
    ]
    return tuple(group for group in groups if len(group) > 1)


def _depth_mm(sample: Sample, *, last: bool) -> float:
    """Return what a layer adds to the stack; unknown counts as nothing and is cautioned about."""
    thickness = 0.0 if sample.thickness is None else sample.thickness.as_float_mm()
    steps = sample.kind in (Kind.WOOD_FILLET, Kind.LINER) and not last
    if steps and sample.rabbet_depth is not None:
        return max(0.0, thickness - sample.rabbet_depth.as_float_mm())
    return thickness


def _rabbet_mm(sample: Sample) -> float:
    return 1e6 if sample.rabbet_depth is None else sample.rabbet_depth.as_float_mm()


def starts_of(places: list[Place], kept: Sequence[Sample]) -> list[Masks]:
    """Return the ways to give every kept sample a layer of its kind."""
    everything: Masks = tuple(np.ones(len(place.index), dtype=np.bool_) for place in places)
    starts: list[tuple[set[int], Masks]] = [(set(), everything)]
    for sample in kept:
        starts = [
            ({*taken, layer}, (*masks[:layer], _only(place, sample), *masks[layer + 1 :]))
            for taken, masks in starts
            for layer, place in enumerate(places)
            if layer not in taken and place.kind is sample.kind
        ]
        if not starts:
            wanted = f"keep no more {sample.kind} samples than there are such layers"
            raise FieldError(f"kept sample {sample.code}", got="without a layer", wanted=wanted)
    return [masks for _, masks in starts]


def _only(place: Place, sample: Sample) -> BoolArray:
    return np.array([other.code == sample.code for other in place.samples], dtype=np.bool_)
