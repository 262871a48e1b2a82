"""The stage: a canvas with its few controls, and what to do while it is empty."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import (
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.controls import IconButton, ToolBar, push_button, words
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.job_book.recent import RecentJobs
from framing_palette.window.session import Session
from framing_palette.window.tokens import MARGIN, SECTION

FOOT_GAP = 4
SCALE_BAR_PX = 156
"""Room that the scale bar may need at the left of the foot."""


class Stage(FileDrops):
    """A canvas under a zoom bar and a scale bar; when there is no picture it says what to do."""

    picture_wanted = Signal()
    picture_dropped = Signal(object)

    def __init__(self, session: Session, canvas: Canvas, tools: QWidget | None = None) -> None:
        super().__init__()
        self._session = session
        self.canvas = canvas
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.addWidget(canvas, 0, 0)
        self._bar = _ZoomBar(canvas)
        self._bar.setParent(self)
        self._tools = tools
        if tools is not None:
            tools.setParent(self)
        self._empty = _Empty(session)
        self._empty.setParent(self)
        self._empty.open_button.clicked.connect(self.picture_wanted)
        session.pyramid_changed.connect(self._show_what_there_is)
        self._show_what_there_is()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the bars in their corners."""
        super().resizeEvent(event)
        bar = self._bar.sizeHint()
        self._bar.setGeometry(
            self.width() - bar.width() - MARGIN,
            self.height() - bar.height() - FOOT_GAP,
            bar.width(),
            bar.height(),
        )
        self.place_tools()
        self._empty.setGeometry(self.rect())

    def place_tools(self) -> None:
        """Keep the tools below the picture."""
        if self._tools is not None:
            size, bar = self._tools.sizeHint(), self._bar.geometry()
            left = (self.width() - size.width()) // 2
            top = bar.top()
            if left < SCALE_BAR_PX or left + size.width() > bar.left() - MARGIN:
                top -= size.height() + FOOT_GAP
            left = max(0, min(left, self.width() - size.width()))
            self._tools.setGeometry(left, top, size.width(), size.height())

    def take_dropped(self, path: Path) -> None:
        """Take the file as the picture."""
        self.picture_dropped.emit(path)

    def _show_what_there_is(self) -> None:
        there = self._session.pyramid is not None
        self._empty.setVisible(not there)
        self._bar.setVisible(there)
        self._empty.raise_()


class _ZoomBar(ToolBar):
    def __init__(self, canvas: Canvas) -> None:
        super().__init__()
        for icon, told, keys, act in (
            ("minus", self.tr("Look from farther away"), "-", lambda: canvas.zoom_by(0.8)),
            ("fit", self.tr("Show the whole picture"), "0", canvas.fit),
            ("plus", self.tr("Look closer"), "+", lambda: canvas.zoom_by(1.25)),
        ):
            button = IconButton(icon, told, keys=keys)
            button.clicked.connect(act)
            self.add(button)


class _Empty(QWidget):
    def __init__(self, session: Session) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setSpacing(MARGIN)
        column.addStretch(2)
        for label in (
            words(self.tr("Bring the picture"), size="heading"),
            words(
                self.tr("Drop a photograph of the art here, paste it, or open the file."),
                quiet=True,
                wrap=True,
            ),
        ):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            column.addWidget(label)
        self.open_button = push_button(self.tr("Open a photograph"), rank="first")
        column.addSpacing(SECTION - MARGIN)
        column.addWidget(self.open_button, 0, Qt.AlignmentFlag.AlignCenter)
        column.addSpacing(SECTION - MARGIN)
        self.recent = RecentJobs(session)
        column.addWidget(self.recent, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
        session.recent_changed.connect(self._fit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show as many of the last jobs as there is room for."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self.recent.show_as_many_as_fit(self.height() - self._needed())

    def _needed(self) -> int:
        """Return the height of everything else, with some air."""
        return 4 * SECTION + self.open_button.sizeHint().height() + 4 * MARGIN + 48

    def paintEvent(self, _event: QPaintEvent) -> None:
        QPainter(self).fillRect(self.rect(), self.palette().window())
