"""The ticket: every figure is on it, nothing lies over anything, and it is the same each time."""

from dataclasses import replace
from io import BytesIO

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from framing_palette.papers import Notation, ticket_pdf
from framing_palette.papers.cut_list import cut_list
from framing_palette.papers.ticket import ticket_pages
from tests.design.random_stacks import designs
from tests.papers.layouts import outside, overlaps
from tests.papers.made_up import (
    NOON,
    all_designs,
    plain,
    readings,
    rich,
    several,
    ticket_of,
    words_of,
)

NOTATIONS = [Notation("mm"), Notation("in", "mm")]


def figures_of(contents):
    """Every figure that must be readable on a ticket, as it is written there."""
    cuttable, said = contents.cuttable, contents.notation.figures
    sizes, depth = cuttable.sizes, cuttable.depth
    for cut in cut_list(cuttable, contents.samples):
        for measure in cut.measures:
            yield from (said(sized.length) for sized in measure.sizes)
    yield from (said(length) for length in (*sizes.outer.lengths, *sizes.contents.lengths))
    yield said(depth.stack.value)
    if sizes.frame:
        yield from (
            said(length) for length in (*sizes.frame.rabbet.lengths, *sizes.frame.sight.lengths)
        )
        yield said(sizes.frame.moulding_length.value)
        yield said(depth.rabbet_depth)
    for measured in contents.measured:
        for reading in (measured.first, measured.second, measured.agreed):
            yield from (said(reading.width), said(reading.height))


@pytest.mark.parametrize("name", all_designs())
@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_words_lie_apart_and_inside_the_page(name, page):
    for notation in NOTATIONS:
        for drawing in ticket_pages(ticket_of(all_designs()[name], notation), page=page):
            assert not overlaps(drawing)
            assert not outside(drawing)


@settings(
    max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)  # fmt: skip
@given(designs(), st.sampled_from(NOTATIONS), st.sampled_from(["A4", "Letter"]))
def test_any_design_that_can_be_cut_has_a_ticket_without_text_over_text(design, notation, page):
    contents = ticket_of(design, notation, samples={})
    for drawing in ticket_pages(contents, page=page):
        assert not overlaps(drawing)
        assert not outside(drawing)


@pytest.mark.parametrize("name", all_designs())
def test_every_figure_of_the_sizes_can_be_read_on_the_pages(name):
    contents = ticket_of(all_designs()[name], Notation("in", "mm"))
    words = words_of(ticket_pdf(contents)).replace("≈ ", "")
    missing = [f for f in figures_of(contents) if f.replace("≈ ", "") not in words]
    assert not missing


def test_both_measurements_stand_on_it_with_initials_and_times():
    words = words_of(ticket_pdf(ticket_of(plain())))
    assert "AE, 4 Mar 2026, 12:00" in words
    assert "BX, 4 Mar 2026, 14:00" in words
    assert "diagonals not taken" in words


def test_diagonals_and_a_lean_are_told():
    from framing_palette.design import agree, check_cuttable, with_measured_art
    from framing_palette.papers import MeasuredArt
    from framing_palette.units import Length

    width, height = Length.inches(16), Length.inches(20)
    leaning = Length.inches("25 7/8"), Length.inches("25 3/8")
    first, second = (replace(r, diagonals=leaning) for r in readings(width, height))
    agreed = agree(first, second)
    cuttable = check_cuttable(with_measured_art(plain(), agreed))
    contents = ticket_of(plain(), cuttable=cuttable, measured=(MeasuredArt.of((first, second)),))
    words = words_of(ticket_pdf(contents))
    assert "diagonals 25 7/8 × 25 3/8 in" in words
    assert "out of square by" in words


def test_a_square_piece_says_so():
    width, height = plain().art.width, plain().art.height
    from framing_palette.papers import MeasuredArt
    from framing_palette.units import Length

    square = Length.inches("25 5/8"), Length.inches("25 5/8")
    pair = tuple(replace(r, diagonals=square) for r in readings(width, height))
    words = words_of(ticket_pdf(ticket_of(plain(), measured=(MeasuredArt.of(pair),))))
    assert "square by its diagonals" in words


def test_the_same_contents_give_the_same_bytes():
    assert ticket_pdf(ticket_of(rich())) == ticket_pdf(ticket_of(rich()))


def test_all_fonts_are_embedded():
    from pypdf import PdfReader

    reader = PdfReader(BytesIO(ticket_pdf(ticket_of(plain()))))
    for page in reader.pages:
        for font in page["/Resources"]["/Font"].values():
            descriptor = font.get_object().get("/FontDescriptor")
            assert descriptor is not None
            assert "/FontFile2" in descriptor.get_object()


def test_the_document_names_the_job_and_its_language():
    from pypdf import PdfReader

    reader = PdfReader(BytesIO(ticket_pdf(ticket_of(plain()))))
    assert reader.metadata.title == "Ticket 2026-0147: Ferry at dusk"
    assert reader.trailer["/Root"]["/Lang"] == "en"
    assert reader.metadata.creation_date == NOON


@pytest.mark.parametrize(("page", "size"), [("A4", (595.3, 841.9)), ("Letter", (612.0, 792.0))])
def test_pages_have_the_size_of_their_paper(page, size):
    from pypdf import PdfReader

    box = PdfReader(BytesIO(ticket_pdf(ticket_of(plain()), page=page))).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(size, abs=0.1)


def test_every_page_carries_the_number_and_its_place():
    pages = ticket_pages(ticket_of(rich()))
    for place, page in enumerate(pages, start=1):
        words = [text.words for text in page.texts]
        assert f"2026-0147 · {place} of {len(pages)}" in words


def test_the_cautions_of_the_design_are_all_on_it():
    contents = ticket_of(rich())
    words = words_of(ticket_pdf(contents))
    for caution in contents.cuttable.cautions:
        assert " ".join(caution.sentence.split()) in words.replace("! ", "")


def test_one_measurement_for_several_equal_pieces_is_warned_of_first():
    contents = ticket_of(several(), measured=ticket_of(several()).measured[:1])
    assert contents.cautions[0].startswith("One of 6 pieces was measured for all")
    assert "Art 1 of 6" in words_of(ticket_pdf(contents))


def test_the_sticks_show_every_rail_and_what_is_left():
    contents = ticket_of(plain())
    words = words_of(ticket_pdf(contents))
    stick = contents.sticks.sticks[0]
    assert f"left over {contents.notation.said(stick.left_over)}" in words
    for piece in stick.pieces:
        assert f"{piece.name} {contents.notation.figures(piece.length)}" in words


def test_sums_are_told_once_with_the_numbers_of_their_cuts():
    from framing_palette.papers.ticket_parts import sum_lines

    contents = ticket_of(plain())
    lines = sum_lines(cut_list(contents.cuttable, contents.samples), contents.notation)
    assert len({line.words for line in lines}) == len(lines)
    outside_lines = [line for line in lines if line.words.startswith("outside, wide")]
    assert [line.numbers for line in outside_lines] == [(1, 2, 3)]  # mat, glazing, backing
    assert "2 × 2 1/2 in border" in outside_lines[0].words


def test_long_names_and_notes_are_kept_whole():
    long = "Everything that anybody ever wrote on the back of a canvas " * 4
    contents = ticket_of(plain(), title=long.strip(), client=long.strip(), note=long.strip())
    pages = ticket_pages(contents)
    assert not any(overlaps(page) or outside(page) for page in pages)
    assert " ".join(long.split()) in words_of(ticket_pdf(contents))


def test_an_unknown_name_in_another_script_does_not_break_the_page():
    words = words_of(ticket_pdf(ticket_of(plain(), client="山田 Žižka", at=NOON)))
    assert "Žižka" in words


def test_a_rounded_figure_is_marked_and_the_rounding_told():
    words = words_of(ticket_pdf(ticket_of(plain())))
    assert "≈ means rounded to the nearest 1/32 in" in words
    # 26 1/8 in of glass cut in 32nds is exact, the frame of a 6.5 mm rabbet is not.
    contents = ticket_of(plain())
    assert contents.notation.figures(contents.cuttable.sizes.frame.sight.lengths[0])[0] == "≈"
    assert contents.notation.figures(contents.cuttable.sizes.contents.lengths[0]) == "20 3/4"
