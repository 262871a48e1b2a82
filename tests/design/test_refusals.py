"""Designs that cannot be cut: each is refused in one sentence that names the field."""

from dataclasses import replace

import pytest

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Sides,
    Window,
    borders_to_outer,
    fitted_to_outer,
    same_ratio_borders,
    sizes_of,
    weighted,
)
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


def refusal(*layers, **facts):
    with pytest.raises(FieldError) as caught:
        sizes_of(Design(facts.pop("art", art()), layers, **facts))
    sentence = str(caught.value)
    assert sentence.endswith(".")
    assert sentence.count(". ") == 0
    return sentence


@pytest.mark.parametrize("overlap", ["8", "8 1/2", "100"])
def test_an_overlap_of_half_the_art_or_more_is_refused(overlap):
    sentence = refusal(mat(borders="2"), art=art(overlap=inch(overlap)))
    assert sentence.startswith(f"art overlap is {overlap} in; it must be less than half the art's")


def test_an_overlap_that_nobody_told_is_asked_for():
    sentence = refusal(mat(borders="2"), art=Art(inch(8), inch(10)))
    assert sentence.startswith("art overlap is missing; say how much of the art is hidden on each")


@pytest.mark.parametrize(
    ("field", "make"),
    [
        ("art width", lambda bad: Art(bad, inch(1))),
        ("art height", lambda bad: Art(inch(1), bad)),
        ("window width", lambda bad: Window(bad, inch(1))),
        ("window height", lambda bad: Window(inch(1), bad)),
        ("glazing thickness", lambda bad: Glazing("glass", bad)),
        ("board thickness", Board),
        ("thickness", lambda bad: Layer(Kind.MAT, bad)),
        ("face", lambda bad: Layer(Kind.LINER, None, face=bad)),
        ("rabbet_width", lambda bad: Layer(Kind.LINER, None, rabbet_width=bad)),
        ("rabbet_depth", lambda bad: Layer(Kind.LINER, None, rabbet_depth=bad)),
        ("reveal, top", lambda bad: Layer(Kind.MAT, None, reveal=Sides.all_round(bad))),
        ("borders, left", lambda bad: Layer(Kind.MAT, None, borders=replace(all_round("1"), left=bad))),
        ("moulding face", lambda bad: Moulding(bad, inch("1/4"), inch(1))),
        ("moulding rabbet_width", lambda bad: Moulding(inch(1), bad, inch(1))),
        ("moulding rabbet_depth", lambda bad: Moulding(inch(1), inch("1/4"), bad)),
    ],
)  # fmt: skip
@pytest.mark.parametrize("bad", [ZERO, inch(-1)])
def test_a_measure_that_is_zero_or_negative_is_refused(field, make, bad):
    with pytest.raises(FieldError, match=f"^{field} is .* give a length above zero"):
        make(bad)


@pytest.mark.parametrize(
    ("field", "make"),
    [
        ("art thickness", lambda bad: Art(inch(1), inch(1), bad)),
        ("bevel", lambda bad: Layer(Kind.MAT, None, bevel=bad)),
        ("moulding allowance", lambda bad: moulding(allowance=bad)),
        ("moulding clearance", lambda bad: moulding(clearance=bad)),
        ("weighting", lambda bad: borders_to_outer((inch(1), inch(1)), (inch(5), inch(5)), bad)),
    ],
)
def test_a_measure_that_may_be_zero_must_not_be_negative(field, make):
    make(ZERO)
    with pytest.raises(FieldError, match=f"^{field} is -1 in; give zero or a length above it"):
        make(inch(-1))


def test_a_length_that_is_no_inch_fraction_is_told_in_millimetres():
    with pytest.raises(FieldError, match=r"^art width is -300 mm"):
        Art(mm(-300), mm(1))


@pytest.mark.parametrize("mass_kg", [0, -1, 1000, float("nan")])
def test_a_weighed_art_must_weigh_something(mass_kg):
    with pytest.raises(FieldError, match="art mass_kg"):
        art(mass_kg=mass_kg)


def test_glazing_is_glass_or_acrylic():
    with pytest.raises(FieldError, match="write glass or acrylic"):
        Glazing("mica", mm(2))


@pytest.mark.parametrize("rabbet_width", ["1", "2"])
def test_a_rabbet_must_be_narrower_than_the_face(rabbet_width):
    with pytest.raises(FieldError, match="less than the face, 1 in"):
        moulding(face="1", rabbet_width=rabbet_width)


def test_a_moulding_among_the_layers_is_refused():
    sentence = refusal(Layer(Kind.MOULDING, inch(1)), mat(borders="2"))
    assert sentence == "layer 1 kind is moulding; the moulding is named apart from the layers."


def test_a_liner_that_is_not_the_last_layer_is_refused():
    assert "layer 1 kind is liner; a liner must be the last" in refusal(liner(), mat(borders="2"))


def test_layers_out_of_order_are_told_by_their_borders():
    assert refusal(mat(borders="2"), mat("1/4")).startswith("layer 1 borders is given; only the")


def test_the_outermost_mat_without_borders_is_refused():
    assert "layer 2 borders is missing" in refusal(mat("1/4"), mat("1/4"))


def test_a_covered_layer_without_a_reveal_is_refused():
    assert "layer 1 reveal is missing" in refusal(mat(), mat(borders="2"))
    assert "layer 1 reveal is missing" in refusal(
        mat(borders="2"), wood_fillet("1/8"), wood_fillet()
    )


def test_borders_and_a_reveal_together_are_refused():
    assert "given beside a reveal" in refusal(mat("1", borders="2"), liner())


def test_borders_on_a_fillet_are_refused():
    sentence = refusal(replace(wrapped_fillet(), borders=all_round("2")), mat(borders="2"))
    assert sentence.startswith("layer 1 borders is given")


def test_a_reveal_wider_than_its_layer_is_refused():
    sentence = refusal(wrapped_fillet("7/8", face="3/4"), mat(borders="2"))
    assert sentence.startswith("layer 1 reveal, top is 7/8 in; it cannot be wider than the layer")


def test_a_strip_too_narrow_for_the_hidden_overlap_is_refused_and_the_width_needed_is_named():
    sentence = refusal(wrapped_fillet("5/8", face="3/4"), mat(borders="2"))
    assert "1/8 in would be hidden but 6 mm must be" in sentence
    assert "at least about 7/8 in" in sentence


def test_a_metric_design_is_refused_in_millimetres():
    layers = (wrapped_fillet("5/8", face="3/4"), mat(borders="2"))
    sentence = refusal(*layers, unit="mm")
    assert "3.175 mm would be hidden but 6 mm must be" in sentence
    assert "at least 21.875 mm" in sentence


def test_the_hidden_overlap_is_the_designs_own():
    design = Design(art(), (wrapped_fillet("5/8"), mat(borders="2")), hidden_overlap=inch("1/8"))
    assert sizes_of(design).layers[0].hidden == all_round("1/8")


def test_a_border_that_hides_too_little_of_the_mat_below_is_refused():
    assert refusal(mat("1/4"), mat(borders="3/16")).startswith(
        "layer 1 hidden part, top is 3/16 in; at least 6 mm must run under the layer above"
    )


def test_a_last_fillet_without_a_face_is_refused():
    assert "layer 1 face is missing" in refusal(replace(wood_fillet(), face=None))


def test_a_liner_of_unknown_rabbet_cannot_size_what_lies_in_it():
    sentence = refusal(mat(borders="2"), liner(rabbet_width=None))
    assert sentence.startswith("layer 2 rabbet_width is missing; it is needed to size what lies")


def test_a_liner_of_unknown_rabbet_cannot_hold_a_pane_but_may_hold_a_canvas():
    pane = Glazing("glass", mm(2))
    assert "layer 1 rabbet_width is missing" in refusal(liner(rabbet_width=None), glazing=pane)
    sizes = sizes_of(Design(art(), (liner(rabbet_width=None),)))
    assert sizes.contents.lengths == (inch(16), inch(20))


def test_a_border_that_the_liner_covers_whole_is_refused():
    sentence = refusal(mat(borders="3/16"), liner())
    assert "layer 1 borders, top is 3/16 in; it must be wider than the" in sentence


def test_a_liner_whose_rabbet_is_all_play_is_refused():
    sentence = refusal(mat("1"), liner(rabbet_width="1/16"))
    assert "layer 2 rabbet_width is 1/16 in; it must hide more than half the play" in sentence


def test_art_that_would_not_go_into_the_liner_is_refused():
    sentence = refusal(liner(), art=art(overlap=inch("3/8")))
    assert sentence.startswith("art overlap is 3/8 in; the liner's rabbet has room for 3/16 in")


def test_art_that_would_reach_beyond_its_boards_is_refused():
    sentence = refusal(mat(borders="1/8"), art=art(overlap=inch("1/4")))
    assert "art overlap is 1/4 in; the boards reach only 1/8 in beyond the opening" in sentence


def test_several_openings_without_a_mat_are_refused():
    windows = (Window(inch(4), inch(4)),) * 2
    arrangement = Arrangement(windows, columns=2, gap=inch(1))
    assert "several openings need a mat" in refusal(liner(), arrangement=arrangement)


def test_strips_that_would_meet_between_two_openings_are_refused():
    windows = (Window(inch(4), inch(4)),) * 2
    arrangement = Arrangement(windows, columns=2, gap=inch("1/2"))
    sentence = refusal(wrapped_fillet("1/4"), mat(borders="2"), arrangement=arrangement)
    assert sentence.startswith("arrangement gap is 1/2 in; the hidden strips of layer 1 need 1 in")


def test_an_arrangement_that_cannot_be_laid_out_is_refused():
    window = Window(inch(4), inch(4))
    with pytest.raises(FieldError, match="windows is empty"):
        Arrangement((), columns=1)
    with pytest.raises(FieldError, match="columns is 2; 3 windows must fill every row"):
        Arrangement((window,) * 3, columns=2, gap=inch(1))
    with pytest.raises(FieldError, match="columns is 0"):
        Arrangement((window,), columns=0)
    with pytest.raises(FieldError, match="gap between openings is 0; "):
        Arrangement((window,) * 2, columns=2)
    with pytest.raises(FieldError, match="window 2 place is missing"):
        Arrangement((replace(window, x=ZERO, y=ZERO), window), columns=None)


@pytest.mark.parametrize("x", ["0", "2", "3 3/4"])
def test_free_openings_that_touch_are_refused(x):
    windows = (
        Window(inch(4), inch(4), x=ZERO, y=ZERO),
        Window(inch(4), inch(4), x=inch(x), y=ZERO),
    )
    arrangement = Arrangement(windows, columns=None)
    sentence = refusal(mat(borders="2"), art=art(overlap=inch("1/8")), arrangement=arrangement)
    assert "window 2 place" in sentence
    assert "move it away from window 1" in sentence


def test_an_outside_size_that_leaves_no_border_is_refused():
    with pytest.raises(
        FieldError, match="it must leave a border around the opening, 8 in by 10 in"
    ):
        borders_to_outer((inch(8), inch(10)), (inch(8), inch(12)))
    with pytest.raises(FieldError, match="only a mat is cut to an outside size"):
        fitted_to_outer(Design(art(), (liner(),)), (inch(20), inch(24)))
    with pytest.raises(FieldError, match="outer size is 0; "):
        fitted_to_outer(double_mat(), (ZERO, inch(24)))


def test_borders_are_weighted_by_a_share_of_themselves():
    assert weighted(inch(5)).bottom == inch(6)
    assert weighted(inch(5)).top == inch(5)
    with pytest.raises(FieldError, match="border is 0; "):
        weighted(ZERO)


def test_a_given_outside_size_of_the_handbooks_design_gives_its_borders_back():
    design = double_mat()
    outer = sizes_of(design).contents.lengths
    assert fitted_to_outer(design, outer, inch("1/2")) == design


def test_the_same_ratio_rule_keeps_the_outside_size_exact():
    borders = same_ratio_borders((inch(8), inch(4)), (inch(10), inch(8)))
    assert borders.vertical == inch(4)
    side, top, bottom = (
        float(length.as_inches()) for length in (borders.left, borders.top, borders.bottom)
    )
    assert abs(side / top - top / bottom) < 1e-4
