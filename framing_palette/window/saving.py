"""Saving: the job as it lies on the desk, into the shop's jobs a moment after each change.

There is nothing to press: a job is in the book from the moment that it is on the desk. A job file
is written when it is asked for.
"""

from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from framing_palette.errors import UnknownJobError
from framing_palette.jobs import Job, PackedJob, StoredJob, merged
from framing_palette.jobs.merging import decided
from framing_palette.window.arranging import desk_of, job_of
from framing_palette.window.errands import Errands
from framing_palette.window.job_book.book import BookState, JobBook
from framing_palette.window.job_book.field_words import changed_fields, field_name
from framing_palette.window.job_book.kept_job import KeptJob
from framing_palette.window.job_files import save_job
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper

FILE, LOOK = "job file", "other counters"
_LOOK_MS = 10_000


class Saving(QObject):
    """Keeps the job on the desk, and says where it is."""

    def __init__(self, session: Session, errands: Errands, book: JobBook) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self._book = book
        self.kept: KeptJob | None = None
        self._leaving: list[KeptJob] = []
        self._told_fault = ""
        self._look_soon = QTimer(self, interval=_LOOK_MS)
        self._look_soon.timeout.connect(self.look_at_others)
        session.packed_changed.connect(self._follow_job)
        book.restored.connect(self._follow_restored)
        for signal in (
            session.job_changed,
            session.regions_changed,
            session.laid_changed,
            session.strips_changed,
            session.kept_changed,
            session.set_aside_changed,
        ):
            signal.connect(self._note)

    def save(self) -> None:
        """Save now what waits, without waiting for the hand to rest."""
        if self.kept is not None:
            self.kept.save_now()

    def save_as(self, path: Path) -> None:
        """Put the job into a file as well, to be sent or archived."""
        packed = packed_as_it_lies(self._session)
        if packed is None:
            return

        def work(progress: Progress) -> datetime:
            return save_job(path, packed, progress)

        def done(_at: datetime) -> None:
            self._session.assign("job_path", path)
            said = self.tr("The job is in the file {name} as well.").format(name=path.name)
            self._session.assign("notice", said)

        self._errands.runner.start(FILE, work, done=done, failed=self._errands.tell)

    def look_at_others(self) -> None:
        """Bring in what another counter has saved of this job since."""
        kept = self.kept
        is_quiet = kept is not None and kept.is_saved and kept.base.version > 0
        if kept is None or not is_quiet or self._book.state is not BookState.READY:
            return
        base = kept.base

        def work(keeper: "Keeper", _progress: Progress) -> StoredJob | None:
            return keeper.newer(base)

        def done(found: StoredJob | None) -> None:
            if found is not None and kept is self.kept and kept.is_saved and kept.base is base:
                self._join(base.job, found)

        self._book.ask(LOOK, work, done=done)

    def choose_between(self, theirs: frozenset[str]) -> None:
        """Settle what both counters changed: these fields as the other has them, else as here."""
        differing, kept = self._session.differing, self.kept
        mine = job_of(self._session.desk, self._session.catalogue)
        if differing is None or differing.theirs is None or kept is None or mine is None:
            return
        joined = merged(differing.base.job, mine, differing.theirs.job).job
        kept.rebase(differing.theirs)
        self._session.assign("differing", None)
        self._lay(decided(joined, differing.theirs.job, theirs))
        self._note()
        kept.save_now()

    def forget(self) -> None:
        """Keep the job on the desk no longer: it was erased or another one takes its place."""
        if self.kept is not None:
            self.kept.deleteLater()
        self.kept = None
        self._session.assign("stored", None)
        self._session.assign("differing", None)
        self._session.assign("saved", "")

    def finish(self) -> None:
        """Save what waits, before the window closes."""
        self._look_soon.stop()
        for kept in [*self._leaving, *([self.kept] if self.kept is not None else [])]:
            kept.finish()
        self._leaving.clear()

    def _follow_restored(self) -> None:
        """Go on from the job as the backup has it, or bring it in again when that has none."""
        kept, base = self.kept, self.kept.base if self.kept is not None else None
        if kept is None or base is None:
            return

        def work(keeper: "Keeper", _progress: Progress) -> StoredJob:
            return keeper.store().open(base.job.number)

        def done(found: StoredJob) -> None:
            if kept is self.kept:
                self._join(base.job, found)

        def failed(error: Exception) -> None:
            if kept is self.kept and isinstance(error, UnknownJobError):
                kept.rebase(StoredJob(base.job, 0))
                self._note()

        self._book.ask(LOOK, work, done=done, failed=failed)

    def _follow_job(self) -> None:
        """Keep another job from now on; the one before is saved to its end."""
        packed, before, stored = self._session.packed, self.kept, self._session.stored
        self.kept = None  # first of all: what the one before says is no longer about the desk
        if before is not None:
            self._leaving.append(before)
            self._follow_kept(before)
        self._session.assign("differing", None)
        if packed is None:
            self.forget()
            return
        rack = self._session.catalogue
        kept = self.kept = KeptJob(self._book, packed, stored)
        kept.changed.connect(lambda: self._follow_kept(kept))
        kept.joined.connect(lambda sent, found: self._take_joined(kept, sent, found))
        lying = job_of(desk_of(packed.job, rack), rack)
        if stored is None or stored.job != packed.job:
            kept.note(lying or packed.job)
            kept.save_now()
        elif lying is not None:
            kept.leave_as(lying)
        self._look_soon.start()
        self._tell_state()

    def _note(self) -> None:
        job = job_of(self._session.desk, self._session.catalogue)
        kept = self.kept
        # A job never becomes another one, whatever is on the desk in between.
        if kept is not None and job is not None and job.created == kept.base.job.created:
            kept.note(job)

    def _follow_kept(self, kept: KeptJob) -> None:
        if kept is self.kept:
            self._session.assign("stored", kept.base)
            self._tell_state()
        elif kept in self._leaving:
            if kept.is_saved:
                self._leaving.remove(kept)
                kept.deleteLater()  # and with it the photograph that it held
            elif kept.autosave.failures == 0:
                kept.save_now()

    def _take_joined(self, kept: KeptJob, sent: Job, found: StoredJob) -> None:
        if kept is self.kept:
            self._join(sent, found)

    def _join(self, base: Job, found: StoredJob) -> None:
        """Lay what another counter did beside what was done here meanwhile."""
        kept = self.kept
        mine = job_of(self._session.desk, self._session.catalogue)
        if kept is None or mine is None:
            return
        joined = merged(base, mine, found.job)
        if joined.undecided:
            kept.step_back(base)
            kept.note(mine)
            return
        is_renamed = base.number != found.job.number
        is_other = replace(base, number=found.job.number, changed=found.job.changed) != found.job
        kept.rebase(found)
        self._lay(joined.job)
        self._note()
        if is_other:
            self._session.assign("notice", self._joined_words(base, found.job))
        elif is_renamed:
            said = self.tr("Another job has this number, so this one is {number} now.")
            self._session.assign("notice", said.format(number=found.job.number))

    def _lay(self, job: Job) -> None:
        """Put a job that was joined on the desk, undoably under its own name."""
        desk = desk_of(job, self._session.catalogue)
        self._session.edit(
            self.tr("Changed at the other counter"),
            job=desk.job,
            regions=desk.regions,
            laid=desk.laid,
            strips=desk.strips,
            kept=desk.kept,
            set_aside=desk.set_aside,
        )

    def _joined_words(self, base: Job, found: Job) -> str:
        told = [field_name(field) for field in changed_fields(base, found)]
        if not told:
            return self.tr("Changed at the other counter, and brought in here.")
        said = self.tr("Changed at the other counter, and brought in here: {what}.")
        return said.format(what=", ".join(told))

    def _tell_state(self) -> None:
        from framing_palette.jobs.fates import Fate

        kept = self.kept
        if kept is None:
            return
        fate = kept.kept.fate if kept.kept is not None else None
        self._session.assign("differing", kept.kept if fate is Fate.UNDECIDED else None)
        if kept.error is not None:
            said, fault = self.tr("cannot be saved"), str(kept.error)
        elif not kept.is_saved:
            said, fault = self.tr("saving"), self._told_fault
        elif fate is Fate.HERE:
            said, fault = self.tr("kept on this computer"), kept.kept.why if kept.kept else ""
        elif fate is Fate.UNDECIDED:
            said, fault = self.tr("kept on this computer until you choose"), ""
        elif fate is Fate.ERASED:
            said = self.tr("erased at another counter")
            fault = self.tr(
                "This job was erased at another counter; what is done here is not kept."
            )
        else:
            at = kept.at or kept.base.job.changed
            said, fault = self.tr("saved {at}").format(at=f"{at.astimezone():%H:%M}"), ""
        self._session.assign("saved", said)
        if fault and fault != self._told_fault:
            self._session.assign("notice", fault)
        self._told_fault = fault


def packed_as_it_lies(session: Session) -> PackedJob | None:
    """Return the job with everything as it lies on the desk, and its photograph."""
    packed = session.packed
    if packed is None:
        return None
    job = job_of(session.desk, session.catalogue) or packed.job
    if session.stored is not None:
        job = replace(job, number=session.stored.job.number)
    return replace(packed, job=job)
