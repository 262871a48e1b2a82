import gc
from collections.abc import Iterator
from threading import Event
from weakref import ref

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtGui import QCursor
from pytestqt.qtbot import QtBot

from framing_palette.window.shell import Shell
from framing_palette.window.tidying import MANY, Tidying


class Knot:
    """Refers to itself, so that only a collection frees it."""

    def __init__(self) -> None:
        self.itself = self


@pytest.fixture
def tidying(shell: Shell) -> Iterator[Tidying]:
    usual = gc.get_threshold()
    yield Tidying(shell.runner, shell)
    gc.set_threshold(*usual)
    gc.unfreeze()


def made_many() -> list[list[int]]:
    return [[number] for number in range(2 * MANY)]


def test_garbage_is_collected_at_a_beat_and_not_before(tidying: Tidying) -> None:
    knot = Knot()
    seen = ref(knot)
    del knot
    tidying.tidy()  # the pointer is known now
    many = made_many()
    assert seen() is not None
    assert tidying.tidy()
    assert seen() is None
    assert len(many) == 2 * MANY


def test_a_little_is_not_worth_a_walk(tidying: Tidying) -> None:
    gc.collect()
    assert not tidying.tidy()
    assert not tidying.tidy()


def test_nothing_is_tidied_while_something_works_or_the_pointer_goes(
    shell: Shell, tidying: Tidying, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    many = made_many()
    may_end = Event()
    shell.runner.start(
        "a wait", lambda _progress: may_end.wait(10), done=lambda _it: None, failed=print
    )
    tidying.tidy()
    assert not tidying.tidy()
    may_end.set()
    qtbot.waitUntil(lambda: not shell.runner.is_busy())
    here = QCursor.pos()
    monkeypatch.setattr(QCursor, "pos", lambda: here + QPoint(5, 0))
    assert not tidying.tidy()
    assert tidying.tidy()
    assert len(many) == 2 * MANY
