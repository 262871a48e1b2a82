"""Invented samples, designs and contents of papers for the tests."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np

from framing_palette.catalogue import Finish, Kind, Profile, Sample, SampleColour, Surface
from framing_palette.design import (
    Arrangement,
    Art,
    Blank,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Piece,
    Reading,
    Shape,
    Sides,
    Window,
    check_cuttable,
    layer_of,
    moulding_of,
    plan_sheets,
    plan_sticks,
    weight_of,
)
from framing_palette.papers import (
    MeasuredArt,
    Notation,
    ProposalContents,
    ProposalOption,
    Shop,
    StockSheets,
    TicketContents,
)
from framing_palette.papers.proposal_contents import PublicPrice
from framing_palette.picture import Texture
from framing_palette.units import Length

inch = Length.inches
mm = Length.mm_of
NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)
SHOP = Shop("The Invented Framer", ("1 Example Street", "hello@framer.example"), is_invented=True)


def sample(code: str, kind: Kind, **facts) -> Sample:
    measures = {
        "name": code.lower().replace("-", " "),
        "colours": (SampleColour((60.0, 4.0, 12.0), 1.0),),
        "thickness": mm("1.4"),
        "surface": Surface.SMOOTH,
        "finish": Finish.MATT,
        "material": "cotton rag board",
    }
    return Sample(code=code, kind=kind, **{**measures, **facts})


MAT = sample("M-ONE", Kind.MAT, sheet_w=mm(813), sheet_h=mm(1016), conservation="acid free")
SECOND_MAT = sample("M-TWO", Kind.MAT)
WRAPPED = sample(
    "WF-ONE", Kind.WRAPPED_FILLET, face=mm(20), thickness=mm(4), bevel=mm(6),
    profile=Profile(((0.0, 1.0), (6.0, 4.0), (20.0, 4.0))), join="mitre",
)  # fmt: skip
WOOD = sample(
    "F-ONE", Kind.WOOD_FILLET, face=mm(10), thickness=mm(8), rabbet_width=mm(8),
    rabbet_depth=mm(5), profile=Profile(((0.0, 6.0), (5.0, 8.0), (10.0, 7.0))), join="butt",
)  # fmt: skip
LINER = sample(
    "L-ONE", Kind.LINER, face=mm(40), thickness=mm(16), rabbet_width=mm(8), rabbet_depth=mm(9),
    profile=Profile(((0.0, 12.0), (40.0, 16.0))),
)  # fmt: skip
FRAME = sample(
    "R-ONE", Kind.MOULDING, face=mm(32), thickness=mm(28), rabbet_width=mm("6.5"),
    rabbet_depth=mm(20), stick=mm(2700), material="oak", finish=Finish.SATIN,
    profile=Profile(((0.0, 24.0), (4.0, 28.0), (28.0, 28.0), (32.0, 20.0))),
    texture=Texture(lightness_contrast=(1.0, 2.0, 4.5, 3.0, 2.0, 1.0), regularity=0.2, mm_per_px=0.1),
)  # fmt: skip
SAMPLES = {each.code: each for each in (MAT, SECOND_MAT, WRAPPED, WOOD, LINER, FRAME)}
BACKING = Board(inch("3/16"), "foam board")
GLASS = Glazing("glass", mm(2))


def plain() -> Design:
    """One mat with unequal borders in a known moulding."""
    return Design(
        art=Art(inch(16), inch(20), inch("1/16"), inch("1/8")),
        layers=(
            layer_of(MAT, borders=Sides(inch("2 1/2"), inch("2 1/2"), inch(3), inch("2 1/2"))),
        ),
        glazing=GLASS,
        backing=BACKING,
        moulding=moulding_of(FRAME),
        name="One mat",
    )


def rich() -> Design:
    """Six layers with both kinds of fillet, a mount, a spacer, in a moulding too shallow for it."""
    layers = (
        layer_of(SECOND_MAT, reveal=Sides.all_round(inch("1/4"))),
        layer_of(WRAPPED, reveal=Sides.all_round(mm(6))),
        layer_of(SECOND_MAT, reveal=Sides(inch("3/8"), inch("1/4"), inch("1/2"), inch("1/4"))),
        layer_of(WOOD, reveal=Sides.all_round(mm(10))),
        Layer(Kind.MAT, inch("1/8"), reveal=Sides.all_round(inch("1/4"))),
        layer_of(MAT, borders=Sides(inch("2 1/2"), inch("2 1/2"), inch("3 1/4"), inch("2 1/2"))),
    )
    return replace(
        plain(),
        layers=layers,
        glazing=Glazing("acrylic", mm(3)),
        mount=Board(inch("1/16"), "cotton rag board"),
        spacer=inch("1/4"),
        name="Everything that a design can have, under a name that is rather long",
    )


def several() -> Design:
    """Six equal windows in one mat over another."""
    windows = tuple(Window(inch(5), inch(7)) for _ in range(6))
    return replace(
        plain(),
        art=Art(inch(5), inch(7), overlap=inch("1/8")),
        layers=(
            layer_of(SECOND_MAT, reveal=Sides.all_round(inch("1/4"))),
            layer_of(MAT, borders=Sides.all_round(inch(2))),
        ),
        arrangement=Arrangement(windows, 3, inch(1)),
    )


def all_designs() -> dict[str, Design]:
    """Designs of every kind that a ticket must be able to show."""
    base = plain()
    deep = replace(moulding_of(FRAME), rabbet_depth=mm(60), height=mm(70), code="")
    canvas = Art(inch(24), inch(30), inch("3/4"))
    return {
        "plain": base,
        "rich": rich(),
        "several": several(),
        "oval": replace(base, art=Art(mm(300), mm(400), overlap=mm(3), shape=Shape.OVAL), unit="mm"),
        "oval fillet": replace(
            base,
            art=Art(mm(300), mm(400), overlap=mm(3), shape=Shape.OVAL),
            layers=(layer_of(WRAPPED, reveal=Sides.all_round(mm(6))), *base.layers),
        ),
        "floated": replace(
            base, art=Art(mm(300), mm(400), mm(1), mm(-10)), mount=Board(mm("1.5")),
            spacer=mm(6), moulding=deep, unit="cm",
        ),
        "canvas": replace(
            base, art=canvas, layers=(), glazing=None, backing=None, moulding=deep
        ),
        "lined canvas": replace(
            base, art=canvas, layers=(layer_of(LINER),), glazing=None, backing=None, moulding=deep
        ),
        "lined mat": replace(base, layers=(*base.layers, layer_of(LINER)), moulding=deep),
        "fillet last": replace(
            base,
            layers=(
                layer_of(MAT, reveal=Sides.all_round(inch(2))),
                replace(layer_of(WOOD), rabbet_width=None, rabbet_depth=None),
            ),
        ),
        "unframed": replace(base, moulding=None, glazing=None),
        "tall": replace(base, art=Art(inch(6), inch(48), overlap=inch("1/8"))),
        "tiny": replace(
            base, art=Art(inch(2), inch("1 1/2"), overlap=inch("1/16")),
            layers=(layer_of(MAT, borders=Sides.all_round(inch(1))),),
        ),
        "by hand": replace(
            base, moulding=Moulding(inch("1 1/2"), inch("1/4"), inch("5/8")), backing=None
        ),
    }  # fmt: skip


def readings(width: Length, height: Length) -> tuple[Reading, Reading]:
    """Two independent measurements that agree."""
    return (
        Reading(width, height, "AE", NOON),
        Reading(width, height, "BX", NOON + timedelta(hours=2)),
    )


def fits(outer: tuple[Length, Length], layer: Layer) -> bool:
    """Whether a mat comes out of its stock sheet, either way round."""
    return all(
        a <= b for a, b in zip(sorted(outer), sorted((layer.sheet_w, layer.sheet_h)), strict=True)
    )


def ticket_of(design: Design, notation: Notation | None = None, **more) -> TicketContents:
    """The contents of a design's ticket, every window measured twice."""
    cuttable = check_cuttable(design, out_of_rabbet=True)
    sticks = None
    if design.moulding and design.moulding.stick and cuttable.sizes.frame:
        rails = cuttable.sizes.frame.rails
        pieces = [Piece(f"{rail.side} rail", rail.long_point.value) for rail in rails]
        sticks = plan_sticks(pieces, [design.moulding.stick])
    sheets = tuple(
        StockSheets(
            f"{layer.code}  {SAMPLES[layer.code].name}" if layer.code in SAMPLES else "by hand",
            plan_sheets(
                [Blank(f"cut {number}", *size.outer.lengths)], (layer.sheet_w, layer.sheet_h)
            ),
            {f"cut {number}": number},
        )
        for number, (layer, size) in enumerate(
            zip(design.layers, cuttable.sizes.layers, strict=True), start=1
        )
        if layer.sheet_w and layer.sheet_h and fits(size.outer.lengths, layer)
    )
    facts = {
        "number": "2026-0147",
        "title": "Ferry at dusk",
        "client": "Ada Example",
        "shop": SHOP,
        "cuttable": cuttable,
        "measured": tuple(
            MeasuredArt.of(readings(window.width, window.height)) for window in design.windows
        ),
        "at": NOON,
        "samples": SAMPLES,
        "notation": notation or Notation(design.unit),
        "sticks": sticks,
        "sheets": sheets,
        "weight": weight_of(design, cuttable.sizes),
    }
    return TicketContents(**{**facts, **more})


REASONS = (
    "Repeats the red of the buoy, which is only 1 % of the picture.",
    "Settles into the picture's edge.",
    "Quieter than the boat: the eye goes to the picture first.",
)
PRICE = PublicPrice(
    (
        ("Mat board, cut", "about 46.97 united inches at 0.95 each", "44.62 USD"),
        ("Moulding", "about 2.6 m and 20 % waste", "154.27 USD"),
        ("Workmanship", "", "45.00 USD"),
    ),
    "243.89 USD",
    "sales tax 8.25 % added",
)


def option(name: str = "One mat", **facts) -> ProposalOption:
    """One option with a small grey picture."""
    usual = {
        "srgb": np.full((60, 90, 3), 150, np.uint8),
        "reasons": REASONS,
        "parts": (("Mat", "Gesso white, cotton rag board"), ("Frame", "Limed oak, oak")),
        "outside": "22 × 26 1/2 in",
        "price": PRICE,
    }
    return ProposalOption(name, **{**usual, **facts})


def proposal_of(*options: ProposalOption, **more) -> ProposalContents:
    """The contents of a proposal."""
    facts = {
        "number": "2026-0147",
        "title": "Ferry at dusk",
        "client": "Ada Example",
        "shop": SHOP,
        "at": NOON,
        "options": options or (option(),),
        "art": "art 16 × 20 in",
        "care": (
            "Hang it out of the sun and away from heat and damp.",
            "Clean the glass with a damp cloth; spray nothing onto the pane.",
            "For masonry, plaster or hanging overhead ask a qualified installer.",
        ),
        "validity": "Valid until 3 April 2026",
    }
    return ProposalContents(**{**facts, **more})


def words_of(pdf: bytes) -> str:
    """All text of a PDF as a reader copies it, spaces made single."""
    from io import BytesIO

    from pypdf import PdfReader

    pages = PdfReader(BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages)
