"""The frame of every step: path, job line, stage, shelf and rail."""

from pathlib import Path as FilePath

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent, QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QFileDialog, QGridLayout, QStackedWidget, QVBoxLayout, QWidget

from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.canvas.stage import Stage
from framing_palette.window.controls import rule
from framing_palette.window.errands import Errands
from framing_palette.window.job_line import JobLine
from framing_palette.window.keeping import bring_back
from framing_palette.window.notice import NoticeBar
from framing_palette.window.path import Path
from framing_palette.window.preferences import Preferences
from framing_palette.window.rail import Rail
from framing_palette.window.runner import Runner
from framing_palette.window.saving import Saving
from framing_palette.window.session import Session
from framing_palette.window.steps import STEPS, Counter
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import SHELF_NARROW, SHELF_WIDE

_SHELF_SHARE = 0.26


class Shell(QWidget):
    """The window."""

    def __init__(self, preferences: Preferences | None = None) -> None:
        super().__init__()
        self.setObjectName("shell")
        self.setWindowTitle(self.tr("Framing Palette"))
        self.session = Session(self)
        self.session.preferences = preferences or Preferences()
        self.runner = Runner(self)
        self.errands = Errands(self.session, self.runner)
        self.saving = Saving(self.session, self.errands)
        swatches = SwatchBook(self.session, self.runner)
        self.counter = Counter(self.session, self.errands, Outlook(self), swatches)
        self.steps = {kind.key: kind(self.counter) for kind in STEPS}
        self.path = Path(tuple(self.steps.values()), ())
        self.job_line = JobLine(self.session)
        self.rail = Rail(self.session, swatches)
        self.notice = NoticeBar(self.session)
        self._stages = QStackedWidget()
        self._shelves = QStackedWidget()
        self._made: dict[str, int] = {}
        self._lay_out()
        self._wire()
        self.resize(1366, 768)
        self.go(next(iter(self.steps)))

    def go(self, key: str) -> None:
        """Go to a step; its stage and shelf are made on the first visit."""
        step = self.steps[key]
        if key not in self._made:
            stage = step.stage()
            if isinstance(stage, Stage):
                stage.picture_wanted.connect(self.ask_for_picture)
                stage.picture_dropped.connect(self.errands.open_picture)
            self._stages.addWidget(stage)
            self._made[key] = self._shelves.addWidget(step.shelf())
        self._stages.setCurrentIndex(self._made[key])
        self._shelves.setCurrentIndex(self._made[key])
        self.path.show_at(key)
        self.session.assign("step", key)
        step.arrive()

    def ask_for_picture(self) -> None:
        """Let a photograph be chosen from the files."""
        name, _ = QFileDialog.getOpenFileName(self, self.tr("Open a photograph of the art"))
        if name:
            self.errands.open_picture(FilePath(name))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the shelf its share of the width."""
        super().resizeEvent(event)
        wanted = round(self.width() * _SHELF_SHARE / 4) * 4
        self._shelves.setFixedWidth(max(SHELF_NARROW, min(SHELF_WIDE, wanted)))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Wait until nothing works in the background any more."""
        self.runner.close()
        super().closeEvent(event)

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        middle = QVBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self._stages, 1)
        middle.addWidget(self.notice)
        middle.addWidget(rule())
        middle.addWidget(self.rail)
        grid.addWidget(self.path, 0, 0, 3, 1)
        grid.addWidget(rule(down=True), 0, 1, 3, 1)
        grid.addWidget(self.job_line, 0, 2, 1, 3)
        grid.addWidget(rule(), 1, 2, 1, 3)
        grid.addLayout(middle, 2, 2)
        grid.addWidget(rule(down=True), 2, 3)
        grid.addWidget(self._shelves, 2, 4)
        grid.setColumnStretch(2, 1)
        grid.setRowStretch(2, 1)

    def _wire(self) -> None:
        self.path.chosen.connect(self.go)
        self.rail.chosen.connect(lambda number: bring_back(self.session, number))
        self.job_line.sought.connect(self._search)
        self.runner.busy_changed.connect(self._say_doing)
        for number in range(4):
            keys = QShortcut(QKeySequence(str(number + 1)), self)
            keys.activated.connect(lambda number=number: bring_back(self.session, number))
        seek = QShortcut(QKeySequence(Qt.Key.Key_Slash), self)
        seek.activated.connect(self._begin_search)

    def _begin_search(self) -> None:
        self.job_line.search.setVisible(True)
        self.job_line.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.job_line.search.selectAll()

    def _search(self, text: str) -> None:
        self.steps[self.session.step].search(text)

    def _say_doing(self) -> None:
        said = {
            "job": self.tr("Opening the picture"),
            "catalogue": self.tr("Loading the rack"),
            "findings": self.tr("Reading the picture"),
            "ranking": self.tr("Judging the rack"),
        }
        busy = next((words for topic, words in said.items() if self.runner.is_busy(topic)), "")
        self.job_line.set_doing(busy)
