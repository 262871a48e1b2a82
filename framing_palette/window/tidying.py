"""Tidying: Python's full garbage collection, kept away from the moments when the hand works.

A full collection walks everything that lives, some tens of milliseconds with a large rack. Young
garbage is collected as ever; the full walk is done from a slow beat, when nothing is held and
nothing works in the background.
"""

import gc

from PySide6.QtCore import QObject, QTimer
from PySide6.QtGui import QGuiApplication

from framing_palette.window.runner import Runner

BEAT_MS = 60_000
_YOUNG, _MIDDLE, _NEVER_BY_ITSELF = 700, 10, 1_000_000


class Tidying(QObject):
    """Collects in full once a beat, unless something is held or at work just then."""

    def __init__(self, runner: Runner, parent: QObject) -> None:
        super().__init__(parent)
        self._runner = runner
        gc.freeze()  # what is loaded by now stays: nothing in it needs to be walked again
        gc.set_threshold(_YOUNG, _MIDDLE, _NEVER_BY_ITSELF)
        self._beat = QTimer(self, interval=BEAT_MS)
        self._beat.timeout.connect(self.tidy)
        self._beat.start()

    def tidy(self) -> bool:
        """Collect in full if the moment allows it, and tell whether it did."""
        is_held = QGuiApplication.mouseButtons().value != 0
        if is_held or self._runner.is_busy():
            return False
        gc.collect()
        return True
