"""Side by side: what is kept, in linked views with their differences in words."""

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.ranking import Verdict
from framing_palette.ranking.differences import difference_words
from framing_palette.window.canvas.border import BorderLayer
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.controls import IconButton, rule, words
from framing_palette.window.desk import Kept
from framing_palette.window.keeping import lay_round, let_go, send_away
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

_VERDICT_WORDS = {
    Verdict.COMPLEMENT: "Stands apart and belongs.",
    Verdict.BLEND: "Settles into the picture.",
    Verdict.CLASH: "Fights the picture.",
}


_LEAST_FOR_WORDS, _LEAST_FOR_ACTIONS = 420, 120


class CompareBoard(QWidget):
    """Two to four looks with the same zoom and place; each can be laid, noted, or sent away."""

    closed = Signal()

    def __init__(self, session: Session, swatches: SwatchBook, outlook: Outlook) -> None:
        super().__init__()
        self._session = session
        self._swatches = swatches
        self._outlook = outlook
        self.panels: list[ComparePanel] = []
        self._row = QHBoxLayout()
        self._row.setSpacing(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 4, 4, 4)
        head.addWidget(words(self.tr("Side by side"), strong=True))
        head.addStretch(1)
        close = IconButton("close", self.tr("Back to one picture"), keys="Esc")
        close.clicked.connect(self.closed)
        head.addWidget(close)
        column.addLayout(head)
        column.addWidget(rule())
        column.addLayout(self._row, 1)
        session.kept_changed.connect(self._on_kept)
        self._on_kept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give all words the same room, so that the pictures stand level."""
        super().resizeEvent(event)
        self.level()

    def level(self) -> None:
        """Make the words of all panels as high as the longest need."""
        if not self.panels:
            return
        has_room = self.height() >= _LEAST_FOR_WORDS
        for panel in self.panels:
            panel.told.setVisible(has_room)
            panel.note.setVisible(has_room)
        width = self.width() // len(self.panels) - 2 * MARGIN
        for panel in self.panels:
            panel.action_row.setVisible(width >= _LEAST_FOR_ACTIONS)
        for names in ("title", "told"):
            labels = [getattr(panel, names) for panel in self.panels]
            height = max(label.heightForWidth(max(width, 40)) for label in labels)
            for label in labels:
                label.setFixedHeight(height)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Window))

    def _on_kept(self) -> None:
        kept = self._session.desk.kept
        if [panel.kept.codes for panel in self.panels] == [one.codes for one in kept]:
            for panel, one in zip(self.panels, kept, strict=True):
                panel.show_kept(one)
            return
        for panel in self.panels:
            self._row.removeWidget(panel)
            panel.hide()
            panel.deleteLater()
        self.panels = []
        for number, one in enumerate(kept):
            panel = ComparePanel(self._session, self._swatches, self._outlook, number, one)
            self._row.addWidget(panel, 1)
            self.panels.append(panel)
        # One scale for all: the widest border decides how much room each picture leaves.
        widest = max((panel.border.border_mm() for panel in self.panels), default=0.0)
        for panel in self.panels:
            panel.border.least_border_mm = widest
        self.level()


class ComparePanel(QWidget):
    """One look with its words."""

    def __init__(
        self,
        session: Session,
        swatches: SwatchBook,
        outlook: Outlook,
        number: int,
        kept: Kept,
    ) -> None:
        super().__init__()
        self._session = session
        self._number = number
        self.kept = kept
        self.canvas = Canvas(session, outlook)
        self.canvas.setMinimumSize(80, 80)
        self.canvas.setAccessibleName(self.tr("The picture with ") + kept.title)
        self.border = BorderLayer(session, swatches, codes=lambda: self.kept.codes)
        self.canvas.add_layer(self.border)
        self.told = words(size="small", quiet=True, wrap=True)
        self.title = words(f"{number + 1}  {kept.title}", strong=True, wrap=True)
        self.title.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.note = QLineEdit(kept.note)
        self.note.setProperty("rank", "quiet")
        self.note.setPlaceholderText(self.tr("Note"))
        self.note.setAccessibleName(self.tr("Note on ") + kept.title)
        self.note.editingFinished.connect(self._take_note)
        self._lay_out()
        session.ranked_changed.connect(self._tell)
        self._tell()

    def show_kept(self, kept: Kept) -> None:
        """Show the same look with another note."""
        self.kept = kept
        if self.note.text() != kept.note:
            self.note.setText(kept.note)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        below = QVBoxLayout()
        below.setContentsMargins(MARGIN, GAP, MARGIN, GAP)
        below.setSpacing(4)
        below.addWidget(self.title)
        below.addWidget(self.told)
        below.addWidget(self.note)
        self.action_row = self._make_actions()
        below.addWidget(self.action_row)
        column.addLayout(below)

    def _make_actions(self) -> QWidget:
        actions = QWidget()
        row = QHBoxLayout(actions)
        row.setContentsMargins(-8, 0, 0, 0)
        row.setSpacing(0)
        self.buttons: dict[str, IconButton] = {}
        for name, icon, told in (
            ("lay", "lay", self.tr("Lay this one round the picture")),
            ("off", "close", self.tr("Take it off the rail")),
            ("away", "away", self.tr("Send it away")),
        ):
            button = IconButton(icon, f"{told}: {self.kept.title}")
            button.clicked.connect(lambda _on=False, name=name: self._do(name))
            self.buttons[name] = button
            row.addWidget(button)
        row.addStretch(1)
        return actions

    def _do(self, name: str) -> None:
        if name == "lay" and self._session.desk.laid != self.kept.codes:
            lay_round(self._session, self.kept.codes)
        elif name == "off":
            let_go(self._session, self._number)
        elif name == "away":
            codes = self.kept.codes
            let_go(self._session, self._number)
            for code in codes:
                send_away(self._session, code)

    def _take_note(self) -> None:
        kept = self._session.desk.kept
        text = self.note.text().strip()
        if self._number < len(kept) and kept[self._number].note != text:
            noted = replace(kept[self._number], note=text)
            others = (*kept[: self._number], noted, *kept[self._number + 1 :])
            self._session.edit(f"Note on {noted.title}", kept=others)

    def _tell(self) -> None:
        lines = []
        ranked = self._session.ranked_of(self.kept.codes[0])
        if ranked is not None:
            lines.append(_VERDICT_WORDS[ranked.verdict])
        first = self._session.desk.kept[0] if self._session.desk.kept else self.kept
        rack = self._session.catalogue
        here, there = self.kept.codes[0], first.codes[0]
        if here != there and here in rack and there in rack:
            lines.append(difference_words(rack[here], rack[there]))
        self.told.setText("\n".join(lines))
