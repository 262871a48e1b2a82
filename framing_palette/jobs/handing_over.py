"""From a job to the contents of its papers: what the client and the workshop get to read."""

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta
from typing import Final

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.design import (
    Design,
    Piece,
    Price,
    PriceBook,
    StickPlan,
    check_cuttable,
    default_tolerance,
    plan_sticks,
    price_of,
    sizes_of,
    weight_of,
    with_measured_art,
)
from framing_palette.errors import NotAgreedError
from framing_palette.jobs.jobs import Job, Option
from framing_palette.papers import (
    MeasuredArt,
    Notation,
    ProposalContents,
    ProposalOption,
    Shop,
    TicketContents,
)
from framing_palette.papers.contents import MOST_OPTIONS, PageName, PublicPrice
from framing_palette.papers.cut_list import sample_words
from framing_palette.papers.proposal import panel_sizes
from framing_palette.picture import Picture
from framing_palette.preview import Easel, render_design
from framing_palette.preview import Options as PreviewOptions

DEMO_SHOP: Final = Shop(
    "The Corner Framer",
    ("1 Example Street, Anytown", "hello@framer.example"),
    is_invented=True,
)
VALID_DAYS: Final = 30
PX_PER_MM: Final = 8.0
MOST_LEAD_PX: Final = 1400


def proposal_contents(
    job: Job,
    picture: Picture,
    catalogue: Catalogue,
    *,
    shop: Shop = DEMO_SHOP,
    page: PageName = "A4",
    book: PriceBook | None = None,
    notation: Notation | None = None,
) -> ProposalContents:
    """Return what the client reads.

    Parameters
    ----------
    job
        With one design to show at least; at most three are shown, the agreed one among them.
    picture
        The photograph of the art.
    catalogue
        Where the designs' samples are.
    shop
        Who proposes.
    page
        The paper that it will be printed on, which decides the proportions of the pictures.
    book
        Prices are shown when it is given.
    notation
        How lengths are written; in the design's own unit when None.

    Raises
    ------
    NotAgreedError
        When the job has no design yet.
    UnknownSampleError
        When one of a design's samples is no longer in the catalogue.
    FieldError, PriceMissingError
        When a design cannot be built or priced.
    """
    shown = _shown(job)
    lead = shown.index(job.agreed) if job.agreed in shown else 0
    sizes = panel_sizes(page, len(shown))
    easel = Easel()
    options = tuple(
        _option(
            option,
            picture,
            catalogue,
            box=sizes[0] if place == lead else sizes[1],
            easel=easel,
            book=book,
            notation=notation,
        )
        for place, option in enumerate(shown)
    )
    first = shown[lead].design
    notation = notation or Notation(first.unit)
    until = job.changed + timedelta(days=VALID_DAYS)
    return ProposalContents(
        number=job.number,
        title=job.title,
        client=job.client.name,
        shop=shop,
        at=job.changed,
        options=options,
        lead=lead,
        is_agreed=job.agreed is not None,
        art=f"{notation.figures(first.art.width)} × {notation.said(first.art.height)}",
        care=(),
        validity=f"Valid until {_date(until)}.",
    )


def _shown(job: Job) -> list[Option]:
    """Return up to three options, the agreed one among them."""
    if not job.options:
        raise NotAgreedError(job.number, wanted="a design to show")
    shown = list(job.options[:MOST_OPTIONS])
    if job.agreed is not None and job.agreed not in shown:
        shown[-1] = job.agreed
    return shown


def _option(
    option: Option,
    picture: Picture,
    catalogue: Catalogue,
    *,
    box: tuple[float, float],
    easel: Easel,
    book: PriceBook | None,
    notation: Notation | None,
) -> ProposalOption:
    design = option.design
    notation = notation or Notation(design.unit)
    width_px = min(MOST_LEAD_PX, round(box[0] * PX_PER_MM))
    look = PreviewOptions(height_px=round(width_px * box[1] / box[0]))
    srgb = render_design(design, picture, catalogue, width_px=width_px, options=look, easel=easel)
    price = _public(price_of(design, book, catalogue)) if book else None
    return ProposalOption(
        name=design.name,
        srgb=srgb,
        reasons=option.reasons,
        parts=tuple(_parts(design, catalogue)),
        outside=_outside(design, notation),
        price=price,
    )


def _parts(design: Design, catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    samples = samples_of(design, catalogue)
    for layer in design.layers:
        yield str(layer.kind).replace("_", " ").capitalize(), sample_words(layer.code, samples)
    if design.glazing:
        yield "Glazing", design.glazing.material
    if design.moulding:
        yield "Frame", sample_words(design.moulding.code, samples)


def _outside(design: Design, notation: Notation) -> str:
    sizes = sizes_of(design)
    width, height = sizes.outer.lengths
    if sizes.frame:
        rails = {rail.side: rail.long_point.value for rail in sizes.frame.rails}
        width, height = rails["top"], rails["right"]
    return f"{notation.figures(width)} × {notation.said(height)}"


def _public(price: Price) -> PublicPrice:
    lines = tuple((line.title, line.client_how, line.amount.show()) for line in price.client_lines)
    return PublicPrice(lines, price.total.show(), price.tax_words)


def ticket_contents(
    job: Job,
    catalogue: Catalogue,
    *,
    shop: Shop = DEMO_SHOP,
    notation: Notation | None = None,
    out_of_rabbet: bool = False,
) -> TicketContents:
    """Return what the workshop reads.

    Raises
    ------
    NotAgreedError
        When no design was agreed on.
    MeasurementsMissingError, MeasurementError
        When the art was not measured twice, or the measurements do not agree.
    UnknownSampleError, StackTooDeepError, FieldError
        When the design cannot be cut as it is.
    """
    if job.agreed is None:
        raise NotAgreedError(job.number, wanted="a design that was agreed on")
    design = job.agreed.design
    measured = MeasuredArt.of(job.measurements, default_tolerance(design.unit))
    design = with_measured_art(design, measured.agreed)
    cuttable = check_cuttable(design, catalogue, out_of_rabbet=out_of_rabbet)
    weight = weight_of(design, cuttable.sizes)
    return TicketContents(
        number=job.number,
        title=job.title,
        client=job.client.name,
        shop=shop,
        cuttable=cuttable,
        measured=(measured,),
        at=job.changed,
        samples=samples_of(design, catalogue),
        notation=notation or Notation(design.unit),
        sticks=_sticks(design),
        weight=weight,
        note=job.note,
    )


def samples_of(design: Design, catalogue: Catalogue) -> Mapping[str, Sample]:
    """Return the samples of a design by code.

    Raises
    ------
    UnknownSampleError
        When one is no longer in the catalogue.
    """
    return {code: catalogue[code] for code in design.codes}


def _sticks(design: Design) -> StickPlan | None:
    frame = sizes_of(design).frame
    if frame is None or design.moulding is None or design.moulding.stick is None:
        return None
    pieces = [Piece(f"{rail.side} rail", rail.long_point.value) for rail in frame.rails]
    return plan_sticks(pieces, [design.moulding.stick])


def _date(at: datetime) -> str:
    return f"{at.day} {at:%B %Y}"
