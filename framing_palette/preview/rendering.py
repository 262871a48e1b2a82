"""Rendering: a design, a picture and a catalogue in, an image out."""

from dataclasses import dataclass, field, replace

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.errors import FieldError
from framing_palette.picture import Picture
from framing_palette.preview.art import STRETCH_ALLOWED
from framing_palette.preview.easels import Easel
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.painting import Sight, View
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Plan, Rect
from framing_palette.preview.walls import Wall

MOST_SIDE_PX = 20_000


@dataclass(frozen=True, slots=True)
class Options:
    """How a design is shown.

    Parameters
    ----------
    light, wall
        Where the light comes from; what the frame hangs on.
    margin
        Wall shown on each side, as a share of the frame's longer side.
    height_px
        None for the height that follows from the frame's proportions; otherwise the frame is
        fitted into width and height.
    """

    light: Light = field(default_factory=Light)
    wall: Wall = field(default_factory=Wall)
    margin: float = 0.10
    height_px: int | None = None


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
    """Return the framed picture in 8-bit sRGB, shape (rows, width_px, 3).

    See ``render`` for the parameters and for what else it tells.
    """
    return render(design, picture, catalogue, width_px=width_px, options=options, easel=easel).srgb


def render(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
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

    Raises
    ------
    FieldError
        When the design cannot be built or the width is out of range.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    options = options or Options()
    plan = plan_of(design, catalogue)
    view = view_of(plan, width_px, options)
    sight = Sight(options.light, options.wall)
    drawn = (easel or Easel()).draw(plan, (picture,), view, sight)
    notices = (*plan.notices, *drawn.notices, *_proportions(plan, picture))
    return Rendering(drawn.srgb, view.grid, plan, drawn.clipped_share, notices)


def render_linear(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    easel: Easel | None = None,
) -> Float32Array:
    """Return the framed picture in linear sRGB, not clipped, shape (rows, width_px, 3).

    Raises
    ------
    FieldError, UnknownSampleError
        As ``render``.
    """
    options = options or Options()
    plan = plan_of(design, catalogue)
    view = view_of(plan, width_px, options)
    sight = Sight(options.light, options.wall)
    return (easel or Easel()).draw_linear(plan, (picture,), view, sight)


def view_of(plan: Plan, width_px: int, options: Options) -> View:
    """Return the view of a whole plan with its margin of wall.

    Raises
    ------
    FieldError
        When a size is out of range.
    """
    margin = max(options.margin, 0.0) * max(plan.extent.width, plan.extent.height)
    shown = plan.extent.grown(margin)
    height_px = options.height_px or max(1, round(width_px * shown.height / shown.width))
    for name, size in (("width_px", width_px), ("height_px", height_px)):
        if not 16 <= size <= MOST_SIDE_PX:
            raise FieldError(name, got=size, wanted=f"give 16 to {MOST_SIDE_PX} pixels")
    scale = min(width_px / shown.width, height_px / shown.height)
    return _centred_view(shown, scale, width_px, height_px)


def _centred_view(shown: Rect, px_per_mm: float, width_px: int, height_px: int) -> View:
    x, y = shown.middle
    grid = Grid(x - width_px / 2 / px_per_mm, y - height_px / 2 / px_per_mm, px_per_mm)
    box = Box(0, height_px, 0, width_px)
    return View(grid, box, box)


def _proportions(plan: Plan, picture: Picture) -> tuple[str, ...]:
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


def without_margin(options: Options) -> Options:
    """Return the same look with the frame filling the image."""
    return replace(options, margin=0.0)
