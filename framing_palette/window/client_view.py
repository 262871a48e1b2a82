"""The client's view: the picture with what is laid round it, and nothing else.

It follows what the designer lays down, with a gentle cross-fade, and shows no measure, no price and
nothing that is still in hand.
"""

from PySide6.QtCore import QEvent, QRectF, Qt, QTimer, QVariantAnimation
from PySide6.QtGui import QGuiApplication, QKeyEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.catalogue import LIGHT_WORDS
from framing_palette.window.building import design_in_hand
from framing_palette.window.canvas.border import BorderLayer
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.errands import Errands
from framing_palette.window.greys import surround_color
from framing_palette.window.languages import told as in_language
from framing_palette.window.light_bar import DAYLIGHT
from framing_palette.window.preview_pane import PreviewPane
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import DISPLAY, MOTION_MS

_CAPTION_HEIGHT = 88
_REST_MS = 120
_TURNING_LIGHTNESS = 55


class ClientView(QWidget):
    """A window of its own, on the second screen where there is one."""

    def __init__(self, session: Session, swatches: SwatchBook, errands: Errands) -> None:
        super().__init__()
        self.setWindowTitle(self.tr("Framing Palette: the picture"))
        self._session = session
        self.canvas = Canvas(session, Outlook(self))
        self.canvas.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.canvas.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.canvas.add_layer(BorderLayer(session, swatches))
        self.at_home = PreviewPane(
            session, errands, "client at home", lambda: design_in_hand(session)
        )
        self.caption = _Caption(session)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        column.addWidget(self.at_home, 1)
        column.addWidget(self.caption)
        self._veil = _Veil(self)
        self._soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._soon.timeout.connect(self._fade)
        session.laid_changed.connect(self._on_laid)
        session.preferences_changed.connect(self.update)
        for signal in (session.light_changed, session.job_changed, session.in_hand_changed):
            signal.connect(self._follow_light)
        self._follow_light()

    def open(self) -> None:
        """Show on the second screen, or over this one."""
        screens = QGuiApplication.screens()
        own = self._session.parent()
        here = own.screen() if isinstance(own, QWidget) else QGuiApplication.primaryScreen()
        others = [screen for screen in screens if screen is not here]
        self.setGeometry((others[0] if others else here).geometry())
        self.showFullScreen()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go away with Escape."""
        if event.key() in (Qt.Key.Key_Escape, Qt.Key.Key_F11):
            self.hide()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the surround under the caption."""
        QPainter(self).fillRect(self.rect(), surround_color(self._session.preferences.surround))

    def changeEvent(self, event: QEvent) -> None:
        """Keep up with themes."""
        super().changeEvent(event)
        self.update()

    def _follow_light(self) -> None:
        """Show the design in hand as it looks at home, once such a light is chosen."""
        is_at_home = is_seen_at_home(self._session)
        self.canvas.setVisible(not is_at_home)
        self.at_home.setVisible(is_at_home)
        if is_at_home:
            self.at_home.follow()
        self.caption.update()

    def _on_laid(self) -> None:
        if self.isVisible() and not self._session.preferences.reduced_motion:
            self._veil.cover(self.canvas.grab() if self._veil.isHidden() else None)
        self._soon.start()

    def _fade(self) -> None:
        self.caption.update()
        self._veil.lift()


def is_seen_at_home(session: Session) -> bool:
    """Tell whether there is a design to be seen in another light than the shop's."""
    return session.light != DAYLIGHT and design_in_hand(session) is not None


class _Veil(QWidget):
    """The look before, fading from over the new one."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._over = parent
        self._before = QPixmap()
        self._fading = QVariantAnimation(self)
        self._fading.setDuration(MOTION_MS)
        self._fading.setStartValue(1.0)
        self._fading.setEndValue(0.0)
        self._fading.valueChanged.connect(self.update)
        self._fading.finished.connect(self.hide)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def cover(self, before: QPixmap | None) -> None:
        if before is None:
            return
        self._before = before
        self._fading.stop()
        self.setGeometry(self._over.rect())
        self.raise_()
        self.show()

    def lift(self) -> None:
        if self.isVisible():
            self._fading.start()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        value = self._fading.currentValue()
        running = self._fading.state() is QVariantAnimation.State.Running
        painter.setOpacity(float(value) if running else 1.0)
        painter.drawPixmap(0, 0, self._before)


class _Caption(QWidget):
    """What is laid round the picture, in gentle words."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.setFixedHeight(_CAPTION_HEIGHT)

    def text(self) -> str:
        """Return the names of what is laid round, from the art outward."""
        rack = self._session.catalogue
        if is_seen_at_home(self._session):
            light = in_language(LIGHT_WORDS[self._session.light])
            return self.tr("As it looks under {light}").format(light=light)
        names = [rack[code].name for code in self._session.desk.laid if code in rack]
        if not names:
            job = self._session.desk.job
            return job.title if job else ""
        first, *others = [names[0], *(name.lower() for name in names[1:])]
        if not others:
            return first
        inner = self.tr(" and ").join(others)
        return self.tr("{first} with {others}").format(first=first, others=inner)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        lightness = self._session.preferences.surround
        painter.setPen(surround_color(98 if lightness < _TURNING_LIGHTNESS else 12))
        painter.setFont(type_font(DISPLAY))
        box = QRectF(self.rect()).adjusted(24, 0, -24, -24)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self.text())
