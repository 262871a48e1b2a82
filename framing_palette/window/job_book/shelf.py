"""The book's shelf: the job in sight, its client, and the backups."""

from framing_palette.window.job_book.backups_page import BackupsPage
from framing_palette.window.job_book.card import JobCard
from framing_palette.window.job_book.client_page import ClientPage
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.paged_shelf import PagedShelf

JOB, CLIENT, BACKUPS = "job", "client", "backups"


class BookShelf(PagedShelf):
    """Three pages."""

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self.card, self.client = JobCard(ledger), ClientPage(ledger)
        self.backups = BackupsPage(ledger)
        self.lay_out(
            self.tr("In the book"),
            self.tr("Shelf"),
            (
                (JOB, self.tr("Job"), self.card),
                (CLIENT, self.tr("Client"), self.client),
                (BACKUPS, self.tr("Backups"), self.backups),
            ),
        )

    def show_page(self, page: object) -> None:
        """Turn to a page; the backups are looked through when they come into sight."""
        if page == BACKUPS:
            self.backups.look()
        super().show_page(page)
