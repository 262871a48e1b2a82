"""What is wished of the ticket alone: both units, a stack that may stand out, the drawings."""

from dataclasses import dataclass, replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice
from framing_palette.window.tokens import GAP


@dataclass(frozen=True, slots=True)
class TicketWish:
    """How the ticket is to be.

    Parameters
    ----------
    both_units
        Whether every length is told in inches and in millimetres.
    stands_out
        Whether the framer has agreed to a stack that is deeper than the rabbet.
    """

    both_units: bool = False
    stands_out: bool = False


class TicketWishes(QWidget):
    """Two choices and a button."""

    wished = Signal(object)
    """The TicketWish as it is now."""
    drawings_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.wish = TicketWish()
        self.units = Choice(
            self.tr("Lengths on the ticket"),
            ((False, self.tr("In one unit")), (True, self.tr("In both units"))),
        )
        self.deep = Choice(
            self.tr("A stack deeper than the rabbet"),
            ((False, self.tr("Is refused")), (True, self.tr("May stand out"))),
        )
        self.drawings = push_button(self.tr("Save the drawings"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for told, control in (
            (self.tr("Lengths on the ticket"), self.units),
            (self.tr("A stack deeper than the rabbet"), self.deep),
        ):
            column.addSpacing(GAP)
            column.addWidget(words(told, size="small"))
            column.addWidget(control)
        column.addSpacing(GAP)
        column.addWidget(self.drawings)
        meaning = self.tr("Face, section and every mat at true size, as SVG and DXF for cutters.")
        column.addWidget(words(meaning, size="small", quiet=True, wrap=True))
        self.units.picked.connect(lambda both: self._set(both_units=bool(both)))
        self.deep.picked.connect(lambda out: self._set(stands_out=bool(out)))
        self.drawings.clicked.connect(self.drawings_asked)
        self._show()

    def _set(self, **changes: bool) -> None:
        self.wish = replace(self.wish, **changes)
        self._show()
        self.wished.emit(self.wish)

    def _show(self) -> None:
        self.units.show_value(self.wish.both_units)
        self.deep.show_value(self.wish.stands_out)
