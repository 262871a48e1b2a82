"""One job that is kept while it is worked on: what is noted, when it is saved, where it is now."""

from dataclasses import replace
from time import monotonic
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from framing_palette.jobs import Autosave, Job, PackedJob, StoredJob
from framing_palette.window.job_book.book import BookState, JobBook
from framing_palette.window.job_files import now

if TYPE_CHECKING:
    from datetime import datetime

    from framing_palette.jobs.fates import Kept
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.window.runner import Progress

NEW = 0


class KeptJob(QObject):
    """Keeps a job at its last accepted change; everything slow runs on the book's threads."""

    changed = Signal()
    """Where the job is now is another place than before."""
    joined = Signal(object, object)
    """The job as it was sent and as it is stored: another counter had a part in it."""

    def __init__(self, book: JobBook, packed: PackedJob, stored: StoredJob | None) -> None:
        super().__init__(book)
        self._book = book
        self._photograph = packed
        self.base = stored or StoredJob(packed.job, NEW)
        self.autosave: Autosave[Job] = Autosave()
        self.kept: Kept | None = None
        self.error: Exception | None = None
        self.at: datetime | None = None
        self._noted: Job | None = None
        self._version_before = self.base.version
        self._sent: Job | None = None
        self._outcome: Kept | Exception | None = None
        self._soon = QTimer(self, singleShot=True)
        self._soon.timeout.connect(self._save_due)
        book.state_changed.connect(self._follow_book)

    @property
    def topic(self) -> str:
        """The topic of its saves, its own, so that no other job's save silences it."""
        return f"saving {id(self)}"

    @property
    def is_saved(self) -> bool:
        """Whether nothing waits to be saved."""
        return self.autosave.is_saved

    def note(self, job: Job) -> None:
        """Take in the job as it is now; its number is its own and not the desk's."""
        job = as_of(job, self.base.job)
        if job == self._noted:
            return
        self._noted = job
        self.autosave.note(job, monotonic())
        self._wait()
        self.changed.emit()

    def leave_as(self, job: Job) -> None:
        """Take the job as it is now for what is saved, so that only a change of it is kept."""
        self._noted = as_of(job, self.base.job)

    def rebase(self, base: StoredJob) -> None:
        """Go on from the job as it is in the book; what is noted next is what was made of both."""
        self.base = base
        self.kept = self._noted = None

    def step_back(self, sent: Job) -> None:
        """Go on from what was sent last, so that the next save finds what the other changed."""
        self.base = StoredJob(as_of(sent, self.base.job), self._version_before)

    def save_now(self) -> None:
        """Save what waits without waiting for the hand to rest."""
        self._send(self.autosave.take_at_once())

    def finish(self) -> None:
        """Save what waits before the window closes; on this thread, for no other may start."""
        self._soon.stop()
        self._book.runner.wait()
        self._settle()
        job = self.autosave.take_at_once()
        if job is not None:
            self._sent = job
            self._outcome = self._kept(self._book.keeper(), self.base, job)
            self._settle()

    def _save_due(self) -> None:
        self._send(self.autosave.take(monotonic()))
        self._wait()

    def _send(self, job: Job | None) -> None:
        if job is None:
            return
        self._soon.stop()
        self._sent, base = job, self.base

        def work(keeper: "Keeper", _progress: "Progress") -> None:
            self._outcome = self._kept(keeper, base, job)

        self._book.ask(self.topic, work, done=lambda _none: self._settle(), failed=self._fail)
        self.changed.emit()

    def _kept(self, keeper: "Keeper", base: StoredJob, job: Job) -> "Kept | Exception":
        """Keep a job and return what came of it; runs on whichever thread it is called on."""
        from framing_palette.jobs.fates import Fate, Kept

        mine = as_of(job, base.job)
        if base.version > NEW and mine == base.job:
            return Kept(Fate.SAVED, base)
        packed = PackedJob(replace(mine, changed=now()))
        if mine.picture is not None and mine.picture == self._photograph.job.picture:
            packed = replace(packed, picture=self._photograph.picture)
        try:
            if keeper.place.is_server and self._book.state is BookState.AWAY:
                keeper.hold(base, packed)  # a server that is away is not waited for each time
                return Kept(Fate.HERE, base, why=self._book.fault)
            return keeper.keep(base, packed)
        except Exception as error:  # noqa: BLE001 - told where the saved state stands
            return error

    def _fail(self, error: Exception) -> None:
        """Take in that not even the way to the jobs could be made."""
        self._outcome = error
        self._settle()

    def _settle(self) -> None:
        """Take in what came of the last save, once."""
        outcome, sent = self._outcome, self._sent
        self._outcome = None
        if outcome is None or sent is None:
            return
        if isinstance(outcome, Exception):
            self.error = outcome
            self.autosave.failed(monotonic())
        else:
            self.kept, self.error, self.at = outcome, None, now()
            self.autosave.succeeded()
            self._take(outcome, sent)
        self._wait()
        self.changed.emit()

    def _take(self, kept: "Kept", sent: Job) -> None:
        from framing_palette.jobs.fates import Fate

        if kept.fate is Fate.HERE:
            self._book.be_away(kept.why)
            return
        self._book.hear(None)
        if kept.fate is Fate.SAVED:
            self._version_before, self.base = self.base.version, kept.base
            self._book.changed.emit()
            if as_of(sent, kept.base.job) != kept.base.job or sent.number != kept.base.job.number:
                self.joined.emit(sent, kept.base)

    def _follow_book(self) -> None:
        """Save where it belongs what was kept here meanwhile."""
        from framing_palette.jobs.fates import Fate

        is_here = self.kept is not None and self.kept.fate is Fate.HERE
        if is_here and self._book.state is BookState.READY and self._noted is not None:
            self.autosave.note(self._noted, monotonic())
            self.save_now()

    def _wait(self) -> None:
        wait_s = self.autosave.wait_s(monotonic())
        if wait_s is None:
            self._soon.stop()
        else:
            self._soon.start(round(wait_s * 1000))


def as_of(job: Job, base: Job) -> Job:
    """Return a job under the number of another and with its times, to see what else differs."""
    return replace(job, number=base.number, created=base.created, changed=base.changed)
