"""Saving: the job as it lies on the desk, to its file, a moment after the last change."""

from dataclasses import replace
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from framing_palette.jobs import Job, PackedJob
from framing_palette.window.desk import Desk
from framing_palette.window.errands import Errands
from framing_palette.window.job_files import save_job
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session

SAVE = "saving"
_REST_MS = 1500


class Saving(QObject):
    """Saves by itself once the job has a file; before that it says that it is not saved."""

    def __init__(self, session: Session, errands: Errands) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self._soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._soon.timeout.connect(self.save)
        session.undo_changed.connect(self._on_change)
        session.packed_changed.connect(self._tell_state)

    def save_as(self, path: Path) -> None:
        """Save to a file from now on."""
        self._session.assign("job_path", path)
        self.save()

    def save(self) -> None:
        """Save now, in the background."""
        path, packed = self._session.job_path, packed_as_it_lies(self._session)
        if path is None or packed is None:
            return
        self._soon.stop()
        self._session.assign("saved", self.tr("saving"))

        def work(progress: Progress) -> datetime:
            return save_job(path, packed, progress)

        self._errands.runner.start(SAVE, work, done=self._tell_saved, failed=self._fail)

    def _on_change(self) -> None:
        self._tell_state()
        if self._session.job_path is not None:
            self._soon.start()

    def _tell_state(self) -> None:
        if self._session.packed is None:
            self._session.assign("saved", "")
        elif self._session.job_path is None:
            self._session.assign("saved", self.tr("not saved yet"))

    def _tell_saved(self, at: datetime) -> None:
        self._session.assign("saved", self.tr("saved ") + f"{at:%H:%M}")

    def _fail(self, error: Exception) -> None:
        self._session.assign("saved", self.tr("not saved"))
        self._errands.tell(error)


def packed_as_it_lies(session: Session) -> PackedJob | None:
    """Return the job with the desk's regions and kept samples, and its photograph."""
    packed = session.packed
    if packed is None:
        return None
    return replace(packed, job=_job_of(session.desk, packed))


def _job_of(desk: Desk, packed: PackedJob) -> Job:
    job = desk.job or packed.job
    return replace(
        job,
        regions=desk.regions,
        kept=tuple(kept.codes[0] for kept in desk.kept if len(kept.codes) == 1),
    )
