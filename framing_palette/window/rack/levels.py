"""The levels: the same plane five times, each with the samples of one band of lightness."""

from dataclasses import replace

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QAbstractButton, QGridLayout, QSizePolicy, QWidget

from framing_palette.arrays import BoolArray
from framing_palette.catalogue.rack_map import RackPoints
from framing_palette.ranking.gaps import Relation
from framing_palette.window.greys import color_of, surround_color
from framing_palette.window.rack.layer import Layer, Order, draw_layer
from framing_palette.window.rack.plane import Plane
from framing_palette.window.rack.state import FULL_RANGE, RackState
from framing_palette.window.runner import Runner
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import GAP, MARGIN, SMALL

LEVELS = "rack levels"
BANDS = ((80.0, 100.0), (60.0, 80.0), (40.0, 60.0), (20.0, 40.0), (0.0, 20.0))
_SMALLER = 2.0  # tiles are half as large as on the map
_HEAD = 24
_REST_MS = 60
_RING = 4.0
_DARK, _LIGHT = QColor("#2C2C2C"), QColor("#F1F1F1")


class LevelMaps(QWidget):
    """Five small maps of one scale; a click on one shows its band on the large map."""

    picked = Signal()

    def __init__(self, state: RackState, runner: Runner) -> None:
        super().__init__()
        self._state = state
        self._runner = runner
        self._is_stale = True
        self.maps = [LevelMap(state, band) for band in BANDS]
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        self._grid.setSpacing(GAP)
        for at, one in enumerate(self.maps):
            self._grid.addWidget(one, 0, at)
            one.clicked.connect(lambda _on=False, one=one: self._pick(one))
        self._soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._soon.timeout.connect(self._draw)
        for signal in (
            state.points_changed,
            state.wanted_changed,
            state.reaches_changed,
            state.session.preferences_changed,
        ):
            signal.connect(self._follow)

    def showEvent(self, event: QShowEvent) -> None:
        """Draw what changed while it was not seen."""
        super().showEvent(event)
        if self._is_stale:
            self._soon.start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Set as many side by side as make the maps largest."""
        super().resizeEvent(event)
        columns = _best_columns(self.width(), self.height())
        for at, one in enumerate(self.maps):
            self._grid.addWidget(one, at // columns, at % columns)
        self._follow()

    def _pick(self, chosen: "LevelMap") -> None:
        is_again = self._state.wanted.lightness == chosen.band
        self._state.want(lightness=FULL_RANGE if is_again else chosen.band)
        self.picked.emit()

    def _follow(self) -> None:
        self._is_stale = True
        if self.isVisible():
            self._soon.start()

    def _draw(self) -> None:
        state, some = self._state, self.maps[0]
        if not len(state.points) or some.width() < 40 or some.height() < 60:
            return
        self._is_stale = False
        plane = Plane(
            width=some.width() * _SMALLER, height=(some.height() - _HEAD) * _SMALLER
        ).showing(state.points.mean_lab, margin=MARGIN * _SMALLER)
        ground = surround_color(state.session.preferences.surround)
        ratio = self.devicePixelRatioF() / _SMALLER
        parts = [_band(state.points, state.fitting_but_lightness(), band) for band in BANDS]
        orders = [
            Order(part, np.ones(len(part), dtype=np.bool_), plane, ratio, ground) for part in parts
        ]
        self._runner.start(
            LEVELS,
            lambda _progress: [draw_layer(order) for order in orders],
            done=lambda layers: self._take(layers, plane, [len(part) for part in parts]),
            failed=lambda error: state.session.assign("notice", str(error)),
        )

    def _take(self, layers: list[Layer], plane: Plane, counts: list[int]) -> None:
        for one, layer, count in zip(self.maps, layers, counts, strict=True):
            one.show_layer(layer, plane, count)


class LevelMap(QAbstractButton):
    """One band of lightness: how many samples there are, and where."""

    def __init__(self, state: RackState, band: tuple[float, float]) -> None:
        super().__init__()
        self._state = state
        self.band = band
        self.count = 0
        self._layer: Layer | None = None
        self._plane = Plane()
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for a small map."""
        return QSize(180, 180)

    def show_layer(self, layer: Layer, plane: Plane, count: int) -> None:
        """Show other tiles."""
        self._layer, self._plane, self.count = layer, plane, count
        self._tell()

    def words(self) -> str:
        """Return the band and how many samples it has."""
        low, high = self.band
        text = self.tr("L* {low:.0f} to {high:.0f}: {count:,}")
        return text.format(low=low, high=high, count=self.count)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the map, the picture's colours of this band, and the words above."""
        painter = QPainter(self)
        palette = self.palette()
        box = QRectF(self.rect()).adjusted(0, _HEAD, 0, 0)
        painter.setFont(type_font(SMALL))
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        head = QRectF(0, 0, self.width(), _HEAD)
        painter.drawText(head, Qt.AlignmentFlag.AlignLeft, self.words())
        painter.fillRect(box, surround_color(self._state.session.preferences.surround))
        painter.save()
        painter.setClipRect(box)
        if self._layer is not None:
            at = self._layer.plane.placed_in(self._plane)
            small = QRectF(at.topLeft() / _SMALLER, at.size() / _SMALLER)
            painter.drawImage(small.translated(box.topLeft()), self._layer.image)
        self._draw_rings(painter, box)
        painter.restore()
        self._draw_frame(painter, box)

    def _draw_rings(self, painter: QPainter, box: QRectF) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        low, high = self.band
        for reach in self._state.reaches:
            if reach.relation is Relation.SAME and low <= reach.lab[0] <= high:
                spot = QPointF(self._plane.at(reach.lab[1], reach.lab[2]) / _SMALLER)
                for colour, width in ((_LIGHT, 5.0), (_DARK, 3.5), (color_of(reach.lab), 2.0)):
                    painter.setPen(QPen(colour, width))
                    painter.drawEllipse(spot + box.topLeft(), _RING, _RING)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)

    def _draw_frame(self, painter: QPainter, box: QRectF) -> None:
        if self._state.wanted.lightness == self.band:
            for colour, out in ((_LIGHT, 3.0), (_DARK, 1.0)):
                painter.setPen(QPen(colour, 2.0))
                painter.drawRect(box.adjusted(out, out, -out, -out))
        elif self.underMouse() or self.hasFocus():
            painter.setPen(QPen(self.palette().color(QPalette.ColorRole.WindowText), 1.0))
            painter.drawRect(box.adjusted(0, 0, -1, -1))

    def _tell(self) -> None:
        self.setAccessibleName(self.words())
        self.setToolTip(self.tr("Show these on the map; once more shows every lightness again"))
        self.update()


def _band(points: RackPoints, fitting: BoolArray, band: tuple[float, float]) -> RackPoints:
    """Return the points that fit and lie in a band; the topmost band holds its upper end too."""
    low, high = band
    lightness = points.mean_lab[:, 0]
    inside = fitting & (lightness >= low) & ((lightness < high) | (high >= FULL_RANGE[1]))
    return replace(
        points,
        place=points.place[inside],
        mean_lab=points.mean_lab[inside],
        kind=points.kind[inside],
        is_there=points.is_there[inside],
        start=points.start[inside],
    )


def _best_columns(width: int, height: int) -> int:
    """Return how many maps stand side by side so that the smaller side of each is largest."""

    def smaller_side(columns: int) -> float:
        rows = -(-len(BANDS) // columns)
        return min(width / columns, height / rows - _HEAD)

    return max((5, 3, 2, 1), key=smaller_side)
