"""From a job to the contents of its proposal: what the client gets to read."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

import numpy as np

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.catalogue.light import LIGHT_WORDS, REFERENCE
from framing_palette.design import Design, Price, PriceBook, price_of, sizes_of
from framing_palette.errors import NotAgreedError
from framing_palette.jobs.jobs import Job, Option
from framing_palette.papers import (
    Notation,
    PageName,
    ProposalContents,
    ProposalOption,
    PublicPrice,
    Shop,
    Vocabulary,
    care_notes,
    characters,
    panel_sizes,
    shipped_vocabulary,
)
from framing_palette.papers.contents import MOST_OPTIONS
from framing_palette.picture import Picture
from framing_palette.preview import Easel, render
from framing_palette.preview import Options as PreviewOptions

NO_SHOP: Final = Shop()
DEMO_SHOP: Final = Shop(
    "The Corner Framer",
    ("1 Example Street, Anytown", "hello@framer.example"),
    is_invented=True,
)
VALID_DAYS: Final = 30
PX_PER_MM: Final = 8.0
WALL_SHARE: Final = 0.07


def proposal_contents(
    job: Job,
    picture: Picture,
    catalogue: Catalogue,
    *,
    shop: Shop = NO_SHOP,
    page: PageName = "A4",
    book: PriceBook | None = None,
    notation: Notation | None = None,
    vocabulary: Vocabulary | None = None,
    valid_days: int = VALID_DAYS,
    under: str = REFERENCE,
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
    shop, page
        Who proposes; the paper, which decides the proportions of the pictures.
    book
        Prices are shown when it is given, and of them only what is not private.
    notation
        How lengths are written; in the design's own unit when None.
    vocabulary
        The shop's words; the shipped ones when None.
    valid_days
        How long it holds, from the job's last change.
    under
        The client's light, a name of ``catalogue.light``: the pictures show the designs in it.

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
    notation = notation or Notation(shown[lead].design.unit)
    words = vocabulary or shipped_vocabulary()
    options = tuple(_option(option, catalogue, notation, book, words) for option in shown)
    contents = replace(
        _worded(job, shown[lead].design, catalogue, notation),
        shop=shop,
        options=options,
        lead=lead,
        validity=f"Valid until {_date(job.changed + timedelta(days=valid_days))}",
        light=LIGHT_WORDS.get(under, "") if under != REFERENCE else "",
    )
    return _pictured(contents, shown, picture, catalogue, page=page, under=under)


def _worded(job: Job, design: Design, catalogue: Catalogue, notation: Notation) -> ProposalContents:
    """Return what a proposal says of the job and of the design that leads, without options."""
    return ProposalContents(
        number=job.number,
        title=job.title,
        client=job.client.name,
        shop=NO_SHOP,
        at=job.changed,
        options=(),
        is_agreed=job.agreed is not None,
        art=_art_words(design, notation),
        care=care_notes(design, samples_of(design, catalogue)),
    )


def _shown(job: Job) -> list[Option]:
    """Return up to three options, the agreed one among them."""
    if not job.options:
        raise NotAgreedError(job.number, wanted="a design to show")
    shown = list(job.options[:MOST_OPTIONS])
    if job.agreed is not None and job.agreed not in shown:
        shown[-1] = job.agreed
    return shown


def _art_words(design: Design, notation: Notation) -> str:
    if design.arrangement and len(design.windows) > 1:
        return f"{len(design.windows)} pieces of art"
    return f"art {notation.pair(design.art.width, design.art.height)} {notation.unit}"


def _option(
    option: Option,
    catalogue: Catalogue,
    notation: Notation,
    book: PriceBook | None,
    vocabulary: Vocabulary,
) -> ProposalOption:
    """Return an option without its picture, which is rendered once its panel's size is known."""
    design = option.design
    samples = samples_of(design, catalogue)
    told = characters([samples[code] for code in design.codes], vocabulary, most=1)
    return ProposalOption(
        name=design.name,
        srgb=np.full((1, 1, 3), 200, np.uint8),
        reasons=(*option.reasons, *told),
        parts=tuple(_parts(design, samples)),
        outside=_outside(design, notation),
        price=_public(price_of(design, book, catalogue)) if book else None,
    )


def _pictured(
    contents: ProposalContents,
    shown: Sequence[Option],
    picture: Picture,
    catalogue: Catalogue,
    *,
    page: PageName,
    under: str,
) -> ProposalContents:
    """Return the contents with every design rendered to fill its panel on the page."""
    lead_box, other_box = panel_sizes(contents, page=page)
    easel = Easel()
    options: list[ProposalOption] = []
    notices: dict[str, None] = {}
    for place, (told, option) in enumerate(zip(contents.options, shown, strict=True)):
        width, height = lead_box if place == contents.lead else other_box
        width_px = round(width * PX_PER_MM)
        height_px = round(width_px * height / width)
        look = PreviewOptions(margin=WALL_SHARE, height_px=height_px, under=under)
        shown_as = render(
            option.design, picture, catalogue, width_px=width_px, options=look, easel=easel
        )
        options.append(replace(told, srgb=shown_as.srgb))
        notices.update(dict.fromkeys(shown_as.notices))
    return replace(contents, options=tuple(options), notices=tuple(notices))


def _parts(design: Design, samples: Mapping[str, Sample]) -> Iterator[tuple[str, str]]:
    """Yield every part of a design from the art outward, in plain words."""
    for layer in design.layers:
        kind = str(layer.kind).replace("_", " ").capitalize()
        yield kind, _sample_words(layer.code, layer.material, samples)
    if design.glazing:
        yield "Glazing", f"{design.glazing.material}, {design.glazing.thickness.show('mm')}"
    for name, board in (("Mount", design.mount), ("Backing", design.backing)):
        if board:
            yield name, board.material or "board"
    if design.moulding:
        yield "Frame", _sample_words(design.moulding.code, design.moulding.material, samples)


def _sample_words(code: str, material: str, samples: Mapping[str, Sample]) -> str:
    sample = samples.get(code)
    words = (sample.name, sample.material or material) if sample else (material,)
    return ", ".join(word for word in words if word) or "as agreed"


def _outside(design: Design, notation: Notation) -> str:
    sizes = sizes_of(design)
    width, height = sizes.outer.lengths
    if sizes.frame:
        rails = {rail.side: rail.long_point.value for rail in sizes.frame.rails}
        width, height = rails["top"], rails["right"]
    return f"{notation.pair(width, height)} {notation.unit}"


def _public(price: Price) -> PublicPrice:
    lines = tuple(
        (line.title, _squared(line.client_how), line.amount.show()) for line in price.client_lines
    )
    return PublicPrice(lines, price.total.show(), price.tax_words)


def _squared(words: str) -> str:
    """Return words with the signs for squares that people expect on paper."""
    return words.replace("ft2", "ft²").replace("in2", "in²").replace("m2", "m²")


def samples_of(design: Design, catalogue: Catalogue) -> Mapping[str, Sample]:
    """Return the samples of a design by code.

    Raises
    ------
    UnknownSampleError
        When one is no longer in the catalogue.
    """
    return {code: catalogue[code] for code in design.codes}


def _date(at: datetime) -> str:
    return f"{at.day} {at:%B %Y}"
