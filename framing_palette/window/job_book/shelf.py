"""The book's shelf: the job in sight, its client, and the backups."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.window.controls import Pages, rule, words
from framing_palette.window.forms import Choice
from framing_palette.window.job_book.backups_page import BackupsPage
from framing_palette.window.job_book.card import JobCard
from framing_palette.window.job_book.client_page import ClientPage
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.tokens import MARGIN, WIDE_MARGIN

JOB, CLIENT, BACKUPS = "job", "client", "backups"


class BookShelf(QWidget):
    """Three pages."""

    turned = Signal(str)

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self.card, self.client = JobCard(ledger), ClientPage(ledger)
        self.backups = BackupsPage(ledger)
        self._pages: dict[str, QWidget] = {
            JOB: self.card,
            CLIENT: self.client,
            BACKUPS: self.backups,
        }
        self.page = JOB
        self.pages = Choice(
            self.tr("Shelf"),
            (
                (JOB, self.tr("Job")),
                (CLIENT, self.tr("Client")),
                (BACKUPS, self.tr("Backups")),
            ),
        )
        self._stack = Pages()
        for page in self._pages.values():
            self._stack.addWidget(page)
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        head.setSpacing(0)
        head.addWidget(words(self.tr("In the book"), size="heading"))
        head.addWidget(self.pages)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self._stack, 1)
        self.pages.picked.connect(self.show_page)
        self.show_page(JOB)

    def show_page(self, page: object) -> None:
        """Turn to a page."""
        self.page = str(page)
        self.pages.show_value(self.page)
        self._stack.setCurrentWidget(self._pages[self.page])
        if self.page == BACKUPS:
            self.backups.look()
        self.turned.emit(self.page)
