"""Looks: the choices of a rendering that are not the design's own."""

from dataclasses import dataclass, field, replace
from enum import StrEnum

from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.painting import Sight, View
from framing_palette.preview.plans import Pane, Rect
from framing_palette.preview.sheets import LARGEST_SHEET_PX
from framing_palette.preview.skins import REFERENCE_LIGHT, lab_in_light
from framing_palette.preview.walls import Wall

DRAFT_SHEET_PX = 512


class Quality(StrEnum):
    """How much time a rendering may take."""

    DRAFT = "draft"  # for the window while something is being changed
    FULL = "full"  # twice as fine in both directions, then averaged in linear light


@dataclass(frozen=True, slots=True)
class Options:
    """How a design is shown.

    Parameters
    ----------
    light, wall
        Where the light comes from; what the frame hangs on.
    pane
        How the glazing shows, when the design has one. The default leaves its reflection out, so
        that colours are the samples' own.
    margin
        Wall shown on each side, as a share of the frame's longer side.
    height_px
        None for the height that follows from the frame's proportions; otherwise the frame is
        fitted into width and height.
    quality
        Draft by default.
    under
        The client's light, a name of ``catalogue.light`` such as "A" or "LED-B1"; colours are
        shown as the eye sees them once it has settled to that light.
    """

    light: Light = field(default_factory=Light)
    wall: Wall = field(default_factory=Wall)
    pane: Pane = Pane.NONE
    margin: float = 0.10
    height_px: int | None = None
    quality: Quality = Quality.DRAFT
    under: str = REFERENCE_LIGHT

    @property
    def sight(self) -> Sight:
        """What the painter needs of it."""
        draft = self.quality is Quality.DRAFT
        largest = DRAFT_SHEET_PX if draft else LARGEST_SHEET_PX
        wall = replace(self.wall, lab=lab_in_light(self.wall.lab, self.under))
        return Sight(self.light, wall, self.pane, largest)


def view_of(shown: Rect, px_per_mm: float, width_px: int, height_px: int) -> View:
    """Return the view with a rectangle's middle in the middle of the image."""
    x, y = shown.middle
    grid = Grid(x - width_px / 2 / px_per_mm, y - height_px / 2 / px_per_mm, px_per_mm)
    box = Box(0, height_px, 0, width_px)
    return View(grid, box, box)
