"""Strips of fillets and liners."""

from framing_palette.design import Arrangement, Art, Design, Window, sizes_of, strip_frames
from tests.design.shop import art, inch, liner, mat, wood_fillet, wrapped_fillet


def frames(*layers, **facts):
    return strip_frames(sizes_of(Design(facts.pop("art", art()), layers, **facts)))


def cut(frame):
    return [(s.side, s.long_side.value.figures("in"), s.short_side.value.figures("in")) for s in frame.strips]  # fmt: skip


def test_mitred_strips_reach_the_outside_corners():
    (frame,) = frames(wrapped_fillet("1/4"), mat(borders="3"))
    assert cut(frame) == [
        ("top", "17 1/4", "15 3/4"), ("right", "21 1/4", "19 3/4"),
        ("bottom", "17 1/4", "15 3/4"), ("left", "21 1/4", "19 3/4"),
    ]  # fmt: skip
    assert frame.strip_length == inch(77)
    assert not frame.is_trimmed
    assert frame.strips[0].long_side.how("in") == "15 3/4 in opening, plus 2 x 3/4 in strip"


def test_of_butted_strips_top_and_bottom_run_through():
    (frame,) = frames(wrapped_fillet("1/4", join="butt"), mat(borders="3"))
    assert cut(frame) == [
        ("top", "17 1/4", "17 1/4"), ("right", "19 3/4", "19 3/4"),
        ("bottom", "17 1/4", "17 1/4"), ("left", "19 3/4", "19 3/4"),
    ]  # fmt: skip
    assert frame.join == "butt"


def test_a_joined_frame_that_would_pass_the_mats_is_trimmed_and_a_step_says_so():
    (frame,) = frames(wrapped_fillet("1/4", face="3"), mat(borders="1"))
    assert frame.is_trimmed
    assert [length.figures("in") for length in frame.joined.lengths] == ["21 3/4", "25 3/4"]
    assert [length.figures("in") for length in frame.trimmed.lengths] == ["18 1/4", "22 1/4"]
    assert any("Trim the outside to 18 1/4 in by 22 1/4 in" in step for step in frame.steps)


def test_the_steps_fit_the_join_and_the_material():
    (mitred,) = frames(wrapped_fillet("1/4"), mat(borders="3"))
    (butted,) = frames(wood_fillet("1/8", join="butt", face="1/2"), mat(borders="3"))
    (lined,) = frames(liner())
    assert any("45 degrees" in step and "mind the blade" in step for step in mitred.steps)
    assert any("acid-free tape" in step for step in mitred.steps)
    assert any("Cut the ends square" in step for step in butted.steps)
    assert any("Glue the joints sparingly" in step for step in butted.steps)
    assert not any("behind the layer above" in step for step in lined.steps)
    assert any("17 1/4 in by 21 1/4 in, and both diagonals" in step for step in mitred.steps)


def test_every_opening_of_an_arrangement_has_strips_of_its_own():
    windows = (Window(inch(4), inch(6)), Window(inch(5), inch(6)))
    found = frames(
        wrapped_fillet("1/4"),
        mat(borders="2"),
        art=Art(inch(4), inch(6), overlap=inch("1/8")),
        arrangement=Arrangement(windows, columns=2, gap=inch(2)),
    )
    assert [(f.layer_number, f.opening_number) for f in found] == [(1, 1), (1, 2)]
    assert found[1].strips[0].long_side.value - found[0].strips[0].long_side.value == inch(1)


def test_mats_and_fillets_of_unknown_face_have_no_strips():
    assert frames(mat("1/4"), mat(borders="2")) == ()
