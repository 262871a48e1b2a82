"""Whole-design search: exact, varied and physically possible."""

from decimal import Decimal
from itertools import pairwise, product

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.design.search import search_designs
from framing_palette.errors import FieldError, UnknownSampleError
from framing_palette.ranking import HOUSE_RULE, ranking
from framing_palette.ranking.neighbours import neighbour_merit
from framing_palette.units import Length
from tests.ranking.by_hand import BOAT, SEA, findings, sample

SEA_FINDINGS = findings(SEA, focus=BOAT, rim=SEA[:3])
KINDS = (Kind.MAT, Kind.WRAPPED_FILLET, Kind.MOULDING)


def _rack(count=9, seed=0, kinds=KINDS, **facts):
    rng = np.random.default_rng(seed)
    made = []
    for kind in dict.fromkeys(kinds):
        for number in range(count):
            lab = tuple(map(float, rng.uniform([10, -18, -18], [95, 18, 18])))
            made.append(sample(f"{kind}-{number}", lab, kind=kind, **facts))
    return made


def _merit(layers, kinds):
    """The merit of a stack, added up again from the public parts."""
    from framing_palette.design.search import STACK_PULL, USUAL_WIDTH_MM

    total = 0.0
    widths = sum(USUAL_WIDTH_MM[kind] for kind in kinds)
    for layer in layers:
        alone = ranking(SEA_FINDINGS, [layer])
        total += float(alone.judgement.merit[0])
        total += STACK_PULL * USUAL_WIDTH_MM[layer.kind] / widths * float(alone.measures.pull[0])
    for one, two in pairwise(layers):
        pair = neighbour_merit(np.array([one.mean_lab]), np.array([two.mean_lab]), HOUSE_RULE)
        total += float(pair[0, 0])
    return total


@pytest.mark.parametrize("seed", range(4))
def test_the_best_design_is_the_best_of_all_that_brute_force_finds(seed):
    rack = _rack(seed=seed, count=6)
    found = search_designs(SEA_FINDINGS, rack, KINDS, top=1).designs[0]
    usable = [
        [
            line.sample
            for line in ranking(SEA_FINDINGS, rack, kinds=(kind,))
            if line.verdict != "clash"
        ]
        for kind in KINDS
    ]
    best = max(product(*usable), key=lambda layers: _merit(layers, KINDS))
    assert found.merit == pytest.approx(_merit(best, KINDS), abs=1e-9)
    assert found.layers == best


def test_the_combinations_of_all_candidates_are_counted():
    rack = _rack(count=4, seed=2)
    every = [
        sum(line.verdict != "clash" for line in ranking(SEA_FINDINGS, rack, kinds=(kind,)))
        for kind in KINDS
    ]
    found = search_designs(SEA_FINDINGS, rack, KINDS)
    assert found.candidates_considered == np.prod(every)


def test_a_kept_sample_is_in_every_design_and_an_excluded_one_in_none():
    rack = _rack()
    found = search_designs(SEA_FINDINGS, rack, KINDS, keep=("mat-3",), exclude=("moulding-1",))
    codes = [{layer.code for layer in design.layers} for design in found.designs]
    assert codes
    assert all("mat-3" in one and "moulding-1" not in one for one in codes)


def test_a_kept_code_that_is_not_in_the_catalogue_is_named():
    with pytest.raises(UnknownSampleError, match="mat-99"):
        search_designs(SEA_FINDINGS, _rack(), KINDS, keep=("mat-99",))


def test_more_kept_samples_than_layers_of_their_kind_are_refused():
    with pytest.raises(FieldError, match="mat"):
        search_designs(SEA_FINDINGS, _rack(), KINDS, keep=("mat-1", "mat-2"))


def test_no_design_costs_more_than_the_limit():
    rng = np.random.default_rng(1)
    rack = [
        sample(s.code, s.mean_lab, kind=s.kind, price=Decimal(int(rng.integers(5, 60))))
        for s in _rack(count=12)
    ]
    found = search_designs(SEA_FINDINGS, rack, KINDS, price_limit=Decimal(40), top=5)
    assert found.designs
    assert all(sum(layer.price for layer in design.layers) <= 40 for design in found.designs)


def test_no_design_is_deeper_than_its_rabbet():
    rng = np.random.default_rng(5)
    rack = [
        sample(
            s.code,
            s.mean_lab,
            kind=s.kind,
            thickness=Length.mm_of(int(rng.integers(1, 9))),
            rabbet_depth=Length.mm_of(int(rng.integers(10, 24)))
            if s.kind is Kind.MOULDING
            else None,
        )
        for s in _rack(count=12)
    ]
    found = search_designs(SEA_FINDINGS, rack, KINDS, top=5, inside=Length.mm_of(8))
    assert found.designs
    for design in found.designs:
        stack = sum(layer.thickness.as_float_mm() for layer in design.layers[:-1])
        assert stack + 8 + 3.175 <= design.layers[-1].rabbet_depth.as_float_mm() + 1e-9


def test_samples_out_of_stock_are_not_used():
    rack = [sample(s.code, s.mean_lab, kind=s.kind, in_stock=s.code.endswith("0")) for s in _rack()]
    found = search_designs(SEA_FINDINGS, rack, KINDS)
    assert {layer.code[-1] for design in found.designs for layer in design.layers} == {"0"}


def test_a_layer_without_any_sample_is_named():
    with pytest.raises(FieldError, match="liner"):
        search_designs(SEA_FINDINGS, _rack(), (Kind.LINER, Kind.MOULDING))


def test_a_search_for_no_layers_is_refused():
    with pytest.raises(FieldError, match="layers"):
        search_designs(SEA_FINDINGS, _rack(), ())
