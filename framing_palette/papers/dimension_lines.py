"""Dimension lines and numbered leaders, as a workshop drawing shows them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from framing_palette.papers.setting import Style
from framing_palette.papers.shapes import WHITE, Line, Oval, Pen, Point, Shape, Text, rectangle
from framing_palette.papers.type_runs import box_of

DIMENSIONS: Final = "dimensions"
GROUND: Final = "ground"  # white behind text, of no meaning to a cutter
THIN: Final = Pen(0.13)
TICK: Final = Pen(0.35)
_FIGURE: Final = Style(8.5, "bold")
_SECOND: Final = Style(6.8, grey=0.25)
_NUMBER: Final = Style(8, "bold")


@dataclass(frozen=True, slots=True)
class Lettering:
    """How dimensions are lettered: figure, second unit, number of a piece, and sizes in mm."""

    figure: Style = _FIGURE
    second: Style = _SECOND
    number: Style = _NUMBER
    tick: float = 0.9
    beyond: float = 1.2
    radius: float = 2.3

    def scaled(self, factor: float) -> "Lettering":
        """Return the lettering for a drawing that many times larger."""
        return Lettering(
            self.figure.scaled(factor),
            self.second.scaled(factor),
            self.number.scaled(factor),
            self.tick * factor,
            self.beyond * factor,
            self.radius * factor,
        )


def level_dimension(
    start: Point, end: Point, y: float, words: tuple[str, str], lettering: Lettering
) -> Iterator[Shape]:
    """Yield a level dimension between two points, its line at ``y``, its figure above the line.

    A figure that is wider than the space between the points stands beyond the second one.
    """
    (x1, y1), (x2, y2) = start, end
    beyond = lettering.beyond
    for x, from_y in ((x1, y1), (x2, y2)):
        yield Line((x, from_y), (x, y + (beyond if y > from_y else -beyond)), THIN, DIMENSIONS)
        yield _tick(x, y, lettering)
    figure, second = words
    needed = max(lettering.figure.width(figure), lettering.second.width(second))
    fits = needed + 2 * lettering.tick <= x2 - x1
    middle = (x1 + x2) / 2 if fits else x2 + lettering.beyond + needed / 2
    yield Line((x1, y), (x2 if fits else middle + needed / 2, y), THIN, DIMENSIONS)
    above = y - 0.25 * lettering.figure.size
    yield _dimension_text(lettering.figure, figure, (middle, above))
    if second:
        yield _dimension_text(lettering.second, second, (middle, y + 0.95 * lettering.second.size))


def upright_dimension(
    start: Point, end: Point, x: float, words: tuple[str, str], lettering: Lettering
) -> Iterator[Shape]:
    """Yield an upright dimension between two points, its line at ``x``, its figure turned."""
    (x1, y1), (x2, y2) = start, end
    beyond = lettering.beyond
    for from_x, y in ((x1, y1), (x2, y2)):
        yield Line((from_x, y), (x + (beyond if x > from_x else -beyond), y), THIN, DIMENSIONS)
        yield _tick(x, y, lettering)
    figure, second = words
    needed = max(lettering.figure.width(figure), lettering.second.width(second))
    fits = needed + 2 * lettering.tick <= y2 - y1
    middle = (y1 + y2) / 2 if fits else y1 - lettering.beyond - needed / 2
    yield Line((x, y1 if fits else middle - needed / 2), (x, y2), THIN, DIMENSIONS)
    left = x - 0.25 * lettering.figure.size
    yield _dimension_text(lettering.figure, figure, (left, middle), turned=True)
    if second:
        right = x + 0.95 * lettering.second.size
        yield _dimension_text(lettering.second, second, (right, middle), turned=True)


def texts_on_top(shapes: Iterable[Shape]) -> Iterator[Shape]:
    """Yield shapes with their text last, on a white ground, so that no line runs through it."""
    texts = []
    for shape in shapes:
        if isinstance(shape, Text):
            texts.append(shape)
        else:
            yield shape
    for text in texts:
        box = box_of(text)
        width, height = box.right - box.left, box.bottom - box.top
        yield rectangle(box.left, box.top, width, height, pen=None, fill=WHITE, part=GROUND)
    yield from texts


def dimension_room(words: tuple[str, str], lettering: Lettering) -> float:
    """Return how far apart two dimension lines lie."""
    second = lettering.second.size if words[1] else 0.0
    return 1.35 * lettering.figure.size + 1.2 * second


def numbered(number: int, at: Point, target: Point, lettering: Lettering) -> Iterator[Shape]:
    """Yield a leader from a dot on a piece to the number of its cut in a ring."""
    radius = lettering.radius
    (x, y), (tx, ty) = at, target
    length = max(((x - tx) ** 2 + (y - ty) ** 2) ** 0.5, 1e-6)
    edge = x + (tx - x) * radius / length, y + (ty - y) * radius / length
    yield Line(target, edge, THIN, DIMENSIONS)
    dot = 0.32 * radius
    yield Oval(target, dot, dot, None, 0.0, DIMENSIONS)
    yield from ringed(number, at, lettering)


def ringed(number: int, at: Point, lettering: Lettering) -> Iterator[Shape]:
    """Yield a number in a ring."""
    size = 2 * lettering.radius
    yield Oval(at, size, size, Pen(0.25), 1.0, DIMENSIONS)
    style = lettering.number
    yield _dimension_text(style, str(number), (at[0], at[1] + 0.36 * style.size))


def _tick(x: float, y: float, lettering: Lettering) -> Line:
    half = lettering.tick
    return Line((x - half, y + half), (x + half, y - half), TICK, DIMENSIONS)


def _dimension_text(style: Style, words: str, at: Point, *, turned: bool = False) -> Text:
    return Text(at, words, style.size, style.face, "middle", style.grey, turned, part=DIMENSIONS)
