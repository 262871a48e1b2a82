"""The ledger: the jobs that are looked for, the one in sight, and what is done with it."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job, JobLine, Status, StoredJob, Wanted
from framing_palette.jobs.agreeing import with_status
from framing_palette.jobs.dates_asked import dates_asked
from framing_palette.jobs.numbers import new_number
from framing_palette.window.errands import Errands
from framing_palette.window.job_book.book import JobBook
from framing_palette.window.job_files import now, zone
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.window.runner import Progress

T = TypeVar("T")

LIST, SIGHT, CHANGE, ARCHIVE = "job list", "job in sight", "change of a job", "job archive"
_REST_MS = 120


class Ledger(QObject):
    """What the book's stage and shelf show; both read it and ask it."""

    lines_changed = Signal()
    sight_changed = Signal()
    fault_changed = Signal()
    """What is wrong with a date that was asked for."""
    said = Signal(str)
    """What came of something that was done with the job in sight."""

    def __init__(self, session: Session, errands: Errands, book: JobBook) -> None:
        super().__init__(book)
        self.session, self.errands, self.book = session, errands, book
        self.wanted = Wanted()
        self.dates = self.fault = ""
        self.lines: tuple[JobLine, ...] = ()
        self.chosen = ""
        self.job: Job | None = None
        self.is_shown = False
        self._soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._soon.timeout.connect(self.look)
        book.changed.connect(self._follow)
        book.state_changed.connect(self._follow)

    def show(self, *, shown: bool) -> None:
        """Follow the shop's jobs while the book lies open."""
        self.is_shown = shown
        if shown:
            self.look()

    def want(
        self,
        *,
        words: str | None = None,
        status: Status | str | None = "",
        sample: str | None = None,
        dates: str | None = None,
    ) -> None:
        """Look for other jobs; what is not named stays as it is."""
        if words is not None:
            self.wanted = replace(self.wanted, words=words)
        if not isinstance(status, str) or isinstance(status, Status):
            self.wanted = replace(self.wanted, status=status)
        if sample is not None:
            self.wanted = replace(self.wanted, sample=sample.strip())
        if dates is not None:
            self._want_dates(dates)
        self._soon.start()

    def look(self) -> None:
        """Look for the jobs again."""
        wanted, before = self.wanted, self.lines

        def work(keeper: "Keeper", _progress: "Progress") -> tuple[JobLine, ...]:
            found = keeper.store().lines(wanted)
            return before if found == before else found

        self.book.ask(LIST, work, done=self._take_lines)

    def choose(self, number: str) -> None:
        """Bring a job into sight."""
        if number != self.chosen:
            self.chosen, self.job = number, None
            self.said.emit("")
            self.sight_changed.emit()
        self._fetch()

    def open(self) -> None:
        """Put the job in sight on the desk."""
        if self.chosen:
            self.session.job_asked.emit(self.chosen)

    def copy(self) -> None:
        """Copy the job in sight under a new number, and bring the copy into sight."""
        number, at = self.chosen, now()

        def work(keeper: "Keeper", _progress: "Progress") -> StoredJob:
            from framing_palette.jobs.book_files import copy_job

            return copy_job(keeper, number, new_number(at), at)

        def done(made: StoredJob) -> None:
            self.book.changed.emit()
            self.choose(made.job.number)
            self.said.emit(self.tr("This is the copy, not measured yet and open."))

        self._do(CHANGE, work, done)

    def archive(self, path: Path) -> None:
        """Put the job in sight into a file of its own, with its photograph."""
        number = self.chosen

        def work(keeper: "Keeper", _progress: "Progress") -> str:
            from framing_palette.jobs import write_job_file

            _stored, packed, fault = keeper.opened(number)
            write_job_file(path, packed)
            return fault

        def done(fault: str) -> None:
            self.said.emit(
                in_language(fault) or self.tr("It is in the file {name}.").format(name=path.name)
            )

        self._do(ARCHIVE, work, done)

    def set_status(self, status: Status) -> None:
        """Move the job in sight to where it is in the shop."""
        words = self.tr("Status of the job")
        self._change(words, lambda job, at: with_status(job, status, at))

    def add_line(self, text: str) -> None:
        """Add a decision to the history of the job in sight."""
        if text.strip():
            words = self.tr("A line of the history")
            self._change(words, lambda job, at: job.with_event(at, text.strip()))

    def is_on_desk(self) -> bool:
        """Tell whether the job in sight is the one on the desk."""
        stored = self.session.stored
        return stored is not None and stored.job.number == self.chosen

    def _change(self, words: str, change: "Callable[[Job, datetime], Job]") -> None:
        """Change the job in sight: on the desk undoably, else in the book."""
        at, number, lying = now(), self.chosen, self.session.desk.job
        if self.is_on_desk() and lying is not None:
            try:
                self.session.edit(words, job=change(lying, at))
            except FramingPaletteError as error:
                self.said.emit(in_language(str(error)))
                self.sight_changed.emit()
                return
            self.job = self.session.desk.job
            self.sight_changed.emit()
            return

        def work(keeper: "Keeper", _progress: "Progress") -> Job:
            from framing_palette.jobs.keeping_files import save_merged

            base = keeper.store().open(number)
            return save_merged(keeper.store(), base, change(base.job, at)).job

        def done(job: Job) -> None:
            self.said.emit("")
            self._take_sight(job)
            self.book.changed.emit()

        self._do(CHANGE, work, done)

    def _do(
        self,
        topic: str,
        work: "Callable[[Keeper, Progress], T]",
        done: "Callable[[T], None]",
    ) -> None:
        def fail(error: Exception) -> None:
            if isinstance(error, FramingPaletteError):
                self.said.emit(in_language(str(error)))
            else:
                self.errands.tell(error)
            self.sight_changed.emit()

        self.book.ask(topic, work, done=done, failed=fail)

    def _want_dates(self, text: str) -> None:
        self.dates = text
        try:
            first, before = dates_asked(text, zone())
            fault = ""
        except FramingPaletteError as error:
            fault = str(error)
        else:
            self.wanted = replace(self.wanted, begun_from=first, begun_before=before)
        if fault != self.fault:
            self.fault = fault
            self.fault_changed.emit()

    def _follow(self) -> None:
        if self.is_shown:
            self._soon.start()
            if self.chosen:
                self._fetch()

    def _fetch(self) -> None:
        number = self.chosen

        def work(keeper: "Keeper", _progress: "Progress") -> Job:
            return keeper.looked_up(number)

        self.book.ask(SIGHT, work, done=self._take_sight, failed=self._lose_sight)

    def _take_sight(self, job: Job) -> None:
        if job.number == self.chosen:
            self.job = job
            self.sight_changed.emit()

    def _lose_sight(self, error: Exception) -> None:
        self.job = None
        self.said.emit(in_language(str(error)))
        self.sight_changed.emit()

    def _take_lines(self, lines: tuple[JobLine, ...]) -> None:
        self.lines = lines
        self.lines_changed.emit()
