"""The photograph of swatches: an outline round each, moved and bent by hand or by keys."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.greys import surround_color
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, GAP, MARGIN, WIDE_MARGIN

Outline = tuple[tuple[float, float], ...]

_DARK, _LIGHT = surround_color(18), surround_color(95)
_HANDLE = 6.0
_REACH = 14.0
_STEP, _BIG_STEP = 0.002, 0.02


class SwatchPlate(QWidget):
    """Photograph and outlines; what the hand does is told when it lets go."""

    drawn = Signal(object)
    """The outlines as they lie now."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._image = QImage()
        self.outlines: tuple[Outline, ...] = ()
        self.chart: Outline | None = None
        self.codes: tuple[str, ...] = ()
        self.chosen = 0
        self._held: tuple[int, int] | None = None  # outline and corner; -1 for all of it
        self._last = QPointF()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(200, 140)
        self.setAccessibleName(self.tr("Photograph of swatches"))
        session.preferences_changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """Ask for much."""
        return QSize(900, 600)

    def show_photograph(
        self, image: QImage, outlines: Sequence[Outline], chart: Outline | None
    ) -> None:
        """Show another photograph and what was found in it."""
        self._image, self.chart = image, chart
        self.show_outlines(outlines)

    def show_outlines(self, outlines: Sequence[Outline]) -> None:
        """Show other outlines."""
        self.outlines = tuple(outlines)
        self.chosen = min(self.chosen, max(0, len(self.outlines) - 1))
        self._tell()

    def show_codes(self, codes: Sequence[str]) -> None:
        """Write codes on the outlines, in their order."""
        self.codes = tuple(codes)
        self.update()

    def box(self) -> QRectF:
        """Return where the photograph lies."""
        room = QRectF(self.rect()).adjusted(MARGIN, MARGIN, -MARGIN, -MARGIN)
        size = QSizeF(self._image.size()).scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
        place = QRectF(QPointF(), size)
        place.moveCenter(room.center())
        return place

    def add(self) -> None:
        """Lay one more outline in the middle."""
        self._change((*self.outlines, ((0.4, 0.4), (0.6, 0.4), (0.6, 0.6), (0.4, 0.6))))
        self.chosen = len(self.outlines) - 1
        self._tell()

    def remove(self) -> None:
        """Take the chosen outline away; the last one stays."""
        if len(self.outlines) > 1:
            rest = [one for at, one in enumerate(self.outlines) if at != self.chosen]
            self.chosen = max(0, self.chosen - 1)
            self._change(tuple(rest))

    def move_by(self, dx: float, dy: float, *, corner: int = -1) -> None:
        """Move the chosen outline, or one of its corners; nothing leaves the photograph."""
        outline = self.outlines[self.chosen]
        if corner < 0:
            xs, ys = zip(*outline, strict=True)
            dx = min(max(dx, -min(xs)), 1 - max(xs))
            dy = min(max(dy, -min(ys)), 1 - max(ys))
        moved = tuple(
            (min(1.0, max(0.0, x + dx)), min(1.0, max(0.0, y + dy)))
            if corner in (-1, at)
            else (x, y)
            for at, (x, y) in enumerate(outline)
        )
        self.outlines = (
            *self.outlines[: self.chosen],
            moved,
            *self.outlines[self.chosen + 1 :],
        )
        self._tell()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, choose and take away by keys."""
        key = Qt.Key
        step = _BIG_STEP if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP
        moves = {
            key.Key_Left: (-step, 0.0),
            key.Key_Right: (step, 0.0),
            key.Key_Up: (0.0, -step),
            key.Key_Down: (0.0, step),
        }
        pressed = Qt.Key(event.key())
        if pressed in moves and self.outlines:
            self.move_by(*moves[pressed])
            self.drawn.emit(self.outlines)
        elif pressed in (key.Key_N, key.Key_P) and self.outlines:
            by = 1 if pressed == key.Key_N else -1
            self.chosen = (self.chosen + by) % len(self.outlines)
            self._tell()
        elif pressed in (key.Key_Delete, key.Key_Backspace):
            self.remove()
        elif pressed in (key.Key_Plus, key.Key_Insert):
            self.add()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a corner or a whole outline in hand."""
        self._held = self._under(event.position())
        self._last = event.position()
        if self._held is not None:
            self.chosen = self._held[0]
            self._tell()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move what is in hand."""
        if self._held is not None:
            box, away = self.box(), event.position() - self._last
            self._last = event.position()
            dx, dy = away.x() / box.width(), away.y() / box.height()
            self.move_by(dx, dy, corner=self._held[1])

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Tell where it lies now."""
        if self._held is not None:
            self._held = None
            self.drawn.emit(self.outlines)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the photograph and the outlines."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), surround_color(self._session.preferences.surround))
        if self._image.isNull():
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawImage(self.box(), self._image)
        if self.chart is not None:
            self._draw_line(painter, self._points(self.chart), is_broken=True)
        painter.setFont(type_font(BODY, strong=True))
        for at, outline in enumerate(self.outlines):
            points = self._points(outline)
            self._draw_line(painter, points)
            self._draw_word(painter, points, self.codes[at] if at < len(self.codes) else "")
            if at == self.chosen:
                self._draw_handles(painter, points)

    def _points(self, outline: Outline) -> QPolygonF:
        box = self.box()
        left, top, width, height = box.left(), box.top(), box.width(), box.height()
        return QPolygonF([QPointF(left + x * width, top + y * height) for x, y in outline])

    @staticmethod
    def _draw_line(painter: QPainter, points: QPolygonF, *, is_broken: bool = False) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for colour, width in ((_LIGHT, 4.0), (_DARK, 2.0)):
            pen = QPen(colour, width)
            if is_broken and width < 3:
                pen.setStyle(Qt.PenStyle.DashLine)
            painter.setPen(pen)
            painter.drawPolygon(points)

    @staticmethod
    def _draw_handles(painter: QPainter, points: QPolygonF) -> None:
        painter.setPen(QPen(_DARK, 2.0))
        painter.setBrush(_LIGHT)
        for point in points.toList():
            painter.drawEllipse(point, _HANDLE, _HANDLE)

    @staticmethod
    def _draw_word(painter: QPainter, points: QPolygonF, word: str) -> None:
        if word:
            box = painter.fontMetrics().boundingRect(word).adjusted(-6, -3, 6, 3)
            box.moveCenter(points.boundingRect().center().toPoint())
            painter.fillRect(box, _LIGHT)
            painter.setPen(_DARK)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, word)

    def _under(self, point: QPointF) -> tuple[int, int] | None:
        order = sorted(range(len(self.outlines)), key=lambda at: at != self.chosen)
        for at in order:
            for corner, place in enumerate(self._points(self.outlines[at]).toList()):
                if (place - point).manhattanLength() <= _REACH:
                    return at, corner
        for at in order:
            if self._points(self.outlines[at]).containsPoint(point, Qt.FillRule.OddEvenFill):
                return at, -1
        return None

    def _change(self, outlines: tuple[Outline, ...]) -> None:
        self.show_outlines(outlines)
        self.drawn.emit(self.outlines)

    def _tell(self) -> None:
        text = self.tr("Swatch {number} of {count} is chosen.")
        count = len(self.outlines)
        self.setAccessibleDescription(text.format(number=self.chosen + 1, count=count))
        self.update()


class SwatchPhoto(QWidget):
    """The plate with what the hand can do there."""

    left = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.plate = SwatchPlate(session)
        self.told = words(
            self.tr(
                "Drag a corner or a whole outline. N and P choose the next and the last one, arrow "
                "keys move it, Delete takes it away. A broken line is the colour chart."
            ),
            size="small",
            quiet=True,
            wrap=True,
        )
        self.more = push_button(self.tr("One more outline"))
        self.less = push_button(self.tr("Take the chosen one away"))
        self.back = push_button(self.tr("Back to the map"))
        foot = QHBoxLayout()
        foot.setSpacing(GAP)
        for button in (self.more, self.less, self.back):
            foot.addWidget(button)
        foot.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.plate, 1)
        under = QVBoxLayout()
        under.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, GAP)
        under.setSpacing(GAP)
        under.addWidget(self.told)
        under.addLayout(foot)
        column.addLayout(under)
        self.more.clicked.connect(self.plate.add)
        self.less.clicked.connect(self.plate.remove)
        self.back.clicked.connect(self.left)

    def show_many(self, *, are_many: bool) -> None:
        """Offer more outlines where a photograph may hold many swatches."""
        self.more.setVisible(are_many)
        self.less.setVisible(are_many)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the photograph the room where the window is low."""
        super().resizeEvent(event)
        self.told.setVisible(self.height() > 360)
