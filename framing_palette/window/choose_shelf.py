"""The shelf of Choose: kinds, the ranked list, and what can be done with the chosen sample."""

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QListView, QVBoxLayout, QWidget

from framing_palette.catalogue import Kind
from framing_palette.ranking import RankedSample
from framing_palette.ranking.nearness import near_samples
from framing_palette.window.better_line import BetterLine
from framing_palette.window.controls import Chip, IconButton, push_button, rule, words
from framing_palette.window.errands import Errands
from framing_palette.window.flow import FlowLayout
from framing_palette.window.keeping import keep_sample, lay_round, send_away
from framing_palette.window.measures_panel import MeasuresPanel
from framing_palette.window.probe_chip import ProbeChip
from framing_palette.window.sample_list import Heading, SampleList
from framing_palette.window.sample_list_view import SampleListView
from framing_palette.window.sample_row import SampleRow
from framing_palette.window.session import Session
from framing_palette.window.sliding import lay_strip
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.taste_away import AwayLine
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.taste_line import TasteLine
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

_LOW_SHELF = 440


class ChooseShelf(QWidget):
    """Heading, kinds, the list and what can be done with the chosen sample."""

    slid = Signal()
    """A sample was laid on the picture as a strip."""
    asked = Signal()
    """Which of two samples is to be asked."""
    taste_wanted = Signal()
    """The taste card is to be shown."""

    def __init__(
        self, session: Session, errands: Errands, swatches: SwatchBook, taste: TasteBook
    ) -> None:
        super().__init__()
        self._session = session
        self._taste = taste
        self._is_stale = False
        self.model = SampleList(self)
        self.model.set_moved(taste.places_up)
        self.view = SampleListView()
        self.row = SampleRow(self.model, swatches, self.view)
        self.chips: dict[Kind, Chip] = {}
        self.controls: dict[str, QAbstractButton] = {}
        self._subtitle = words(size="small", quiet=True, wrap=True)
        self.probe = ProbeChip()
        self.taste_line = TasteLine(session, taste)
        self.ask_button = IconButton("pair", self.tr("Which for this picture?"), keys="Q")
        self.taste_button = IconButton("taste", self.tr("Taste"), keys="T")
        self.measures = MeasuresPanel(self._session)
        self.away = AwayLine(session)
        self.better = BetterLine(self._session, errands, swatches)
        self._nothing = words(
            self.tr("No sample passes. Switch a kind off, clear the search, or let the colour go."),
            quiet=True,
            wrap=True,
        )
        self._nothing.setContentsMargins(WIDE_MARGIN, SECTION, WIDE_MARGIN, SECTION)
        self._nothing.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._set_up_view()
        self._lay_out()
        self._wire(swatches)

    def _set_up_view(self) -> None:
        view = self.view
        view.setModel(self.model)
        view.setItemDelegate(self.row)
        view.setAccessibleName(self.tr("Samples, best first"))
        view.setMouseTracking(True)
        view.setDragEnabled(True)
        view.setAutoScroll(False)  # or the list jumps before it has its size
        view.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        view.setResizeMode(QListView.ResizeMode.Adjust)
        view.verticalScrollBar().setSingleStep(22)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(0)
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        head.setSpacing(4)
        top = QHBoxLayout()
        top.setContentsMargins(0, 0, GAP - WIDE_MARGIN, 0)
        top.setSpacing(0)
        top.addWidget(words(self.tr("Samples"), size="heading"), 1)
        top.addWidget(self.ask_button)
        top.addWidget(self.taste_button)
        head.addLayout(top)
        head.addWidget(self._subtitle)
        head.addLayout(self._kind_row())
        head.addWidget(self.taste_line)
        head.addWidget(self.probe)
        column.addLayout(head)
        column.addWidget(self.view, 1)
        column.addWidget(self._nothing)
        column.addWidget(self.better)
        column.addWidget(self.measures)
        column.addWidget(self.away)
        column.addWidget(rule())
        column.addLayout(self._action_row())

    def _kind_row(self) -> FlowLayout:
        flow = FlowLayout(gap=GAP, row_gap=-8)
        for kind, text in (
            (Kind.MAT, self.tr("Mats")),
            (Kind.WRAPPED_FILLET, self.tr("Wrapped fillets")),
            (Kind.WOOD_FILLET, self.tr("Wood fillets")),
            (Kind.LINER, self.tr("Liners")),
            (Kind.MOULDING, self.tr("Mouldings")),
        ):
            chip = Chip(text, told=self.tr("Show only: {kind}").format(kind=text))
            chip.toggled.connect(self._filter)
            self.chips[kind] = chip
            flow.addWidget(chip)
        return flow

    def _action_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, GAP, GAP, GAP)
        row.setSpacing(4)
        lay = push_button(self.tr("Lay round"), rank="first", told=self.tr("Lay round the picture"))
        lay.setToolTip(self.tr("Lay the sample round the picture  (Enter)"))
        self.controls["lay"] = lay
        row.addWidget(lay)
        row.addStretch(1)
        slide = push_button(self.tr("Slide"), told=self.tr("Slide over the picture"))
        slide.setToolTip(self.tr("Lay the sample on the picture as a strip  (S)"))
        self.controls["slide"] = slide
        row.insertWidget(1, slide)
        for name, icon, told, keys in (
            ("measures", "help", self.tr("The measures behind the reasons"), "I"),
            ("keep", "keep", self.tr("Keep on the rail"), "K"),
            ("away", "away", self.tr("Send away"), "X"),
        ):
            button = IconButton(icon, told, keys=keys)
            self.controls[name] = button
            row.addWidget(button)
        for name, control in self.controls.items():
            control.clicked.connect(lambda _on=False, name=name: self.do(name))
        return row

    def _wire(self, swatches: SwatchBook) -> None:
        session = self._session
        session.ranked_changed.connect(self._take_ranking)
        session.set_aside_changed.connect(self._hide_sent_away)
        session.chosen_code_changed.connect(self._show_chosen)
        session.probe_changed.connect(self._follow_probe)
        session.catalogue_changed.connect(self._follow_probe)
        self.away.turned.connect(self._share_room)
        self._taste.effect_changed.connect(self.view.viewport().update)
        self.ask_button.clicked.connect(self.asked)
        self.taste_button.clicked.connect(self.taste_wanted)
        self.taste_line.clicked.connect(self.taste_wanted)
        self.probe.clicked.connect(lambda: session.assign("probe", None))
        swatches.arrived.connect(self.view.viewport().update)
        self.view.selectionModel().currentChanged.connect(self._on_current)
        self.view.clicked.connect(self._on_clicked)
        self.view.asked.connect(self.do)
        self.model.modelReset.connect(self._share_room)
        for signal in (session.picture_changed, session.catalogue_changed):
            signal.connect(self._say_how_many)
        self._take_ranking()
        self._show_chosen()

    def showEvent(self, event: QShowEvent) -> None:
        """Take the ranking that came while nobody looked."""
        super().showEvent(event)
        if self._is_stale:
            self._take_ranking()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the list the room of the words above it where the shelf is low."""
        super().resizeEvent(event)
        self._subtitle.setVisible(not self._is_low())
        self._share_room()

    def _is_low(self) -> bool:
        return self.height() < _LOW_SHELF

    def _share_room(self) -> None:
        """Let the list and what unfolds below it take turns where there is no room for both."""
        is_empty = bool(self._session.ranked) and self.model.rowCount() == 0
        is_unfolded = not (self.measures.isHidden() and self.away.isHidden())
        takes_turns = self._is_low() and is_unfolded
        self._nothing.setVisible(is_empty)
        self.view.setHidden(is_empty or takes_turns)

    def do(self, name: str) -> None:
        """Do something with the chosen sample, or with the shelf."""
        if name == "ask":
            self.asked.emit()
        elif name == "taste":
            self.taste_wanted.emit()
        code = self._session.chosen_code
        if not code:
            return
        if name == "lay":
            lay_round(self._session, (code,))
        elif name == "slide":
            lay_strip(self._session, code)
            self.slid.emit()
        elif name == "keep":
            keep_sample(self._session, code)
        elif name == "away":
            send_away(self._session, code)
        elif name == "measures":
            self.measures.toggle()
            self._share_room()

    def only_kind(self) -> Kind | None:
        """Return the one kind that is shown; None when it is not just one."""
        shown = [kind for kind, chip in self.chips.items() if chip.isChecked()]
        return shown[0] if len(shown) == 1 else None

    def _take_ranking(self) -> None:
        if self.window().isVisible() and not self.isVisible():
            self._is_stale = True  # taken when somebody looks
            return
        self._is_stale = False
        self.model.set_ranked(self._session.ranked, self._session.listed)
        self._say_how_many()
        self._restore_selection()

    def _hide_sent_away(self) -> None:
        self.model.set_hidden(frozenset(aside.code for aside in self._session.desk.set_aside))
        self._restore_selection()

    def _filter(self) -> None:
        self.model.set_kinds(
            frozenset(kind for kind, chip in self.chips.items() if chip.isChecked())
        )
        self._restore_selection()

    def _follow_probe(self) -> None:
        probe = self._session.probe
        near = near_samples(self._session.catalogue.samples, probe.lab) if probe else None
        self.probe.show_probe(probe)
        self.model.set_near(near)
        self._restore_selection()

    def _say_how_many(self) -> None:
        if self._session.ranked:
            said = self.tr(
                "Best first for this picture, with the reason. Click on a colour of "
                "the picture to look near it."
            )
        elif self._session.picture is None:
            said = self.tr("Bring a picture, and the rack is judged against it.")
        elif not len(self._session.catalogue):
            said = self.tr("The rack is empty.")
        else:
            said = self.tr("The rack is being judged.")
        self._subtitle.setText(said)

    def _on_current(self, current: QModelIndex, _previous: QModelIndex) -> None:
        if current.isValid():
            row = self.model.row_at(current)
            if isinstance(row, RankedSample):
                self._session.assign("chosen_code", row.sample.code)
            if self.view.hasFocus():
                self.view.scrollTo(current)

    def _on_clicked(self, index: QModelIndex) -> None:
        row = self.model.row_at(index)
        if isinstance(row, Heading):
            self.model.toggle(row.verdict)
            self._restore_selection()

    def _show_chosen(self) -> None:
        self.row.chosen_code = self._session.chosen_code
        self._restore_selection()
        self.view.scheduleDelayedItemsLayout()
        for control in self.controls.values():
            control.setEnabled(bool(self._session.chosen_code))

    def _restore_selection(self) -> None:
        index = self.model.index_of(self._session.chosen_code)
        if index.isValid() and index != self.view.currentIndex():
            flags = QItemSelectionModel.SelectionFlag.ClearAndSelect
            self.view.selectionModel().setCurrentIndex(index, flags)
        if index.row() <= 1:
            self.view.scrollToTop()
