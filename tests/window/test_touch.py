"""Fingers: a strip pushed with one, the picture brought nearer with two."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QInputDevice, QPointingDevice
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip
from framing_palette.window.steps.choose import ChooseStep


@pytest.fixture(scope="module")
def fingers() -> QPointingDevice:
    return QTest.createTouchDevice(QInputDevice.DeviceType.TouchScreen)


@pytest.fixture
def canvas(open_shell: Shell, qtbot: QtBot) -> Canvas:
    open_shell.show()
    qtbot.waitExposed(open_shell)
    open_shell.go("choose")
    qtbot.waitUntil(lambda: not open_shell.runner.is_busy())
    step = open_shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    assert step.canvas is not None
    return step.canvas


def test_a_finger_pushes_a_strip_as_far_as_it_goes(
    open_shell: Shell, canvas: Canvas, fingers: QPointingDevice
) -> None:
    session, place = open_shell.session, canvas.place
    lay_strip(session, "brick-red", (160.0, 120.0))
    start = place.mm_to_screen(160.0, 120.0).toPoint()
    QTest.touchEvent(canvas, fingers).press(0, start, canvas).commit()
    for step in range(1, 6):
        QTest.touchEvent(canvas, fingers).move(0, start + QPoint(8 * step, 0), canvas).commit()
    end = start + QPoint(40, 0)
    QTest.touchEvent(canvas, fingers).release(0, end, canvas).commit()
    (strip,) = session.desk.strips
    assert strip.x_mm - 160.0 == pytest.approx(40 / place.px_per_mm, abs=1 / place.px_per_mm)
    assert session.undo_stack.undoText().startswith("Push")


def test_two_fingers_that_part_bring_the_picture_nearer(
    open_shell: Shell, canvas: Canvas, fingers: QPointingDevice, qtbot: QtBot
) -> None:
    before, middle = canvas.place.width, canvas.rect().center()

    def at(away: int) -> tuple[QPoint, QPoint]:
        return middle - QPoint(away, 0), middle + QPoint(away, 0)

    one, two = at(40)
    QTest.touchEvent(canvas, fingers).press(0, one, canvas).press(1, two, canvas).commit()
    for away in range(50, 130, 10):
        one, two = at(away)
        QTest.touchEvent(canvas, fingers).move(0, one, canvas).move(1, two, canvas).commit()
    QTest.touchEvent(canvas, fingers).release(0, one, canvas).release(1, two, canvas).commit()
    assert canvas.place.width > 1.5 * before
    assert open_shell.session.desk.strips == ()
    assert canvas.cursor().shape() is Qt.CursorShape.ArrowCursor
