"""Best stacks against brute force: the same stacks, in the same order, whatever is asked."""

from itertools import pairwise, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.design.best_stacks import (
    Budget,
    StackProblem,
    best_stack,
    best_stacks,
    is_twin,
)

GROUPS = {
    "any layer": ((0,), (1,), (2,)),
    "first or last": ((0,), (2,)),
    "two layers": ((0, 1), (0, 2), (1, 2)),
}


def _problem(seed, *, sizes=(5, 4, 5), groups="any layer", budgets=0, tightness=0.45, alike=()):
    rng = np.random.default_rng(seed)
    place = [rng.integers(0, 3, size) for size in sizes]  # three looks a layer
    for group in alike:
        for layer in group:
            place[layer] = place[group[0]]

    def differs(layer, index):
        return place[layer] != place[layer][index]

    made = []
    for _ in range(budgets):
        costs = tuple(rng.integers(1, 20, size).astype(float) for size in sizes)
        limit = sum(float(np.quantile(cost, tightness)) for cost in costs)
        made.append(Budget(costs, limit))
    return StackProblem(
        single=tuple(rng.normal(size=size) for size in sizes),
        pair=tuple(rng.normal(size=pair) for pair in pairwise(sizes)),
        differs=differs,
        apart=GROUPS[groups],
        budgets=tuple(made),
        alike=alike,
    )


def _merit(problem, stack):
    alone = sum(single[index] for single, index in zip(problem.single, stack, strict=True))
    together = sum(
        pair[one, two] for pair, (one, two) in zip(problem.pair, pairwise(stack), strict=True)
    )
    return float(alone + together)


def _brute_force(problem, count, start=None):
    """All stacks, best first, those that fit, no twin of a better one."""
    ranges = [range(len(single)) for single in problem.single]
    every = sorted(product(*ranges), key=lambda stack: -_merit(problem, stack))
    chosen = []
    for stack in every:
        if start and not all(mask[index] for mask, index in zip(start, stack, strict=True)):
            continue
        if any(len({stack[layer] for layer in group}) < len(group) for group in problem.alike):
            continue
        fits = all(budget.excess(stack) <= 1e-9 for budget in problem.budgets)
        if fits and not any(is_twin(problem, old, stack) for old in chosen):
            chosen.append(stack)
    return chosen[:count]


def _everything(problem):
    return tuple(np.ones(len(single), dtype=bool) for single in problem.single)


@settings(max_examples=60)
@given(
    st.integers(0, 10_000),
    st.sampled_from(sorted(GROUPS)),
    st.integers(0, 2),
    st.sampled_from([0.2, 0.45, 0.7]),
)
def test_the_best_stacks_are_those_of_brute_force_in_the_same_order(
    seed, groups, budgets, tightness
):
    problem = _problem(seed, groups=groups, budgets=budgets, tightness=tightness)
    found = best_stacks(problem, 6, [_everything(problem)])
    assert [stack for _, stack in found] == _brute_force(problem, 6)
    assert [merit for merit, _ in found] == pytest.approx(
        [_merit(problem, stack) for _, stack in found]
    )


@settings(max_examples=60)
@given(
    st.integers(0, 10_000),
    st.sampled_from(["any layer", "two layers"]),
    st.integers(0, 1),
    st.sampled_from([((0, 1),), ((0, 2),), ((0, 1, 2),)]),
)
def test_with_layers_that_choose_alike_they_are_those_of_brute_force_too(
    seed, groups, budgets, alike
):
    problem = _problem(seed, sizes=(5, 5, 5), groups=groups, budgets=budgets, alike=alike)
    found = best_stacks(problem, 6, [_everything(problem)])
    assert [stack for _, stack in found] == _brute_force(problem, 6)


@given(st.integers(0, 10_000), st.permutations([0, 1, 2]))
def test_a_stack_and_itself_with_two_alike_layers_traded_are_twins(seed, order):
    problem = _problem(seed, sizes=(5, 5, 5), alike=((0, 1, 2),))
    stack = (0, 2, 4)
    assert is_twin(problem, stack, tuple(stack[layer] for layer in order))


def test_layers_that_do_not_choose_alike_are_not_traded():
    looks = np.arange(5)
    problem = _problem(0, sizes=(5, 5, 5))
    apart = StackProblem(
        problem.single, problem.pair, lambda _, index: looks != index, problem.apart
    )
    assert not is_twin(apart, (0, 2, 4), (2, 0, 4))


@given(st.integers(0, 10_000))
def test_several_ways_to_begin_are_searched_as_one(seed):
    problem = _problem(seed)
    one, two = _everything(problem), _everything(problem)
    one[0][:] = [True, False, False, False, False]
    two[2][:] = [False, False, False, True, True]
    found = best_stacks(problem, 1, [one, two])[0][1]
    best = max(
        _brute_force(problem, 1, one) + _brute_force(problem, 1, two),
        key=lambda stack: _merit(problem, stack),
    )
    assert found == best


def test_a_single_layer_is_its_best_candidate():
    problem = StackProblem((np.array([1.0, 3.0, 2.0]),), (), lambda *_: np.zeros(3, bool), ((0,),))
    assert best_stack(problem, (np.ones(3, bool),)) == (3.0, (1,))


def test_a_budget_that_nothing_meets_leaves_no_stack():
    problem = _problem(1)
    tight = Budget(tuple(np.ones(len(single)) for single in problem.single), 2.5)
    none = StackProblem(problem.single, problem.pair, problem.differs, problem.apart, (tight,))
    assert best_stacks(none, 3, [_everything(problem)]) == []


def test_a_mask_that_leaves_a_layer_empty_leaves_no_stack():
    problem = _problem(1)
    start = _everything(problem)
    start[1][:] = False
    assert best_stacks(problem, 3, [start]) == []
