"""How a strip looks on the screen: its surface, straight or bent, with a soft shadow."""

from dataclasses import dataclass
from math import hypot

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from framing_palette.catalogue import Sample
from framing_palette.preview.swatches import Piece
from framing_palette.ranking.strips import Strip, outline_mm
from framing_palette.window.canvas.place import Place
from framing_palette.window.canvas.regions import DARK, LIGHT
from framing_palette.window.swatches import SwatchBook

_SHADOW_PX = 7
_MOST_STRIP_PX = 3_000_000


def strip_polygon(strip: Strip, place: Place) -> QPolygonF:
    """Return the strip's outline on the screen."""
    return QPolygonF([place.mm_to_screen(*corner) for corner in outline_mm(strip)])


@dataclass(frozen=True, slots=True)
class Cloth:
    """What a strip's surface is drawn from."""

    sample: Sample
    swatches: SwatchBook
    px_per_mm: float


def draw_strip(painter: QPainter, place: Place, strip: Strip, cloth: Cloth) -> None:
    """Draw a strip with its shadow."""
    polygon = strip_polygon(strip, place)
    _draw_shadow(painter, polygon)
    painter.save()
    painter.translate(place.mm_to_screen(strip.x_mm, strip.y_mm))
    painter.rotate(strip.turn_deg)
    reach, width = strip.length_mm * place.px_per_mm / 2, strip.width_mm * place.px_per_mm
    if strip.bent:
        for turn in (0.0, -90.0):
            _draw_arm(painter, strip, cloth, turn)
    else:
        box = QRectF(-reach, -width / 2, 2 * reach, width)
        _draw_surface(painter, box, strip.turn_deg, cloth)
    painter.restore()


def draw_chosen(painter: QPainter, polygon: QPolygonF) -> None:
    """Draw the double line round the chosen strip."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for color, width in ((DARK, 3.0), (LIGHT, 1.2)):
        pen = QPen(color, width)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        painter.drawPolygon(polygon)


def _draw_arm(painter: QPainter, strip: Strip, cloth: Cloth, turn: float) -> None:
    """Draw one arm of a corner: level for no turn, and its neighbour for a quarter turn back."""
    reach, width = strip.length_mm * cloth.px_per_mm / 2, strip.width_mm * cloth.px_per_mm
    painter.save()
    painter.rotate(turn)
    # In its own frame each arm lies level along the outer edge; the mitre ends at the corner.
    corner_left = turn == 0.0
    near, far = (-reach, reach) if corner_left else (reach, -reach)
    inner = near + (width if corner_left else -width)
    arm = QPolygonF(
        [
            QPointF(near, -reach),
            QPointF(far, -reach),
            QPointF(far, -reach + width),
            QPointF(inner, -reach + width),
        ],
    )
    clip = QPainterPath()
    clip.addPolygon(arm)
    clip.closeSubpath()
    painter.setClipPath(clip, Qt.ClipOperation.IntersectClip)
    box = QRectF(-reach, -reach, 2 * reach, width)
    _draw_surface(painter, box, strip.turn_deg + turn, cloth)
    painter.restore()


def _draw_surface(painter: QPainter, box: QRectF, turn: float, cloth: Cloth) -> None:
    ratio = painter.device().devicePixelRatioF()
    along, across = box.width() * ratio, box.height() * ratio
    shrink = min(1.0, (_MOST_STRIP_PX / max(along * across, 1.0)) ** 0.5)
    piece = Piece(
        width_px=max(1, round(along * shrink)),
        height_px=max(1, round(across * shrink)),
        px_per_mm=cloth.px_per_mm * ratio * shrink,
        turn_deg=round(turn / 90.0) % 4 * 90.0,
    )
    image = cloth.swatches.image_or_like(cloth.sample, piece)
    if image is None:
        painter.fillRect(box, cloth.swatches.flat(cloth.sample))
        return
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, turn % 90.0 != 0.0)
    painter.drawImage(box, image, QRectF(QPointF(0, 0), QSizeF(image.size())))


def _draw_shadow(painter: QPainter, polygon: QPolygonF) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    shifted = polygon.translated(1.5, 2.5)
    for width in range(_SHADOW_PX, 0, -2):
        pen = QPen(QColor(0, 0, 0, 16), width)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.drawPolygon(shifted)


def handle_point(strip: Strip, place: Place) -> QPointF:
    """Return where the handle for turning stands: a little beyond the strip's far end."""
    polygon = strip_polygon(strip, place)
    first, second = polygon.at(1), polygon.at(2)
    end = (first + second) / 2
    middle = place.mm_to_screen(strip.x_mm, strip.y_mm)
    way = end - middle
    length = hypot(way.x(), way.y()) or 1.0
    return end + way / length * 20.0
