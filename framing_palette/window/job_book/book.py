"""The book: opens the shop's jobs behind the window, asks them things, and says how they are."""

from collections.abc import Callable
from enum import StrEnum
from threading import Lock
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal

from framing_palette.errors import FramingPaletteError, JobStoreDamagedError, JobStoreError
from framing_palette.window.errands import Errands
from framing_palette.window.runner import Progress, Runner
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from framing_palette.jobs import JobLine, PackedJob, StoredJob
    from framing_palette.jobs.fates import FoldedIn
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.jobs.restoring_files import Restored

T = TypeVar("T")

OPENING, CARE, RECENT = "job book", "care of the book", "recent jobs"
_THREADS = 3
_MOST_RECENT = 5
_CARE_MS = 30 * 60_000
_TRY_AGAIN_MS = 15_000
_SETTLE_MS = 400

Work = Callable[["Keeper", Progress], T]


class BookState(StrEnum):
    """How the shop's jobs are."""

    CLOSED = "closed"
    READY = "ready"
    AWAY = "away"
    """Cannot be reached for now; what is done is kept on this computer."""
    DAMAGED = "damaged"
    """A backup has to be put back first."""


class JobBook(QObject):
    """The shop's jobs as the window knows them.

    ``keeper`` makes the way to the jobs when it is first needed, away from the interface thread.
    """

    state_changed = Signal()
    changed = Signal()
    """Jobs came, went or were saved."""
    restored = Signal()
    """A backup took the place of the jobs."""

    def __init__(self, session: Session, errands: Errands, keeper: "Callable[[], Keeper]") -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self._make_keeper = keeper
        self._keeper: Keeper | None = None
        self._lock = Lock()
        self.runner = Runner(self, threads=_THREADS)
        self.state = BookState.CLOSED
        self.fault = ""
        self.backup: Path | None = None
        self.backup_at: datetime | None = None
        self.waiting: tuple[str, ...] = ()
        self._care = QTimer(self, interval=_CARE_MS)
        self._care.timeout.connect(self._look_after)
        self._again = QTimer(self, interval=_TRY_AGAIN_MS, singleShot=True)
        self._again.timeout.connect(self.open)
        self._settled = QTimer(self, interval=_SETTLE_MS, singleShot=True)
        self._settled.timeout.connect(self.find_recent)
        self.changed.connect(self._settled.start)
        errands.bring_in = self.bring_in
        session.job_asked.connect(self.open_job)

    def keeper(self) -> "Keeper":
        """Return the way to the jobs; for the book's own threads."""
        with self._lock:
            if self._keeper is None:
                self._keeper = self._make_keeper()
            return self._keeper

    def open(self) -> None:
        """Open and check the shop's jobs, then look after them."""

        def work(keeper: "Keeper", _progress: Progress) -> int:
            return keeper.store().count()

        self.ask(OPENING, work, done=self._take_open)

    def open_job(self, number: str) -> None:
        """Put a job of the shop's on the desk."""
        self._errands.open_from_book(lambda: self.keeper().opened(number))

    def bring_in(self, packed: "PackedJob") -> "tuple[StoredJob | None, str]":
        """Bring a job of a file into the shop's jobs; for a thread of the errands."""
        from framing_palette.jobs.book_files import bring_in

        try:
            return bring_in(self.keeper(), packed)
        except FramingPaletteError:
            return None, ""  # the job is on the desk, and its saved state says what is wrong

    def ask(
        self,
        topic: str,
        work: "Work[T]",
        *,
        done: Callable[[T], None],
        failed: Callable[[Exception], None] | None = None,
    ) -> None:
        """Ask the shop's jobs something behind the window; an error tells how they are."""

        def fail(error: Exception) -> None:
            self.hear(error)
            if failed is not None:
                failed(error)

        self.runner.start(
            topic, lambda progress: work(self.keeper(), progress), done=done, failed=fail
        )

    def try_out(
        self,
        topic: str,
        work: "Work[T]",
        *,
        done: Callable[[T], None],
        failed: Callable[[Exception], None],
    ) -> None:
        """Do something beside the shop's jobs; an error tells nothing of how they are."""
        self.runner.start(
            topic, lambda progress: work(self.keeper(), progress), done=done, failed=failed
        )

    def hear(self, error: Exception | None) -> None:
        """Take in how the jobs are, from what came of asking them; None is well."""
        if error is None:
            self._be(BookState.READY)
        elif isinstance(error, JobStoreDamagedError):
            self.backup, self.backup_at = error.backup, error.backup_at
            self._be(BookState.DAMAGED, str(error))
        elif isinstance(error, JobStoreError):
            self.be_away(str(error))

    def be_away(self, fault: str) -> None:
        """Take in that the jobs cannot be reached, and try again in a while."""
        if self.state is not BookState.DAMAGED:
            self._be(BookState.AWAY, fault)
            self._again.start()

    def find_recent(self) -> None:
        """Look which jobs were worked on last."""
        if self.state is not BookState.READY:
            return

        def work(keeper: "Keeper", _progress: Progress) -> "tuple[JobLine, ...]":
            return keeper.store().lines(limit=_MOST_RECENT)

        self.ask(RECENT, work, done=lambda lines: self._session.assign("recent", lines))

    def take_restored(self, restored: "Restored") -> None:
        """Go on with the backup that was put back, and say what came of it."""
        self.backup = None
        self.restored.emit()
        self._take_open(0)
        self.changed.emit()
        came = len(restored.brought_over)
        said = self.tr("The backup is in its place; {count} newer jobs came along.")
        if came == 1:
            said = self.tr("The backup is in its place; 1 newer job came along.")
        words = said.format(count=came)
        if restored.aside is not None:
            kept = self.tr("What was there before is kept as {name}.")
            words = f"{words} {kept.format(name=restored.aside.name)}"
        self._session.assign("notice", words)

    def tell(self, error: Exception) -> None:
        """Say what went wrong where the notice stands."""
        self._errands.tell(error)

    def close(self) -> None:
        """Wait for what is asked, and let go of the jobs."""
        for timer in (self._care, self._again, self._settled):
            timer.stop()
        self.runner.close()
        if self._keeper is not None:
            self._keeper.close()

    def _take_open(self, _count: int) -> None:
        self._be(BookState.READY)
        self.find_recent()
        self._care.start()
        self._look_after()

    def _be(self, state: BookState, fault: str = "") -> None:
        is_other = (state, fault) != (self.state, self.fault)
        was_away = self.state is BookState.AWAY
        self.state, self.fault = state, fault
        if state is BookState.READY:
            self._again.stop()
            if was_away:
                self._look_after()
        if is_other:
            self.state_changed.emit()

    def _look_after(self) -> None:
        """Save what waits on this computer, and take a backup when one is due."""
        stored = self._session.stored
        leave = stored.job.number if stored is not None else ""

        def work(keeper: "Keeper", _progress: Progress) -> "FoldedIn":
            folded = keeper.fold_in(leave=leave)
            keeper.store().take_backup_if_due()
            return folded

        self.ask(CARE, work, done=self._take_folded, failed=self._errands.tell)

    def _take_folded(self, folded: "FoldedIn") -> None:
        self.waiting = folded.waiting
        if folded.saved:
            numbers = ", ".join(folded.saved)
            said = self.tr("Saved now, after waiting on this computer: {numbers}.")
            self._session.assign("notice", said.format(numbers=numbers))
        if folded.waiting:
            numbers = ", ".join(folded.waiting)
            said = self.tr(
                "On this computer alone, because another counter changed the same: {numbers}. "
                "Open it from the job book and choose."
            )
            self._session.assign("notice", said.format(numbers=numbers))
        self.changed.emit()
