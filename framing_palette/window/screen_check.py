"""Screen honesty: what a screen cannot show, a simple check of it, and its profile."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QGuiApplication, QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from framing_palette.window.controls import words
from framing_palette.window.greys import surround_color
from framing_palette.window.screen_profile import is_like_srgb, profile_of
from framing_palette.window.tokens import GAP

GREY_STEPS = (2, 8, 14, 20, 30, 40, 50, 60, 70, 80, 88, 92, 96, 99)
"""L* of the steps: closest together at the ends, where screens lose them."""

HALF_LIGHT = 188
"""The sRGB level that sends half the light of white (IEC 61966-2-1: 0.5 encodes to 0.735)."""


class ScreenCheck(QWidget):
    """Grey steps, a patch whose look is known, and what the system says of the screen."""

    def __init__(self) -> None:
        super().__init__()
        self.steps, self.patch = GreySteps(), KnownPatch()
        self.profile = words(size="small", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for control, told in (
            (
                self.steps,
                self.tr(
                    "Every step should be seen apart from its neighbours, and none should look "
                    "tinted. If the ends run together, set the screen's brightness first."
                ),
            ),
            (
                self.patch,
                self.tr(
                    "From two steps away, or with half-closed eyes, the lines and the patch among "
                    "them should be one grey. If the patch stands out, this screen shows middle "
                    "tones too light or too dark."
                ),
            ),
        ):
            column.addWidget(control)
            column.addWidget(words(told, size="small", quiet=True, wrap=True))
            column.addSpacing(GAP)
        column.addWidget(self.profile)
        self.show_profile()

    def show_profile(self) -> None:
        """Say what the system tells of this screen."""
        screen = self.screen()
        screens = QGuiApplication.screens()
        space = profile_of(screens.index(screen) if screen in screens else 0)
        if space is None:
            said = self.tr(
                "The system tells nothing of this screen's colour profile. Trust its colours less "
                "than those of a screen that was measured."
            )
        elif is_like_srgb(space):
            said = self.tr(
                "The screen's profile is {name}. Its colours are those in which the picture is "
                "shown."
            ).format(name=space.description() or "sRGB")
        else:
            said = self.tr(
                "The screen's profile is {name}. The picture is shown in sRGB: unless the system "
                "converts it, colours look stronger or duller here than they are."
            ).format(name=space.description() or self.tr("without a name"))
        self.profile.setText(said)


class GreySteps(QWidget):
    """Neutral steps from nearly black to nearly white."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(48)
        self.setAccessibleName(self.tr("Grey steps from dark to light"))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the steps side by side."""
        painter = QPainter(self)
        width = self.width() / len(GREY_STEPS)
        for number, lightness in enumerate(GREY_STEPS):
            step = QRectF(number * width, 0, width + 1, self.height())
            painter.fillRect(step, surround_color(lightness))


class KnownPatch(QWidget):
    """Lines of black and white, half the light of white between them, round a patch of the same."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(48)
        self.setAccessibleName(self.tr("A grey patch among fine lines"))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw lines of one screen pixel each, and the patch."""
        painter = QPainter(self)
        ratio = self.devicePixelRatioF()
        painter.scale(1 / ratio, 1 / ratio)
        wide, high = round(self.width() * ratio), round(self.height() * ratio)
        lines = QImage(1, 2, QImage.Format.Format_RGB32)
        lines.setPixelColor(0, 0, QColor(Qt.GlobalColor.black))
        lines.setPixelColor(0, 1, QColor(Qt.GlobalColor.white))
        painter.fillRect(0, 0, wide, high, QBrush(lines))
        patch = QColor(HALF_LIGHT, HALF_LIGHT, HALF_LIGHT)
        painter.fillRect(wide // 3, high // 4, wide // 3, high // 2, patch)
