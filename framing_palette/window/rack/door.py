"""The door to the rack: its stage and its shelf, made on the first visit."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from framing_palette.window.rack.book import RackBook
from framing_palette.window.rack.contact_sheet import ContactSheet
from framing_palette.window.rack.shelf import GAPS, RackShelf
from framing_palette.window.rack.stage import RackStage
from framing_palette.window.rack.state import RackState
from framing_palette.window.rack.swatch_sheet import SwatchSheet
from framing_palette.window.steps.step import Counter

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.catalogue.shop_swatch_files import SwatchPhotograph
    from framing_palette.window.rack.swatch_photo import Outline


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
        self._drawn_for: SwatchSheet | ContactSheet = self.shelf.swatches.one
        one, sheet, plate = (
            self.shelf.swatches.one,
            self.shelf.swatches.sheet,
            self.stage.photo.plate,
        )
        one.opened.connect(lambda photograph, outlines: self._show(one, photograph, outlines))
        sheet.opened.connect(lambda photograph, outlines: self._show(sheet, photograph, outlines))
        sheet.coded.connect(plate.show_codes)
        plate.drawn.connect(self._take_drawn)

    def _take_drawn(self, outlines: "Sequence[Outline]") -> None:
        self._drawn_for.take_outlines(outlines)

    def _show(
        self,
        asker: SwatchSheet | ContactSheet,
        photograph: "SwatchPhotograph",
        outlines: "Sequence[Outline]",
    ) -> None:
        self._drawn_for = asker
        are_many = asker is self.shelf.swatches.sheet
        self.stage.photo.plate.show_codes(())
        self.stage.show_photograph(photograph, outlines, are_many=are_many)

    def search(self, text: str) -> None:
        """Show only the samples that have every word."""
        self.state.want(words=text)
