"""The layers of a design laid over each other: openings and outside sizes from the art outward."""

from dataclasses import dataclass, replace

from framing_palette.catalogue import Kind
from framing_palette.design.arrangements import Block, Window, narrowest_bridge
from framing_palette.design.designs import Design
from framing_palette.design.figures import Figure, RectangleFigure
from framing_palette.design.layers import Layer, Shape, Sides
from framing_palette.design.order import cover_of, overlap_of, reveals_of
from framing_palette.design.size_parts import LayerSize, OpeningSize
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length


@dataclass(frozen=True, slots=True)
class Stack:
    """What the sizes of all layers are built from.

    ``base`` is the outermost mat's place (or the last layer's, without a mat): the openings of
    all windows are laid out there, in one block.
    """

    design: Design
    overlap: Length
    reveals: tuple[Sides | None, ...]
    base: int
    block: Block

    @classmethod
    def of(cls, design: Design) -> "Stack":
        """Lay a design's layers over each other, once their order has been checked."""
        overlap = overlap_of(design) or ZERO
        reveals = reveals_of(design)
        mat = design.outermost_mat
        base = len(design.layers) - 1 if mat is None else mat
        growth = _growth(reveals[:base]).plus(-overlap)
        arrangement = design.arrangement
        window = design.windows[0]
        block = (
            arrangement.block(growth)
            if arrangement
            else Block(
                ((ZERO, ZERO),),
                (("opening", window.width + growth.horizontal),),
                (("opening", window.height + growth.vertical),),
            )
        )
        return cls(design, overlap, reveals, base, block)

    def layer_size(self, place: int, contents: RectangleFigure) -> LayerSize:
        """Return one layer's openings, outside size and what shows and hides of it."""
        layer = self.design.layers[place]
        openings = tuple(
            replace(opening, strips=_strips(layer, opening.size, contents))
            for opening in self._openings(place)
        )
        for opening in openings:
            _check_outline(f"layer {place + 1}", opening, self.design)
        outer = contents if layer.kind is Kind.MAT else openings[0].strips
        return LayerSize(layer, openings, outer, self.reveals[place], self._hidden(place))

    def narrowest_bridge(self) -> Length | None:
        """Return the least of the outermost mat between two openings; None with only one."""
        sizes = [opening.size.lengths for opening in self._openings(self.base)]
        return narrowest_bridge(self.block, sizes)

    def _openings(self, place: int) -> tuple[OpeningSize, ...]:
        if place > self.base:
            return (self._opening_over_block(place),)
        inset = _growth(self.reveals[place : self.base])
        margins = self._margins()
        return tuple(
            OpeningSize(
                window.shape,
                self._opening(window, place),
                margins.left + left + inset.left,
                margins.top + top + inset.top,
            )
            for window, (left, top) in zip(self.design.windows, self.block.places, strict=True)
        )

    def _opening(self, window: Window, place: int) -> RectangleFigure:
        """Return the art less the overlaps plus the reveals of all layers beneath."""
        hides = self.overlap > ZERO
        sides = (-2, self.overlap, "overlap") if hides else (2, -self.overlap, "margin")
        size = RectangleFigure(
            Figure.start(window.width, "art width").plus(*sides),
            Figure.start(window.height, "art height").plus(*sides),
        )
        for below in range(place):
            size = _widened(size, self.reveals[below], f"reveal of layer {below + 1}")
        return size

    def _opening_over_block(self, place: int) -> OpeningSize:
        margins, grown = self._margins(), _growth(self.reveals[self.base : place])
        size = self._block_size()
        for below in range(self.base, place):
            size = _widened(size, self.reveals[below], f"reveal of layer {below + 1}")
        # Whatever lies beyond the outermost mat goes round its straight outer edges.
        left, top = margins.left - grown.left, margins.top - grown.top
        return OpeningSize(Shape.RECTANGLE, size, left, top)

    def _block_size(self) -> RectangleFigure:
        if self.design.arrangement is None:
            return self._opening(self.design.windows[0], self.base)
        axes = [
            Figure(
                tuple(term for name, length in axis for term in Figure.start(length, name).terms)
            )
            for axis in (self.block.across, self.block.down)
        ]
        return RectangleFigure(*axes)

    def _margins(self) -> Sides:
        """Return what lies between the block and the contents' outer edge."""
        last = self.design.layers[-1]
        if self.design.layers[self.base].borders:
            return self.design.layers[self.base].borders or Sides.all_round(ZERO)
        cover = cover_of(self.design, last)
        grown = _growth(self.reveals[self.base :])
        # A liner of unknown rabbet holds the art alone, which is then all of the contents.
        return grown.plus(self.overlap if cover is None else cover)

    def contents(self) -> RectangleFigure:
        """Return the size of mats, glazing and backing."""
        last, base = self.design.layers[-1], self.design.layers[self.base]
        if base.borders:
            return _widened(self._start_at_block(), base.borders, "border")
        if last.kind is not Kind.LINER:
            return self.outer()
        if last.rabbet_width is None:
            return art_size(self.design)
        size = self._start_at_opening()
        size = _widened(size, Sides.all_round(last.rabbet_width), "liner rabbet width")
        play = self.design.allowance
        return RectangleFigure(
            size.width.plus(-1, play, "play"), size.height.plus(-1, play, "play")
        )

    def outer(self) -> RectangleFigure:
        """Return the outside size of a last fillet or liner."""
        face = self.design.layers[-1].strip_width or ZERO
        return _widened(self._start_at_opening(), Sides.all_round(face), "strip")

    def _start_at_block(self) -> RectangleFigure:
        size = self._block_size()
        if self.design.arrangement is not None:
            return size
        return _restarted(size, f"opening of layer {self.base + 1}")

    def _start_at_opening(self) -> RectangleFigure:
        last = len(self.design.layers) - 1
        return _restarted(self._openings(last)[0].size, f"opening of layer {last + 1}")

    def _hidden(self, place: int) -> Sides | None:
        """Return what runs under the layer above."""
        layer, reveal = self.design.layers[place], self.reveals[place]
        if reveal is None:
            return None
        if layer.kind is not Kind.MAT:
            width = layer.strip_width
            return None if width is None else _less(Sides.all_round(width), reveal)
        if place < self.base:
            above = _growth(self.reveals[place + 1 : self.base])
            return _sum(above, self._margins())
        return _less(self._margins(), reveal)


def _strips(
    layer: Layer, opening: RectangleFigure, contents: RectangleFigure
) -> RectangleFigure | None:
    """Return a strip frame's outside size; a fillet is trimmed where it would pass the contents."""
    if layer.kind is Kind.MAT or layer.strip_width is None:
        return None
    size = _widened(_restarted(opening, "opening"), Sides.all_round(layer.strip_width), "strip")
    if layer.kind is Kind.LINER:
        return size
    width = min(size.width, contents.width, key=lambda figure: figure.value)
    height = min(size.height, contents.height, key=lambda figure: figure.value)
    return RectangleFigure(width, height)


def art_size(design: Design) -> RectangleFigure:
    """Return the art's own size."""
    return RectangleFigure(
        Figure.start(design.art.width, "art width"), Figure.start(design.art.height, "art height")
    )


def _restarted(size: RectangleFigure, name: str) -> RectangleFigure:
    width, height = size.lengths
    return RectangleFigure(Figure.start(width, name), Figure.start(height, name))


def _widened(size: RectangleFigure, sides: Sides | None, name: str) -> RectangleFigure:
    if sides is None:
        return size
    width = _both(size.width, ("left", sides.left), ("right", sides.right), name)
    height = _both(size.height, ("top", sides.top), ("bottom", sides.bottom), name)
    return RectangleFigure(width, height)


def _both(figure: Figure, one: tuple[str, Length], two: tuple[str, Length], name: str) -> Figure:
    if one[1] == two[1]:
        return figure.plus(2, one[1], name)
    return figure.plus(1, one[1], f"{one[0]} {name}").plus(1, two[1], f"{two[0]} {name}")


def _growth(reveals: tuple[Sides | None, ...]) -> Sides:
    grown = Sides.all_round(ZERO)
    for reveal in reveals:
        grown = _sum(grown, reveal) if reveal else grown
    return grown


def _sum(one: Sides, two: Sides) -> Sides:
    return Sides(
        one.top + two.top, one.right + two.right, one.bottom + two.bottom, one.left + two.left
    )


def _less(one: Sides, two: Sides) -> Sides:
    return Sides(
        one.top - two.top, one.right - two.right, one.bottom - two.bottom, one.left - two.left
    )


def _check_outline(name: str, opening: OpeningSize, design: Design) -> None:
    width, height = opening.size.lengths
    if opening.shape is Shape.ROUND and width != height:
        got = f"{design.said(width)} by {design.said(height)}"
        wanted = "a round opening needs equal width and height; choose oval"
        raise FieldError(f"{name} opening", got=got, wanted=wanted)
