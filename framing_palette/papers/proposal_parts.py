"""The blocks that a proposal is made of: title, options, reasons, materials, prices, care."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from io import BytesIO
from typing import Final, Literal

from framing_palette.arrays import UInt8Array
from framing_palette.papers.paper_sizes import Group
from framing_palette.papers.proposal_contents import ProposalContents, ProposalOption, PublicPrice
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
from framing_palette.papers.shapes import Drawing

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
LETTERS: Final = "ABC"
JPEG_QUALITY: Final = 92
ON_COLOUR: Final = (
    "The pictures are worked out from measured samples; screens and printers change colours a "
    "little, so judge colour on the samples themselves."
)

Pricing = Literal["sums", "lines", "totals"]
"""How much of a price shows: each line with its sum, each line, or the total alone."""


@dataclass(frozen=True, slots=True)
class Fit:
    """One way to set the page: the panel's height in mm, the type's scale, how prices show."""

    panel: float
    scale: float
    pricing: Pricing


def head_block(contents: ProposalContents, width: float) -> Drawing:
    """Return the shop, the number and date, the title, and whose picture it is."""
    at = contents.at
    facts = f"Proposal {contents.number}   {at.day} {at:%B %Y}"
    lower = SHOP.first_baseline - FACTS.first_baseline
    line = beside(
        paragraph(contents.shop.name or "Framing proposal", SHOP, width * 0.55),
        paragraph(facts, FACTS, width * 0.45, "end").moved(0.0, lower),
    )
    client = f"for {contents.client}" if contents.client else ""
    art = contents.art
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


def jpeg_bytes(srgb: UInt8Array) -> bytes:
    """Return a picture as JPEG, its colour not thinned out."""
    from PIL import Image

    stream = BytesIO()
    Image.fromarray(srgb).save(stream, "JPEG", quality=JPEG_QUALITY, subsampling=0)
    return stream.getvalue()


def options_block(contents: ProposalContents, width: float, fit: Fit) -> Drawing:
    """Return the options side by side, their parts beginning level."""
    column = _column(contents, width)
    return above(
        _names(contents, width),
        _level(contents, width, lambda option: reasons_block(option, column, fit.scale)),
        _level(contents, width, lambda option: made_of_block(option, column, fit.scale)),
        _level(contents, width, lambda option: price_block(option.price, column, fit)),
        gap=3.4,
    )


def option_groups(contents: ProposalContents, width: float, fit: Fit) -> tuple[Group, ...]:
    """Return the options side by side in rows that may stand on different pages."""
    column, style = _column(contents, width), BODY.scaled(fit.scale)
    most = max(len(option.reasons) for option in contents.options)
    reasons = [
        _level(contents, width, partial(_reason, number=number, style=style, column=column))
        for number in range(most)
    ]
    names, head = _names(contents, width), paragraph("WHY IT SUITS", HEAD, column)
    made_of = _level(contents, width, lambda option: made_of_block(option, column, fit.scale))
    prices = _level(contents, width, lambda option: price_block(option.price, column, fit))
    spaced = tuple(above(reason, space(0.8)) for reason in reasons)
    return (
        Group((names,)),
        Group(spaced, above(head, space(0.8)), above(names, space(2.4))),
        Group((made_of,)),
        Group((prices,)),
    )


def _reason(option: ProposalOption, *, number: int, style: Style, column: float) -> Drawing:
    return listed(option.reasons[number : number + 1], style, column)


def _column(contents: ProposalContents, width: float) -> float:
    count = len(contents.options)
    return (width - (count - 1) * GUTTER) / count


def _level(
    contents: ProposalContents, width: float, block: Callable[[ProposalOption], Drawing]
) -> Drawing:
    """Return one block of each option side by side, each as wide as a column."""
    column = _column(contents, width)
    cells = [block(option) for option in contents.options]
    return beside(*(Drawing(column, cell.height, cell.shapes) for cell in cells), gap=GUTTER)


def _names(contents: ProposalContents, width: float) -> Drawing:
    column = _column(contents, width)
    places = range(len(contents.options))
    names = [paragraph(_named(contents, place), LETTER, column) for place in places]
    return beside(*names, gap=GUTTER)


def _named(contents: ProposalContents, place: int) -> str:
    words = f"{LETTERS[place]}  {contents.options[place].name}".rstrip()
    agreed = contents.is_agreed and place == contents.lead
    return f"{words}, agreed" if agreed else words


def _headed(head: str, width: float, *blocks: Drawing) -> Drawing:
    filled = [block for block in blocks if block.height]
    if not filled:
        return Drawing(width, 0.0)
    return above(paragraph(head, HEAD, width), space(0.8), *filled)


def reasons_block(option: ProposalOption, width: float, scale: float) -> Drawing:
    """Return why an option suits."""
    reasons = listed(option.reasons, BODY.scaled(scale), width, gap=0.8)
    return _headed("WHY IT SUITS", width, reasons)


def made_of_block(option: ProposalOption, width: float, scale: float) -> Drawing:
    """Return what an option is made of, and its outside size."""
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


def price_block(price: PublicPrice | None, width: float, fit: Fit) -> Drawing:
    """Return what an option costs, as fully as the fit allows."""
    if price is None:
        return Drawing(width, 0.0)
    total = _total(price, width, fit.scale)
    if fit.pricing == "totals":
        return _headed("PRICE", width, total)
    lines = [_price_line(line, width, fit) for line in price.lines]
    return _headed(
        "PRICE", width, above(*lines, gap=0.4), space(1.0), ruled(width), space(0.6), total
    )


def _price_line(line: tuple[str, str, str], width: float, fit: Fit) -> Drawing:
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


def care_block(contents: ProposalContents, width: float, scale: float, *, columns: int) -> Drawing:
    """Return the notes on care and conservation."""
    if not contents.care:
        return Drawing(width, 0.0)
    style = SMALL.scaled(scale)
    column = (width - (columns - 1) * GUTTER) / columns
    notes = [listed([note], style, column) for note in contents.care]
    parts = [above(*part, gap=0.6) for part in _parted(notes, columns)]
    return _headed("CARE AND CONSERVATION", width, beside(*parts, gap=GUTTER))


def care_group(contents: ProposalContents, width: float, scale: float) -> Group:
    """Return the notes on care in rows that may stand on different pages."""
    style = SMALL.scaled(scale)
    notes = tuple(above(listed([note], style, width), space(0.6)) for note in contents.care)
    head = above(paragraph("CARE AND CONSERVATION", HEAD, width), space(0.8))
    return Group(notes, head, head)


def _parted(blocks: list[Drawing], columns: int) -> list[list[Drawing]]:
    """Part blocks into columns of about the same height, in their order."""
    whole, used = sum(block.height for block in blocks), 0.0
    parts: list[list[Drawing]] = [[] for _ in range(columns)]
    for block in blocks:
        place = min(int((used + block.height / 2) / whole * columns), columns - 1)
        parts[place].append(block)
        used += block.height
    return parts


def foot_block(contents: ProposalContents, width: float) -> Drawing:
    """Return what stands at the foot of every page: on colour, the shop, how long it holds."""
    invented = "Invented shop, for demonstration only" if contents.shop.is_invented else ""
    shop = " · ".join((*contents.shop.lines, *([invented] if invented else [])))
    light = f" They show the designs under {contents.light}." if contents.light else ""
    return above(
        paragraph(ON_COLOUR + light, SMALL, width),
        space(1.2),
        ruled(width),
        space(1.2),
        beside(
            paragraph(shop, SMALL, width * 0.7),
            paragraph(contents.validity, SMALL, width * 0.3, "end"),
        ),
    )
