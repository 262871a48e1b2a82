"""Figures that carry their own sum."""

from fractions import Fraction

from framing_palette.design import Figure
from framing_palette.design.figures import RectangleFigure, sum_of
from framing_palette.units import ZERO
from tests.design.shop import inch, mm


def test_a_sum_reads_as_a_framer_would_say_it():
    figure = Figure.start(inch(16), "art width").plus(-2, inch("1/8"), "overlap")
    figure = figure.plus(2, inch("1/4"), "reveal")
    assert figure.how("in") == "16 in art width, less 2 x 1/8 in overlap, plus 2 x 1/4 in reveal"
    assert figure.value == inch("16 1/4")


def test_a_sum_marks_what_had_to_be_rounded_for_showing():
    figure = Figure.start(mm(300), "art width").plus(1, inch("1/8"), "allowance")
    assert figure.how("in") == "about 11 13/16 in art width, plus 1/8 in allowance"
    assert figure.how("mm") == "300 mm art width, plus 3.175 mm allowance"


def test_nothing_added_leaves_no_trace():
    figure = Figure.start(inch(1), "side")
    assert figure.plus(2, ZERO, "overlap") == figure


def test_the_sum_of_nothing_is_zero_and_says_so():
    assert Figure(()).value == ZERO
    assert Figure(()).how("in") == "nothing"


def test_figures_add_up_under_their_names():
    whole = sum_of([("top", Figure.start(inch(3), "x")), ("left", Figure.start(inch(4), "y"))])
    assert whole.how("in") == "3 in top, plus 4 in left"
    assert whole.value == inch(7)


def test_a_rectangle_gives_both_lengths():
    size = RectangleFigure(Figure.start(inch(3), "a"), Figure.start(inch(4), "b"))
    assert size.lengths == (inch(3), inch(4))


def test_a_fractional_count_is_spoken_as_it_is():
    figure = Figure.start(inch(2), "a").plus(Fraction(1, 2), inch(1), "gap")
    assert figure.how("in") == "2 in a, plus 1/2 x 1 in gap"
    assert figure.value == inch("2 1/2")
