"""Whole designs: the true best few of all layer stacks that a catalogue allows.

A design's merit is the sum of each layer against the picture, each pair of neighbours, and the
pull of the whole stack with every layer counted by its usual width. All three add up layer by
layer, so that the search is exact however many combinations there are (see ``best_stacks``).
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from itertools import pairwise
from math import prod

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.colour import delta_e_2000
from framing_palette.design.best_stacks import Budget, Masks, StackProblem, best_stacks
from framing_palette.design.found_designs import FoundDesign, SearchResult, found_design
from framing_palette.design.layers import DEFAULT_CLEARANCE
from framing_palette.errors import FieldError
from framing_palette.picture import Findings
from framing_palette.ranking import HOUSE_RULE, Ranking, Rule, ranking
from framing_palette.ranking.neighbours import BEST_PAIR, neighbour_merit
from framing_palette.ranking.ramps import rise, sigmoid
from framing_palette.units import Length

USUAL_WIDTH_MM = {  # common practice, what shows of a layer
    Kind.MAT: 50.0,
    Kind.WRAPPED_FILLET: 6.0,
    Kind.WOOD_FILLET: 5.0,
    Kind.LINER: 25.0,
    Kind.MOULDING: 30.0,
}
BROAD = {Kind.MAT, Kind.LINER, Kind.MOULDING}  # what is seen of a design across the counter
TWIN_DELTA_E = 10.0
STACK_PULL = -0.6  # merit for a stack whose pull is 1 everywhere
BROAD_FIELD = {Kind.MAT, Kind.LINER}
FIELD_CHROMA = (12.0, 45.0)  # C*ab between which a broad field of colour comes to weigh on a design
FIELD_STRENGTH = -1.2  # merit of a mat in full colour: a field is stronger than a line of it
INSIDE = Length.mm_of(8)  # glazing, thin art and backing, common practice
FIRST_LOOK = 120  # candidates a layer in the look that finds a first good design


@dataclass(frozen=True, slots=True, eq=False)
class _Place:
    """The candidates for one layer: positions in a ranking, and their numbers."""

    kind: Kind
    ranked: Ranking
    index: "np.typing.NDArray[np.intp]"
    single: Float64Array

    @property
    def lab(self) -> Float64Array:
        return self.ranked.columns.mean_lab[self.index]

    @property
    def samples(self) -> list[Sample]:
        return [self.ranked.columns.sample(int(place)) for place in self.index]

    def kept(self, mask: BoolArray) -> "_Place":
        return _Place(self.kind, self.ranked, self.index[mask], self.single[mask])


def search_designs(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample],
    kinds_in_order: Sequence[Kind],
    *,
    top: int = 3,
    keep: Sequence[str] = (),
    exclude: Sequence[str] = (),
    price_limit: Decimal | None = None,
    price_of: Callable[[Sample], Decimal | None] | None = None,
    inside: Length = INSIDE,
    rule: Rule = HOUSE_RULE,
) -> SearchResult:
    """Return the best whole designs, none the near twin of a better one.

    No design uses a sample twice, and two that trade the places of layers of one kind are twins.

    Parameters
    ----------
    findings
        The reading of the picture.
    catalogue
        Where the samples come from; those out of stock are left out unless kept.
    kinds_in_order
        From the art outward.
    top
        How many designs.
    keep, exclude
        Codes that every design must have, and codes that none may have.
    price_limit
        The most that the layers may cost together; samples without a price are then left out.
    price_of
        What a sample costs in this design; its listed price when None.
    inside
        Depth of all that lies in the rabbet besides the layers.
    rule
        Limits and weights.

    Raises
    ------
    FieldError
        When no layer is asked for, or a moulding before the last, or a layer has too few
        candidates, or the kept ones find no place.
    UnknownSampleError
        When a kept code is not in the catalogue.
    """
    _check_order(kinds_in_order)
    places = _places(
        findings, catalogue, kinds_in_order, keep={*keep}, exclude={*exclude}, rule=rule
    )
    considered = prod(len(place.index) for place in places)
    price = price_of or (lambda sample: sample.price)
    if price_limit is not None:
        places = [_priced(place, price) for place in places]
    kept = [_sample(catalogue, code) for code in dict.fromkeys(keep)]
    maker = _ProblemMaker(rule, inside, price, price_limit)
    narrow, found = _exact(places, kept, top, maker)
    designs = tuple(_design(narrow, merit, stack) for merit, stack in found)
    return SearchResult(designs, considered)


def _check_order(kinds: Sequence[Kind]) -> None:
    """Refuse what no frame is built of."""
    if not kinds:
        raise FieldError("layers", got="empty", wanted="name at least one kind, such as mat")
    if Kind.MOULDING in kinds[:-1]:
        wanted = "name from the art outward, the moulding once and last"
        raise FieldError("layers", got=", ".join(kinds), wanted=wanted)


def _places(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample],
    kinds: Sequence[Kind],
    *,
    keep: set[str],
    exclude: set[str],
    rule: Rule,
) -> list[_Place]:
    """Return the candidates of every layer; only the innermost touches the picture's edge."""
    by_kind: Mapping[Kind, Ranking] = {
        kind: ranking(findings, catalogue, kinds=(kind,), rule=rule)
        for kind in dict.fromkeys(kinds)
    }
    widths = sum(USUAL_WIDTH_MM[kind] for kind in kinds)
    places = []
    for kind in kinds:
        ranked = by_kind[kind]
        pull = STACK_PULL * USUAL_WIDTH_MM[kind] / widths * ranked.measures.pull
        merit = ranked.judgement.merit + pull + _field(kind, ranked)
        place = _Place(kind, ranked, np.arange(len(merit)), merit)
        usable = _usable(ranked, kind, keep, exclude, kinds.count(kind))
        places.append(place.kept(usable))
    return places


def _field(kind: Kind, ranked: Ranking) -> Float64Array:
    """Return what a layer loses for being a broad field of colour, common practice."""
    if kind not in BROAD_FIELD:
        return np.zeros(len(ranked.columns))
    mean = ranked.columns.mean_lab
    return FIELD_STRENGTH * rise(np.hypot(mean[:, 1], mean[:, 2]), *FIELD_CHROMA)


def _usable(
    ranked: Ranking, kind: Kind, keep: set[str], exclude: set[str], layers: int
) -> BoolArray:
    """Return who may be chosen: in stock, not excluded, no clash unless there is nothing else.

    No design uses a sample twice, so there must be as many as there are layers of the kind.
    """
    samples = [ranked.columns.sample(index) for index in range(len(ranked.columns))]
    listed = np.array(
        [sample.code not in exclude and sample.in_stock is not False for sample in samples],
        dtype=np.bool_,
    )
    kept = np.array([sample.code in keep for sample in samples], dtype=np.bool_)
    suits = listed & ~ranked.judgement.clash
    usable = kept | suits
    if usable.sum() < layers or not suits.any():
        usable = kept | listed
    if not usable.any():
        wanted = "add such samples to the catalogue or leave the layer out"
        raise FieldError(f"layer {kind}", got="without a sample to choose from", wanted=wanted)
    if usable.sum() < layers:
        got = f"asked for {layers} times with {usable.sum()} to choose from"
        wanted = "no sample is used twice, so add such samples to the catalogue or ask for fewer"
        raise FieldError(f"layer {kind}", got=got, wanted=wanted)
    return usable


def _exact(
    places: list[_Place], kept: Sequence[Sample], top: int, maker: "_ProblemMaker"
) -> tuple[list[_Place], list[tuple[float, tuple[int, ...]]]]:
    """Return the best stacks, with the candidates that their numbers point into.

    A first look among the most promising candidates gives a merit that must be reached. Whoever
    cannot reach it even with the best of company is left out, which changes nothing as long as all
    that is found does reach it; when it does not, the bar is lowered to what was found.
    """
    narrow = [_best_of(place, FIRST_LOOK, kept) for place in places]
    found = best_stacks(maker.problem(narrow), top, _starts(narrow, kept))
    while len(found) == top:
        bar = found[-1][0]
        narrow = _able(places, bar, kept)
        found = best_stacks(maker.problem(narrow), top, _starts(narrow, kept))
        if len(found) == top and found[-1][0] >= bar - 1e-9:
            return narrow, found
    return places, best_stacks(maker.problem(places), top, _starts(places, kept))


def _able(places: list[_Place], bar: float, kept: Sequence[Sample]) -> list[_Place]:
    """Return the candidates that can reach the bar with the best of company."""
    best = sum(float(place.single.max()) for place in places) + BEST_PAIR * (len(places) - 1)
    return [
        place.kept((place.single - place.single.max() + best >= bar - 1e-9) | _is_kept(place, kept))
        for place in places
    ]


def _starts(places: list[_Place], kept: Sequence[Sample]) -> list[Masks]:
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


def _only(place: _Place, sample: Sample) -> BoolArray:
    return np.array([other.code == sample.code for other in place.samples], dtype=np.bool_)


@dataclass(frozen=True, slots=True)
class _ProblemMaker:
    """Makes the numbers of a search out of candidates."""

    rule: Rule
    inside: Length
    price_of: Callable[[Sample], Decimal | None]
    price_limit: Decimal | None

    def problem(self, places: list[_Place]) -> StackProblem:
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

    def _budgets(self, places: list[_Place]) -> Iterator[Budget]:
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

    def _depths(self, place: _Place, *, last: bool) -> Float64Array:
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


def _design(places: list[_Place], merit: float, stack: tuple[int, ...]) -> FoundDesign:
    ranked = tuple(
        place.ranked.at(int(place.index[choice]))
        for place, choice in zip(places, stack, strict=True)
    )
    return found_design(ranked, merit=merit, score=float(sigmoid(merit / len(ranked))))


def _priced(place: _Place, price_of: Callable[[Sample], Decimal | None]) -> _Place:
    known = np.array([price_of(sample) is not None for sample in place.samples], dtype=np.bool_)
    if not known.any():
        wanted = "add prices to the catalogue or search without a price limit"
        raise FieldError(f"layer {place.kind}", got="without a priced sample", wanted=wanted)
    return place.kept(known)


def _sample(catalogue: Catalogue | Sequence[Sample], code: str) -> Sample:
    listed = catalogue if isinstance(catalogue, Catalogue) else Catalogue(tuple(catalogue))
    return listed[code]


def _best_of(place: _Place, count: int, kept: Sequence[Sample]) -> _Place:
    """Return the most promising candidates, the kept ones always among them."""
    order = np.argsort(-place.single, kind="stable")[:count]
    mask = np.zeros(len(place.single), dtype=np.bool_)
    mask[order] = True
    return place.kept(mask | _is_kept(place, kept))


def _is_kept(place: _Place, kept: Sequence[Sample]) -> BoolArray:
    codes = {sample.code for sample in kept}
    return np.array([sample.code in codes for sample in place.samples], dtype=np.bool_)
