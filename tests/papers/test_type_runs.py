"""Fractions stand as fractions, and every line of text knows the room it takes."""

from itertools import pairwise

import pytest

from framing_palette.papers.font_files import text_width
from framing_palette.papers.shapes import Text
from framing_palette.papers.type_runs import SMALL, Box, box_of, line_width, runs_of


def words(text: str) -> list[str]:
    return [run.words for run in runs_of(Text((0, 0), text, 4.0))]


def test_a_fraction_is_parted_into_a_raised_small_top_a_stroke_and_a_small_bottom():
    top, stroke, bottom = runs_of(Text((0, 0), "3/8", 4.0))
    assert (top.words, stroke.words, bottom.words) == ("3", "/", "8")
    assert top.rise > 0 == bottom.rise
    assert top.size == bottom.size == pytest.approx(4.0 * SMALL)


def test_all_letters_are_kept_in_their_order():
    text = "about 16 3/8 in, less 2 × 1/8 in overlap"
    assert "".join(words(text)) == text


@pytest.mark.parametrize("text", ["1/1000", "4/3/2026", "1/2/3", "100/3", "no fraction", ""])
def test_what_is_no_fraction_of_an_inch_is_left_whole(text):
    assert words(text) == ([text] if text else [])


def test_the_space_before_a_fraction_is_narrow_and_only_there():
    assert line_width(Text((0, 0), "16 3/8", 4.0)) < line_width(Text((0, 0), "16  3/8", 4.0))
    assert words("of 3/8") == ["of ", "3", "/", "8"]


def test_runs_follow_each_other_without_gap():
    runs = runs_of(Text((0, 0), "16 3/8 in", 4.0))
    for before, after in pairwise(runs):
        width = text_width(before.words, "regular", before.size)
        assert after.offset == pytest.approx(before.offset + width)


@pytest.mark.parametrize(("anchor", "left"), [("start", 10.0), ("middle", 5.0), ("end", 0.0)])
def test_a_box_begins_where_the_anchor_says(anchor, left):
    width = line_width(Text((0, 0), "sixteen", 4.0))
    box = box_of(Text((10.0, 20.0), "sixteen", 4.0, anchor=anchor))
    assert box.left == pytest.approx(10.0 - (10.0 - left) / 10.0 * width)
    assert box.right - box.left == pytest.approx(width)
    assert box.top < 20.0 < box.bottom


def test_a_turned_line_takes_its_length_upward():
    flat, turned = (
        box_of(Text((50.0, 50.0), "16 3/8", 4.0, turned=turned)) for turned in (False, True)
    )
    assert turned.bottom - turned.top == pytest.approx(flat.right - flat.left)
    assert turned.bottom == pytest.approx(50.0)


def test_boxes_meet_only_when_they_overlap_both_ways():
    box = Box(0, 0, 10, 10)
    assert box.meets(Box(9, 9, 20, 20))
    assert not box.meets(Box(10, 0, 20, 10))
    assert not box.meets(Box(9, 9, 20, 20), by=1.5)
