"""The book lies open: what one looks for, the jobs below, and what to do when it is damaged."""

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.jobs import Status
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.controls import rule, words
from framing_palette.window.forms import Choice
from framing_palette.window.job_book.book import BookState
from framing_palette.window.job_book.damage import DamagePanel
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.job_book.rows import JobRows, jobs_view
from framing_palette.window.languages import told as in_language
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

ANY = "any"


class BookStage(QWidget):
    """The jobs of the shop, those changed last first."""

    opened = Signal()
    """A job was opened from the list."""

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._ledger = ledger
        self._is_following = False
        self.words = self._edit(self.tr("Client, title or number"))
        self.sample = self._edit(self.tr("Code of a sample"))
        self.dates = self._edit(self.tr("Begun: 2026, 2026-03 …"))
        self.status = Choice(
            self.tr("Status"),
            (
                (ANY, self.tr("Any")),
                *((status, in_language(STATUS_WORDS[status])) for status in Status),
            ),
        )
        self.status.show_value(ANY)
        self.count = words(size="small", quiet=True)
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        self.nothing = words(quiet=True, wrap=True)
        self.model = JobRows(self)
        self.view = jobs_view(self.model, self.tr("Jobs, those changed last first"))
        self.damage = DamagePanel(ledger.book)
        self._lay_out()
        self._wire()
        self._follow()

    def look_for(self, text: str) -> None:
        """Look for words, wherever they were typed."""
        if self.words.text() != text:
            self.words.setText(text)

    def showEvent(self, event: QShowEvent) -> None:
        """Bring the list up to date when the book is opened."""
        super().showEvent(event)
        self._ledger.show(shown=True)

    def hideEvent(self, event: QHideEvent) -> None:
        """Follow the jobs no longer."""
        super().hideEvent(event)
        self._ledger.show(shown=False)

    @staticmethod
    def _edit(told: str) -> QLineEdit:
        edit = QLineEdit()
        edit.setPlaceholderText(told)
        edit.setAccessibleName(told)
        edit.setClearButtonEnabled(False)
        edit.setMinimumWidth(72)
        return edit

    def _lay_out(self) -> None:
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, 4)
        head.setSpacing(4)
        title = QHBoxLayout()
        title.addWidget(words(self.tr("The job book"), size="heading"), 1)
        title.addWidget(self.count)
        head.addLayout(title)
        head.addSpacing(GAP)
        fields = QHBoxLayout()
        fields.setSpacing(GAP)
        fields.addWidget(self.words, 3)
        fields.addWidget(self.sample, 2)
        fields.addWidget(self.dates, 2)
        head.addLayout(fields)
        for widget in (self.fault, self.status):
            head.addWidget(widget)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self.damage)
        self.nothing.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        column.addWidget(self.nothing)
        column.addWidget(self.view, 1)

    def _wire(self) -> None:
        ledger = self._ledger
        self.words.textChanged.connect(lambda text: ledger.want(words=text))
        self.sample.textChanged.connect(lambda text: ledger.want(sample=text))
        self.dates.textChanged.connect(lambda text: ledger.want(dates=text))
        self.status.picked.connect(self._want_status)
        self.view.selectionModel().currentChanged.connect(self._choose)
        self.view.doubleClicked.connect(lambda _index: self._open())
        self.view.opened.connect(self._open)
        ledger.lines_changed.connect(self._follow)
        ledger.sight_changed.connect(self._show_chosen)
        ledger.fault_changed.connect(self._tell_fault)
        ledger.book.state_changed.connect(self._follow)

    def _want_status(self, status: object) -> None:
        self.status.show_value(status)
        self._ledger.want(status=status if isinstance(status, Status) else None)

    def _choose(self, current: QModelIndex) -> None:
        if current.isValid() and not self._is_following:
            self._ledger.choose(self.model.line_at(current).number)

    def _open(self) -> None:
        self._ledger.open()
        self.opened.emit()

    def _tell_fault(self) -> None:
        self.fault.setText(in_language(self._ledger.fault))
        self.fault.setVisible(bool(self._ledger.fault))

    def _follow(self) -> None:
        ledger = self._ledger
        self._is_following = True
        self.model.set_lines(ledger.lines, frozenset(ledger.book.waiting))
        self._is_following = False
        count = len(ledger.lines)
        one, more = self.tr("1 job"), self.tr("{count} jobs")
        self.count.setText(one if count == 1 else more.format(count=f"{count:,}"))
        self.count.setVisible(ledger.book.state is BookState.READY)
        is_away = ledger.book.state is BookState.AWAY
        self.nothing.setVisible(not count or is_away)
        self.nothing.setText(self._nothing_words())
        self._show_chosen()

    def _nothing_words(self) -> str:
        ledger = self._ledger
        if ledger.book.state is BookState.AWAY:
            said = self.tr("The shop's jobs cannot be reached for now: {fault}")
            return said.format(fault=in_language(ledger.book.fault))
        if ledger.book.state is BookState.DAMAGED:
            return ""
        wanted = ledger.wanted
        if any((wanted.words, wanted.sample, wanted.status, wanted.begun_from)):
            return self.tr("No job is like that. Ask for less: fewer words, any status.")
        return self.tr("No jobs yet. A job is in the book as soon as its picture is brought.")

    def _show_chosen(self) -> None:
        index = self.model.index_of(self._ledger.chosen)
        self._is_following = True
        if index.isValid():
            self.view.setCurrentIndex(index)
        else:
            self.view.selectionModel().clear()
        self._is_following = False
