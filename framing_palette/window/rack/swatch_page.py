"""Swatches come alone, many on one sheet, or as a folder of photographs."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import Pages
from framing_palette.window.errands import Errands
from framing_palette.window.forms import Choice
from framing_palette.window.rack.contact_sheet import ContactSheet
from framing_palette.window.rack.state import RackState
from framing_palette.window.rack.swatch_folder import SwatchFolder
from framing_palette.window.rack.swatch_sheet import SwatchSheet
from framing_palette.window.tokens import WIDE_MARGIN

ONE, SHEET, FOLDER = "one", "sheet", "folder"


class SwatchPage(QWidget):
    """Three ways to measure swatches."""

    def __init__(self, state: RackState, errands: Errands) -> None:
        super().__init__()
        self.one = SwatchSheet(state, errands)
        self.sheet = ContactSheet(state, errands)
        self.folder = SwatchFolder(state, errands)
        self._pages: dict[str, QWidget] = {
            ONE: self.one,
            SHEET: self.sheet,
            FOLDER: self.folder,
        }
        self.ways = Choice(
            self.tr("What is photographed"),
            (
                (ONE, self.tr("One swatch")),
                (SHEET, self.tr("Contact sheet")),
                (FOLDER, self.tr("Folder")),
            ),
        )
        self._stack = Pages()
        for page in self._pages.values():
            self._stack.addWidget(page)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
        head.addWidget(self.ways)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self._stack, 1)
        self.ways.picked.connect(self.show_way)
        self.show_way(ONE)

    def show_way(self, way: object) -> None:
        """Turn to one of the ways."""
        self.ways.show_value(way)
        self._stack.setCurrentWidget(self._pages[str(way)])
