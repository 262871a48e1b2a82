"""Tidying: Python's garbage collection, kept away from the moments when the hand works.

A collection walks all that was made since the last, some tens of milliseconds after a large rack
was judged. So none happens by itself; it is done from a slow beat, when nothing works in the
background and the pointer has rested since the beat before.
"""

import gc

from PySide6.QtCore import QObject, QPoint, QTimer
from PySide6.QtGui import QCursor, QGuiApplication

from framing_palette.window.runner import Runner

BEAT_MS = 3_000
MANY = 20_000
"""So many things made and not yet let go are worth a walk."""


class Tidying(QObject):
    """Collects garbage at a beat at which nobody notices."""

    def __init__(self, runner: Runner, parent: QObject) -> None:
        super().__init__(parent)
        self._runner = runner
        self._pointer = QPoint()
        gc.freeze()  # what is loaded by now stays: nothing in it needs to be walked again
        gc.set_threshold(0)
        self._beat = QTimer(self, interval=BEAT_MS)
        self._beat.timeout.connect(self.tidy)
        self._beat.start()

    def tidy(self) -> bool:
        """Collect if there is enough and the moment allows it, and tell whether it did."""
        before, self._pointer = self._pointer, QCursor.pos()
        is_held = QGuiApplication.mouseButtons().value != 0
        if is_held or before != self._pointer or self._runner.is_busy():
            return False
        if gc.get_count()[0] < MANY:
            return False
        gc.collect()
        return True
