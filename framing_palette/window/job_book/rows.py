"""Rows of the job book: title, client and number, where the job stands, and when it was changed."""

from datetime import datetime
from enum import IntEnum
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QGuiApplication, QKeyEvent, QPainter, QPalette, QPen
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from framing_palette.jobs import JobLine, Status
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.job_files import now
from framing_palette.window.languages import told as in_language
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, GAP, SMALL, WIDE_MARGIN

AnyIndex = QModelIndex | QPersistentModelIndex
ROLE = QPalette.ColorRole
ROW_HEIGHT = 60
_STATUS_WIDTH, _DATE_WIDTH, _NARROW = 132, 128, 560
_DOT, _STEP = 4.0, 14.0


class RowRole(IntEnum):
    """What a row can be asked for besides its words."""

    LINE = Qt.ItemDataRole.UserRole + 1


class JobRows(QAbstractListModel):
    """The lines of the jobs that are looked for."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lines: tuple[JobLine, ...] = ()
        self.waiting: frozenset[str] = frozenset()

    def set_lines(self, lines: tuple[JobLine, ...], waiting: frozenset[str]) -> None:
        """Show other jobs; those that wait on this computer alone are marked."""
        if lines is not self._lines or waiting != self.waiting:
            self.beginResetModel()
            self._lines, self.waiting = lines, waiting
            self.endResetModel()

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of jobs."""
        return 0 if parent is not None and parent.isValid() else len(self._lines)

    def line_at(self, index: AnyIndex) -> JobLine:
        """Return one job's line."""
        return self._lines[index.row()]

    def index_of(self, number: str) -> QModelIndex:
        """Return where a job stands; invalid when it is not shown."""
        for row, line in enumerate(self._lines):
            if line.number == number:
                return self.index(row)
        return QModelIndex()

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a row holds, and the words that a screen reader says for it."""
        line = self.line_at(index)
        if role == RowRole.LINE:
            return line
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            told = (
                line.title,
                self.facts(index),
                in_language(STATUS_WORDS[line.status]),
                self.when(line),
            )
            return ". ".join(text for text in told if text)
        return None

    def facts(self, index: AnyIndex) -> str:
        """Return whose it is, its number, and whether it is on this computer alone."""
        line = self.line_at(index)
        here = self.tr("on this computer alone") if line.number in self.waiting else ""
        return "   ·   ".join(text for text in (line.client, line.number, here) if text)

    def when(self, line: JobLine) -> str:
        """Return when a job was changed last, as one would say it."""
        return self._day(line.changed.astimezone(), now().astimezone())

    def _day(self, at: datetime, today: datetime) -> str:
        days = (today.date() - at.date()).days
        if days == 0:
            return self.tr("today {time}").format(time=f"{at:%H:%M}")
        if days == 1:
            return self.tr("yesterday {time}").format(time=f"{at:%H:%M}")
        return f"{at:%Y-%m-%d}"


class JobRow(QStyledItemDelegate):
    """Draws a job: words at the left, its way through the shop and its day at the right."""

    def __init__(self, model: JobRows, view: QListView) -> None:
        super().__init__(view)
        self._model = model
        self._title_font, self._small_font = type_font(BODY, strong=True), type_font(SMALL)

    def sizeHint(self, option: QStyleOptionViewItem, _index: AnyIndex) -> QSize:
        """Give every row the same height."""
        return QSize(max(240, option.rect.width()), ROW_HEIGHT)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        rect: QRect = option.rect
        palette, line = QGuiApplication.palette(), self._model.line_at(index)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, palette.color(ROLE.Base))
            bar = QRect(rect.left(), rect.top(), 3, rect.height())
            painter.fillRect(bar, palette.color(ROLE.Highlight))
        elif option.state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(rect, palette.color(ROLE.Light))
        inside = rect.adjusted(WIDE_MARGIN, GAP, -WIDE_MARGIN, -GAP)
        is_narrow = rect.width() < _NARROW
        side = _STATUS_WIDTH if is_narrow else _STATUS_WIDTH + _DATE_WIDTH
        self._draw_words(
            painter,
            inside.adjusted(0, 0, -side - WIDE_MARGIN, 0),
            (
                (self._title_font, ROLE.WindowText, line.title),
                (self._small_font, ROLE.PlaceholderText, self._model.facts(index)),
            ),
        )
        status = QRect(inside.right() - side + 1, inside.top(), _STATUS_WIDTH, inside.height())
        self._draw_status(painter, status, line.status)
        if not is_narrow:
            day = QRect(inside.right() - _DATE_WIDTH + 1, inside.top(), _DATE_WIDTH, 44)
            painter.setFont(self._small_font)
            painter.setPen(palette.color(ROLE.PlaceholderText))
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(day, flags, self._model.when(line))
        painter.restore()

    def _draw_words(self, painter: QPainter, box: QRect, texts: Any) -> None:
        palette, top = QGuiApplication.palette(), box.top()
        for font, role, text in texts:
            metrics = QFontMetrics(font)
            painter.setFont(font)
            painter.setPen(palette.color(role))
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(QRect(box.left(), top, box.width(), metrics.height()), 0, shown)
            top += metrics.height() + 4

    def _draw_status(self, painter: QPainter, box: QRect, status: Status) -> None:
        """Draw the word, and below it the way through the shop as far as it has come."""
        palette = QGuiApplication.palette()
        metrics = QFontMetrics(self._small_font)
        painter.setFont(self._small_font)
        painter.setPen(palette.color(ROLE.WindowText))
        painter.drawText(
            QRect(box.left(), box.top(), box.width(), metrics.height()),
            0,
            in_language(STATUS_WORDS[status]),
        )
        y = box.top() + metrics.height() + 12.0
        reached = list(Status).index(status)
        ink = palette.color(ROLE.WindowText)
        for place in range(len(Status)):
            middle = QPointF(box.left() + _DOT + 1 + place * _STEP, y)
            painter.setPen(QPen(ink, 1.2))
            painter.setBrush(ink if place <= reached else Qt.BrushStyle.NoBrush)
            painter.drawEllipse(middle, _DOT, _DOT)


class JobsView(QListView):
    """A list of jobs; Enter opens one."""

    opened = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open the job with Enter."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.opened.emit()
        else:
            super().keyPressEvent(event)


def jobs_view(model: JobRows, told: str) -> JobsView:
    """Return a list of jobs."""
    view = JobsView()
    view.setModel(model)
    view.setItemDelegate(JobRow(model, view))
    view.setAccessibleName(told)
    view.setMouseTracking(True)
    view.setUniformItemSizes(True)
    view.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
    view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    view.setResizeMode(QListView.ResizeMode.Adjust)
    view.verticalScrollBar().setSingleStep(20)
    return view
