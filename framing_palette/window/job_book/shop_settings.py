"""Settings of the shop's jobs: where they are kept, and a report when something goes wrong."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog, QLineEdit, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.job_book.book import JobBook
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.jobs.place_files import ShopPlace
    from framing_palette.window.runner import Progress

PLACE, TRIAL, REPORT = "where the jobs are", "trial of an address", "report of a problem"


class PlaceSetting(QWidget):
    """The address of the jobs; another one is tried before it is kept."""

    def __init__(self, book: JobBook) -> None:
        super().__init__()
        self._book = book
        self.now = words(size="small", wrap=True)
        self.address = QLineEdit()
        self.address.setPlaceholderText(self.tr("File or address of a server"))
        self.address.setAccessibleName(self.tr("Where the jobs are kept from the next start on"))
        self.photographs = QLineEdit()
        self.photographs.setPlaceholderText(self.tr("Folder of the photographs"))
        self.photographs.setAccessibleName(self.tr("Folder of the photographs that all share"))
        self.use = push_button(self.tr("Try it and use it"))
        self.own = push_button(self.tr("This computer's own file"))
        self.said = words(size="small", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(GAP)
        for widget in (self.now, self.address, self.photographs, self.use, self.own, self.said):
            column.addWidget(widget)
        self.said.hide()
        self.use.clicked.connect(self._try)
        self.address.returnPressed.connect(self._try)
        self.own.clicked.connect(lambda: self._keep("", "", 0))
        book.ask(PLACE, lambda keeper, _progress: keeper.place, done=self._show)

    def _show(self, place: "ShopPlace") -> None:
        told = self.tr("Now: {address}").format(address=place.shown)
        if place.from_environment:
            named = self.tr("The environment names it, so it cannot be changed here.")
            told = f"{told}\n{named}"
        self.now.setText(told)
        for widget in (self.address, self.photographs, self.use, self.own):
            widget.setEnabled(not place.from_environment)

    def _try(self) -> None:
        address, photographs = self.address.text().strip(), self.photographs.text().strip()
        if not address:
            self._say(self.tr("Write a file or an address first."))
            return

        def work(_keeper: "Keeper", _progress: "Progress") -> int:
            from framing_palette.jobs.store import JobStore

            folder = Path(photographs).expanduser() if photographs else None
            with JobStore(_as_place(address), photographs=folder) as store:
                return store.count()

        self._say(self.tr("Trying it …"))
        self._book.try_out(
            TRIAL,
            work,
            done=lambda count: self._keep(address, photographs, count),
            failed=self._fail,
        )

    def _keep(self, address: str, photographs: str, count: int) -> None:
        def work(_keeper: "Keeper", _progress: "Progress") -> None:
            from framing_palette.jobs.place_files import write_shop_place

            write_shop_place(address, photographs)

        def done(_none: None) -> None:
            said = self.tr("It is used when the window opens next; {count} jobs are there.")
            own = self.tr("This computer's own file is used when the window opens next.")
            self._say(said.format(count=count) if address else own)
            self.address.clear()
            self.photographs.clear()

        self._book.try_out(TRIAL, work, done=done, failed=self._fail)

    def _fail(self, error: Exception) -> None:
        self._say(in_language(str(error)))

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.said.setVisible(bool(text))


class ProblemReport(QWidget):
    """Writes a report that can be sent, without anything personal in it."""

    def __init__(self, book: JobBook) -> None:
        super().__init__()
        self._book = book
        self.button = push_button(self.tr("Report a problem"))
        self.said = words(size="small", wrap=True)
        self.said.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(GAP)
        column.addWidget(self.button)
        column.addWidget(self.said)
        self.button.clicked.connect(self._ask_where)

    def write_to(self, path: Path) -> None:
        """Look at the installation and write the report."""

        def work(keeper: "Keeper", _progress: "Progress") -> Path:
            from framing_palette.jobs.book_files import report_problem

            return report_problem(keeper, path)

        self._say(self.tr("Looking …"))
        self._book.try_out(
            REPORT, work, done=self._tell, failed=lambda error: self._say(in_language(str(error)))
        )

    def _ask_where(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self, self.tr("Report a problem"), "problem.zip", "ZIP (*.zip)"
        )
        if name:
            self.write_to(Path(name) if Path(name).suffix else Path(name).with_suffix(".zip"))

    def _fail(self, error: Exception) -> None:
        self._say(in_language(str(error)))

    def _tell(self, path: Path) -> None:
        said = self.tr("Written as {name}. Please look through it before you send it.")
        self._say(said.format(name=path.name))

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.said.setVisible(bool(text))


def _as_place(address: str) -> str | Path:
    return address if "://" in address else Path(address).expanduser()
