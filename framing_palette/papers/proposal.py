"""The client's page: the picture in its design, why it suits, what it is made of, what it costs."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Final, Literal

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
    wrapped,
)
from framing_palette.papers.shapes import Drawing, Photo, joined

SHOP: Final = Style(10.5, "bold")
FACTS: Final = Style(8.5, grey=0.3)
TITLES: Final = tuple(Style(points, "light", leading=1.16) for points in (25, 20, 16))
MOST_TITLE_LINES: Final = 2
UNDER_TITLE: Final = Style(9.5, grey=0.25)
LETTER: Final = Style(10.5, "bold")
HEAD: Final = Style(7, "bold", spacing=0.07, grey=0.25)
BODY: Final = Style(9)
SMALL: Final = Style(7.6, grey=0.2)
LABEL: Final = Style(8, grey=0.35)
TOTAL: Final = Style(12, "bold")
GUTTER: Final = 7.0
SECTION_GAP: Final = 4.5
LETTERS: Final = "ABC"
JPEG_QUALITY: Final = 92
ON_COLOUR: Final = (
    "The pictures are worked out from measured samples; screens and printers change colours a "
    "little, so judge colour on the samples themselves."
)

Box = tuple[float, float]


Pricing = Literal["sums", "lines", "totals"]
"""How much of a price shows: each line with its sum, each line, or the total alone."""


@dataclass(frozen=True, slots=True)
class _Fit:
    """One way to set the page: the panel's height in mm, the type's scale, how prices show."""

    panel: float
    scale: float
    pricing: Pricing


# From the roomiest to the tightest; the first that fits the page is taken.
_ROOMY: Final = tuple(_Fit(height, 1.0, "sums") for height in (138, 126, 114, 104, 94))
_LINES: Final = (
    *(_Fit(height, 1.0, "lines") for height in (94, 86, 78)),
    _Fit(74, 0.94, "lines"),
    _Fit(68, 0.88, "lines"),
)
_OF_ONE: Final = (*_ROOMY, *_LINES, _Fit(60, 0.84, "lines"), _Fit(52, 0.8, "lines"))
_OF_SEVERAL: Final = (
    *(fit for fit in (*_ROOMY, *_LINES) if fit.panel <= 104.0),
    *(_Fit(height, 1.0, "totals") for height in (84, 78)),
    *(_Fit(height, 0.94, "totals") for height in (76, 70)),
    *(_Fit(height, 0.88, "totals") for height in (70, 64)),
    _Fit(58, 0.84, "totals"),
    _Fit(50, 0.8, "totals"),
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
    foot = _foot(contents, paper.inner_width)
    return tuple(_sheet(paper, body, foot) for body in bodies)


def _fitted(contents: ProposalContents, paper: Paper) -> tuple[_Fit, tuple[Drawing, ...]]:
    """Return the roomiest fit and the bodies of its pages; two pages when nothing fits on one."""
    count = len(contents.options)
    if not 1 <= count <= MOST_OPTIONS:
        wanted = f"a proposal shows 1 to {MOST_OPTIONS}"
        raise FieldError("number of options", got=count, wanted=wanted)
    room = paper.inner_height - _foot(contents, paper.inner_width).height - 4.0
    fits = _OF_ONE if count == 1 else _OF_SEVERAL
    for fit in fits:
        body = above(*_body(contents, paper, fit), gap=SECTION_GAP)
        if body.height <= room:
            return fit, (body,)
    *first, last = _body(contents, paper, fits[-1])
    return fits[-1], (above(*first, gap=SECTION_GAP), last)


def _sheet(paper: Paper, body: Drawing, foot: Drawing) -> Drawing:
    placed = (
        body.moved(paper.side, paper.top),
        foot.moved(paper.side, paper.height - paper.foot - foot.height),
    )
    return joined(paper.width, paper.height, placed)


def _body(contents: ProposalContents, paper: Paper, fit: _Fit) -> tuple[Drawing, ...]:
    width = paper.inner_width
    head, panels = _head(contents, width), _panels(contents, paper, fit.panel)
    if len(contents.options) > 1:
        care = _care(contents, width, fit.scale, columns=2)
        return head, panels, _options(contents, width, fit), care
    option, left = contents.options[0], width * 0.5
    right = width - left - GUTTER
    words = beside(
        above(
            _reasons(option, left, fit.scale),
            _care(contents, left, fit.scale, columns=1),
            gap=SECTION_GAP,
        ),
        above(
            _made_of(option, right, fit.scale), _price(option.price, right, fit), gap=SECTION_GAP
        ),
        gap=GUTTER,
    )
    return head, panels, words


def _head(contents: ProposalContents, width: float) -> Drawing:
    at = contents.at
    facts = f"Proposal {contents.number}   {at.day} {at:%B %Y}"
    line = beside(
        paragraph(contents.shop.name or "Framing proposal", SHOP, width * 0.55),
        paragraph(facts, FACTS, width * 0.45, "end"),
    )
    client = f"for {contents.client}" if contents.client else ""
    art = f"art {contents.art}" if contents.art else ""
    agreed = "agreed design" if contents.is_agreed and len(contents.options) == 1 else ""
    name = contents.options[0].name if len(contents.options) == 1 else ""
    under = " · ".join(part for part in (name, art, client, agreed) if part)
    return above(
        line,
        space(1.4),
        ruled(width, RULE),
        space(5.0),
        _title(contents.title, width),
        paragraph(under, UNDER_TITLE, width),
    )


def _title(title: str, width: float) -> Drawing:
    """Return the title as large as it takes to stay within two lines, or at its smallest."""
    fitting = (style for style in TITLES if len(wrapped(title, style, width)) <= MOST_TITLE_LINES)
    return paragraph(title, next(fitting, TITLES[-1]), width)


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


def jpeg_bytes(srgb: UInt8Array) -> bytes:
    """Return a picture as JPEG, its colour not thinned out."""
    from PIL import Image

    stream = BytesIO()
    Image.fromarray(srgb).save(stream, "JPEG", quality=JPEG_QUALITY, subsampling=0)
    return stream.getvalue()


def _options(contents: ProposalContents, width: float, fit: _Fit) -> Drawing:
    """Return the options side by side, their parts beginning level."""
    options = contents.options
    column = (width - (len(options) - 1) * GUTTER) / len(options)

    def level(block: Callable[[ProposalOption], Drawing]) -> Drawing:
        cells = [block(option) for option in options]
        return beside(*(Drawing(column, cell.height, cell.shapes) for cell in cells), gap=GUTTER)

    names = [paragraph(_named(contents, place), LETTER, column) for place in range(len(options))]
    return above(
        beside(*names, gap=GUTTER),
        level(lambda option: _reasons(option, column, fit.scale)),
        level(lambda option: _made_of(option, column, fit.scale)),
        level(lambda option: _price(option.price, column, fit)),
        gap=3.4,
    )


def _named(contents: ProposalContents, place: int) -> str:
    words = f"{LETTERS[place]}  {contents.options[place].name}".rstrip()
    agreed = contents.is_agreed and place == contents.lead
    return f"{words}, agreed" if agreed else words


def _headed(head: str, width: float, *blocks: Drawing) -> Drawing:
    filled = [block for block in blocks if block.height]
    if not filled:
        return Drawing(width, 0.0)
    return above(paragraph(head, HEAD, width), space(0.8), *filled)


def _reasons(option: ProposalOption, width: float, scale: float) -> Drawing:
    reasons = listed(option.reasons, BODY.scaled(scale), width, gap=0.8)
    return _headed("WHY IT SUITS", width, reasons)


def _made_of(option: ProposalOption, width: float, scale: float) -> Drawing:
    rows = [*option.parts, *([("Outside", option.outside)] if option.outside else [])]
    return _headed("MADE OF", width, _pairs(rows, width, scale))


def _pairs(rows: Sequence[tuple[str, str]], width: float, scale: float) -> Drawing:
    label, value = LABEL.scaled(scale), BODY.scaled(scale)
    first = max((label.width(name) for name, _ in rows), default=0.0) + 3.0
    lower = value.first_baseline - label.first_baseline
    blocks = [
        beside(
            paragraph(name, label, first).moved(0.0, lower), paragraph(words, value, width - first)
        )
        for name, words in rows
    ]
    return above(*blocks, gap=0.5)


def _price(price: PublicPrice | None, width: float, fit: _Fit) -> Drawing:
    if price is None:
        return Drawing(width, 0.0)
    total = _total(price, width, fit.scale)
    if fit.pricing == "totals":
        return _headed("PRICE", width, total)
    lines = [_price_line(line, width, fit) for line in price.lines]
    return _headed(
        "PRICE", width, above(*lines, gap=0.4), space(1.0), ruled(width), space(0.6), total
    )


def _price_line(line: tuple[str, str, str], width: float, fit: _Fit) -> Drawing:
    title, how, amount = line
    body, small = BODY.scaled(fit.scale), LABEL.scaled(fit.scale)
    room = body.width(amount) + 2.0
    words = above(
        paragraph(title, body, width - room),
        paragraph(how if fit.pricing == "sums" else "", small, width - room),
    )
    left = Drawing(width - room, words.height, words.shapes)
    return beside(left, paragraph(amount, body, room, "end"))


def _total(price: PublicPrice, width: float, scale: float) -> Drawing:
    total, small = TOTAL.scaled(scale), LABEL.scaled(scale)
    room = total.width(price.total) + 2.0
    lower = total.first_baseline - small.first_baseline
    words = paragraph(price.tax_words, small, width - room)
    return beside(
        Drawing(width - room, words.height, words.moved(0.0, lower).shapes),
        paragraph(price.total, total, room, "end"),
    )


def _care(contents: ProposalContents, width: float, scale: float, *, columns: int) -> Drawing:
    if not contents.care:
        return Drawing(width, 0.0)
    style = SMALL.scaled(scale)
    column = (width - (columns - 1) * GUTTER) / columns
    notes = [listed([note], style, column) for note in contents.care]
    parts = [above(*part, gap=0.6) for part in _parted(notes, columns)]
    return _headed("CARE AND CONSERVATION", width, beside(*parts, gap=GUTTER))


def _parted(blocks: list[Drawing], columns: int) -> list[list[Drawing]]:
    """Part blocks into columns of about the same height, in their order."""
    whole, used = sum(block.height for block in blocks), 0.0
    parts: list[list[Drawing]] = [[] for _ in range(columns)]
    for block in blocks:
        place = min(int((used + block.height / 2) / whole * columns), columns - 1)
        parts[place].append(block)
        used += block.height
    return parts


def _foot(contents: ProposalContents, width: float) -> Drawing:
    invented = "Invented shop, for demonstration only" if contents.shop.is_invented else ""
    shop = " · ".join((*contents.shop.lines, *([invented] if invented else [])))
    return above(
        paragraph(ON_COLOUR, SMALL, width),
        space(1.2),
        ruled(width),
        space(1.2),
        beside(
            paragraph(shop, SMALL, width * 0.7),
            paragraph(contents.validity, SMALL, width * 0.3, "end"),
        ),
    )
