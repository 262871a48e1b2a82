"""The samples that are not to be shown, each with the way back."""

from dataclasses import replace

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.catalogue import Sample
from framing_palette.window.controls import ElidedWords, push_button, words
from framing_palette.window.forms import scrolled
from framing_palette.window.rack.book import RackBook
from framing_palette.window.tokens import BODY, GAP, MARGIN, SECTION, WIDE_MARGIN


class HiddenList(QWidget):
    """Names with a button that shows the sample again."""

    def __init__(self, book: RackBook) -> None:
        super().__init__()
        self._book = book
        self.told = words(size="small", quiet=True, wrap=True)
        self.told.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, GAP)
        self._rows: list[QWidget] = []
        inside = QWidget()
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, SECTION)
        self._column.setSpacing(4)
        self._column.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.told)
        column.addWidget(scrolled(inside), 1)
        book.changed.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Show what is hidden now."""
        for row in self._rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        hidden = self._book.hidden()
        self._rows = [self._row(sample) for sample in hidden]
        for place, row in enumerate(self._rows):
            self._column.insertWidget(place, row)
        self.told.setText(
            self.tr("These samples are in no list. Show one again here.")
            if hidden
            else self.tr("Nothing is hidden. Hide a sample that the shop does not offer any more.")
        )

    def show_again(self, sample: Sample) -> None:
        """Let a sample be seen again, undoably."""
        said = self._book.said_of(sample.code)
        shown = replace(said, marks=replace(said.marks, hidden=False))
        text = self.tr("Show {name} again").format(name=sample.name)
        self._book.say(text, sample.code, shown)

    def _row(self, sample: Sample) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(GAP)
        name = ElidedWords(size=BODY)
        name.set_text(sample.name)
        button = push_button(
            self.tr("Show"), told=self.tr("Show again: {name}").format(name=sample.name)
        )
        button.clicked.connect(lambda: self.show_again(sample))
        line.addWidget(name, 1)
        line.addWidget(button)
        return row
