"""The client's page: the picture in its design, why it suits, what it is made of, what it costs."""

from typing import Final

from framing_palette.errors import FieldError
from framing_palette.papers.contents import MOST_OPTIONS, PageName
from framing_palette.papers.paper_pdf import pdf_bytes
from framing_palette.papers.paper_sizes import PAPERS, Group, Paper, poured
from framing_palette.papers.proposal_contents import ProposalContents
from framing_palette.papers.proposal_parts import (
    GUTTER,
    LETTER,
    LETTERS,
    Fit,
    care_block,
    care_group,
    foot_block,
    head_block,
    jpeg_bytes,
    made_of_block,
    option_groups,
    options_block,
    price_block,
    reasons_block,
)
from framing_palette.papers.setting import above, beside
from framing_palette.papers.shapes import Drawing, Photo, joined

SECTION_GAP: Final = 4.5

Box = tuple[float, float]


# From the roomiest to the tightest; the first that fits the page is taken.
_ROOMY: Final = tuple(Fit(height, 1.0, "sums") for height in (138, 126, 114, 104, 94))
_LINES: Final = (
    *(Fit(height, 1.0, "lines") for height in (94, 86, 78)),
    Fit(74, 0.94, "lines"),
    Fit(68, 0.88, "lines"),
)
_OF_ONE: Final = (*_ROOMY, *_LINES, Fit(60, 0.84, "lines"), Fit(52, 0.8, "lines"))
_OF_SEVERAL: Final = (
    *(fit for fit in (*_ROOMY, *_LINES) if fit.panel <= 104.0),
    *(Fit(height, 1.0, "totals") for height in (84, 78)),
    *(Fit(height, 0.94, "totals") for height in (76, 70)),
    *(Fit(height, 0.88, "totals") for height in (70, 64)),
    Fit(58, 0.84, "totals"),
    Fit(50, 0.8, "totals"),
)


def proposal_pdf(contents: ProposalContents, *, page: PageName = "A4") -> bytes:
    """Return the proposal as a PDF.

    Raises
    ------
    FieldError
        When there is no option, or more than three.
    """
    return pdf_bytes(
        proposal_pages(contents, page=page),
        title=f"Proposal {contents.number}: {contents.title}",
        author=contents.shop.name,
        subject=f"Framing proposal for {contents.title}",
        at=contents.at,
    )


def panel_sizes(contents: ProposalContents, *, page: PageName = "A4") -> tuple[Box, Box]:
    """Return width and height in mm of the lead's panel and of each other's.

    They follow from the words alone, so that pictures can be rendered to fill their panels.

    Raises
    ------
    FieldError
        When there is no option, or more than three.
    """
    fit, _ = _fitted(contents, PAPERS[page])
    return _panel_boxes(PAPERS[page], len(contents.options), fit.panel)


def proposal_pages(contents: ProposalContents, *, page: PageName = "A4") -> tuple[Drawing, ...]:
    """Return the pages: one, unless the words cannot fit on one and still be read.

    Raises
    ------
    FieldError
        When there is no option, or more than three.
    """
    paper = PAPERS[page]
    _, bodies = _fitted(contents, paper)
    foot = foot_block(contents, paper.inner_width)
    return tuple(_sheet(paper, body, foot) for body in bodies)


def _fitted(contents: ProposalContents, paper: Paper) -> tuple[Fit, tuple[Drawing, ...]]:
    """Return the roomiest fit and the bodies of its pages; more than one when nothing fits."""
    count = len(contents.options)
    if not 1 <= count <= MOST_OPTIONS:
        wanted = f"a proposal shows 1 to {MOST_OPTIONS}"
        raise FieldError("number of options", got=count, wanted=wanted)
    room = paper.inner_height - foot_block(contents, paper.inner_width).height - 4.0
    fits = _OF_ONE if count == 1 else _OF_SEVERAL
    for fit in fits:
        room_taken = Drawing(paper.inner_width, fit.panel)
        if above(*_body(contents, paper, fit, room_taken), gap=SECTION_GAP).height <= room:
            panels = _panels(contents, paper, fit.panel)
            return fit, (above(*_body(contents, paper, fit, panels), gap=SECTION_GAP),)
    return fits[-1], _over_pages(contents, paper, fits[-1], room)


def _over_pages(
    contents: ProposalContents, paper: Paper, fit: Fit, room: float
) -> tuple[Drawing, ...]:
    """Return as many bodies as the words need, parted between rows and never within a sentence."""
    width = paper.inner_width
    top = (head_block(contents, width), _panels(contents, paper, fit.panel))
    rest = (*option_groups(contents, width, fit), care_group(contents, width, fit.scale))
    return poured([*(Group((block,)) for block in top), *rest], room, SECTION_GAP)


def _sheet(paper: Paper, body: Drawing, foot: Drawing) -> Drawing:
    placed = (
        body.moved(paper.side, paper.top),
        foot.moved(paper.side, paper.height - paper.foot - foot.height),
    )
    return joined(paper.width, paper.height, placed)


def _body(
    contents: ProposalContents, paper: Paper, fit: Fit, panels: Drawing
) -> tuple[Drawing, ...]:
    width = paper.inner_width
    head = head_block(contents, width)
    if len(contents.options) > 1:
        care = care_block(contents, width, fit.scale, columns=2)
        return head, panels, options_block(contents, width, fit), care
    option, left = contents.options[0], width * 0.5
    right = width - left - GUTTER
    words = beside(
        above(
            reasons_block(option, left, fit.scale),
            care_block(contents, left, fit.scale, columns=1),
            gap=SECTION_GAP,
        ),
        above(
            made_of_block(option, right, fit.scale),
            price_block(option.price, right, fit),
            gap=SECTION_GAP,
        ),
        gap=GUTTER,
    )
    return head, panels, words


def _panel_boxes(paper: Paper, count: int, height: float) -> tuple[Box, Box]:
    if count == 1:
        return (paper.inner_width, height), (0.0, 0.0)
    side = (paper.inner_width - 2 * GUTTER) / 3
    others = count - 1
    lead = paper.inner_width - side - GUTTER
    return (lead, height), (side, (height - (others - 1) * GUTTER) / others)


def _panels(contents: ProposalContents, paper: Paper, height: float) -> Drawing:
    count = len(contents.options)
    lead_box, other_box = _panel_boxes(paper, count, height)
    lead = _panel(contents, contents.lead, lead_box)
    if count == 1:
        return lead
    others = [
        _panel(contents, place, other_box) for place in range(count) if place != contents.lead
    ]
    return beside(lead, above(*others, gap=GUTTER), gap=GUTTER)


def _panel(contents: ProposalContents, place: int, box: Box) -> Drawing:
    """Return an option's picture, fitted into its box with its own proportions, and its letter."""
    option, (width, height) = contents.options[place], box
    rows, columns = option.srgb.shape[:2]
    scale = min(width / columns, height / rows)
    shown = columns * scale, rows * scale
    left, top = (width - shown[0]) / 2, (height - shown[1]) / 2
    photo = Photo(left, top, *shown, jpeg_bytes(option.srgb), option.name)
    if len(contents.options) == 1:
        return Drawing(width, height, (photo,))
    letter = LETTER.text(LETTERS[place], left + 2.4, top + 5.2)
    return Drawing(width, height, (photo, letter))
