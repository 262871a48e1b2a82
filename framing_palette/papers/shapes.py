"""Shapes on paper or in a drawing file: a small vector model that three writers share.

Everything is in millimetres, x to the right and y downward from the drawing's top left corner.
Greys run from 0, black, to 1, white. ``part`` names what a shape belongs to; drawing files keep
it as a layer.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final, Literal

Point = tuple[float, float]
Face = Literal["light", "regular", "bold"]
Anchor = Literal["start", "middle", "end"]
BLACK: Final = 0.0
WHITE: Final = 1.0
MM_PER_PT: Final = 25.4 / 72
# Of the size of the type: what a line of text needs above and below its baseline.
ABOVE_BASELINE: Final = 0.75
BELOW_BASELINE: Final = 0.22


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line is drawn: its width in mm, its grey, and dashes and gaps in mm."""

    width: float = 0.2
    grey: float = BLACK
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    pen: Pen = Pen()
    part: str = ""

    def moved(self, x: float, y: float) -> "Line":
        """Return the line moved."""
        return replace(self, start=_moved(self.start, x, y), end=_moved(self.end, x, y))


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed outline, with a line, a fill or both."""

    points: tuple[Point, ...]
    pen: Pen | None = Pen()
    fill: float | None = None
    part: str = ""

    def moved(self, x: float, y: float) -> "Polygon":
        """Return the outline moved."""
        return replace(self, points=tuple(_moved(point, x, y) for point in self.points))


@dataclass(frozen=True, slots=True)
class Oval:
    """An ellipse, or a circle, by its centre, width and height."""

    centre: Point
    width: float
    height: float
    pen: Pen | None = Pen()
    fill: float | None = None
    part: str = ""

    def moved(self, x: float, y: float) -> "Oval":
        """Return the ellipse moved."""
        return replace(self, centre=_moved(self.centre, x, y))


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text.

    Parameters
    ----------
    at
        On the baseline: the start, middle or end of the line.
    words
        What it says; fractions like 3/8 are set small.
    size
        Height of the type's body.
    turned
        Whether it runs upward.
    spacing
        Added after every letter.
    """

    at: Point
    words: str
    size: float
    face: Face = "regular"
    anchor: Anchor = "start"
    grey: float = BLACK
    turned: bool = False
    spacing: float = 0.0
    part: str = ""

    def moved(self, x: float, y: float) -> "Text":
        """Return the line of text moved."""
        return replace(self, at=_moved(self.at, x, y))


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture as JPEG bytes, in a box of its own proportions."""

    left: float
    top: float
    width: float
    height: float
    jpeg: bytes
    alt: str = ""

    def moved(self, x: float, y: float) -> "Photo":
        """Return the picture moved."""
        return replace(self, left=self.left + x, top=self.top + y)


Shape = Line | Polygon | Oval | Text | Photo


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes in a box; what lies outside the box is not forbidden, but meant to be seen."""

    width: float
    height: float
    shapes: tuple[Shape, ...] = ()

    def moved(self, x: float, y: float) -> "Drawing":
        """Return the drawing with its shapes moved inside the same box."""
        return replace(self, shapes=tuple(shape.moved(x, y) for shape in self.shapes))

    def with_shapes(self, *shapes: Shape) -> "Drawing":
        """Return the drawing with more shapes on top."""
        return replace(self, shapes=(*self.shapes, *shapes))

    @property
    def texts(self) -> tuple[Text, ...]:
        """All lines of text, in the order of drawing."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Text))


def rectangle(
    left: float,
    top: float,
    width: float,
    height: float,
    *,
    pen: Pen | None = Pen(),
    fill: float | None = None,
    part: str = "",
) -> Polygon:
    """Return an upright rectangle."""
    right, bottom = left + width, top + height
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    return Polygon(corners, pen, fill, part)


def joined(width: float, height: float, drawings: Iterable[Drawing]) -> Drawing:
    """Return one drawing with the shapes of all."""
    return Drawing(width, height, tuple(shape for each in drawings for shape in each.shapes))


def _moved(point: Point, x: float, y: float) -> Point:
    return point[0] + x, point[1] + y
