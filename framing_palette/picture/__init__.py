"""What is in the picture?

A photograph of the art flows in; a squared, colour-corrected :class:`Picture` and its
:class:`Findings` (palettes, accents, texture and attention of every region) flow out. Colour is
CIELAB D50 throughout, positions run from 0 to 1 across the upright picture, and the physical
scale is known in millimetres per pixel or explicitly unknown. Files are touched only in
``reading`` and the ``*_files`` modules. Everything from ``catalogue`` on may import this folder.
"""

from framing_palette.picture.accents import find_accents
from framing_palette.picture.attention import border_strength, grey_pulls, pull, strength_map
from framing_palette.picture.chart_layout import chart_size
from framing_palette.picture.findings import (
    BANDS_MM,
    Accent,
    Findings,
    PaletteColour,
    RegionFinding,
    Texture,
)
from framing_palette.picture.intake import INTAKE_SIDE, Intake, IntakeWishes, take_in
from framing_palette.picture.intake_files import (
    read_chart_file,
    read_corners_file,
    read_light_file,
)
from framing_palette.picture.intake_report import intake_report
from framing_palette.picture.light_fields import LightField
from framing_palette.picture.looking import (
    Survey,
    findings_from_survey,
    guess_focus,
    read_findings,
    read_region,
    survey_picture,
)
from framing_palette.picture.masks import region_mask, rim_mask, rim_side_masks
from framing_palette.picture.outlines import ellipse, lasso, outline_fault, rectangle
from framing_palette.picture.palettes import palette, palette_of_srgb
from framing_palette.picture.picture_files import write_picture_file
from framing_palette.picture.pictures import ColourTrust, PatchError, Picture, TrustGrade
from framing_palette.picture.reading import read_picture_file
from framing_palette.picture.regions import DRAWN_ROLES, Part, Region, Role
from framing_palette.picture.regions_files import read_regions_file, write_regions_file
from framing_palette.picture.report import (
    PALETTE_SCHEMA,
    palette_report,
    picture_report,
    regions_report,
)
from framing_palette.picture.texture import measure_texture
from framing_palette.picture.texture_comparison import (
    TEXTURE_MEASURES,
    texture_distance,
    texture_distances,
    texture_from_vector,
    texture_vector,
)

__all__ = [
    "BANDS_MM",
    "DRAWN_ROLES",
    "INTAKE_SIDE",
    "PALETTE_SCHEMA",
    "TEXTURE_MEASURES",
    "Accent",
    "ColourTrust",
    "Findings",
    "Intake",
    "IntakeWishes",
    "LightField",
    "PaletteColour",
    "Part",
    "PatchError",
    "Picture",
    "Region",
    "RegionFinding",
    "Role",
    "Survey",
    "Texture",
    "TrustGrade",
    "border_strength",
    "chart_size",
    "ellipse",
    "find_accents",
    "findings_from_survey",
    "grey_pulls",
    "guess_focus",
    "intake_report",
    "lasso",
    "measure_texture",
    "outline_fault",
    "palette",
    "palette_of_srgb",
    "palette_report",
    "picture_report",
    "pull",
    "read_chart_file",
    "read_corners_file",
    "read_findings",
    "read_light_file",
    "read_picture_file",
    "read_region",
    "read_regions_file",
    "rectangle",
    "region_mask",
    "regions_report",
    "rim_mask",
    "rim_side_masks",
    "strength_map",
    "survey_picture",
    "take_in",
    "texture_distance",
    "texture_distances",
    "texture_from_vector",
    "texture_vector",
    "write_picture_file",
    "write_regions_file",
]
