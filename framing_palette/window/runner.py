"""Work off the interface thread: a pure function out, its answer back as a queued signal."""

import gc
from collections.abc import Callable
from dataclasses import dataclass
from threading import Event
from time import monotonic
from typing import Any, ClassVar, Generic, TypeVar
from weakref import WeakSet

from PySide6.QtCore import QObject, Qt, QThreadPool, Signal, SignalInstance

T = TypeVar("T")

_TELL_EVERY_S = 0.05


class StoppedError(Exception):
    """A job noticed that nobody waits for its answer any more."""


class Progress:
    """What a running job may say and ask: how far it is, and whether to go on."""

    def __init__(self, tell: Callable[[float, str], None]) -> None:
        self._tell = tell
        self._stopped = Event()
        self._told = 0.0

    def stop(self) -> None:
        """Ask the job to end; its answer will not be used."""
        self._stopped.set()

    @property
    def is_stopped(self) -> bool:
        """Tell whether the answer is no longer wanted."""
        return self._stopped.is_set()

    def tell(self, share: float, words: str = "") -> None:
        """Say how far the job is (0..1), at most twenty times a second.

        Raises
        ------
        StoppedError
            When the job was cancelled or a newer one took its place.
        """
        if self.is_stopped:
            raise StoppedError
        now = monotonic()
        if now - self._told >= _TELL_EVERY_S:
            self._told = now
            self._tell(share, words)


@dataclass(frozen=True, slots=True)
class Outcome(Generic[T]):
    """What a job ended with: an answer, or the error that explains why not."""

    answer: T | None
    error: Exception | None


class _Voice(QObject):
    """Carries words from the worker's thread to the interface thread."""

    progressed = Signal(object, float, str)
    ended = Signal(object, object)


class _Task:
    """One job; the pool is given its bound method, which lives as long as a thread works on it.

    A QRunnable of our own would be taken down while its thread is still leaving it.
    """

    def __init__(
        self,
        topic: str,
        work: Callable[[Progress], Any],
        voice: _Voice,
        done: Callable[[Any], None],
        failed: Callable[[Exception], None],
    ) -> None:
        self.topic = topic
        self.done = done
        self.failed = failed
        self.progress = Progress(lambda share, words: voice.progressed.emit(self, share, words))
        self._work = work
        self._voice = voice

    def run(self) -> None:
        """Do the work on the pool's thread and send the outcome home."""
        outcome: Outcome[Any]
        try:
            outcome = Outcome(self._work(self.progress), None)
        except StoppedError:
            outcome = Outcome(None, None)
        except Exception as error:  # noqa: BLE001 - the top of a job
            _note(error)
            outcome = Outcome(None, error)
        self._voice.ended.emit(self, outcome)


class Runner(QObject):
    """Runs at most one job a topic; a newer job silences the older one.

    ``threads`` is how many work at a time; as many as the machine has processors when 0.
    """

    progressed = Signal(str, float, str)
    busy_changed = Signal()

    _at_work: ClassVar[WeakSet[_Task]] = WeakSet()
    """What is at work for any runner; a runner that is gone holds nobody up."""

    def __init__(self, parent: QObject | None = None, *, threads: int = 0) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        usual = max(2, QThreadPool.globalInstance().maxThreadCount())
        self._pool.setMaxThreadCount(threads or usual)
        self._voice = _Voice(self)
        queued = Qt.ConnectionType.QueuedConnection
        _connect(self._voice.ended, self._finish, queued)
        _connect(self._voice.progressed, self._report, queued)
        self._newest: dict[str, _Task] = {}
        self._running: set[_Task] = set()
        self._is_closed = False

    def start(
        self,
        topic: str,
        work: Callable[[Progress], T],
        *,
        done: Callable[[T], None],
        failed: Callable[[Exception], None],
    ) -> None:
        """Start a job; ``done`` or ``failed`` is called later on the interface thread.

        Once the runner was closed nothing starts any more: a timer may still ask while the window
        goes, and its job would outlive whoever waits for it.
        """
        if self._is_closed:
            return
        self.cancel(topic)
        task = _Task(topic, work, self._voice, done, failed)
        self._newest[topic] = task
        self._running.add(task)
        self._at_work.add(task)
        # Python may collect cycles on whichever thread allocates; a widget in one must not be
        # destroyed away from the interface thread, so nothing is collected while a job works.
        gc.disable()
        self._pool.start(task.run)
        self.busy_changed.emit()

    def cancel(self, topic: str) -> None:
        """Silence the running job of a topic, if any, and ask it to end."""
        task = self._newest.pop(topic, None)
        if task is not None:
            task.progress.stop()
            self.busy_changed.emit()

    def is_busy(self, topic: str | None = None) -> bool:
        """Tell whether a topic, or any, still waits for an answer."""
        return bool(self._newest) if topic is None else topic in self._newest

    def close(self, *, finish: tuple[str, ...] = ()) -> None:
        """Cancel everything but what must be finished, and wait until no thread of ours works."""
        self._is_closed = True
        for topic in tuple(self._newest):
            if topic not in finish:
                self.cancel(topic)
        self._pool.waitForDone()
        self._left(*self._running)

    def wait(self) -> None:
        """Wait until no thread of ours works; answers are delivered later all the same."""
        self._pool.waitForDone()

    def _left(self, *tasks: _Task) -> None:
        """Collect garbage again once nothing works for any runner."""
        self._at_work.difference_update(tasks)
        self._running.difference_update(tasks)
        if not self._at_work:
            gc.enable()

    def _report(self, task: _Task, share: float, words: str) -> None:
        if self._newest.get(task.topic) is task:
            self.progressed.emit(task.topic, share, words)

    def _finish(self, task: _Task, outcome: Outcome[Any]) -> None:
        self._left(task)
        if self._newest.get(task.topic) is not task:
            return
        del self._newest[task.topic]
        if outcome.error is not None:
            task.failed(outcome.error)
        else:
            task.done(outcome.answer)
        self.busy_changed.emit()


def _note(error: Exception) -> None:
    """Put an error into the log: what was refused, or a defect of ours."""
    from framing_palette.errors import FramingPaletteError
    from framing_palette.jobs.log_files import Happening, note_error

    is_refusal = isinstance(error, FramingPaletteError)
    note_error(Happening.REFUSED if is_refusal else Happening.DEFECT, error)


def _connect(
    signal: SignalInstance,
    slot: Callable[..., None],
    how: Qt.ConnectionType,
) -> None:
    signal.connect(slot, type=how)
