"""The job's designs as tabs; one is in hand, a copy begins the next."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QWidget

from framing_palette.papers.contents import MOST_OPTIONS
from framing_palette.window import building
from framing_palette.window.controls import Chip, IconButton
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, WIDE_MARGIN


class OptionTabs(QWidget):
    """A chip for each design, and what can be done with the one in hand."""

    picked = Signal(int)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.chips: list[Chip] = []
        self._group = QButtonGroup(self)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(WIDE_MARGIN, 4, GAP, 0)
        self._row.setSpacing(GAP)
        self.copy = IconButton("plus", self.tr("Begin another design from this one"))
        self.drop = IconButton("away", self.tr("Take this design away"))
        self.copy.clicked.connect(lambda: building.copy_design(session))
        self.drop.clicked.connect(
            lambda: building.drop_option(session, building.number_in_hand(session))
        )
        self._row.addStretch(1)
        self._row.addWidget(self.copy)
        self._row.addWidget(self.drop)
        session.job_changed.connect(self._tell)
        session.in_hand_changed.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        options = building.options_of(self._session)
        names = [option.design.name or building.NAMES[at] for at, option in enumerate(options)]
        if names != [chip.text() for chip in self.chips]:
            self._rebuild(names)
        number = building.number_in_hand(self._session)
        if number >= 0:
            self.chips[number].setChecked(True)
        self.copy.setVisible(0 < len(options) < MOST_OPTIONS)
        self.drop.setVisible(bool(options))

    def _rebuild(self, names: list[str]) -> None:
        for chip in self.chips:
            self._group.removeButton(chip)
            self._row.removeWidget(chip)
            chip.hide()
            chip.deleteLater()
        self.chips = []
        for number, name in enumerate(names):
            chip = Chip(name, told=self.tr("Take in hand: {name}").format(name=name))
            chip.clicked.connect(
                lambda _on=False, number=number: building.take_in_hand(self._session, number)
            )
            self._group.addButton(chip)
            self._row.insertWidget(number, chip)
            self.chips.append(chip)
