"""What was brought in so far, latest first, and the way back to before any of it."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.book import RackBook
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from framing_palette.catalogue.store import ImportNote


class ImportHistory(QWidget):
    """One row an import that stands; taking one out takes the later ones out with it."""

    def __init__(self, book: RackBook) -> None:
        super().__init__()
        self._book = book
        self.buttons: dict[int, QWidget] = {}
        self._rows: list[QWidget] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, GAP, 0, 0)
        self._column.setSpacing(4)
        self._column.addWidget(words(self.tr("Brought in so far"), strong=True))
        book.changed.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Show what stands now."""
        for row in self._rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.buttons = {}
        notes = self._book.imports()
        self._rows = [self._row(note, later) for later, note in enumerate(notes)]
        for row in self._rows:
            self._column.addWidget(row)
        self.setVisible(bool(notes))

    def _row(self, note: "ImportNote", later: int) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(GAP)
        text = self.tr("{source}, {day}: {summary}")
        told = text.format(source=note.source, day=note.at[:10], summary=in_language(note.summary))
        line.addWidget(words(told, size="small", wrap=True), 1)
        if later:
            means = self.tr("Take out {source} and the {count} brought in after it")
        else:
            means = self.tr("Take out {source}")
        means = means.format(source=note.source, count=later)
        button = push_button(self.tr("Take out"), told=means)
        button.setToolTip(means)
        button.clicked.connect(partial(self._book.take_back, means, note.number, note.source))
        line.addWidget(button)
        self.buttons[note.number] = button
        return row
