"""Where the picture lies in a canvas, and the way between picture, millimetres and screen."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF

from framing_palette.ranking.strips import NOMINAL_LONG_SIDE_MM
from framing_palette.window.canvas.outlook import Look

EDGE_PX = 32.0
FOOT_PX = 48.0
"""Room below the picture, where the scale bar stands."""


@dataclass(frozen=True, slots=True)
class Place:
    """The picture's rectangle on the canvas and its scale.

    Parameters
    ----------
    left, top, width, height
        The picture's rectangle in pixels of the canvas.
    px_per_mm
        Screen pixels per millimetre on the art.
    is_scale_known
        False while the art's size is not known and a nominal one stands in.
    canvas_width, canvas_height
        Size of the canvas in pixels.
    """

    left: float
    top: float
    width: float
    height: float
    px_per_mm: float
    is_scale_known: bool
    canvas_width: float
    canvas_height: float

    @property
    def canvas(self) -> QRectF:
        """All of the canvas."""
        return QRectF(0.0, 0.0, self.canvas_width, self.canvas_height)

    @property
    def rect(self) -> QRectF:
        """The picture's rectangle."""
        return QRectF(self.left, self.top, self.width, self.height)

    @property
    def art_mm(self) -> tuple[float, float]:
        """Width and height of the art in millimetres."""
        return self.width / self.px_per_mm, self.height / self.px_per_mm

    def to_screen(self, x: float, y: float) -> QPointF:
        """Return the screen point of a place given from 0 to 1 across the picture."""
        return QPointF(self.left + x * self.width, self.top + y * self.height)

    def from_screen(self, point: QPointF) -> tuple[float, float]:
        """Return where a screen point lies, 0 to 1 across the picture, and beyond outside it."""
        return (point.x() - self.left) / self.width, (point.y() - self.top) / self.height

    def mm_to_screen(self, x_mm: float, y_mm: float) -> QPointF:
        """Return the screen point of a place in millimetres from the art's upper left corner."""
        return QPointF(self.left + x_mm * self.px_per_mm, self.top + y_mm * self.px_per_mm)

    def screen_to_mm(self, point: QPointF) -> tuple[float, float]:
        """Return the millimetres right of and below the art's upper left corner."""
        return (point.x() - self.left) / self.px_per_mm, (point.y() - self.top) / self.px_per_mm


def place_of(
    picture: QSizeF,
    canvas: QSizeF,
    look: Look,
    *,
    mm_per_px: float | None,
    border_mm: float = 0.0,
) -> Place:
    """Return where the picture lies; zoom 1 fits it with its border and an edge around it."""
    columns, rows = max(picture.width(), 1.0), max(picture.height(), 1.0)
    true_mm_per_px = mm_per_px or NOMINAL_LONG_SIDE_MM / max(columns, rows)
    border = 2 * border_mm / true_mm_per_px
    edge = min(EDGE_PX, canvas.width() / 16, canvas.height() / 16)
    foot = min(FOOT_PX, canvas.height() / 8)
    scale = look.zoom * min(
        max(canvas.width() - 2 * edge, 1.0) / (columns + border),
        max(canvas.height() - edge - foot, 1.0) / (rows + border),
    )
    width, height = columns * scale, rows * scale
    return Place(
        left=canvas.width() / 2 - look.x * width,
        top=(canvas.height() + edge - foot) / 2 - look.y * height,
        width=width,
        height=height,
        px_per_mm=scale / true_mm_per_px,
        is_scale_known=mm_per_px is not None,
        canvas_width=canvas.width(),
        canvas_height=canvas.height(),
    )
