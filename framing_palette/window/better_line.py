"""The nearest better choice, offered when a liked sample fights the picture."""

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.ranking import BetterChoice, Verdict
from framing_palette.window import legwork
from framing_palette.window.controls import rule, words
from framing_palette.window.errands import Errands
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

BETTER = "better choice"
_SIDE = 48


class BetterLine(QWidget):
    """A swatch and a kind sentence; a press chooses the offered sample."""

    def __init__(self, session: Session, errands: Errands, swatches: SwatchBook) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self.offer: BetterChoice | None = None
        self.button = _Offer(session, swatches)
        self._told = words(size="small", wrap=True)
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, GAP)
        row.setSpacing(MARGIN)
        row.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._told, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(rule())
        column.addLayout(row)
        self.button.clicked.connect(self._choose)
        for signal in (session.chosen_code_changed, session.ranked_changed):
            signal.connect(self._ask)
        self.hide()

    def text(self) -> str:
        """Return what is said."""
        return self._told.text()

    def _ask(self) -> None:
        self.hide()
        self.offer = None
        ranked, code = self._session.ranked, self._session.chosen_code
        judged = self._session.ranked_of(code)
        if ranked is None or judged is None or judged.verdict is not Verdict.CLASH:
            self._errands.runner.cancel(BETTER)
            return
        self._errands.runner.start(
            BETTER,
            lambda progress: legwork.bettered(ranked, code, progress),
            done=self._show_offer,
            failed=self._errands.tell,
        )

    def _show_offer(self, offer: BetterChoice | None) -> None:
        self.offer = offer
        if offer is not None:
            self.button.show_code(offer.offered.sample.code, offer.offered.sample.name)
            self._told.setText(in_language(offer.reason))
        self.setVisible(offer is not None)

    def _choose(self) -> None:
        if self.offer is not None:
            self._session.assign("chosen_code", self.offer.offered.sample.code)


class _Offer(QAbstractButton):
    def __init__(self, session: Session, swatches: SwatchBook) -> None:
        super().__init__()
        self._session = session
        self._swatches = swatches
        self._code = ""
        self.setAccessibleName(self.tr("Nothing to offer"))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFixedSize(_SIDE, _SIDE)
        swatches.arrived.connect(self.update)

    def show_code(self, code: str, name: str) -> None:
        self._code = code
        self.setAccessibleName(self.tr("Choose instead: {name}").format(name=name))
        self.setToolTip(self.tr("Choose it instead"))
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(_SIDE, _SIDE)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        if self._code in self._session.catalogue:
            sample = self._session.sample_of(self._code)
            self._swatches.draw(painter, QRect(0, 0, _SIDE, _SIDE), sample)
        if self.underMouse():
            painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
