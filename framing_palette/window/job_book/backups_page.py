"""The backups of the job book: what there is, one taken now, one put back."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.window.controls import Chip, push_button, rule, words
from framing_palette.window.forms import Choice, scrolled_column
from framing_palette.window.job_book.damage import put_back
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.window.runner import Progress

BACKUPS, TAKING = "backups", "taking a backup"
_MOST = 30


@dataclass(frozen=True, slots=True)
class Backup:
    """One backup and when it was taken."""

    path: Path
    at: datetime


class BackupsPage(QWidget):
    """Backups, newest first."""

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self._ledger = ledger
        self.backups: tuple[Backup, ...] = ()
        self.chosen: Backup | None = None
        self.told = words(size="small", quiet=True, wrap=True)
        self.take = push_button(self.tr("Take a backup now"))
        self.chips: list[Chip] = []
        self.newer = Choice(
            self.tr("Newer jobs"),
            ((True, self.tr("Come along")), (False, self.tr("Stay behind"))),
        )
        self.bring_over = True
        self.newer.show_value(self.bring_over)
        self.restore = push_button(self.tr("Put it back"), rank="first")
        self.warning = words(size="small", wrap=True)
        self._list, self._asking = QVBoxLayout(), QWidget()
        self._lay_out()
        self.take.clicked.connect(self._take)
        self.newer.picked.connect(self._set_newer)
        self.restore.clicked.connect(self._put_back)
        ledger.book.restored.connect(self.look)
        self._show(())

    def look(self) -> None:
        """Look which backups there are."""

        def work(keeper: "Keeper", _progress: "Progress") -> tuple[Backup, ...] | None:
            from framing_palette.jobs.book_files import backups

            found = backups(keeper)
            return None if found is None else tuple(Backup(*one) for one in found[:_MOST])

        self._ledger.book.ask(BACKUPS, work, done=self._show)

    def _lay_out(self) -> None:
        asking = QVBoxLayout(self._asking)
        asking.setContentsMargins(0, GAP, 0, 0)
        asking.setSpacing(GAP)
        asking.addWidget(rule())
        asking.addWidget(words(self.tr("Jobs that are newer than the backup"), size="small"))
        for widget in (self.newer, self.warning, self.restore):
            asking.addWidget(widget)
        column = scrolled_column(self)
        column.addWidget(self.told)
        column.addWidget(self.take)
        self._list.setSpacing(0)
        column.addLayout(self._list)
        column.addWidget(self._asking)
        column.addStretch(1)

    def _show(self, backups: "Sequence[Backup] | None") -> None:
        self.backups, self.chosen = tuple(backups or ()), None
        for chip in self.chips:
            chip.hide()
            chip.deleteLater()
        self.chips = []
        for backup in self.backups:
            chip = Chip(f"{backup.at.astimezone():%Y-%m-%d  %H:%M}")
            chip.clicked.connect(lambda _on=False, backup=backup: self._choose(backup))
            self._list.addWidget(chip)
            self.chips.append(chip)
        self.take.setVisible(backups is not None)
        self.told.setText(self._told_words(is_server=backups is None))
        self._choose(None)

    def _told_words(self, *, is_server: bool) -> str:
        if is_server:
            return self.tr("The jobs are on a server: its keeper looks after backups there.")
        if not self.backups:
            return self.tr("No backup yet. One is taken every few hours while the window is open.")
        return self.tr(
            "One is taken every few hours; older ones are let go, the newest of each day, week and "
            "month stay. Choose one to put it back."
        )

    def _choose(self, backup: Backup | None) -> None:
        self.chosen = backup
        for chip, one in zip(self.chips, self.backups, strict=True):
            chip.setChecked(one is backup)
        self._asking.setVisible(backup is not None)
        self._warn()

    def _set_newer(self, bring_over: object) -> None:
        self.bring_over = bool(bring_over)
        self._warn()

    def _warn(self) -> None:
        self.warning.setText(
            self.tr(
                "What is newer stays in the book. The present file is kept beside it. Close the "
                "program at other places that use this file first."
            )
            if self.bring_over
            else self.tr(
                "The book is as it was then; jobs begun since are missing from it. The present "
                "file is kept beside it. Close the program at other places that use it first."
            )
        )

    def _take(self) -> None:
        def work(keeper: "Keeper", _progress: "Progress") -> Path:
            return keeper.store().take_backup()

        book = self._ledger.book
        book.ask(TAKING, work, done=lambda _path: self.look(), failed=book.tell)

    def _put_back(self) -> None:
        if self.chosen is not None:
            put_back(self._ledger.book, self.chosen.path, bring_over=self.bring_over)
