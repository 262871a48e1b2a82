"""A layer: one thing drawn on the canvas, which may answer the pointer and the keys."""

from PySide6.QtCore import QObject, QPointF, QRect, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter

from framing_palette.window.canvas.place import Place


class Layer(QObject):
    """Draws one thing; layers of the ground are kept in an image until they say they changed.

    Pointer methods return True when the layer takes the gesture for itself.
    """

    changed = Signal(QRect)
    """The part of the canvas that looks different now; an empty rectangle means all of it."""

    is_ground = False

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw."""

    def border_mm(self) -> float:
        """Return how far outside the picture this layer reaches on every side."""
        return 0.0

    def press(self, _point: QPointF, _place: Place, _keys: Qt.KeyboardModifier) -> bool:
        """Begin a gesture."""
        return False

    def drag(self, _point: QPointF, _place: Place, _keys: Qt.KeyboardModifier) -> None:
        """Go on with the gesture."""

    def release(self, _point: QPointF, _place: Place) -> None:
        """End the gesture."""

    def double_press(self, _point: QPointF, _place: Place) -> bool:
        """Answer a double click."""
        return False

    def hover(self, _point: QPointF, _place: Place) -> Qt.CursorShape | None:
        """Answer the resting pointer with its shape; None when there is nothing here."""
        return None

    def carry(self, _code: str, _point: QPointF, _place: Place) -> bool:
        """Answer a sample that is carried over the canvas from elsewhere."""
        return False

    def carried_away(self) -> None:
        """Answer that what was carried left the canvas."""

    def drop(self, _code: str, _point: QPointF, _place: Place) -> bool:
        """Take a sample that was carried here."""
        return False

    def wheel(self, _steps: float) -> bool:
        """Answer the wheel instead of zooming."""
        return False

    def key(self, _event: QKeyEvent, _place: Place) -> bool:
        """Answer a key."""
        return False

    def touch_up_all(self) -> None:
        """Repaint the whole canvas."""
        self.changed.emit(QRect())
