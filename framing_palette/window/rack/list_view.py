"""The list: the same samples as on the map, row by row in an order to choose."""

import numpy as np
from PySide6.QtCore import QItemSelectionModel, QModelIndex
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QListView, QVBoxLayout, QWidget

from framing_palette.catalogue.rack_map import in_hue_order
from framing_palette.window.controls import words
from framing_palette.window.forms import Choice
from framing_palette.window.rack.rows import RackRows, Row, rows_view
from framing_palette.window.rack.state import RackState
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, SWATCH, WIDE_MARGIN

_COLUMN = 304
HUE, LIGHT, NAME, KIND = "hue", "light", "name", "kind"


class RackList(QWidget):
    """Samples that pass, in as many columns as there is room for."""

    def __init__(self, state: RackState, swatches: SwatchBook) -> None:
        super().__init__()
        self._state = state
        self.order = HUE
        self._is_showing = False
        self._is_stale = True
        self.model = RackRows(state, self)
        self.view = rows_view(self.model, swatches, self.tr("Samples of the rack"))
        self.view.setFlow(QListView.Flow.LeftToRight)
        self.view.setWrapping(True)
        self.orders = Choice(
            self.tr("In order of"),
            (
                (HUE, self.tr("Hue")),
                (LIGHT, self.tr("Lightness")),
                (NAME, self.tr("Name")),
                (KIND, self.tr("Kind")),
            ),
        )
        self._nothing = words(
            self.tr("No sample passes. Show all families, all kinds and every lightness again."),
            quiet=True,
            wrap=True,
        )
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
        head.setSpacing(GAP)
        head.addWidget(words(self.tr("In order of"), size="small", quiet=True))
        head.addWidget(self.orders, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        self._nothing.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        column.addWidget(self._nothing)
        column.addWidget(self.view, 1)
        self.orders.picked.connect(self.put_in_order)
        self.view.selectionModel().currentChanged.connect(self._look)
        self.view.clicked.connect(self._look)
        for signal in (state.points_changed, state.wanted_changed):
            signal.connect(self._follow)
        state.look_changed.connect(self._show_looked)
        self.put_in_order(HUE)

    def put_in_order(self, order: object) -> None:
        """Sort the samples."""
        self.order = str(order)
        self.orders.show_value(self.order)
        self._follow()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Set as many columns as fit."""
        super().resizeEvent(event)
        self._set_grid()

    def showEvent(self, event: QShowEvent) -> None:
        """Bring the list up to date when it is turned to."""
        super().showEvent(event)
        if self._is_stale:
            self._follow()

    def _follow(self) -> None:
        state = self._state
        self._is_stale = not self.isVisible()
        if self._is_stale:
            return
        rows = self._in_order()
        self.model.set_rows(tuple(Row(row) for row in rows if state.passing[row]))
        self._nothing.setVisible(not self.model.rowCount() and bool(len(state.points)))
        self._show_looked()

    def _in_order(self) -> list[int]:
        state = self._state
        if self.order == HUE:
            return [int(row) for row in in_hue_order(state.points)]
        if self.order == LIGHT:
            return [int(row) for row in np.argsort(-state.points.mean_lab[:, 0], kind="stable")]
        if self.order == KIND:
            return [int(row) for row in np.argsort(state.points.kind, kind="stable")]
        return sorted(range(len(state.points)), key=lambda row: state.sample(row).name.casefold())

    def _look(self, current: QModelIndex) -> None:
        if current.isValid() and self.view.hasFocus() and not self._is_showing:
            self._state.look_at_row(self.model.row_at(current).row)

    def _show_looked(self) -> None:
        look = self._state.look
        index = self.model.index_of(self._state.row_of(look.code)) if look else QModelIndex()
        self._is_showing = True
        if index.isValid():
            flag = QItemSelectionModel.SelectionFlag.ClearAndSelect
            self.view.selectionModel().setCurrentIndex(index, flag)
            self.view.scrollTo(index)
        else:
            self.view.selectionModel().clearSelection()
        self._is_showing = False

    def _set_grid(self) -> None:
        room = max(200, self.view.viewport().width() - 2)
        columns = max(1, room // _COLUMN)
        size = self.view.gridSize()
        size.setWidth(room // columns)
        size.setHeight(SWATCH + 2 * GAP)
        self.view.setGridSize(size)
