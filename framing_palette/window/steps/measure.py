"""Measure: twice, independently; then every size with its sum."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Reading
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job
from framing_palette.jobs.measured import (
    agreed_size,
    is_measured,
    piece_words,
    pieces_of,
    readings_of,
    with_reading,
    without_readings,
)
from framing_palette.window.bench import Bench
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.job_files import now
from framing_palette.window.languages import told as in_language
from framing_palette.window.measuring_cards import MeasuringCard, Shown
from framing_palette.window.pieces_row import PiecesRow
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
        if job is None:
            return Standing.OPEN
        if fault_of(self.session, job):
            return Standing.ATTENTION
        return Standing.DONE if is_settled(self.session, job) else Standing.OPEN

    def standing_words(self) -> str:
        """Tell how many there are, and whether they agree."""
        job = self.session.desk.job
        if job is not None and (fault := fault_of(self.session, job)):
            return fault
        if job is not None and is_settled(self.session, job):
            return self.tr("both measurements agree")
        taken = len(job.measurements) if job else 0
        needed = 2 * (pieces_of(job) if job else 1)
        return self.tr("{taken} of {needed} measurements").format(taken=taken, needed=needed)


def fault_of(session: Session, job: Job) -> str:
    """Return why two measurements of a piece do not settle its size; empty when all do."""
    faults = (fault_of_piece(session, job, piece) for piece in range(pieces_of(job)))
    return next((fault for fault in faults if fault), "")


def fault_of_piece(session: Session, job: Job, piece: int) -> str:
    """Return why two measurements of one piece disagree; empty when they do not, or are due."""
    preferences = session.preferences
    if len(readings_of(job, piece)) < 2:
        return ""
    try:
        agreed_size(job, tolerance=preferences.tolerance, unit=preferences.unit, piece=piece)
    except FramingPaletteError as error:
        return in_language(str(error))
    return ""


def is_settled(session: Session, job: Job) -> bool:
    """Tell whether every piece was measured twice and agreed on."""
    preferences = session.preferences
    return is_measured(job, tolerance=preferences.tolerance, unit=preferences.unit)


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
        self.piece = 0
        self.pieces: Choice | None = None
        self._pieces_row = QVBoxLayout()
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
        column.addWidget(PiecesRow(self._session))
        column.addLayout(self._pieces_row)
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
        number = len(readings_of(job, self.piece)) + 1
        try:
            measured = with_reading(
                job,
                replace(reading, piece=self.piece),
                tolerance=preferences.tolerance,
                unit=preferences.unit,
            )
        except FramingPaletteError as error:
            card.say(in_language(str(error)))
            return
        of = piece_words(self.piece, pieces_of(job))
        words = self.tr("Measurement {number} of 2").format(number=number)
        if of:
            words = self.tr("Measurement {number} of 2 of {piece}").format(number=number, piece=of)
        self._session.edit(words, job=measured)
        if number == 1:
            self.cards[1].edits["width"].setFocus(Qt.FocusReason.OtherFocusReason)
        elif not fault_of_piece(self._session, measured, self.piece):
            self._go_on(measured)

    def _go_on(self, job: Job) -> None:
        """Turn to the next piece that still has to be measured."""
        pieces = pieces_of(job)
        around = [(self.piece + step) % pieces for step in range(1, pieces)]
        due = [piece for piece in around if len(readings_of(job, piece)) < 2]
        if due:
            self.turn_to(due[0])
            self.cards[0].edits["width"].setFocus(Qt.FocusReason.OtherFocusReason)

    def turn_to(self, piece: object) -> None:
        """Measure another piece."""
        self.piece = int(str(piece))
        self._tell()

    def _begin_again(self) -> None:
        job = self._session.desk.job
        if job is not None:
            self._session.edit(self.tr("Measure again"), job=without_readings(job, self.piece))
            self.cards[0].edits["width"].setFocus(Qt.FocusReason.OtherFocusReason)

    def _tell(self) -> None:
        job, preferences = self._session.desk.job, self._session.preferences
        self._tell_pieces(job)
        for card, shown in zip(self.cards, self._shown(job), strict=True):
            card.show_state(shown, preferences.unit, preferences.denominator)
        count = len(readings_of(job, self.piece)) if job else 0
        self.again.setVisible(count > 0)
        self.verdict.setVisible(count == 2)
        self.told.setVisible(count == 2)
        if job is None or count < 2:
            return
        fault = fault_of_piece(self._session, job, self.piece)
        self.verdict.setText(self.tr("They do not agree.") if fault else self.tr("They agree."))
        self.told.setText(in_language(fault) or self._agreed_words(job))

    def _tell_pieces(self, job: Job | None) -> None:
        """Show a chip for each piece where there are several, with how far it is measured."""
        pieces = pieces_of(job) if job else 1
        self.piece = min(self.piece, pieces - 1)
        if self.pieces is not None:
            self._pieces_row.removeWidget(self.pieces)
            self.pieces.hide()
            self.pieces.deleteLater()
            self.pieces = None
        if job is None or pieces == 1:
            return
        values = [(piece, self._piece_told(job, piece)) for piece in range(pieces)]
        self.pieces = Choice(self.tr("Piece of art"), values)
        self.pieces.show_value(self.piece)
        self.pieces.picked.connect(self.turn_to)
        self._pieces_row.addWidget(self.pieces)

    def _piece_told(self, job: Job, piece: int) -> str:
        count = len(readings_of(job, piece))
        told = self.tr("Art {number}: {count} of 2")
        if count == 2:
            told = self.tr("Art {number}: agrees")
            if fault_of_piece(self._session, job, piece):
                told = self.tr("Art {number}: at odds")
        return told.format(number=piece + 1, count=count)

    def _agreed_words(self, job: Job) -> str:
        preferences = self._session.preferences
        unit, fraction = preferences.unit, preferences.denominator
        size = agreed_size(job, tolerance=preferences.tolerance, unit=unit, piece=self.piece)
        pair = in_language(
            f"{size.width.figures(unit, fraction)} × {size.height.show(unit, fraction)}"
        )
        said = self.tr("Openings go by {size}, the smaller of both readings.").format(size=pair)
        if not size.square_checked:
            square = self.tr("Diagonals were not taken, so a lean was not looked for.")
        elif size.is_square:
            square = self.tr("The diagonals say that it is square.")
        else:
            lean = in_language(size.skew.show(unit, fraction))
            square = self.tr("It leans by {lean}; openings were made safe for that.").format(
                lean=lean
            )
        return f"{said} {square}"

    def _shown(self, job: Job | None) -> tuple[Shown, Shown]:
        titles = self.tr("First measurement"), self.tr("Second measurement")
        if job is not None and pieces_of(job) > 1:
            of = piece_words(self.piece, pieces_of(job))
            first_of = self.tr("First measurement of {piece}")
            second_of = self.tr("Second measurement of {piece}")
            titles = first_of.format(piece=of), second_of.format(piece=of)
        if job is None:
            first = self.tr("Bring the picture first.")
            return Shown(titles[0], first), Shown(titles[1], first)
        taken = readings_of(job, self.piece)
        if not taken:
            return (
                Shown(titles[0], self.tr("Measure the art itself."), is_open=True),
                Shown(titles[1], self.tr("Waits until the first is done.")),
            )
        first = self._taken_words(taken[0])
        if len(taken) == 1:
            turned = f"{first} {self.tr('Turned away until the second is done.')}"
            told = self.tr("Measure anew, without asking for the first.")
            return Shown(titles[0], turned), Shown(titles[1], told, is_open=True)
        return (
            Shown(titles[0], first, taken[0]),
            Shown(titles[1], self._taken_words(taken[1]), taken[1]),
        )

    def _taken_words(self, reading: Reading) -> str:
        at = reading.at.astimezone()
        return self.tr("Taken by {hand} at {time}.").format(hand=reading.by, time=f"{at:%H:%M}")
