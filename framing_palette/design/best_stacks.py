"""Best stacks: the true best few of all ways to pick one candidate for each layer.

Merit is a sum of one number a candidate and one a pair of neighbours, so dynamic programming finds
the best stack without looking at them all. Best-first branching then gives the next ones: whatever
a found stack forbids for its followers (to be its twin, to be as thick, to be as dear) is a
statement that in at least one layer something must change, and each layer in turn is held to it.
"""

import heapq
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array

Stack = tuple[int, ...]
Masks = tuple[BoolArray, ...]


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

    def masks_without(self, stack: Stack) -> Iterator[tuple[int, BoolArray]]:
        """Yield layer and mask, one of which every stack that fits must obey.

        To save the excess in all, some layer must save its equal part of it.
        """
        saving = self.excess(stack) / len(stack)
        for layer, (cost, index) in enumerate(zip(self.costs, stack, strict=True)):
            yield layer, cost <= cost[index] - saving + 1e-12


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
        one of them; a stack is the twin of another when no layer differs.
    budgets
        Sums that must stay within limits.
    """

    single: tuple[Float64Array, ...]
    pair: tuple[Float64Array, ...]
    differs: Callable[[int, int], BoolArray]
    budgets: tuple[Budget, ...] = ()


def best_stacks(
    problem: StackProblem, count: int, starts: Sequence[Masks]
) -> list[tuple[float, Stack]]:
    """Return the best stacks with their merits, best first, no two of them twins.

    The first is the best of all that fit; each next one is the best of all that fit and are no
    twin of one before it.

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

    def push(masks: Masks) -> None:
        key = tuple(np.packbits(mask).tobytes() for mask in masks)
        if key not in seen and all(mask.any() for mask in masks):
            seen.add(key)
            merit, stack = best_stack(problem, masks)
            heapq.heappush(heap, (-merit, stack, len(seen), masks))

    for masks in starts:
        push(masks)
    chosen: list[tuple[float, Stack]] = []
    while heap and len(chosen) < count:
        negative, stack, _, masks = heapq.heappop(heap)
        if not any(budget.excess(stack) > 1e-9 for budget in problem.budgets) and not any(
            is_twin(problem, old, stack) for _, old in chosen
        ):
            chosen.append((-negative, stack))
        for layer, mask in _ways_on(problem, stack, chosen):
            push((*masks[:layer], masks[layer] & mask, *masks[layer + 1 :]))
    return chosen


def best_stack(problem: StackProblem, masks: Masks) -> tuple[float, Stack]:
    """Return the best stack under the masks, budgets left aside, by dynamic programming."""
    value = np.where(masks[-1], problem.single[-1], -np.inf)
    follow = []
    for layer in range(len(masks) - 2, -1, -1):
        rows, columns = np.flatnonzero(masks[layer]), np.flatnonzero(np.isfinite(value))
        beyond = problem.pair[layer][np.ix_(rows, columns)] + value[columns]
        best = beyond.argmax(axis=1)
        step = np.zeros(len(masks[layer]), dtype=np.intp)
        step[rows] = columns[best]
        follow.append(step)
        value = np.full(len(masks[layer]), -np.inf)
        value[rows] = problem.single[layer][rows] + beyond[np.arange(len(rows)), best]
    stack = [int(value.argmax())]
    for step in reversed(follow):
        stack.append(int(step[stack[-1]]))
    return float(value.max()), tuple(stack)


def is_twin(problem: StackProblem, one: Stack, other: Stack) -> bool:
    """Tell whether two stacks look alike in every layer."""
    return not any(problem.differs(layer, index)[other[layer]] for layer, index in enumerate(one))


def _ways_on(
    problem: StackProblem, stack: Stack, chosen: Sequence[tuple[float, Stack]]
) -> Iterator[tuple[int, BoolArray]]:
    """Yield layer and mask, one of which every acceptable stack after this one must obey."""
    for budget in problem.budgets:
        if budget.excess(stack) > 1e-9:
            yield from budget.masks_without(stack)
            return
    for _, old in chosen:
        if is_twin(problem, old, stack):
            for layer, index in enumerate(old):
                yield layer, problem.differs(layer, index)
            return
