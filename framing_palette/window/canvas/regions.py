"""The regions on the picture: outlines in a dark and a light line, told apart by their stroke."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPainterPath, QPen, QPolygonF

from framing_palette.picture import Part, Region, Role
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import SMALL

DARK, LIGHT = QColor(24, 24, 24), QColor(245, 245, 245)
_DASHES = {Role.FOCUS: None, Role.SUPPORT: [6.0, 4.0], Role.GROUND: [1.5, 3.5]}


class RegionLayer(Layer):
    """Draws every region's outline with its name."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        session.regions_changed.connect(self.touch_up_all)
        for signal in (
            session.chosen_region_changed,
            session.live_region_changed,
            session.findings_changed,
        ):
            signal.connect(self.touch_up_all)

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw the outlines, the chosen one strongest."""
        for number, region in enumerate(self._session.regions):
            chosen = number == self._session.chosen_region
            draw_outline(painter, outline_path(region, place), region.role, chosen=chosen)
        for region in self._session.regions:
            draw_label(painter, region.name, label_point(region, place))
        self._draw_guess(painter, place)

    def _draw_guess(self, painter: QPainter, place: Place) -> None:
        findings = self._session.findings
        if findings is None or not findings.focus_guessed:
            return
        for found in findings.by_role(Role.FOCUS):
            guess = Region(self.tr("a guess"), Role.GROUND, (Part(found.outline),))
            draw_outline(painter, outline_path(guess, place), guess.role, chosen=False)
            draw_label(painter, guess.name, label_point(guess, place))


def outline_path(region: Region, place: Place) -> QPainterPath:
    """Return a region's outline on the screen, cut-outs taken away."""
    path = QPainterPath()
    for part in region.parts:
        piece = QPainterPath()
        piece.addPolygon(QPolygonF([place.to_screen(x, y) for x, y in part.polygon]))
        piece.closeSubpath()
        path = path.subtracted(piece) if part.subtract else path.united(piece)
    return path


def draw_outline(painter: QPainter, path: QPainterPath, role: Role, *, chosen: bool) -> None:
    """Draw a dark line with a light one on it, so that it is seen on any picture."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    under = QPen(DARK, 4.0 if chosen else 3.0)
    over = QPen(LIGHT, 2.0 if chosen else 1.2)
    dashes = _DASHES.get(role)
    if dashes:
        over.setDashPattern([length * (1.0 if chosen else 1.4) for length in dashes])
        over.setCapStyle(Qt.PenCapStyle.FlatCap)
    for pen in (under, over):
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.drawPath(path)


def label_point(region: Region, place: Place) -> QPointF:
    """Return where a region's name stands: at the top of its outline, inside the picture."""
    points = [point for part in region.parts if not part.subtract for point in part.polygon]
    if not points:
        return place.rect.topLeft()
    x, y = min(points, key=lambda point: point[1])
    return place.to_screen(min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0))


def draw_label(painter: QPainter, text: str, at: QPointF) -> QRectF:
    """Draw words on a small dark plate above a point and return the plate."""
    font = type_font(SMALL)
    metrics = QFontMetrics(font)
    width, height = metrics.horizontalAdvance(text) + 14, metrics.height() + 6
    plate = QRectF(max(at.x() - width / 2, 4.0), max(at.y() - height - 6, 4.0), width, height)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(24, 24, 24, 225))
    painter.drawRoundedRect(plate, 3, 3)
    painter.setFont(font)
    painter.setPen(LIGHT)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)
    return plate
