"""The workshop's pages: measured twice, drawn, cut, put together, signed."""

from collections.abc import Sequence
from typing import Final

from framing_palette.papers.assembly import assembly
from framing_palette.papers.contents import PageName, TicketContents
from framing_palette.papers.cut_list import Cut, cut_list
from framing_palette.papers.face_drawing import face_drawing
from framing_palette.papers.paper_pdf import pdf_bytes
from framing_palette.papers.paper_sizes import PAPERS, Group, Paper, poured
from framing_palette.papers.qr_code import qr_code
from framing_palette.papers.section_drawing import section_drawing
from framing_palette.papers.setting import (
    Style,
    above,
    beside,
    listed,
    paragraph,
    ruled,
    space,
)
from framing_palette.papers.shapes import Drawing, joined
from framing_palette.papers.sheet_drawing import Stock, sheet_rows
from framing_palette.papers.stick_drawing import stick_bars
from framing_palette.papers.ticket_facts import facts_block, measured_blocks
from framing_palette.papers.ticket_parts import (
    BODY,
    HEAD,
    SMALL,
    SumLine,
    cut_blocks,
    headed,
    sign_off,
    step_blocks,
    sum_lines,
    sums_block,
)

NUMBER: Final = Style(26, "bold", leading=1.05)
TITLE: Final = Style(12)
QR_SIDE: Final = 25.0
FACTS_WIDTH: Final = 46.0
FACE_HEIGHT: Final = 96.0
LEAST_FACE_HEIGHT: Final = 48.0
SECTION_HEIGHTS: Final = (88.0, 112.0, 140.0)
WELL_ENLARGED: Final = 1.5
BETWEEN: Final = 5.0
MOST_SUMS_HEIGHT: Final = 200.0  # fits the shorter page with its head
UNIT_NAMES: Final = {"in": "inches", "mm": "millimetres", "cm": "centimetres"}


def ticket_pdf(contents: TicketContents, *, page: PageName = "A4") -> bytes:
    """Return the ticket as a PDF."""
    return pdf_bytes(
        ticket_pages(contents, page=page),
        title=f"Ticket {contents.number}: {contents.title}",
        author=contents.shop.name,
        subject=f"Workshop ticket for {contents.title}",
        at=contents.at,
    )


def ticket_pages(contents: TicketContents, *, page: PageName = "A4") -> tuple[Drawing, ...]:
    """Return the pages of the ticket."""
    paper = PAPERS[page]
    width = paper.inner_width
    cuts = cut_list(contents.cuttable, contents.samples)
    groups = (
        Group((_head(contents, width),)),
        _group("MEASURED TWICE", width, measured_blocks(contents, width)),
        _face(contents, width),
        _group(
            "CUTS",
            width,
            cut_blocks(cuts, contents.notation, width),
            aside=UNIT_NAMES[contents.notation.unit],
        ),
        _cautions(contents, width),
        _sticks(contents, width),
        _sheets(contents, width),
        _section(contents, width),
        _steps(contents, cuts, width),
        _group("SIGNED", width, [sign_off(width)]),
        _sums(contents, cuts, width),
    )
    foot_height = 6.0
    bodies = poured(groups, paper.inner_height - foot_height, BETWEEN)
    return tuple(
        _sheet(contents, paper, body, (number, len(bodies)))
        for number, body in enumerate(bodies, start=1)
    )


def _sheet(
    contents: TicketContents, paper: Paper, body: Drawing, place: tuple[int, int]
) -> Drawing:
    width = paper.inner_width
    number, count = place
    right = f"{contents.number} · {number} of {count}"
    room = SMALL.width(right) + 4.0
    foot = above(
        ruled(width),
        space(1.0),
        beside(
            paragraph(contents.notation.legend, SMALL, width - room),
            paragraph(right, SMALL, room, "end"),
        ),
    )
    top = paper.height - paper.foot - foot.height
    return joined(
        paper.width,
        paper.height,
        [body.moved(paper.side, paper.top), foot.moved(paper.side, top)],
    )


def _group(head: str, width: float, blocks: Sequence[Drawing], *, aside: str = "") -> Group:
    return Group(
        tuple(blocks),
        headed(head, width, aside=aside),
        headed(f"{head}, CONTINUED", width, aside=aside),
    )


def _head(contents: TicketContents, width: float) -> Drawing:
    left = width - QR_SIDE - 4.0
    at = contents.at
    invented = "invented shop, for demonstration only" if contents.shop.is_invented else ""
    shop = ", ".join(part for part in (contents.shop.name, invented) if part)
    facts = " · ".join(
        part for part in (contents.client, f"{at.day} {at:%B %Y}", contents.design.name) if part
    )
    words = above(
        paragraph("WORKSHOP TICKET", HEAD, left),
        space(1.2),
        paragraph(contents.number, NUMBER, left),
        paragraph(contents.title, TITLE, left),
        paragraph(facts, BODY, left),
        paragraph(shop, SMALL, left),
        paragraph(contents.note, BODY, left),
    )
    code = qr_code(contents.number, QR_SIDE)
    # The quiet zone may reach into the margin: the paper is white there too.
    quiet = 3.0
    return beside(
        Drawing(width - QR_SIDE + quiet, words.height, words.shapes), code.moved(0, -quiet)
    )


def _face(contents: TicketContents, width: float) -> Group:
    facts = facts_block(contents, FACTS_WIDTH)
    room = width - FACTS_WIDTH - 6.0
    height = max(FACE_HEIGHT, facts.height)
    face = face_drawing(contents.cuttable, contents.notation, (room, height))
    # The figures of a very low frame are longer than the frame is high.
    spare = max(0.0, LEAST_FACE_HEIGHT - face.height)
    centred = face.moved((room - face.width) / 2, spare / 2)
    padded = Drawing(room + 6.0, face.height + spare, centred.shapes)
    return _group("FACE, SEEN FROM THE FRONT", width, [beside(padded, facts)])


def _sticks(contents: TicketContents, width: float) -> Group:
    if contents.sticks is None:
        return Group(())
    kerf = contents.notation.said(contents.sticks.kerf_along)
    aside = f"each cut takes {kerf} along the stick"
    bars = stick_bars(contents.sticks, contents.notation, width)
    return _group("RAILS OUT OF STICKS", width, bars, aside=aside)


def _sheets(contents: TicketContents, width: float) -> Group:
    layers = enumerate(contents.cuttable.sizes.layers, start=1)
    openings = {number: layer.openings for number, layer in layers}
    stocks = [
        Stock(each.name, number, len(each.plan.sheets), sheet, each.numbers, openings)
        for each in contents.sheets
        for number, sheet in enumerate(each.plan.sheets, start=1)
    ]
    rows = sheet_rows(stocks, contents.notation, width)
    return _group("MATS OUT OF SHEETS", width, rows, aside="grey is left over")


def _section(contents: TicketContents, width: float) -> Group:
    for height in SECTION_HEIGHTS:
        found = section_drawing(
            contents.cuttable, contents.samples, contents.notation, (width, height)
        )
        if found.enlarged >= WELL_ENLARGED:
            break
    words = [f"right-hand side, {found.enlarged:g} times true size"]
    if found.is_broken:
        words.append("level parts shortened at the breaks")
    if found.is_plain:
        words.append("moulding's form not known, only its sizes")
    return _group("SECTION", width, [found.drawing], aside=", ".join(words))


def _steps(contents: TicketContents, cuts: tuple[Cut, ...], width: float) -> Group:
    steps = assembly(contents.cuttable, cuts, contents.notation, contents.weight)
    return _group("PUTTING IT TOGETHER", width, step_blocks(steps, width))


def _cautions(contents: TicketContents, width: float) -> Group:
    blocks = [
        above(listed([sentence], BODY, width, mark="!"), space(0.6))
        for sentence in contents.cautions
    ]
    return _group("CAUTIONS", width, blocks)


def _sums(contents: TicketContents, cuts: tuple[Cut, ...], width: float) -> Group:
    lines = sum_lines(cuts, contents.notation)
    return _group("HOW THE FIGURES WERE REACHED", width, _sum_blocks(lines, width))


def _sum_blocks(lines: tuple[SumLine, ...], width: float) -> list[Drawing]:
    """Return the sums in blocks, each no higher than a page holds."""
    if not lines:
        return []
    block = sums_block(lines, width)
    if block.height <= MOST_SUMS_HEIGHT or len(lines) == 1:
        return [block]
    middle = len(lines) // 2
    return [*_sum_blocks(lines[:middle], width), *_sum_blocks(lines[middle:], width)]
