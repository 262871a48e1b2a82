"""What both counters changed differently, asked in place: as here, or as there."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.jobs import Job
from framing_palette.jobs.merging import questions
from framing_palette.window.arranging import job_of
from framing_palette.window.controls import push_button, rule, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.job_book.field_words import field_name, field_told
from framing_palette.window.saving import Saving
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

HERE, THERE = "here", "there"
_MOST_HEIGHT, _MOST_ROWS_HEIGHT = 300, 208
_ROW_HEIGHT, _CHOICE_WIDTH = 80, 176


class DifferingBar(QWidget):
    """Shown below the stage while there is something to choose."""

    def __init__(self, session: Session, saving: Saving) -> None:
        super().__init__()
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._session, self._saving = session, saving
        self.choices: dict[tuple[str, ...], Choice] = {}
        self._picked: dict[tuple[str, ...], str] = {}
        self.done = push_button(self.tr("Save it so"), rank="first")
        self._rows = QVBoxLayout()
        self._rows.setSpacing(GAP)
        inside = QWidget()
        inside.setLayout(self._rows)
        self._rows.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, MARGIN)
        column.setSpacing(GAP)
        column.addWidget(rule())
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, 0)
        title = self.tr("Changed here and at the other counter")
        head.addWidget(words(title, strong=True, wrap=True), 1)
        head.addWidget(self.done)
        column.addLayout(head)
        self._area = scrolled(inside)
        column.addWidget(self._area, 1)
        self.setMaximumHeight(_MOST_HEIGHT)
        self.done.clicked.connect(self._decide)
        session.differing_changed.connect(self._follow)
        self._follow()

    def _follow(self) -> None:
        differing = self._session.differing
        self.setVisible(differing is not None)
        groups = questions(differing.undecided) if differing is not None else ()
        if tuple(self.choices) != groups:
            self._picked = {group: self._picked.get(group, HERE) for group in groups}
        while (item := self._rows.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.choices = {}
        mine = job_of(self._session.desk, self._session.catalogue)
        if differing is None or differing.theirs is None or mine is None:
            return
        for group in groups:
            self._add(group, mine, differing.theirs.job)
        self._rows.addStretch(1)
        # All that has to be chosen is in sight before it is saved, as far as there is room.
        self._area.setMinimumHeight(min(_MOST_ROWS_HEIGHT, _ROW_HEIGHT * len(groups)))

    def _add(self, group: tuple[str, ...], mine: Job, theirs: Job) -> None:
        row = QWidget()
        beside = QHBoxLayout(row)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(WIDE_MARGIN)
        column = QVBoxLayout()
        column.setSpacing(4)
        name = ", ".join(field_name(field) for field in group)
        choice = Choice(name, ((HERE, self.tr("As here")), (THERE, self.tr("As there"))))
        choice.show_value(self._picked[group])
        choice.picked.connect(lambda picked: self._pick(group, str(picked)))
        column.addWidget(words(f"{name[:1].upper()}{name[1:]}", size="small", strong=True))
        for said, job in ((self.tr("Here: {what}"), mine), (self.tr("There: {what}"), theirs)):
            told = "; ".join(field_told(job, field, self._session.preferences) for field in group)
            column.addWidget(words(said.format(what=told), size="small", wrap=True))
        choice.setFixedWidth(_CHOICE_WIDTH)
        beside.addLayout(column, 1)
        beside.addWidget(choice, 0, Qt.AlignmentFlag.AlignVCenter)
        self.choices[group] = choice
        self._rows.addWidget(row)

    def _pick(self, group: tuple[str, ...], picked: str) -> None:
        self._picked[group] = picked
        self.choices[group].show_value(picked)

    def _decide(self) -> None:
        theirs = [
            field for group, picked in self._picked.items() if picked == THERE for field in group
        ]
        self._saving.choose_between(frozenset(theirs))
