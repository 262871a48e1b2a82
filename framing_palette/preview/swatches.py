"""Swatches: pieces of samples at true scale, for lists and for strips laid on the picture."""

from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import UInt8Array
from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.preview.encoding import srgb_u8
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.plans import Build, Hole, LayerPlan, Plan, Polyline, Rect, Side
from framing_palette.preview.sections import Site
from framing_palette.preview.skins import UNKNOWN_LAB, Skin, skin_of
from framing_palette.preview.strips import Ring, side_strip
from framing_palette.preview.surfaces import surface_of
from framing_palette.preview.texture_files import read_texture
from framing_palette.preview.tiling import Extent

_FAR_MM = 10_000.0
_TURNS = {0: Side.TOP, 1: Side.RIGHT, 2: Side.BOTTOM, 3: Side.LEFT}
_FLAT = ((0.0, 0.0), (1.0, 0.0))


@dataclass(frozen=True, slots=True)
class Piece:
    """What part of a sample is wanted.

    Parameters
    ----------
    width_px, height_px
        Size of the image. The sample runs along the width, its sight edge at the bottom.
    px_per_mm
        Scale.
    turn_deg
        Clockwise quarter turn at which the image will be laid down; the light comes from the
        upper left after that turn.
    formed
        False for the surface alone, level and evenly lit.
    """

    width_px: int
    height_px: int
    px_per_mm: float
    turn_deg: float = 0.0
    formed: bool = True


def flat_srgb_u8(sample: Sample) -> tuple[int, int, int]:
    """Return a sample's mean colour in 8-bit sRGB."""
    lab = sample.mean_lab if sample.colours else UNKNOWN_LAB
    red, green, blue = (int(value) for value in lab_d50_to_srgb_u8(np.asarray(lab)))
    return red, green, blue


def swatch_srgb_u8(sample: Sample, catalogue: Catalogue, piece: Piece) -> UInt8Array:
    """Return a piece of a sample in 8-bit sRGB, shape (height_px, width_px, 3).

    Raises
    ------
    CatalogueError
        When the sample's texture file cannot be read.
    """
    skin, _ = skin_of(sample, catalogue)
    texture = read_texture(skin.texture_file) if skin.texture_file else None
    plan = _as_strip(sample, skin, piece)
    extent = Extent(piece.height_px + 1, piece.width_px + 1, strip=sample.kind is not Kind.MAT)
    surface = surface_of(skin, texture, piece.px_per_mm, extent)
    hole = plan.layers[0].holes[0].rect
    # Drawn as the top side and lit as the side that it will become.
    grid = Grid(0.0, hole.top - piece.height_px / piece.px_per_mm, piece.px_per_mm)
    box = Box(0, piece.height_px, 0, piece.width_px)
    ring = Ring(Site(plan, 0, grid, Light(), box), 0, hole, plan.extent, surface)
    side = _TURNS[round(piece.turn_deg / 90.0) % 4]
    return srgb_u8(side_strip(ring, Side.TOP, box, lit_as=side))


def _as_strip(sample: Sample, skin: Skin, piece: Piece) -> Plan:
    profile: Polyline = _FLAT
    if piece.formed and sample.profile and len(sample.profile.points) > 1:
        profile = sample.profile.points
    build = Build.SHEET if profile is _FLAT or sample.kind is Kind.MAT else Build.MITRED
    hole = Rect(-_FAR_MM, 0.0, _FAR_MM, _FAR_MM)
    outer = hole.grown(max(profile[-1][0], piece.height_px / piece.px_per_mm))
    layer = LayerPlan(skin, build, (Hole(hole),), outer, 0.0, profile)
    return Plan((hole,), (layer,), outer, skin)
