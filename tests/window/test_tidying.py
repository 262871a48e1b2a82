import gc
from collections.abc import Iterator
from threading import Event
from weakref import ref

import pytest
from pytestqt.qtbot import QtBot

from framing_palette.window.shell import Shell
from framing_palette.window.tidying import Tidying


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


def test_old_garbage_is_collected_at_a_beat_and_not_before(tidying: Tidying) -> None:
    knot = Knot()
    gc.collect(1)  # it is old now
    seen = ref(knot)
    del knot
    gone = [[] for _ in range(60_000)]  # enough young things for many a collection
    assert seen() is not None
    assert tidying.tidy()
    assert seen() is None
    assert len(gone) == 60_000


def test_nothing_is_tidied_while_something_works(
    shell: Shell, tidying: Tidying, qtbot: QtBot
) -> None:
    may_end = Event()
    shell.runner.start(
        "a wait", lambda _progress: may_end.wait(10), done=lambda _it: None, failed=print
    )
    assert not tidying.tidy()
    may_end.set()
    qtbot.waitUntil(lambda: not shell.runner.is_busy())
    assert tidying.tidy()
