"""Side by side: what is kept, in linked views with their differences in words."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.compare_panel import ComparePanel
from framing_palette.window.controls import IconButton, rule, words
from framing_palette.window.look_view import even_out, level_scales, number_key
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import MARGIN, WIDE_MARGIN

_LEAST_FOR_WORDS, _LEAST_FOR_ACTIONS = 420, 160


class CompareBoard(QWidget):
    """Two to four looks with the same zoom and place; each can be preferred, noted, or rejected.

    Blinking shows one of two in the same place of the board, so that the eye sees what changes.
    """

    closed = Signal()

    def __init__(self, session: Session, swatches: SwatchBook, outlook: Outlook) -> None:
        super().__init__()
        self._session = session
        self._swatches = swatches
        self._outlook = outlook
        self._pair = (0, 1)
        self.panels: list[ComparePanel] = []
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.tr("Side by side"))
        self.title = words(self.tr("Side by side"), strong=True)
        self.blink = IconButton("blink", self.tr("Blink between two"), keys=self.tr("Space"))
        self.blink.setCheckable(True)
        self.turn = IconButton("turn", self.tr("Show the other one"), keys=self.tr("Space"))
        self._row = QHBoxLayout()
        self._row.setSpacing(1)
        self._lay_out()
        self.blink.toggled.connect(self._show_blinking)
        self.turn.clicked.connect(self.blink_over)
        session.kept_changed.connect(self._on_kept)
        self._on_kept()

    @property
    def shown(self) -> int:
        """Which of the looks is seen while two blink."""
        return self._pair[0]

    def blink_over(self) -> None:
        """Show the other one of the two; begin to blink where all are shown."""
        if not self.blink.isChecked():
            self.blink.setChecked(True)
            return
        self._pair = self._pair[::-1]
        self._show_blinking()

    def show_one(self, number: int) -> None:
        """Show one of the looks, and blink between it and the one before."""
        if number != self._pair[0] and number < len(self.panels):
            self._pair = (number, self._pair[0])
            self._show_blinking()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give all words the same room, so that the pictures stand level."""
        super().resizeEvent(event)
        self.level()

    def showEvent(self, event: QShowEvent) -> None:
        """Take the keys."""
        super().showEvent(event)
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def event(self, event: QEvent) -> bool:
        """Take the number keys while two blink, before the window lays what rests on the rail."""
        is_asked = event.type() is QEvent.Type.ShortcutOverride
        if is_asked and isinstance(event, QKeyEvent) and self._place_of(event) is not None:
            event.accept()
            return True
        return super().event(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let a picture's keys be the board's: the space bar blinks between the kept looks."""
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            return self._took(event)
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Blink with the space bar, choose with the numbers, leave with Escape."""
        if not self._took(event):
            super().keyPressEvent(event)

    def _took(self, event: QKeyEvent) -> bool:
        place = self._place_of(event)
        if event.key() == Qt.Key.Key_Space:
            self.blink_over()
        elif place is not None:
            self.show_one(place)
        elif event.key() == Qt.Key.Key_Escape and self.blink.isChecked():
            self.blink.setChecked(False)
        elif event.key() == Qt.Key.Key_Escape:
            self.closed.emit()
        else:
            return False
        return True

    def _place_of(self, event: QKeyEvent) -> int | None:
        if not self.blink.isChecked():
            return None
        return number_key(event.key(), len(self.panels))

    def level(self) -> None:
        """Make the words of all panels as high as the longest need."""
        seen = [panel for panel in self.panels if not panel.isHidden()]
        if not seen:
            return
        even_out(self._row, self.width(), len(seen))
        has_room = self.height() >= _LEAST_FOR_WORDS
        width = self.width() // len(seen) - 2 * MARGIN
        for panel in seen:
            panel.told.setVisible(has_room)
            panel.note.setVisible(has_room)
            panel.action_row.setVisible(width >= _LEAST_FOR_ACTIONS)
        # While two blink, both get the room of either: the picture must not jump.
        all_alike = self.panels if self.blink.isChecked() else seen
        for names in ("title", "told"):
            labels = [getattr(panel, names) for panel in all_alike]
            height = max(0, *(label.heightForWidth(max(width, 40)) for label in labels))
            for label in labels:
                label.setFixedHeight(height)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Window))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 4, 4, 4)
        head.setSpacing(0)
        head.addWidget(self.title, 1)
        close = IconButton("close", self.tr("Back to one picture"), keys="Esc")
        close.clicked.connect(self.closed)
        for button in (self.turn, self.blink, close):
            head.addWidget(button)
        column.addLayout(head)
        column.addWidget(rule())
        column.addLayout(self._row, 1)

    def _show_blinking(self) -> None:
        blinks = self.blink.isChecked() and len(self.panels) > 1
        if max(self._pair) >= len(self.panels):
            self._pair = (0, 1)
        for number, panel in enumerate(self.panels):
            panel.setVisible(not blinks or number == self._pair[0])
            panel.compare_with(self._pair[1] if blinks else 0)
        self.turn.setVisible(blinks)
        said = self.tr("Blinking: {first} and {second}") if blinks else self.tr("Side by side")
        first, second = (number + 1 for number in sorted(self._pair))
        self.title.setText(said.format(first=first, second=second))
        self.level()

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
            panel.canvas.installEventFilter(self)
            self._row.addWidget(panel, 1)
            self.panels.append(panel)
        level_scales([panel.view for panel in self.panels])
        if len(kept) < 2:
            self.blink.setChecked(False)
        self._show_blinking()
