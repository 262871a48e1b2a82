"""Bringing: files that are chosen, pasted and written, whichever key or button asks for it."""

from pathlib import Path

from PySide6.QtCore import QMimeData, QObject
from PySide6.QtGui import QDropEvent, QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from framing_palette.errors import FramingPaletteError
from framing_palette.window.errands import Errands
from framing_palette.window.opening import JOB_ENDING
from framing_palette.window.paste_files import keep_pasted
from framing_palette.window.saving import Saving
from framing_palette.window.session import Session


class Bringing(QObject):
    """What comes onto the desk from outside, and the job that goes there in a file."""

    def __init__(self, session: Session, errands: Errands, saving: Saving, over: QWidget) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self._saving = saving
        self._over = over

    def open_file(self, path: Path) -> None:
        """Open a job file, or begin a job on a photograph."""
        if path.suffix == JOB_ENDING:
            self._errands.open_job(path)
        else:
            self._errands.open_picture(path)

    def take_dropped(self, event: QDropEvent) -> None:
        """Open the first file that was dropped."""
        local = [url for url in event.mimeData().urls() if url.isLocalFile()]
        if local:
            self.open_file(Path(local[0].toLocalFile()))
            event.acceptProposedAction()

    def ask_for_file(self) -> None:
        """Let a photograph or a job file be chosen from the files."""
        name, _ = QFileDialog.getOpenFileName(self._over, self.tr("Open a photograph or a job"))
        if name:
            self.open_file(Path(name))

    def ask_where_to_save(self) -> None:
        """Put the job into a file of its own, to be sent or archived."""
        job = self._session.desk.job
        if self._session.packed is None or job is None:
            return
        self._saving.save()
        suggested = str(self._session.job_path or f"{job.number}{JOB_ENDING}")
        kinds = self.tr("Jobs (*{ending})").format(ending=JOB_ENDING)
        title = self.tr("Put the job into a file")
        name, _ = QFileDialog.getSaveFileName(self._over, title, suggested, kinds)
        if name:
            path = Path(name)
            path = path if path.suffix == JOB_ENDING else path.with_name(path.name + JOB_ENDING)
            self._saving.save_as(path)

    def paste(self) -> None:
        """Begin a job on the picture or file in the clipboard."""
        clipboard = QGuiApplication.clipboard()
        given: QMimeData | None = clipboard.mimeData()  # None when there was never anything
        data = given if given is not None else QMimeData()
        if data.hasUrls() and data.urls()[0].isLocalFile():
            self.open_file(Path(data.urls()[0].toLocalFile()))
        elif data.hasImage():
            try:
                self.open_file(keep_pasted(clipboard.image()))
            except FramingPaletteError as error:
                self._errands.tell(error)
        else:
            words = self.tr("There is no picture to paste: copy one first.")
            self._session.assign("notice", words)
