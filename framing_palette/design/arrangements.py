"""Several openings in one mat: rows, columns, grids and free places."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from framing_palette.design.layers import Shape, Sides
from framing_palette.design.spoken import above_zero, said
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length, total

Place = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Window:
    """One piece of art in an arrangement.

    Parameters
    ----------
    width, height : Length
        The art's size, above zero.
    shape : Shape
        Outline of its opening.
    x, y : Length or None
        The art's left and top edge from any common origin, for a free arrangement.
    """

    width: Length
    height: Length
    shape: Shape = Shape.RECTANGLE
    x: Length | None = None
    y: Length | None = None

    def __post_init__(self) -> None:
        above_zero("window width", self.width)
        above_zero("window height", self.height)


@dataclass(frozen=True, slots=True)
class Block:
    """The openings of the outermost mat laid out.

    ``places`` are left and top of each opening from the left and top of the whole block;
    ``across`` and ``down`` are the named lengths that add up to the block's width and height.
    """

    places: tuple[Place, ...]
    across: tuple[tuple[str, Length], ...]
    down: tuple[tuple[str, Length], ...]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Windows in a grid, read row by row, or in free places.

    Parameters
    ----------
    windows : tuple of Window
        One or more.
    columns : int or None
        Windows in a row: all of them for one row, 1 for one column; None for free places.
    gap : Length
        What shows of the outermost mat between neighbouring openings of a grid.
    """

    windows: tuple[Window, ...]
    columns: int | None
    gap: Length = ZERO

    def __post_init__(self) -> None:
        if not self.windows:
            raise FieldError("windows", got="empty", wanted="name at least one window")
        if self.columns is None:
            self._check_free_places()
        else:
            self._check_grid(self.columns)

    def _check_free_places(self) -> None:
        for number, window in enumerate(self.windows, start=1):
            if window.x is None or window.y is None:
                wanted = "a free arrangement needs its x and y"
                raise FieldError(f"window {number} place", got="missing", wanted=wanted)

    def _check_grid(self, columns: int) -> None:
        if columns < 1 or len(self.windows) % columns:
            wanted = f"{len(self.windows)} windows must fill every row"
            raise FieldError("columns", got=columns, wanted=wanted)
        if len(self.windows) > 1:
            above_zero("gap between openings", self.gap)

    @property
    def rows(self) -> tuple[tuple[Window, ...], ...]:
        """The windows of a grid, row by row."""
        columns = self.columns or len(self.windows)
        starts = range(0, len(self.windows), columns)
        return tuple(self.windows[start : start + columns] for start in starts)

    def turned(self) -> "Arrangement":
        """Return the arrangement after a quarter turn clockwise."""
        if self.columns is None:
            return replace(self, windows=tuple(_turned(window) for window in self.windows))
        columns = list(zip(*self.rows, strict=True))
        turned = [_turned(window) for column in columns for window in reversed(column)]
        return replace(self, windows=tuple(turned), columns=len(self.rows))

    def block(self, growth: Sides) -> Block:
        """Lay out the outermost mat's openings, each being its art widened by ``growth``.

        Smaller openings of a grid are centred in their cell. ``growth`` is negative where the
        layers hide some of the art.

        Raises
        ------
        FieldError
            When two free openings touch or overlap.
        """
        if self.columns is None:
            return self._free_block(growth)
        rows = self.rows
        columns = list(zip(*rows, strict=True))
        widths = [max(window.width for window in column) + growth.horizontal for column in columns]
        heights = [max(window.height for window in row) + growth.vertical for row in rows]
        lefts, tops = _starts(widths, self.gap), _starts(heights, self.gap)
        places = [
            (
                left + (width - window.width - growth.horizontal) / 2,
                top + (height - window.height - growth.vertical) / 2,
            )
            for row, top, height in zip(rows, tops, heights, strict=True)
            for window, left, width in zip(row, lefts, widths, strict=True)
        ]
        numbered = list(enumerate(self.windows, start=1))
        starts = range(0, len(numbered), self.columns)
        down = [
            max(numbered[s : s + self.columns], key=lambda each: each[1].height) for s in starts
        ]
        across = [
            max(numbered[column :: self.columns], key=lambda each: each[1].width)
            for column in range(self.columns)
        ]
        return Block(
            tuple(places),
            _named(widths, [number for number, _ in across], self.gap),
            _named(heights, [number for number, _ in down], self.gap),
        )

    def _free_block(self, growth: Sides) -> Block:
        corners = [(window.x or ZERO, window.y or ZERO) for window in self.windows]
        left, top = min(x for x, _ in corners), min(y for _, y in corners)
        places = [(x - left, y - top) for x, y in corners]
        sizes = [
            (window.width + growth.horizontal, window.height + growth.vertical)
            for window in self.windows
        ]
        boxes = list(zip(places, sizes, strict=True))
        _check_apart(boxes)
        width = max(x + w for (x, _), (w, _) in boxes)
        height = max(y + h for (_, y), (_, h) in boxes)
        return Block(tuple(places), (("openings", width),), (("openings", height),))


def _turned(window: Window) -> Window:
    turned = replace(window, width=window.height, height=window.width)
    if window.x is None or window.y is None:
        return turned
    return replace(turned, x=-(window.y + window.height), y=window.x)


def _starts(sizes: Sequence[Length], gap: Length) -> list[Length]:
    return [total(sizes[:place]) + gap * place for place in range(len(sizes))]


def _named(
    sizes: Sequence[Length], numbers: Sequence[int], gap: Length
) -> tuple[tuple[str, Length], ...]:
    """Name each size by the opening that it is of: the largest of its column or row."""
    named = [(f"opening {number}", size) for number, size in zip(numbers, sizes, strict=True)]
    return (*named, *[("gap", gap)] * (len(sizes) - 1))


def _check_apart(boxes: Sequence[tuple[Place, Place]]) -> None:
    """Refuse free openings that touch: no mat would be left between them."""
    for (one, first), (two, second) in combinations(enumerate(boxes, start=1), 2):
        if _distance(first, second) <= ZERO:
            wanted = f"move it away from window {one}, which it touches"
            place = f"{said(second[0][0])}, {said(second[0][1])}"
            raise FieldError(f"window {two} place", got=place, wanted=wanted)


def _distance(first: tuple[Place, Place], second: tuple[Place, Place]) -> Length:
    """Return the wider of the horizontal and vertical gaps; negative when both overlap."""
    gaps = []
    for axis in (0, 1):
        start_a, start_b = first[0][axis], second[0][axis]
        end_a, end_b = start_a + first[1][axis], start_b + second[1][axis]
        gaps.append(max(start_b - end_a, start_a - end_b))
    return max(gaps)


def narrowest_bridge(block: Block, sizes: Sequence[Place]) -> Length | None:
    """Return the least of the mat between any two openings; None with fewer than two."""
    boxes = list(zip(block.places, sizes, strict=True))
    return min((_distance(a, b) for a, b in combinations(boxes, 2)), default=None)
