"""The job in sight: whose it is, where it stands, what was decided, and what one can do with it."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.jobs import Job, Status
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, scrolled_column
from framing_palette.window.job_book.ledger import Ledger
from framing_palette.window.languages import told as in_language
from framing_palette.window.opening import JOB_ENDING
from framing_palette.window.tokens import GAP, MARGIN


class JobCard(QWidget):
    """One job of the book."""

    opened = Signal()
    file_wanted = Signal()
    """A job is to be opened from a file."""

    def __init__(self, ledger: Ledger) -> None:
        super().__init__()
        self._ledger = ledger
        self.title = words(strong=True, wrap=True)
        self.facts = words(size="small", quiet=True, wrap=True)
        self.open = push_button(self.tr("Open"), rank="first", told=self.tr("Open the job"))
        self.copy = push_button(self.tr("Copy"), told=self.tr("Copy the job under a new number"))
        self.archive = push_button(
            self.tr("Into a file"), told=self.tr("Put the job into a file of its own")
        )
        self.from_file = push_button(self.tr("Open a job from a file"))
        self.status = Choice(
            self.tr("Status"),
            tuple((status, in_language(STATUS_WORDS[status])) for status in Status),
        )
        self.said = words(size="small", wrap=True)
        self.line = QLineEdit()
        self.line.setPlaceholderText(self.tr("Something decided"))
        self.line.setAccessibleName(self.tr("Add a line to the history"))
        self.events = words(size="small", quiet=True, wrap=True)
        self.nothing = words(self.tr("Choose a job to see it here."), quiet=True, wrap=True)
        self._there = QWidget()
        self._lay_out()
        self.open.clicked.connect(self._open)
        self.copy.clicked.connect(ledger.copy)
        self.archive.clicked.connect(self._archive)
        self.from_file.clicked.connect(self.file_wanted)
        self.status.picked.connect(lambda status: ledger.set_status(Status(str(status))))
        self.line.returnPressed.connect(self._add_line)
        ledger.sight_changed.connect(self._follow)
        ledger.said.connect(self._say)
        self._follow()

    def _lay_out(self) -> None:
        there = QVBoxLayout(self._there)
        there.setContentsMargins(0, 0, 0, 0)
        there.setSpacing(4)
        there.addWidget(self.title)
        there.addWidget(self.facts)
        there.addSpacing(GAP)
        there.addWidget(self.open)
        row = QHBoxLayout()
        row.setSpacing(GAP)
        row.addWidget(self.copy, 1)
        row.addWidget(self.archive, 1)
        there.addLayout(row)
        there.addWidget(self.said)
        there.addSpacing(GAP)
        there.addWidget(words(self.tr("Where the job stands"), strong=True))
        there.addWidget(self.status)
        there.addSpacing(GAP)
        there.addWidget(words(self.tr("What was decided"), strong=True))
        there.addWidget(self.line)
        there.addWidget(self.events)
        column = scrolled_column(self, gap=4)
        column.addWidget(self.nothing)
        column.addWidget(self._there)
        column.addSpacing(MARGIN)
        column.addWidget(self.from_file)
        column.addStretch(1)

    def _open(self) -> None:
        self._ledger.open()
        self.opened.emit()

    def _archive(self) -> None:
        job = self._ledger.job
        if job is None:
            return
        kinds = self.tr("Jobs (*{ending})").format(ending=JOB_ENDING)
        name, _ = QFileDialog.getSaveFileName(
            self, self.tr("Put the job into a file"), f"{job.number}{JOB_ENDING}", kinds
        )
        if name:
            path = Path(name)
            path = path if path.suffix == JOB_ENDING else path.with_name(path.name + JOB_ENDING)
            self._ledger.archive(path)

    def _add_line(self) -> None:
        self._ledger.add_line(self.line.text())
        self.line.clear()

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.said.setVisible(bool(text))

    def _follow(self) -> None:
        job = self._ledger.job
        self.nothing.setVisible(job is None)
        self._there.setVisible(job is not None)
        if job is None:
            return
        self.said.setVisible(bool(self.said.text()))
        self.title.setText(job.title)
        self.facts.setText(self._facts_words(job))
        self.status.show_value(job.status)
        self.events.setText(
            "\n".join(
                f"{event.at.astimezone():%Y-%m-%d %H:%M}  {in_language(event.words)}"
                for event in reversed(job.history)
            )
        )

    def _facts_words(self, job: Job) -> str:
        unit = self._ledger.session.preferences.unit
        fraction = self._ledger.session.preferences.denominator
        size = ""
        if job.art_size is not None:
            width, height = job.art_size
            size = in_language(f"{width.figures(unit, fraction)} × {height.show(unit, fraction)}")
        begun = self.tr("begun {day}").format(day=f"{job.created.astimezone():%Y-%m-%d}")
        here = self.tr("on the desk") if self._ledger.is_on_desk() else ""
        lines = (
            (job.client.name, job.client.contact),
            (job.number, size),
            (begun, here),
            (job.note,),
        )
        told = ("   ·   ".join(text for text in line if text) for line in lines)
        return "\n".join(text for text in told if text)
