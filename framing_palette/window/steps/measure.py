"""Measure: twice, independently; then every size with its sum."""

from collections.abc import Callable
from datetime import datetime

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Reading
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job
from framing_palette.jobs.measured import agreed_size, with_reading, without_readings
from framing_palette.window.bench import Bench
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import scrolled
from framing_palette.window.job_files import now
from framing_palette.window.measuring_cards import MeasuringCard, Shown
from framing_palette.window.session import Session
from framing_palette.window.sizes_shelf import SizesShelf
from framing_palette.window.steps.step import Counter, Standing, Step
from framing_palette.window.tokens import GAP, MARGIN, SECTION

_WIDEST = 1080
_SIDE_BY_SIDE_FROM = 720


class MeasureStep(Step):
    """Two independent measurements, and the sums."""

    key = "measure"
    icon = "measure"

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.stage_widget: MeasureStage | None = None
        self.shelf_widget: SizesShelf | None = None
        self.session.job_changed.connect(self.standing_changed)

    def stage(self) -> QWidget:
        """Make the two cards."""
        self.stage_widget = MeasureStage(self.session, now)
        return self.stage_widget

    def shelf(self) -> QWidget:
        """Make the list of sizes."""
        self.shelf_widget = SizesShelf(self.session, Bench(self.session, self))
        return self.shelf_widget

    def standing(self) -> Standing:
        """Done once two measurements agree; two that do not need attention."""
        job = self.session.desk.job
        if job is None or len(job.measurements) < 2:
            return Standing.OPEN
        return Standing.ATTENTION if fault_of(self.session, job) else Standing.DONE

    def standing_words(self) -> str:
        """Tell how many there are, and whether they agree."""
        job = self.session.desk.job
        if job is None or len(job.measurements) < 2:
            return f"{len(job.measurements) if job else 0} of 2 measurements"
        return fault_of(self.session, job) or self.tr("both measurements agree")


def fault_of(session: Session, job: Job) -> str:
    """Return why two measurements do not settle the size; empty when they do."""
    preferences = session.preferences
    try:
        agreed_size(job, tolerance=preferences.tolerance, unit=preferences.unit)
    except FramingPaletteError as error:
        return str(error)
    return ""


class MeasureStage(QWidget):
    """The two cards, and below them whether they agree."""

    def __init__(self, session: Session, clock: Callable[[], datetime]) -> None:
        super().__init__()
        self._session = session
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.cards = (MeasuringCard(1, clock), MeasuringCard(2, clock))
        self.verdict = words(size="heading", wrap=True)
        self.told = words(wrap=True)
        self.again = push_button(self.tr("Measure both again"))
        self._lay_out()
        for card in self.cards:
            card.done.connect(lambda reading, card=card: self._take(card, reading))
        self.again.clicked.connect(self._begin_again)
        for signal in (session.job_changed, session.preferences_changed):
            signal.connect(self._tell)
        self._tell()

    def _lay_out(self) -> None:
        inside = QWidget()
        inside.setMaximumWidth(_WIDEST)
        column = QVBoxLayout(inside)
        column.setContentsMargins(SECTION, SECTION, SECTION, SECTION)
        column.setSpacing(MARGIN)
        column.addWidget(words(self.tr("Measure twice, cut once"), size="heading", wrap=True))
        column.addWidget(
            words(
                self.tr(
                    "Two measurements, best by two people. The first card turns away when it is "
                    "done, so that the second is taken without seeing it."
                ),
                quiet=True,
                wrap=True,
            )
        )
        column.addSpacing(GAP)
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._row.setSpacing(SECTION)
        for card in self.cards:
            self._row.addWidget(card, 1)
        column.addLayout(self._row)
        column.addSpacing(GAP)
        column.addWidget(self.verdict)
        column.addWidget(self.told)
        column.addWidget(self.again, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        around = QHBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(scrolled(inside), 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand the cards one above the other where there is no room side by side."""
        super().resizeEvent(event)
        is_wide = self.width() >= _SIDE_BY_SIDE_FROM
        way = QBoxLayout.Direction.LeftToRight if is_wide else QBoxLayout.Direction.TopToBottom
        self._row.setDirection(way)

    def _take(self, card: MeasuringCard, reading: Reading) -> None:
        job, preferences = self._session.desk.job, self._session.preferences
        if job is None:
            return
        number = len(job.measurements) + 1
        try:
            measured = with_reading(
                job, reading, tolerance=preferences.tolerance, unit=preferences.unit
            )
        except FramingPaletteError as error:
            card.say(str(error))
            return
        self._session.edit(f"Measurement {number} of 2", job=measured)
        if number == 1:
            self.cards[1].edits["width"].setFocus(Qt.FocusReason.OtherFocusReason)

    def _begin_again(self) -> None:
        job = self._session.desk.job
        if job is not None:
            self._session.edit(self.tr("Measure again"), job=without_readings(job))
            self.cards[0].edits["width"].setFocus(Qt.FocusReason.OtherFocusReason)

    def _tell(self) -> None:
        job, preferences = self._session.desk.job, self._session.preferences
        for card, shown in zip(self.cards, self._shown(job), strict=True):
            card.show_state(shown, preferences.unit, preferences.denominator)
        count = len(job.measurements) if job else 0
        self.again.setVisible(count > 0)
        self.verdict.setVisible(count == 2)
        self.told.setVisible(count == 2)
        if job is None or count < 2:
            return
        fault = fault_of(self._session, job)
        self.verdict.setText(self.tr("They do not agree.") if fault else self.tr("They agree."))
        self.told.setText(fault or self._agreed_words(job))

    def _agreed_words(self, job: Job) -> str:
        preferences = self._session.preferences
        unit, fraction = preferences.unit, preferences.denominator
        size = agreed_size(job, tolerance=preferences.tolerance, unit=unit)
        pair = f"{size.width.figures(unit, fraction)} × {size.height.show(unit, fraction)}"
        said = self.tr("Openings go by %1, the smaller of both readings.").replace("%1", pair)
        if not size.square_checked:
            square = self.tr("Diagonals were not taken, so a lean was not looked for.")
        elif size.is_square:
            square = self.tr("The diagonals say that it is square.")
        else:
            lean = size.skew.show(unit, fraction)
            square = self.tr("It leans by %1; openings were made safe for that.").replace(
                "%1", lean
            )
        return f"{said} {square}"

    def _shown(self, job: Job | None) -> tuple[Shown, Shown]:
        titles = self.tr("First measurement"), self.tr("Second measurement")
        if job is None:
            first = self.tr("Bring the picture first.")
            return Shown(titles[0], first), Shown(titles[1], first)
        taken = job.measurements
        if not taken:
            return (
                Shown(titles[0], self.tr("Measure the art itself."), is_open=True),
                Shown(titles[1], self.tr("Waits until the first is done.")),
            )
        first = self._taken_words(taken[0])
        if len(taken) == 1:
            turned = f"{first} " + self.tr("Turned away until the second is done.")
            told = self.tr("Measure anew, without asking for the first.")
            return Shown(titles[0], turned), Shown(titles[1], told, is_open=True)
        return (
            Shown(titles[0], first, taken[0]),
            Shown(titles[1], self._taken_words(taken[1]), taken[1]),
        )

    def _taken_words(self, reading: Reading) -> str:
        at = reading.at.astimezone()
        said = self.tr("Taken by %1 at %2.")
        return said.replace("%1", reading.by).replace("%2", f"{at:%H:%M}")
