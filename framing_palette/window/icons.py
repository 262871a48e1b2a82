"""Draws the line icons in whatever grey the widget's palette has."""

from collections.abc import Iterator
from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from framing_palette.window.icon_shapes import SHAPES

UNITS = 24.0
STROKE = 1.6

_NUMBERS_OF = {"M": 2, "L": 2, "Q": 4, "C": 6, "Z": 0, "O": 4, "R": 4, "D": 3}


def draw_icon(
    painter: QPainter,
    name: str,
    box: QRectF,
    color: QColor,
    *,
    stroke: float = STROKE,
) -> None:
    """Draw an icon centred in a box."""
    size = min(box.width(), box.height())
    lines, dots = _paths(name)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.center() - QPointF(size / 2, size / 2))
    painter.scale(size / UNITS, size / UNITS)
    pen = QPen(color, stroke * UNITS / size if size else stroke)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.strokePath(lines, pen)
    painter.fillPath(dots, color)
    painter.restore()


@cache
def _paths(name: str) -> tuple[QPainterPath, QPainterPath]:
    lines, dots = QPainterPath(), QPainterPath()
    for letter, numbers in _strokes(SHAPES[name]):
        _add(letter, numbers, lines, dots)
    return lines, dots


def _strokes(shape: str) -> Iterator[tuple[str, list[float]]]:
    words = "".join(f" {sign} " if sign.isalpha() else sign for sign in shape).split()
    at = 0
    while at < len(words):
        count = _NUMBERS_OF[words[at]]
        yield words[at], [float(word) for word in words[at + 1 : at + 1 + count]]
        at += 1 + count


def _add(letter: str, n: list[float], lines: QPainterPath, dots: QPainterPath) -> None:
    match letter:
        case "M":
            lines.moveTo(n[0], n[1])
        case "L":
            lines.lineTo(n[0], n[1])
        case "Q":
            lines.quadTo(n[0], n[1], n[2], n[3])
        case "C":
            lines.cubicTo(n[0], n[1], n[2], n[3], n[4], n[5])
        case "Z":
            lines.closeSubpath()
        case "O":
            lines.addEllipse(QPointF(n[0], n[1]), n[2], n[3])
        case "R":
            lines.addRoundedRect(QRectF(n[0], n[1], n[2], n[3]), 0.6, 0.6)
        case _:
            dots.addEllipse(QPointF(n[0], n[1]), n[2], n[2])
