"""The focus ring: a dark and a light line round the control that has the keyboard."""

from PySide6.QtCore import QEvent, QObject, QPoint, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QWidget

from framing_palette.window.tokens import LIGHT

_OUT = 3
_CORNER = 6.0
_MOVES = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show)
_GOES = (QEvent.Type.Hide, QEvent.Type.DeferredDelete, QEvent.Type.MouseButtonPress)


class FocusRing(QWidget):
    """Lies over the window, lets the pointer through, and follows the keyboard's focus.

    It shows itself only when the focus came by a key, because a pointer knows where it is.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._target: QWidget | None = None
        self._is_expected = False
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.hide()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._follow)

    @property
    def target(self) -> QWidget | None:
        """The control that the ring is round; None while it is hidden."""
        return self._target

    def expect(self) -> None:
        """Know that the next change of focus comes from the Tab key."""
        self._is_expected = True

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Go with the control when it moves, and away when it goes."""
        if watched is self._target:
            if event.type() in _MOVES:
                self._place()
            elif event.type() in _GOES:
                self._leave()
        return False

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the double line."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5)
        for tone, width in ((LIGHT.ring_light, 3.0), (LIGHT.ring_dark, 1.4)):
            painter.setPen(QPen(QColor(tone), width))
            painter.drawRoundedRect(box, _CORNER, _CORNER)

    def _follow(self, _old: QWidget | None, new: QWidget | None) -> None:
        self._leave()
        by_key, self._is_expected = self._is_expected, False
        if new is None or not by_key or not self._window.isAncestorOf(new):
            return
        self._target = new
        new.installEventFilter(self)
        self._place()

    def _leave(self) -> None:
        if self._target is not None:
            self._target.removeEventFilter(self)
            self._target = None
        self.hide()

    def _place(self) -> None:
        if self._target is None:
            return
        window = self._window
        corner = self._target.mapTo(window, QPoint(0, 0))
        out = 0 if self._target.width() > window.width() // 2 else _OUT
        self.setGeometry(
            corner.x() - out,
            corner.y() - out,
            self._target.width() + 2 * out,
            self._target.height() + 2 * out,
        )
        self.raise_()
        self.show()
