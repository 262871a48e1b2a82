"""The offer when the shop's jobs are damaged: which backup, what stays, and nothing until asked."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, rule, words
from framing_palette.window.job_book.book import BookState, JobBook
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.jobs.restoring_files import Restored
    from framing_palette.window.runner import Progress

RESTORE = "restoring"


class DamagePanel(QWidget):
    """Shown while the jobs are damaged."""

    restored = Signal()

    def __init__(self, book: JobBook) -> None:
        super().__init__()
        self._book = book
        self.told = words(wrap=True)
        self.stays = words(size="small", quiet=True, wrap=True)
        self.restore = push_button(self.tr("Restore the backup"), rank="first")
        self.begin = push_button(self.tr("Begin with an empty book"))
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        column.setSpacing(GAP)
        column.addWidget(words(self.tr("The job book is damaged"), size="heading"))
        column.addWidget(self.told)
        column.addWidget(self.stays)
        row = QHBoxLayout()
        row.addWidget(self.restore)
        row.addWidget(self.begin)
        row.addStretch(1)
        column.addLayout(row)
        column.addSpacing(GAP)
        column.addWidget(rule())
        self.restore.clicked.connect(lambda: put_back(self._book, book.backup))
        self.begin.clicked.connect(lambda: put_back(self._book, None))
        book.state_changed.connect(self._follow)
        self._follow()

    def _follow(self) -> None:
        is_damaged = self._book.state is BookState.DAMAGED
        self.setVisible(is_damaged)
        if not is_damaged:
            return
        backup = self._book.backup
        self.restore.setVisible(backup is not None)
        self.begin.setVisible(backup is None)
        self.told.setText(self._told_words(backup))
        kept = self.tr(
            "The damaged file is kept beside the new one, and what is done until then is kept on "
            "this computer. Close the program at other places that use the file first."
        )
        self.stays.setText(f"{kept}\n{in_language(self._book.fault)}")

    def _told_words(self, backup: Path | None) -> str:
        if backup is None:
            return self.tr(
                "The file of the shop's jobs cannot be read, and there is no whole backup of it. "
                "Jobs that can still be read in it come along into an empty book."
            )
        at = self._book.backup_at
        said = self.tr(
            "The file of the shop's jobs cannot be read. The newest whole backup is of {day}, "
            "{time}. Jobs that can still be read in the file and are newer come along."
        )
        return said.format(
            day=f"{at.astimezone():%Y-%m-%d}" if at else backup.name,
            time=f"{at.astimezone():%H:%M}" if at else "",
        )


def put_back(book: JobBook, backup: Path | None, *, bring_over: bool = True) -> None:
    """Put a backup in the place of the shop's jobs, behind the window, and say what came of it."""

    def work(keeper: "Keeper", _progress: "Progress") -> "Restored":
        restored = keeper.restore(backup, bring_over=bring_over)
        keeper.store()
        return restored

    book.ask(RESTORE, work, done=book.take_restored, failed=book.tell)
