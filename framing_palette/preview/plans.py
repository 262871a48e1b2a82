"""Plans: where every part of a framed picture lies and how high it stands, in millimetres.

A plan is all that the renderer needs to know of a design. x runs to the right and y downward
from the top left corner of the art; z rises from the art's surface toward the viewer.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from framing_palette.preview.skins import Skin

Polyline = tuple[tuple[float, float], ...]


class Side(StrEnum):
    """A side of an opening, with the direction that leads outward from it."""

    TOP = "top"
    RIGHT = "right"
    BOTTOM = "bottom"
    LEFT = "left"

    @property
    def outward(self) -> tuple[int, int]:
        """Unit vector (x, y) away from the opening's middle."""
        return _OUTWARD[self]


_OUTWARD = {
    Side.TOP: (0, -1),
    Side.RIGHT: (1, 0),
    Side.BOTTOM: (0, 1),
    Side.LEFT: (-1, 0),
}


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle in millimetres."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Extent along x."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Extent along y."""
        return self.bottom - self.top

    @property
    def middle(self) -> tuple[float, float]:
        """Centre (x, y)."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def edge(self, side: Side) -> float:
        """Return the coordinate of a side, measured outward: larger is farther out."""
        return {
            Side.TOP: -self.top,
            Side.RIGHT: self.right,
            Side.BOTTOM: self.bottom,
            Side.LEFT: -self.left,
        }[side]

    def grown(self, by: float) -> "Rect":
        """Return the rectangle with every side moved outward."""
        return Rect(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def moved(self, x: float, y: float) -> "Rect":
        """Return the rectangle moved to the right and downward."""
        return Rect(self.left + x, self.top + y, self.right + x, self.bottom + y)


@dataclass(frozen=True, slots=True)
class Hole:
    """One opening of a layer."""

    rect: Rect
    oval: bool = False


class Build(StrEnum):
    """How a layer is made, which decides how its surface runs."""

    SHEET = "sheet"  # cut out of one board: one surface, bevel of the board's core
    MITRED = "mitred"  # four strips, surface along each, joined at 45 degrees
    BUTTED = "butted"  # four strips, the upright ones between the level ones


@dataclass(frozen=True, slots=True)
class LayerPlan:
    """One layer as it lies.

    Parameters
    ----------
    skin
        How its surface looks.
    build
        Sheet or strips.
    holes
        Its openings at the sight edge; one, or one for each window of the plan.
    outer
        How far the surface is drawn; the layer above hides the rest.
    base_mm
        Height of its underside above the art.
    profile
        (x, height) from the sight edge outward, height above the underside; level beyond the
        last point.
    bevel_mm
        Width of the slope that shows the board's core; 0 for none.
    """

    skin: Skin
    build: Build
    holes: tuple[Hole, ...]
    outer: Rect
    base_mm: float
    profile: Polyline
    bevel_mm: float = 0.0

    def hole(self, window: int) -> Hole:
        """Return the opening that a window is seen through."""
        return self.holes[window if len(self.holes) > 1 else 0]

    @property
    def top_mm(self) -> float:
        """Height of the surface beyond its profile."""
        return self.base_mm + self.profile[-1][1]

    @property
    def summit_mm(self) -> float:
        """Height of its highest point."""
        return self.base_mm + max(height for _, height in self.profile)


class Pane(StrEnum):
    """How the glazing shows."""

    NONE = "none"
    PLAIN = "plain"
    LOW_REFLECTION = "low_reflection"


@dataclass(frozen=True, slots=True)
class Plan:
    """A whole framed picture.

    Parameters
    ----------
    arts
        Where each piece of art lies, one for each window.
    layers
        From the art outward.
    extent
        The outside of everything.
    ground
        What the art lies on, seen where no layer covers its surroundings.
    wall_z_mm
        Height of the wall, below zero.
    pane_below
        Number of layers that lie under the glazing.
    notices
        Sentences about what was unknown and how it is drawn instead.
    """

    arts: tuple[Rect, ...]
    layers: tuple[LayerPlan, ...]
    extent: Rect
    ground: Skin
    wall_z_mm: float = -10.0
    pane_below: int = 0
    notices: tuple[str, ...] = ()

    def chain(self, window: int, start: int) -> Iterator[tuple[LayerPlan, Hole]]:
        """Yield the layers from ``start`` outward, each with the opening around that window."""
        for layer in self.layers[start:]:
            yield layer, layer.hole(window)
