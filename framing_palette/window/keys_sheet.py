"""The sheet of keys: everything that can be done without the pointer, on one page."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import IconButton, push_button, words
from framing_palette.window.forms import scrolled
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

KEYS: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        "Everywhere",
        (
            ("Ctrl+1 … 6", "go to a step of the job"),
            ("Ctrl+Z, Ctrl+Shift+Z", "undo, redo"),
            ("Ctrl+O", "open a photograph or a job"),
            ("Ctrl+V", "paste a picture"),
            ("Ctrl+S", "put the job into a file"),
            ("/", "search the samples"),
            ("1 … 4", "lay round what rests on the rail"),
            ("Ctrl+K", "keep the design in hand, or what is laid round"),
            ("F6, F7", "the rack, the job book, and back"),
            ("F8, F9", "put rail or shelf away, or bring it back"),
            ("F11", "the client's view"),
            ("F1", "this sheet"),
            ("Esc", "let go of what is in hand"),
        ),
    ),
    (
        "The picture",
        (
            ("+, -, 0", "closer, farther, all of it"),
            ("Space", "blink between the two last looks"),
        ),
    ),
    (
        "A sample on the shelf",
        (
            ("↑, ↓", "the one before, the next one"),
            ("Enter", "lay it round the picture"),
            ("S", "slide it over the picture"),
            ("K", "keep it on the rail"),
            ("X", "send it away"),
            ("I", "the measures behind the reasons"),
            ("Q, T", "which of two for this picture, the taste card"),
        ),
    ),
    (
        "Side by side, and which of two",
        (
            ("Space", "blink between two of the looks"),
            ("1 … 4", "while two blink: the look to show"),
            ("1, 2, N", "which of two: the first, the second, neither"),
            ("Esc", "back to all, back to one picture"),
        ),
    ),
    (
        "A strip on the picture",
        (
            ("Arrows", "1 mm; with Shift 10 mm"),
            ("R, Shift+R", "turn by 15 degrees, by a quarter"),
            ("C", "bend into a corner, or straighten"),
            ("[ and ]", "shorter, longer"),
            ("Enter, K, X", "lay round, keep, send away"),
            ("N", "the next strip"),
            ("Delete", "take it up"),
        ),
    ),
    (
        "Drawing regions",
        (
            ("V, B, E, L, P, G", "hand, rectangle, ellipse, lasso, polygon, grow"),
            ("Shift, Alt", "while drawing: add to the region, cut from it"),
            ("Enter, Esc", "close a polygon, drop it"),
            ("Arrows", "push the chosen region"),
            ("Delete", "delete it"),
        ),
    ),
    (
        "The rack",
        (
            ("Arrows", "the nearest sample in a direction"),
            ("N, P", "the next colour of the picture, the one before"),
            ("L, Space", "a lasso, or one sample, to lay side by side"),
            ("+, -, 0", "closer, farther, all that is wanted"),
            ("Page up, down", "another slice of lightness, on the lightness bar"),
            ("Esc", "let go of what is looked near"),
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
            grid.addWidget(words(keys, size="small", strong=True), number, 0)
            grid.addWidget(words(self.tr(told), size="small", quiet=True, wrap=True), number, 1)
        return grid
