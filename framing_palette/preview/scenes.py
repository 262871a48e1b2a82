"""Scenes: a corner at life size, and several designs side by side."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate

from framing_palette.arrays import UInt8Array
from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.errors import FieldError
from framing_palette.picture import Picture
from framing_palette.preview.easels import Easel, Show
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.looks import Options, view_of
from framing_palette.preview.painting import View
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Plan, Rect
from framing_palette.preview.rendering import (
    Rendering,
    Tell,
    check_size,
    drawn,
    proportion_notices,
)

_WALL_BESIDE = 0.12  # wall beside a corner, as a share of the image
_GAP = 0.18  # wall between designs, as a share of the widest


class Corner(StrEnum):
    """Which corner of a frame."""

    TOP_LEFT = "top left"
    TOP_RIGHT = "top right"
    BOTTOM_LEFT = "bottom left"
    BOTTOM_RIGHT = "bottom right"


@dataclass(frozen=True, slots=True, eq=False)
class SideBySide:
    """Several designs on one wall at one scale.

    Parameters
    ----------
    srgb
        Shape (rows, columns, 3), 8-bit sRGB, read-only.
    places
        Each frame's outside in the image, for captions.
    clipped_share, notices
        As of a single rendering.
    """

    srgb: UInt8Array
    places: tuple[Box, ...]
    clipped_share: float
    notices: tuple[str, ...]


def render_corner(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    height_px: int,
    px_per_mm: float,
    corner: Corner = Corner.TOP_LEFT,
    options: Options | None = None,
    easel: Easel | None = None,
) -> Rendering:
    """Return one corner of a frame; at the screen's own pixels per millimetre it is life size.

    Raises
    ------
    FieldError
        When the design cannot be built or a size is out of range.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    if not 0.05 <= px_per_mm <= 100:
        raise FieldError("px_per_mm", got=px_per_mm, wanted="give 0.05 to 100")
    check_size("width_px", width_px)
    check_size("height_px", height_px)
    options, easel = options or Options(), easel or Easel()
    plan = plan_of(design, catalogue, under=options.under)
    view = _corner_view(plan, corner, px_per_mm, width_px, height_px)
    show = Show((Hung(plan),), ((picture,),), options.under)
    srgb, clipped = drawn(show, view, options, easel)
    notices = (*plan.notices, *easel.unread_textures(show), *proportion_notices(plan, picture))
    return Rendering(srgb, view.grid, plan, clipped, notices)


def _corner_view(
    plan: Plan, corner: Corner, px_per_mm: float, width_px: int, height_px: int
) -> View:
    width, height = width_px / px_per_mm, height_px / px_per_mm
    beside = _WALL_BESIDE * min(width, height)
    outer = plan.extent.grown(beside)
    left = outer.left if "left" in corner else outer.right - width
    top = outer.top if "top" in corner else outer.bottom - height
    box = Box(0, height_px, 0, width_px)
    return View(Grid(left, top, px_per_mm), box, box)


def render_side_by_side(
    designs: Sequence[Design],
    pictures: Sequence[Picture],
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
    tell: Tell | None = None,
) -> SideBySide:
    """Return several designs on one wall, at one scale, their middles at one height.

    Parameters
    ----------
    pictures
        One for each design, or one for all.

    Raises
    ------
    FieldError
        When there is no design, the counts differ or a design cannot be built.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    if not designs or len(pictures) not in (1, len(designs)):
        wanted = "give at least one design, and one picture for all or one for each"
        raise FieldError("designs", got=f"{len(designs)} with {len(pictures)}", wanted=wanted)
    check_size("width_px", width_px)
    options, easel = options or Options(), easel or Easel()
    plans = [plan_of(design, catalogue, under=options.under) for design in designs]
    behind = [pictures[place % len(pictures)] for place in range(len(plans))]
    frames, shown = _row(plans, options)
    height_px = options.height_px or max(16, round(width_px * shown.height / shown.width))
    check_size("height_px", height_px)
    scale = min(width_px / shown.width, height_px / shown.height)
    view = view_of(shown, scale, width_px, height_px)
    show = Show(frames, tuple((picture,) for picture in behind), options.under)
    srgb, clipped = drawn(show, view, options, easel, tell)
    told = [notice for plan in plans for notice in plan.notices]
    told += easel.unread_textures(show)
    for plan, picture in zip(plans, behind, strict=True):
        told += proportion_notices(plan, picture)
    places = tuple(view.grid.around(hung.extent) for hung in frames)
    return SideBySide(srgb, places, clipped, tuple(dict.fromkeys(told)))


def _row(plans: Sequence[Plan], options: Options) -> tuple[tuple[Hung, ...], Rect]:
    """Hang plans in a row, and return them with the stretch of wall that shows."""
    widths = [plan.extent.width for plan in plans]
    gap = _GAP * max(widths)
    lefts = [0.0, *accumulate(width + gap for width in widths[:-1])]
    frames = tuple(
        Hung(plan, left - plan.extent.left, -plan.extent.middle[1])
        for plan, left in zip(plans, lefts, strict=True)
    )
    tallest = max(plan.extent.height for plan in plans)
    shown = Rect(0.0, -tallest / 2, lefts[-1] + widths[-1], tallest / 2)
    margin = max(options.margin, 0.0) * max(*widths, tallest)
    return frames, shown.grown(margin)
