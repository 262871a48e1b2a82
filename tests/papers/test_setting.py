"""Setting type: lines no wider than they may be, nothing lost, blocks where they belong."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.papers.font_files import FOLDER, showable
from framing_palette.papers.setting import (
    Style,
    above,
    beside,
    listed,
    paragraph,
    ruled,
    space,
    wrapped,
)
from framing_palette.papers.shapes import Drawing, rectangle
from framing_palette.papers.type_runs import box_of
from tests.papers.layouts import overlaps

BODY = Style(9)


@given(
    st.lists(st.text(st.characters(min_codepoint=33, max_codepoint=382), max_size=30), max_size=20),
    st.floats(8, 120),
)
def test_wrapped_lines_fit_their_width_and_keep_every_letter(words, width):
    text = " ".join(words)
    lines = wrapped(text, BODY, width)
    assert all(BODY.width(line) <= width + 1e-6 or len(line) == 1 for line in lines)
    assert "".join("".join(lines).split()) == "".join(showable(text).split())


@pytest.mark.parametrize("size", ["16 3/8 in", "≈ 26 15/32", "100 %", "12 lux", "20 × 30"])
def test_a_size_is_never_parted_at_the_end_of_a_line(size):
    for fill in range(1, 60):
        lines = wrapped(f"{'x' * fill} {size} and so on", BODY, 55.0)
        assert any(size in line for line in lines)


def test_a_line_break_in_the_words_is_kept():
    assert wrapped("one\ntwo", BODY, 100.0) == ("one", "two")


def test_letters_that_the_face_lacks_show_as_squares_and_control_signs_as_spaces():
    assert showable("a\u0007b\u4e2d") == "a b\N{WHITE SQUARE}"
    assert (
        showable("Łukasz Žižek, Ελένη, Юрий, Ørsted ≈ ½") == "Łukasz Žižek, Ελένη, Юрий, Ørsted ≈ ½"
    )


def test_the_licence_of_the_typeface_lies_beside_it():
    licence = (FOLDER / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert "tyPoland Lukasz Dziedzic" in licence


def test_a_paragraph_takes_as_much_height_as_its_lines():
    block = paragraph("word " * 40, BODY, 50.0)
    assert block.height == pytest.approx(len(block.texts) * BODY.line_height)
    assert all(box_of(t).top >= 0 and box_of(t).bottom <= block.height for t in block.texts)
    assert not overlaps(block)


def test_no_words_take_no_room():
    assert paragraph("", BODY, 50.0).height == 0
    assert above(paragraph("", BODY, 50.0), space(3.0), gap=9.0).height == 3.0


def test_blocks_stand_one_above_the_other_with_gaps_between_only():
    block = above(*(Drawing(10, 5, (rectangle(0, 0, 10, 5),)) for _ in range(3)), gap=2.0)
    tops = [shape.points[0][1] for shape in block.shapes]
    assert tops == [0, 7, 14]
    assert block.height == 19


def test_blocks_stand_one_beside_the_other_with_gaps_between_only():
    block = beside(*(Drawing(10, 5, (rectangle(0, 0, 10, 5),)) for _ in range(3)), gap=2.0)
    assert [shape.points[0][0] for shape in block.shapes] == [0, 12, 24]
    assert (block.width, block.height) == (34, 5)


def test_sentences_of_a_list_hang_beside_their_marks():
    block = listed(["one two three " * 6, "four"], BODY, 40.0)
    marks = [text for text in block.texts if text.words == "–"]
    others = [text for text in block.texts if text.words != "–"]
    assert len(marks) == 2
    assert all(box_of(mark).right < min(box_of(t).left for t in others) for mark in marks)


def test_a_rule_is_as_wide_as_told():
    (line,) = ruled(70.0).shapes
    assert (line.start, line.end) == ((0.0, 0.0), (70.0, 0.0))


def test_text_at_the_end_of_a_width_ends_there():
    (text,) = paragraph("16 3/8", BODY, 50.0, "end").texts
    assert box_of(text).right == pytest.approx(50.0)
