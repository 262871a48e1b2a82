"""The rack's shelf: what is looked near, what lies side by side, and where the gaps are."""

from PySide6.QtCore import QModelIndex, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from framing_palette.catalogue import Kind
from framing_palette.window.controls import Chip, push_button, rule, words
from framing_palette.window.desk import MOST_KEPT
from framing_palette.window.flow import FlowLayout
from framing_palette.window.forms import Choice
from framing_palette.window.greys import color_of
from framing_palette.window.keeping import keep_sample
from framing_palette.window.rack.gap_list import GapList
from framing_palette.window.rack.rows import RackRows, Row, rows_view
from framing_palette.window.rack.state import RackState
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

NEAR, GAPS = "near", "gaps"


class RackShelf(QWidget):
    """A page for what is near, and one for what is missing."""

    def __init__(self, state: RackState, swatches: SwatchBook) -> None:
        super().__init__()
        self._state = state
        self.near = NearPage(state, swatches)
        self.gaps = GapList(state)
        self.pages = Choice(self.tr("Shelf"), ((NEAR, self.tr("Near")), (GAPS, self.tr("Gaps"))))
        self.kinds: dict[Kind, Chip] = {}
        self._stack = QStackedWidget()
        self._stack.addWidget(self.near)
        self._stack.addWidget(self.gaps)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(0)
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        head.setSpacing(0)
        head.addWidget(words(self.tr("Rack"), size="heading"))
        head.addLayout(self._kind_row())
        head.addWidget(self.pages)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self._stack, 1)
        self.pages.picked.connect(self.show_page)
        self.gaps.chosen.connect(state.look_at)
        self.show_page(NEAR)

    def show_page(self, page: object) -> None:
        """Turn to a page."""
        self.pages.show_value(page)
        self._stack.setCurrentIndex([NEAR, GAPS].index(str(page)))

    def _kind_row(self) -> FlowLayout:
        flow = FlowLayout(gap=GAP, row_gap=-8)
        for kind, text in (
            (Kind.MAT, self.tr("Mats")),
            (Kind.WRAPPED_FILLET, self.tr("Wrapped fillets")),
            (Kind.WOOD_FILLET, self.tr("Wood fillets")),
            (Kind.LINER, self.tr("Liners")),
            (Kind.MOULDING, self.tr("Mouldings")),
        ):
            chip = Chip(text, told=self.tr("Show only: ") + text)
            chip.toggled.connect(self._want_kinds)
            self.kinds[kind] = chip
            flow.addWidget(chip)
        self.there = Chip(self.tr("In stock"), told=self.tr("Show only what is in stock"))
        self.there.toggled.connect(lambda on: self._state.want(only_there=on))
        flow.addWidget(self.there)
        return flow

    def _want_kinds(self) -> None:
        chosen = frozenset(kind for kind, chip in self.kinds.items() if chip.isChecked())
        self._state.want(kinds=chosen)


class NearPage(QWidget):
    """What is looked near, the samples round it, or those that the lasso held."""

    compared = Signal()

    def __init__(self, state: RackState, swatches: SwatchBook) -> None:
        super().__init__()
        self._state = state
        self.patch = Patch()
        self.title = words(strong=True, wrap=True)
        self.told = words(size="small", quiet=True, wrap=True)
        self.model = RackRows(state, self)
        self.view = rows_view(self.model, swatches, self.tr("Samples near it, nearest first"))
        self.keep = push_button(self.tr("Keep"), told=self.tr("Keep the sample on the rail"))
        self.compare = push_button(self.tr("Side by side"))
        self._lay_out()
        self.keep.clicked.connect(self._keep)
        self.compare.clicked.connect(self._compare)
        self.view.clicked.connect(self._choose)
        self.view.activated.connect(self._look)
        self.view.selectionModel().currentChanged.connect(lambda _now: self._let())
        for signal in (state.look_changed, state.marked_changed, state.points_changed):
            signal.connect(self.follow)
        self.follow()

    def chosen_code(self) -> str:
        """Return the code of the chosen row; empty when none is."""
        index = self.view.currentIndex()
        return self.model.sample_at(index).code if index.isValid() else ""

    def follow(self) -> None:
        """Show what is marked, else what is near."""
        state = self._state
        self.view.selectionModel().clear()
        if state.marked:
            rows = tuple(Row(row) for row in state.marked)
            self.title.setText(self.tr("In the lasso"))
            count = len(rows)
            self.told.setText(
                f"{count} " + (self.tr("sample") if count == 1 else self.tr("samples"))
            )
            self.patch.show_lab(None)
        elif state.look is not None:
            rows = tuple(Row(row, delta_e) for row, delta_e in state.near)
            self.title.setText(state.look.name)
            lightness, a, b = state.look.lab
            self.told.setText(f"L* {lightness:.0f}   a* {a:.0f}   b* {b:.0f}")
            self.patch.show_lab(state.look.lab)
        else:
            rows = ()
            self.title.setText(self.tr("Nothing looked at yet"))
            self.told.setText(
                self.tr(
                    "Click a sample, a ring or a bare spot of the map to see what lies near it. "
                    "Hold Shift and draw round samples to lay them side by side."
                )
            )
            self.patch.show_lab(None)
        self.model.set_rows(rows)
        self._let()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, GAP)
        head.setSpacing(MARGIN)
        head.addWidget(self.patch, 0, Qt.AlignmentFlag.AlignTop)
        said = QVBoxLayout()
        said.setSpacing(4)
        said.addWidget(self.title)
        said.addWidget(self.told)
        head.addLayout(said, 1)
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, GAP)
        row.setSpacing(GAP)
        row.addWidget(self.keep)
        row.addWidget(self.compare)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.view, 1)
        column.addWidget(rule())
        column.addLayout(row)

    def _choose(self, index: QModelIndex) -> None:
        self._state.session.assign("chosen_code", self.model.sample_at(index).code)

    def _look(self, index: QModelIndex) -> None:
        self._state.look_at_row(self.model.row_at(index).row)

    def _keep(self) -> None:
        code = self.chosen_code()
        if code:
            keep_sample(self._state.session, code)

    def _compare(self) -> None:
        """Keep as many as the rail still holds, and turn to them side by side."""
        session = self._state.session
        room = MOST_KEPT - len(session.desk.kept)
        for row in self._state.marked[:room]:
            keep_sample(session, self._state.sample(row).code)
        session.show_side_by_side(shown=True)
        self.compared.emit()

    def _let(self) -> None:
        self.keep.setEnabled(bool(self.chosen_code()))
        self.compare.setEnabled(bool(self._state.marked))


class Patch(QWidget):
    """A colour, plain."""

    def __init__(self) -> None:
        super().__init__()
        self._lab: tuple[float, float, float] | None = None
        self.setFixedSize(56, 56)
        self.show_lab(None)

    def show_lab(self, lab: tuple[float, float, float] | None) -> None:
        """Show a colour, or nothing."""
        self._lab = lab
        self.setVisible(lab is not None)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the colour."""
        if self._lab is not None:
            painter = QPainter(self)
            painter.fillRect(self.rect(), color_of(self._lab))
            painter.setPen(self.palette().color(QPalette.ColorRole.Mid))
            painter.drawRect(QRectF(self.rect()).adjusted(0, 0, -1, -1))
