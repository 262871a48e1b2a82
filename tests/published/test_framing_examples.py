"""Worked framing examples that others published, each reproduced exactly.

The sources print fractions of an inch; every expectation is exact.
"""

from fractions import Fraction

import pytest

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Sides,
    borders_to_outer,
    depth_of,
    fitted_to_outer,
    same_ratio_borders,
    sizes_of,
)
from framing_palette.units import Length

inch = Length.inches
FOUR_PLY = inch(Fraction(1, 16))


def inches(size):
    return tuple(length.figures("in", 64) for length in size.lengths)


def matted(width, height, overlap, outer):
    """One mat with its opening centred in an outside size."""
    art = Art(inch(width), inch(height), overlap=inch(overlap))
    design = Design(art, (Layer(Kind.MAT, FOUR_PLY),))
    return fitted_to_outer(design, (inch(outer[0]), inch(outer[1])))


def test_karg_long_points_of_a_frame_for_16_by_20():
    """S. Karg, "Picture Perfect Frame", hobby woodworking page.

    Art 16 x 20, rabbet width 3/8, face 3, allowance 1/8 per axis: long points 21 3/8 and 25 3/8.
    """
    moulding = Moulding(inch(3), inch("3/8"), inch("1/2"), allowance=inch("1/8"))
    frame = sizes_of(Design(Art(inch(16), inch(20)), moulding=moulding)).frame
    points = {rail.side: rail.long_point.value.figures("in", 64) for rail in frame.rails}
    assert points == {"top": "21 3/8", "bottom": "21 3/8", "left": "25 3/8", "right": "25 3/8"}


@pytest.mark.parametrize(
    ("art", "overlap", "outer", "opening", "borders"),
    [
        # J. C. Kelly, matting notes, 1998.
        (("8", "10"), "1/4", ("11", "14"), ("7 1/2", "9 1/2"), ("1 3/4", "2 1/4")),
        # D. Cotton, matting tutorial, 2010.
        (("12", "18"), "1/8", ("18", "24"), ("11 3/4", "17 3/4"), ("3 1/8", "3 1/8")),
        # Mathematics question-and-answer page, 2022: 1/4 overlap in TOTAL is 1/8 on each side.
        (("11", "17"), "1/8", ("16", "20"), ("10 3/4", "16 3/4"), ("2 5/8", "1 5/8")),
    ],
)
def test_a_mat_of_a_given_outside_size_has_the_published_opening_and_borders(
    art, overlap, outer, opening, borders
):
    design = matted(*art, overlap, outer)
    sizes = sizes_of(design)
    cut = design.layers[0].borders
    assert inches(sizes.layers[0].opening.size) == opening
    assert (cut.left.figures("in", 64), cut.top.figures("in", 64)) == borders
    assert (cut.right, cut.bottom) == (cut.left, cut.top)
    assert inches(sizes.contents) == outer


def test_mueller_stack_of_acrylic_four_ply_and_foam_board_is_three_eighths_deep():
    """E. Mueller, teaching notes on framing works on paper.

    Acrylic 1/8 + 4-ply board 1/16 + foam board 3/16: stack depth 3/8.
    """
    design = Design(
        Art(inch(8), inch(10), overlap=inch("1/8")),
        (Layer(Kind.MAT, FOUR_PLY, borders=Sides.all_round(inch(2))),),
        glazing=Glazing("acrylic", inch("1/8")),
        backing=Board(inch("3/16"), "foam board"),
    )
    assert depth_of(design).stack.value == inch("3/8")


def test_the_same_ratio_rule_of_2025_puts_the_top_at_1_5616_and_the_bottom_at_2_4384():
    """Border rule published 2025, result derived: hole 8 x 4 in a mat 10 x 8.

    Side 1, top 1.5616, bottom 2.4384 inches, to half of the last printed digit.
    """
    borders = same_ratio_borders((inch(8), inch(4)), (inch(10), inch(8)))
    assert borders.left == borders.right == inch(1)
    assert abs(float(borders.top.as_inches()) - 1.5616) <= 0.00005
    assert abs(float(borders.bottom.as_inches()) - 2.4384) <= 0.00005
    assert borders.vertical == inch(4)


def test_reveals_of_one_eighth_and_one_quarter_put_the_bottom_line_three_eighths_inside():
    """Framers' forum, common practice: the bottom mat of three lies 3/8 inside the top mat."""
    design = Design(
        Art(inch(16), inch(20), overlap=inch("1/8")),
        (
            Layer(Kind.MAT, FOUR_PLY, reveal=Sides.all_round(inch("1/8"))),
            Layer(Kind.MAT, FOUR_PLY, reveal=Sides.all_round(inch("1/4"))),
            Layer(Kind.MAT, FOUR_PLY, borders=Sides.all_round(inch(3))),
        ),
    )
    bottom, _, top = sizes_of(design).layers
    assert bottom.opening.left - top.opening.left == inch("3/8")
    assert bottom.opening.top - top.opening.top == inch("3/8")


def test_a_45_degree_bevel_shows_the_thickness_of_its_board():
    """Geometry: a 45 degree slope through a board of thickness t is t wide in plan."""
    mat = Layer(Kind.MAT, FOUR_PLY, reveal=Sides.all_round(inch("1/4")))
    top = Layer(Kind.MAT, FOUR_PLY, borders=Sides.all_round(inch(2)))
    sizes = sizes_of(Design(Art(inch(8), inch(10), overlap=inch("1/8")), (mat, top)))
    assert sizes.layers[0].flat == Sides.all_round(inch("3/16"))


@pytest.mark.parametrize(
    ("name", "size_mm", "longer"),
    [("A4", (210, 297), "11 11/16"), ("A3", (297, 420), "16 17/32"), ("A2", (420, 594), "23 3/8")],
)
def test_an_iso_216_sheet_is_framed_exactly_in_millimetres_and_to_a_thirty_second(
    name, size_mm, longer
):
    """ISO 216: A4 210 x 297, A3 297 x 420, A2 420 x 594 mm."""
    art = Art(Length.mm_of(size_mm[0]), Length.mm_of(size_mm[1]))
    outer = sizes_of(Design(art)).outer
    assert outer.lengths == (Length.mm_of(size_mm[0]), Length.mm_of(size_mm[1]))
    assert outer.height.value.show("in") == f"about {longer} in"


def test_borders_that_a_weighted_bottom_leaves_add_up_to_the_outside():
    """Bottom weighting of 1/4 to 1 inch (Wikibooks, "How to Frame a Picture")."""
    borders = borders_to_outer((inch(8), inch(10)), (inch(12), inch(15)), inch("1/2"))
    assert (borders.top, borders.bottom) == (inch("2 1/4"), inch("2 3/4"))
    assert borders.left == inch(2)
