"""The canvas: the picture on its surround, with its layers; quick at any size and zoom."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSizeF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QGestureEvent, QPinchGesture, QSizePolicy, QWidget

from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.outlook import Look, Outlook
from framing_palette.window.canvas.place import Place, place_of
from framing_palette.window.greys import surround_color
from framing_palette.window.parcels import carried_code
from framing_palette.window.session import Session

_SETTLE_MS = 90
_QUICK_AREA = 1_200_000
"""Above so many pixels, the picture is drawn coarsely while it moves."""


class Canvas(QWidget):
    """Shows a session's picture and the layers laid over it."""

    pointed = Signal(float, float)
    """A place of the picture (0..1) was clicked and no layer wanted it."""

    def __init__(self, session: Session, outlook: Outlook, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._outlook = outlook
        self._layers: list[Layer] = []
        self._ground: QPixmap | None = None
        self._held: Layer | None = None
        self._pan_from: tuple[QPointF, Look] | None = None
        self._is_moving = False
        self._settle = QTimer(self, interval=_SETTLE_MS, singleShot=True)
        self._settle.timeout.connect(self._draw_finely)
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.tr("The picture"))
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(200, 160)
        self.grabGesture(Qt.GestureType.PinchGesture)
        outlook.look_changed.connect(self._on_look_changed)
        session.pyramid_changed.connect(self.redraw_ground)
        session.preferences_changed.connect(self.redraw_ground)

    def add_layer(self, layer: Layer) -> None:
        """Lay something over what is there already."""
        layer.setParent(self)
        layer.changed.connect(self._on_layer_changed)
        self._layers.append(layer)
        self.redraw_ground()

    @property
    def place(self) -> Place:
        """Where the picture lies now."""
        pyramid, picture = self._session.pyramid, self._session.picture
        size = QSizeF(pyramid.size) if pyramid else QSizeF(4, 3)
        mm_per_px = picture.mm_per_px if picture else None
        border_mm = max((layer.border_mm() for layer in self._layers), default=0.0)
        return place_of(
            size,
            QSizeF(self.size()),
            self._outlook.look,
            mm_per_px=mm_per_px,
            border_mm=border_mm,
        )

    def zoom_by(self, factor: float) -> None:
        """Look nearer or farther at the middle."""
        look = self._outlook.look
        self._outlook.set_look(look.zoomed(factor, look.x, look.y))

    def fit(self) -> None:
        """Show the whole picture."""
        self._outlook.fit()

    def redraw_ground(self) -> None:
        """Draw surround, picture and ground layers anew at the next chance."""
        self._ground = None
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Put down the ground and draw the other layers over what must be repainted."""
        place = self.place
        painter = QPainter(self)
        painter.setClipRect(event.rect())
        painter.drawPixmap(0, 0, self._drawn_ground(place))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for layer in self._layers:
            if not layer.is_ground:
                layer.paint(painter, place)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw the ground at the new size."""
        super().resizeEvent(event)
        self.redraw_ground()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Offer the press to the layers from the top; else move the picture."""
        point, place = event.position(), self.place
        if event.button() is Qt.MouseButton.LeftButton:
            for layer in reversed(self._layers):
                if layer.press(point, place, event.modifiers()):
                    self._held = layer
                    return
        self._pan_from = (point, self._outlook.look)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with what is held, or show what a press would take."""
        point, place = event.position(), self.place
        if self._held is not None:
            self._held.drag(point, place, event.modifiers())
        elif self._pan_from is not None:
            self._pan_to(point, place)
        else:
            self._hover(point, place)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture; a press that did not move points at a colour."""
        point, place = event.position(), self.place
        held, pan_from = self._held, self._pan_from
        self._held = self._pan_from = None
        if held is not None:
            held.release(point, place)
        elif pan_from is not None and (point - pan_from[0]).manhattanLength() < 4:
            x, y = place.from_screen(point)
            if 0 <= x <= 1 and 0 <= y <= 1:
                self.pointed.emit(x, y)
        self._hover(point, place)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Offer the double click to the layers; else show the whole picture."""
        point, place = event.position(), self.place
        if not any(layer.double_press(point, place) for layer in reversed(self._layers)):
            self.fit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Look nearer or farther at the place under the pointer."""
        steps = event.angleDelta().y() / 120
        if any(layer.wheel(steps) for layer in reversed(self._layers)):
            return
        x, y = self.place.from_screen(event.position())
        self._begin_moving()
        self._outlook.set_look(self._outlook.look.zoomed(1.2**steps, x, y))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Offer the key to the layers; else zoom."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            super().keyPressEvent(event)
            return
        if any(layer.key(event, self.place) for layer in reversed(self._layers)):
            return
        answer = self._keys().get(event.key())
        if answer is None:
            super().keyPressEvent(event)
        else:
            answer()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let samples be carried in."""
        self._carry(event)

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show what is carried where it is."""
        self._carry(event)

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Forget what was carried."""
        for layer in self._layers:
            layer.carried_away()

    def dropEvent(self, event: QDropEvent) -> None:
        """Lay down what was carried."""
        code = carried_code(event.mimeData())
        point, place = event.position(), self.place
        if any(layer.drop(code, point, place) for layer in reversed(self._layers)):
            event.acceptProposedAction()
            self.setFocus(Qt.FocusReason.MouseFocusReason)

    def event(self, event: QEvent) -> bool:
        """Take pinching fingers for zoom."""
        if event.type() is QEvent.Type.Gesture and isinstance(event, QGestureEvent):
            gesture = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(gesture, QPinchGesture):
                self._pinch(gesture)
                return True
        return super().event(event)

    def _carry(self, event: QDragMoveEvent) -> None:
        code = carried_code(event.mimeData())
        point, place = event.position(), self.place
        if code and any(layer.carry(code, point, place) for layer in reversed(self._layers)):
            event.acceptProposedAction()
        else:
            event.ignore()

    def _keys(self) -> dict[int, Callable[[], None]]:
        return {
            Qt.Key.Key_Plus: lambda: self.zoom_by(1.25),
            Qt.Key.Key_Equal: lambda: self.zoom_by(1.25),
            Qt.Key.Key_Minus: lambda: self.zoom_by(0.8),
            Qt.Key.Key_0: self.fit,
        }

    def _pinch(self, gesture: QPinchGesture) -> None:
        self._pan_from = None  # the first finger began to move the picture; now two bring it near
        x, y = self.place.from_screen(QPointF(self.mapFromGlobal(gesture.centerPoint().toPoint())))
        self._begin_moving()
        self._outlook.set_look(self._outlook.look.zoomed(gesture.scaleFactor(), x, y))

    def _pan_to(self, point: QPointF, place: Place) -> None:
        if self._pan_from is None:
            return
        start, look = self._pan_from
        self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self._begin_moving()
        way = point - start
        self._outlook.set_look(look.moved(way.x() / place.width, way.y() / place.height))

    def _hover(self, point: QPointF, place: Place) -> None:
        for layer in reversed(self._layers):
            shape = layer.hover(point, place)
            if shape is not None:
                self.setCursor(shape)
                return
        self.setCursor(Qt.CursorShape.ArrowCursor)

    def _begin_moving(self) -> None:
        self._is_moving = self.width() * self.height() > _QUICK_AREA
        self._settle.start()

    def _draw_finely(self) -> None:
        if self._is_moving:
            self._is_moving = False
            self.redraw_ground()

    def _on_look_changed(self) -> None:
        self.redraw_ground()

    def _on_layer_changed(self, rect: QRect) -> None:
        layer = self.sender()
        if isinstance(layer, Layer) and layer.is_ground:
            self.redraw_ground()
        elif rect.isEmpty():
            self.update()
        else:
            self.update(rect)

    def _drawn_ground(self, place: Place) -> QPixmap:
        if self._ground is None:
            ratio = self.devicePixelRatioF()
            self._ground = QPixmap((QSizeF(self.size()) * ratio).toSize())
            self._ground.setDevicePixelRatio(ratio)
            self._paint_ground(place)
        return self._ground

    def _paint_ground(self, place: Place) -> None:
        if self._ground is None:
            return
        painter = QPainter(self._ground)
        painter.fillRect(self.rect(), surround_color(self._session.preferences.surround))
        fine = not self._is_moving
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, fine)
        self._paint_picture(painter, place)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for layer in self._layers:
            if layer.is_ground:
                layer.paint(painter, place)
        painter.end()

    def _paint_picture(self, painter: QPainter, place: Place) -> None:
        pyramid = self._session.pyramid
        if pyramid is None:
            return
        shown = place.rect.intersected(QRectF(self.rect()))
        if shown.isEmpty():
            return
        ratio = self.devicePixelRatioF()
        level = pyramid.level_for(place.width * ratio / pyramid.size.width())
        across, down = level.width() / place.width, level.height() / place.height
        source = QRectF(
            (shown.left() - place.left) * across,
            (shown.top() - place.top) * down,
            shown.width() * across,
            shown.height() * down,
        )
        painter.drawImage(shown, level, source)
