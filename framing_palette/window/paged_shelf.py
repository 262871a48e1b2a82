"""A shelf of several pages under one heading, one of them in sight."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.window.controls import Pages, rule, words
from framing_palette.window.forms import Choice
from framing_palette.window.tokens import MARGIN, WIDE_MARGIN


class PagedShelf(QWidget):
    """Turns between its pages by chips."""

    turned = Signal(str)

    def lay_out(self, heading: str, name: str, pages: Sequence[tuple[str, str, QWidget]]) -> None:
        """Take the pages and show the first.

        Parameters
        ----------
        heading
            What stands on top.
        name
            What the chips choose between, for who cannot see them.
        pages
            Key, word on the chip, and page.
        """
        self._pages = {key: page for key, _, page in pages}
        self.pages = Choice(name, [(key, text) for key, text, _ in pages])
        self._stack = Pages()
        for page in self._pages.values():
            self._stack.addWidget(page)
        head = QVBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 4)
        head.setSpacing(0)
        head.addWidget(words(heading, size="heading"))
        head.addWidget(self.pages)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self._stack, 1)
        self.pages.picked.connect(self.show_page)
        self.show_page(pages[0][0])

    def show_page(self, page: object) -> None:
        """Turn to a page."""
        self.page = str(page)
        self.pages.show_value(self.page)
        self._stack.setCurrentWidget(self._pages[self.page])
        self.turned.emit(self.page)
