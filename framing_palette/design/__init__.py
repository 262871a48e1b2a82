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
from framing_palette.design.composing import compose, usual_border, usual_reveal
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
from framing_palette.design.report import size_report
from framing_palette.design.sample_parts import layer_of, moulding_of
from framing_palette.design.search import search_designs
from framing_palette.design.size_parts import (
    FrameSizes,
    LayerSize,
    OpeningSize,
    RailSize,
    Sizes,
)
from framing_palette.design.sizes import sizes_of
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
    "Arrangement",
    "Art",
    "Board",
    "Caution",
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
    "RailSize",
    "RectangleFigure",
    "SearchResult",
    "Shape",
    "Sides",
    "Sizes",
    "Weight",
    "WeightPart",
    "Window",
    "borders_to_outer",
    "cautions_of",
    "compose",
    "depth_of",
    "design_from_text",
    "design_text",
    "fitted_to_outer",
    "fixing_rating_kg",
    "layer_of",
    "moulding_of",
    "mouldings_that_fit",
    "read_design",
    "read_size_report",
    "same_ratio_borders",
    "search_designs",
    "search_report",
    "size_report",
    "sizes_of",
    "usual_border",
    "usual_reveal",
    "weight_of",
    "weighted",
    "wire_tension_n",
    "write_design",
]
