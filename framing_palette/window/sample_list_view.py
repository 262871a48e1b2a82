"""The shortlist's view: a list whose keys do something with the chosen sample."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListView

_KEYS = {
    Qt.Key.Key_Return: "lay",
    Qt.Key.Key_Enter: "lay",
    Qt.Key.Key_K: "keep",
    Qt.Key.Key_X: "away",
    Qt.Key.Key_S: "slide",
    Qt.Key.Key_I: "measures",
}
_SHELF_KEYS = {Qt.Key.Key_Q: "ask", Qt.Key.Key_T: "taste"}
"""Keys that need no chosen sample."""


class SampleListView(QListView):
    """The list with its keys: Enter lays, K keeps, X sends away."""

    asked = Signal(str)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer the keys of a sample before those of a list."""
        asked = (_KEYS | _SHELF_KEYS).get(Qt.Key(event.key()))
        if asked and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.asked.emit(asked)
        else:
            super().keyPressEvent(event)
