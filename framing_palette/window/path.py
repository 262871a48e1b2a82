"""The path of the job at the left edge: one stop a step, always reachable."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QMenu,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from framing_palette.window.controls import IconButton
from framing_palette.window.icons import draw_icon
from framing_palette.window.steps.step import Standing, Step
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import HIT, PATH_WIDTH, SMALL

TALL, LOW = 76, 48
ROLE = QPalette.ColorRole


class Stop(QAbstractButton):
    """One stop: a line icon, a word, and a mark for done, open or needs attention."""

    def __init__(self, step: Step, number: int) -> None:
        super().__init__()
        self.step = step
        self.setText(step.title)
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setFont(type_font(SMALL))
        self.setShortcut(f"Ctrl+{number}")
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        self.setMaximumHeight(TALL)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        step.standing_changed.connect(self._tell)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for a comfortable height."""
        return QSize(PATH_WIDTH, TALL)

    def minimumSizeHint(self) -> QSize:
        """Be content with icon and word close together."""
        return QSize(PATH_WIDTH, LOW)

    def _tell(self) -> None:
        standing, said = self.step.standing(), self.step.standing_words()
        state = {
            Standing.DONE: self.tr("done"),
            Standing.OPEN: self.tr("open"),
            Standing.ATTENTION: self.tr("needs attention"),
        }[standing]
        self.setAccessibleName(f"{self.text()}: {state}")
        self.setToolTip(f"{self.text()}: {said}" if said else self.text())
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw ground, icon, word and mark."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        ink = palette.color(ROLE.WindowText)
        if self.isChecked():
            painter.fillRect(self.rect(), palette.color(ROLE.Window))
            painter.fillRect(0, 0, 3, self.height(), palette.color(ROLE.Highlight))
        elif self.isDown() or self.underMouse():
            painter.fillRect(self.rect(), palette.color(ROLE.Light))
        middle, word_height = self.width() / 2, self.fontMetrics().height()
        top = (self.height() - 24 - 4 - word_height) / 2
        stroke = 2.0 if self.isChecked() else 1.6
        draw_icon(painter, self.step.icon, QRectF(middle - 12, top, 24, 24), ink, stroke=stroke)
        painter.setFont(type_font(SMALL, strong=self.isChecked()))
        painter.setPen(ink)
        line = QRectF(0, top + 28, self.width(), word_height)
        painter.drawText(line, Qt.AlignmentFlag.AlignCenter, self.text())
        self._draw_mark(painter, QRectF(middle + 14, top - 5, 12, 12))

    def _draw_mark(self, painter: QPainter, box: QRectF) -> None:
        standing = self.step.standing()
        ink = self.palette().color(ROLE.WindowText)
        if standing is Standing.DONE:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ink)
            painter.drawEllipse(box)
            light = self.palette().color(ROLE.Base)
            draw_icon(painter, "done", box.adjusted(2, 2, -2, -2), light, stroke=1.5)
        elif standing is Standing.ATTENTION:
            painter.setPen(QPen(ink, 1.4))
            painter.setBrush(self.palette().color(ROLE.Base))
            triangle = box.adjusted(-1, -1, 1, 1)
            draw_icon(painter, "warning", triangle, ink, stroke=1.3)


class Path(QWidget):
    """The stops from the first to the last, and a few doors below them."""

    chosen = Signal(str)

    def __init__(self, steps: Sequence[Step], doors: Sequence[QAbstractButton]) -> None:
        super().__init__()
        self.setObjectName("chrome")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedWidth(PATH_WIDTH)
        self._stops = {step.key: Stop(step, at + 1) for at, step in enumerate(steps)}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 8)
        column.setSpacing(0)
        group = QButtonGroup(self)
        for key, stop in self._stops.items():
            group.addButton(stop)
            column.addWidget(stop)
            stop.clicked.connect(lambda _checked=False, key=key: self.chosen.emit(key))
        column.addStretch(1)
        self._doors = tuple(doors)
        self.more = IconButton("more", self.tr("More"))
        self.more.clicked.connect(self._open_more)
        for door in (*self._doors, self.more):
            column.addWidget(door, 0, Qt.AlignmentFlag.AlignHCenter)
        self.more.hide()

    def show_at(self, key: str) -> None:
        """Mark a stop as the one we are at."""
        self._stops[key].setChecked(True)

    def minimumSizeHint(self) -> QSize:
        """Need no more height than the stops and one door."""
        return QSize(PATH_WIDTH, len(self._stops) * LOW + HIT + 16)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold the doors into one where the window is low."""
        super().resizeEvent(event)
        needed = len(self._stops) * LOW + len(self._doors) * HIT + 16
        is_low = self.height() < needed
        for door in self._doors:
            door.setHidden(is_low)
        self.more.setVisible(is_low and bool(self._doors))

    def _open_more(self) -> None:
        menu = QMenu(self)
        for door in self._doors:
            menu.addAction(door.accessibleName(), door.click)
        menu.popup(self.more.mapToGlobal(self.more.rect().topRight()))

    def stop(self, key: str) -> Stop:
        """Return one stop."""
        return self._stops[key]
