"""The chart's patches over a photograph: where they lie, and each as seen and as it should be."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF


def patch_middle(corners: list[QPointF], place: int) -> QPointF:
    """Return the middle of a patch, counted from 0 by rows, between the chart's four corners."""
    row, column = divmod(place, 6)
    across, down = (column + 0.5) / 6, (row + 0.5) / 4
    upper = corners[0] * (1 - across) + corners[1] * across
    lower = corners[3] * (1 - across) + corners[2] * across
    return upper * (1 - down) + lower * down


def patch_side(corners: list[QPointF]) -> float:
    """Return how wide a patch is drawn, in points of the screen, 4 at least."""
    way = corners[1] - corners[0]
    return float(max(4.0, (way.x() ** 2 + way.y() ** 2) ** 0.5 / 6 * 0.62))


def paint_split(painter: QPainter, box: QRectF, seen: QColor, wanted: QColor) -> None:
    """Paint a patch as it was seen, upper left, and as it should be, lower right."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(seen)
    painter.drawPolygon(QPolygonF([box.topLeft(), box.topRight(), box.bottomLeft()]))
    painter.setBrush(wanted)
    painter.drawPolygon(QPolygonF([box.topRight(), box.bottomRight(), box.bottomLeft()]))
