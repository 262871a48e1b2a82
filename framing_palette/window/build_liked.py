"""Near what the client likes: keep what is liked about a sample, and offer what works."""

from PySide6.QtCore import QRect, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.design import Design
from framing_palette.design.beside import colours_beside
from framing_palette.errors import FramingPaletteError
from framing_palette.picture import Findings
from framing_palette.ranking import Aspect, BetterChoice, Rule, nearest_better, ranking
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.controls import Chip, push_button, words
from framing_palette.window.errands import Errands
from framing_palette.window.flow import FlowLayout
from framing_palette.window.forms import scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

TOPIC = "nearest"
_SWATCH = QSize(96, 64)


class BuildLiked(QWidget):
    """Says what is liked about the sample of the chosen part, and shows the nearest better one."""

    choice_arrived = Signal()

    def __init__(
        self, session: Session, errands: Errands, bench: Bench, swatches: SwatchBook
    ) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._bench = bench
        self.better: BetterChoice | None = None
        self.liked = SwatchLine(swatches)
        self.offered = SwatchLine(swatches)
        self.aspects: dict[Aspect, Chip] = {}
        self.find_button = push_button(self.tr("Find the nearest that works"), rank="first")
        self.told = words(wrap=True)
        self.use = push_button(self.tr("Use it"))
        self._lay_out()
        self.find_button.clicked.connect(self.search)
        self.use.clicked.connect(self._use)
        for signal in (bench.changed, session.chosen_part_changed):
            signal.connect(self._follow)
        session.rule_changed.connect(self._forget)
        swatches.arrived.connect(self.update)
        self._follow()

    def search(self) -> None:
        """Look for the nearest better choice."""
        session, findings, design = self._session, self._session.findings, self._bench.design
        sample = building.part_sample(session, session.chosen_part)
        if findings is None or design is None or sample is None:
            return
        place = building.place_of(session.chosen_part)
        at = len(design.layers) if place is None else place
        liked = tuple(aspect for aspect, chip in self.aspects.items() if chip.isChecked())
        catalogue, rule, where = session.catalogue, session.rule, (design, at)
        self._errands.runner.start(
            TOPIC,
            lambda progress: _nearest(
                progress, findings, catalogue, where=where, sample=sample, liked=liked, rule=rule
            ),
            done=self._take,
            failed=self._errands.tell,
        )

    def _lay_out(self) -> None:
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, SECTION)
        rows.setSpacing(GAP)
        rows.addWidget(
            words(
                self.tr(
                    "A client may love what does not work. Say what is liked about the chosen "
                    "part, and the nearest sample that works better keeps it."
                ),
                size="small",
                quiet=True,
                wrap=True,
            )
        )
        rows.addWidget(self.liked)
        rows.addWidget(words(self.tr("Liked about it"), size="small"))
        flow = FlowLayout(gap=GAP, row_gap=-8)
        for aspect, text in (
            (Aspect.HUE, self.tr("Hue")),
            (Aspect.DEPTH, self.tr("Depth")),
            (Aspect.STRENGTH, self.tr("Strength")),
            (Aspect.SURFACE, self.tr("Surface")),
            (Aspect.SHEEN, self.tr("Sheen")),
            (Aspect.PATTERN, self.tr("Pattern")),
        ):
            chip = Chip(text, told=self.tr("Liked: {what}").format(what=text))
            chip.setChecked(aspect in (Aspect.HUE, Aspect.SURFACE))
            self.aspects[aspect] = chip
            flow.addWidget(chip)
        rows.addLayout(flow)
        rows.addWidget(self.find_button)
        rows.addSpacing(MARGIN)
        rows.addWidget(self.offered)
        rows.addWidget(self.told)
        rows.addWidget(self.use)
        rows.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(scrolled(inside), 1)

    def _follow(self) -> None:
        sample = building.part_sample(self._session, self._session.chosen_part)
        self.liked.show_sample(sample)
        self.find_button.setEnabled(sample is not None)
        if sample is None:
            self._show(self.tr("Choose a layer or the frame in the section first."))
        elif self.better is None or self.better.liked.sample.code != sample.code:
            self._show("")

    def _forget(self) -> None:
        """Let go of what was offered, or is being looked for, by another rule."""
        self._errands.runner.cancel(TOPIC)
        self.better = None
        self._follow()

    def _take(self, better: BetterChoice | None) -> None:
        if better is None:
            self._show(self.tr("Nothing in the rack is better than this one: it works as it is."))
        else:
            self.better = better
            self.offered.show_sample(better.offered.sample)
            self.told.setText(in_language(better.reason))
            self.use.show()
        self.choice_arrived.emit()

    def _show(self, said: str) -> None:
        self.better = None
        self.offered.show_sample(None)
        self.use.hide()
        self.told.setText(said)

    def _use(self) -> None:
        if self.better is None:
            return
        try:
            building.use_sample(
                self._session, self.better.offered.sample.code, self._session.chosen_part
            )
        except FramingPaletteError as error:
            self.told.setText(in_language(str(error)))


class SwatchLine(QWidget):
    """A sample with its name."""

    def __init__(self, swatches: SwatchBook) -> None:
        super().__init__()
        self._swatches = swatches
        self.sample: Sample | None = None
        self._name = words(strong=True, wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(_SWATCH.width() + MARGIN, 0, 0, 0)
        column.addWidget(self._name)
        self.setMinimumHeight(_SWATCH.height())
        swatches.arrived.connect(self.update)
        self.hide()

    def show_sample(self, sample: Sample | None) -> None:
        """Show another sample, or none."""
        self.sample = sample
        self._name.setText(sample.name if sample else "")
        self.setVisible(sample is not None)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the swatch."""
        if self.sample is not None:
            box = QRect(0, 0, _SWATCH.width(), _SWATCH.height())
            self._swatches.draw(QPainter(self), box, self.sample)


def _nearest(
    progress: Progress,
    findings: Findings,
    catalogue: Catalogue,
    *,
    where: tuple[Design, int],
    sample: Sample,
    liked: tuple[Aspect, ...],
    rule: Rule,
) -> BetterChoice | None:
    progress.tell(0.0)
    touching = colours_beside(*where, catalogue, findings)
    ranked = ranking(findings, catalogue, kinds=(sample.kind,), touching=touching, rule=rule)
    return nearest_better(ranked, sample.code, liked)
