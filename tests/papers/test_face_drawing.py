"""The face drawing shows every edge at its true place, and its figures clear of each other."""

from itertools import pairwise

import pytest

from framing_palette.design import check_cuttable
from framing_palette.papers.contents import Notation
from framing_palette.papers.face_drawing import face_drawing, full_size_face
from framing_palette.papers.outlines import outlines_of
from framing_palette.papers.shapes import Oval, Polygon
from tests.papers.layouts import overlaps
from tests.papers.made_up import all_designs, plain, several

BOX = (124.0, 96.0)


def cuttable_of(design):
    return check_cuttable(design, out_of_rabbet=True)


def boxes(drawing, part):
    found = []
    for shape in drawing.shapes:
        if isinstance(shape, Polygon) and shape.part == part and shape.pen:
            xs, ys = zip(*shape.points, strict=True)
            found.append((min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)))
    return found


@pytest.mark.parametrize("name", all_designs())
@pytest.mark.parametrize("notation", [Notation("in"), Notation("in", "mm"), Notation("cm", "in")])
def test_the_drawing_keeps_to_its_box_and_its_words_apart(name, notation):
    drawing = face_drawing(cuttable_of(all_designs()[name]), notation, BOX)
    assert drawing.width <= BOX[0] + 1e-6
    assert drawing.height <= BOX[1] + 1e-6 + 0.5
    assert not overlaps(drawing)


def test_at_full_size_frame_and_openings_are_as_large_as_they_are_cut():
    cuttable = cuttable_of(plain())
    drawing = full_size_face(cuttable, Notation("in"))
    outside = max(boxes(drawing, "frame"), key=lambda box: box[2])
    rails = {rail.side: rail.long_point.value.as_float_mm() for rail in cuttable.sizes.frame.rails}
    assert outside[2:] == pytest.approx((rails["top"], rails["right"]))
    opening = min(boxes(drawing, "layer 1"), key=lambda box: box[2])
    sizes = [length.as_float_mm() for length in cuttable.sizes.layers[0].opening.size.lengths]
    assert opening[2:] == pytest.approx(sizes)


def test_an_oval_opening_is_drawn_as_an_oval():
    cuttable = cuttable_of(all_designs()["oval"])
    drawing = full_size_face(cuttable, Notation("mm"))
    ovals = [s for s in drawing.shapes if isinstance(s, Oval) and s.part == "layer 1"]
    assert min(o.width for o in ovals) == pytest.approx(300 - 6)
    assert min(o.height for o in ovals) == pytest.approx(400 - 6)


def test_each_of_several_openings_carries_its_number():
    drawing = face_drawing(cuttable_of(several()), Notation("in"), BOX)
    words = [text.words for text in drawing.texts]
    assert [f"opening {n}" for n in range(1, 7)] == [w for w in words if w.startswith("opening")]


@pytest.mark.parametrize("name", all_designs())
def test_each_edge_lies_inside_the_one_around_it(name):
    design = all_designs()[name]
    outlines = outlines_of(design, cuttable_of(design).sizes)
    frame = [edge for edge in (outlines.sight, outlines.rabbet, outlines.outside) if edge]
    for inner, outer in pairwise(frame):
        assert max(outer.left - inner.left, outer.top - inner.top) < 0
        assert min(outer.right - inner.right, outer.bottom - inner.bottom) > 0
    for holes in outlines.holes:
        for hole in holes:
            assert outlines.outside.left < hole.rect.left
            assert outlines.outside.bottom > hole.rect.bottom


def test_the_borders_of_the_mat_are_dimensioned_on_it():
    drawing = face_drawing(cuttable_of(plain()), Notation("in"), (200.0, 200.0))
    words = [text.words for text in drawing.texts]
    assert words.count("2 1/2") == 3
    assert "3" in words
