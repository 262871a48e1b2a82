"""The door to the rack: its stage and its shelf, made on the first visit."""

from PySide6.QtCore import QObject, Signal

from framing_palette.window.rack.book import RackBook
from framing_palette.window.rack.shelf import GAPS, RackShelf
from framing_palette.window.rack.stage import RackStage
from framing_palette.window.rack.state import RackState
from framing_palette.window.steps.step import Counter


class RackDoor(QObject):
    """What the shell shows when the rack is opened."""

    left = Signal()
    """The samples are to be seen beside the picture."""

    def __init__(self, counter: Counter, book: RackBook, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.state = RackState(counter.session, counter.errands, book, self)
        self.stage = RackStage(self.state, counter.errands.runner, counter.swatches)
        self.shelf = RackShelf(self.state, counter.errands, counter.swatches)
        self.shelf.turned.connect(lambda page: self.stage.map.show_quiet(is_on=page == GAPS))
        self.shelf.near.compared.connect(self.left)
        bring, match = self.shelf.bring, self.stage.match
        bring.looked_into.connect(self.stage.take_incoming)
        bring.matching_asked.connect(self.stage.show_matching)
        match.matched.connect(bring.take_match)

    def search(self, text: str) -> None:
        """Show only the samples that have every word."""
        self.state.want(words=text)
