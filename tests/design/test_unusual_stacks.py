"""Unusual stacks worked out on paper, every figure to the last thirty-second of an inch.

The arithmetic stands in each docstring and uses nothing of the program. Worked for this test from
the rules of the trade (common practice): opening = art less both overlaps; next opening = opening
plus both reveals; outside = outermost opening plus borders; rabbet size = outside plus the play;
sight = rabbet size less both rabbet widths; long point = sight plus both faces.
"""

from dataclasses import replace

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Shape,
    Sides,
    Window,
    depth_of,
    sizes_of,
    strip_frames,
)
from tests.design.shop import inch, liner, mat, mm, moulding, wood_fillet, wrapped_fillet


def sides(*lengths):
    return Sides(*(inch(length) for length in lengths))


def bordered(*lengths):
    return replace(mat(), borders=sides(*lengths))


def figures(lengths):
    return tuple(length.figures("in", 64) for length in lengths)


def openings(sizes):
    return [figures(size.opening.size.lengths) for size in sizes.layers]


def frame_figures(sizes):
    """Rabbet size, sight size, long points across and down, and all long points together."""
    rails = {rail.side: rail.long_point.value for rail in sizes.frame.rails}
    return (
        figures(sizes.frame.rabbet.lengths),
        figures(sizes.frame.sight.lengths),
        figures((rails["top"], rails["left"])),
        sizes.frame.moulding_length.value.figures("in", 64),
    )


def test_three_mats_the_middle_one_weighted():
    """Art 11 x 14, overlap 1/8.

    Opening 1: 11 - 1/4 = 10 3/4; 14 - 1/4 = 13 3/4. Opening 2, + 2 x 3/16: 11 1/8; 14 1/8.
    Opening 3: 11 1/8 + 1/4 + 1/4 = 11 5/8; 14 1/8 + 1/4 + 1/2 = 14 7/8. Outside: 11 5/8 + 2 x 2 3/4
    = 17 1/8; 14 7/8 + 2 3/4 + 3 1/4 = 20 7/8. From the outer edge: opening 2 at 2 3/4 + 1/4 = 3,
    opening 1 at 3 + 3/16.
    """
    sizes = sizes_of(
        Design(
            Art(inch(11), inch(14), overlap=inch("1/8")),
            (
                mat("3/16"),
                replace(mat(), reveal=sides("1/4", "1/4", "1/2", "1/4")),
                bordered("2 3/4", "2 3/4", "3 1/4", "2 3/4"),
            ),
        )
    )
    assert openings(sizes) == [("10 3/4", "13 3/4"), ("11 1/8", "14 1/8"), ("11 5/8", "14 7/8")]
    assert figures(sizes.contents.lengths) == ("17 1/8", "20 7/8")
    places = [figures((size.opening.left, size.opening.top)) for size in sizes.layers]
    assert places == [("3 3/16", "3 3/16"), ("3", "3"), ("2 3/4", "2 3/4")]


def test_a_butted_wrapped_fillet_between_two_mats():
    """Art 9 3/8 x 12 5/8, overlap 3/16.

    Opening 1: 9 3/8 - 3/8 = 9; 12 5/8 - 3/8 = 12 1/4. Opening 2, + 2 x 1/4: 9 1/2; 12 3/4.
    Opening 3, + 2 x 5/16: 10 1/8; 13 3/8. Outside, + 2 x 2 1/2: 15 1/8; 18 3/8. Strips of 3/4
    round opening 2: top and bottom 9 1/2 + 1 1/2 = 11, the uprights between them 12 3/4; joined
    11 x 14 1/4. Hidden: 3/4 - 5/16 = 7/16.
    """
    sizes = sizes_of(
        Design(
            Art(inch("9 3/8"), inch("12 5/8"), overlap=inch("3/16")),
            (mat("1/4"), wrapped_fillet("5/16", join="butt"), mat(borders="2 1/2")),
        )
    )
    assert openings(sizes) == [("9", "12 1/4"), ("9 1/2", "12 3/4"), ("10 1/8", "13 3/8")]
    assert figures(sizes.contents.lengths) == ("15 1/8", "18 3/8")
    (frame,) = strip_frames(sizes)
    strips = {strip.side: strip.long_side.value.figures("in", 64) for strip in frame.strips}
    assert strips == {"top": "11", "right": "12 3/4", "bottom": "11", "left": "12 3/4"}
    assert figures(frame.joined.lengths) == ("11", "14 1/4")
    assert sizes.layers[1].hidden == sides("7/16", "7/16", "7/16", "7/16")


def test_a_mitred_wood_fillet_on_its_step():
    """Art 8 x 10, overlap 1/8; fillet face 3/8 all shown, step 1/4 under the mat.

    Opening 1: 7 3/4 x 9 3/4. Strip 3/8 + 1/4 = 5/8 wide: long edges 7 3/4 + 1 1/4 = 9 and
    9 3/4 + 1 1/4 = 11, sight edges 7 3/4 and 9 3/4. Opening 2, + 2 x 3/8: 8 1/2 x 10 1/2. Outside,
    + 2 x 2: 12 1/2 x 14 1/2.
    """
    fillet = wood_fillet("3/8", rabbet_width=inch("1/4"), rabbet_depth=inch("3/16"))
    sizes = sizes_of(
        Design(Art(inch(8), inch(10), overlap=inch("1/8")), (fillet, mat(borders="2")))
    )
    assert openings(sizes) == [("7 3/4", "9 3/4"), ("8 1/2", "10 1/2")]
    assert figures(sizes.contents.lengths) == ("12 1/2", "14 1/2")
    (frame,) = strip_frames(sizes)
    top, left = frame.strips[0], frame.strips[3]
    assert figures((top.long_side.value, left.long_side.value)) == ("9", "11")
    assert figures((top.short_side.value, left.short_side.value)) == ("7 3/4", "9 3/4")


def test_a_floated_sheet_with_its_margin_and_frame():
    """Art 10 1/2 x 13 1/4, 3/8 shown round it.

    Opening: 10 1/2 + 3/4 = 11 1/4; 13 1/4 + 3/4 = 14. Outside, + 2 x 1 3/4: 14 3/4; 17 1/2. Rabbet
    size, + 1/8: 14 7/8; 17 5/8. Sight, - 2 x 1/4: 14 3/8; 17 1/8. Long points, + 2 x 7/8: 16 1/8;
    18 7/8. Together 2 x (16 1/8 + 18 7/8) = 70.
    """
    sizes = sizes_of(
        Design(
            Art(inch("10 1/2"), inch("13 1/4"), overlap=inch("-3/8")),
            (mat(borders="1 3/4"),),
            moulding=moulding("7/8"),
        )
    )
    assert openings(sizes) == [("11 1/4", "14")]
    assert frame_figures(sizes) == (
        ("14 7/8", "17 5/8"), ("14 3/8", "17 1/8"), ("16 1/8", "18 7/8"), "70",
    )  # fmt: skip


def test_a_canvas_in_a_liner_in_a_frame():
    """Canvas 18 x 24 in a liner of face 1 3/4 and rabbet 3/8, play 3/16.

    The liner holds 18 + 3/16 = 18 3/16 and 24 3/16; opening, - 2 x 3/8: 17 7/16; 23 7/16. Outside
    of the liner, + 2 x 1 3/4: 20 15/16; 26 15/16. Frame rabbet, + 3/16: 21 1/8; 27 1/8. Sight,
    - 2 x 1/2: 20 1/8; 26 1/8. Long points, + 2 x 2: 24 1/8; 30 1/8. Together 2 x 54 1/4 = 108 1/2.
    """
    sizes = sizes_of(
        Design(
            Art(inch(18), inch(24), inch("3/4")),
            (liner("1 3/4", rabbet_width="3/8"),),
            moulding=moulding("2", rabbet_width="1/2", allowance=inch("3/16")),
        )
    )
    assert openings(sizes) == [("17 7/16", "23 7/16")]
    assert figures(sizes.outer.lengths) == ("20 15/16", "26 15/16")
    assert frame_figures(sizes) == (
        ("21 1/8", "27 1/8"), ("20 1/8", "26 1/8"), ("24 1/8", "30 1/8"), "108 1/2",
    )  # fmt: skip


def test_a_weighted_mat_in_a_liner():
    """Art 12 x 16, overlap 1/8; borders 2 1/2, foot 3 1/8; liner face 1 1/4, rabbet 5/16, play 1/8.

    Opening of the mat: 11 3/4 x 15 3/4. Mats and glazing: 11 3/4 + 5 = 16 3/4; 15 3/4 + 5 5/8 =
    21 3/8. The liner holds 16 7/8 x 21 1/2; its opening, - 2 x 5/16: 16 1/4 x 20 7/8. Its outside,
    + 2 x 1 1/4: 18 3/4 x 23 3/8. Frame rabbet, + 1/8: 18 7/8 x 23 1/2. Of the mat show 2 1/2 - 1/4
    = 2 1/4, and at the foot 3 1/8 - 1/4 = 2 7/8.
    """
    sizes = sizes_of(
        Design(
            Art(inch(12), inch(16), overlap=inch("1/8")),
            (bordered("2 1/2", "2 1/2", "3 1/8", "2 1/2"), liner("1 1/4", rabbet_width="5/16")),
            moulding=moulding(),
        )
    )
    assert openings(sizes) == [("11 3/4", "15 3/4"), ("16 1/4", "20 7/8")]
    assert figures(sizes.contents.lengths) == ("16 3/4", "21 3/8")
    assert figures(sizes.outer.lengths) == ("18 3/4", "23 3/8")
    assert figures(sizes.frame.rabbet.lengths) == ("18 7/8", "23 1/2")
    assert sizes.layers[0].reveal == sides("2 1/4", "2 1/4", "2 7/8", "2 1/4")


def test_two_unequal_pieces_one_above_the_other_in_a_double_mat():
    """5 x 7 over 4 x 6, overlap 1/8, reveal 1/4, gap 1 1/4, borders 2 and foot 2 3/4.

    Lower mat: 4 3/4 x 6 3/4 and 3 3/4 x 5 3/4. Upper mat: 5 1/4 x 7 1/4 and 4 1/4 x 6 1/4.
    Outside: 5 1/4 + 4 = 9 1/4; 7 1/4 + 1 1/4 + 6 1/4 + 2 + 2 3/4 = 19 1/2. The second opening of
    the upper mat: 2 + (5 1/4 - 4 1/4) / 2 = 2 1/2 from the left, 2 + 7 1/4 + 1 1/4 = 10 1/2 from
    the top; of the lower mat a reveal further in, 2 3/4 and 10 3/4.
    """
    windows = (Window(inch(5), inch(7)), Window(inch(4), inch(6)))
    sizes = sizes_of(
        Design(
            Art(inch(5), inch(7), overlap=inch("1/8")),
            (mat("1/4"), bordered("2", "2", "2 3/4", "2")),
            arrangement=Arrangement(windows, 1, inch("1 1/4")),
        )
    )
    found = [[figures(o.size.lengths) for o in size.openings] for size in sizes.layers]
    assert found == [
        [("4 3/4", "6 3/4"), ("3 3/4", "5 3/4")],
        [("5 1/4", "7 1/4"), ("4 1/4", "6 1/4")],
    ]
    assert figures(sizes.contents.lengths) == ("9 1/4", "19 1/2")
    second = [figures((size.openings[1].left, size.openings[1].top)) for size in sizes.layers]
    assert second == [("2 3/4", "10 3/4"), ("2 1/2", "10 1/2")]


def test_two_pieces_in_free_places():
    """6 x 4 at 0, 0 and 3 x 5 at 7 1/2, 1; overlap 1/16, borders 1 1/2.

    Openings 5 7/8 x 3 7/8 and 2 7/8 x 4 7/8. Block: 7 1/2 + 2 7/8 = 10 3/8; 1 + 4 7/8 = 5 7/8.
    Outside, + 3: 13 3/8; 8 7/8. The second begins 1 1/2 + 7 1/2 = 9 from the left and 2 1/2 from
    the top.
    """
    windows = (
        Window(inch(6), inch(4), x=inch(0), y=inch(0)),
        Window(inch(3), inch(5), x=inch("7 1/2"), y=inch(1)),
    )
    sizes = sizes_of(
        Design(
            Art(inch(6), inch(4), overlap=inch("1/16")),
            (mat(borders="1 1/2"),),
            arrangement=Arrangement(windows, None),
        )
    )
    first, second = sizes.layers[0].openings
    assert figures(first.size.lengths) == ("5 7/8", "3 7/8")
    assert figures(second.size.lengths) == ("2 7/8", "4 7/8")
    assert figures(sizes.contents.lengths) == ("13 3/8", "8 7/8")
    assert figures((second.left, second.top)) == ("9", "2 1/2")


def test_an_oval_double_mat():
    """Art 11 x 14, overlap 1/4, oval; reveal 3/8, borders 3.

    Openings 10 1/2 x 13 1/2 and, + 3/4, 11 1/4 x 14 1/4. Outside 17 1/4 x 20 1/4. The inner one
    begins 3 3/8 from the edges.
    """
    sizes = sizes_of(
        Design(
            Art(inch(11), inch(14), overlap=inch("1/4"), shape=Shape.OVAL),
            (mat("3/8"), mat(borders="3")),
        )
    )
    assert openings(sizes) == [("10 1/2", "13 1/2"), ("11 1/4", "14 1/4")]
    assert figures(sizes.contents.lengths) == ("17 1/4", "20 1/4")
    inner = sizes.layers[0].opening
    assert figures((inner.left, inner.top)) == ("3 3/8", "3 3/8")


def test_six_layers_with_both_kinds_of_fillet():
    """Art 10 x 12, overlap 1/8; reveals 1/8, 1/4, 3/16, 1/4, 5/16; borders 2 1/8.

    Openings: 9 3/4 x 11 3/4; + 1/4 = 10 x 12; + 1/2 = 10 1/2 x 12 1/2; + 3/8 = 10 7/8 x 12 7/8;
    + 1/2 = 11 3/8 x 13 3/8; + 5/8 = 12 x 14. Outside, + 4 1/4: 16 1/4 x 18 1/4. Depth: art 1/32,
    four mats 4/16, wrapped fillet 1/8, wood fillet 1/4, backing 3/16, glass 3/32: 1 + 8 + 4 + 8 + 6
    + 3 = 30 thirty-seconds, 15/16.
    """
    design = Design(
        Art(inch(10), inch(12), inch("1/32"), inch("1/8")),
        (
            mat("1/8"), wrapped_fillet("1/4"), mat("3/16"), wood_fillet("1/4", face="1/2"),
            mat("5/16"), mat(borders="2 1/8"),
        ),
        glazing=Glazing("glass", inch("3/32")),
        backing=Board(inch("3/16")),
    )  # fmt: skip
    sizes = sizes_of(design)
    assert openings(sizes) == [
        ("9 3/4", "11 3/4"), ("10", "12"), ("10 1/2", "12 1/2"), ("10 7/8", "12 7/8"),
        ("11 3/8", "13 3/8"), ("12", "14"),
    ]  # fmt: skip
    assert figures(sizes.contents.lengths) == ("16 1/4", "18 1/4")
    assert depth_of(design).stack.value == inch("15/16")


def test_a_sheet_in_inches_under_mats_in_millimetres():
    """8 1/2 x 11 in = 215.9 x 279.4 mm; overlap 3, reveal 5, borders 60 mm.

    Openings 209.9 x 273.4 and 219.9 x 283.4. Outside 339.9 x 403.4 mm: 339.9 / 25.4 x 32 = 428.22,
    about 428 / 32 = 13 3/8 in; 403.4 / 25.4 x 32 = 508.22, about 508 / 32 = 15 7/8 in.
    """
    sizes = sizes_of(
        Design(
            Art(inch("8 1/2"), inch(11), overlap=mm(3)),
            (
                replace(mat(), reveal=Sides.all_round(mm(5))),
                replace(mat(), borders=Sides.all_round(mm(60))),
            ),
        )
    )
    shown = [tuple(x.figures("mm") for x in s.opening.size.lengths) for s in sizes.layers]
    assert shown == [("209.9", "273.4"), ("219.9", "283.4")]
    width, height = sizes.contents.lengths
    assert (width, height) == (mm("339.9"), mm("403.4"))
    assert (width.show("in", 32), height.show("in", 32)) == ("about 13 3/8 in", "about 15 7/8 in")


def test_a_wide_frame_alone():
    """Art 30 x 40; face 3 1/8, rabbet 7/16, play 1/4.

    Rabbet size 30 1/4 x 40 1/4. Sight, - 7/8: 29 3/8 x 39 3/8. Long points, + 6 1/4: 35 5/8 x
    45 5/8. Together 2 x 81 1/4 = 162 1/2; and by 2 (w + h) + 4 A + 8 (F - R): 140 + 1 + 8 x 2 11/16
    = 162 1/2.
    """
    frame = moulding("3 1/8", rabbet_width="7/16", allowance=inch("1/4"))
    sizes = sizes_of(Design(Art(inch(30), inch(40)), moulding=frame))
    assert frame_figures(sizes) == (
        ("30 1/4", "40 1/4"), ("29 3/8", "39 3/8"), ("35 5/8", "45 5/8"), "162 1/2",
    )  # fmt: skip


def test_a_bevel_and_a_flat_of_a_six_ply_mat():
    """Art 7 x 9, overlap 1/8; board 3/32, so that its bevel shows 3/32; flat 1/8; borders 1 7/8.

    Reveal 3/32 + 4/32 = 7/32. Openings 6 3/4 x 8 3/4; + 7/16 = 7 3/16 x 9 3/16. Outside, + 3 3/4:
    10 15/16 x 12 15/16.
    """
    six_ply = Layer(Kind.MAT, inch("3/32"), reveal=Sides.all_round(inch("7/32")))
    sizes = sizes_of(
        Design(Art(inch(7), inch(9), overlap=inch("1/8")), (six_ply, mat(borders="1 7/8")))
    )
    assert openings(sizes) == [("6 3/4", "8 3/4"), ("7 3/16", "9 3/16")]
    assert figures(sizes.contents.lengths) == ("10 15/16", "12 15/16")
    assert sizes.layers[0].flat == Sides.all_round(inch("1/8"))


def test_a_fillet_between_the_mat_and_the_frame():
    """Art 9 x 9, overlap 1/8; 1 1/2 of the mat shows; fillet 3/8 on it; play 1/8.

    Openings 8 3/4 and, + 3, 11 3/4. Outside of fillet and mat, + 3/4: 12 1/2. Rabbet size 12 5/8.
    Strips of the fillet: 12 1/2 along the long edge, 11 3/4 along the sight edge.
    """
    sizes = sizes_of(
        Design(
            Art(inch(9), inch(9), overlap=inch("1/8")),
            (mat("1 1/2"), wood_fillet(face="3/8")),
            moulding=moulding(),
        )
    )
    assert openings(sizes) == [("8 3/4", "8 3/4"), ("11 3/4", "11 3/4")]
    assert figures(sizes.contents.lengths) == ("12 1/2", "12 1/2")
    assert figures(sizes.frame.rabbet.lengths) == ("12 5/8", "12 5/8")
    (frame,) = strip_frames(sizes)
    strip = frame.strips[0]
    assert figures((strip.long_side.value, strip.short_side.value)) == ("12 1/2", "11 3/4")
