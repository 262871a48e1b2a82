"""The tag beside a strip: one word, ΔE00 in small type, and threads to the repeated colours."""

from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPainterPath, QPen

from framing_palette.ranking import Verdict
from framing_palette.ranking.strip_reading import StripReading
from framing_palette.window.canvas.place import FOOT_PX, Place
from framing_palette.window.canvas.regions import LIGHT
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.languages import told as in_language
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import HEADING, SMALL

PLATE = QColor(24, 24, 24, 232)
QUIET = QColor(205, 205, 205)
THREAD_DARK = QColor(20, 20, 20, 170)
WIDTH, WIDEST, PAD, DOT = 176.0, 280.0, 12.0, 7.0
_LINE = 20.0
BESIDE = 40.0
"""Room between strip and tag, in which the handle stands."""

WORDS = {
    Verdict.BLEND: QT_TRANSLATE_NOOP("Tag", "settles"),
    Verdict.COMPLEMENT: QT_TRANSLATE_NOOP("Tag", "stands apart"),
    Verdict.CLASH: QT_TRANSLATE_NOOP("Tag", "fights"),
}


@dataclass(frozen=True, slots=True)
class Tag:
    """What the tag says and where it stands."""

    name: str
    reading: StripReading | None
    shows_numbers: bool
    box: QRectF

    @property
    def word(self) -> str:
        """The one word; empty while the strip lies off the picture or nothing is known yet."""
        verdict = self.reading.verdict if self.reading else None
        return QCoreApplication.translate("Tag", WORDS[verdict]) if verdict else ""


def tag_height(reading: StripReading | None, *, shows_numbers: bool) -> float:
    """Return how high the tag is with what it has to say."""
    lines = len(reading.repeats) if reading else 0
    has_word = reading is not None and reading.verdict is not None
    numbers = _LINE if has_word and shows_numbers else 0.0
    return 2 * PAD + _LINE + (28.0 if has_word else 0.0) + numbers + lines * _LINE


def tag_width(name: str, reading: StripReading | None) -> float:
    """Return how wide the tag is, so that the longest of its words fits."""
    metrics = QFontMetrics(type_font(SMALL))
    named = [float(metrics.horizontalAdvance(name))]
    if reading is not None:
        dots = 2 * DOT + 6.0
        named += [
            metrics.horizontalAdvance(in_language(one.name)) + dots for one in reading.repeats
        ]
    return min(max(WIDTH, max(named) + 2 * PAD + 2.0), WIDEST)


def tag_box(strip: QRectF, canvas: QRectF, width: float, height: float) -> QRectF:
    """Return where the tag stands: right of the strip, or left, or inside the canvas at least."""
    left = strip.right() + BESIDE
    if left + width > canvas.right() - 8.0:
        left = strip.left() - BESIDE - width
    if left < canvas.left() + 8.0:
        left = min(max(strip.center().x() - width / 2, 8.0), canvas.right() - width - 8.0)
        top = strip.bottom() + 12.0
        if top + height > canvas.bottom() - FOOT_PX:
            top = strip.top() - 12.0 - height
    else:
        top = strip.center().y() - height / 2
    top = min(max(top, canvas.top() + 8.0), canvas.bottom() - height - FOOT_PX)
    return QRectF(left, top, width, height)


def draw_threads(painter: QPainter, place: Place, tag: Tag) -> None:
    """Draw a thread from each repeated colour in the tag to where it is in the picture."""
    if tag.reading is None:
        return
    for number, repeated in enumerate(tag.reading.repeats):
        start = _dot_point(tag, number)
        end = place.to_screen(*repeated.spot)
        thread = QPainterPath(start)
        bend = QPointF((start.x() + end.x()) / 2, start.y())
        thread.quadTo(bend, end)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for color, width in ((THREAD_DARK, 3.0), (LIGHT, 1.2)):
            painter.setPen(QPen(color, width))
            painter.drawPath(thread)
        for color, radius, width in ((THREAD_DARK, 8.0, 3.5), (LIGHT, 8.0, 1.6)):
            painter.setPen(QPen(color, width))
            painter.drawEllipse(end, radius, radius)


def draw_tag(painter: QPainter, tag: Tag, colors: list[QColor]) -> None:
    """Draw the plate with its word, its number and its dots."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(PLATE)
    painter.drawRoundedRect(tag.box, 4, 4)
    line = QRectF(tag.box.left() + PAD, tag.box.top() + PAD, tag.box.width() - 2 * PAD, _LINE)
    _write(painter, line, tag.name, QUIET, SMALL)
    line.translate(0, _LINE)
    if tag.word:
        word_line = QRectF(line.left(), line.top(), line.width(), 28.0)
        _write(painter, word_line, tag.word, LIGHT, HEADING, strong=True)
        line.translate(0, 28.0)
        if tag.shows_numbers and tag.reading is not None:
            _write(painter, line, f"ΔE₀₀ {tag.reading.delta_e:.1f}", QUIET, SMALL)
            line.translate(0, _LINE)
    for number, color in enumerate(colors):
        name = in_language(tag.reading.repeats[number].name) if tag.reading else ""
        _draw_dot(painter, _dot_point(tag, number), color)
        _write(painter, line.adjusted(2 * DOT + 6, 0, 0, 0), name, LIGHT, SMALL)
        line.translate(0, _LINE)


def _dot_point(tag: Tag, number: int) -> QPointF:
    first = tag.box.bottom() - PAD - _LINE * (len(tag.reading.repeats) if tag.reading else 0)
    return QPointF(tag.box.left() + PAD + DOT, first + (number + 0.5) * _LINE)


def _draw_dot(painter: QPainter, at: QPointF, color: QColor) -> None:
    painter.setPen(QPen(LIGHT, 1.2))
    painter.setBrush(color)
    painter.drawEllipse(at, DOT - 1, DOT - 1)


def _write(
    painter: QPainter,
    box: QRectF,
    text: str,
    color: QColor,
    size: int,
    *,
    strong: bool = False,
) -> None:
    font = type_font(size, strong=strong)
    shown = QFontMetrics(font).elidedText(text, Qt.TextElideMode.ElideRight, int(box.width()))
    painter.setFont(font)
    painter.setPen(color)
    painter.drawText(box, Qt.AlignmentFlag.AlignVCenter, shown)
