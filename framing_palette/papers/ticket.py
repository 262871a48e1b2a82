"""The workshop's pages: measured twice, numbered cuts, drawings, assembly, cautions."""

from typing import Final

from framing_palette.papers.contents import PageName, TicketContents
from framing_palette.papers.cut_list import Cut, cut_list
from framing_palette.papers.paper_pdf import pdf_bytes
from framing_palette.papers.paper_sizes import PAPERS, Paper, poured
from framing_palette.papers.setting import (
    HAIR,
    RULE,
    Style,
    above,
    beside,
    listed,
    paragraph,
    ruled,
    space,
)
from framing_palette.papers.shapes import Drawing, joined, rectangle

NUMBER: Final = Style(24, "bold", leading=1.1)
TITLE: Final = Style(11)
HEAD: Final = Style(8, "bold", spacing=0.06)
BODY: Final = Style(9)
FIGURE: Final = Style(11, "bold")
SMALL: Final = Style(7.2, grey=0.3)


def ticket_pdf(contents: TicketContents, *, page: PageName = "A4") -> bytes:
    """Return the ticket as a PDF."""
    return pdf_bytes(
        ticket_pages(contents, page=page),
        title=f"Ticket {contents.number}: {contents.title}",
        author=contents.shop.name,
        subject=f"Workshop ticket for {contents.title}",
    )


def ticket_pages(contents: TicketContents, *, page: PageName = "A4") -> tuple[Drawing, ...]:
    """Return the pages of the ticket."""
    paper = PAPERS[page]
    groups = [
        [_head(contents, paper.inner_width)],
        _measured(contents, paper.inner_width),
        _cuts(contents, paper.inner_width),
        [
            paragraph("CAUTIONS", HEAD, paper.inner_width),
            listed(
                [caution.sentence for caution in contents.cuttable.cautions],
                BODY,
                paper.inner_width,
            ),
        ],
        [paragraph(contents.notation.legend, SMALL, paper.inner_width)],
    ]
    bodies = poured(groups, paper.inner_height, 5.0)
    return tuple(_sheet(paper, body) for body in bodies)


def _sheet(paper: Paper, body: Drawing) -> Drawing:
    return joined(paper.width, paper.height, [body.moved(paper.side, paper.top)])


def _head(contents: TicketContents, width: float) -> Drawing:
    return above(
        paragraph("WORKSHOP TICKET", HEAD, width),
        paragraph(contents.number, NUMBER, width),
        paragraph(contents.title, TITLE, width),
        paragraph(contents.client, BODY, width),
        space(1.0),
        ruled(width, RULE),
    )


def _measured(contents: TicketContents, width: float) -> list[Drawing]:
    said = contents.notation.said
    lines = [paragraph("MEASURED TWICE", HEAD, width)]
    for measured in contents.measured:
        for reading in (measured.first, measured.second):
            words = (
                f"{said(reading.width)} × {said(reading.height)}, {reading.by}, "
                f"{reading.at:%Y-%m-%d %H:%M}"
            )
            lines.append(paragraph(words, BODY, width))
        agreed = measured.agreed
        lines.append(
            paragraph(f"agreed {said(agreed.width)} × {said(agreed.height)}", FIGURE, width)
        )
    return lines


def _cuts(contents: TicketContents, width: float) -> list[Drawing]:
    blocks = [paragraph(f"CUTS in {contents.notation.unit}", HEAD, width)]
    for cut in cut_list(contents.cuttable, contents.samples):
        blocks += [above(_cut(contents, cut, width), space(1.0), ruled(width, HAIR), space(1.0))]
    return blocks


def _cut(contents: TicketContents, cut: Cut, width: float) -> Drawing:
    box = Drawing(8.0, 4.0, (rectangle(0.4, 0.6, 3.4, 3.4),))
    left = above(
        paragraph(f"{cut.number}  {cut.part}", FIGURE, 50.0), paragraph(cut.sample, BODY, 50.0)
    )
    rest = width - 58.0
    measures = []
    for measure in cut.measures:
        figures = " × ".join(contents.notation.figures(length) for length in measure.lengths)
        second = " × ".join(contents.notation.second(length) for length in measure.lengths)
        measures.append(
            beside(
                paragraph(measure.name, BODY, rest * 0.5),
                above(
                    paragraph(figures, FIGURE, rest * 0.5),
                    paragraph(second.strip(" ×"), SMALL, rest * 0.5),
                ),
            )
        )
    return beside(box, left, above(*measures))
