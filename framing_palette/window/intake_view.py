"""The photograph with its four corner handles, a magnifier, the chart, and a before-and-after."""

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QFontMetrics,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPalette,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from framing_palette.jobs.taking_in import Corners, Point
from framing_palette.picture.squaring import WHOLE
from framing_palette.window.greys import color_of, surround_color
from framing_palette.window.intake_patches import paint_split, patch_middle, patch_side
from framing_palette.window.intaking import Intaking
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import MARGIN, SMALL

_EDGE = 32.0
_HANDLE = 9.0
_REACH = 22.0
_LENS = 72.0
_LENS_ZOOM = 4.0
_NAMES = (
    QT_TRANSLATE_NOOP("IntakeView", "upper left"),
    QT_TRANSLATE_NOOP("IntakeView", "upper right"),
    QT_TRANSLATE_NOOP("IntakeView", "lower right"),
    QT_TRANSLATE_NOOP("IntakeView", "lower left"),
)
_STEP_PX = 1.0
_KEYS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}


class Hand(StrEnum):
    """What a press on the photograph does."""

    ART = "art"
    CHART = "chart"
    GREY = "grey"


class IntakeView(QWidget):
    """Marks corners; what is marked is told, and drawn as the job has it."""

    marked = Signal(object)
    """Four corners, in the order in which they stand."""
    grey_picked = Signal(object)

    def __init__(self, session: Session, intaking: Intaking) -> None:
        super().__init__()
        self._session = session
        self._intaking = intaking
        self.hand = Hand.ART
        self.handle = 0
        self.shows_after = False
        self.curtain = 0.5
        self._held: list[Point] | None = None
        self._pulls_curtain = False
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(240, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        for signal in (
            intaking.photograph_changed,
            intaking.taken_changed,
            session.job_changed,
            session.pyramid_changed,
            session.preferences_changed,
        ):
            signal.connect(self._tell)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for room."""
        return QSize(800, 560)

    def take_hand(self, hand: Hand) -> None:
        """Mark something else from now on."""
        self.hand, self.handle = hand, 0
        self.shows_after = False
        self._tell()

    def show_after(self, *, after: bool) -> None:
        """Compare before and after with the curtain, or mark corners again."""
        self.shows_after = after
        self._tell()

    def corners(self) -> Corners:
        """Return the corners that the handles stand on."""
        if self._held is not None:
            return tuple(self._held)  # type: ignore[return-value]
        how, taken = self._intaking.how, self._intaking.taken
        if self.hand is Hand.CHART:
            if isinstance(how.chart, tuple):
                return how.chart
            if taken and taken.intake.chart:
                return taken.intake.chart.corners
            return ((0.4, 0.4), (0.6, 0.4), (0.6, 0.6), (0.4, 0.6))
        if how.corners is not None:
            return how.corners
        return taken.intake.corners if taken else WHOLE

    def box(self) -> QRectF:
        """Return where the photograph lies."""
        photograph = self._intaking.photograph
        size = QSizeF(photograph.pyramid.size) if photograph else QSizeF(4, 3)
        room = QRectF(self.rect()).adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        return _fitted(size, room)

    def place(self, point: Point) -> QPointF:
        """Return where a place of the photograph (0..1) lies."""
        box = self.box()
        return QPointF(box.left() + point[0] * box.width(), box.top() + point[1] * box.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw what is to be seen now."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.fillRect(self.rect(), surround_color(self._session.preferences.surround))
        photograph = self._intaking.photograph
        if photograph is None:
            return
        if self.shows_after:
            self._paint_after(painter)
            return
        box = self.box()
        level = photograph.pyramid.level_for(box.width() / photograph.pyramid.size.width())
        painter.drawImage(box, level)
        self._paint_patches(painter)
        if self.hand is not Hand.GREY:
            self._paint_corners(painter)
        self._paint_grey(painter)
        if self.hand is not Hand.GREY and (self._held is not None or self.hasFocus()):
            self._paint_lens(painter, level)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a corner, the curtain, or a grey."""
        if event.button() is not Qt.MouseButton.LeftButton or not self._intaking.photograph:
            return
        point = event.position()
        if self.shows_after:
            self._pulls_curtain = True
            self._pull(point)
        elif self.hand is Hand.GREY:
            x, y = self._share(point)
            self.grey_picked.emit((x, y))
        else:
            self._take(point)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the corner in hand, or the curtain."""
        point = event.position()
        if self._pulls_curtain:
            self._pull(point)
        elif self._held is not None:
            self._held[self.handle] = self._share(point)
            self.update()
        else:
            near = self._near(point) is not None
            cross = self.hand is Hand.GREY or near
            shape = Qt.CursorShape.CrossCursor if cross else Qt.CursorShape.ArrowCursor
            self.setCursor(Qt.CursorShape.SplitHCursor if self.shows_after else shape)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Let go of the corner: the photograph is taken in anew."""
        self._pulls_curtain = False
        if self._held is not None:
            corners = self.corners()
            self._held = None
            self.marked.emit(corners)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move a corner by a pixel with the arrows, the next corner with N; the curtain as well."""
        key = Qt.Key(event.key())
        if key is Qt.Key.Key_N:
            self.handle = (self.handle + 1) % 4
            self._tell()
        elif key in _KEYS and self.shows_after:
            self.curtain = min(max(self.curtain + _KEYS[key][0] * 0.02, 0.0), 1.0)
            self.update()
        elif key in _KEYS and self.hand is not Hand.GREY and self._intaking.photograph:
            far = 10.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP_PX
            at = self.place(self.corners()[self.handle])
            right, down = _KEYS[key]
            corners = list(self.corners())
            corners[self.handle] = self._share(at + QPointF(right * far, down * far))
            self.marked.emit(tuple(corners))
        else:
            super().keyPressEvent(event)

    def _take(self, point: QPointF) -> None:
        near = self._near(point)
        if near is not None:
            self.handle = near
            self._held = list(self.corners())
            self._tell()

    def _near(self, point: QPointF) -> int | None:
        ways = [(self.place(corner) - point).manhattanLength() for corner in self.corners()]
        nearest = min(range(4), key=lambda number: ways[number])
        return nearest if ways[nearest] <= _REACH else None

    def _share(self, point: QPointF) -> Point:
        box = self.box()
        x = (point.x() - box.left()) / box.width()
        y = (point.y() - box.top()) / box.height()
        return min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0)

    def _pull(self, point: QPointF) -> None:
        box = self._after_box()
        self.curtain = min(max((point.x() - box.left()) / box.width(), 0.0), 1.0)
        self.update()

    def _after_box(self) -> QRectF:
        pyramid = self._session.pyramid
        size = QSizeF(pyramid.size) if pyramid else QSizeF(4, 3)
        return _fitted(size, QRectF(self.rect()).adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE))

    def _paint_after(self, painter: QPainter) -> None:
        """Draw the squared picture, as it was photographed left of the curtain."""
        pyramid, photograph = self._session.pyramid, self._intaking.photograph
        if pyramid is None or photograph is None:
            return
        box = self._after_box()
        painter.drawImage(box, pyramid.level_for(box.width() / pyramid.size.width()))
        at = box.left() + box.width() * self.curtain
        painter.save()
        painter.setClipRect(QRectF(box.left(), box.top(), at - box.left(), box.height()))
        self._paint_before(painter, box)
        painter.restore()
        for tone, width in ((18, 3.0), (95, 1.2)):
            painter.setPen(QPen(surround_color(tone), width))
            painter.drawLine(QPointF(at, box.top()), QPointF(at, box.bottom()))
        painter.setFont(type_font(SMALL))
        self._plate(painter, QPointF(box.left() + 8, box.top() + 8), self.tr("as photographed"))
        told = self.tr("taken in")
        width = QFontMetrics(painter.font()).horizontalAdvance(told) + 16
        self._plate(painter, QPointF(box.right() - 8 - width, box.top() + 8), told)

    def _paint_before(self, painter: QPainter, box: QRectF) -> None:
        """Draw the photograph so that its marked corners fall on the picture's own."""
        from PySide6.QtGui import QTransform

        photograph, taken = self._intaking.photograph, self._intaking.taken
        if photograph is None:
            return
        image = photograph.pyramid.levels[min(1, len(photograph.pyramid.levels) - 1)]
        corners = taken.intake.corners if taken else WHOLE
        source = QPolygonF([QPointF(x * image.width(), y * image.height()) for x, y in corners])
        target = QPolygonF([box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()])
        turn = QTransform.quadToQuad(source, target)
        if isinstance(turn, QTransform):
            painter.setTransform(turn, True)  # noqa: FBT003 - Qt's own form
            painter.drawImage(0, 0, image)

    def _plate(self, painter: QPainter, at: QPointF, text: str) -> None:
        metrics = QFontMetrics(painter.font())
        plate = QRectF(at, QSizeF(metrics.horizontalAdvance(text) + 16, metrics.height() + 8))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.palette().color(QPalette.ColorRole.Window))
        painter.drawRoundedRect(plate, 4, 4)
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)

    def _paint_corners(self, painter: QPainter) -> None:
        outline = QPolygonF([self.place(corner) for corner in self.corners()])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for tone, width in ((18, 3.0), (95, 1.2)):
            painter.setPen(QPen(surround_color(tone), width))
            painter.drawPolygon(outline)
        for number in range(4):
            chosen = number == self.handle and self.hasFocus()
            painter.setPen(QPen(surround_color(18), 2.0))
            painter.setBrush(surround_color(18 if chosen else 95))
            painter.drawEllipse(outline.at(number), _HANDLE, _HANDLE)
            painter.setPen(QPen(surround_color(95), 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(outline.at(number), _HANDLE + 1.5, _HANDLE + 1.5)

    def _paint_patches(self, painter: QPainter) -> None:
        """Draw each patch of the chart split into what is seen and what it should be."""
        taken = self._intaking.taken
        if taken is None or taken.intake.chart is None:
            return
        from framing_palette.colour.charts import chart_names

        corners = [self.place(corner) for corner in taken.intake.chart.corners]
        by_name = {patch.name: patch for patch in taken.intake.picture.colour_trust.patches}
        for place, name in enumerate(chart_names()):
            middle = patch_middle(corners, place)
            patch = by_name.get(name)
            side = patch_side(corners)
            box = QRectF(middle.x() - side / 2, middle.y() - side / 2, side, side)
            if patch is not None:
                paint_split(painter, box, color_of(patch.measured_lab),
                             color_of(patch.reference_lab))  # fmt: skip
            painter.setPen(QPen(surround_color(95), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box)
            if patch is None:
                painter.drawLine(box.topLeft(), box.bottomRight())

    def _paint_grey(self, painter: QPainter) -> None:
        grey = self._intaking.how.grey
        if grey is None:
            return
        at = self.place(grey)
        for tone, width in ((18, 3.0), (95, 1.2)):
            painter.setPen(QPen(surround_color(tone), width))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(at, 10, 10)
            painter.drawPoint(at)

    def _paint_lens(self, painter: QPainter, level: QImage) -> None:
        """Draw the place of the chosen corner four times larger, away from the corner itself."""
        photograph = self._intaking.photograph
        if photograph is None:
            return
        corner = self.corners()[self.handle]
        at, box = self.place(corner), self.box()
        away = QPointF(1 if corner[0] < 0.5 else -1, 1 if corner[1] < 0.5 else -1) * (
            _LENS + 2 * MARGIN
        )
        middle = at + away
        image = photograph.pyramid.levels[0] if photograph.pyramid.levels else level
        per_px = image.width() / box.width() / _LENS_ZOOM
        reach = _LENS * per_px
        source = QRectF(
            corner[0] * image.width() - reach, corner[1] * image.height() - reach,
            2 * reach, 2 * reach,
        )  # fmt: skip
        target = QRectF(middle.x() - _LENS, middle.y() - _LENS, 2 * _LENS, 2 * _LENS)
        painter.save()
        clip = QPainterPath()
        clip.addEllipse(target)
        painter.setClipPath(clip)
        painter.fillRect(target, surround_color(30))
        painter.drawImage(target, image, source)
        painter.setPen(QPen(surround_color(95), 1))
        painter.drawLine(QPointF(target.left(), middle.y()), QPointF(target.right(), middle.y()))
        painter.drawLine(QPointF(middle.x(), target.top()), QPointF(middle.x(), target.bottom()))
        painter.restore()
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for tone, width in ((18, 4.0), (95, 1.6)):
            painter.setPen(QPen(surround_color(tone), width))
            painter.drawEllipse(target)

    def _tell(self) -> None:
        what = {
            Hand.ART: self.tr("The art's corners"),
            Hand.CHART: self.tr("The chart's corners"),
            Hand.GREY: self.tr("Pick a neutral grey"),
        }[self.hand]
        told = self.tr("Before and after") if self.shows_after else what
        self.setAccessibleName(self.tr("The photograph: {told}").format(told=told))
        self.setAccessibleDescription(self.tr(_NAMES[self.handle]))
        self.update()


def _fitted(size: QSizeF, room: QRectF) -> QRectF:
    fit = size.scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
    left = room.center().x() - fit.width() / 2
    return QRectF(QPointF(left, room.center().y() - fit.height() / 2), fit)
