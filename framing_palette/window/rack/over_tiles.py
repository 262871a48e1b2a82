"""What is drawn above the layer of tiles: true surfaces, marks, the look and the lasso."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from framing_palette.window.rack.finding import tile_box
from framing_palette.window.rack.plane import TRUE_FROM, Plane
from framing_palette.window.rack.rings import DARK, LIGHT
from framing_palette.window.rack.state import RackState
from framing_palette.window.swatches import SwatchBook

_MOST_TRUE = 140
_CROSS = 10.0
_MANY = 24


def draw_true(painter: QPainter, state: RackState, plane: Plane, swatches: SwatchBook) -> None:
    """Draw the surfaces of the tiles in sight, unless they are small or too many."""
    if plane.tile < TRUE_FROM:
        return
    places = plane.places(state.points.mean_lab)
    x, y = places[:, 0], places[:, 1]
    seen = state.passing & state.points.is_there
    seen &= (x > 0) & (x < plane.width) & (y > 0) & (y < plane.height)
    rows = np.flatnonzero(seen)
    if len(rows) <= _MOST_TRUE:
        for row in rows[np.argsort(state.points.mean_lab[rows, 0], kind="stable")].tolist():
            swatches.draw(painter, tile_box(state, plane, row).toRect(), state.sample(row))


def draw_marks(painter: QPainter, state: RackState, plane: Plane) -> None:
    """Draw a frame round every tile that lies side by side on the shelf, a thin one if many do."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if len(state.marked) > _MANY:
        painter.setPen(QPen(LIGHT, 1.5))
        for row in state.marked:
            painter.drawRect(tile_box(state, plane, row))
        return
    for row in state.marked:
        _double(painter, tile_box(state, plane, row).adjusted(-2, -2, 2, 2))


def draw_look(painter: QPainter, state: RackState, plane: Plane) -> None:
    """Draw four strokes that point at what is looked near."""
    look = state.look
    if look is None:
        return
    spot = plane.at(look.lab[1], look.lab[2])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    row = state.row_of(look.code) if look.code else -1
    if row >= 0:
        _double(painter, tile_box(state, plane, row).adjusted(-4, -4, 4, 4))
    start = 0.8 * plane.tile + 8
    for color, width in ((LIGHT, 4.0), (DARK, 2.0)):
        painter.setPen(QPen(color, width))
        for step in (QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)):
            painter.drawLine(spot + step * start, spot + step * (start + _CROSS))


def draw_lasso(painter: QPainter, lasso: Sequence[QPointF]) -> None:
    """Draw the lasso as far as it goes."""
    if len(lasso) > 1:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for color, width in ((LIGHT, 4.0), (DARK, 2.0)):
            painter.setPen(QPen(color, width))
            painter.drawPolygon(QPolygonF(list(lasso)))


def _double(painter: QPainter, box: QRectF) -> None:
    for color, out in ((DARK, 0.0), (LIGHT, 2.0)):
        painter.setPen(QPen(color, 2.0))
        painter.drawRect(box.adjusted(-out, -out, out, out))
