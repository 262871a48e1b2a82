"""The samples that are laid round the picture, mitred at the corners, at true scale."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QLinearGradient, QPainter, QPainterPath, QPolygonF

from framing_palette.catalogue import Kind, Sample
from framing_palette.errors import FramingPaletteError
from framing_palette.preview.swatches import Piece
from framing_palette.ranking.strips import width_laid
from framing_palette.units import Length
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.greys import surround_color
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook

_TURNS = (0.0, 90.0, 180.0, 270.0)
_SHADOW_MM = 2.5
_MOST_RAIL_PX = 4_000_000
_BEVEL_TONES = (82, 93, 97, 88)
"""L* of the core on the top, right, bottom and left bevel."""


@dataclass(frozen=True, slots=True)
class Band:
    """One sample laid round, from its inner to its outer distance from the picture."""

    sample: Sample
    inner_mm: float
    outer_mm: float


class BorderLayer(Layer):
    """Draws what is laid round the picture."""

    is_ground = True

    def __init__(
        self,
        session: Session,
        swatches: SwatchBook,
        codes: Callable[[], tuple[str, ...]] | None = None,
        widths: Callable[[], tuple[Length, ...]] = tuple,
    ) -> None:
        super().__init__()
        self._session = session
        self._codes = codes or (lambda: session.desk.laid)
        self._widths = widths
        self._swatches = swatches
        self._bands: tuple[Band, ...] = ()
        self.least_border_mm = 0.0
        for signal in (
            session.laid_changed,
            session.catalogue_changed,
            session.preferences_changed,
        ):
            signal.connect(self.measure)
        swatches.arrived.connect(self._on_swatch)
        self.measure()

    def border_mm(self) -> float:
        """Return the width of all that is laid round."""
        laid = self._bands[-1].outer_mm if self._bands else 0.0
        return max(laid, self.least_border_mm)

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw the bands from the outermost inward, then the shadow on the picture."""
        for band in reversed(self._bands):
            self._paint_band(painter, place, band)
            if band.sample.kind is Kind.MAT:
                _paint_bevel(painter, place, band)
        if self._bands:
            _paint_shadow(painter, place)

    def key(self, event: QKeyEvent, _place: Place) -> bool:
        """Blink between the two last looks with the space bar."""
        if event.key() != Qt.Key.Key_Space:
            return False
        self._session.blink()
        return True

    def measure(self) -> None:
        """Work out anew what lies where."""
        try:
            self._bands = tuple(self._measured())
        except FramingPaletteError as error:
            self._bands = ()
            self._session.assign("notice", str(error))
        self.touch_up_all()

    def _measured(self) -> Iterator[Band]:
        inner_mm, border = 0.0, self._session.preferences.mat_border
        codes, widths = self._codes(), self._widths()
        designed = dict(enumerate(widths)) if len(widths) == len(codes) else {}
        for place, code in enumerate(codes):
            if code in self._session.catalogue:
                sample = self._session.sample_of(code)
                width = designed.get(place) or width_laid(sample, mat_border=border)
                outer_mm = inner_mm + width.as_float_mm()
                yield Band(sample, inner_mm, outer_mm)
                inner_mm = outer_mm

    def _on_swatch(self) -> None:
        if self._bands:
            self.changed.emit(QRect())

    def _paint_band(self, painter: QPainter, place: Place, band: Band) -> None:
        inner = _grown(place.rect, band.inner_mm * place.px_per_mm)
        outer = _grown(place.rect, band.outer_mm * place.px_per_mm)
        for turn, corners in zip(_TURNS, _rails(inner, outer), strict=True):
            self._paint_rail(painter, place, band, turn, QPolygonF(list(corners)))

    def _paint_rail(
        self,
        painter: QPainter,
        place: Place,
        band: Band,
        turn: float,
        rail: QPolygonF,
    ) -> None:
        ratio = painter.device().devicePixelRatioF()
        bounds = rail.boundingRect()
        along = bounds.width() if turn in (0.0, 180.0) else bounds.height()
        across = bounds.height() if turn in (0.0, 180.0) else bounds.width()
        piece = _rail_piece(along * ratio, across * ratio, place.px_per_mm * ratio, turn)
        image = self._swatches.image_or_like(band.sample, piece)
        painter.save()
        clip = QPainterPath()
        clip.addPolygon(rail)
        clip.closeSubpath()
        painter.setClipPath(clip, Qt.ClipOperation.IntersectClip)
        if image is None:
            painter.fillRect(bounds, self._swatches.flat(band.sample))
        else:
            painter.translate(bounds.center())
            painter.rotate(turn)
            target = QRectF(QPointF(-along / 2, -across / 2), QSizeF(along, across))
            painter.drawImage(target, image, QRectF(image.rect()))
        painter.restore()


def _rail_piece(along: float, across: float, px_per_mm: float, turn: float) -> Piece:
    shrink = min(1.0, (_MOST_RAIL_PX / max(along * across, 1.0)) ** 0.5)
    return Piece(
        width_px=max(1, round(along * shrink)),
        height_px=max(1, round(across * shrink)),
        px_per_mm=px_per_mm * shrink,
        turn_deg=turn,
    )


def _grown(rect: QRectF, by: float) -> QRectF:
    return rect.adjusted(-by, -by, by, by)


def _rails(inner: QRectF, outer: QRectF) -> tuple[tuple[QPointF, ...], ...]:
    return (
        (outer.topLeft(), outer.topRight(), inner.topRight(), inner.topLeft()),
        (outer.topRight(), outer.bottomRight(), inner.bottomRight(), inner.topRight()),
        (outer.bottomRight(), outer.bottomLeft(), inner.bottomLeft(), inner.bottomRight()),
        (outer.bottomLeft(), outer.topLeft(), inner.topLeft(), inner.bottomLeft()),
    )


def _paint_bevel(painter: QPainter, place: Place, band: Band) -> None:
    """Draw the board's core where its opening is cut at a slope, lit from the upper left."""
    width = band.sample.bevel or band.sample.thickness
    if width is None:
        return
    inner = _grown(place.rect, band.inner_mm * place.px_per_mm)
    outer = _grown(inner, max(1.0, width.as_float_mm() * place.px_per_mm))
    painter.setPen(Qt.PenStyle.NoPen)
    for tone, corners in zip(_BEVEL_TONES, _rails(inner, outer), strict=True):
        painter.setBrush(surround_color(tone))
        painter.drawPolygon(QPolygonF(list(corners)))


def _paint_shadow(painter: QPainter, place: Place) -> None:
    depth = max(2.0, _SHADOW_MM * place.px_per_mm)
    rect = place.rect
    for strip, end in (
        (QRectF(rect.left(), rect.top(), rect.width(), depth), QPointF(0, depth)),
        (QRectF(rect.left(), rect.top(), depth, rect.height()), QPointF(depth, 0)),
    ):
        shade = QLinearGradient(strip.topLeft(), strip.topLeft() + end)
        shade.setColorAt(0.0, QColor(0, 0, 0, 90))
        shade.setColorAt(1.0, QColor(0, 0, 0, 0))
        painter.fillRect(strip, shade)
