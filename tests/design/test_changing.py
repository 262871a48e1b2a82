from dataclasses import replace

import pytest

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.design import Art, Glazing, check_cuttable, compose
from framing_palette.design.changing import (
    borders_of,
    foot_of,
    recomposed,
    samples_in_order,
    shown_width,
    with_art,
    with_foot,
    with_shown_width,
)
from framing_palette.errors import FieldError
from framing_palette.units import Length

inch = Length.inches
ART = Art(inch(16), inch(20), overlap=inch("1/8"))


def sample(code: str, kind: Kind, **measures: Length) -> Sample:
    given = {"thickness": Length.mm_of("1.4"), **measures}
    return Sample(code, code, kind, (SampleColour((50.0, 0.0, 0.0), 1.0),), **given)


INNER, OUTER, THIRD = (sample(code, Kind.MAT) for code in ("inner", "outer", "third"))
FILLET = sample("fillet", Kind.WRAPPED_FILLET, face=Length.mm_of(20), bevel=Length.mm_of(6))
FRAME = sample(
    "frame", Kind.MOULDING, face=inch("1 1/2"), rabbet_width=inch("1/4"), rabbet_depth=inch("5/8")
)
RACK = Catalogue((INNER, OUTER, THIRD, FILLET, FRAME))
TWO_MATS = with_shown_width(compose((INNER, OUTER, FRAME), ART), "layer 1", inch("3/8"))


def test_samples_come_back_from_the_art_outward_with_the_moulding_last() -> None:
    assert samples_in_order(TWO_MATS, RACK) == (INNER, OUTER, FRAME)


def test_a_layer_measured_by_hand_has_no_sample_to_give() -> None:
    by_hand = replace(TWO_MATS, layers=(replace(TWO_MATS.layers[0], code=""), TWO_MATS.layers[1]))
    with pytest.raises(FieldError, match="measured by hand"):
        samples_in_order(by_hand, RACK)


def test_the_same_samples_give_the_same_design_back() -> None:
    assert recomposed(TWO_MATS, (INNER, OUTER, FRAME)) == TWO_MATS


def test_another_mat_in_the_same_place_keeps_the_width_that_was_settled() -> None:
    changed = recomposed(TWO_MATS, (THIRD, OUTER, FRAME))
    assert shown_width(changed, "layer 1") == inch("3/8")
    assert shown_width(changed, "layer 2") == shown_width(TWO_MATS, "layer 2")


def test_turning_two_mats_round_gives_the_borders_to_the_one_that_is_outermost_now() -> None:
    weighted = with_foot(TWO_MATS, inch("1/2"))
    turned = recomposed(weighted, (OUTER, INNER, FRAME))
    assert turned.layers[1].code == "inner"
    assert borders_of(turned) == borders_of(weighted)
    assert turned.layers[0].reveal is not None
    check_cuttable(turned)


def test_a_layer_more_and_a_layer_less_can_both_be_cut() -> None:
    more = recomposed(TWO_MATS, (FILLET, INNER, OUTER, FRAME))
    assert [layer.code for layer in more.layers] == ["fillet", "inner", "outer"]
    assert shown_width(more, "layer 2") == inch("3/8")
    check_cuttable(more)
    less = recomposed(more, (OUTER, FRAME))
    assert borders_of(less) == borders_of(TWO_MATS)
    check_cuttable(less)


def test_glazing_play_and_name_are_not_touched_by_other_samples() -> None:
    assert TWO_MATS.moulding is not None
    own = replace(
        TWO_MATS,
        glazing=Glazing("acrylic", Length.mm_of(3)),
        spacer=Length.mm_of(3),
        name="The quiet one",
        moulding=replace(TWO_MATS.moulding, allowance=inch("3/16"), clearance=inch("1/16")),
    )
    changed = recomposed(own, (THIRD, OUTER, FRAME))
    assert (changed.glazing, changed.spacer, changed.name) == (own.glazing, own.spacer, own.name)
    assert changed.moulding == own.moulding


def test_a_moulding_can_be_taken_away_and_put_on() -> None:
    bare = recomposed(TWO_MATS, (INNER, OUTER))
    assert bare.moulding is None
    assert recomposed(bare, (INNER, OUTER, FRAME)).moulding == TWO_MATS.moulding


def test_a_wider_border_keeps_the_foot_that_was_asked_for() -> None:
    weighted = with_foot(TWO_MATS, inch("1/2"))
    wider = with_shown_width(weighted, "layer 2", inch(4))
    borders = borders_of(wider)
    assert borders is not None
    assert (borders.right, borders.top, borders.bottom) == (inch(4), inch(4), inch("4 1/2"))
    assert foot_of(wider) == inch("1/2")


def test_the_width_of_the_art_part_is_its_overlap() -> None:
    assert shown_width(with_shown_width(TWO_MATS, "art", inch("1/4")), "art") == inch("1/4")


def test_a_part_without_a_width_of_its_own_says_so() -> None:
    assert shown_width(TWO_MATS, "moulding") is None
    with pytest.raises(FieldError, match="moulding width"):
        with_shown_width(TWO_MATS, "moulding", inch(1))


def test_a_width_that_leaves_nothing_is_refused() -> None:
    with pytest.raises(FieldError):
        with_shown_width(TWO_MATS, "layer 1", Length.mm_of(0))


def test_a_foot_needs_a_mat() -> None:
    bare = recomposed(TWO_MATS, (FRAME,))
    assert borders_of(bare) is None
    assert foot_of(bare) == Length.mm_of(0)
    with pytest.raises(FieldError, match="add a mat first"):
        with_foot(bare, inch(1))


def test_art_of_another_size_leaves_all_widths_as_they_are() -> None:
    other = with_art(TWO_MATS, inch(10), inch(8))
    assert (other.art.width, other.art.height) == (inch(10), inch(8))
    assert other.layers == TWO_MATS.layers
