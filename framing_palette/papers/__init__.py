"""What do I hand over?

A design with its sizes, prices and reasons flows in; two papers flow out as bytes: the client's
proposal and the workshop's ticket, with their drawings also as SVG and DXF. Every page is first a
frozen ``Drawing`` in millimetres, so that what is on it can be tested without a PDF. Files are
touched only in ``*_files`` modules. ``jobs`` and the two faces may import this folder.
"""

from framing_palette.papers.contents import (
    MeasuredArt,
    Notation,
    ProposalContents,
    ProposalOption,
    Shop,
    TicketContents,
    notation_of,
)
from framing_palette.papers.drawing_dxf import dxf_bytes
from framing_palette.papers.drawing_svg import svg_text
from framing_palette.papers.paper_files import write_paper
from framing_palette.papers.proposal import proposal_pdf
from framing_palette.papers.ticket import ticket_pdf

__all__ = [
    "MeasuredArt",
    "Notation",
    "ProposalContents",
    "ProposalOption",
    "Shop",
    "TicketContents",
    "dxf_bytes",
    "notation_of",
    "proposal_pdf",
    "svg_text",
    "ticket_pdf",
    "write_paper",
]
