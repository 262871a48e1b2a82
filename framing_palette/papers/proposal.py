"""The client's page: the picture in its design, why it suits, what it is made of, what it costs."""

from collections.abc import Sequence
from io import BytesIO
from typing import Final

from framing_palette.arrays import UInt8Array
from framing_palette.errors import FieldError
from framing_palette.papers.contents import (
    MOST_OPTIONS,
    PageName,
    ProposalContents,
    ProposalOption,
    PublicPrice,
)
from framing_palette.papers.paper_pdf import pdf_bytes
from framing_palette.papers.paper_sizes import PAPERS, Paper
from framing_palette.papers.setting import (
    RULE,
    Style,
    above,
    beside,
    listed,
    paragraph,
    ruled,
    space,
)
from framing_palette.papers.shapes import Drawing, Photo, joined

SHOP: Final = Style(10.5, "bold")
FACTS: Final = Style(8.5, grey=0.3)
TITLE: Final = Style(25, "light", leading=1.16)
UNDER_TITLE: Final = Style(9.5, grey=0.25)
LETTER: Final = Style(10.5, "bold")
HEAD: Final = Style(7, "bold", spacing=0.07, grey=0.25)
BODY: Final = Style(9)
SMALL: Final = Style(7.6, grey=0.2)
LABEL: Final = Style(8, grey=0.35)
TOTAL: Final = Style(12, "bold")
GUTTER: Final = 7.0
LETTERS: Final = "ABC"
JPEG_QUALITY: Final = 92
# From the roomiest setting to the tightest: height of the panel in mm, and size of the type.
_SETTINGS: Final = (
    (104.0, 1.0),
    (92.0, 1.0),
    (82.0, 0.96),
    (74.0, 0.92),
    (66.0, 0.88),
    (58.0, 0.84),
    (50.0, 0.8),
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
    )


def panel_sizes(page: PageName, count: int) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return width and height in mm of the lead's panel and of the others' panels."""
    paper, height = PAPERS[page], _SETTINGS[0][0]
    return _panel_boxes(paper, count, height)


def _panel_boxes(
    paper: Paper, count: int, height: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    if count == 1:
        return (paper.inner_width, height), (0.0, 0.0)
    side = (paper.inner_width - 2 * GUTTER) / 3
    lead = paper.inner_width - side - GUTTER
    others = count - 1
    return (lead, height), (side, (height - (others - 1) * GUTTER) / others)


def proposal_pages(contents: ProposalContents, *, page: PageName = "A4") -> tuple[Drawing, ...]:
    """Return the pages: one, unless the words cannot fit on one and still be read.

    Raises
    ------
    FieldError
        When there is no option, or more than three.
    """
    count = len(contents.options)
    if not 1 <= count <= MOST_OPTIONS:
        wanted = f"a proposal shows 1 to {MOST_OPTIONS}"
        raise FieldError("number of options", got=count, wanted=wanted)
    paper = PAPERS[page]
    foot = _foot(contents, paper.inner_width)
    room = paper.inner_height - foot.height - 4.0
    for panel_height, scale in _SETTINGS:
        body = above(*_body(contents, paper, panel_height, scale), gap=5.0)
        if body.height <= room:
            return (_sheet(paper, body, foot),)
    *first, care = _body(contents, paper, *_SETTINGS[-1])
    return _sheet(paper, above(*first, gap=5.0), foot), _sheet(paper, care, foot)


def _sheet(paper: Paper, body: Drawing, foot: Drawing) -> Drawing:
    placed = (
        body.moved(paper.side, paper.top),
        foot.moved(paper.side, paper.height - paper.foot - foot.height),
    )
    return joined(paper.width, paper.height, placed)


def _body(
    contents: ProposalContents, paper: Paper, panel_height: float, scale: float
) -> tuple[Drawing, ...]:
    width = paper.inner_width
    return (
        _head(contents, width),
        _panels(contents, paper, panel_height),
        _columns(contents, width, scale),
        _care(contents, width, scale),
    )


def _head(contents: ProposalContents, width: float) -> Drawing:
    facts = f"Proposal {contents.number}   {contents.at:%d %B %Y}".replace("  0", "  ")
    line = beside(
        paragraph(contents.shop.name, SHOP, width * 0.55),
        paragraph(facts, FACTS, width * 0.45, "end"),
    )
    client = f"for {contents.client}" if contents.client else ""
    art = f"art {contents.art}" if contents.art else ""
    under = " · ".join(part for part in (client, art) if part)
    return above(
        line,
        space(1.4),
        ruled(width, RULE),
        space(5.0),
        paragraph(contents.title, TITLE, width),
        paragraph(under, UNDER_TITLE, width),
    )


def _panels(contents: ProposalContents, paper: Paper, height: float) -> Drawing:
    count = len(contents.options)
    lead_box, other_box = _panel_boxes(paper, count, height)
    lead = _panel(contents.options[contents.lead], *lead_box)
    if count == 1:
        return lead
    others = [
        _panel(option, *other_box)
        for place, option in enumerate(contents.options)
        if place != contents.lead
    ]
    return beside(lead, above(*others, gap=GUTTER), gap=GUTTER)


def _panel(option: ProposalOption, width: float, height: float) -> Drawing:
    rows, columns = option.srgb.shape[:2]
    scale = min(width / columns, height / rows)
    shown = columns * scale, rows * scale
    left, top = (width - shown[0]) / 2, (height - shown[1]) / 2
    photo = Photo(left, top, *shown, jpeg_bytes(option.srgb), option.name)
    return Drawing(width, height, (photo,))


def jpeg_bytes(srgb: UInt8Array) -> bytes:
    """Return a picture as JPEG, its colour not thinned out."""
    from PIL import Image

    stream = BytesIO()
    Image.fromarray(srgb).save(stream, "JPEG", quality=JPEG_QUALITY, subsampling=0)
    return stream.getvalue()


def _columns(contents: ProposalContents, width: float, scale: float) -> Drawing:
    options = contents.options
    if len(options) == 1:
        left, right = width * 0.52, width * 0.48 - GUTTER
        option = options[0]
        return beside(
            _reasons(option, left, scale),
            above(_made_of(option, right, scale), _price(option.price, right, scale), gap=4.0),
            gap=GUTTER,
        )
    column = (width - (len(options) - 1) * GUTTER) / len(options)
    return beside(
        *(
            above(
                paragraph(_named(contents, place), LETTER, column),
                _reasons(option, column, scale),
                _made_of(option, column, scale),
                _price(option.price, column, scale),
                gap=3.0,
            )
            for place, option in enumerate(options)
        ),
        gap=GUTTER,
    )


def _named(contents: ProposalContents, place: int) -> str:
    words = f"{LETTERS[place]}  {contents.options[place].name}".rstrip()
    agreed = contents.is_agreed and place == contents.lead
    return f"{words} (agreed)" if agreed else words


def _headed(head: str, width: float, *blocks: Drawing) -> Drawing:
    filled = [block for block in blocks if block.height]
    if not filled:
        return Drawing(width, 0.0)
    return above(paragraph(head, HEAD, width), space(0.8), *filled)


def _reasons(option: ProposalOption, width: float, scale: float) -> Drawing:
    return _headed(
        "WHY IT SUITS", width, listed(option.reasons, BODY.scaled(scale), width, gap=0.8)
    )


def _made_of(option: ProposalOption, width: float, scale: float) -> Drawing:
    rows = [*option.parts, *([("Outside", option.outside)] if option.outside else [])]
    return _headed("MADE OF", width, _pairs(rows, width, scale))


def _pairs(rows: Sequence[tuple[str, str]], width: float, scale: float) -> Drawing:
    label, value = LABEL.scaled(scale), BODY.scaled(scale)
    first = min(0.34 * width, 24.0)
    blocks = [
        beside(paragraph(name, label, first), paragraph(words, value, width - first))
        for name, words in rows
    ]
    return above(*blocks, gap=0.5)


def _price(price: PublicPrice | None, width: float, scale: float) -> Drawing:
    if price is None:
        return Drawing(width, 0.0)
    body, small = BODY.scaled(scale), LABEL.scaled(scale)
    lines = []
    for title, how, amount in price.lines:
        room = body.width(amount) + 2.0
        lines.append(
            beside(
                above(paragraph(title, body, width - room), paragraph(how, small, width - room)),
                paragraph(amount, body, room, "end"),
            )
        )
    total = TOTAL.scaled(scale)
    room = total.width(price.total) + 2.0
    return _headed(
        "PRICE",
        width,
        above(*lines, gap=0.4),
        space(1.0),
        ruled(width),
        space(0.6),
        beside(
            paragraph(price.tax_words, small, width - room),
            paragraph(price.total, total, room, "end"),
        ),
    )


def _care(contents: ProposalContents, width: float, scale: float) -> Drawing:
    if not contents.care:
        return Drawing(width, 0.0)
    half = (len(contents.care) + 1) // 2
    column = (width - GUTTER) / 2
    small = SMALL.scaled(scale)
    columns = beside(
        listed(contents.care[:half], small, column),
        listed(contents.care[half:], small, column),
        gap=GUTTER,
    )
    return _headed("CARE AND CONSERVATION", width, columns)


def _foot(contents: ProposalContents, width: float) -> Drawing:
    invented = "Invented shop, for demonstration only." if contents.shop.is_invented else ""
    left = " · ".join((*contents.shop.lines, *([invented] if invented else [])))
    return above(
        ruled(width),
        space(1.2),
        beside(
            paragraph(left, SMALL, width * 0.62),
            paragraph(contents.validity, SMALL, width * 0.38, "end"),
        ),
    )
