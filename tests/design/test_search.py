"""Whole-design search: exact, varied and physically possible."""

import json
from decimal import Decimal
from itertools import combinations, pairwise, product

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.colour import delta_e_2000
from framing_palette.design.found_designs import search_report
from framing_palette.design.search import search_designs
from framing_palette.design.search_problem import TWIN_DELTA_E
from framing_palette.errors import FieldError, UnknownSampleError
from framing_palette.ranking import HOUSE_RULE, ranking
from framing_palette.ranking.neighbours import neighbour_merit
from framing_palette.units import Length
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

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
    from framing_palette.design.search_places import (
        BROAD_FIELD,
        FIELD_CHROMA,
        FIELD_STRENGTH,
        STACK_PULL,
        USUAL_WIDTH_MM,
    )
    from framing_palette.ranking.ramps import rise

    total = 0.0
    widths = sum(USUAL_WIDTH_MM[kind] for kind in kinds)
    for layer in layers:
        alone = ranking(SEA_FINDINGS, [layer])
        total += float(alone.judgement.merit[0])
        total += STACK_PULL * USUAL_WIDTH_MM[layer.kind] / widths * float(alone.measures.pull[0])
        if layer.kind in BROAD_FIELD:
            total += FIELD_STRENGTH * float(rise(np.hypot(*layer.mean_lab[1:]), *FIELD_CHROMA))
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


@pytest.mark.parametrize("seed", range(3))
def test_two_mats_are_never_the_same_sample_and_the_best_two_is_that_of_brute_force(seed):
    kinds = (Kind.MAT, Kind.MAT, Kind.MOULDING)
    rack = _rack(seed=seed, count=5)
    found = search_designs(SEA_FINDINGS, rack, kinds, top=4).designs
    usable = [
        [
            line.sample
            for line in ranking(SEA_FINDINGS, rack, kinds=(kind,))
            if line.verdict != "clash"
        ]
        for kind in kinds
    ]
    every = [layers for layers in product(*usable) if layers[0] is not layers[1]]
    chosen = []
    for layers in sorted(every, key=lambda layers: -_merit(layers, kinds)):
        if not any(_are_twins(layers, other) for other in chosen):
            chosen.append(layers)
    assert [design.layers for design in found] == chosen[:4]


def _are_twins(one, other):
    """Whether fewer than two layers are seen to differ, the mats in either order."""
    orders = (one, (one[1], one[0], one[2]))
    return any(
        sum(
            float(delta_e_2000(a.mean_lab, b.mean_lab)) >= TWIN_DELTA_E
            for a, b in zip(order, other, strict=True)
        )
        < 2
        for order in orders
    )


def test_more_layers_of_a_kind_than_samples_are_refused():
    with pytest.raises(FieldError, match="layer mat is asked for 3 times with 2 to choose from"):
        search_designs(SEA_FINDINGS, _rack(count=2), (Kind.MAT,) * 3)


def test_a_clashing_mat_is_taken_where_the_others_are_too_few_for_the_layers():
    rack = [sample("loud", lch(55, 90, 130)), sample("quiet", SEA[0][0])]
    found = search_designs(SEA_FINDINGS, rack, (Kind.MAT, Kind.MAT), top=1)
    assert {layer.code for layer in found.designs[0].layers} == {"loud", "quiet"}


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


@pytest.mark.parametrize("seed", range(2))
def test_within_price_and_depth_the_best_design_is_that_of_brute_force(seed):
    rng = np.random.default_rng(seed)
    rack = [
        sample(
            s.code,
            s.mean_lab,
            kind=s.kind,
            price=Decimal(int(rng.integers(5, 60))),
            thickness=Length.mm_of(int(rng.integers(1, 9))),
            rabbet_depth=Length.mm_of(int(rng.integers(12, 24)))
            if s.kind is Kind.MOULDING
            else None,
        )
        for s in _rack(count=6, seed=seed)
    ]
    found = search_designs(SEA_FINDINGS, rack, KINDS, top=1, price_limit=Decimal(70))
    usable = [
        [x.sample for x in ranking(SEA_FINDINGS, rack, kinds=(kind,)) if x.verdict != "clash"]
        for kind in KINDS
    ]

    def is_possible(layers):
        stack = sum(layer.thickness.as_float_mm() for layer in layers[:-1])
        room = layers[-1].rabbet_depth.as_float_mm() - 8 - 3.175
        return stack <= room and sum(layer.price for layer in layers) <= 70

    every = list(product(*usable))
    possible = [layers for layers in every if is_possible(layers)]
    assert 0 < len(possible) < len(every)
    best = max(possible, key=lambda layers: _merit(layers, KINDS))
    assert found.designs[0].layers == best


def test_a_kept_sample_is_used_although_it_is_out_of_stock_and_clashes():
    loud = sample("loud", lch(55, 90, 130), kind=Kind.MAT, in_stock=False)
    found = search_designs(SEA_FINDINGS, [*_rack(), loud], KINDS, keep=("loud",))
    assert found.designs
    assert {design.layers[0].code for design in found.designs} == {"loud"}


@pytest.mark.parametrize(("rabbet_mm", "is_used"), [(None, False), (2, True)])
def test_a_fillet_too_narrow_to_be_held_is_not_used(rabbet_mm, is_used):
    narrow = sample(
        "narrow",
        SEA[1][0],
        kind=Kind.WOOD_FILLET,
        face=Length.mm_of(5),
        rabbet_width=None if rabbet_mm is None else Length.mm_of(rabbet_mm),
    )
    wide = sample("wide", lch(60, 20, 100), kind=Kind.WOOD_FILLET, face=Length.mm_of(14))
    found = search_designs(SEA_FINDINGS, [narrow, wide], (Kind.WOOD_FILLET,), top=2)
    assert (("narrow",) in [tuple(x.code for x in one.layers) for one in found.designs]) == is_used


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


@pytest.mark.parametrize("kinds", [(Kind.MOULDING, Kind.MAT), (Kind.MOULDING, Kind.MOULDING)])
def test_a_moulding_that_is_not_the_last_and_only_one_is_refused(kinds):
    with pytest.raises(FieldError, match=r"^layers is moulding, .* the moulding once and last"):
        search_designs(SEA_FINDINGS, _rack(), kinds)


def test_the_shown_designs_differ_where_it_is_seen():
    found = search_designs(SEA_FINDINGS, _rack(count=14, seed=7), KINDS, top=4)
    assert len(found.designs) == 4
    for one, two in combinations(found.designs, 2):
        apart = [
            float(delta_e_2000(a.mean_lab, b.mean_lab)) >= TWIN_DELTA_E
            for a, b in zip(one.layers, two.layers, strict=True)
        ]
        assert sum(apart) >= 2
        assert apart[0] or apart[2]  # the mat or the moulding, not the narrow fillet alone


@pytest.mark.parametrize("kinds", [(Kind.MAT,), (Kind.MAT, Kind.MOULDING), (Kind.WOOD_FILLET,)])
def test_designs_of_one_or_two_layers_are_found_too(kinds):
    rack = _rack(count=8, kinds=kinds)
    found = search_designs(SEA_FINDINGS, rack, kinds, top=2)
    assert all(len(design.layers) == len(kinds) for design in found.designs)


def test_two_layers_of_one_kind_take_two_kept_samples_in_either_order():
    kinds = (Kind.MAT, Kind.MAT, Kind.MOULDING)
    found = search_designs(SEA_FINDINGS, _rack(kinds=KINDS), kinds, keep=("mat-1", "mat-2"), top=1)
    assert {layer.code for layer in found.designs[0].layers[:2]} == {"mat-1", "mat-2"}


def test_where_every_sample_clashes_the_least_bad_is_offered_with_a_caution():
    loud = [sample(f"loud-{n}", lch(55, 90, 100 + 30 * n), kind=Kind.MAT) for n in range(3)]
    design = search_designs(SEA_FINDINGS, loud, (Kind.MAT,), top=1).designs[0]
    assert any("clashes" in caution for caution in design.cautions)


def test_unknown_depths_are_cautioned_about_and_known_ones_are_not():
    bare = search_designs(SEA_FINDINGS, _rack(count=4), KINDS, top=1).designs[0]
    assert sum("depth is not fully checked" in caution for caution in bare.cautions) == 3
    told = _rack(count=4, thickness=Length.mm_of(2), rabbet_depth=Length.mm_of(30))
    assert search_designs(SEA_FINDINGS, told, KINDS, top=1).designs[0].cautions == ()


def test_a_price_limit_leaves_out_what_has_no_price():
    rack = [
        sample(s.code, s.mean_lab, kind=s.kind, price=None if s.code.endswith("1") else Decimal(5))
        for s in _rack(count=4)
    ]
    found = search_designs(SEA_FINDINGS, rack, KINDS, price_limit=Decimal(100), top=5)
    assert all(layer.price is not None for design in found.designs for layer in design.layers)


def test_a_price_limit_without_any_price_names_the_layer():
    with pytest.raises(FieldError, match="mat"):
        search_designs(SEA_FINDINGS, _rack(count=3), KINDS, price_limit=Decimal(10))


def test_a_stepped_fillet_takes_less_depth_than_a_plain_one():
    def rack(step):
        return [
            sample("mat", SEA[0][0], thickness=Length.mm_of(2)),
            sample(
                "fillet",
                SEA[1][0],
                kind=Kind.WOOD_FILLET,
                thickness=Length.mm_of(8),
                rabbet_depth=step,
            ),
            sample("top", SEA[2][0], thickness=Length.mm_of(2)),
            sample("frame", SEA[2][0], kind=Kind.MOULDING, rabbet_depth=Length.mm_of(20)),
        ]

    kinds = (Kind.MAT, Kind.WOOD_FILLET, Kind.MAT, Kind.MOULDING)
    assert search_designs(SEA_FINDINGS, rack(Length.mm_of(5)), kinds).designs
    assert not search_designs(SEA_FINDINGS, rack(None), kinds).designs


def test_the_report_holds_what_the_command_line_promises():
    report = search_report(search_designs(SEA_FINDINGS, _rack(count=5), KINDS, top=2))
    assert report["schema"] == "framing-palette/search@1"
    assert report["candidates_considered"] > 0
    first = report["designs"][0]
    assert [layer["kind"] for layer in first["layers"]] == ["mat", "wrapped_fillet", "moulding"]
    assert 0 <= first["score"] <= 1
    assert 2 <= len(first["reasons"]) <= 4
    json.dumps(report, allow_nan=False)
