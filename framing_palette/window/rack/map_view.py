"""The map: the whole rack on the a*, b* plane, pushed and zoomed at hand speed.

The tiles lie on an image that is drawn off the interface thread; while the hand moves, that image
is only pushed and stretched. Rings, the lasso and what is chosen are drawn above it.
"""

from collections.abc import Callable

import numpy as np
from PySide6.QtCore import QCoreApplication, QEvent, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QToolTip, QWidget

from framing_palette.catalogue import Kind
from framing_palette.colour import plain_name
from framing_palette.window.greys import surround_color
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.finding import (
    next_row,
    ring_under,
    row_under,
    rows_inside,
    tile_box,
)
from framing_palette.window.rack.ground import draw_words
from framing_palette.window.rack.layer import Layer, Order, draw_layer
from framing_palette.window.rack.over_tiles import draw_lasso, draw_look, draw_marks, draw_true
from framing_palette.window.rack.plane import Plane
from framing_palette.window.rack.rings import Ring, Sprites, rings
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
        self._sprites = Sprites()
        self.is_lassoing = False
        self.with_quiet = False
        self._lasso: list[QPointF] = []
        self._pressed: QPointF | None = None
        self._pushed = False
        self._fitted = True
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
        state.reaches_changed.connect(self._take_reaches)
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
        self._fitted = True

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
            self._fitted = False
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
        return row_under(self._state, self.plane, point)

    def rings(self) -> tuple[Ring, ...]:
        """Return the rings that are shown."""
        state = self._state
        lightness, quiet = state.wanted.lightness, self.with_quiet
        return rings(state.reaches, self.plane, lightness=lightness, with_quiet=quiet)

    def show_quiet(self, *, is_on: bool) -> None:
        """Show also what the picture asks for more quietly, where that is missing."""
        self.with_quiet = is_on
        self.update()

    def rows_in(self, outline: QPolygonF) -> tuple[int, ...]:
        """Return the rows of the tiles whose middle lies in an outline, lightest first."""
        return rows_inside(self._state, self.plane, outline)

    def step(self, dx: int, dy: int) -> None:
        """Go to the nearest tile in a direction."""
        row = next_row(self._state, self.plane, dx, dy)
        if row >= 0:
            self._state.look_at_row(row)
            self._bring_into_sight(tile_box(self._state, self.plane, row).center())

    def next_ring(self, by: int) -> None:
        """Look near the next colour of the picture."""
        shown = self.rings()
        if shown:
            self._ring_at = (self._ring_at + by) % len(shown)
            ring = shown[self._ring_at]
            self._look_at_ring(ring)
            self._bring_into_sight(ring.centre)

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
        """Show all again if all was shown, else keep the middle in the middle."""
        super().resizeEvent(event)
        self.plane = self.plane.resized(event.size())
        if self._fitted and len(self._state.points):
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
        ring = ring_under(self.rings(), point)
        if ring is not None:
            return reach_words(self._state, ring.place)
        row = self.row_at(point)
        if row < 0:
            return ""
        sample = self._state.sample(row)
        stock = "" if self._state.points.is_there[row] else self.tr(", out of stock")
        return f"{sample.name}  ·  {sample.code}{stock}"

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw ground and tiles, rings and what the hand does."""
        painter = QPainter(self)
        state, plane = self._state, self.plane
        ground = surround_color(state.session.preferences.surround)
        if self.layer is None or not self._fills(self.layer):
            painter.fillRect(event.rect(), ground)
        if self.layer is not None:
            target = self.layer.plane.placed_in(plane)
            if self.layer.plane.scale == plane.scale:
                painter.drawImage(target.topLeft().toPoint(), self.layer.image)
            else:
                painter.drawImage(target, self.layer.image)
        draw_words(painter, plane, is_dark=ground.lightness() < 120)
        draw_true(painter, state, plane, self._swatches)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_marks(painter, state, plane)
        look = state.look
        for ring in self.rings():
            chosen = look is not None and not look.code and look.lab == ring.reach.lab
            self._sprites.draw(painter, ring, is_chosen=chosen)
        draw_look(painter, state, plane)
        draw_lasso(painter, self._lasso)

    def _fills(self, layer: Layer) -> bool:
        return layer.plane.placed_in(self.plane).contains(QRectF(self.rect()))

    def _look_under(self, point: QPointF) -> None:
        ring = ring_under(self.rings(), point)
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

    def _bring_into_sight(self, place: QPointF) -> None:
        if not self.rect().adjusted(40, 40, -40, -40).contains(place.toPoint()):
            away = QPointF(self.width() / 2, self.height() / 2) - place
            self.show_plane(self.plane.moved(away.x(), away.y()))

    def _draws(self, event: QMouseEvent) -> bool:
        return self.is_lassoing or bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)

    def _take_points(self) -> None:
        if self._fitted and len(self._state.points):
            self.fit()
        self._tell()
        self._redraw()

    def _take_reaches(self) -> None:
        if self._fitted and len(self._state.points):
            self.fit()
        self._tell()

    def _tell(self) -> None:
        self.setAccessibleName(self.tr("Map of the rack"))
        self.setAccessibleDescription(spoken(self._state))
        self.update()

    def _redraw(self) -> None:
        state = self._state
        order = Order(
            points=state.points,
            passing=state.passing,
            plane=self.plane,
            ratio=self.devicePixelRatioF(),
            ground=surround_color(state.session.preferences.surround),
        )
        self._runner.start(
            LAYER,
            lambda _progress: draw_layer(order),
            done=self._take_layer,
            failed=lambda error: state.session.assign("notice", str(error)),
        )

    def _take_layer(self, layer: Layer) -> None:
        self.layer = layer
        self.update()


def reach_words(state: RackState, place: int) -> str:
    """Return what the rack has for a colour of the picture, in a sentence."""
    tell = QCoreApplication.translate
    reach = state.reaches[place]
    name = in_language(reach.name)
    if reach.row < 0:
        return tell("RackMap", "{colour}: nothing in stock at all.").format(colour=name)
    nearest = f"{state.sample(reach.row).name}, ΔE₀₀ {reach.delta_e:.1f}"
    if reach.is_gap:
        said = tell("RackMap", "{colour}: a gap. The nearest in stock is {nearest}.")
    else:
        said = tell("RackMap", "{colour}: the nearest in stock is {nearest}.")
    return said.format(colour=name, nearest=nearest)


def spoken(state: RackState) -> str:
    """Return what the map shows, for a reader of the screen."""
    gaps = sum(reach.is_gap for reach in state.reaches)
    tell = QCoreApplication.translate
    shown = tell("RackMap", "{shown} of {there} samples.")
    told = [shown.format(shown=int(state.passing.sum()), there=len(state.points))]
    if state.reaches:
        asked = tell("RackMap", "{gaps} colours that this picture asks for have nothing near them.")
        told.append(asked.format(gaps=gaps))
    if state.look is not None:
        near = tell("RackMap", "Looking near {name}: {count} samples.")
        told.append(near.format(name=in_language(state.look.name), count=len(state.near)))
    return " ".join(told)
