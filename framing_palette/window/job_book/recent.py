"""The jobs worked on last, to be opened while the desk is empty."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.jobs import JobLine
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.controls import show_part, words
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, GAP, MARGIN, SMALL

ROLE = QPalette.ColorRole
_WIDTH, _HEIGHT = 400, 48


class RecentJob(QAbstractButton):
    """One job: its title, and below it whose it is and where it stands."""

    def __init__(self, line: JobLine) -> None:
        super().__init__()
        self.line = line
        told = [line.title, line.client, in_language(STATUS_WORDS[line.status])]
        self._facts = "   ·   ".join(text for text in told[1:] if text)
        self.setText(line.title)
        self.setAccessibleName(
            self.tr("Open {job}").format(job=". ".join(text for text in told if text))
        )
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        """Return room for two lines."""
        return QSize(_WIDTH, _HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """Be content with less width."""
        return QSize(160, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw ground and both lines."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        ground = ROLE.Midlight if self.isDown() else ROLE.Light if self.underMouse() else ROLE.Base
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(palette.color(ground))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        top = 5
        for font, role, text in (
            (type_font(BODY), ROLE.WindowText, self.text()),
            (type_font(SMALL), ROLE.PlaceholderText, self._facts),
        ):
            metrics = QFontMetrics(font)
            painter.setFont(font)
            painter.setPen(palette.color(role))
            room = self.width() - 2 * MARGIN
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room)
            painter.drawText(QRectF(MARGIN, top, room, metrics.height()), 0, shown)
            top += metrics.height() + 1


class RecentJobs(QWidget):
    """A few jobs in a column; nothing while there are none."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.buttons: list[RecentJob] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)
        self.title = words(self.tr("Worked on last"), size="small", quiet=True)
        self._column.addWidget(self.title)
        self.setMaximumWidth(_WIDTH)
        session.recent_changed.connect(self._follow)
        self._follow()

    def show_as_many_as_fit(self, height: int) -> None:
        """Show the first of them, as far as there is room."""
        rows = max(0, (height - self.title.sizeHint().height() - GAP) // (_HEIGHT + 4))
        for place, button in enumerate(self.buttons):
            button.setVisible(place < rows)
        self.title.setVisible(bool(self.buttons) and rows > 0)

    def _follow(self) -> None:
        for button in self.buttons:
            button.hide()
            button.deleteLater()
        self.buttons = []
        for line in self._session.recent:
            button = RecentJob(line)
            button.clicked.connect(
                lambda _on=False, number=line.number: self._session.job_asked.emit(number)
            )
            self._column.addWidget(button)
            self.buttons.append(button)
        show_part(self, shown=bool(self.buttons))
