"""What do I build?

Samples, an art size and a few choices flow in as a frozen ``Design``; sizes, depth, weight, cut
plans, prices and cautions flow out, each figure with the sum that leads to it. All lengths are
exact. Files are touched only in ``design_files`` and ``price_book_files``. ``preview``, ``papers``,
``jobs`` and the two faces may import this folder.
"""

from framing_palette.design.arrangements import Arrangement, Window
from framing_palette.design.borders import (
    borders_to_outer,
    fitted_to_outer,
    same_ratio_borders,
    weighted,
)
from framing_palette.design.cautions import Caution, cautions_of
from framing_palette.design.checks import (
    Cuttable,
    check_cuttable,
    with_measured_art,
    with_measured_pieces,
)
from framing_palette.design.composing import (
    compose,
    usual_border,
    usual_overlap,
    usual_reveal,
)
from framing_palette.design.day_plans import DayPlan, plan_day
from framing_palette.design.depth import Depth, depth_of, mouldings_that_fit
from framing_palette.design.design_files import (
    design_from_text,
    read_design,
    read_size_report,
    write_design,
)
from framing_palette.design.design_writing import design_text
from framing_palette.design.designs import Design
from framing_palette.design.figures import Figure, RectangleFigure
from framing_palette.design.found_designs import FoundDesign, SearchResult, search_report
from framing_palette.design.layers import (
    DEFAULT_ALLOWANCE,
    DEFAULT_CLEARANCE,
    DEFAULT_HIDDEN_OVERLAP,
    Art,
    Board,
    Glazing,
    Layer,
    Moulding,
    Shape,
    Sides,
)
from framing_palette.design.measuring import (
    AgreedSize,
    Reading,
    agree,
    default_tolerance,
)
from framing_palette.design.ovals import (
    OvalFrame,
    narrowest_reveal,
    oval_frames,
    perimeter,
)
from framing_palette.design.price import (
    Price,
    PriceLine,
    price_of,
    side_by_side,
)
from framing_palette.design.price_book import (
    Basis,
    Break,
    Charge,
    Part,
    PriceBook,
)
from framing_palette.design.price_book_files import (
    example_price_book,
    example_price_book_text,
    price_book_from_text,
    price_book_text,
    read_price_book,
    write_price_book,
)
from framing_palette.design.report import size_report
from framing_palette.design.sample_parts import layer_of, moulding_of
from framing_palette.design.search import search_designs
from framing_palette.design.sheets import (
    Blank,
    CutSheet,
    PlacedBlank,
    SheetPlan,
    fall_outs,
    plan_sheets,
)
from framing_palette.design.size_parts import (
    FrameSizes,
    LayerSize,
    OpeningSize,
    RailSize,
    Sizes,
)
from framing_palette.design.sizes import sizes_of
from framing_palette.design.sticks import (
    CutStick,
    Piece,
    StickPlan,
    plan_sticks,
)
from framing_palette.design.strips import (
    Strip,
    StripFrame,
    strip_frames,
)
from framing_palette.design.weight import (
    Weight,
    WeightPart,
    fixing_rating_kg,
    weight_of,
    wire_tension_n,
)

__all__ = [
    "DEFAULT_ALLOWANCE",
    "DEFAULT_CLEARANCE",
    "DEFAULT_HIDDEN_OVERLAP",
    "AgreedSize",
    "Arrangement",
    "Art",
    "Basis",
    "Blank",
    "Board",
    "Break",
    "Caution",
    "Charge",
    "CutSheet",
    "CutStick",
    "Cuttable",
    "DayPlan",
    "Depth",
    "Design",
    "Figure",
    "FoundDesign",
    "FrameSizes",
    "Glazing",
    "Layer",
    "LayerSize",
    "Moulding",
    "OpeningSize",
    "OvalFrame",
    "Part",
    "Piece",
    "PlacedBlank",
    "Price",
    "PriceBook",
    "PriceLine",
    "RailSize",
    "Reading",
    "RectangleFigure",
    "SearchResult",
    "Shape",
    "SheetPlan",
    "Sides",
    "Sizes",
    "StickPlan",
    "Strip",
    "StripFrame",
    "Weight",
    "WeightPart",
    "Window",
    "agree",
    "borders_to_outer",
    "cautions_of",
    "check_cuttable",
    "compose",
    "default_tolerance",
    "depth_of",
    "design_from_text",
    "design_text",
    "example_price_book",
    "example_price_book_text",
    "fall_outs",
    "fitted_to_outer",
    "fixing_rating_kg",
    "layer_of",
    "moulding_of",
    "mouldings_that_fit",
    "narrowest_reveal",
    "oval_frames",
    "perimeter",
    "plan_day",
    "plan_sheets",
    "plan_sticks",
    "price_book_from_text",
    "price_book_text",
    "price_of",
    "read_design",
    "read_price_book",
    "read_size_report",
    "same_ratio_borders",
    "search_designs",
    "search_report",
    "side_by_side",
    "size_report",
    "sizes_of",
    "strip_frames",
    "usual_border",
    "usual_overlap",
    "usual_reveal",
    "weight_of",
    "weighted",
    "wire_tension_n",
    "with_measured_art",
    "with_measured_pieces",
    "write_design",
    "write_price_book",
]
