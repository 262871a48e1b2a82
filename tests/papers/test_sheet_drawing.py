"""Mats drawn on their stock sheets: every blank in its place, numbered as in the cut list."""

from dataclasses import replace

from framing_palette.design import Blank, Shape, plan_sheets, sizes_of
from framing_palette.papers import Notation, StockSheets, ticket_pdf
from framing_palette.papers.cut_list import cut_list
from framing_palette.papers.shapes import Oval, Polygon, Text
from framing_palette.papers.sheet_drawing import Stock, sheet_rows
from framing_palette.papers.ticket import ticket_pages
from tests.papers.layouts import outside, overlaps
from tests.papers.made_up import Art, all_designs, inch, mm, plain, several, ticket_of, words_of

MAT_SHEET = mm(813), mm(1016)
INCH = Notation("in")


def stock_of(design, *, turned=False) -> Stock:
    """The outermost mat of a design on one sheet of its own."""
    sizes = sizes_of(design)
    number = len(design.layers)
    width, height = sizes.contents.lengths
    sheet = (height, width) if turned else (width * 2, height * 2)
    plan = plan_sheets([Blank("mat", width, height)], sheet)
    return Stock(
        "M-ONE", 1, 1, plan.sheets[0], {"mat": number}, {number: sizes.layers[-1].openings}
    )


def boxes(drawing, part) -> list[tuple[float, float, float, float]]:
    """Left, top, width and height of the rectangles and ovals of a part."""
    found = []
    for shape in drawing.shapes:
        if isinstance(shape, Polygon) and shape.part == part:
            xs, ys = zip(*shape.points, strict=True)
            found.append((min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)))
        elif isinstance(shape, Oval) and shape.part == part:
            x, y = shape.centre
            found.append((x - shape.width / 2, y - shape.height / 2, shape.width, shape.height))
    return found


def near(one, other):
    return all(abs(a - b) < 0.02 for a, b in zip(one, other, strict=True))


def test_a_blank_and_its_opening_lie_true_to_scale_on_the_sheet():
    """Twice as wide and high a sheet: the blank takes a quarter, its opening keeps its borders."""
    (row,) = sheet_rows([stock_of(plain())], INCH, 176.0)
    (sheet,), (blank,) = boxes(row, "sheet"), boxes(row, "blank")
    (opening,) = boxes(row, "opening")
    assert near(blank, (sheet[0], sheet[1], sheet[2] / 2, sheet[3] / 2))
    scale = blank[2] / sizes_of(plain()).contents.width.value.as_float_mm()
    border = inch("2 1/2").as_float_mm() * scale
    assert near(opening[:2], (blank[0] + border, blank[1] + border))
    assert near(opening[2:], (blank[2] - 2 * border, blank[3] - border - border * 3 / 2.5))


def test_a_turned_blank_has_its_openings_turned_with_it():
    """A quarter turn clockwise: the wide foot of the mat comes to lie on the left."""
    (row,) = sheet_rows([stock_of(plain(), turned=True)], INCH, 176.0)
    (blank,), (opening,) = boxes(row, "blank"), boxes(row, "opening")
    assert blank[2] > blank[3]
    left, right = opening[0] - blank[0], blank[0] + blank[2] - opening[0] - opening[2]
    assert abs(left / right - 3 / 2.5) < 0.01
    assert "lies turned" in " ".join(text.words for text in row.texts)


def test_an_oval_opening_is_drawn_as_one():
    oval = replace(plain(), art=Art(inch(16), inch(20), overlap=inch("1/8"), shape=Shape.OVAL))
    (row,) = sheet_rows([stock_of(oval)], INCH, 176.0)
    assert [type(shape) for shape in row.shapes if getattr(shape, "part", "") == "opening"] == [
        Oval
    ]


def test_the_number_in_the_ring_is_the_one_of_the_cut_list_and_the_size_stands_below():
    contents = ticket_of(plain())
    (stock,) = contents.sheets
    number = cut_list(contents.cuttable, contents.samples)[0].number
    assert stock.numbers == {"cut 1": number}
    (row,) = sheet_rows(
        [Stock(stock.name, 1, 1, stock.plan.sheets[0], stock.numbers, {})], INCH, 176.0
    )
    words = [shape.words for shape in row.shapes if isinstance(shape, Text)]
    assert str(number) in words
    assert "cut 1: 20 3/4 × 25 1/4 in" in words
    assert "Sheet, ≈ 32 × 40 in" in words
    share = 1 - (20.75 * 25.25) / (813 * 1016 / 645.16)
    assert f"{round(100 * share)} % of it is left over" in words


def test_like_mats_share_a_sheet_and_many_sheets_go_on_in_rows():
    blanks = [Blank(f"cut {n}", mm(400), mm(500)) for n in range(1, 10)]
    plan = plan_sheets(blanks, MAT_SHEET)
    numbers = {blank.name: n for n, blank in enumerate(blanks, start=1)}
    stocks = [
        Stock("M", place, len(plan.sheets), sheet, numbers, {})
        for place, sheet in enumerate(plan.sheets, start=1)
    ] * 2
    rows = sheet_rows(stocks, INCH, 176.0)
    assert len(plan.sheets) == 3
    assert len(rows) == 2
    assert any("Sheet 2 of 3" in text.words for row in rows for text in row.texts)
    for row in rows:
        assert not overlaps(row)
        assert row.width <= 176.01


def test_a_blank_without_a_number_is_called_by_its_name():
    plan = plan_sheets([Blank("job 7, layer 2", mm(400), mm(500))], MAT_SHEET)
    (row,) = sheet_rows([Stock("M", 1, 1, plan.sheets[0], {}, {})], Notation("mm"), 176.0)
    assert any(text.words.startswith("job 7, layer 2:") for text in row.texts)


def test_the_ticket_shows_every_sheet_and_grows_by_no_more_than_a_page():
    for name in ("rich", "several", "oval"):
        contents = ticket_of(all_designs()[name])
        bare = replace(contents, sheets=())
        assert len(ticket_pages(contents)) <= len(ticket_pages(bare)) + 1, name
        if contents.sheets:
            assert "MATS OUT OF SHEETS" in words_of(ticket_pdf(contents)), name


def test_a_mat_of_many_openings_goes_on_over_the_page_with_its_number():
    """Thirty windows have more measures than a page holds."""
    design = several()
    windows = design.arrangement.windows[:1] * 30
    many = replace(design, arrangement=replace(design.arrangement, windows=windows, columns=6))
    sheets = (StockSheets("none", plan_sheets([], MAT_SHEET)),)
    pages = ticket_pages(ticket_of(many, Notation("in", "mm"), sheets=sheets))
    for page in pages:
        assert not outside(page)
        assert not overlaps(page)
    assert sum("Mat, continued" in text.words for page in pages for text in page.texts) >= 6
