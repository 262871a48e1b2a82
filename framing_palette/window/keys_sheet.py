"""The sheet of keys: everything that can be done without the pointer, on one page."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import IconButton, push_button, words
from framing_palette.window.forms import scrolled
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

KEYS: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        QT_TRANSLATE_NOOP("KeysSheet", "Everywhere"),
        (
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+1 … 6"),
                QT_TRANSLATE_NOOP("KeysSheet", "go to a step of the job"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+Z, Ctrl+Shift+Z"),
                QT_TRANSLATE_NOOP("KeysSheet", "undo, redo"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+O"),
                QT_TRANSLATE_NOOP("KeysSheet", "open a photograph or a job"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+V"),
                QT_TRANSLATE_NOOP("KeysSheet", "paste a picture"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+S"),
                QT_TRANSLATE_NOOP("KeysSheet", "put the job into a file"),
            ),
            ("/", QT_TRANSLATE_NOOP("KeysSheet", "search the samples")),
            ("1 … 4", QT_TRANSLATE_NOOP("KeysSheet", "lay round what rests on the rail")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Ctrl+K"),
                QT_TRANSLATE_NOOP("KeysSheet", "keep the design in hand, or what is laid round"),
            ),
            ("F6, F7", QT_TRANSLATE_NOOP("KeysSheet", "the rack, the job book, and back")),
            ("F8, F9", QT_TRANSLATE_NOOP("KeysSheet", "put rail or shelf away, or bring it back")),
            ("F11", QT_TRANSLATE_NOOP("KeysSheet", "the client's view")),
            ("F1", QT_TRANSLATE_NOOP("KeysSheet", "this sheet")),
            ("Esc", QT_TRANSLATE_NOOP("KeysSheet", "let go of what is in hand")),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "The picture"),
        (
            ("+, -, 0", QT_TRANSLATE_NOOP("KeysSheet", "closer, farther, all of it")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Space"),
                QT_TRANSLATE_NOOP("KeysSheet", "blink between the two last looks"),
            ),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "A sample on the shelf"),
        (
            ("↑, ↓", QT_TRANSLATE_NOOP("KeysSheet", "the one before, the next one")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Enter"),
                QT_TRANSLATE_NOOP("KeysSheet", "lay it round the picture"),
            ),
            ("S", QT_TRANSLATE_NOOP("KeysSheet", "slide it over the picture")),
            ("K", QT_TRANSLATE_NOOP("KeysSheet", "keep it on the rail")),
            ("X", QT_TRANSLATE_NOOP("KeysSheet", "send it away")),
            ("I", QT_TRANSLATE_NOOP("KeysSheet", "the measures behind the reasons")),
            (
                "Q, T",
                QT_TRANSLATE_NOOP("KeysSheet", "which of two for this picture, the taste card"),
            ),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "Side by side, and which of two"),
        (
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Space"),
                QT_TRANSLATE_NOOP("KeysSheet", "blink between two of the looks"),
            ),
            ("1 … 4", QT_TRANSLATE_NOOP("KeysSheet", "while two blink: the look to show")),
            (
                "1, 2, N",
                QT_TRANSLATE_NOOP("KeysSheet", "which of two: the first, the second, neither"),
            ),
            ("Esc", QT_TRANSLATE_NOOP("KeysSheet", "back to all, back to one picture")),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "A strip on the picture"),
        (
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Arrows"),
                QT_TRANSLATE_NOOP("KeysSheet", "1 mm; with Shift 10 mm"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "R, Shift+R"),
                QT_TRANSLATE_NOOP("KeysSheet", "turn by 15 degrees, by a quarter"),
            ),
            ("C", QT_TRANSLATE_NOOP("KeysSheet", "bend into a corner, or straighten")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "[ and ]"),
                QT_TRANSLATE_NOOP("KeysSheet", "shorter, longer"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Enter, K, X"),
                QT_TRANSLATE_NOOP("KeysSheet", "lay round, keep, send away"),
            ),
            ("N", QT_TRANSLATE_NOOP("KeysSheet", "the next strip")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Delete"),
                QT_TRANSLATE_NOOP("KeysSheet", "take it up"),
            ),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "Drawing regions"),
        (
            (
                "V, B, E, L, P, G",
                QT_TRANSLATE_NOOP("KeysSheet", "hand, rectangle, ellipse, lasso, polygon, grow"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Shift, Alt"),
                QT_TRANSLATE_NOOP("KeysSheet", "while drawing: add to the region, cut from it"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Enter, Esc"),
                QT_TRANSLATE_NOOP("KeysSheet", "close a polygon, drop it"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Arrows"),
                QT_TRANSLATE_NOOP("KeysSheet", "push the chosen region"),
            ),
            (QT_TRANSLATE_NOOP("KeysSheet", "Delete"), QT_TRANSLATE_NOOP("KeysSheet", "delete it")),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "The section in Build"),
        (
            ("↑, ↓", QT_TRANSLATE_NOOP("KeysSheet", "the part farther out, the part farther in")),
            ("Alt+↑, Alt+↓", QT_TRANSLATE_NOOP("KeysSheet", "move the part in the stack")),
            ("→, ←", QT_TRANSLATE_NOOP("KeysSheet", "show more of it, show less")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Delete"),
                QT_TRANSLATE_NOOP("KeysSheet", "take the part out"),
            ),
        ),
    ),
    (
        QT_TRANSLATE_NOOP("KeysSheet", "The rack"),
        (
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Arrows"),
                QT_TRANSLATE_NOOP("KeysSheet", "the nearest sample in a direction"),
            ),
            (
                "N, P",
                QT_TRANSLATE_NOOP("KeysSheet", "the next colour of the picture, the one before"),
            ),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "L, Space"),
                QT_TRANSLATE_NOOP("KeysSheet", "a lasso, or one sample, to lay side by side"),
            ),
            ("+, -, 0", QT_TRANSLATE_NOOP("KeysSheet", "closer, farther, all that is wanted")),
            (
                QT_TRANSLATE_NOOP("KeysSheet", "Page up, down"),
                QT_TRANSLATE_NOOP("KeysSheet", "another slice of lightness, on the lightness bar"),
            ),
            ("Esc", QT_TRANSLATE_NOOP("KeysSheet", "let go of what is looked near")),
        ),
    ),
)


_NARROW = 760


class KeysSheet(QWidget):
    """Lies over stage and shelf until it is put away; the window gives it its place."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("Keys"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._lay_out()
        self.hide()

    def toggle(self) -> None:
        """Bring the sheet, or put it away."""
        self.setVisible(self.isHidden())
        if self.isVisible():
            self.raise_()
            self.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put the sheet away with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Set the two columns one below the other where the window is narrow."""
        super().resizeEvent(event)
        way = QBoxLayout.Direction
        is_narrow = self.width() < _NARROW
        self._columns.setDirection(way.TopToBottom if is_narrow else way.LeftToRight)

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        """Keep presses from what lies below."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Window))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(SECTION, WIDE_MARGIN, WIDE_MARGIN, 0)
        column.setSpacing(MARGIN)
        head = QHBoxLayout()
        head.addWidget(words(self.tr("Keys"), size="heading"))
        head.addStretch(1)
        self.tour = push_button(self.tr("The tour again"), rank="quiet")
        head.addWidget(self.tour)
        close = IconButton("close", self.tr("Put the sheet away"), keys="Esc")
        close.clicked.connect(self.hide)
        head.addWidget(close)
        column.addLayout(head)
        inside = QWidget()
        columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, inside)
        self._columns = columns
        columns.setContentsMargins(0, 0, 0, SECTION)
        columns.setSpacing(SECTION * 2)
        for sections in (KEYS[:2], KEYS[2:]):
            side = QVBoxLayout()
            side.setSpacing(GAP)
            for title, rows in sections:
                side.addWidget(words(self.tr(title), strong=True))
                side.addLayout(self._table(rows))
                side.addSpacing(MARGIN)
            side.addStretch(1)
            columns.addLayout(side, 1)
        column.addWidget(scrolled(inside), 1)

    def _table(self, rows: tuple[tuple[str, str], ...]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(WIDE_MARGIN)
        grid.setVerticalSpacing(4)
        grid.setColumnMinimumWidth(0, 152)
        grid.setColumnStretch(1, 1)
        for number, (keys, told) in enumerate(rows):
            grid.addWidget(words(self.tr(keys), size="small", strong=True), number, 0)
            grid.addWidget(words(self.tr(told), size="small", quiet=True, wrap=True), number, 1)
        return grid
