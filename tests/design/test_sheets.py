"""Mats and panes out of sheets."""

from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.design import Art, Blank, Design, Shape, fall_outs, plan_sheets, sizes_of
from framing_palette.errors import CuttingError, FieldError
from framing_palette.units import ZERO
from tests.design.shop import art, inch, mat, mm, wrapped_fillet

SHEET = (inch(32), inch(40))


def box(placed):
    width, height = placed.size
    return placed.left, placed.top, placed.left + width, placed.top + height


def blanks_of(seed, count, *, may_turn=True):
    chance = Random(seed)  # noqa: S311  not for secrets
    return [
        Blank(f"mat {n}", *(inch(Fraction(chance.randint(16, 120), 4)) for _ in "wh"), may_turn)
        for n in range(count)
    ]


def parted(boxes):
    """Whether cuts from edge to edge free every blank."""
    if len(boxes) <= 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        for cut in sorted({b[high] for b in boxes}):
            before = [b for b in boxes if b[high] <= cut]
            after = [b for b in boxes if b[low] >= cut]
            if before and after and len(before) + len(after) == len(boxes):
                return parted(before) and parted(after)
    return False


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10**6), st.integers(1, 14), st.booleans(), st.sampled_from(["0", "1/8"]))
def test_every_blank_lies_once_on_a_sheet_apart_from_the_others_and_can_be_cut_free(
    seed, count, may_turn, gap
):
    blanks = blanks_of(seed, count, may_turn=may_turn)
    plan = plan_sheets(blanks, SHEET, gap=inch(gap))
    placed = [one for sheet in plan.sheets for one in sheet.placed]
    assert sorted(one.blank.name for one in placed) == sorted(blank.name for blank in blanks)
    assert may_turn or not any(one.is_turned for one in placed)
    for sheet in plan.sheets:
        boxes = [box(one) for one in sheet.placed]
        for left, top, right, bottom in boxes:
            assert ZERO <= left < right <= SHEET[0]
            assert ZERO <= top < bottom <= SHEET[1]
        for one, other in combinations(boxes, 2):
            across = max(one[0], other[0]) - min(one[2], other[2])
            down = max(one[1], other[1]) - min(one[3], other[3])
            assert max(across, down) >= inch(gap)
        assert parted(boxes)


def test_six_sixteens_by_twenty_and_seven_eights_by_ten_share_two_sheets():
    blanks = [Blank(f"large {n}", inch(16), inch(20)) for n in range(6)]
    blanks += [Blank(f"small {n}", inch(8), inch(10)) for n in range(7)]
    plan = plan_sheets(blanks, SHEET)
    assert len(plan.sheets) == 2
    assert plan.waste_share == 1 - Fraction(6 * 320 + 7 * 80, 2 * 1280)


def test_a_blank_as_large_as_the_sheet_fills_it_either_way_round():
    assert plan_sheets([Blank("whole", *SHEET)], SHEET).waste_share == 0
    assert plan_sheets([Blank("turned", *SHEET[::-1])], SHEET).sheets[0].placed[0].is_turned


def test_a_blank_larger_than_the_sheet_is_refused_by_name():
    with pytest.raises(
        CuttingError, match=r"wide needs 33 in by 41 in, but the stock sheet is 32 in"
    ):
        plan_sheets([Blank("wide", inch(33), inch(41))], SHEET)
    with pytest.raises(CuttingError, match="grained"):
        plan_sheets([Blank("grained", *SHEET[::-1], may_turn=False)], SHEET)


def test_impossible_numbers_are_refused():
    with pytest.raises(FieldError, match="sheet size"):
        plan_sheets([], (ZERO, inch(1)))
    with pytest.raises(FieldError, match="gap between blanks"):
        plan_sheets([], SHEET, gap=mm(-1))
    with pytest.raises(FieldError, match="a width"):
        plan_sheets([Blank("a", ZERO, inch(1))], SHEET)
    with pytest.raises(CuttingError, match="plan them in parts"):
        plan_sheets([Blank("a", inch(1), inch(1))] * 401, SHEET)


def test_no_blanks_need_no_sheet():
    assert plan_sheets([], SHEET).sheets == ()
    assert plan_sheets([], SHEET).waste_share == 0


def test_blanks_that_may_not_turn_are_laid_apart_from_those_that_may():
    plan = plan_sheets([Blank("a", inch(8), inch(10)), Blank("b", inch(8), inch(10), False)], SHEET)
    assert {one.blank.name for sheet in plan.sheets for one in sheet.placed} == {"a", "b"}


def test_what_falls_out_of_mats_is_offered_for_smaller_ones():
    design = Design(art(), (mat("1/4"), wrapped_fillet("1/4"), mat(borders="2")))
    pieces = fall_outs(sizes_of(design))
    assert [(p.name, p.width.figures("in")) for p in pieces] == [
        ("fall-out of layer 1", "15 3/4"), ("fall-out of layer 3", "16 3/4"),
    ]  # fmt: skip
    oval = replace(design, art=Art(inch(16), inch(20), overlap=inch("1/8"), shape=Shape.OVAL))
    assert fall_outs(sizes_of(oval)) == ()
