"""What the shop has of one client: taken out for them, or erased for ever."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QLineEdit, QVBoxLayout, QWidget

from framing_palette.jobs.job_lines import key_of_client
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import scrolled_column
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.jobs.personal_files import Erased, Exported
    from framing_palette.window.runner import Progress

CLIENT, EXPORT, ERASE = "jobs of a client", "export of a client", "erasing a client"


class ClientPage(QWidget):
    """The client of the job in sight."""

    shown = Signal(str)
    """All jobs of this client are to be listed."""

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self._ledger = ledger
        self.name = ""
        self.count = 0
        self.title = words(strong=True, wrap=True)
        self.told = words(size="small", quiet=True, wrap=True)
        self.list = push_button(self.tr("List their jobs"))
        self.export = push_button(self.tr("Take all out as files"))
        self.erase = push_button(self.tr("Erase …"), told=self.tr("Erase all of this client"))
        self.warning = words(wrap=True)
        self.typed = QLineEdit()
        self.typed.setPlaceholderText(self.tr("The client's name"))
        self.typed.setAccessibleName(self.tr("Type the client's name to erase everything"))
        self.for_ever = push_button(self.tr("Erase for ever"), rank="first")
        self.leave = push_button(self.tr("Keep everything"))
        self.said = words(size="small", wrap=True)
        self._there, self._asking = QWidget(), QWidget()
        self._lay_out()
        self.list.clicked.connect(lambda: self.shown.emit(self.name))
        self.export.clicked.connect(self._ask_where)
        self.erase.clicked.connect(lambda: self._ask(asking=True))
        self.leave.clicked.connect(lambda: self._ask(asking=False))
        self.typed.textChanged.connect(self._let)
        self.for_ever.clicked.connect(self.erase_all)
        ledger.sight_changed.connect(self._follow)
        self._follow()

    def export_to(self, folder: Path) -> None:
        """Write every job of the client to a folder."""
        name = self.name

        def work(keeper: "Keeper", _progress: "Progress") -> "Exported":
            from framing_palette.jobs.personal_files import export_client

            return export_client(keeper.store(), name, folder)

        self._ledger.book.ask(EXPORT, work, done=self._tell_exported, failed=self._fail)

    def erase_all(self) -> None:
        """Erase every job of the client, here and in the backups."""
        name, session = self.name, self._ledger.session
        job = session.desk.job
        if job is not None and key_of_client(job.client.name) == key_of_client(name):
            self._ledger.errands.clear_desk()

        def work(keeper: "Keeper", _progress: "Progress") -> "Erased":
            return keeper.erase_client(name)

        self._ledger.book.ask(ERASE, work, done=self._tell_erased, failed=self._fail)
        self._ask(asking=False)

    def _lay_out(self) -> None:
        asking = QVBoxLayout(self._asking)
        asking.setContentsMargins(0, 0, 0, 0)
        asking.setSpacing(GAP)
        for part in (self.warning, self.typed, self.for_ever, self.leave):
            asking.addWidget(part)
        there = QVBoxLayout(self._there)
        there.setContentsMargins(0, 0, 0, 0)
        there.setSpacing(GAP)
        for button in (self.list, self.export, self.erase):
            there.addWidget(button)
        there.addWidget(self._asking)
        column = scrolled_column(self)
        column.addWidget(self.title)
        column.addWidget(self.told)
        column.addWidget(self._there)
        column.addWidget(self.said)
        column.addStretch(1)

    def _follow(self) -> None:
        job = self._ledger.job
        name = job.client.name.strip() if job is not None else ""
        if key_of_client(name) == key_of_client(self.name) and name:
            return
        self.name = name
        self._ask(asking=False)
        self._there.setVisible(bool(name))
        self.title.setText(name or self.tr("No client"))
        if not name:
            self.told.setText(self.tr("Choose a job that has a client's name."))
            return
        self.said.setText("")
        self.told.setText("")
        self._count()

    def _count(self) -> None:
        name = self.name

        def work(keeper: "Keeper", _progress: "Progress") -> int:
            return len(keeper.store().numbers_of_client(name))

        self._ledger.book.ask(CLIENT, work, done=self._take_count)

    def _take_count(self, count: int) -> None:
        self.count = count
        one, more = self.tr("1 job in the book."), self.tr("{count} jobs in the book.")
        self.told.setText(one if count == 1 else more.format(count=count))

    def _ask(self, *, asking: bool) -> None:
        self._asking.setVisible(asking)
        self.erase.setVisible(not asking)
        self.typed.clear()
        self._let()
        if asking:
            said = self.tr(
                "All {count} jobs of {name}, with their photographs, go for ever: here and in the "
                "backups. This cannot be undone. Take them out as files first if they may be "
                "needed, and type the name to go on."
            )
            self.warning.setText(said.format(count=self.count, name=self.name))
            self.typed.setFocus()

    def _let(self) -> None:
        is_it = key_of_client(self.typed.text()) == key_of_client(self.name)
        self.for_ever.setEnabled(is_it and bool(self.name))

    def _ask_where(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, self.tr("Into which folder?"))
        if folder:
            self.export_to(Path(folder))

    def _tell_exported(self, exported: "Exported") -> None:
        said = self.tr("Written as files: {count}.").format(count=len(exported.paths))
        if exported.without_photograph:
            lost = self.tr("Without their photograph, which is lost: {numbers}.")
            said = f"{said} {lost.format(numbers=', '.join(exported.without_photograph))}"
        self.said.setText(said)

    def _tell_erased(self, erased: "Erased") -> None:
        said = self.tr("Erased: {count} jobs.").format(count=len(erased.numbers))
        if erased.left:
            left = self.tr("Look at these yourself, they may still hold something: {files}.")
            said = f"{said} {left.format(files=', '.join(path.name for path in erased.left))}"
        self._ledger.chosen, self._ledger.job = "", None
        self._ledger.sight_changed.emit()
        self.said.setText(said)
        self._ledger.book.changed.emit()

    def _fail(self, error: Exception) -> None:
        self.said.setText(in_language(str(error)))
