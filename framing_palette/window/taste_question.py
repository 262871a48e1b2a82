"""The question: which of two samples for this picture? Pressed, keyed, or left undecided."""

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.catalogue import Sample
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.controls import IconButton, push_button, rule, words
from framing_palette.window.look_view import LookView, even_out, level_scales, number_key
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.taste_asking import Asking
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

_LEAST_FOR_WORDS, _LEAST_FOR_TEXTS = 420, 480
_SWATCH = QSize(72, 40)
_NEITHER = (Qt.Key.Key_N, Qt.Key.Key_3)


class QuestionBoard(QWidget):
    """Two linked views of the picture, one sample round each, and three answers.

    Verdicts and measures are left out: what the program thinks must not sway the answer.
    """

    closed = Signal()

    def __init__(
        self, session: Session, asking: Asking, swatches: SwatchBook, outlook: Outlook
    ) -> None:
        super().__init__()
        self._session = session
        self._asking = asking
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.tr("Which for this picture?"))
        self.views = [LookView(session, swatches, outlook, ()) for _side in range(2)]
        self.swatches = [SmallSwatch(swatches) for _side in range(2)]
        self.names = [words(strong=True, wrap=True) for _side in range(2)]
        self.choose = [push_button("", rank="first") for _side in range(2)]
        self.neither = push_button(self.tr("Neither"), told=self.tr("Prefer neither of the two"))
        self.neither.setToolTip(self.tr("Prefer neither; the pair is not asked about again  (N)"))
        self.told = words(size="small", quiet=True, wrap=True)
        self._pictures = QHBoxLayout()
        self._pictures.setSpacing(1)
        self._lay_out()
        for side, button in enumerate(self.choose):
            button.clicked.connect(lambda _on=False, side=side: asking.answer(side))
        self.neither.clicked.connect(lambda: asking.answer(None))
        asking.changed.connect(self._tell)
        self._tell()

    def showEvent(self, event: QShowEvent) -> None:
        """Take the keys."""
        super().showEvent(event)
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the explanation out where the board is low."""
        super().resizeEvent(event)
        self.told.setVisible(self.height() >= _LEAST_FOR_WORDS)
        even_out(self._pictures, self.width(), len(self.views))
        self._level()

    def event(self, event: QEvent) -> bool:
        """Take the number keys before the window lays what rests on the rail."""
        is_asked = event.type() is QEvent.Type.ShortcutOverride
        if is_asked and isinstance(event, QKeyEvent) and self._answer_of(event) is not None:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer with 1, 2 or N, and put the question away with Escape."""
        answer = self._answer_of(event)
        if event.key() == Qt.Key.Key_Escape:
            self.closed.emit()
        elif answer is not None:
            (*self.choose, self.neither)[answer].click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Window))

    def _answer_of(self, event: QKeyEvent) -> int | None:
        if event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            return None
        return 2 if event.key() in _NEITHER else number_key(event.key(), 2)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 4, 4, 4)
        head.addWidget(words(self.tr("Which for this picture?"), strong=True))
        head.addStretch(1)
        close = IconButton("close", self.tr("Back to one picture"), keys="Esc")
        close.clicked.connect(self.closed)
        head.addWidget(close)
        column.addLayout(head)
        column.addWidget(rule())
        for view, name in zip(self.views, self.names, strict=True):
            name.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
            name.setContentsMargins(MARGIN, GAP, MARGIN, 0)
            view.column.addWidget(name)
            self._pictures.addWidget(view, 1)
        column.addLayout(self._pictures, 1)
        column.addLayout(self._answers())
        self.told.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, MARGIN)
        self.told.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(self.told)

    def _answers(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, MARGIN)
        row.setSpacing(GAP)
        row.addStretch(1)
        parts = (self.swatches[0], self.choose[0], self.neither, self.choose[1], self.swatches[1])
        for part in parts:
            row.addWidget(part)
        row.addStretch(1)
        return row

    def _tell(self) -> None:
        pair = self._asking.question
        is_open = pair is not None and self._asking.is_open
        for button in (*self.choose, self.neither):
            button.setEnabled(is_open)
        if pair is None:
            return
        for side, code in enumerate(pair):
            sample = self._session.sample_of(code)
            name = sample.name
            self.swatches[side].show_sample(sample)
            self.views[side].show_look((code,), name)
            self._name(side, name)
        level_scales(self.views)
        self._level()
        said = self.tr(
            "Judge by the look alone. {count} answered on this picture. Answers are kept for this "
            "shop; nothing is learned from them until you ask for it."
        )
        self.told.setText(said.format(count=len(self._session.desk.answers)))

    def _name(self, side: int, name: str) -> None:
        self.names[side].setText(name)
        told = self.tr("Prefer {name}").format(name=name)
        self.choose[side].setAccessibleName(told)
        self.choose[side].setToolTip(f"{told}  ({side + 1})")

    def _level(self) -> None:
        """Give both names the same room, so that the pictures stand level."""
        width = max(40, self.width() // 2 - 2 * MARGIN)
        height = max(0, *(label.heightForWidth(width) for label in self.names))
        for label in self.names:
            label.setFixedHeight(height)
        is_wide = self.width() >= _LEAST_FOR_TEXTS
        for swatch in self.swatches:
            swatch.setVisible(is_wide)
        for side, button in enumerate(self.choose):
            text = self.tr("{number}   This one") if is_wide else "{number}"
            button.setText(text.format(number=side + 1))


class SmallSwatch(QWidget):
    """A piece of a sample at life size, beside its answer."""

    def __init__(self, swatches: SwatchBook) -> None:
        super().__init__()
        self._swatches = swatches
        self._sample: Sample | None = None
        self.setFixedSize(_SWATCH)
        swatches.arrived.connect(self.update)

    def show_sample(self, sample: Sample) -> None:
        """Show a piece of another sample."""
        self._sample = sample
        self.setAccessibleName(sample.name)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        if self._sample is not None:
            self._swatches.draw(QPainter(self), self.rect(), self._sample)
