"""A whole design: everything that the sums need, and nothing of how it looks."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from framing_palette.catalogue import Kind
from framing_palette.design.arrangements import Arrangement, Window
from framing_palette.design.layers import (
    DEFAULT_ALLOWANCE,
    DEFAULT_HIDDEN_OVERLAP,
    Art,
    Board,
    Glazing,
    Layer,
    Moulding,
    Sides,
)
from framing_palette.design.spoken import said, said_at_least
from framing_palette.units import ZERO, Length, LengthUnit


@dataclass(frozen=True, slots=True)
class Design:
    """The ordered layers from the art outward, ending in a moulding.

    Parameters
    ----------
    art : Art
        What is framed; with an arrangement, its overlap, thickness and shape hold for each window.
    layers : tuple of Layer
        From the art outward, none to six.
    glazing, mount, backing : optional
        The pane in front; the board that the art is hinged to; the board behind everything.
    spacer : Length
        Height of strips that keep the glazing off; zero for none.
    moulding : Moulding or None
        None for a matted picture that goes out unframed.
    arrangement : Arrangement or None
        Several openings in one mat.
    hidden_overlap : Length
        How far a hidden layer must run under the layer above it, at least.
    unit : {"in", "mm", "cm"}
        What the figures are spoken in.
    name : str
        What it is called.
    """

    art: Art
    layers: tuple[Layer, ...] = ()
    glazing: Glazing | None = None
    mount: Board | None = None
    backing: Board | None = None
    spacer: Length = ZERO
    moulding: Moulding | None = None
    arrangement: Arrangement | None = None
    hidden_overlap: Length = DEFAULT_HIDDEN_OVERLAP
    unit: LengthUnit = "in"
    name: str = ""

    @property
    def windows(self) -> tuple[Window, ...]:
        """Every piece of art with its outline; the art alone when nothing is arranged."""
        if self.arrangement:
            return self.arrangement.windows
        return (Window(self.art.width, self.art.height, self.art.shape),)

    @property
    def allowance(self) -> Length:
        """The play on each axis: the moulding's, or the usual one before a moulding is chosen."""
        return self.moulding.allowance if self.moulding else DEFAULT_ALLOWANCE

    @property
    def outermost_mat(self) -> int | None:
        """Position of the outermost mat among the layers, if there is one."""
        mats = [place for place, layer in enumerate(self.layers) if layer.kind is Kind.MAT]
        return mats[-1] if mats else None

    @property
    def codes(self) -> tuple[str, ...]:
        """The catalogue codes in use, from the art outward."""
        parts = (*self.layers, *((self.moulding,) if self.moulding else ()))
        return tuple(part.code for part in parts if part.code)

    def said(self, length: Length) -> str:
        """Write a length for a sentence in the design's unit."""
        return said(length, self.unit)

    def said_at_least(self, length: Length) -> str:
        """Write a length that must be reached, rounded up where it cannot be told exactly."""
        return said_at_least(length, self.unit)

    def numbered(self) -> Iterator[tuple[str, Layer]]:
        """Yield every layer with the words that name it: ``layer 1``, counted from the art."""
        for place, layer in enumerate(self.layers, start=1):
            yield f"layer {place}", layer

    def turned(self) -> "Design":
        """Return the design after a quarter turn clockwise of everything in it."""
        return replace(
            self,
            art=replace(self.art, width=self.art.height, height=self.art.width),
            layers=tuple(_turned_layer(layer) for layer in self.layers),
            arrangement=self.arrangement.turned() if self.arrangement else None,
        )


def _turned_layer(layer: Layer) -> Layer:
    return replace(layer, reveal=_turned(layer.reveal), borders=_turned(layer.borders))


def _turned(sides: Sides | None) -> Sides | None:
    return sides.turned() if sides else None
