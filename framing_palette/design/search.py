"""Whole designs: the true best few of all layer stacks that a catalogue allows.

A design's merit is the sum of each layer against the picture, each pair of neighbours, and the
pull of the whole stack with every layer counted by its usual width. All three add up layer by
layer, so that the search is exact however many combinations there are (see ``best_stacks``).
"""

from collections.abc import Callable, Sequence
from decimal import Decimal
from math import prod

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.design.best_stacks import best_stacks
from framing_palette.design.found_designs import FoundDesign, SearchResult, found_design
from framing_palette.design.search_places import Place, best_of, is_kept, places_of, priced
from framing_palette.design.search_problem import ProblemMaker, starts_of
from framing_palette.errors import FieldError
from framing_palette.picture import Findings
from framing_palette.ranking import HOUSE_RULE, Rule
from framing_palette.ranking.neighbours import BEST_PAIR
from framing_palette.ranking.ramps import sigmoid
from framing_palette.units import Length

INSIDE = Length.mm_of(8)  # glazing, thin art and backing, common practice
FIRST_LOOK = 120  # candidates a layer in the look that finds a first good design


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
    places = places_of(
        findings, catalogue, kinds_in_order, keep={*keep}, exclude={*exclude}, rule=rule
    )
    considered = prod(len(place.index) for place in places)
    price = price_of or (lambda sample: sample.price)
    if price_limit is not None:
        places = [priced(place, price) for place in places]
    kept = [_sample(catalogue, code) for code in dict.fromkeys(keep)]
    maker = ProblemMaker(rule, inside, price, price_limit)
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


def _exact(
    places: list[Place], kept: Sequence[Sample], top: int, maker: ProblemMaker
) -> tuple[list[Place], list[tuple[float, tuple[int, ...]]]]:
    """Return the best stacks, with the candidates that their numbers point into.

    A first look among the most promising candidates gives a merit that must be reached. Whoever
    cannot reach it even with the best of company is left out, which changes nothing as long as all
    that is found does reach it; when it does not, the bar is lowered to what was found.
    """
    narrow = [best_of(place, FIRST_LOOK, kept) for place in places]
    found = best_stacks(maker.problem(narrow), top, starts_of(narrow, kept))
    while len(found) == top:
        bar = found[-1][0]
        narrow = _able(places, bar, kept)
        found = best_stacks(maker.problem(narrow), top, starts_of(narrow, kept))
        if len(found) == top and found[-1][0] >= bar - 1e-9:
            return narrow, found
    return places, best_stacks(maker.problem(places), top, starts_of(places, kept))


def _able(places: list[Place], bar: float, kept: Sequence[Sample]) -> list[Place]:
    """Return the candidates that can reach the bar with the best of company."""
    best = sum(float(place.single.max()) for place in places) + BEST_PAIR * (len(places) - 1)
    return [
        place.kept((place.single - place.single.max() + best >= bar - 1e-9) | is_kept(place, kept))
        for place in places
    ]


def _design(places: list[Place], merit: float, stack: tuple[int, ...]) -> FoundDesign:
    ranked = tuple(
        place.ranked.at(int(place.index[choice]))
        for place, choice in zip(places, stack, strict=True)
    )
    return found_design(ranked, merit=merit, score=float(sigmoid(merit / len(ranked))))


def _sample(catalogue: Catalogue | Sequence[Sample], code: str) -> Sample:
    listed = catalogue if isinstance(catalogue, Catalogue) else Catalogue(tuple(catalogue))
    return listed[code]
