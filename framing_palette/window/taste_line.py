"""The taste line: says on the shortlist that taste orders it, and opens the taste card."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from framing_palette.window.icons import draw_icon
from framing_palette.window.session import Session
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import GAP, HIT, SMALL

ROLE = QPalette.ColorRole


class TasteLine(QAbstractButton):
    """One line under the kinds; away while taste is off."""

    def __init__(self, session: Session, book: TasteBook) -> None:
        super().__init__()
        self._session = session
        self._book = book
        self.setFont(type_font(SMALL))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        for signal in (book.changed, session.rule_changed, session.preferences_changed):
            signal.connect(self._tell)
        self._tell()

    def sizeHint(self) -> QSize:
        """Take one line with a full hit area."""
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + 32, HIT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the scales and the words."""
        painter = QPainter(self)
        palette = self.palette()
        if self.underMouse():
            painter.fillRect(self.rect(), palette.color(ROLE.Light))
        ink = palette.color(ROLE.WindowText)
        draw_icon(painter, "taste", QRectF(0, self.height() / 2 - 9, 18, 18), ink)
        painter.setFont(self.font())
        painter.setPen(ink)
        room = self.rect().adjusted(18 + GAP, 0, 0, 0)
        metrics = QFontMetrics(self.font())
        text = metrics.elidedText(self.text(), Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)

    def _tell(self) -> None:
        learned = self._book.taste.learned
        if self._book.is_used and learned is not None:
            said = self.tr("By this shop's taste, from {count} choices").format(
                count=learned.rests_on
            )
        else:
            said = self.tr("Taste is on; the house rule still decides")
        self.setText(said)
        self.setAccessibleName(said)
        self.setToolTip(self.tr("{said}. Open the taste card  (T)").format(said=said))
        self.setVisible(self._session.preferences.taste_on)
