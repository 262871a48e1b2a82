"""The measures behind the reasons: quiet until asked for, each with two sentences on what it is."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.window.controls import rule, words
from framing_palette.window.explanations import Told, told_measures
from framing_palette.window.forms import scrolled
from framing_palette.window.icons import draw_icon
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL, WIDE_MARGIN

_ROW_HEIGHT, _LEAST_HEIGHT, _PANEL_HEIGHT = 40, 88, 248
ROLE = QPalette.ColorRole


class MeasureRow(QAbstractButton):
    """A name and a value; pressed, it says what the measure is."""

    def __init__(self, told: Told) -> None:
        super().__init__()
        self.told = told
        self.setCheckable(True)
        self.setAccessibleName(f"{told.name}: {told.value}")
        self.setAccessibleDescription(told.explanation)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        """Take one line."""
        return QSize(200, _ROW_HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw name, value and the sign that there is more."""
        painter = QPainter(self)
        palette = self.palette()
        if self.underMouse():
            painter.fillRect(self.rect(), palette.color(ROLE.Light))
        line = QRectF(self.rect()).adjusted(WIDE_MARGIN, 0, -WIDE_MARGIN - 20, 0)
        font = type_font(SMALL)
        painter.setFont(font)
        painter.setPen(palette.color(ROLE.WindowText))
        left = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        right = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
        painter.drawText(line, left, self.told.name)
        room = int(line.width()) - QFontMetrics(font).horizontalAdvance(self.told.name) - 12
        value = QFontMetrics(font).elidedText(self.told.value, Qt.TextElideMode.ElideRight, room)
        painter.setPen(palette.color(ROLE.PlaceholderText))
        painter.drawText(line, right, value)
        box = QRectF(self.width() - WIDE_MARGIN - 14, self.height() / 2 - 7, 14, 14)
        icon = "up" if self.isChecked() else "down"
        draw_icon(painter, icon, box, palette.color(ROLE.PlaceholderText))


class MeasuresPanel(QWidget):
    """The measures of the chosen sample."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.rows: list[MeasureRow] = []
        inside = QWidget()
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(0, 4, 0, 4)
        self._column.setSpacing(0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(rule())
        column.addWidget(scrolled(inside))
        self.setMinimumHeight(_LEAST_HEIGHT)
        self.setMaximumHeight(_PANEL_HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        for signal in (session.chosen_code_changed, session.ranked_changed):
            signal.connect(self.rebuild)
        self.hide()

    def toggle(self) -> None:
        """Bring the panel, or put it away."""
        self.setVisible(self.isHidden())
        self.rebuild()

    def rebuild(self) -> None:
        """Show the measures of the sample that is chosen now."""
        if self.isHidden():
            return
        while (item := self._column.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.rows = []
        ranked = self._session.ranked_of(self._session.chosen_code)
        for told in told_measures(ranked.measures) if ranked else ():
            self._add(told)
        if ranked is None:
            hint = words(self.tr("Choose a sample to see its measures."), size="small", quiet=True)
            hint.setContentsMargins(WIDE_MARGIN, 8, WIDE_MARGIN, 8)
            self._column.addWidget(hint)
        self._column.addStretch(1)

    def _add(self, told: Told) -> None:
        row = MeasureRow(told)
        more = words(told.explanation, size="small", quiet=True, wrap=True)
        more.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 8)
        more.hide()
        row.toggled.connect(more.setVisible)
        self._column.addWidget(row)
        self._column.addWidget(more)
        self.rows.append(row)
