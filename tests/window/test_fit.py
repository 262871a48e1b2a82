"""Nothing clipped or overlapping, measured at two screens and three scalings.

A window on a screen of w x h pixels at s per cent has w / s by h / s of its own pixels, so the
scalings are tried as sizes: the smallest is a 1366 x 768 screen at 200 per cent.
"""

from collections.abc import Iterator
from itertools import combinations

import pytest
from PySide6.QtWidgets import (
    QAbstractButton,
    QLabel,
    QPushButton,
    QSplitterHandle,
    QWidget,
)
from pytestqt.qtbot import QtBot

from framing_palette.window import building
from framing_palette.window.controls import Chip, ToolBar
from framing_palette.window.focus_ring import FocusRing
from framing_palette.window.keeping import keep_sample
from framing_palette.window.keys_sheet import KeysSheet
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip
from tests.window.buildable import BUILDABLE
from tests.window.settling import settle

SIZES = [(1920, 1080), (1366, 768), (1280, 720), (911, 512), (960, 540), (683, 384)]
LAID_OVER = (ToolBar, FocusRing, KeysSheet, QSplitterHandle)


def visible(shell: Shell) -> list[QWidget]:
    return [widget for widget in shell.findChildren(QWidget) if widget.isVisible()]


def clipped(shell: Shell) -> Iterator[str]:
    for widget in visible(shell):
        if isinstance(widget, QLabel) and widget.text():
            if widget.wordWrap():
                if widget.heightForWidth(widget.width()) > widget.height() + 1:
                    yield f"{widget.text()!r} needs more height than {widget.height()}"
            elif widget.sizeHint().width() > widget.width() + 1:
                yield f"{widget.text()!r} needs {widget.sizeHint().width()}, has {widget.width()}"
        elif isinstance(widget, QPushButton | Chip) and (
            widget.sizeHint().width() > widget.width() + 1
        ):
            yield f"{widget.text()!r} needs {widget.sizeHint().width()}, has {widget.width()}"


def overlapping(shell: Shell) -> Iterator[str]:
    for parent in [shell, *visible(shell)]:
        children = [
            child
            for child in parent.children()
            if isinstance(child, QWidget)
            and child.isVisible()
            and not isinstance(child, LAID_OVER)
            and not child.isWindow()
            and type(child).__name__ not in ("_Empty", "KeysSheet")
        ]
        for first, second in combinations(children, 2):
            shared = first.geometry().intersected(second.geometry())
            if min(shared.width(), shared.height()) > allowed(first, second):
                yield f"{told(first)} and {told(second)} in {told(parent)} share {shared}"


def allowed(first: QWidget, second: QWidget) -> int:
    # A chip's hit area is higher than what is drawn of it, so that rows of chips stand close.
    return 8 if isinstance(first, Chip) and isinstance(second, Chip) else 1


def told(widget: QWidget) -> str:
    text = widget.text() if isinstance(widget, QLabel | QAbstractButton) else ""
    return f"{type(widget).__name__} {text!r}"


def too_small_to_hit(shell: Shell) -> Iterator[str]:
    for widget in visible(shell):
        if isinstance(widget, QAbstractButton) and min(widget.width(), widget.height()) < 32:
            yield f"{told(widget)} is {widget.width()} x {widget.height()}"


def scenes(shell: Shell) -> Iterator[str]:
    session = shell.session
    for key in shell.steps:
        shell.go(key)
        yield key
    session.assign("chosen_region", 0)
    shell.go("read")
    yield "a region chosen"
    shell.go("choose")
    lay_strip(session, "brick-red")
    session.assign("chosen_code", "brick-red")
    shelf = shell.steps["choose"].shelf_widget  # type: ignore[attr-defined]
    shelf.do("measures")
    yield "measures shown"
    shelf.do("measures")
    for code in ("brick-red", "deep-sea", "pale-sky", "black-flat"):
        keep_sample(session, code)
    yield "a full rail"
    session.show_side_by_side(shown=True)
    yield "side by side"
    session.show_side_by_side(shown=False)
    shell.toggle_settings()
    yield "settings"
    shell.keys_sheet.toggle()
    yield "keys"
    shell.keys_sheet.toggle()
    shell.toggle_settings()
    shell.toggle_book()
    yield "the job book"
    shell.toggle_rack()
    yield "the rack"


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_nothing_is_clipped_and_nothing_overlaps(
    open_shell: Shell, qtbot: QtBot, width: int, height: int
) -> None:
    open_shell.resize(width, height)
    open_shell.show()
    faults = []
    for scene in scenes(open_shell):
        settle(open_shell)
        faults += [f"{scene}: {fault}" for fault in clipped(open_shell)]
        faults += [f"{scene}: {fault}" for fault in overlapping(open_shell)]
        faults += [f"{scene}: {fault}" for fault in too_small_to_hit(open_shell)]
    assert (open_shell.width(), open_shell.height()) == (width, height)
    assert faults == []


@pytest.mark.parametrize(("width", "height"), SIZES[:3])
def test_nothing_is_clipped_where_a_design_is_built_measured_and_agreed(
    open_shell: Shell, qtbot: QtBot, width: int, height: int
) -> None:
    open_shell.resize(width, height)
    open_shell.show()
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    building.begin_design(open_shell.session, ("deep-sea", "pale-sky", "black-flat"))
    faults = []
    for key in ("build", "measure", "agree"):
        open_shell.go(key)
        qtbot.waitUntil(lambda: not open_shell.runner.is_busy(), timeout=20_000)
        settle(open_shell)
        for found in (clipped, overlapping, too_small_to_hit):
            faults += [f"{key}: {fault}" for fault in found(open_shell)]
    assert (open_shell.width(), open_shell.height()) == (width, height)
    assert faults == []


def test_the_empty_window_fits_the_smallest_screen(shell: Shell, qtbot: QtBot) -> None:
    shell.resize(683, 384)
    shell.show()
    settle(shell)
    assert list(clipped(shell)) == []
    assert list(overlapping(shell)) == []
