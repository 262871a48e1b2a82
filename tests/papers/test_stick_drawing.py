"""Sticks as bars: true to scale, never longer than the stick, the saw's cuts between the pieces."""

from itertools import pairwise

from framing_palette.design import Piece, plan_sticks
from framing_palette.papers import Notation
from framing_palette.papers.shapes import Polygon
from framing_palette.papers.stick_drawing import stick_bars
from tests.papers.made_up import inch, mm


def spans(drawing):
    """Left and right of each rectangle."""
    boxes = [shape.points for shape in drawing.shapes if isinstance(shape, Polygon)]
    return [(min(x for x, _ in points), max(x for x, _ in points)) for points in boxes]


def test_pieces_lie_true_to_scale_with_the_saw_between_them_and_end_within_the_stick():
    plan = plan_sticks([Piece(f"{n} rail", mm(600)) for n in range(4)], [mm(2700)])
    (drawing,) = stick_bars(plan, Notation("mm"), 176.0)
    *pieces, rest = spans(drawing)
    scale = 176.0 / 2700
    assert all(abs(right - left - 600 * scale) < 1e-6 for left, right in pieces)
    kerf = plan.kerf_along.as_float_mm() * scale
    for (_, right), (left, _) in pairwise(pieces):
        assert abs(left - right - kerf) < 1e-6
    assert abs(rest[1] - 176.0) < 1e-6


def test_a_shorter_stick_is_drawn_shorter():
    plan = plan_sticks([Piece("a", mm(900)), Piece("b", mm(400))], [mm(1000), mm(500)])
    bars = [spans(drawing) for drawing in stick_bars(plan, Notation("mm"), 100.0)]
    assert sorted(round(bar[-1][1], 6) for bar in bars) == [50.0, 100.0]


def test_no_sticks_make_no_bars():
    assert stick_bars(plan_sticks([], [inch(100)]), Notation("in"), 176.0) == []
