"""The door to the job book: its stage and its shelf, made on the first visit."""

from PySide6.QtCore import QObject, Signal

from framing_palette.window.errands import Errands
from framing_palette.window.job_book.book import JobBook
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.job_book.shelf import JOB, BookShelf
from framing_palette.window.job_book.stage import BookStage
from framing_palette.window.session import Session


class BookDoor(QObject):
    """What the shell shows when the job book is opened."""

    left = Signal()
    """A job goes onto the desk."""
    file_wanted = Signal()

    def __init__(self, session: Session, errands: Errands, book: JobBook) -> None:
        super().__init__(book)
        self.ledger = Ledger(session, errands, book)
        self.stage = BookStage(self.ledger)
        self.shelf = BookShelf(self.ledger)
        self.stage.opened.connect(self.left)
        self.shelf.card.opened.connect(self.left)
        self.shelf.card.file_wanted.connect(self.file_wanted)
        self.shelf.client.shown.connect(self._list_client)

    def search(self, text: str) -> None:
        """List the jobs that have every word."""
        self.stage.look_for(text)

    def _list_client(self, name: str) -> None:
        self.stage.look_for(name)
        self.shelf.show_page(JOB)
