"""The sizes that the workshop cuts, as values: openings, layers, rails and the whole."""

from dataclasses import dataclass

from framing_palette.design.figures import Figure, RectangleFigure
from framing_palette.design.layers import Layer, Shape, Sides
from framing_palette.units import Length


@dataclass(frozen=True, slots=True)
class OpeningSize:
    """One hole: its outline, its size, and its left and top from the contents' outer edge.

    ``strips`` is the outside size of the strips joined around it, for a fillet or liner.
    """

    shape: Shape
    size: RectangleFigure
    left: Length
    top: Length
    strips: RectangleFigure | None = None


@dataclass(frozen=True, slots=True)
class LayerSize:
    """One layer as it is cut.

    Parameters
    ----------
    layer : Layer
        What it is made of.
    openings : tuple of OpeningSize
        One for each window; one alone for a layer over the outermost mat.
    outer : RectangleFigure or None
        Outside size; of each strip frame for a fillet; None when a fillet's face is unknown.
    reveal : Sides or None
        What shows beyond the layer above; None for the last layer.
    hidden : Sides or None
        What runs under the layer above; None for the last layer or an unknown face.
    """

    layer: Layer
    openings: tuple[OpeningSize, ...]
    outer: RectangleFigure | None
    reveal: Sides | None
    hidden: Sides | None

    @property
    def opening(self) -> OpeningSize:
        """The first opening, which is the only one unless windows are arranged."""
        return self.openings[0]

    @property
    def flat(self) -> Sides | None:
        """The level part of what shows: the reveal less the bevel; negative shows less than it."""
        bevel = self.layer.bevel_width
        return None if self.reveal is None or bevel is None else self.reveal.plus(-bevel)


@dataclass(frozen=True, slots=True)
class RailSize:
    """One rail of the moulding: outside (long point) and sight edge (short point) lengths."""

    side: str
    long_point: Figure
    short_point: Figure


@dataclass(frozen=True, slots=True)
class FrameSizes:
    """The moulding's sizes; ``moulding_length`` is the sum of long points, without saw waste."""

    rabbet: RectangleFigure
    sight: RectangleFigure
    rails: tuple[RailSize, ...]
    moulding_length: Figure


@dataclass(frozen=True, slots=True)
class Sizes:
    """All sizes of a design.

    ``outer`` is what lies in the moulding's rabbet; ``contents`` is the size of mats, glazing and
    backing, smaller than ``outer`` only when a liner holds them.
    """

    layers: tuple[LayerSize, ...]
    outer: RectangleFigure
    contents: RectangleFigure
    frame: FrameSizes | None
