"""Waiting until a window has come to rest: layouts that ask one another, and what arrives late."""

from PySide6.QtCore import QRect
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

_PASSES, _ALIKE, _PAUSE_MS = 60, 3, 10


def settle(window: QWidget) -> None:
    """Let a window lay itself out until nothing of it moves any more."""
    before, alike = _places(window), 0
    for _ in range(_PASSES):
        QApplication.processEvents()
        QTest.qWait(_PAUSE_MS)
        now = _places(window)
        alike = alike + 1 if now == before else 0
        if alike == _ALIKE:
            return
        before = now
    raise AssertionError(f"{window.objectName() or type(window).__name__} never comes to rest")


def _places(window: QWidget) -> list[tuple[int, QRect]]:
    return [
        (id(widget), widget.geometry())
        for widget in window.findChildren(QWidget)
        if widget.isVisible()
    ]
