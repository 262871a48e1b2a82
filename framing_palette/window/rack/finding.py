"""Finding on the map: which tile or ring lies under a point, in an outline, or next in line."""

from collections.abc import Iterable

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPolygonF

from framing_palette.catalogue import Kind
from framing_palette.window.rack.layer import shape_of
from framing_palette.window.rack.plane import Plane
from framing_palette.window.rack.rings import Ring
from framing_palette.window.rack.state import RackState

_NEAR_LINE = 6.0
_KINDS = tuple(Kind)


def row_under(state: RackState, plane: Plane, point: QPointF) -> int:
    """Return the row of the tile under a point, the lightest of several; -1 for none."""
    points = state.points
    if not len(points):
        return -1
    away = np.abs(plane.places(points.mean_lab) - (point.x(), point.y()))
    shapes = np.array([shape_of(kind, plane.tile) for kind in _KINDS])
    inside = (away <= shapes[points.kind] / 2 + 1).all(axis=1) & state.passing
    rows = np.flatnonzero(inside)
    return int(rows[points.mean_lab[rows, 0].argmax()]) if len(rows) else -1


def ring_under(shown: Iterable[Ring], point: QPointF) -> Ring | None:
    """Return the ring whose line lies under a point."""
    for ring in shown:
        away = ring.centre - point
        if abs((away.x() ** 2 + away.y() ** 2) ** 0.5 - ring.radius) <= _NEAR_LINE:
            return ring
    return None


def rows_inside(state: RackState, plane: Plane, outline: QPolygonF) -> tuple[int, ...]:
    """Return the rows of the tiles whose middle lies in an outline, lightest first."""
    places, box = plane.places(state.points.mean_lab), outline.boundingRect()
    x, y = places[:, 0], places[:, 1]
    near = state.passing & (x >= box.left()) & (x <= box.right())
    near &= (y >= box.top()) & (y <= box.bottom())
    inside = [
        row
        for row in np.flatnonzero(near).tolist()
        if outline.containsPoint(QPointF(*places[row].tolist()), Qt.FillRule.OddEvenFill)
    ]
    return tuple(sorted(inside, key=lambda row: -float(state.points.mean_lab[row, 0])))


def next_row(state: RackState, plane: Plane, dx: int, dy: int) -> int:
    """Return the nearest tile in a direction from what is looked at; -1 for none.

    When no sample is looked at, it is the tile nearest to the colour that is, or to the middle.
    """
    look, places = state.look, plane.places(state.points.mean_lab)
    at = state.row_of(look.code) if look and look.code else -1
    if at < 0:
        spot = plane.at(*look.lab[1:]) if look else QPointF(plane.width / 2, plane.height / 2)
        cost = np.hypot(*(places - (spot.x(), spot.y())).T)
        fits = state.passing
    else:
        ahead = (places - places[at]) @ np.array([dx, dy], dtype=float)
        aside = np.abs((places - places[at]) @ np.array([dy, dx], dtype=float))
        cost, fits = ahead + 2 * aside, state.passing & (ahead > 0.5) & (aside <= ahead)
    return int(np.where(fits, cost, np.inf).argmin()) if fits.any() else -1


def tile_box(state: RackState, plane: Plane, row: int) -> QRectF:
    """Return where the tile of a row lies on the screen."""
    _, a, b = state.points.mean_lab[row].tolist()
    spot = plane.at(a, b)
    width, height = shape_of(_KINDS[state.points.kind[row]], plane.tile)
    left, top = round(spot.x() - width / 2), round(spot.y() - height / 2)
    return QRectF(left, top, round(width), round(height))
