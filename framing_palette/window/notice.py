"""A line at the foot of the stage that says what went wrong and what to do."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QWidget

from framing_palette.window.controls import IconButton, words
from framing_palette.window.icons import draw_icon
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN


class NoticeBar(QWidget):
    """Shows the session's notice until it is put away."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.setMinimumHeight(48)
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN + 20 + MARGIN, GAP, GAP, GAP)
        row.setSpacing(GAP)
        self._words = words(size="small", wrap=True)
        self._words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        close = IconButton("close", self.tr("Put this notice away"), side=32)
        close.clicked.connect(lambda: session.assign("notice", ""))
        row.addWidget(self._words, 1)
        row.addWidget(close, 0, Qt.AlignmentFlag.AlignTop)
        session.notice_changed.connect(self._tell)
        self._tell()

    def text(self) -> str:
        """Return what is said."""
        return self._words.text()

    def _tell(self) -> None:
        said = in_language(self._session.notice)
        self._words.setText(said)
        self.setAccessibleName(said)
        self.setVisible(bool(self._session.notice))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground with a warning mark."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Base))
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        draw_icon(painter, "warning", QRectF(MARGIN, self.height() / 2 - 10, 20, 20), ink)
