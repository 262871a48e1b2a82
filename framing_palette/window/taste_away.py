"""Why a sample was sent away: asked in place, to be answered or passed over.

Only a sample that was sent away for its look says anything of the shop's taste.
"""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import Chip, IconButton, rule, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.session import Session
from framing_palette.window.taste_work import NOT_AT_HAND, TOO_DEAR
from framing_palette.window.tokens import GAP, WIDE_MARGIN

ITS_LOOK = "its look"


class AwayLine(QWidget):
    """Stands over the list's actions after a sample was sent away, until it is answered."""

    turned = Signal()
    """It came or went."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._known = {aside.code for aside in session.desk.set_aside}
        self.code = ""
        self.told = words(size="small", wrap=True)
        self.chips: dict[str, Chip] = {}
        self.close_button = IconButton("close", self.tr("Say nothing of why"), side=32)
        self.close_button.clicked.connect(lambda: self._turn(shown=False))
        self._lay_out()
        session.set_aside_changed.connect(self._follow)
        self.hide()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 4, 4, 0)
        head.addWidget(self.told, 1)
        head.addWidget(self.close_button)
        flow = FlowLayout(gap=GAP, row_gap=-8)
        flow.setContentsMargins(0, 0, 0, 0)
        chips = QWidget()
        chips.setLayout(flow)
        for reason, text in (
            (ITS_LOOK, self.tr("Its look")),
            (TOO_DEAR, self.tr("Too dear")),
            (NOT_AT_HAND, self.tr("Not at hand")),
        ):
            chip = Chip(text, told=self.tr("Sent away because: {reason}").format(reason=text))
            chip.clicked.connect(lambda _on=False, reason=reason: self._say(reason))
            self.chips[reason] = chip
            flow.addWidget(chip)
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        row.addWidget(chips, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(rule())
        column.addLayout(head)
        column.addLayout(row)

    def _follow(self) -> None:
        asides = {aside.code: aside for aside in self._session.desk.set_aside}
        new = [code for code in asides if code not in self._known]
        self._known = set(asides)
        if new and not asides[new[-1]].reason and new[-1] in self._session.catalogue:
            self.code = new[-1]
            name = self._session.sample_of(self.code).name
            self.told.setText(self.tr("{name} is sent away. Why?").format(name=name))
            for chip in self.chips.values():
                chip.setChecked(False)
            self._turn(shown=True)
        elif self.code not in asides:
            self._turn(shown=False)

    def _turn(self, *, shown: bool) -> None:
        self.setVisible(shown)
        self.turned.emit()

    def _say(self, reason: str) -> None:
        asides = self._session.desk.set_aside
        said = tuple(
            replace(aside, reason=reason) if aside.code == self.code else aside for aside in asides
        )
        name = self._session.sample_of(self.code).name
        self._turn(shown=False)
        self._session.edit(f"Say why {name} was sent away", set_aside=said)
