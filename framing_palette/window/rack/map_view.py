"""The map: the whole rack on the a*, b* plane, pushed and zoomed at hand speed.

The tiles lie on an image that is drawn off the interface thread; while the hand moves, that image
is only pushed and stretched. Rings, the lasso and what is chosen are drawn above it.
"""

from collections.abc import Callable

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QToolTip, QWidget

from framing_palette.catalogue import Kind
from framing_palette.colour import plain_name
from framing_palette.window.greys import surround_color
from framing_palette.window.rack.ground import draw_ground
from framing_palette.window.rack.layer import Layer, draw_layer, shape_of
from framing_palette.window.rack.plane import TRUE_FROM, Plane
from framing_palette.window.rack.rings import DARK, LIGHT, Ring, draw_ring, rings
from framing_palette.window.rack.state import FULL_RANGE, Look, RackState
from framing_palette.window.runner import Runner
from framing_palette.window.swatches import SwatchBook

LAYER = "rack layer"
_REDRAW_MS = 60
_DRAG_FROM = 4.0
_PUSH = 64.0
_WHEEL_STEP = 1.0 / 480.0
_MOST_TRUE = 140
_KINDS = tuple(Kind)


class RackMap(QWidget):
    """Shows the state's samples; a click looks near, a lasso lays side by side."""

    plane_changed = Signal()
    lasso_changed = Signal()

    def __init__(self, state: RackState, runner: Runner, swatches: SwatchBook) -> None:
        super().__init__()
        self._state = state
        self._runner = runner
        self._swatches = swatches
        self.plane = Plane()
        self.layer: Layer | None = None
        self.is_lassoing = False
        self.with_quiet = True
        self._lasso: list[QPointF] = []
        self._pressed: QPointF | None = None
        self._pushed = False
        self._fitted = False
        self._ring_at = -1
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(240, 160)
        self._redraw_soon = QTimer(self, interval=_REDRAW_MS, singleShot=True)
        self._redraw_soon.timeout.connect(self._redraw)
        state.points_changed.connect(self._take_points)
        state.wanted_changed.connect(self._redraw)
        state.look_changed.connect(self._tell)
        state.marked_changed.connect(self.update)
        state.reaches_changed.connect(self._tell)
        state.session.preferences_changed.connect(self._redraw)
        swatches.arrived.connect(self.update)
        self._take_points()

    def sizeHint(self) -> QSize:
        """Ask for much."""
        return QSize(900, 600)

    def fit(self) -> None:
        """Show everything that passes, and the picture's colours."""
        state = self._state
        shown = [state.points.mean_lab[state.passing]]
        if not state.wanted.family and state.reaches:
            shown.append(np.array([reach.lab for reach in state.reaches]))
        self.show_plane(self.plane.showing(np.vstack(shown)))

    def zoom_by(self, factor: float) -> None:
        """Look closer or from farther away, about what is chosen or the middle."""
        middle = QPointF(self.width() / 2, self.height() / 2)
        look = self._state.look
        if look is not None:
            spot = self.plane.at(look.lab[1], look.lab[2])
            middle = spot if self.rect().contains(spot.toPoint()) else middle
        self.show_plane(self.plane.zoomed(factor, middle))

    def show_plane(self, plane: Plane) -> None:
        """Show another view; its tiles are drawn as soon as the hand rests."""
        if plane != self.plane:
            self.plane = plane
            self._redraw_soon.start()
            self.plane_changed.emit()
            self.update()

    def set_lassoing(self, *, is_on: bool) -> None:
        """Let the hand draw a lasso instead of pushing the map."""
        self.is_lassoing = is_on
        self._lasso = []
        self.setCursor(Qt.CursorShape.CrossCursor if is_on else Qt.CursorShape.ArrowCursor)
        self.lasso_changed.emit()
        self.update()

    def row_at(self, point: QPointF) -> int:
        """Return the row of the tile under a point, the lightest of several; -1 for none."""
        state = self._state
        if not len(state.points):
            return -1
        away = np.abs(self.plane.places(state.points.mean_lab) - (point.x(), point.y()))
        shapes = np.array([shape_of(kind, self.plane.tile) for kind in _KINDS])
        inside = (away <= shapes[state.points.kind] / 2 + 1).all(axis=1) & state.passing
        rows = np.flatnonzero(inside)
        return int(rows[state.points.mean_lab[rows, 0].argmax()]) if len(rows) else -1

    def ring_at(self, point: QPointF) -> Ring | None:
        """Return the ring whose line lies under a point."""
        for ring in rings(self._state.reaches, self.plane, with_quiet=self.with_quiet):
            away = ring.centre - point
            if abs((away.x() ** 2 + away.y() ** 2) ** 0.5 - ring.radius) <= 6.0:
                return ring
        return None

    def rows_in(self, outline: QPolygonF) -> tuple[int, ...]:
        """Return the rows of the tiles whose middle lies in an outline, lightest first."""
        state = self._state
        places, box = self.plane.places(state.points.mean_lab), outline.boundingRect()
        x, y = places[:, 0], places[:, 1]
        near = state.passing & (x >= box.left()) & (x <= box.right())
        near &= (y >= box.top()) & (y <= box.bottom())
        rule = Qt.FillRule.OddEvenFill
        inside = [
            row
            for row in np.flatnonzero(near).tolist()
            if outline.containsPoint(QPointF(*places[row].tolist()), rule)
        ]
        return tuple(sorted(inside, key=lambda row: -float(state.points.mean_lab[row, 0])))

    def step(self, dx: int, dy: int) -> None:
        """Go to the nearest tile in a direction."""
        state = self._state
        at = state.row_of(state.look.code) if state.look and state.look.code else -1
        places = self.plane.places(state.points.mean_lab)
        if at >= 0:
            start = places[at]
        elif state.look is not None:
            spot = self.plane.at(state.look.lab[1], state.look.lab[2])
            start = np.array([spot.x(), spot.y()])
        else:
            start = np.array([self.width() / 2, self.height() / 2])
        ahead = (places - start) @ np.array([dx, dy], dtype=float)
        aside = np.abs((places - start) @ np.array([dy, dx], dtype=float))
        fits = state.passing & (ahead > 0.5) & (aside <= ahead)
        if at < 0:
            fits, ahead, aside = state.passing, np.hypot(*(places - start).T), np.zeros(len(places))
        if fits.any():
            row = int(np.where(fits, ahead + 2 * aside, np.inf).argmin())
            state.look_at_row(row)
            self._bring_into_sight(places[row])

    def next_ring(self, by: int) -> None:
        """Look near the next colour of the picture."""
        shown = list(rings(self._state.reaches, self.plane, with_quiet=self.with_quiet))
        if shown:
            self._ring_at = (self._ring_at + by) % len(shown)
            ring = shown[self._ring_at]
            self._look_at_ring(ring)
            self._bring_into_sight(np.array([ring.centre.x(), ring.centre.y()]))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Do everything that the hand does."""
        act = self._keys().get(Qt.Key(event.key()))
        if act is None:
            super().keyPressEvent(event)
        else:
            act()

    def _keys(self) -> dict[Qt.Key, Callable[[], object]]:
        key = Qt.Key
        return {
            key.Key_Left: lambda: self.step(-1, 0),
            key.Key_Right: lambda: self.step(1, 0),
            key.Key_Up: lambda: self.step(0, -1),
            key.Key_Down: lambda: self.step(0, 1),
            key.Key_Plus: lambda: self.zoom_by(1.25),
            key.Key_Equal: lambda: self.zoom_by(1.25),
            key.Key_Minus: lambda: self.zoom_by(0.8),
            key.Key_0: self.fit,
            key.Key_N: lambda: self.next_ring(1),
            key.Key_P: lambda: self.next_ring(-1),
            key.Key_L: lambda: self.set_lassoing(is_on=not self.is_lassoing),
            key.Key_Space: self._toggle_marked,
            key.Key_Escape: self._let_go,
        }

    def _toggle_marked(self) -> None:
        state = self._state
        row = state.row_of(state.look.code) if state.look and state.look.code else -1
        if row >= 0:
            rest = tuple(one for one in state.marked if one != row)
            state.mark(rest if row in state.marked else (*state.marked, row))

    def _let_go(self) -> None:
        if self.is_lassoing:
            self.set_lassoing(is_on=False)
        elif self._state.marked:
            self._state.mark(())
        else:
            self._state.look_at(None)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a push or a lasso."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed = event.position()
            self._pushed = False
            self._lasso = [event.position()] if self._draws(event) else []

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the map or draw on the lasso."""
        if self._pressed is None:
            return
        if self._lasso:
            self._lasso.append(event.position())
            self.update()
            return
        away = event.position() - self._pressed
        if self._pushed or away.manhattanLength() > _DRAG_FROM:
            self._pushed = True
            self._pressed = event.position()
            self.show_plane(self.plane.moved(away.x(), away.y()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Look near what was clicked on, or mark what the lasso holds."""
        if event.button() != Qt.MouseButton.LeftButton or self._pressed is None:
            return
        drawn, self._pressed, self._lasso = self._lasso, None, []
        if len(drawn) > 3:
            self._state.mark(self.rows_in(QPolygonF(drawn)))
            self.set_lassoing(is_on=False)
        elif not self._pushed:
            self._look_under(event.position())
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Look closer or from farther away, about the pointer."""
        turned = event.angleDelta().y() or event.pixelDelta().y()
        self.show_plane(self.plane.zoomed(2.0 ** (turned * _WHEEL_STEP), event.position()))
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the middle in the middle."""
        super().resizeEvent(event)
        self.plane = self.plane.resized(event.size())
        if not self._fitted and len(self._state.points):
            self._fitted = True
            self.fit()
        self._redraw_soon.start()

    def event(self, event: QEvent) -> bool:
        """Say what lies under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            QToolTip.showText(event.globalPos(), self.words_at(QPointF(event.pos())), self)
            return True
        return super().event(event)

    def words_at(self, point: QPointF) -> str:
        """Return what lies under a point, in words."""
        ring = self.ring_at(point)
        if ring is not None:
            return reach_words(self._state, ring.place)
        row = self.row_at(point)
        if row < 0:
            return ""
        sample = self._state.sample(row)
        stock = "" if self._state.points.is_there[row] else ", " + self.tr("out of stock")
        return f"{sample.name}  ·  {sample.code}{stock}"

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw ground, tiles, rings and what the hand does."""
        painter = QPainter(self)
        lightness = self._state.session.preferences.surround
        painter.fillRect(self.rect(), surround_color(lightness))
        draw_ground(painter, self.plane, is_dark=lightness < 50)
        if self.layer is not None:
            self._draw_tiles(painter, self.layer)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_marked(painter)
        look = self._state.look
        for ring in rings(self._state.reaches, self.plane, with_quiet=self.with_quiet):
            chosen = look is not None and not look.code and look.lab == ring.reach.lab
            draw_ring(painter, ring, is_chosen=chosen)
        self._draw_look(painter)
        self._draw_lasso(painter)

    def _draw_tiles(self, painter: QPainter, layer: Layer) -> None:
        target = layer.plane.placed_in(self.plane)
        if layer.plane.scale == self.plane.scale:
            painter.drawImage(target.topLeft(), layer.image)
        else:
            painter.drawImage(target, layer.image)
        if self.plane.tile >= TRUE_FROM:
            self._draw_true(painter)

    def _draw_true(self, painter: QPainter) -> None:
        """Draw the surfaces of the tiles in sight, unless there are too many to be seen apart."""
        state = self._state
        places = self.plane.places(state.points.mean_lab)
        x, y = places[:, 0], places[:, 1]
        seen = state.passing & state.points.is_there
        seen &= (x > 0) & (x < self.width()) & (y > 0) & (y < self.height())
        rows = np.flatnonzero(seen)
        if len(rows) > _MOST_TRUE:
            return
        for row in rows[np.argsort(state.points.mean_lab[rows, 0])].tolist():
            self._swatches.draw(painter, self._box(row, places[row]).toRect(), state.sample(row))

    def _box(self, row: int, place: "np.ndarray[tuple[int], np.dtype[np.float64]]") -> QRectF:
        width, height = shape_of(_KINDS[self._state.points.kind[row]], self.plane.tile)
        return QRectF(
            round(place[0] - width / 2), round(place[1] - height / 2), round(width), round(height)
        )

    def _draw_marked(self, painter: QPainter) -> None:
        places = self.plane.places(self._state.points.mean_lab)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for row in self._state.marked:
            _double(painter, self._box(row, places[row]).adjusted(-2, -2, 2, 2))

    def _draw_look(self, painter: QPainter) -> None:
        look = self._state.look
        if look is None:
            return
        spot = self.plane.at(look.lab[1], look.lab[2])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        row = self._state.row_of(look.code) if look.code else -1
        if row >= 0:
            _double(painter, self._box(row, np.array([spot.x(), spot.y()])).adjusted(-4, -4, 4, 4))
        for color, width in ((LIGHT, 4.0), (DARK, 2.0)):
            painter.setPen(QPen(color, width))
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
                start = 0.8 * self.plane.tile + 8
                step = QPointF(dx, dy)
                painter.drawLine(spot + step * start, spot + step * (start + 10))

    def _draw_lasso(self, painter: QPainter) -> None:
        if len(self._lasso) > 1:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            for color, width in ((LIGHT, 4.0), (DARK, 2.0)):
                painter.setPen(QPen(color, width))
                painter.drawPolygon(QPolygonF(self._lasso))

    def _look_under(self, point: QPointF) -> None:
        ring = self.ring_at(point)
        row = self.row_at(point)
        if ring is not None:
            self._look_at_ring(ring)
        elif row >= 0:
            self._state.look_at_row(row)
        elif len(self._state.points):
            a, b = self.plane.under(point)
            low, high = self._state.wanted.lightness
            lightness = 60.0 if (low, high) == FULL_RANGE else (low + high) / 2
            lab = (lightness, a, b)
            self._state.look_at(Look(lab, plain_name(lab)))

    def _look_at_ring(self, ring: Ring) -> None:
        self._state.look_at(Look(ring.reach.lab, ring.reach.name))

    def _bring_into_sight(self, place: "np.ndarray[tuple[int], np.dtype[np.float64]]") -> None:
        if not self.rect().adjusted(40, 40, -40, -40).contains(QPointF(*place.tolist()).toPoint()):
            away = (self.width() / 2 - place[0], self.height() / 2 - place[1])
            self.show_plane(self.plane.moved(float(away[0]), float(away[1])))

    def _draws(self, event: QMouseEvent) -> bool:
        return self.is_lassoing or bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)

    def _take_points(self) -> None:
        self._fitted = self.isVisible() and len(self._state.points) > 0
        if self._fitted:
            self.fit()
        self._tell()
        self._redraw()

    def _tell(self) -> None:
        self.setAccessibleName(self.tr("Map of the rack"))
        self.setAccessibleDescription(spoken(self._state))
        self.update()

    def _redraw(self) -> None:
        state, plane = self._state, self.plane
        points, passing, ratio = state.points, state.passing, self.devicePixelRatioF()
        level = 60 if state.session.preferences.surround >= 50 else 120
        dot = QColor(level, level, level)
        self._runner.start(
            LAYER,
            lambda _progress: draw_layer(points, passing, plane, ratio, dot),
            done=self._take_layer,
            failed=lambda error: state.session.assign("notice", str(error)),
        )

    def _take_layer(self, layer: Layer) -> None:
        self.layer = layer
        self.update()


def reach_words(state: RackState, place: int) -> str:
    """Return what the rack has for a colour of the picture, in a sentence."""
    reach = state.reaches[place]
    if reach.row < 0:
        return f"{reach.name}: nothing in stock at all."
    nearest = f"{state.sample(reach.row).name}, ΔE₀₀ {reach.delta_e:.1f}"
    if reach.is_gap:
        return f"{reach.name}: a gap. The nearest in stock is {nearest}."
    return f"{reach.name}: the nearest in stock is {nearest}."


def spoken(state: RackState) -> str:
    """Return what the map shows, for a reader of the screen."""
    gaps = sum(reach.is_gap for reach in state.reaches)
    told = [f"{int(state.passing.sum())} of {len(state.points)} samples."]
    if state.reaches:
        told.append(f"{gaps} colours that this picture asks for have nothing near them.")
    if state.look is not None:
        told.append(f"Looking near {state.look.name}: {len(state.near)} samples.")
    return " ".join(told)


def _double(painter: QPainter, box: QRectF) -> None:
    for color, out in ((DARK, 0.0), (LIGHT, 2.0)):
        painter.setPen(QPen(color, 2.0))
        painter.drawRect(box.adjusted(-out, -out, out, out))
