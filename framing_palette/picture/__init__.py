"""What is in the picture?

A photograph of the art flows in; a squared, colour-corrected :class:`Picture` and its
:class:`Findings` (palettes, accents, texture and attention of every region) flow out. Colour is
CIELAB D50 throughout, positions run from 0 to 1 across the upright picture, and the physical
scale is known in millimetres per pixel or explicitly unknown. Files are touched only in
``reading`` and the ``*_files`` modules. Everything from ``catalogue`` on may import this folder.
"""

from framing_palette.picture.findings import (
    Accent,
    Findings,
    PaletteColour,
    RegionFinding,
    Texture,
)
from framing_palette.picture.pictures import ColourTrust, Picture
from framing_palette.picture.regions import Part, Region, Role

__all__ = [
    "Accent",
    "ColourTrust",
    "Findings",
    "PaletteColour",
    "Part",
    "Picture",
    "Region",
    "RegionFinding",
    "Role",
    "Texture",
]
