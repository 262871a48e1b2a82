"""A small shop for the tests: the design file of the handbook, samples and a catalogue."""

from dataclasses import replace
from decimal import Decimal

from framing_palette.catalogue import Catalogue, Kind, PriceBasis, Sample
from framing_palette.design import (
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Sides,
)
from framing_palette.units import Length

inch = Length.inches
mm = Length.mm_of

DESIGN_TOML = """\
unit = "in"                      # for bare numbers
[art]
width = "16"
height = "20"
thickness = "1/16"
overlap = "1/8"                  # per side; negative shows a margin
[[layer]]                        # from the art outward
kind = "mat"
thickness = "1/16"
reveal = "1/4"                   # every layer but the last
[[layer]]
kind = "mat"
thickness = "1/16"
borders = ["2 1/2", "2 1/2", "3", "2 1/2"]   # top, right, bottom, left; the outermost mat
[glazing]
material = "glass"               # glass or acrylic
thickness = "2 mm"
[backing]
thickness = "3/16"
[moulding]
face = "1 1/2"
rabbet_width = "1/4"
rabbet_depth = "5/8"
allowance = "1/8"                # per axis
"""


def all_round(text):
    return Sides.all_round(inch(text))


def art(width="16", height="20", **facts):
    return Art(inch(width), inch(height), **{"overlap": inch("1/8"), **facts})


def mat(reveal=None, borders=None, **facts):
    return Layer(
        Kind.MAT,
        inch("1/16"),
        reveal=reveal and all_round(reveal),
        borders=borders and all_round(borders),
        **facts,
    )


def wrapped_fillet(reveal=None, face="3/4", **facts):
    facts = {"thickness": inch("1/8"), "face": inch(face), **facts}
    return Layer(Kind.WRAPPED_FILLET, reveal=reveal and all_round(reveal), **facts)


def wood_fillet(reveal=None, face="3/8", **facts):
    facts = {"thickness": inch("1/4"), "face": inch(face), **facts}
    return Layer(Kind.WOOD_FILLET, reveal=reveal and all_round(reveal), **facts)


def liner(face="1 1/2", rabbet_width="1/4", rabbet_depth="3/8", thickness="5/8", **facts):
    return Layer(
        Kind.LINER,
        inch(thickness),
        face=inch(face),
        rabbet_width=rabbet_width and inch(rabbet_width),
        rabbet_depth=rabbet_depth and inch(rabbet_depth),
        **facts,
    )


def moulding(face="1 1/2", rabbet_width="1/4", rabbet_depth="5/8", **facts):
    return Moulding(inch(face), inch(rabbet_width), inch(rabbet_depth), **facts)


def double_mat(**changes):
    """The design of the handbook's file."""
    bordered = mat()
    borders = Sides(inch("2 1/2"), inch("2 1/2"), inch(3), inch("2 1/2"))
    design = Design(
        art(thickness=inch("1/16")),
        (mat("1/4"), replace(bordered, borders=borders)),
        glazing=Glazing("glass", mm(2)),
        backing=Board(inch("3/16")),
        moulding=moulding(),
    )
    return replace(design, **changes)


def sample(code, kind, **facts):
    return Sample(code=code, name=code.title(), kind=kind, colours=(), **facts)


MAT = sample(
    "M-1", Kind.MAT, thickness=mm("1.4"), bevel=mm("1.4"), sheet_w=mm(813), sheet_h=mm(1016),
    material="cotton board", density_kg_m3=640.0, price=Decimal("12.80"), price_per=PriceBasis.SHEET,
)  # fmt: skip
FILLET = sample(
    "W-1", Kind.WRAPPED_FILLET, thickness=mm("2.8"), bevel=mm(6), face=mm(32), join="butt",
    price=Decimal("3.20"), price_per=PriceBasis.METRE,
)  # fmt: skip
STEP_FILLET = sample(
    "F-1", Kind.WOOD_FILLET, thickness=mm("6.5"), face=mm(5), rabbet_width=mm(7),
    rabbet_depth=mm("5.3"), material="basswood", price=Decimal("1.50"), price_per=PriceBasis.FOOT,
)  # fmt: skip
SHALLOW = sample(
    "R-SHALLOW", Kind.MOULDING, face=mm(20), thickness=mm(15), rabbet_width=mm(6),
    rabbet_depth=mm(9), material="walnut", stick=mm(2740), price=Decimal("9.00"),
    price_per=PriceBasis.METRE,
)  # fmt: skip
DEEP = replace(SHALLOW, code="R-DEEP", rabbet_depth=mm(25), thickness=mm(32))
DEEPER = replace(SHALLOW, code="R-DEEPER", rabbet_depth=mm(40), thickness=mm(48))
UNKNOWN_RABBET = replace(SHALLOW, code="R-UNKNOWN", rabbet_width=None)
SHOP = Catalogue((MAT, FILLET, STEP_FILLET, DEEPER, SHALLOW, DEEP, UNKNOWN_RABBET))
