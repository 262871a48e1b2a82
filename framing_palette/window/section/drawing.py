"""Draws a section: the parts as what they are, the figures below, the rabbet's depth as a line."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPalette, QPen, QPolygonF

from framing_palette.design import Cuttable
from framing_palette.design.depth_words import depth_mark
from framing_palette.design.shown_widths import shown_widths
from framing_palette.units import Length, LengthUnit
from framing_palette.window.icons import draw_icon
from framing_palette.window.languages import told as in_language
from framing_palette.window.section.materials import paint_part
from framing_palette.window.section.scene import Edge, Scene, part_of
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL

ROLE = QPalette.ColorRole
_ROW = 26.0
_ART_ROW = 9.0
_GRIP = 5.0
_CENTRE = Qt.AlignmentFlag.AlignCenter


@dataclass(frozen=True, slots=True)
class SectionInk:
    """How the section is drawn just now.

    Parameters
    ----------
    tones
        The colour of each part's sample.
    chosen, over
        The part that keys act on, and the one under the pointer.
    target
        The layer whose place a carried one would take, counted from 0.
    """

    palette: QPalette
    tones: Mapping[str, QColor]
    unit: LengthUnit
    denominator: int
    chosen: str
    over: str
    target: int | None

    def figures(self, length: Length) -> str:
        """Return a length in the shop's unit, without it."""
        return length.figures(self.unit, self.denominator)


def draw_section(
    painter: QPainter,
    scene: Scene,
    cuttable: Cuttable,
    edges: tuple[Edge, ...],
    ink: SectionInk,
) -> None:
    """Draw all of it."""
    for piece in scene.section.pieces:
        part = part_of(piece)
        outline = scene.polygon(piece)
        paint_part(painter, piece.stuff, outline, ink.tones[part])
    _draw_broken_ends(painter, scene, ink)
    for piece in scene.section.pieces:
        if part_of(piece) in (ink.chosen, ink.over):
            _draw_mark(painter, scene.polygon(piece), ink, is_chosen=part_of(piece) == ink.chosen)
    _draw_target(painter, scene, ink)
    _draw_depth(painter, scene, cuttable, ink)
    _draw_widths(painter, scene, cuttable, edges, ink)


def _draw_mark(painter: QPainter, outline: QPolygonF, ink: SectionInk, *, is_chosen: bool) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for tone, width in (
        ((ROLE.Base, 4.5), (ROLE.WindowText, 2.4)) if is_chosen else ((ROLE.WindowText, 1.6),)
    ):
        painter.setPen(QPen(ink.palette.color(tone), width))
        painter.drawPolygon(outline)


def _draw_target(painter: QPainter, scene: Scene, ink: SectionInk) -> None:
    for piece in scene.section.pieces:
        if ink.target is not None and part_of(piece) == f"layer {ink.target + 1}":
            y = scene.polygon(piece).boundingRect().center().y()
            painter.setPen(QPen(ink.palette.color(ROLE.WindowText), 3))
            painter.drawLine(QPointF(scene.left - 8, y), QPointF(scene.right + 8, y))


def _draw_broken_ends(painter: QPainter, scene: Scene, ink: SectionInk) -> None:
    """Cover the left ends, where the art goes on, and the stretches that are left out."""
    ground = ink.palette.color(ROLE.Window)
    line = QPen(ink.palette.color(ROLE.Dark), 1.2)
    stack = [piece for piece in scene.section.pieces if piece.name != "moulding"]
    tops = [scene.polygon(piece).boundingRect() for piece in stack]
    top, foot = min(box.top() for box in tops) - 6, max(box.bottom() for box in tops) + 6
    for x, both in ((scene.left, False), *((scene.x(start), True) for start, _ in scene.breaks)):
        band = 6.0 if both else 3.0
        painter.fillRect(QRectF(x - 3.0, top, band, foot - top), ground)
        painter.setPen(line)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for edge in (x - 3.0, x + 3.0) if both else (x,):
            painter.drawPolyline(_wave(edge, top, foot))


def _wave(x: float, top: float, foot: float) -> QPolygonF:
    count = max(4, round((foot - top) / 7))
    step = (foot - top) / count
    points = [QPointF(x + (2 if n % 2 else -2), top + n * step) for n in range(count + 1)]
    return QPolygonF(points)


def _draw_depth(painter: QPainter, scene: Scene, cuttable: Cuttable, ink: SectionInk) -> None:
    """Draw the rabbet's depth as a line; what stands out of it is marked and told."""
    depth, section = cuttable.depth, scene.section
    if depth.rabbet_depth is None or section.sight is None:
        return
    text = ink.palette.color(ROLE.WindowText)
    y, left = scene.y(section.back), scene.left
    right = scene.x(section.wall or section.sight)
    if scene.floor > y + 0.5:
        _draw_excess(painter, QRectF(left, y, right - left, scene.floor - y), text)
    pen = QPen(text, 1.6, Qt.PenStyle.CustomDashLine)
    pen.setDashPattern([5, 3])
    painter.setPen(pen)
    painter.drawLine(QPointF(left - 6, y), QPointF(right, y))
    painter.setFont(type_font(SMALL, strong=not depth.fits))
    words = in_language(depth_mark(depth))
    line = QRectF(left - 6, scene.foot + _ROW + 14, 320, 22)
    if not depth.fits:
        draw_icon(painter, "warning", QRectF(line.left(), line.top() + 2, 18, 18), text)
        line.adjust(26, 0, 0, 0)
    painter.setPen(text if not depth.fits else ink.palette.color(ROLE.PlaceholderText))
    painter.drawText(line, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, words)
    painter.setFont(type_font(SMALL))


def _draw_excess(painter: QPainter, box: QRectF, ink: QColor) -> None:
    painter.save()
    painter.setClipRect(box)
    painter.setPen(QPen(ink, 1))
    x = box.left() - box.height()
    while x < box.right():
        painter.drawLine(QPointF(x, box.bottom()), QPointF(x + box.height(), box.top()))
        x += 5
    painter.restore()


def _draw_widths(
    painter: QPainter,
    scene: Scene,
    cuttable: Cuttable,
    edges: tuple[Edge, ...],
    ink: SectionInk,
) -> None:
    """Draw the chain of visible widths below the stack, with a grip at each edge."""
    section, palette = scene.section, ink.palette
    y = scene.foot + _ROW
    painter.setFont(type_font(SMALL))
    metrics = QFontMetricsF(painter.font())
    stops = [0.0, *section.sights[1:]]
    if section.sight is not None and section.outside is not None:
        stops += [section.sight, section.outside]
    elif section.sights:
        stops.append(section.contents_edge)
    painter.setPen(QPen(palette.color(ROLE.Dark), 1))
    painter.drawLine(QPointF(scene.x(stops[0]), y), QPointF(scene.x(stops[-1]), y))
    for stop in stops:
        painter.drawLine(QPointF(scene.x(stop), y - 4), QPointF(scene.x(stop), y + 4))
    for (start, end), length in zip(pairwise(stops), shown_widths(cuttable), strict=False):
        words = in_language(ink.figures(length))
        room = scene.x(end) - scene.x(start)
        if metrics.horizontalAdvance(words) + 10 < room:
            box = QRectF(scene.x(start), y - 9, room, 18)
            width = metrics.horizontalAdvance(words) + 8
            hole = QRectF(box.center().x() - width / 2, box.top(), width, box.height())
            painter.fillRect(hole, palette.color(ROLE.Window))
            painter.setPen(palette.color(ROLE.WindowText))
            painter.drawText(box, _CENTRE, words)
    for edge in edges:
        _draw_grip(painter, scene, edge, ink)


def _draw_grip(painter: QPainter, scene: Scene, edge: Edge, ink: SectionInk) -> None:
    # The art's own edge stands above the chain, so that it hides no figure of it.
    x, y = scene.x(edge.u), scene.foot + (_ART_ROW if edge.part == "art" else _ROW)
    chosen = edge.part == ink.chosen
    painter.setPen(QPen(ink.palette.color(ROLE.WindowText), 1.4))
    thin = QPen(ink.palette.color(ROLE.Dark), 1, Qt.PenStyle.DotLine)
    painter.setBrush(ink.palette.color(ROLE.Highlight if chosen else ROLE.Base))
    painter.drawEllipse(QPointF(x, y), _GRIP, _GRIP)
    painter.setPen(thin)
    painter.drawLine(QPointF(x, y - _GRIP), QPointF(x, scene.foot + 1))
