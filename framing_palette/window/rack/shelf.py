"""The rack's shelf: what is looked near, what lies side by side, and where the gaps are."""

from PySide6.QtCore import QModelIndex, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, rule, words
from framing_palette.window.desk import MOST_KEPT
from framing_palette.window.errands import Errands
from framing_palette.window.greys import color_of
from framing_palette.window.keeping import keep_sample
from framing_palette.window.languages import told as in_language
from framing_palette.window.paged_shelf import PagedShelf
from framing_palette.window.rack.gap_list import GapList
from framing_palette.window.rack.hidden_list import HiddenList
from framing_palette.window.rack.import_sheet import ImportSheet
from framing_palette.window.rack.light_card import LightCard
from framing_palette.window.rack.marks import Marks
from framing_palette.window.rack.rows import RackRows, Row, rows_view
from framing_palette.window.rack.state import NEAR_DELTA_E, RackState
from framing_palette.window.rack.swatch_page import SwatchPage
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

NEAR, GAPS, BRING, MEASURE, HIDDEN = "near", "gaps", "bring", "measure", "hidden"
_LOW = 320


class RackShelf(PagedShelf):
    """Pages for what is near, what is missing, and what comes onto the rack or leaves it."""

    def __init__(self, state: RackState, errands: Errands, swatches: SwatchBook) -> None:
        super().__init__()
        self.near = NearPage(state, errands, swatches)
        self.gaps = GapList(state)
        self.bring = ImportSheet(state.book)
        self.swatches = SwatchPage(state, errands)
        self.measure = self.swatches.one
        self.hidden = HiddenList(state.book)
        self.lay_out(
            self.tr("Rack"),
            self.tr("Shelf"),
            (
                (NEAR, self.tr("Near"), self.near),
                (GAPS, self.tr("Gaps"), self.gaps),
                (BRING, self.tr("Import"), self.bring),
                (MEASURE, self.tr("Swatch"), self.swatches),
                (HIDDEN, self.tr("Hidden"), self.hidden),
            ),
        )
        self.gaps.chosen.connect(state.look_at)
        state.marked_changed.connect(lambda: self.show_page(NEAR) if state.marked else None)


class NearPage(QWidget):
    """What is looked near, the samples round it, or those that the lasso held."""

    compared = Signal()

    def __init__(self, state: RackState, errands: Errands, swatches: SwatchBook) -> None:
        super().__init__()
        self._state = state
        self.light = LightCard(state, errands.runner)
        self.patch = Patch()
        self.title = words(strong=True, wrap=True)
        self.told = words(size="small", quiet=True, wrap=True)
        self.model = RackRows(state, self)
        self.view = rows_view(self.model, swatches, self.tr("Samples near it, nearest first"))
        self.marks = Marks(state)
        self.head, self.foot = QWidget(), QWidget()
        self.keep = push_button(self.tr("Keep"), told=self.tr("Keep the sample on the rail"))
        self.compare = push_button(self.tr("Side by side"))
        self._lay_out()
        self.keep.clicked.connect(self._keep)
        self.compare.clicked.connect(self._compare)
        self.view.clicked.connect(self._choose)
        self.view.asked.connect(self._do)
        self.view.selectionModel().currentChanged.connect(lambda _now: self._let())
        for signal in (state.look_changed, state.marked_changed, state.points_changed):
            signal.connect(self.follow)
        self.follow()

    def code_in_hand(self) -> str:
        """Return the code of the chosen row, or of what is looked near; empty for neither."""
        index = self.view.currentIndex()
        if index.isValid():
            return self.model.sample_at(index).code
        return self._state.look.code if self._state.look else ""

    def follow(self) -> None:
        """Show what is marked, else what is near."""
        state = self._state
        self.view.selectionModel().clear()
        if state.marked:
            rows = tuple(Row(row) for row in state.marked)
            self.title.setText(self.tr("In the lasso"))
            count = len(rows)
            self.told.setText(
                self.tr("1 sample")
                if count == 1
                else self.tr("{count} samples").format(count=count)
            )
            self.patch.show_lab(None)
        elif state.look is not None:
            rows = tuple(Row(row, delta_e) for row, delta_e in state.near)
            name = in_language(state.look.name)
            self.title.setText(f"{name[:1].upper()}{name[1:]}")
            lightness, a, b = state.look.lab
            told = f"L* {lightness:.0f}   a* {a:.0f}   b* {b:.0f}"
            if not rows:
                told += "\n" + self.tr(
                    "None of the samples shown comes within ΔE₀₀ {near:.0f}. Show more "
                    "families, kinds or lightness."
                ).format(near=NEAR_DELTA_E)
            self.told.setText(told)
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
        head = QHBoxLayout(self.head)
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
        foot = QVBoxLayout(self.foot)
        foot.setContentsMargins(0, 0, 0, 0)
        foot.setSpacing(0)
        foot.addWidget(rule())
        foot.addWidget(self.light)
        foot.addWidget(self.marks)
        foot.addLayout(row)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(self.view, 1000)
        column.addStretch(1)
        column.addWidget(self.foot)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the list its room where the window is low."""
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        is_low = self.height() < _LOW
        self.marks.whose.setVisible(not is_low)
        self.light.setVisible(not is_low)
        self.head.setVisible(not (is_low and self.model.rowCount()))

    def _choose(self, index: QModelIndex) -> None:
        self._state.session.assign("chosen_code", self.model.sample_at(index).code)

    def _do(self, asked: str) -> None:
        index = self.view.currentIndex()
        if asked == "keep":
            self._keep()
        elif index.isValid():
            self._state.mark(())
            self._state.look_at_row(self.model.row_at(index).row)

    def _keep(self) -> None:
        code = self.code_in_hand()
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
        code = self.code_in_hand()
        self.marks.show_sample(code)
        self.light.show_sample(self._state.known(code))
        self.view.setVisible(self.model.rowCount() > 0)
        self._make_room()
        self.foot.setVisible(bool(self.code_in_hand() or self._state.marked))
        self.keep.setEnabled(bool(self.code_in_hand()))
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
