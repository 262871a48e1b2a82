"""Drawing regions: rectangle, ellipse, lasso, polygon, grow; and pushing and stretching them."""

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPainterPath, QPen, QPolygonF

from framing_palette.picture import Role, ellipse, lasso, rectangle
from framing_palette.picture.growing import TOLERANCES, USUAL_TOLERANCE, grown_outline
from framing_palette.picture.regions import Point
from framing_palette.picture.reshaping import (
    bounds,
    is_in_region,
    moved_region,
    stretched_region,
)
from framing_palette.window import drawing
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.canvas.regions import DARK, LIGHT, draw_label, draw_outline
from framing_palette.window.drawing import How
from framing_palette.window.errands import Errands
from framing_palette.window.session import Session

_GRAB_PX, _HANDLE_PX, _LEAST_PX = 14.0, 4.0, 4.0
_NUDGE, _LONG_NUDGE = 0.002, 0.02


class Tool(StrEnum):
    """What a press on the picture begins."""

    HAND = "hand"
    RECTANGLE = "rectangle"
    ELLIPSE = "ellipse"
    LASSO = "lasso"
    POLYGON = "polygon"
    GROW = "grow"


KEYS = {
    Qt.Key.Key_V: Tool.HAND,
    Qt.Key.Key_B: Tool.RECTANGLE,
    Qt.Key.Key_E: Tool.ELLIPSE,
    Qt.Key.Key_L: Tool.LASSO,
    Qt.Key.Key_P: Tool.POLYGON,
    Qt.Key.Key_G: Tool.GROW,
}

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class DrawingLayer(Layer):
    """Answers the pointer with the tool in hand and draws what is not finished yet."""

    tool_changed = Signal()

    def __init__(self, session: Session, errands: Errands) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self.tool = Tool.HAND
        self.tolerance = USUAL_TOLERANCE
        self._points: list[Point] = []
        self._hover: Point | None = None
        self._how = How.NEW
        self._corner = -1
        self._grown_from: Point | None = None
        self._grown_before = drawing.now(session)
        self._grown_count = 0

    def take(self, tool: Tool) -> None:
        """Take a tool in hand; what was not finished is dropped."""
        self.tool = tool
        self._points.clear()
        self._grown_from = None
        self.tool_changed.emit()
        self.touch_up_all()

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw the unfinished outline, and the corners of the chosen region."""
        path = self._unfinished(place)
        if path is not None:
            draw_outline(painter, path, Role.FOCUS, chosen=False)
        region = self._session.live_region or drawing.chosen_region(self._session)
        if region is not None and self.tool is Tool.HAND:
            for x, y in bounds(region).corners:
                _draw_corner(painter, place.to_screen(x, y))
        if self.tool is Tool.GROW and self._grown_from is not None:
            said = self.tr("wheel: %1").replace("%1", f"{self.tolerance:.0f}")
            draw_label(painter, said, place.to_screen(*self._grown_from))

    def press(self, point: QPointF, place: Place, keys: Qt.KeyboardModifier) -> bool:
        """Begin with the tool in hand."""
        at = place.from_screen(point)
        if self.tool is Tool.HAND:
            return self._press_hand(point, at, place)
        self._how = _how(keys)
        if self.tool is Tool.POLYGON:
            self._points.append(at)
        elif self.tool is Tool.GROW:
            self._grown_from = at
            self._grown_count += 1
            merge = f"grow {self._grown_count}"
            self._grown_before = drawing.now(self._session, self._how, merge=merge)
            self._grow()
        else:
            self._points = [at]
        self.touch_up_all()
        return True

    def drag(self, point: QPointF, place: Place, _keys: Qt.KeyboardModifier) -> None:
        """Go on with the tool in hand."""
        at = place.from_screen(point)
        if self.tool is Tool.HAND:
            self._drag_hand(at)
        elif self.tool is Tool.LASSO:
            self._points.append(at)
        elif self.tool in (Tool.RECTANGLE, Tool.ELLIPSE):
            self._points = [self._points[0], at]
        self.touch_up_all()

    def release(self, point: QPointF, place: Place) -> None:
        """End the gesture; polygon and grow go on."""
        if self.tool is Tool.HAND:
            self._release_hand()
        elif self.tool in (Tool.RECTANGLE, Tool.ELLIPSE, Tool.LASSO):
            start = place.to_screen(*self._points[0]) if self._points else point
            is_drawn = self.tool is Tool.LASSO or (point - start).manhattanLength() >= _LEAST_PX
            if is_drawn:
                self._finish()
            self._points.clear()
        self.touch_up_all()

    def double_press(self, _point: QPointF, _place: Place) -> bool:
        """Close the polygon."""
        if self.tool is not Tool.POLYGON:
            return False
        self._finish()
        return True

    def hover(self, point: QPointF, place: Place) -> Qt.CursorShape | None:
        """Show what a press would do here."""
        at = place.from_screen(point)
        if self.tool is not Tool.HAND:
            self._hover = at
            if self._points:
                self.touch_up_all()
            return Qt.CursorShape.CrossCursor
        if self._corner_at(point, place) >= 0:
            return Qt.CursorShape.SizeAllCursor
        return Qt.CursorShape.OpenHandCursor if self._region_at(at) >= 0 else None

    def wheel(self, steps: float) -> bool:
        """Grow farther or less far while growing."""
        if self.tool is not Tool.GROW or self._grown_from is None:
            return False
        least, most = TOLERANCES
        self.tolerance = min(max(self.tolerance + steps, least), most)
        self._grow()
        self.touch_up_all()
        return True

    def key(self, event: QKeyEvent, _place: Place) -> bool:
        """Answer Enter, Escape, Delete, arrows and the letters of the tools."""
        key = Qt.Key(event.key())
        if key in KEYS:
            self.take(KEYS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and len(self._points) > 2:
            self._finish()
        elif key == Qt.Key.Key_Escape:
            self._give_up()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            drawing.delete_region(self._session, self._session.chosen_region)
        elif key in _ARROWS and drawing.chosen_region(self._session) is not None:
            shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            step = _LONG_NUDGE if shift else _NUDGE
            across, down = _ARROWS[key]
            drawing.nudge(self._session, right=across * step, down=down * step)
        else:
            return False
        return True

    def _give_up(self) -> None:
        if self._points:
            self._points.clear()
        elif self.tool is not Tool.HAND:
            self.take(Tool.HAND)
        else:
            self._session.assign("chosen_region", -1)
        self.touch_up_all()

    def _unfinished(self, place: Place) -> QPainterPath | None:
        points = list(self._points)
        if not points:
            return None
        if self.tool is Tool.RECTANGLE and len(points) == 2:
            points = list(rectangle(*points[0], *points[1]))
        elif self.tool is Tool.ELLIPSE and len(points) == 2:
            points = list(ellipse(*points[0], *points[1]))
        elif self.tool is Tool.POLYGON and self._hover is not None:
            points.append(self._hover)
        path = QPainterPath()
        path.addPolygon(QPolygonF([place.to_screen(x, y) for x, y in points]))
        if self.tool in (Tool.RECTANGLE, Tool.ELLIPSE):
            path.closeSubpath()
        return path

    def _finish(self) -> None:
        points, before = tuple(self._points), drawing.now(self._session, self._how)
        self._points.clear()
        if self.tool is Tool.LASSO and len(points) > 2:
            self._errands.outline(
                lambda _picture: lasso(points),
                lambda outline: drawing.take_outline(self._session, outline, before),
            )
            return
        if self.tool in (Tool.RECTANGLE, Tool.ELLIPSE) and len(points) == 2:
            shape = rectangle if self.tool is Tool.RECTANGLE else ellipse
            points = shape(*points[0], *points[1])
        drawing.take_outline(self._session, points, before)
        self.touch_up_all()

    def _grow(self) -> None:
        start, tolerance, before = self._grown_from, self.tolerance, self._grown_before
        if start is None or not (0 <= start[0] <= 1 and 0 <= start[1] <= 1):
            return
        self._errands.outline(
            lambda picture: grown_outline(picture, start, tolerance=tolerance),
            lambda outline: drawing.take_outline(self._session, outline, before),
        )

    def _press_hand(self, point: QPointF, at: Point, place: Place) -> bool:
        self._corner = self._corner_at(point, place)
        if self._corner < 0:
            number = self._region_at(at)
            self._session.assign("chosen_region", number)
            if number < 0:
                return False
        self._points = [at]
        return True

    def _drag_hand(self, at: Point) -> None:
        region = drawing.chosen_region(self._session)
        if region is None or not self._points:
            return
        if self._corner >= 0:
            live = stretched_region(region, self._corner, at)
        else:
            start_x, start_y = self._points[0]
            live = moved_region(region, right=at[0] - start_x, down=at[1] - start_y)
        self._session.assign("live_region", live)

    def _release_hand(self) -> None:
        live = self._session.live_region
        self._points.clear()
        self._session.assign("live_region", None)
        if live is not None:
            verb = "Stretch" if self._corner >= 0 else "Push"
            drawing.put_region(self._session, live, verb=verb)

    def _region_at(self, at: Point) -> int:
        regions = self._session.desk.regions
        found = [number for number, region in enumerate(regions) if is_in_region(region, *at)]
        return found[-1] if found else -1

    def _corner_at(self, point: QPointF, place: Place) -> int:
        region = drawing.chosen_region(self._session)
        if region is None:
            return -1
        for number, (x, y) in enumerate(bounds(region).corners):
            if (place.to_screen(x, y) - point).manhattanLength() <= _GRAB_PX:
                return number
        return -1


def _how(keys: Qt.KeyboardModifier) -> How:
    if keys & Qt.KeyboardModifier.ShiftModifier:
        return How.ADD
    return How.SUBTRACT if keys & Qt.KeyboardModifier.AltModifier else How.NEW


def _draw_corner(painter: QPainter, at: QPointF) -> None:
    painter.setPen(QPen(DARK, 1.5))
    painter.setBrush(LIGHT)
    side = 2 * _HANDLE_PX
    painter.drawRect(QRectF(at.x() - _HANDLE_PX, at.y() - _HANDLE_PX, side, side))
