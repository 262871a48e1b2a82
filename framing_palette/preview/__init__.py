"""How will it look?

A design, the picture and the catalogue flow in; an image at true scale flows out, in linear light
and then in sRGB, with what was unknown said beside it. Sizes come from the design in millimetres,
colours from the samples' measured Lab, form and shade from their cross-sections under one soft
light. Textures are read in ``texture_files`` and images written in ``preview_files``; everything
else is a pure function, and an ``Easel`` remembers layers between renderings. ``papers``, ``jobs``
and the two faces may import this folder.
"""

from framing_palette.preview.easels import Easel
from framing_palette.preview.lights import Light
from framing_palette.preview.looks import Options, Quality
from framing_palette.preview.output_files import write_preview_file
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Pane, Plan
from framing_palette.preview.preview_files import (
    png_bytes,
    write_html,
    write_png,
    write_tiff,
)
from framing_palette.preview.rendering import (
    Rendering,
    render,
    render_design,
    render_linear,
)
from framing_palette.preview.scenes import Corner, SideBySide, render_corner, render_side_by_side
from framing_palette.preview.swatches import Piece, flat_srgb_u8, swatch_srgb_u8
from framing_palette.preview.wall_photos import OnWall, WallPhoto, render_on_wall
from framing_palette.preview.walls import Wall

__all__ = [
    "Corner",
    "Easel",
    "Light",
    "OnWall",
    "Options",
    "Pane",
    "Piece",
    "Plan",
    "Quality",
    "Rendering",
    "SideBySide",
    "Wall",
    "WallPhoto",
    "flat_srgb_u8",
    "plan_of",
    "png_bytes",
    "render",
    "render_corner",
    "render_design",
    "render_linear",
    "render_on_wall",
    "render_side_by_side",
    "swatch_srgb_u8",
    "write_html",
    "write_png",
    "write_preview_file",
    "write_tiff",
]
