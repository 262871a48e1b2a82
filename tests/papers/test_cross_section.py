"""The section lies as the depth adds up: same stack, same rabbet, every piece where it rests."""

import pytest
from hypothesis import HealthCheck, assume, given, settings

from framing_palette.catalogue import Kind
from framing_palette.design import check_cuttable
from framing_palette.papers.cross_section import LEAST_ART, cross_section
from tests.design.random_stacks import designs
from tests.papers.made_up import SAMPLES, all_designs, plain, rich

QUICK = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)  # fmt: skip


def section_of(design):
    return cross_section(check_cuttable(design, out_of_rabbet=True), SAMPLES)


def zs(section):
    return [z for piece in section.pieces for _, z in piece.outline]


@QUICK
@given(designs())
def test_the_stack_is_as_deep_as_the_depth_says(design):
    cuttable = check_cuttable(design, out_of_rabbet=True)
    section = cross_section(cuttable, {})
    in_rabbet = [
        z for piece in section.pieces if piece.name != "moulding" for _, z in piece.outline
    ]
    depth = cuttable.depth.stack.value.as_float_mm()
    # Art thinner than can be drawn is drawn at its least, which may stand out of a thin stack.
    slack = max(0.0, LEAST_ART - design.art.thickness.as_float_mm()) + 1e-6
    assert section.front - min(in_rabbet) == pytest.approx(depth, abs=slack)
    assert section.stack == pytest.approx(depth)


@QUICK
@given(designs(framed=True))
def test_the_rabbet_is_as_wide_and_deep_as_the_moulding_says(design):
    section = section_of(design)
    moulding = design.moulding
    assert section.front - section.back == pytest.approx(moulding.rabbet_depth.as_float_mm())
    assert section.wall - section.sight == pytest.approx(moulding.rabbet_width.as_float_mm())
    assert section.outside - section.sight == pytest.approx(moulding.face.as_float_mm())


@QUICK
@given(designs())
def test_openings_lie_apart_by_the_reveals_on_the_right(design):
    cuttable = check_cuttable(design, out_of_rabbet=True)
    section = cross_section(cuttable, {})
    assume(section.sights)
    for before, after, size in zip(
        section.sights, section.sights[1:], cuttable.sizes.layers, strict=False
    ):
        if cuttable.design.arrangement is None:
            assert after - before == pytest.approx(size.reveal.right.as_float_mm())
    assert section.sights[0] == pytest.approx(0.0)


def test_no_two_pieces_of_a_rich_stack_lie_in_each_other():
    section = section_of(rich())
    slabs = [
        (min(z for _, z in p.outline), max(z for _, z in p.outline), p)
        for p in section.pieces
        if p.stuff in ("backing", "core", "glass", "board")
    ]
    for one, (low, high, piece) in enumerate(slabs):
        for other_low, other_high, other in slabs[one + 1 :]:
            assert high <= other_low + 1e-9 or other_high <= low + 1e-9, (piece.name, other.name)


def test_the_mat_over_a_wood_fillet_rests_on_its_step():
    section = section_of(rich())
    by_number = {piece.number: piece for piece in section.pieces}
    fillet = min(z for _, z in by_number[4].outline)
    mat = min(z for _, z in by_number[5].outline)
    assert mat - fillet == pytest.approx(8 - 5)


def test_a_known_moulding_is_drawn_by_its_cross_section_and_an_unknown_one_says_so():
    known, unknown = section_of(plain()), cross_section(check_cuttable(plain()), {})
    assert not known.is_plain
    assert unknown.is_plain
    top = max(z for _, z in known.pieces[-1].outline)
    assert top - known.back == pytest.approx(28.0)


@pytest.mark.parametrize("name", all_designs())
def test_every_layer_and_board_is_in_the_section(name):
    design = all_designs()[name]
    section = section_of(design)
    numbers = {piece.number for piece in section.pieces} - {None}
    panes = sum(part is not None for part in (design.glazing, design.mount, design.backing))
    assert numbers == set(range(1, len(design.layers) + panes + 1 + (design.moulding is not None)))
    assert any(piece.stuff == "art" for piece in section.pieces)


def test_a_liner_holds_what_lies_in_it_behind_its_lip():
    design = all_designs()["lined mat"]
    section = section_of(design)
    liner = next(p for p in section.pieces if p.name == str(Kind.LINER))
    glazing = next(p for p in section.pieces if p.stuff == "glass")
    lip = section.front - 16 + 9
    assert max(z for _, z in glazing.outline) == pytest.approx(lip)
    assert max(z for _, z in liner.outline) == pytest.approx(section.front)
