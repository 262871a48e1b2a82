"""Rows of samples: what the shelf and the list view show, one model and one look for both."""

from dataclasses import dataclass
from enum import IntEnum
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QGuiApplication, QKeyEvent, QPainter, QPalette
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from framing_palette.catalogue import Sample
from framing_palette.window.languages import told as in_language
from framing_palette.window.parcels import SAMPLE_MIME, parcel
from framing_palette.window.rack.state import RackState
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, GAP, MARGIN, SMALL, SWATCH, WIDE_MARGIN

AnyIndex = QModelIndex | QPersistentModelIndex
_SWATCH_WIDTH = 72
ROLE = QPalette.ColorRole


class RowRole(IntEnum):
    """What a row can be asked for besides its words."""

    ROW = Qt.ItemDataRole.UserRole + 1


@dataclass(frozen=True, slots=True)
class Row:
    """A sample by its row in the points, and how far it is from what is looked at."""

    row: int
    delta_e: float | None = None


class RackRows(QAbstractListModel):
    """Rows of the state's samples in a given order."""

    def __init__(self, state: RackState, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self._rows: tuple[Row, ...] = ()

    def set_rows(self, rows: tuple[Row, ...]) -> None:
        """Show other rows."""
        if rows != self._rows:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of rows."""
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    def row_at(self, index: AnyIndex) -> Row:
        """Return one row."""
        return self._rows[index.row()]

    def sample_at(self, index: AnyIndex) -> Sample:
        """Return the sample of a row."""
        return self._state.sample(self.row_at(index).row)

    def index_of(self, row: int) -> QModelIndex:
        """Return where a sample's row stands; invalid when it is not shown."""
        for place, one in enumerate(self._rows):
            if one.row == row:
                return self.index(place)
        return QModelIndex()

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a row holds, and the words that a screen reader says for it."""
        if role == RowRole.ROW:
            return self.row_at(index)
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            told = (self.sample_at(index).name, self.facts(index), self.states(index))
            return ". ".join(text for text in told if text)
        return None

    def facts(self, index: AnyIndex) -> str:
        """Return the few facts of a row in words."""
        row, sample = self.row_at(index), self.sample_at(index)
        told = [] if row.delta_e is None else [f"ΔE₀₀ {row.delta_e:.1f}"]
        return "  ·  ".join([*told, in_language(sample.kind.value.replace("_", " ")), sample.code])

    def states(self, index: AnyIndex) -> str:
        """Return what the shop says of a row in words; empty when it says nothing."""
        told = []
        if self.sample_at(index).in_stock is False:
            told.append(self.tr("out of stock"))
        if self._state.is_liked(self.row_at(index).row):
            told.append(self.tr("favourite"))
        return "  ·  ".join(told)

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Let samples be chosen and dragged away."""
        del index
        flag = Qt.ItemFlag
        return flag.ItemIsEnabled | flag.ItemIsSelectable | flag.ItemIsDragEnabled

    def mimeTypes(self) -> list[str]:
        """Return the form in which a sample is dragged."""
        return [SAMPLE_MIME]

    def mimeData(self, indexes: Any) -> QMimeData:
        """Put the code of the dragged sample into a parcel."""
        return parcel(self.sample_at(indexes[0]).code) if indexes else QMimeData()


class RackRow(QStyledItemDelegate):
    """Draws a swatch, the name, and the few facts below it."""

    def __init__(self, model: RackRows, swatches: SwatchBook, view: QListView) -> None:
        super().__init__(view)
        self._model = model
        self._swatches = swatches
        self._name_font, self._small_font = type_font(BODY), type_font(SMALL)

    def sizeHint(self, option: QStyleOptionViewItem, _index: AnyIndex) -> QSize:
        """Give every row the room of its swatch."""
        return QSize(option.rect.width() if option.rect.width() > 0 else 320, SWATCH + 2 * GAP)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        rect: QRect = option.rect
        palette, sample = QGuiApplication.palette(), self._model.sample_at(index)
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, palette.color(ROLE.Base))
            painter.fillRect(
                QRect(rect.left(), rect.top(), 3, rect.height()), palette.color(ROLE.Highlight)
            )
        elif option.state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(rect, palette.color(ROLE.Light))
        swatch = QRect(rect.left() + WIDE_MARGIN, rect.top() + GAP, _SWATCH_WIDTH, SWATCH)
        self._swatches.draw(painter, swatch, sample)
        left = swatch.right() + MARGIN
        room = rect.right() - WIDE_MARGIN - left
        top = rect.top() + GAP
        for font, role, text in (
            (self._name_font, ROLE.WindowText, sample.name),
            (self._small_font, ROLE.PlaceholderText, self._model.facts(index)),
            (self._small_font, ROLE.WindowText, self._model.states(index)),
        ):
            metrics = QFontMetrics(font)
            painter.setFont(font)
            painter.setPen(palette.color(role))
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room)
            painter.drawText(QRect(left, top, room, metrics.height()), 0, shown)
            top += metrics.height() + 2
        painter.restore()


class RowsView(QListView):
    """A list with two keys of its own: Enter looks near, K keeps."""

    asked = Signal(str)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer the keys of a sample before those of a list."""
        asked = {
            Qt.Key.Key_Return: "look",
            Qt.Key.Key_Enter: "look",
            Qt.Key.Key_K: "keep",
        }.get(Qt.Key(event.key()))
        if asked:
            self.asked.emit(asked)
        else:
            super().keyPressEvent(event)


def rows_view(model: RackRows, swatches: SwatchBook, told: str) -> RowsView:
    """Return a list of samples that can be dragged away."""
    view = RowsView()
    view.setModel(model)
    view.setItemDelegate(RackRow(model, swatches, view))
    view.setAccessibleName(told)
    view.setMouseTracking(True)
    view.setDragEnabled(True)
    view.setUniformItemSizes(True)
    view.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
    view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    view.setResizeMode(QListView.ResizeMode.Adjust)
    view.verticalScrollBar().setSingleStep(22)
    swatches.arrived.connect(view.viewport().update)
    return view
