"""What do I hand over?

A design with its sizes, prices and reasons flows in; two papers flow out as bytes: the client's
proposal and the workshop's ticket, with their drawings also as SVG and DXF. Every page is first a
frozen ``Drawing`` in millimetres, so that what is on it can be tested without a PDF. Files are
touched only in ``*_files`` modules. ``jobs`` and the two faces may import this folder.
"""

from framing_palette.papers.care import care_notes
from framing_palette.papers.contents import (
    MeasuredArt,
    Notation,
    PageName,
    Shop,
    StockSheets,
    TicketContents,
    notation_of,
)
from framing_palette.papers.cutting_plan import CuttingPlan, cutting_plan_pdf
from framing_palette.papers.drawing_dxf import dxf_bytes
from framing_palette.papers.drawing_set import NamedDrawing, drawing_set
from framing_palette.papers.drawing_svg import svg_text
from framing_palette.papers.paper_files import paper_folder, write_paper
from framing_palette.papers.proposal import panel_sizes, proposal_pdf
from framing_palette.papers.proposal_contents import ProposalContents, ProposalOption, PublicPrice
from framing_palette.papers.shop_files import read_shop
from framing_palette.papers.ticket import ticket_pdf
from framing_palette.papers.vocabulary import Descriptors, Vocabulary, Word
from framing_palette.papers.vocabulary_files import read_vocabulary, shipped_vocabulary
from framing_palette.papers.words import (
    GentleChange,
    character,
    characters,
    descriptors_of,
    gentle_change,
)

__all__ = [
    "CuttingPlan",
    "Descriptors",
    "GentleChange",
    "MeasuredArt",
    "NamedDrawing",
    "Notation",
    "PageName",
    "ProposalContents",
    "ProposalOption",
    "PublicPrice",
    "Shop",
    "StockSheets",
    "TicketContents",
    "Vocabulary",
    "Word",
    "care_notes",
    "character",
    "characters",
    "cutting_plan_pdf",
    "descriptors_of",
    "drawing_set",
    "dxf_bytes",
    "gentle_change",
    "notation_of",
    "panel_sizes",
    "paper_folder",
    "proposal_pdf",
    "read_shop",
    "read_vocabulary",
    "shipped_vocabulary",
    "svg_text",
    "ticket_pdf",
    "write_paper",
]
