"""Matching by hand: which column of a spreadsheet is which fact, and the first rows as read."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QBoxLayout,
    QGridLayout,
    QHBoxLayout,
    QHeaderView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from framing_palette.window.controls import push_button, rule, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.picker import Picker
from framing_palette.window.rack.fact_words import fact_words
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import GAP, MARGIN, SECTION, SMALL, WIDE_MARGIN

if TYPE_CHECKING:
    from framing_palette.catalogue.column_matching import ColumnMatch
    from framing_palette.catalogue.incoming_files import Incoming
    from framing_palette.catalogue.matched_table_files import ReadRow

AnyIndex = QModelIndex | QPersistentModelIndex
_FACTS_WIDTH = 360
_NARROW = 600
QWIDGETSIZE_MAX = (1 << 24) - 1  # Qt's own limit, which its bindings leave out
_AS_FILE, _COMMA, _POINT = "file", "comma", "point"
_COMMAS = {_AS_FILE: None, _COMMA: True, _POINT: False}


class MatchSheet(QWidget):
    """One choice of a column for each fact, beside what the first rows give."""

    matched = Signal(object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._match: ColumnMatch | None = None
        self.pickers: dict[str, Picker] = {}
        self.units = Choice(
            self.tr("Lengths without a unit are"),
            (
                ("mm", self.tr("Millimetres")),
                ("cm", self.tr("Centimetres")),
                ("in", self.tr("Inches")),
            ),
        )
        self.decimals = Choice(
            self.tr("Decimals come after"),
            (
                (_AS_FILE, self.tr("What the file uses")),
                (_POINT, self.tr("A point")),
                (_COMMA, self.tr("A comma")),
            ),
        )
        self.rows = FirstRows(self)
        self.table = QTableView()
        self.faults = words(size="small", wrap=True)
        self.unused = words(size="small", quiet=True, wrap=True)
        self.done = push_button(self.tr("Back to the map"))
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._lay_out()
        self.units.picked.connect(lambda unit: self._change(unit=str(unit)))
        self.decimals.picked.connect(
            lambda mark: self._change(has_decimal_comma=_COMMAS[str(mark)])
        )
        self.done.clicked.connect(self.left)

    def show_incoming(self, incoming: "Incoming") -> None:
        """Show a spreadsheet as it is read now."""
        match, preview = incoming.match, incoming.preview
        if match is None or preview is None:
            return
        self._match = match
        columns = [
            ("", self.tr("not in the file")),
            *((name, name) for name in preview.header if name),
        ]
        for target, picker in self.pickers.items():
            picker.show_values(columns, match.columns.get(target, "").lower())
        self.units.show_value(match.unit)
        comma = match.has_decimal_comma
        self.decimals.show_value(_AS_FILE if comma is None else _COMMA if comma else _POINT)
        targets = [target for target in self.pickers if target in match.columns]
        self.rows.show_rows(targets, preview.rows)
        self.table.resizeColumnsToContents()
        self.faults.setText("\n".join(self._faults(preview.rows)))
        self.faults.setVisible(bool(self.faults.text()))
        names = ", ".join(preview.unused)
        self.unused.setText(self.tr("Not taken: {names}.").format(names=names))
        self.unused.setVisible(bool(names))

    def _faults(self, rows: "Sequence[ReadRow]") -> list[str]:
        told = []
        for row in rows:
            for target, reason in row.faults.items():
                where = fact_words(target) or self.tr("the whole row")
                text = self.tr("Row {row}, {where}: {reason}.")
                told.append(
                    text.format(row=row.number, where=where.lower(), reason=in_language(reason))
                )
        return told

    def _change(self, **values: Any) -> None:
        from dataclasses import replace

        if self._match is not None:
            self.matched.emit(replace(self._match, **values))

    def _pick(self, target: str, name: str) -> None:
        if self._match is not None:
            self.matched.emit(self._match.taking(target, name))

    def _lay_out(self) -> None:
        facts = QWidget()
        facts.setObjectName("panel")
        inside = QVBoxLayout(facts)
        inside.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, SECTION)
        inside.setSpacing(GAP)
        inside.addWidget(words(self.tr("Which column is which"), strong=True))
        inside.addLayout(self._facts())
        for title, choice in (
            (self.tr("Lengths without a unit are"), self.units),
            (self.tr("Decimals come after"), self.decimals),
        ):
            inside.addWidget(words(title, size="small"))
            inside.addWidget(choice)
        inside.addStretch(1)
        left = scrolled(facts)
        self._facts_part = left
        right = QVBoxLayout()
        right.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        right.setSpacing(GAP)
        right.addWidget(words(self.tr("The first rows as they are read"), strong=True))
        self._set_up_table()
        right.addWidget(self.table, 1)
        right.addWidget(self.faults)
        right.addWidget(self.unused)
        foot = QHBoxLayout()
        foot.addWidget(self.done)
        foot.addStretch(1)
        right.addLayout(foot)
        row = self._row
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(left, 5)
        row.addWidget(rule(down=True))
        row.addLayout(right, 5)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay both parts one below the other where they have no room side by side."""
        super().resizeEvent(event)
        is_narrow = self.width() < _NARROW
        way = QBoxLayout.Direction
        self._row.setDirection(way.TopToBottom if is_narrow else way.LeftToRight)
        self._facts_part.setMaximumWidth(_FACTS_WIDTH if not is_narrow else QWIDGETSIZE_MAX)

    def _facts(self) -> QGridLayout:
        from framing_palette.catalogue.column_matching import TARGETS

        grid = QGridLayout()
        grid.setHorizontalSpacing(MARGIN)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(1, 1)
        first = ("code", "name", "kind", "L", "a", "b")
        for at, target in enumerate((*first, *(t for t in TARGETS if t not in first))):
            picker = Picker(fact_words(target))
            picker.chosen.connect(lambda name, target=target: self._pick(target, str(name or "")))
            grid.addWidget(words(fact_words(target), size="small"), at, 0)
            grid.addWidget(picker, at, 1)
            self.pickers[target] = picker
        return grid

    def _set_up_table(self) -> None:
        table = self.table
        table.setModel(self.rows)
        table.setAccessibleName(self.tr("The first rows as they are read"))
        table.verticalHeader().hide()
        for corner in table.findChildren(QAbstractButton):  # Qt's own, where the headers meet
            corner.setAccessibleName(self.tr("All rows"))
        table.setShowGrid(False)
        table.setEditTriggers(QTableView.EditTrigger.NoEditTriggers)
        table.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        table.setFont(type_font(SMALL))
        table.setMinimumHeight(104)


class FirstRows(QAbstractTableModel):
    """A few rows under our own names; a cell that is not understood carries a cross."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._targets: tuple[str, ...] = ()
        self._rows: tuple[ReadRow, ...] = ()

    def show_rows(self, targets: Sequence[str], rows: "Sequence[ReadRow]") -> None:
        """Show other rows."""
        self.beginResetModel()
        self._targets, self._rows = tuple(targets), tuple(rows)
        self.endResetModel()

    def rowCount(self, _parent: AnyIndex | None = None) -> int:
        """Return the number of rows."""
        return len(self._rows)

    def columnCount(self, _parent: AnyIndex | None = None) -> int:
        """Return the number of facts that a column is taken for."""
        return len(self._targets)

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> Any:
        """Return the words of a fact."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return fact_words(self._targets[section])
        return None

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what was read, and why not where it was not."""
        row, target = self._rows[index.row()], self._targets[index.column()]
        reason = row.faults.get(target, "")
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            text = row.cells.get(target, "")
            return f"✕ {text}".strip() if reason else text
        if role == Qt.ItemDataRole.ToolTipRole:
            return reason or None
        return None
