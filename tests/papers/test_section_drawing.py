"""The section drawing is to scale, says what it shortens, and keeps its figures apart."""

import pytest

from framing_palette.design import check_cuttable
from framing_palette.papers.contents import Notation
from framing_palette.papers.section_drawing import section_drawing
from framing_palette.papers.section_scene import shortened
from framing_palette.papers.shapes import Polygon
from tests.papers.layouts import overlaps
from tests.papers.made_up import SAMPLES, all_designs, plain, rich

BOX = (176.0, 88.0)


def drawn(design, notation=Notation("in"), box=BOX, **more):  # noqa: B008 - frozen
    cuttable = check_cuttable(design, out_of_rabbet=True)
    return section_drawing(cuttable, SAMPLES, notation, box, **more)


@pytest.mark.parametrize("name", all_designs())
@pytest.mark.parametrize("notation", [Notation("in"), Notation("in", "mm"), Notation("cm", "in")])
def test_words_lie_apart_and_within_the_width(name, notation):
    found = drawn(all_designs()[name], notation)
    assert not overlaps(found.drawing)
    assert found.drawing.width <= BOX[0] + 1e-6


def frame_size(found):
    outline = next(
        s for s in found.drawing.shapes
        if isinstance(s, Polygon) and s.part == "moulding" and s.pen
    )  # fmt: skip
    xs, ys = zip(*outline.points, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def test_the_moulding_is_drawn_in_true_proportions_at_the_stated_scale():
    found = drawn(plain())
    assert frame_size(found) == pytest.approx((32 * found.enlarged, 28 * found.enlarged))


def test_a_scale_of_its_own_leaves_nothing_out():
    found = drawn(plain(), box=(0.0, 0.0), scale=1.0)
    assert not found.is_broken
    assert frame_size(found) == pytest.approx((32, 28))


def test_a_wide_border_is_shortened_and_the_reveals_are_not():
    found = drawn(rich())
    assert found.is_broken
    reveals = {"1/4", "≈ 1/4", "≈ 13/32"}
    assert reveals <= {text.words for text in found.drawing.texts}


def test_shortening_takes_out_exactly_the_stretches():
    breaks = ((10.0, 30.0), (40.0, 45.0))
    assert [shortened(u, breaks) for u in (5, 10, 20, 30, 42, 50)] == [5, 10, 10, 10, 20, 25]


def test_the_depths_of_stack_and_rabbet_are_dimensioned():
    cuttable = check_cuttable(plain())
    words = {text.words for text in drawn(plain()).drawing.texts}
    notation = Notation("in")
    assert notation.figures(cuttable.depth.stack.value) in words
    assert notation.figures(cuttable.depth.rabbet_depth) in words


def test_all_pieces_carry_their_numbers():
    words = [text.words for text in drawn(rich()).drawing.texts]
    assert {str(number) for number in range(1, 11)} <= set(words)
    assert "art" in words
