"""Three designs for this picture: what to keep, what it may cost, and what was found."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from PySide6.QtCore import QRect, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLineEdit,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.design import FoundDesign, SearchResult, search_designs
from framing_palette.errors import FramingPaletteError
from framing_palette.picture import Findings
from framing_palette.ranking import Rule
from framing_palette.units import Money
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.controls import Chip, push_button, rule, words
from framing_palette.window.errands import Errands
from framing_palette.window.flow import FlowLayout
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

TOPIC = "search"
FRAME_ALONE = (Kind.MOULDING,)
ONE_MAT = (Kind.MAT, Kind.MOULDING)
TWO_MATS = (Kind.MAT, Kind.MAT, Kind.MOULDING)
FILLET_AND_MAT = (Kind.WRAPPED_FILLET, Kind.MAT, Kind.MOULDING)
_SWATCH = QSize(48, 40)


@dataclass(frozen=True, slots=True)
class _Wish:
    """What is looked for."""

    kinds: tuple[Kind, ...]
    keep: tuple[str, ...]
    exclude: tuple[str, ...]
    limit: Decimal | None
    rule: Rule


class BuildDesigns(QWidget):
    """Asks for whole designs and shows the best three."""

    found_arrived = Signal()

    def __init__(
        self, session: Session, errands: Errands, bench: Bench, swatches: SwatchBook
    ) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._bench = bench
        self._swatches = swatches
        self._kinds: tuple[Kind, ...] = ONE_MAT
        self.found: tuple[FoundDesign, ...] = ()
        self.cards: list[FoundCard] = []
        self.locks: dict[str, Chip] = {}
        self.layers = Choice(
            self.tr("Layers"),
            (
                (FRAME_ALONE, self.tr("Frame alone")),
                (ONE_MAT, self.tr("Mat, frame")),
                (TWO_MATS, self.tr("Two mats, frame")),
                (FILLET_AND_MAT, self.tr("Fillet, mat, frame")),
            ),
        )
        self.limit = QLineEdit()
        self.limit.setPlaceholderText(self.tr("no limit"))
        self.limit.setAccessibleName(self.tr("Most that the samples may cost"))
        self.find_button = push_button(self.tr("Find three designs"), rank="first")
        self.take_all = push_button(self.tr("Lay all beside each other"))
        self.progress = QProgressBar()
        self.told = words(size="small", quiet=True, wrap=True)
        self._locks_row = FlowLayout(gap=GAP, row_gap=-8)
        self._lock_title = words(self.tr("Must be in them"), size="small")
        self._results = QVBoxLayout()
        self._lay_out()
        self._wire()

    def search(self) -> None:
        """Look for designs, or stop looking."""
        runner = self._errands.runner
        if runner.is_busy(TOPIC):
            runner.cancel(TOPIC)
            self._show_busy(busy=False)
            return
        findings = self._session.findings
        if findings is None:
            self.told.setText(self.tr("Bring a picture first; it is what the designs are for."))
            return
        try:
            wish = self._wish()
        except FramingPaletteError as error:
            self.told.setText(in_language(str(error)))
            return
        catalogue = self._session.catalogue
        self._show_busy(busy=True)
        runner.start(
            TOPIC,
            lambda progress: _searched(findings, catalogue, wish, progress),
            done=self._take,
            failed=self._fail,
        )

    def _wish(self) -> _Wish:
        text = self.limit.text().strip()
        limit = Money.of(text, "EUR", field=self.tr("The limit")).amount if text else None
        keep = tuple(code for code, chip in self.locks.items() if chip.isChecked())
        away = tuple(aside.code for aside in self._session.desk.set_aside)
        return _Wish(self._kinds, keep, away, limit, self._session.rule)

    def _lay_out(self) -> None:
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, SECTION)
        rows.setSpacing(4)
        rows.addWidget(words(self.tr("Layers from the art outward"), size="small"))
        rows.addWidget(self.layers)
        rows.addSpacing(GAP)
        rows.addWidget(self._lock_title)
        rows.addLayout(self._locks_row)
        rows.addSpacing(GAP)
        rows.addWidget(words(self.tr("The samples' list prices together, at most"), size="small"))
        rows.addWidget(self.limit)
        rows.addSpacing(MARGIN)
        rows.addWidget(self.find_button)
        self.progress.setRange(0, 0)
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(4)
        self.progress.setAccessibleName(self.tr("Looking for designs"))
        rows.addWidget(self.progress)
        rows.addWidget(self.told)
        self._results.setSpacing(0)
        rows.addLayout(self._results)
        rows.addWidget(self.take_all)
        rows.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(scrolled(inside), 1)
        self.take_all.hide()
        self.layers.show_value(self._kinds)
        self._show_busy(busy=False)

    def _wire(self) -> None:
        self.layers.picked.connect(self._pick_kinds)
        self.find_button.clicked.connect(self.search)
        self.limit.returnPressed.connect(self.search)
        self.take_all.clicked.connect(lambda: self._use(self.found))
        self._bench.changed.connect(self._show_locks)
        self._session.findings_changed.connect(self._forget)
        self._session.rule_changed.connect(self._forget)
        self._swatches.arrived.connect(self._repaint)
        self._show_locks()

    def _pick_kinds(self, kinds: object) -> None:
        if isinstance(kinds, tuple):
            self._kinds = kinds

    def _show_locks(self) -> None:
        """Offer what is in the design in hand and on the rail to be kept."""
        session = self._session
        design = self._bench.design
        kept = [code for one in session.desk.kept for code in one.codes]
        codes = dict.fromkeys((*(design.codes if design else ()), *kept))
        wanted = [code for code in codes if code in session.catalogue]
        if wanted == list(self.locks):
            return
        locked = {code for code, chip in self.locks.items() if chip.isChecked()}
        while (item := self._locks_row.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.locks = {}
        for code in wanted:
            name = session.sample_of(code).name
            chip = Chip(name, told=self.tr("Must be in them: {name}").format(name=name))
            chip.setChecked(code in locked)
            self.locks[code] = chip
            self._locks_row.addWidget(chip)
        self._lock_title.setVisible(bool(wanted))

    def _take(self, result: SearchResult) -> None:
        self._show_busy(busy=False)
        self.found = result.designs
        count = f"{result.candidates_considered:,}"
        self.told.setText(self.tr("The best of %1 combinations.").replace("%1", count))
        self._show_found()
        self.found_arrived.emit()

    def _fail(self, error: Exception) -> None:
        self._show_busy(busy=False)
        if isinstance(error, FramingPaletteError):
            self.told.setText(in_language(str(error)))
        else:
            self._errands.tell(error)

    def _forget(self) -> None:
        """Let go of what was found, or is being looked for, for another picture or rule."""
        self._errands.runner.cancel(TOPIC)
        self._show_busy(busy=False)
        self.found = ()
        self.told.setText("")
        self._show_found()

    def _show_found(self) -> None:
        while (item := self._results.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.cards = []
        for number, found in enumerate(self.found):
            card = FoundCard(self._swatches, number, found)
            card.take.clicked.connect(lambda _on=False, found=found: self._use((found,)))
            self._results.addWidget(card)
            self.cards.append(card)
        self.take_all.setVisible(len(self.found) > 1)

    def _use(self, found: Sequence[FoundDesign]) -> None:
        try:
            building.take_found(self._session, found)
        except FramingPaletteError as error:
            self.told.setText(in_language(str(error)))

    def _show_busy(self, *, busy: bool) -> None:
        self.progress.setVisible(busy)
        self.find_button.setText(self.tr("Stop looking") if busy else self.tr("Find three designs"))
        if busy:
            self.told.setText(self.tr("Every combination is being looked at."))

    def _repaint(self) -> None:
        for card in self.cards:
            card.update()


class FoundCard(QWidget):
    """A found design: its samples side by side, their names, why, and a button to take it."""

    def __init__(self, swatches: SwatchBook, number: int, found: FoundDesign) -> None:
        super().__init__()
        self._swatches = swatches
        self._found = found
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, MARGIN)
        column.setSpacing(GAP)
        row = QHBoxLayout()
        row.addSpacing(len(found.layers) * (_SWATCH.width() + 1))
        row.addStretch(1)
        self.take: QPushButton = push_button(self.tr("Take it"))
        names = ", ".join(sample.name for sample in found.layers)
        self.take.setAccessibleName(
            self.tr("Take design {number}: {names}").format(number=number + 1, names=names)
        )
        row.addWidget(self.take)
        column.addLayout(row)
        column.addWidget(words(names, strong=True, wrap=True))
        for reason in (*found.reasons[:2], *found.cautions):
            column.addWidget(words(in_language(reason), size="small", quiet=True, wrap=True))
        column.addWidget(rule())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the samples from the art outward."""
        painter = QPainter(self)
        for place, sample in enumerate(self._found.layers):
            box = QRect(place * (_SWATCH.width() + 1), MARGIN, _SWATCH.width(), _SWATCH.height())
            self._swatches.draw(painter, box, sample)


def _searched(
    findings: Findings, catalogue: Catalogue, wish: _Wish, progress: Progress
) -> SearchResult:
    progress.tell(0.0)
    return search_designs(
        findings,
        catalogue,
        wish.kinds,
        top=3,
        keep=wish.keep,
        exclude=wish.exclude,
        price_limit=wish.limit,
        rule=wish.rule,
    )
