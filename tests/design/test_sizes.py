"""Sizes of particular stacks, worked by hand."""

from dataclasses import replace

import pytest

from framing_palette.catalogue import Kind
from framing_palette.design import Arrangement, Art, Design, Shape, Sides, Window, sizes_of
from framing_palette.errors import FieldError
from framing_palette.units import ZERO
from tests.design.shop import (
    all_round,
    art,
    double_mat,
    inch,
    liner,
    mat,
    mm,
    moulding,
    wood_fillet,
    wrapped_fillet,
)


def figures(size):
    return tuple(length.figures("in", 64) for length in size.lengths)


def openings(design):
    return [figures(layer.opening.size) for layer in sizes_of(design).layers]


def test_the_handbooks_double_mat_comes_out_as_worked_by_hand():
    sizes = sizes_of(double_mat())
    assert openings(double_mat()) == [("15 3/4", "19 3/4"), ("16 1/4", "20 1/4")]
    assert figures(sizes.contents) == figures(sizes.outer) == ("21 1/4", "25 3/4")
    assert figures(sizes.frame.rabbet) == ("21 3/8", "25 7/8")
    assert figures(sizes.frame.sight) == ("20 7/8", "25 3/8")
    assert [rail.long_point.value.figures("in") for rail in sizes.frame.rails] == [
        "23 7/8", "28 3/8", "23 7/8", "28 3/8",
    ]  # fmt: skip
    assert sizes.frame.moulding_length.value == inch("104 1/2")


def test_a_figure_of_the_double_mat_says_how_it_was_reached():
    sizes = sizes_of(double_mat())
    assert sizes.layers[1].opening.size.width.how("in") == (
        "16 in art width, less 2 x 1/8 in overlap, plus 2 x 1/4 in reveal of layer 1"
    )
    assert sizes.contents.height.how("in") == (
        "20 1/4 in opening of layer 2, plus 2 1/2 in top border, plus 3 in bottom border"
    )
    assert sizes.frame.sight.width.how("in") == (
        "21 1/4 in outer width, plus 1/8 in allowance, less 2 x 1/4 in rabbet width"
    )


def test_a_wrapped_fillet_under_the_top_mat_shows_its_reveal_and_hides_the_rest():
    design = Design(art(), (wrapped_fillet("1/4"), mat(borders="3")))
    fillet, top = sizes_of(design).layers
    assert openings(design) == [("15 3/4", "19 3/4"), ("16 1/4", "20 1/4")]
    assert figures(fillet.outer) == ("17 1/4", "21 1/4")
    assert fillet.hidden == all_round("1/2")
    assert figures(top.outer) == ("22 1/4", "26 1/4")


def test_a_wrapped_fillet_may_lie_under_a_middle_mat():
    design = Design(art(), (mat("1/8"), wrapped_fillet("1/4"), mat("3/8"), mat(borders="2")))
    assert openings(design) == [
        ("15 3/4", "19 3/4"), ("16", "20"), ("16 1/2", "20 1/2"), ("17 1/4", "21 1/4"),
    ]  # fmt: skip
    lowest = sizes_of(design).layers[0]
    assert lowest.hidden.left == inch("1/4") + inch("3/8") + inch(2)


def test_fillets_in_combination_each_show_their_own_reveal():
    design = Design(
        art(), (wood_fillet("1/8", face="1/2"), wrapped_fillet("3/8"), mat(borders="2"))
    )
    assert openings(design) == [("15 3/4", "19 3/4"), ("16", "20"), ("16 3/4", "20 3/4")]


def test_a_wood_fillet_with_a_step_shows_its_whole_face_and_hides_its_step():
    fillet = wood_fillet("3/8", rabbet_width=mm(7), rabbet_depth=inch("1/8"))
    sizes = sizes_of(Design(art(), (fillet, mat(borders="2"))))
    assert sizes.layers[0].hidden == Sides.all_round(mm(7))
    assert sizes.layers[0].outer.width.value == inch("15 3/4") + 2 * (inch("3/8") + mm(7))


def test_a_fillet_as_the_last_layer_is_what_the_frame_is_sized_on():
    sizes = sizes_of(Design(art(), (wood_fillet(face="1/2"),), moulding=moulding()))
    assert figures(sizes.outer) == ("16 3/4", "20 3/4")
    assert figures(sizes.frame.rabbet) == ("16 7/8", "20 7/8")


def test_a_mat_with_borders_under_a_last_fillet_shows_its_border_less_the_fillet():
    design = Design(art(), (mat(borders="2"), wood_fillet(face="1/2")))
    below, fillet = sizes_of(design).layers
    assert below.reveal == all_round("1 1/2")
    assert figures(fillet.opening.size) == ("18 3/4", "22 3/4")
    assert figures(sizes_of(design).outer) == ("19 3/4", "23 3/4")


def test_a_liner_is_sized_by_what_its_rabbet_holds():
    design = Design(art(), (mat(borders="2"), liner()), moulding=moulding())
    sizes = sizes_of(design)
    assert figures(sizes.contents) == ("19 3/4", "23 3/4")
    # The mats, 1/8 play, less a quarter on each side.
    assert figures(sizes.layers[1].opening.size) == ("19 3/8", "23 3/8")
    assert figures(sizes.outer) == ("22 3/8", "26 3/8")
    assert figures(sizes.frame.rabbet) == ("22 1/2", "26 1/2")


def test_a_mat_under_a_liner_may_say_what_shows_instead_of_its_border():
    bordered = Design(art(), (mat(borders="2"), liner()), moulding=moulding())
    shown = Design(art(), (mat("1 13/16"), liner()), moulding=moulding())
    assert sizes_of(shown).contents.lengths == sizes_of(bordered).contents.lengths
    assert openings(shown) == openings(bordered)


def test_a_canvas_in_a_liner_needs_neither_mat_nor_overlap_nor_glazing():
    canvas = Art(inch(16), inch(20), thickness=inch("3/4"))
    sizes = sizes_of(Design(canvas, (liner(),), moulding=moulding()))
    assert figures(sizes.layers[0].opening.size) == ("15 5/8", "19 5/8")
    assert figures(sizes.contents) == ("16", "20")
    assert figures(sizes.outer) == ("18 5/8", "22 5/8")


def test_a_frame_alone_is_sized_on_the_art():
    sizes = sizes_of(Design(Art(inch(16), inch(20)), moulding=moulding()))
    assert figures(sizes.outer) == ("16", "20")
    assert figures(sizes.frame.sight) == ("15 5/8", "19 5/8")


def test_a_floated_picture_shows_its_edges_and_a_margin():
    design = Design(art(overlap=inch("-1/2")), (mat(borders="2"),))
    assert openings(design) == [("17", "21")]
    assert sizes_of(design).layers[0].opening.size.width.how("in") == (
        "16 in art width, plus 2 x 1/2 in margin"
    )


def test_six_layers_are_sized_and_a_seventh_is_refused():
    layers = (*[mat("1/4")] * 5, mat(borders="2"))
    assert openings(Design(art(), layers))[-1] == ("18 1/4", "22 1/4")
    with pytest.raises(FieldError, match=r"number of layers is 7; a design takes at most 6"):
        sizes_of(Design(art(), (mat("1/4"), *layers)))


def test_unequal_reveals_move_the_opening_and_are_told_side_by_side():
    below = replace(mat(), reveal=Sides(inch("1/4"), inch("1/2"), inch("3/4"), inch("1")))
    design = Design(art(), (below, mat(borders="2")))
    lower, upper = sizes_of(design).layers
    assert openings(design)[1] == ("17 1/4", "20 3/4")
    assert lower.opening.left - upper.opening.left == inch(1)
    assert lower.opening.top - upper.opening.top == inch("1/4")
    assert "1 in left reveal of layer 1, plus 1/2 in right" in upper.opening.size.width.how("in")


def test_a_row_of_three_openings_is_laid_out_with_its_gaps():
    windows = (Window(inch(4), inch(6)),) * 3
    design = Design(
        Art(inch(4), inch(6), overlap=inch("1/8")),
        (mat("1/4"), mat(borders="2")),
        arrangement=Arrangement(windows, columns=3, gap=inch(1)),
    )
    lower, upper = sizes_of(design).layers
    # Upper openings 4 1/4 wide, two gaps, two borders.
    assert figures(upper.outer) == ("18 3/4", "10 1/4")
    assert [opening.left.figures("in") for opening in upper.openings] == ["2", "7 1/4", "12 1/2"]
    assert [opening.left.figures("in") for opening in lower.openings] == [
        "2 1/4", "7 1/2", "12 3/4",
    ]  # fmt: skip
    assert upper.outer.width.how("in") == (
        "4 1/4 in opening 1, plus 4 1/4 in opening 2, plus 4 1/4 in opening 3, plus 1 in gap, "
        "plus 1 in gap, plus 2 x 2 in border"
    )


def test_smaller_openings_of_a_column_are_centred():
    windows = (Window(inch(8), inch(4)), Window(inch(4), inch(4)))
    design = Design(
        Art(inch(8), inch(4), overlap=ZERO),
        (mat(borders="2"),),
        arrangement=Arrangement(windows, columns=1, gap=inch(1)),
    )
    places = [
        (opening.left.figures("in"), opening.top.figures("in"))
        for opening in sizes_of(design).layers[0].openings
    ]
    assert places == [("2", "2"), ("4", "7")]
    assert figures(sizes_of(design).contents) == ("12", "13")


def test_free_openings_stand_where_they_are_put():
    windows = (
        Window(inch(4), inch(4), x=inch(1), y=inch(1)),
        Window(inch(4), inch(4), Shape.OVAL, x=inch(7), y=inch(3)),
    )
    design = Design(
        Art(inch(4), inch(4), overlap=inch("1/4")),
        (mat(borders="2"),),
        arrangement=Arrangement(windows, columns=None),
    )
    sizes = sizes_of(design)
    assert figures(sizes.contents) == ("13 1/2", "9 1/2")
    assert [(o.left.figures("in"), o.top.figures("in"), o.shape) for o in sizes.layers[0].openings] == [
        ("2", "2", Shape.RECTANGLE), ("8", "4", Shape.OVAL),
    ]  # fmt: skip
    assert sizes.contents.width.how("in").startswith("9 1/2 in openings")


def test_several_openings_may_lie_under_a_liner():
    windows = (Window(inch(4), inch(6)),) * 2
    design = Design(
        Art(inch(4), inch(6), overlap=inch("1/8")),
        (mat(borders="2"), liner()),
        arrangement=Arrangement(windows, columns=2, gap=inch(1)),
    )
    mats, frame = sizes_of(design).layers
    assert figures(mats.outer) == ("12 1/2", "9 3/4")
    assert len(frame.openings) == 1
    assert figures(frame.opening.size) == ("12 1/8", "9 3/8")


def test_an_oval_opening_carries_its_outline_through_every_layer_under_the_moulding():
    design = Design(art(shape=Shape.OVAL), (mat("1/4"), mat(borders="2")))
    assert {layer.opening.shape for layer in sizes_of(design).layers} == {Shape.OVAL}
    lined = Design(art(shape=Shape.OVAL), (mat(borders="2"), liner()))
    assert sizes_of(lined).layers[1].opening.shape is Shape.RECTANGLE


def test_a_round_opening_must_be_as_wide_as_high():
    design = Design(art("16", "16", shape=Shape.ROUND), (mat("1/4"), mat(borders="2")))
    assert openings(design)[1] == ("16 1/4", "16 1/4")
    with pytest.raises(FieldError, match="round opening needs equal width and height"):
        sizes_of(replace(design, art=art("16", "20", shape=Shape.ROUND)))


def test_a_rabbet_that_covers_the_whole_is_refused():
    tiny = Design(Art(inch(1), inch(1)), moulding=moulding(face="2", rabbet_width="5/8"))
    with pytest.raises(FieldError, match="moulding rabbet_width is 5/8 in; it covers the whole"):
        sizes_of(tiny)


def test_the_flat_is_what_the_reveal_shows_beyond_the_bevel():
    sizes = sizes_of(Design(art(), (mat("1/4"), wrapped_fillet("1/4"), mat(borders="2"))))
    assert sizes.layers[0].flat == all_round("3/16")
    assert sizes.layers[1].flat is None  # the fillet's bevel is not known
    assert sizes.layers[2].flat is None  # the last layer has no reveal


def test_strips_that_would_pass_the_mats_are_trimmed_to_them():
    design = Design(art(), (wrapped_fillet("1/4", face="3"), mat(borders="1")))
    fillet = sizes_of(design).layers[0]
    assert fillet.outer.lengths == sizes_of(design).contents.lengths


def test_a_fillet_of_unknown_face_has_no_outside_size_but_its_opening_is_known():
    design = Design(art(), (wrapped_fillet("1/4"), mat(borders="2")))
    layers = (replace(design.layers[0], face=None), design.layers[1])
    fillet = sizes_of(replace(design, layers=layers)).layers[0]
    assert fillet.outer is None
    assert fillet.hidden is None
    assert figures(fillet.opening.size) == ("15 3/4", "19 3/4")
    assert fillet.layer.kind is Kind.WRAPPED_FILLET


def test_the_whole_is_the_sum_of_the_openings_that_are_largest_in_their_row_and_column():
    """Row of 8 x 10 and 5 x 12: the height is opening 2's, 12 - 2 x 1/8, and both borders."""
    windows = (Window(inch(8), inch(10)), Window(inch(5), inch(12)))
    design = Design(
        art(), (mat(borders="2"),), arrangement=Arrangement(windows, 2, inch("3/4"))
    )  # fmt: skip
    contents = sizes_of(design).contents
    assert contents.width.how("in") == (
        "7 3/4 in opening 1, plus 4 3/4 in opening 2, plus 3/4 in gap, plus 2 x 2 in border"
    )
    assert contents.height.how("in") == "11 3/4 in opening 2, plus 2 x 2 in border"
