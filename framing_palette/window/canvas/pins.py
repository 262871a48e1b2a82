"""Accents as pins on the picture, each with a leader line to its name at the side."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen

from framing_palette.picture import Accent
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.canvas.regions import DARK, LIGHT
from framing_palette.window.greys import color_of
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL

MOST_PINS = 8
_HEIGHT, _GAP, _PIN = 24.0, 4.0, 6.0
_PLATE = QColor(24, 24, 24, 225)
_EDGE, _AWAY = 8.0, 20.0


@dataclass(frozen=True, slots=True)
class Pin:
    """One accent's pin and the plate with its name."""

    accent: Accent
    point: QPointF
    plate: QRectF


class PinLayer(Layer):
    """Draws the accents of the whole picture."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._is_shown = True
        session.findings_changed.connect(self.touch_up_all)

    def show_pins(self, is_shown: bool) -> None:  # noqa: FBT001 - the slot of a switch
        """Show the pins or put them away."""
        self._is_shown = is_shown
        self.touch_up_all()

    def pins(self, place: Place) -> tuple[Pin, ...]:
        """Return where pins and plates stand; plates of one side never overlap."""
        findings = self._session.findings
        if findings is None or not self._is_shown:
            return ()
        accents = findings.accents[:MOST_PINS]
        left = [accent for accent in accents if accent.x < 0.5]
        right = [accent for accent in accents if accent.x >= 0.5]
        return (*_side(left, place, at_left=True), *_side(right, place, at_left=False))

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw lines first, then plates, then pins."""
        pins = self.pins(place)
        for pin in pins:
            _draw_line(painter, pin)
        for pin in pins:
            _draw_plate(painter, pin)
            _draw_pin(painter, pin)


def _side(accents: list[Accent], place: Place, *, at_left: bool) -> list[Pin]:
    metrics = QFontMetrics(type_font(SMALL))
    pins: list[Pin] = []
    low = place.canvas.top() + _EDGE
    for accent in sorted(accents, key=lambda accent: accent.y):
        point = place.to_screen(accent.x, accent.y)
        width = metrics.horizontalAdvance(in_language(accent.name)) + 34.0
        top = max(low, point.y() - _HEIGHT / 2)
        left = _plate_left(place, width, at_left=at_left)
        pins.append(Pin(accent, point, QRectF(left, top, width, _HEIGHT)))
        low = top + _HEIGHT + _GAP
    return _pushed_up(pins, place.canvas.bottom() - _EDGE)


def _plate_left(place: Place, width: float, *, at_left: bool) -> float:
    if at_left:
        return max(place.canvas.left() + _EDGE, place.rect.left() - _AWAY - width)
    return min(place.canvas.right() - _EDGE - width, place.rect.right() + _AWAY)


def _pushed_up(pins: list[Pin], floor: float) -> list[Pin]:
    pushed: list[Pin] = []
    for pin in reversed(pins):
        top = min(pin.plate.top(), floor - _HEIGHT)
        plate = pin.plate.translated(0, top - pin.plate.top())
        pushed.append(Pin(pin.accent, pin.point, plate))
        floor = top - _GAP
    return pushed[::-1]


def _draw_line(painter: QPainter, pin: Pin) -> None:
    is_left = pin.plate.center().x() < pin.point.x()
    start = QPointF(pin.plate.right() if is_left else pin.plate.left(), pin.plate.center().y())
    for color, width in ((QColor(20, 20, 20, 170), 3.0), (LIGHT, 1.2)):
        painter.setPen(QPen(color, width))
        painter.drawLine(start, pin.point)


def _draw_plate(painter: QPainter, pin: Pin) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(_PLATE)
    painter.drawRoundedRect(pin.plate, 3, 3)
    dot = QPointF(pin.plate.left() + 13.0, pin.plate.center().y())
    painter.setPen(QPen(LIGHT, 1.0))
    painter.setBrush(color_of(pin.accent.lab))
    painter.drawEllipse(dot, 5.5, 5.5)
    painter.setFont(type_font(SMALL))
    painter.setPen(LIGHT)
    line = pin.plate.adjusted(25.0, 0, 0, 0)
    painter.drawText(line, Qt.AlignmentFlag.AlignVCenter, in_language(pin.accent.name))


def _draw_pin(painter: QPainter, pin: Pin) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for color, width in ((DARK, 3.5), (LIGHT, 1.6)):
        painter.setPen(QPen(color, width))
        painter.drawEllipse(pin.point, _PIN, _PIN)
