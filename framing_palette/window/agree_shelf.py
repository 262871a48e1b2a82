"""The shelf of Agree: whose it is, the papers, where the job stands and since when."""

from datetime import datetime

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from framing_palette.jobs import Job, Status
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, FormShelf
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.ticket_wishes import TicketWishes

_MOST_EVENTS = 8


class AgreeShelf(FormShelf):
    """Fields and buttons; what they ask for is told by signals."""

    written = Signal(str, str)
    """A field's name and what was typed."""
    asked = Signal(str)
    """save, print, drawings or prices."""
    status_picked = Signal(object)
    page_picked = Signal(object)
    price_picked = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__(self.tr("Agree"), "")
        self._session = session
        self.edits: dict[str, QLineEdit] = {}
        self.events = words(size="small", quiet=True, wrap=True)
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        self._add_client()
        self._add_papers()
        self._add_status()
        self.end()
        session.job_changed.connect(self._tell)
        self._tell()

    def say(self, said: str) -> None:
        """Say below the papers what came of it."""
        self.fault.setText(in_language(said))
        self.fault.setVisible(bool(said))

    def tell_prices(self, *, invented: bool, fault: str) -> None:
        """Say whose prices are shown."""
        said = self.tr("By the price book of this shop.")
        if invented:
            said = self.tr("By the example price book; its figures are invented.")
        if fault:
            said = self.tr("! The shop's price book cannot be read; the example stands in.")
        self.price_told.setText(said)

    def let_print(self, *, can: bool, drawings: bool = False) -> None:
        """Switch saving and printing on when a paper is in sight, drawings with the ticket."""
        self.save.setEnabled(can)
        self.print_button.setEnabled(can)
        self.wishes.drawings.setEnabled(drawings)

    def _add_client(self) -> None:
        for name, told in (
            ("name", self.tr("Client")),
            ("contact", self.tr("Contact")),
            ("title", self.tr("Title of the art")),
            ("note", self.tr("Note for the workshop")),
        ):
            edit = QLineEdit()
            edit.setAccessibleName(told)
            edit.editingFinished.connect(
                lambda name=name, edit=edit: self.written.emit(name, edit.text().strip())
            )
            self.edits[name] = edit
            self.row(told, edit)

    def _add_papers(self) -> None:
        self.section(self.tr("Papers"))
        self.price = Choice(
            self.tr("Price"), (("hidden", self.tr("Hidden")), ("shown", self.tr("Shown")))
        )
        self.price.picked.connect(self.price_picked)
        self.price.show_value("hidden")
        self.row(self.tr("Price"), self.price)
        self.price_told = words(size="small", quiet=True, wrap=True)
        self.prices = push_button(self.tr("Price book"), told=self.tr("Look into the price book"))
        self.prices.clicked.connect(lambda: self.asked.emit("prices"))
        self.row("", self.price_told)
        self.row("", self.prices)
        self.page = Choice(self.tr("Paper"), (("A4", "A4"), ("Letter", "Letter")))
        self.page.picked.connect(self.page_picked)
        self.page.show_value("A4")
        self.row(self.tr("Paper"), self.page)
        self.save = push_button(self.tr("Save as PDF"), rank="first")
        self.print_button = push_button(self.tr("Print"))
        self.save.clicked.connect(lambda: self.asked.emit("save"))
        self.print_button.clicked.connect(lambda: self.asked.emit("print"))
        both = QWidget()
        column = QVBoxLayout(both)
        column.setContentsMargins(0, 8, 0, 0)
        for widget in (self.save, self.print_button, self.fault):
            column.addWidget(widget)
        self.row("", both)
        self.wishes = TicketWishes()
        self.wishes.drawings_asked.connect(lambda: self.asked.emit("drawings"))
        self.row("", self.wishes)
        self.let_print(can=False)

    def _add_status(self) -> None:
        self.section(self.tr("Where the job stands"))
        self.status = Choice(
            self.tr("Status"),
            tuple((status, in_language(STATUS_WORDS[status])) for status in Status),
        )
        self.status.picked.connect(self.status_picked)
        self.row("", self.status)
        self.row("", self.events)

    def _tell(self) -> None:
        job = self._session.desk.job
        for edit in self.edits.values():
            edit.setEnabled(job is not None)
        self.status.setEnabled(job is not None)
        if job is None:
            return
        texts = {
            "name": job.client.name,
            "contact": job.client.contact,
            "title": job.title,
            "note": job.note,
        }
        for name, text in texts.items():
            if self.edits[name].text() != text:
                self.edits[name].setText(text)
        self.status.show_value(job.status)
        self.events.setText(_events_words(job))


def _events_words(job: Job) -> str:
    newest = reversed(job.history[-_MOST_EVENTS:])
    return "\n".join(f"{_moment(event.at)}  {in_language(event.words)}" for event in newest)


def _moment(at: datetime) -> str:
    local = at.astimezone()
    said = QCoreApplication.translate("AgreeShelf", "{day} {month}, {time}")
    month = in_language(f"{local:%B}")
    return said.format(day=f"{local:%d}", month=month, time=f"{local:%H:%M}")
