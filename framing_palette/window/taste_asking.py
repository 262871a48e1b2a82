"""Asking: which of two samples for this picture, one question after the other."""

from PySide6.QtCore import QObject, Signal

from framing_palette.catalogue import Kind
from framing_palette.window.errands import Errands
from framing_palette.window.session import Session
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.taste_legwork import About, asked_pair
from framing_palette.window.taste_work import answer_question

ASKING = "taste question"


class Asking(QObject):
    """Holds the question: None when nothing is asked, answered while the next is looked for."""

    changed = Signal()

    def __init__(self, session: Session, errands: Errands, book: TasteBook) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self._book = book
        self.question: tuple[str, str] | None = None
        self.is_open = False
        self._kind: Kind | None = None
        session.packed_changed.connect(self.stop)
        session.catalogue_changed.connect(self.stop)

    def ask(self, kind: Kind | None = None) -> None:
        """Look for the two samples to ask about next."""
        ranked = self._session.ranked
        if ranked is None or not self._book.is_current():
            self._session.assign("notice", self.tr("Bring a picture first, to be asked about it."))
            return
        self._kind = kind
        taste, mark = self._book.taste, self._book.mark
        away = frozenset(aside.code for aside in self._session.desk.set_aside)
        about = About(mark, kind, away)
        self._errands.runner.start(
            ASKING,
            lambda progress: asked_pair(ranked, taste, about, progress),
            done=self._take_question,
            failed=self._errands.tell,
        )

    def answer(self, place: int | None) -> None:
        """Answer the question with its first or second sample, or with neither, and ask again."""
        if self.question is None or not self.is_open:
            return
        self.is_open = False  # until the next one is there
        one, two = self.question
        better, worse = (two, one) if place == 1 else (one, two)
        answer_question(self._session, better, worse, is_open=place is None)
        self.ask(self._kind)

    def stop(self) -> None:
        """Put the question away."""
        self._errands.runner.cancel(ASKING)
        if self.question is not None:
            self._put_question(None)

    def _take_question(self, pair: tuple[str, str] | None) -> None:
        if pair is None:
            said = self.tr("Every pair that could tell something was asked about on this picture.")
            self._session.assign("notice", said)
        self._put_question(pair)

    def _put_question(self, pair: tuple[str, str] | None) -> None:
        self.question, self.is_open = pair, pair is not None
        self.changed.emit()
