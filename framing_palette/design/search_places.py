"""Search places: who may stand in each layer of a design, with what merit.

Only the innermost layer touches the picture's edge; a broad field of colour weighs on a design, and
every layer adds to the stack's pull by its usual width.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.design.composing import usual_reveal
from framing_palette.errors import FieldError
from framing_palette.picture import Findings
from framing_palette.ranking import Ranking, Rule, ranking
from framing_palette.ranking.ramps import rise

USUAL_WIDTH_MM = {  # common practice, what shows of a layer
    Kind.MAT: 50.0,
    Kind.WRAPPED_FILLET: 6.0,
    Kind.WOOD_FILLET: 5.0,
    Kind.LINER: 25.0,
    Kind.MOULDING: 30.0,
}
STACK_PULL = -0.6  # merit for a stack whose pull is 1 everywhere
STRIPS = {Kind.WRAPPED_FILLET, Kind.WOOD_FILLET}
BROAD_FIELD = {Kind.MAT, Kind.LINER}
FIELD_CHROMA = (12.0, 45.0)  # C*ab between which a broad field of colour comes to weigh on a design
FIELD_STRENGTH = -1.2  # merit of a mat in full colour: a field is stronger than a line of it


@dataclass(frozen=True, slots=True, eq=False)
class Place:
    """The candidates for one layer: positions in a ranking, and their numbers."""

    kind: Kind
    ranked: Ranking
    index: NDArray[np.intp]
    single: Float64Array

    @property
    def lab(self) -> Float64Array:
        """Mean colours of the candidates, Lab D50, shape (n, 3)."""
        return self.ranked.columns.mean_lab[self.index]

    @property
    def samples(self) -> list[Sample]:
        """The candidates themselves."""
        return [self.ranked.columns.sample(int(place)) for place in self.index]

    def kept(self, mask: BoolArray) -> "Place":
        """Return the place with the candidates of a mask of shape (n,)."""
        return Place(self.kind, self.ranked, self.index[mask], self.single[mask])


def places_of(
    findings: Findings,
    catalogue: Catalogue | Sequence[Sample],
    kinds: Sequence[Kind],
    *,
    keep: set[str],
    exclude: set[str],
    rule: Rule,
) -> list[Place]:
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
        place = Place(kind, ranked, np.arange(len(merit)), merit)
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
    """Return who may be chosen: in stock, wide enough, not excluded, no clash.

    A clash is taken only where there is nothing else. No design uses a sample twice, so there must
    be as many as there are layers of the kind.
    """
    samples = [ranked.columns.sample(index) for index in range(len(ranked.columns))]
    listed = np.array(
        [
            sample.code not in exclude and sample.in_stock is not False and _can_show(sample)
            for sample in samples
        ],
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


def _can_show(sample: Sample) -> bool:
    """Tell whether anything of a strip is left to show once its hidden overlap is kept."""
    return sample.kind not in STRIPS or usual_reveal(sample).mm > 0


def priced(place: Place, price_of: Callable[[Sample], Decimal | None]) -> Place:
    """Return the place with the candidates whose price is known.

    Raises
    ------
    FieldError
        When there is none.
    """
    known = np.array([price_of(sample) is not None for sample in place.samples], dtype=np.bool_)
    if not known.any():
        wanted = "add prices to the catalogue or search without a price limit"
        raise FieldError(f"layer {place.kind}", got="without a priced sample", wanted=wanted)
    return place.kept(known)


def best_of(place: Place, count: int, kept: Sequence[Sample]) -> Place:
    """Return the most promising candidates, the kept ones always among them."""
    order = np.argsort(-place.single, kind="stable")[:count]
    mask = np.zeros(len(place.single), dtype=np.bool_)
    mask[order] = True
    return place.kept(mask | is_kept(place, kept))


def is_kept(place: Place, kept: Sequence[Sample]) -> BoolArray:
    """Return which candidates of a place must be in every design, shape (n,)."""
    codes = {sample.code for sample in kept}
    return np.array([sample.code in codes for sample in place.samples], dtype=np.bool_)
