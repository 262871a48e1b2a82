"""Samples for the chosen part of a design, ranked against its neighbours and the picture."""

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QListView, QVBoxLayout, QWidget

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.design import Design
from framing_palette.design.beside import colours_beside
from framing_palette.errors import FramingPaletteError
from framing_palette.picture import Findings
from framing_palette.ranking import RankedSample, Ranking, Rule, ranking
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.controls import IconButton, push_button, rule, words
from framing_palette.window.errands import Errands
from framing_palette.window.forms import Choice
from framing_palette.window.keeping import keep_sample
from framing_palette.window.languages import told as in_language
from framing_palette.window.listing import Listed, listed_of
from framing_palette.window.runner import Progress
from framing_palette.window.sample_list import Heading, SampleList
from framing_palette.window.sample_list_view import SampleListView
from framing_palette.window.sample_row import SampleRow
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, WIDE_MARGIN

TOPIC = "beside"
_ACTS = {"lay": "use", "slide": "add", "keep": "keep"}


class BuildSamples(QWidget):
    """The list for the chosen part; Enter uses a sample, S adds it as a layer, K keeps it."""

    ranked_arrived = Signal()

    def __init__(
        self, session: Session, errands: Errands, bench: Bench, swatches: SwatchBook
    ) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._bench = bench
        self._asked: object = None
        self.model = SampleList(self)
        self.view = SampleListView()
        self.row = SampleRow(self.model, swatches, self.view)
        self.told = words(size="small", quiet=True, wrap=True)
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        self.kind = Kind.MAT
        self.kinds = Choice(
            self.tr("Show"),
            (
                (Kind.MAT, self.tr("Mats")),
                (Kind.WRAPPED_FILLET, self.tr("Wrapped fillets")),
                (Kind.WOOD_FILLET, self.tr("Wood fillets")),
                (Kind.LINER, self.tr("Liners")),
                (Kind.MOULDING, self.tr("Mouldings")),
            ),
        )
        self.controls: dict[str, QAbstractButton] = {}
        self._lay_out()
        self._wire(swatches)

    def do(self, name: str) -> None:
        """Do something with the chosen sample."""
        session = self._session
        code, part = session.chosen_code, session.chosen_part
        if not name or code not in session.catalogue:
            return
        self._say("")
        try:
            if name == "keep":
                keep_sample(session, code)
            elif building.design_in_hand(session) is None:
                building.begin_design(session, (code,))
            elif name == "use":
                building.use_sample(session, code, part)
            elif name == "add":
                building.add_sample(session, code, part)
        except FramingPaletteError as error:
            self._say(in_language(str(error)))

    def follow(self) -> None:
        """Rank the samples for the part that is chosen now, unless that was done."""
        session, findings, design = self._session, self._session.findings, self._bench.design
        if findings is None or not len(session.catalogue) or not self.isVisible():
            return
        place, catalogue, kind = self._place(design), session.catalogue, self.kind
        rule = session.rule
        wish = (findings, catalogue, design.codes if design else (), place, kind, rule)
        if wish == self._asked:
            return
        self._asked = wish
        self._errands.runner.start(
            TOPIC,
            lambda progress: _ranked(
                progress, findings, catalogue, design=design, place=place, kind=kind, rule=rule
            ),
            done=self._take,
            failed=self._errands.tell,
        )

    def _lay_out(self) -> None:
        view = self.view
        view.setModel(self.model)
        view.setItemDelegate(self.row)
        view.setAccessibleName(self.tr("Samples for the chosen part, best first"))
        view.setMouseTracking(True)
        view.setDragEnabled(True)
        view.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        view.setResizeMode(QListView.ResizeMode.Adjust)
        view.verticalScrollBar().setSingleStep(22)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        head.setSpacing(4)
        head.addWidget(self.told)
        head.addWidget(self.kinds)
        column.addLayout(head)
        column.addWidget(view, 1)
        self.fault.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, GAP)
        column.addWidget(self.fault)
        column.addWidget(rule())
        column.addLayout(self._actions())

    def _actions(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, GAP, GAP, GAP)
        row.setSpacing(4)
        use = push_button(self.tr("Use it"), rank="first", told=self.tr("Use it for this part"))
        use.setToolTip(self.tr("Use the sample for the chosen part  (Enter)"))
        add = push_button(self.tr("Add"), told=self.tr("Add it as a layer outside the chosen one"))
        add.setToolTip(self.tr("Add it as a layer outside the chosen one  (S)"))
        keep = IconButton("keep", self.tr("Keep on the rail"), keys="K")
        self.controls = {"use": use, "add": add, "keep": keep}
        row.addWidget(use)
        row.addWidget(add)
        row.addStretch(1)
        row.addWidget(keep)
        for name, control in self.controls.items():
            control.clicked.connect(lambda _on=False, name=name: self.do(name))
        return row

    def _wire(self, swatches: SwatchBook) -> None:
        session = self._session
        self.kinds.picked.connect(self._pick_kind)
        self.view.asked.connect(lambda asked: self.do(_ACTS.get(asked, "")))
        self.view.clicked.connect(self._on_clicked)
        self.view.selectionModel().currentChanged.connect(self._on_current)
        swatches.arrived.connect(self.view.viewport().update)
        session.chosen_part_changed.connect(self._follow_part)
        session.chosen_code_changed.connect(self._show_chosen)
        for signal in (
            self._bench.changed,
            session.findings_changed,
            session.catalogue_changed,
            session.rule_changed,
        ):
            signal.connect(self.follow)
        self._follow_part()
        self._show_chosen()

    def _follow_part(self) -> None:
        design, place = self._bench.design, building.place_of(self._session.chosen_part)
        if self._session.chosen_part == building.MOULDING:
            self.kind = Kind.MOULDING
        elif design is not None and place is not None and place < len(design.layers):
            self.kind = design.layers[place].kind
        self.kinds.show_value(self.kind)
        self._tell()
        self.follow()

    def _pick_kind(self, kind: object) -> None:
        self.kind = Kind(str(kind))
        self._tell()
        self.follow()

    def _place(self, design: Design | None) -> int:
        """Return where the sample would lie, counted from 0 at the art."""
        place = building.place_of(self._session.chosen_part)
        outermost = len(design.layers) if design else 0
        if self.kind is Kind.MOULDING:
            return outermost
        return outermost if place is None else min(place, outermost)

    def _tell(self) -> None:
        design, part = self._bench.design, self._session.chosen_part
        place = building.place_of(part)
        if design is None:
            said = self.tr("Choose a sample to begin with, best first for this picture.")
        elif part == building.MOULDING or self.kind is Kind.MOULDING:
            said = self.tr("For the frame: best first beside what lies in it, and for the picture.")
        elif place is not None:
            said = self.tr("For layer %1: best first beside its neighbours and for the picture.")
            said = said.replace("%1", str(place + 1))
        else:
            said = self.tr("Choose a part in the section; samples here are for next to the frame.")
        self.told.setText(said)

    def _take(self, found: tuple[Ranking, tuple[Listed, ...]]) -> None:
        self.model.set_ranked(*found)
        self._show_chosen()
        self.ranked_arrived.emit()

    def _on_current(self, current: QModelIndex, _previous: QModelIndex) -> None:
        if current.isValid():
            row = self.model.row_at(current)
            if isinstance(row, RankedSample):
                self._session.assign("chosen_code", row.sample.code)

    def _on_clicked(self, index: QModelIndex) -> None:
        row = self.model.row_at(index)
        if isinstance(row, Heading):
            self.model.toggle(row.verdict)
            self._show_chosen()

    def _show_chosen(self) -> None:
        code = self._session.chosen_code
        self.row.chosen_code = code
        index = self.model.index_of(code)
        if index.isValid() and index != self.view.currentIndex():
            flags = QItemSelectionModel.SelectionFlag.ClearAndSelect
            self.view.selectionModel().setCurrentIndex(index, flags)
        self.view.scheduleDelayedItemsLayout()
        for control in self.controls.values():
            control.setEnabled(index.isValid())

    def showEvent(self, event: object) -> None:
        """Catch up with what changed while the list was out of sight."""
        super().showEvent(event)  # type: ignore[arg-type]
        self.follow()

    def _say(self, fault: str) -> None:
        self.fault.setText(fault)
        self.fault.setVisible(bool(fault))


def _ranked(
    progress: Progress,
    findings: Findings,
    catalogue: Catalogue,
    *,
    design: Design | None,
    place: int,
    kind: Kind,
    rule: Rule,
) -> tuple[Ranking, tuple[Listed, ...]]:
    progress.tell(0.0)
    touching = colours_beside(design, place, catalogue, findings) if design else None
    ranked = ranking(findings, catalogue, kinds=(kind,), touching=touching, rule=rule)
    return ranked, listed_of(ranked)
