"""Pouring: every block on some page, in order, within it, no heading alone at its foot."""

from hypothesis import given
from hypothesis import strategies as st

from framing_palette.papers.paper_sizes import PAPERS, Group, poured
from framing_palette.papers.shapes import Drawing, rectangle


def block(height: float, mark: float) -> Drawing:
    return Drawing(10.0, height, (rectangle(0, 0, 10, height, fill=mark),))


HEAD = Drawing(10.0, 4.0, (rectangle(0, 0, 10, 4, fill=2.0),))
OVER = Drawing(10.0, 4.0, (rectangle(0, 0, 10, 4, fill=3.0),))
heights = st.lists(st.lists(st.floats(1, 60), max_size=6), max_size=6)


@given(heights)
def test_every_block_is_on_some_page_in_its_order_and_within_the_page(groups):
    marks, made, mark = [], [], 0.0
    for group in groups:
        blocks = []
        for height in group:
            mark += 1e-3
            marks.append(mark)
            blocks.append(block(height, mark))
        made.append(Group(tuple(blocks), HEAD, OVER))
    pages = poured(made, 100.0, 5.0)
    found = [shape.fill for page in pages for shape in page.shapes if shape.fill < 2]
    assert found == marks
    assert all(page.height <= 100.0 + 1e-9 for page in pages)


@given(heights)
def test_a_heading_is_followed_by_a_block_and_repeated_where_its_group_goes_on(groups):
    pages = poured(
        [Group(tuple(block(h, 0.5) for h in group), HEAD, OVER) for group in groups], 100.0, 5.0
    )
    for number, page in enumerate(pages):
        fills = [shape.fill for shape in page.shapes]
        assert fills[-1] < 2
        assert number == 0 or fills[0] in (2.0, 3.0)
    headings = sum(shape.fill == 2.0 for page in pages for shape in page.shapes)
    assert headings == sum(bool(group) for group in groups)


def test_the_last_of_several_blocks_never_goes_over_the_page_alone():
    group = Group(tuple(block(23.0, 0.1 * n) for n in range(5)), HEAD, OVER)
    pages = poured([group], 100.0, 5.0)
    assert [len([s for s in page.shapes if s.fill < 2]) for page in pages] == [3, 2]


def test_nothing_makes_no_page():
    assert poured([Group(())], 100.0, 5.0) == ()


def test_papers_have_their_standard_sizes():
    assert (PAPERS["A4"].width, PAPERS["A4"].height) == (210.0, 297.0)  # ISO 216
    assert (PAPERS["Letter"].width, PAPERS["Letter"].height) == (215.9, 279.4)  # 8 1/2 x 11 in
