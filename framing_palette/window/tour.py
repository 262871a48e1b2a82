"""The first-run tour: five short cards, each beside the part of the window that it is about."""

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRect, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

_WIDTH, _AWAY = 320, 16


@dataclass(frozen=True, slots=True)
class Card:
    """One card: what it says, the step it is shown in, and the part it stands beside."""

    title: str
    told: str
    step: str
    part: str


CARDS = (
    Card(
        QT_TRANSLATE_NOOP("Tour", "A job runs from top to bottom"),
        QT_TRANSLATE_NOOP(
            "Tour",
            "Six stops, from the photograph to the agreed paper. Go to any of them at any time; a "
            "tick says what is done.",
        ),
        "read",
        "path",
    ),
    Card(
        QT_TRANSLATE_NOOP("Tour", "Say where the eye should rest"),
        QT_TRANSLATE_NOOP(
            "Tour",
            "Draw it on the picture with one of the tools below. Everything on the shelf is judged "
            "by it. Until you do, the program guesses and says so.",
        ),
        "read",
        "shelf",
    ),
    Card(
        QT_TRANSLATE_NOOP("Tour", "The rack, best first"),
        QT_TRANSLATE_NOOP(
            "Tour",
            "Each sample comes with a reason that you can say aloud. The verdict is a measurement, "
            "not a taste: overrule it whenever you like.",
        ),
        "choose",
        "shelf",
    ),
    Card(
        QT_TRANSLATE_NOOP("Tour", "Slide a sample over the picture"),
        QT_TRANSLATE_NOOP(
            "Tour",
            "Drag it from the shelf, or press S. It lies there at true scale, and a tag says in a "
            "word what it does where it lies. Enter lays it round the picture.",
        ),
        "choose",
        "stage",
    ),
    Card(
        QT_TRANSLATE_NOOP("Tour", "Keep what is liked"),
        QT_TRANSLATE_NOOP(
            "Tour",
            "Up to four rest on the rail through all steps, side by side when you wish. The screen "
            "at the lower left opens the client's view, without numbers.",
        ),
        "choose",
        "rail",
    ),
)


class Tour(QWidget):
    """Shows one card after another; it can be left at any of them."""

    asked_for_step = Signal(str)
    ended = Signal()

    def __init__(self, window: QWidget, parts: dict[str, QWidget]) -> None:
        super().__init__(window)
        self._window = window
        self._parts = parts
        self.number = -1
        self._title = words(strong=True, wrap=True)
        self._told = words(size="small", wrap=True)
        self._count = words(size="small", quiet=True)
        self.next_button = push_button(self.tr("Next"), rank="first")
        self.leave_button = push_button(self.tr("Leave the tour"), rank="quiet")
        self._lay_out()
        self.setFixedWidth(_WIDTH)
        self.hide()

    def start(self) -> None:
        """Show the first card."""
        self._show(0)

    def go_on(self) -> None:
        """Show the next card, or end after the last."""
        if self.number + 1 < len(CARDS):
            self._show(self.number + 1)
        else:
            self.leave()

    def leave(self) -> None:
        """Put the cards away."""
        self.number = -1
        self.hide()
        self.ended.emit()

    def place(self) -> None:
        """Stand beside the part that the card is about, inside the window."""
        if self.number < 0:
            return
        part = self._parts[CARDS[self.number].part]
        around = QRect(part.mapTo(self._window, QPoint(0, 0)), part.size())
        self.adjustSize()
        left, top = _beside(around, self.width(), self.height(), self._window.width())
        right = self._window.width() - self.width() - _AWAY
        bottom = self._window.height() - self.height() - _AWAY
        self.move(max(_AWAY, min(left, right)), max(_AWAY, min(top, bottom)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go on with Enter and leave with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the card."""
        painter = QPainter(self)
        palette = self.palette()
        painter.fillRect(self.rect(), palette.color(QPalette.ColorRole.Base))
        painter.setPen(QPen(palette.color(QPalette.ColorRole.WindowText), 2))
        painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    def _show(self, number: int) -> None:
        self.number = number
        card = CARDS[number]
        self.asked_for_step.emit(card.step)
        self._title.setText(self.tr(card.title))
        self._told.setText(self.tr(card.told))
        self._count.setText(f"{number + 1} / {len(CARDS)}")
        is_last = number + 1 == len(CARDS)
        text = self.tr("To work") if is_last else self.tr("Next")
        self.next_button.setText(text)
        self.next_button.setAccessibleName(text)
        self.setAccessibleName(f"{self.tr(card.title)}. {self.tr(card.told)}")
        self.leave_button.setVisible(not is_last)
        self.show()
        self.place()
        self.raise_()
        self.next_button.setFocus(Qt.FocusReason.OtherFocusReason)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, WIDE_MARGIN, WIDE_MARGIN, MARGIN)
        column.setSpacing(GAP)
        column.addWidget(self._title)
        column.addWidget(self._told)
        row = QHBoxLayout()
        row.addWidget(self._count)
        row.addStretch(1)
        row.addWidget(self.leave_button)
        row.addWidget(self.next_button)
        column.addLayout(row)
        self.next_button.clicked.connect(self.go_on)
        self.leave_button.clicked.connect(self.leave)


def _beside(around: QRect, width: int, height: int, window_width: int) -> tuple[int, int]:
    """Return where a card stands beside a part: right of it, or left, or above it."""
    if around.right() + _AWAY + width <= window_width and around.width() < window_width // 2:
        return around.right() + _AWAY, around.top() + _AWAY * 2
    if around.left() - _AWAY - width >= 0 and around.width() < window_width // 2:
        return around.left() - _AWAY - width, around.top() + _AWAY * 2
    if around.height() > window_width // 4:
        return around.left() + _AWAY, around.top() + _AWAY
    return around.left() + _AWAY, around.top() - _AWAY - height
