"""Outlines: where every edge of a framed picture lies, in millimetres, seen from the front.

x runs to the right and y downward from the top left corner of the mats, glazing and backing.
"""

from dataclasses import dataclass

from framing_palette.design import Design, OpeningSize, RectangleFigure, Shape, Sizes
from framing_palette.design.order import overlap_of
from framing_palette.units import Length


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle."""

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

    def grown(self, by: float) -> "Rect":
        """Return the rectangle with every side moved outward."""
        return Rect(self.left - by, self.top - by, self.right + by, self.bottom + by)


@dataclass(frozen=True, slots=True)
class Hole:
    """One opening, and the width of its bevel in plan."""

    rect: Rect
    is_oval: bool
    bevel: float = 0.0


@dataclass(frozen=True, slots=True)
class Outlines:
    """Every edge of a framed picture.

    Parameters
    ----------
    contents
        Mats, glazing and backing.
    arts
        Each piece of art.
    holes
        The openings of each layer, from the art outward.
    strips
        Outsides of each layer's strip frames; empty for a sheet.
    rabbet, sight, outside
        Of the moulding; None without one. ``outside`` is then the contents'.
    """

    contents: Rect
    arts: tuple[Rect, ...]
    holes: tuple[tuple[Hole, ...], ...]
    strips: tuple[tuple[Rect, ...], ...]
    rabbet: Rect | None
    sight: Rect | None
    outside: Rect


def outlines_of(design: Design, sizes: Sizes) -> Outlines:
    """Return where every edge of a design lies."""
    contents = Rect(0.0, 0.0, *_sides(sizes.contents))
    holes = tuple(
        tuple(_hole(opening, _mm(layer.layer.bevel_width)) for opening in layer.openings)
        for layer in sizes.layers
    )
    strips = tuple(
        tuple(
            _around(_rect(opening).middle, opening.strips)
            for opening in layer.openings
            if opening.strips
        )
        for layer in sizes.layers
    )
    overlap = _mm(overlap_of(design))
    arts = tuple(hole.rect.grown(overlap) for hole in holes[0]) if holes else (contents,)
    outside = contents if not holes else _around(_middle(sizes, contents), sizes.outer)
    if sizes.frame is None or design.moulding is None:
        return Outlines(contents, arts, holes, strips, None, None, outside)
    middle = outside.middle
    sight = _around(middle, sizes.frame.sight)
    return Outlines(
        contents,
        arts,
        holes,
        strips,
        _around(middle, sizes.frame.rabbet),
        sight,
        sight.grown(_mm(design.moulding.face)),
    )


def _middle(sizes: Sizes, contents: Rect) -> tuple[float, float]:
    """Return the middle of what lies in the rabbet: of a liner, if one holds everything."""
    last = sizes.layers[-1]
    return _rect(last.opening).middle if last.opening.strips else contents.middle


def _hole(opening: OpeningSize, bevel: float) -> Hole:
    return Hole(_rect(opening), opening.shape is not Shape.RECTANGLE, bevel)


def _rect(opening: OpeningSize) -> Rect:
    left, top = _mm(opening.left), _mm(opening.top)
    width, height = _sides(opening.size)
    return Rect(left, top, left + width, top + height)


def _around(middle: tuple[float, float], size: RectangleFigure) -> Rect:
    width, height = _sides(size)
    x, y = middle
    return Rect(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _sides(size: RectangleFigure) -> tuple[float, float]:
    width, height = size.lengths
    return width.as_float_mm(), height.as_float_mm()


def _mm(length: Length | None) -> float:
    return 0.0 if length is None else length.as_float_mm()
