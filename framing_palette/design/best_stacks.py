"""Best stacks: the true best few of all ways to pick one candidate for each layer.

Merit is a sum of one number a candidate and one a pair of neighbours, so dynamic programming finds
the best stack without looking at them all. Best-first branching then gives the next ones: whatever
a found stack forbids for its followers (to be its twin, to use a candidate twice, to be as thick,
to be as dear) is a statement that something must change in at least one layer, or in some few, and
each such way is followed in turn.
"""

import heapq
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations, permutations, product

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray, Float64Array

Stack = tuple[int, ...]
Masks = tuple[BoolArray, ...]
Tail = tuple[Float64Array, NDArray[np.intp]]
Tails = dict[tuple[int, tuple[bytes, ...]], Tail]

SLACK = 1e-9  # sums of floating-point lengths and prices are no finer


@dataclass(frozen=True, slots=True, eq=False)
class Budget:
    """A sum over the layers that must not exceed a limit: depth in the rabbet, or price.

    Parameters
    ----------
    costs
        One array a layer: what each candidate uses; negative for what it provides.
    limit
        The most that a stack may use.
    """

    costs: tuple[Float64Array, ...]
    limit: float

    def excess(self, stack: Stack) -> float:
        """Return by how much a stack exceeds the limit; zero or less when it fits."""
        used = sum(float(cost[index]) for cost, index in zip(self.costs, stack, strict=True))
        return used - self.limit

    def ways_within(self, stack: Stack) -> Iterator[dict[int, BoolArray]]:
        """Yield masks by layer, one set of which every stack that fits must obey.

        To save the excess in all, some layer must save its equal part of it.
        """
        saving = self.excess(stack) / len(stack)
        for layer, (cost, index) in enumerate(zip(self.costs, stack, strict=True)):
            yield {layer: cost <= cost[index] - saving + 1e-12}


@dataclass(frozen=True, slots=True, eq=False)
class StackProblem:
    """What to choose from.

    Parameters
    ----------
    single
        One array a layer: merit of each candidate.
    pair
        One matrix a neighbouring pair: merit of each candidate beside each of the next layer.
    differs
        ``differs(layer, index)`` masks the candidates of a layer that look different enough from
        one of them.
    apart
        Groups of layers: two stacks are apart when all layers of any one group differ, and twins
        otherwise.
    budgets
        Sums that must stay within limits.
    alike
        Groups of layers that choose from the same candidates, numbered alike. No two layers of a
        group may take the same candidate, and a stack with two of them traded is its own twin.
    """

    single: tuple[Float64Array, ...]
    pair: tuple[Float64Array, ...]
    differs: Callable[[int, int], BoolArray]
    apart: tuple[tuple[int, ...], ...]
    budgets: tuple[Budget, ...] = ()
    alike: tuple[tuple[int, ...], ...] = ()


def best_stacks(
    problem: StackProblem, count: int, starts: Sequence[Masks]
) -> list[tuple[float, Stack]]:
    """Return the best stacks with their merits, best first, no two of them twins.

    The first is the best of all that fit and use no candidate twice; each next one is the best of
    all those that are no twin of one before it.

    Parameters
    ----------
    problem
        Merits, twins and budgets.
    count
        How many, fewer when there are no more.
    starts
        One tuple of masks a way to begin (which candidates each layer may have).
    """
    heap: list[tuple[float, Stack, int, Masks]] = []
    seen: set[tuple[bytes, ...]] = set()
    tails: Tails = {}

    def push(masks: Masks) -> None:
        key = tuple(np.packbits(mask).tobytes() for mask in masks)
        if key not in seen and all(mask.any() for mask in masks):
            seen.add(key)
            merit, stack = best_stack(problem, masks, tails)
            heapq.heappush(heap, (-merit, stack, len(seen), masks))

    for masks in starts:
        push(masks)
    chosen: list[tuple[float, Stack]] = []
    while heap and len(chosen) < count:
        negative, stack, _, masks = heapq.heappop(heap)
        if _is_allowed(problem, stack) and not any(
            is_twin(problem, old, stack) for _, old in chosen
        ):
            chosen.append((-negative, stack))
        for way in _ways_on(problem, stack, chosen):
            push(tuple(mask & way.get(layer, True) for layer, mask in enumerate(masks)))
    return chosen


def best_stack(
    problem: StackProblem, masks: Masks, tails: Tails | None = None
) -> tuple[float, Stack]:
    """Return the best stack under the masks, budgets left aside, by dynamic programming.

    Parameters
    ----------
    problem
        Merits.
    masks
        Which candidates each layer may have, at least one.
    tails
        Filled with the best ways to go on from each layer, which later searches share.
    """
    known: Tails = {} if tails is None else tails
    value, _ = _tail(problem, masks, 0, known)
    stack = [int(value.argmax())]
    for layer in range(len(masks) - 1):
        stack.append(int(_tail(problem, masks, layer, known)[1][stack[-1]]))
    return float(value.max()), tuple(stack)


def _tail(problem: StackProblem, masks: Masks, layer: int, tails: Tails) -> Tail:
    """Return, for each candidate of a layer, the best merit from it on, and the next candidate."""
    key = (layer, tuple(np.packbits(mask).tobytes() for mask in masks[layer:]))
    if key not in tails:
        tails[key] = _new_tail(problem, masks, layer, tails)
    return tails[key]


def _new_tail(problem: StackProblem, masks: Masks, layer: int, tails: Tails) -> Tail:
    value = np.full(len(masks[layer]), -np.inf)
    step = np.zeros(len(masks[layer]), dtype=np.intp)
    rows = np.flatnonzero(masks[layer])
    value[rows] = problem.single[layer][rows]
    if layer + 1 < len(masks):
        beyond = _tail(problem, masks, layer + 1, tails)[0]
        columns = np.flatnonzero(np.isfinite(beyond))
        onward = problem.pair[layer][np.ix_(rows, columns)] + beyond[columns]
        best = onward.argmax(axis=1)
        step[rows] = columns[best]
        value[rows] += onward[np.arange(len(rows)), best]
    return value, step


def is_twin(problem: StackProblem, one: Stack, other: Stack) -> bool:
    """Tell whether two stacks look so alike that showing both would be no choice.

    Layers of one group of ``alike`` are compared in whatever order makes the stacks most alike.
    """
    return _twin_of(problem, one, other) is not None


def _twin_of(problem: StackProblem, one: Stack, other: Stack) -> Stack | None:
    """Return the first reordering of a stack that is not apart from another, if there is one."""
    for order in _orders(problem.alike, len(one)):
        traded = tuple(one[layer] for layer in order)
        differ = [
            bool(problem.differs(layer, index)[other[layer]]) for layer, index in enumerate(traded)
        ]
        if not any(all(differ[layer] for layer in group) for group in problem.apart):
            return traded
    return None


@cache
def _orders(alike: tuple[tuple[int, ...], ...], count: int) -> tuple[tuple[int, ...], ...]:
    """Return every order of the layers that trades places within the groups alone."""
    orders = []
    for traded in product(*(permutations(group) for group in alike)):
        order = list(range(count))
        for group, places in zip(alike, traded, strict=True):
            for layer, place in zip(group, places, strict=True):
                order[layer] = place
        orders.append(tuple(order))
    return tuple(orders)


def _repeated(problem: StackProblem, stack: Stack) -> tuple[int, int] | None:
    """Return the first two layers that share a candidate, if any do."""
    pairs = (pair for group in problem.alike for pair in combinations(group, 2))
    return next(((one, two) for one, two in pairs if stack[one] == stack[two]), None)


def _is_allowed(problem: StackProblem, stack: Stack) -> bool:
    fits = all(budget.excess(stack) <= SLACK for budget in problem.budgets)
    return fits and _repeated(problem, stack) is None


def _ways_on(
    problem: StackProblem, stack: Stack, chosen: Sequence[tuple[float, Stack]]
) -> Iterator[dict[int, BoolArray]]:
    """Yield masks by layer, one set of which every acceptable stack after this one must obey."""
    repeated = _repeated(problem, stack)
    if repeated is not None:
        yield from _ways_without_repeat(problem, repeated, stack[repeated[0]])
        return
    for budget in problem.budgets:
        if budget.excess(stack) > SLACK:
            yield from budget.ways_within(stack)
            return
    for _, old in chosen:
        twin = _twin_of(problem, old, stack)
        if twin is not None:
            for group in problem.apart:
                yield {layer: problem.differs(layer, twin[layer]) for layer in group}
            return


def _ways_without_repeat(
    problem: StackProblem, layers: tuple[int, int], index: int
) -> Iterator[dict[int, BoolArray]]:
    """Yield the first layer without the candidate, and the first with it but the second without."""
    is_it = np.arange(len(problem.single[layers[0]])) == index
    yield {layers[0]: ~is_it}
    yield {layers[0]: is_it, layers[1]: ~is_it}
