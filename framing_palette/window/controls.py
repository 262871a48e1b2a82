"""The small controls that every screen is made of: words, rules, icon buttons, chips."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeySequence, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QStackedWidget,
    QWidget,
)

from framing_palette.window.icons import draw_icon
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import HIT, SMALL

ROLE = QPalette.ColorRole


def words(
    text: str = "",
    *,
    size: str = "body",
    quiet: bool = False,
    strong: bool = False,
    wrap: bool = False,
) -> QLabel:
    """Return a label in one of the sizes of type."""
    label = QLabel(text)
    label.setProperty("textSize", size)
    label.setProperty("tone", "quiet" if quiet else "plain")
    label.setProperty("weight", "strong" if strong else "plain")
    label.setWordWrap(wrap)
    label.setTextFormat(Qt.TextFormat.PlainText)
    if wrap:
        label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    return label


def rule(*, down: bool = False) -> QFrame:
    """Return a hairline."""
    line = QFrame()
    line.setObjectName("ruleDown" if down else "ruleAcross")
    return line


def show_part(part: QWidget, *, shown: bool) -> None:
    """Show or hide a part of a page; one that lies nowhere yet appears with its page.

    Shown at once it would be a window of its own for a moment and take the keyboard with it.
    """
    if part.parentWidget() is not None or not shown:
        part.setVisible(shown)


def push_button(text: str, *, rank: str = "second", told: str = "") -> QPushButton:
    """Return a button with a word on it; ``rank`` is first, second or quiet."""
    button = QPushButton(text)
    button.setProperty("rank", rank)
    button.setAccessibleName(told or text)
    button.setCursor(Qt.CursorShape.PointingHandCursor)
    return button


def mixed(first: QColor, second: QColor, share: float) -> QColor:
    """Return a grey between two greys of the theme."""
    level = round(first.red() * (1 - share) + second.red() * share)
    return QColor(level, level, level)


def key_words(keys: str) -> str:
    """Return keys as they are called on this computer, in the language of the window."""
    return QKeySequence(keys).toString(QKeySequence.SequenceFormat.NativeText)


class IconButton(QAbstractButton):
    """A square button with a line icon; a chosen one is filled and keeps its shape."""

    def __init__(self, icon: str, told: str, *, keys: str = "", side: int = HIT) -> None:
        super().__init__()
        self._icon = icon
        self._side = side
        self.setAccessibleName(told)
        self.setToolTip(f"{told}  ({key_words(keys)})" if keys else told)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def set_icon(self, icon: str) -> None:
        """Show another icon."""
        self._icon = icon
        self.update()

    def sizeHint(self) -> QSize:
        """Return the hit area."""
        return QSize(self._side, self._side)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw ground and icon."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        box = QRectF(self.rect()).adjusted(2, 2, -2, -2)
        ink = palette.color(ROLE.WindowText)
        if self.isChecked():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(palette.color(ROLE.Highlight))
            painter.drawRoundedRect(box, 4, 4)
            ink = palette.color(ROLE.HighlightedText)
        elif self.isEnabled() and (self.isDown() or self.underMouse()):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(palette.color(ROLE.Midlight if self.isDown() else ROLE.Light))
            painter.drawRoundedRect(box, 4, 4)
        side = 20.0
        target = QRectF((self.width() - side) / 2, (self.height() - side) / 2, side, side)
        draw_icon(painter, self._icon, target, ink)


class Chip(QAbstractButton):
    """A word that is switched on or off; on is filled and carries a tick."""

    def __init__(self, text: str, *, told: str = "") -> None:
        super().__init__()
        self.setText(text)
        self.setCheckable(True)
        self.setAccessibleName(told or text)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFont(type_font(SMALL))
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        """Leave room for word and edge; the hit area is the full 40 pixels high."""
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + 18, HIT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the pill and its word."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        pill = QRectF(self.rect()).adjusted(0.5, 6.5, -0.5, -6.5)
        chosen = self.isChecked()
        ground = ROLE.Highlight if chosen else ROLE.Light if self.underMouse() else ROLE.Window
        painter.setBrush(palette.color(ground))
        painter.setPen(QPen(palette.color(ROLE.Highlight if chosen else ROLE.Dark), 1))
        painter.drawRoundedRect(pill, 4, 4)
        painter.setPen(palette.color(ROLE.HighlightedText if chosen else ROLE.WindowText))
        painter.setFont(self.font())
        painter.drawText(pill, Qt.AlignmentFlag.AlignCenter, self.text())


class ElidedWords(QWidget):
    """One line that shortens itself at the end and says the whole on hover and to readers."""

    clicked = Signal()

    def __init__(self, *, size: int, strong: bool = False, quiet: bool = False) -> None:
        super().__init__()
        self._text = ""
        self._quiet = quiet
        self.setFont(type_font(size, strong=strong))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def text(self) -> str:
        """Return the whole text."""
        return self._text

    def set_text(self, text: str) -> None:
        """Show another text."""
        self._text = text
        self.setAccessibleName(text)
        self.setToolTip(text)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for the whole text's room."""
        metrics = QFontMetrics(self.font())
        return QSize(metrics.horizontalAdvance(self._text) + 2, metrics.height())

    def minimumSizeHint(self) -> QSize:
        """Be content with a few letters."""
        metrics = QFontMetrics(self.font())
        return QSize(min(self.sizeHint().width(), metrics.averageCharWidth() * 8), metrics.height())

    def is_shortened(self) -> bool:
        """Tell whether the text does not fit."""
        return QFontMetrics(self.font()).horizontalAdvance(self._text) > self.width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw as much as fits."""
        painter = QPainter(self)
        painter.setFont(self.font())
        tone = ROLE.PlaceholderText if self._quiet else ROLE.WindowText
        painter.setPen(self.palette().color(tone))
        metrics = QFontMetrics(self.font())
        shown = metrics.elidedText(self._text, Qt.TextElideMode.ElideRight, self.width())
        flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(self.rect(), flags, shown)


class Pages(QStackedWidget):
    """A stack whose hidden pages ask for no room."""

    def minimumSizeHint(self) -> QSize:
        """Be content with very little, so that the window fits a scaled-up small screen."""
        return QSize(200, 120)

    def sizeHint(self) -> QSize:
        """Ask for what the page on top asks for."""
        page = self.currentWidget()
        return page.sizeHint() if page is not None else self.minimumSizeHint()


class ToolBar(QWidget):
    """A row of icon buttons on a plate of its own, laid over the stage."""

    def __init__(self) -> None:
        super().__init__()
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)

    def add(self, control: QWidget) -> None:
        """Put a control at the end of the row."""
        self._row.addWidget(control)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the plate."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.palette().color(ROLE.Window))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
