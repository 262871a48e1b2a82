"""Rails out of sticks."""

from fractions import Fraction
from random import Random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from framing_palette.design import Piece, plan_sticks, sizes_of
from framing_palette.design.sticks import DEFAULT_KERF, MITRE_FACTOR
from framing_palette.errors import CuttingError, FieldError
from framing_palette.units import ZERO, Length, total
from tests.design.random_stacks import lengths
from tests.design.shop import double_mat, inch, mm

STICK = mm(2740)
pieces_up_to = lambda most: st.lists(lengths(200, 1400), min_size=1, max_size=most).map(  # noqa: E731
    lambda sizes: [Piece(f"rail {place}", size) for place, size in enumerate(sizes)]
)


def check_plan(plan, pieces, stock):
    """Every piece is cut once, and every stick holds its pieces and their kerfs."""
    cut = [piece for stick in plan.sticks for piece in stick.pieces]
    assert sorted(piece.name for piece in cut) == sorted(piece.name for piece in pieces)
    for stick in plan.sticks:
        assert stick.stick in stock
        used = total(piece.length + plan.kerf_along for piece in stick.pieces)
        assert stick.left_over == stick.stick - used >= ZERO
    assert len(plan.sticks) >= plan.fewest
    assert plan.bought == total(stick.stick for stick in plan.sticks)
    assert plan.used + plan.bought * plan.waste_share == plan.bought


def partitions(items):
    """Every way of putting items into groups."""
    if not items:
        yield []
        return
    first, *rest = items
    for groups in partitions(rest):
        yield [[first], *groups]
        for place, group in enumerate(groups):
            yield [*groups[:place], [first, *group], *groups[place + 1 :]]


def least_bought(pieces, stock, kerf_along):
    """The least length over every way of sharing sticks."""
    plans = []
    for groups in partitions(pieces):
        needed = [total(piece.length + kerf_along for piece in group) for group in groups]
        if max(needed) <= max(stock):
            plans.append(total(min(s for s in stock if s >= length) for length in needed))
    return min(plans)


@settings(max_examples=25, deadline=None)
@given(pieces_up_to(5), st.sampled_from([(STICK,), (STICK, mm(1800)), (mm(1450), mm(3050))]))
def test_a_frames_rails_are_cut_from_the_least_length_that_can_be_bought(pieces, stock):
    plan = plan_sticks(pieces, stock)
    check_plan(plan, pieces, stock)
    assert plan.is_optimal
    assert plan.bought == least_bought(pieces, stock, plan.kerf_along)


@settings(max_examples=15, deadline=None)
@example(45455, 36)
@given(st.integers(0, 10**6), st.integers(11, 60))
def test_a_days_batch_is_never_worse_than_filling_by_the_longest_first(seed, count):
    chance = Random(seed)  # noqa: S311  not for secrets
    pieces = [
        Piece(f"rail {place}", inch(Fraction(chance.randint(8 * 16, 40 * 16), 16)))
        for place in range(count)
    ]
    plan = plan_sticks(pieces, (STICK,))
    check_plan(plan, pieces, (STICK,))
    assert len(plan.sticks) <= first_fit(pieces, plan.kerf_along)


def first_fit(pieces, kerf_along):
    rooms = []
    for piece in sorted(pieces, key=lambda piece: piece.length, reverse=True):
        needed = piece.length + kerf_along
        place = next((n for n, room in enumerate(rooms) if room >= needed), None)
        if place is None:
            rooms.append(STICK - needed)
        else:
            rooms[place] = rooms[place] - needed
    return len(rooms)


def test_the_handbooks_rails_come_out_of_one_stick_with_four_mitre_kerfs():
    rails = sizes_of(double_mat()).frame.rails
    plan = plan_sticks([Piece(rail.side, rail.long_point.value) for rail in rails], (STICK,))
    (stick,) = plan.sticks
    assert stick.left_over == STICK - inch("104 1/2") - 4 * inch("1/8") * Fraction(99, 70)
    assert plan.fewest == 1


def test_a_mitres_kerf_is_the_blade_times_a_little_more_than_the_root_of_two():
    assert 2 < MITRE_FACTOR**2 < Fraction(2001, 1000)
    assert plan_sticks([Piece("a", mm(500))], (STICK,)).kerf_along == DEFAULT_KERF * MITRE_FACTOR
    square = plan_sticks([Piece("a", mm(500))], (STICK,), mitred=False)
    assert square.kerf_along == DEFAULT_KERF


def test_a_kerf_decides_whether_two_pieces_share_a_stick():
    halves = [Piece("a", mm(1370)), Piece("b", mm(1370))]
    assert len(plan_sticks(halves, (STICK,), kerf=ZERO).sticks) == 1
    assert len(plan_sticks(halves, (STICK,), kerf=mm(1)).sticks) == 2


def test_among_equal_plans_the_longest_offcut_wins():
    pieces = [Piece(name, mm(900)) for name in "abcd"]
    plan = plan_sticks(pieces, (STICK,), kerf=ZERO)
    assert sorted(len(stick.pieces) for stick in plan.sticks) == [1, 3]


def test_a_piece_longer_than_the_longest_stick_is_refused_by_name():
    with pytest.raises(
        CuttingError, match=r"top rail needs 3000 mm and .* longest stick is 2740 mm"
    ):
        plan_sticks([Piece("top rail", mm(3000))], (mm(1000), STICK))


def test_missing_stock_and_impossible_lengths_are_refused():
    with pytest.raises(FieldError, match="stick length is missing"):
        plan_sticks([Piece("a", mm(1))], ())
    with pytest.raises(FieldError, match="above zero"):
        plan_sticks([Piece("a", ZERO)], (STICK,))
    with pytest.raises(FieldError, match="kerf"):
        plan_sticks([Piece("a", mm(1))], (STICK,), kerf=mm(-1))


def test_no_pieces_need_no_stick():
    plan = plan_sticks([], (STICK,))
    assert plan.sticks == ()
    assert plan.waste_share == 0


def test_a_batch_of_equal_rails_is_filled_to_the_last():
    pieces = [Piece(f"rail {n}", mm(900)) for n in range(30)]
    plan = plan_sticks(pieces, (Length.mm_of(2710),), kerf=mm(1), mitred=False)
    assert len(plan.sticks) == 10
    assert plan.is_optimal
