"""Rendering: a design, a picture and a catalogue in, an image out."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.errors import FieldError, RenderingStoppedError
from framing_palette.picture import Picture
from framing_palette.preview.art import STRETCH_ALLOWED
from framing_palette.preview.easels import Easel, Show
from framing_palette.preview.encoding import clipped_pixels, srgb_u8
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.hands import shared_out
from framing_palette.preview.looks import Options, Quality, view_of
from framing_palette.preview.painting import Sight, View
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Plan

MOST_SIDE_PX = 20_000
_BAND_PIXELS = 1_000_000  # drawn at a time: keeps a print-sized picture within little memory
_FINER = 2

Tell = Callable[[float], bool]
"""Told the share that is done, 0..1; returns whether to go on."""


@dataclass(frozen=True, slots=True, eq=False)
class Rendering:
    """A rendered design.

    Parameters
    ----------
    srgb
        Shape (rows, columns, 3), 8-bit sRGB, read-only.
    grid
        Where millimetres of the design lie in the image.
    plan
        What was drawn.
    clipped_share
        Share of pixels whose colour an sRGB screen cannot show, 0..1.
    notices
        Sentences about what was unknown and how it is drawn instead.
    """

    srgb: UInt8Array
    grid: Grid
    plan: Plan
    clipped_share: float
    notices: tuple[str, ...]


def render_design(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
) -> UInt8Array:
    """Return the framed picture in 8-bit sRGB, shape (rows, width_px, 3); see ``render``."""
    done = render(design, picture, catalogue, width_px=width_px, options=options, easel=easel)
    return done.srgb


def render(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
    tell: Tell | None = None,
) -> Rendering:
    """Return the framed picture with its place, its notices and what a screen cannot show.

    Parameters
    ----------
    width_px
        Width of the image, 16 to 20,000.
    options
        The look; a neutral wall with light from the upper left when None.
    easel
        Give the same one again to redraw only what changed.
    tell
        Told the share that is done; returns whether to go on.

    Raises
    ------
    FieldError
        When the design cannot be built or the width is out of range.
    UnknownSampleError
        When a code is not in the catalogue.
    RenderingStoppedError
        When ``tell`` returned False.
    """
    options, easel = options or Options(), easel or Easel()
    plan = plan_of(design, catalogue, under=options.under)
    show = Show((Hung(plan),), ((picture,),), options.under)
    view = whole_view(plan, width_px, options)
    srgb, clipped = drawn(show, view, options, easel, tell)
    notices = (*plan.notices, *easel.unread_textures(show), *proportion_notices(plan, picture))
    return Rendering(srgb, view.grid, plan, clipped, notices)


def render_linear(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
    tell: Tell | None = None,
) -> tuple[Float32Array, Rendering]:
    """Return the framed picture in linear sRGB, not clipped, and the same as a rendering.

    Returns
    -------
    Shape (rows, width_px, 3), light in proportion to energy; and what ``render`` returns.

    Raises
    ------
    FieldError, UnknownSampleError
        As ``render``.
    RenderingStoppedError
        When ``tell`` returned False.
    """
    options, easel = options or Options(), easel or Easel()
    plan = plan_of(design, catalogue, under=options.under)
    view = whole_view(plan, width_px, options)
    show = Show((Hung(plan),), ((picture,),), options.under)
    canvas = np.empty((view.box.rows, view.box.columns, 3), np.float32)

    def keep(linear: Float32Array, box: Box) -> int:
        canvas[box.within(view.box)] = linear
        return clipped_pixels(linear)

    clipped = draw_bands(show, view, options, easel, keep=keep, tell=tell)
    srgb = srgb_u8(canvas)
    srgb.flags.writeable = False
    share = clipped / (view.box.rows * view.box.columns)
    notices = (*plan.notices, *easel.unread_textures(show), *proportion_notices(plan, picture))
    return canvas, Rendering(srgb, view.grid, plan, share, notices)


def drawn(
    show: Show, view: View, options: Options, easel: Easel, tell: Tell | None = None
) -> tuple[UInt8Array, float]:
    """Return a view in 8-bit sRGB, read-only, and the share of pixels outside the gamut.

    Raises
    ------
    RenderingStoppedError
        When ``tell`` returned False.
    """
    if options.quality is Quality.DRAFT and tell is None:
        result = easel.draw(show, view, options.sight)
        return result.srgb, result.clipped_share
    srgb = np.empty((view.box.rows, view.box.columns, 3), np.uint8)

    def keep(linear: Float32Array, box: Box) -> int:
        srgb_u8(linear, out=srgb[box.within(view.box)])
        return clipped_pixels(linear)

    clipped = draw_bands(show, view, options, easel, keep=keep, tell=tell)
    srgb.flags.writeable = False
    return srgb, clipped / (view.box.rows * view.box.columns)


def draw_bands(
    show: Show,
    view: View,
    options: Options,
    easel: Easel,
    *,
    keep: Callable[[Float32Array, Box], int],
    tell: Tell | None = None,
) -> int:
    """Draw a view band by band and hand each over; bands fit together to the last digit.

    Parameters
    ----------
    keep
        Takes a band, on any thread, and returns how many of its pixels a screen cannot show.

    Returns
    -------
    The sum of what ``keep`` returned.

    Raises
    ------
    RenderingStoppedError
        When ``tell`` returned False.
    """
    finer = _FINER if options.quality is Quality.FULL else 1
    box = view.box
    height = max(1, _BAND_PIXELS // (box.columns * finer * finer))
    bands = [
        box._replace(row_0=row, row_1=min(row + height, box.row_1))
        for row in range(box.row_0, box.row_1, height)
    ]

    def draw(band: Box) -> int:
        part = View(view.grid, band, view.whole)
        return keep(_band(show, part, options.sight, easel, finer), band)

    clipped = 0
    try:
        _ask(tell, 0.0)
        for place, count in enumerate(shared_out(draw, bands), start=1):
            clipped += count
            _ask(tell, place / len(bands))
    finally:
        easel.put_down()
    return clipped


def _ask(tell: Tell | None, share: float) -> None:
    """Tell how far the work is, and stop unless it may go on; what is done is never thrown away."""
    if tell is not None and not tell(share) and share < 1.0:
        raise RenderingStoppedError


def _band(show: Show, view: View, sight: Sight, easel: Easel, finer: int) -> Float32Array:
    import cv2

    if finer == 1:
        return easel.draw_linear(show, view, sight)
    grid = Grid(view.grid.left_mm, view.grid.top_mm, view.grid.px_per_mm * finer)
    fine = View(grid, _times(view.box, finer), _times(view.whole, finer))
    linear = easel.draw_linear(show, fine, sight)
    size = (view.box.columns, view.box.rows)
    return np.asarray(cv2.resize(linear, size, interpolation=cv2.INTER_AREA), np.float32)


def _times(box: Box, by: int) -> Box:
    return Box(*(edge * by for edge in box))


def whole_view(plan: Plan, width_px: int, options: Options) -> View:
    """Return the view of a whole plan with its margin of wall.

    Raises
    ------
    FieldError
        When a size is out of range.
    """
    margin = max(options.margin, 0.0) * max(plan.extent.width, plan.extent.height)
    shown = plan.extent.grown(margin)
    check_size("width_px", width_px)
    height_px = options.height_px or max(16, round(width_px * shown.height / shown.width))
    check_size("height_px", height_px)
    scale = min(width_px / shown.width, height_px / shown.height)
    return view_of(shown, scale, width_px, height_px)


def check_size(field: str, pixels: int) -> None:
    """Refuse an image size that cannot be drawn.

    Raises
    ------
    FieldError
        Naming the field.
    """
    if not 16 <= pixels <= MOST_SIDE_PX:
        raise FieldError(field, got=pixels, wanted=f"give 16 to {MOST_SIDE_PX} pixels")


def proportion_notices(plan: Plan, picture: Picture) -> tuple[str, ...]:
    """Return a sentence when the photograph has to be cut to the art's proportions."""
    art = plan.arts[0]
    wanted, got = art.width / art.height, picture.columns / picture.rows
    if abs(wanted / got - 1.0) <= STRETCH_ALLOWED or len(plan.arts) > 1:
        return ()
    told = (
        f"The photograph's proportions differ from the art's size by "
        f"{abs(wanted / got - 1.0):.0%}, so its middle is shown: check the size or the corners."
    )
    return (told,)
