"""The rail: up to four kept samples or designs, side by side, through all steps."""

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDrag,
    QDragEnterEvent,
    QDropEvent,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
)
from PySide6.QtWidgets import QAbstractButton, QApplication, QHBoxLayout, QSizePolicy, QWidget

from framing_palette.jobs import OnRail
from framing_palette.window.controls import IconButton
from framing_palette.window.desk import MOST_KEPT
from framing_palette.window.keeping import keep_sample, let_go
from framing_palette.window.keeping_looks import keep_look, look_to_keep
from framing_palette.window.parcels import carried_code, parcel
from framing_palette.window.sample_row import few_lines
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import GAP, MARGIN, RAIL_HEIGHT, SMALL, WIDE_MARGIN

ROLE = QPalette.ColorRole
_SWATCH = QSize(56, 64)
_LINES, _LEAST_ROOM = 2, 56


class Slot(QAbstractButton):
    """One place on the rail: a swatch, a name and its number, or an empty outline."""

    def __init__(self, session: Session, swatches: SwatchBook, number: int) -> None:
        super().__init__()
        self._session = session
        self._swatches = swatches
        self._number = number
        self._pressed_at: QPoint | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMaximumWidth(280)
        self.setMinimumWidth(44)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.tell()

    @property
    def kept(self) -> OnRail | None:
        """What rests here."""
        kept = self._session.desk.kept
        return kept[self._number] if self._number < len(kept) else None

    def tell(self) -> None:
        """Say what is here now."""
        kept = self.kept
        place = self._number + 1
        name = f"{place}: {kept.title}" if kept else self.tr("Place %1, empty")
        self.setAccessibleName(name.replace("%1", str(place)))
        self.setEnabled(kept is not None)
        self.setToolTip(f"{kept.title}  ({place})" if kept else "")
        cursor = Qt.CursorShape.PointingHandCursor if kept else Qt.CursorShape.ArrowCursor
        self.setCursor(cursor)
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Remember where a drag may begin."""
        self._pressed_at = event.position().toPoint()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag what rests here away once the pointer has moved far enough."""
        kept, start = self.kept, self._pressed_at
        if kept is None or start is None:
            return
        way = event.position().toPoint() - start
        if way.manhattanLength() >= QApplication.startDragDistance():
            self._pressed_at = None
            self.setDown(False)
            drag = QDrag(self)
            drag.setMimeData(parcel(kept.codes[0]))
            drag.exec(Qt.DropAction.CopyAction)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take what rests here off the rail with Delete."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            let_go(self._session, self._number)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the place."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        kept = self.kept
        if kept is None:
            self._draw_empty(painter, box)
        else:
            self._draw_kept(painter, box, kept)

    def _draw_empty(self, painter: QPainter, box: QRectF) -> None:
        pen = QPen(self.palette().color(ROLE.Mid), 1, Qt.PenStyle.CustomDashLine)
        pen.setDashPattern([4, 4])
        painter.setPen(pen)
        painter.drawRoundedRect(box, 4, 4)
        painter.setFont(type_font(SMALL))
        painter.setPen(self.palette().color(ROLE.PlaceholderText))
        number = str(self._number + 1)
        is_next = self._number == len(self._session.desk.kept)
        said = self.tr("K keeps a sample here") if is_next else number
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(box.adjusted(GAP, 0, -GAP, 0), flags, said)

    def _draw_kept(self, painter: QPainter, box: QRectF, kept: OnRail) -> None:
        palette = self.palette()
        is_laid = self._session.desk.laid == kept.codes
        painter.setPen(QPen(palette.color(ROLE.Highlight if is_laid else ROLE.Mid), 1 + is_laid))
        painter.setBrush(palette.color(ROLE.Light if self.underMouse() else ROLE.Base))
        painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        top = (self.height() - _SWATCH.height()) // 2
        swatch = QRect(QPoint(MARGIN, top), _SWATCH)
        self._draw_pieces(painter, swatch, kept)
        left = swatch.right() + MARGIN
        room = QRect(left, top, self.width() - left - GAP, _SWATCH.height())
        painter.setFont(type_font(SMALL, strong=True))
        painter.setPen(palette.color(ROLE.PlaceholderText))
        painter.drawText(room, Qt.AlignmentFlag.AlignTop, str(self._number + 1))
        if room.width() < _LEAST_ROOM:
            return
        font = type_font(SMALL)
        painter.setFont(font)
        painter.setPen(palette.color(ROLE.WindowText))
        metrics = QFontMetrics(font)
        for number, line in enumerate(few_lines(kept.title, metrics, room.width(), _LINES)):
            painter.drawText(room.adjusted(0, 20 + number * metrics.height(), 0, 0), 0, line)

    def _draw_pieces(self, painter: QPainter, box: QRect, kept: OnRail) -> None:
        codes = [code for code in kept.codes if code in self._session.catalogue]
        for at, code in enumerate(codes):
            part = box.width() // len(codes)
            piece = QRect(box.left() + at * part, box.top(), part, box.height())
            self._swatches.draw(painter, piece, self._session.sample_of(code))
        if not codes:
            painter.fillRect(box, QColor(128, 128, 128))


class Rail(QWidget):
    """Four places; samples can be dropped on it and are laid round the picture on a click."""

    chosen = Signal(int)

    def __init__(self, session: Session, swatches: SwatchBook) -> None:
        super().__init__()
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedHeight(RAIL_HEIGHT)
        self.setAcceptDrops(True)
        self._session = session
        self.slots = [Slot(session, swatches, number) for number in range(MOST_KEPT)]
        row = QHBoxLayout(self)
        row.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        row.setSpacing(GAP)
        for number, slot in enumerate(self.slots):
            row.addWidget(slot, 1)
            slot.clicked.connect(lambda _on=False, number=number: self.chosen.emit(number))
        row.addStretch(0)
        self.compare = IconButton("compare", self.tr("Side by side"))
        self.compare.setCheckable(True)
        row.addWidget(self.compare)
        self.keep = IconButton(
            "keep", self.tr("Keep the design in hand, or what is laid round"), keys="Ctrl+K"
        )
        row.insertWidget(row.count() - 1, self.keep)
        self.keep.clicked.connect(lambda: keep_look(session))
        for signal in (
            session.comparing_changed,
            session.step_changed,
            session.job_changed,
            session.in_hand_changed,
        ):
            signal.connect(self._tell)
        for signal in (session.kept_changed, session.laid_changed, session.catalogue_changed):
            signal.connect(self._tell)
        swatches.arrived.connect(self._tell)
        self._tell()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let samples be dropped."""
        if carried_code(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Keep the dropped sample."""
        keep_sample(self._session, carried_code(event.mimeData()))
        event.acceptProposedAction()

    def _tell(self) -> None:
        for slot in self.slots:
            slot.tell()
        can = len(self._session.desk.kept) > 1
        self.compare.setEnabled(can)
        self.keep.setEnabled(look_to_keep(self._session) is not None)
        self.compare.setChecked(self._session.comparing)
        if self._session.comparing and not can:
            self._session.show_side_by_side(shown=False)
