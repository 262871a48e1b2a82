"""The section as it is worked with: drag an edge, carry a layer, drop a sample on a part."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from framing_palette.design import Design
from framing_palette.design.changing import shown_width, with_shown_width
from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.languages import told as in_language
from framing_palette.window.parcels import carried_code
from framing_palette.window.section.drawing import SectionInk, draw_section
from framing_palette.window.section.scene import Edge, Scene, edges_of, part_of, scene_of
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook

_ROOM = (16, 28, 16, 72)
_STEPS = {"in": Length.inches("1/16"), "mm": Length.mm_of(1), "cm": Length.mm_of(1)}
_FINE = {"in": Length.inches("1/32"), "mm": Length.mm_of("0.5"), "cm": Length.mm_of("0.5")}
_WAY = {
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Plus: 1,
    Qt.Key.Key_Minus: -1,
}
_CARRY_PX = 6


class SectionView(QWidget):
    """Draws the section; every change goes through the session under a name."""

    refused = Signal(str)
    """Why a change was not made; empty when one was."""

    def __init__(self, session: Session, bench: Bench, swatches: SwatchBook) -> None:
        super().__init__()
        self._session = session
        self._bench = bench
        self._swatches = swatches
        self._held: tuple[Edge, Length, QPointF, Scene] | None = None
        self._carried: tuple[str, QPointF] | None = None
        self._over: str = ""
        self._target: int | None = None
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumHeight(200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        for signal in (bench.changed, session.chosen_part_changed, session.preferences_changed):
            signal.connect(self._tell)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for the middle column."""
        return QSize(420, 260)

    def scene(self) -> Scene | None:
        """Return where everything lies now."""
        if self._held is not None:
            held = self._held[3]
            return replace(held, section=self._bench.section or held.section)
        if self._bench.section is None:
            return None
        left, top, right, bottom = _ROOM
        box = QRectF(self.rect()).adjusted(left, top, -right, -bottom)
        return scene_of(self._bench.section, box)

    def edges(self) -> tuple[Edge, ...]:
        """Return the edges that can be dragged."""
        section, design = self._bench.section, self._bench.design
        return edges_of(section, design) if section and design else ()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the section with its figures."""
        scene, cuttable = self.scene(), self._bench.cuttable
        if scene is None or cuttable is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        preferences = self._session.preferences
        ink = SectionInk(
            palette=self.palette(),
            tones={part_of(piece): self._tone(part_of(piece)) for piece in scene.section.pieces},
            unit=preferences.unit,
            denominator=preferences.denominator,
            chosen=self._session.chosen_part,
            over=self._over,
            target=self._target,
        )
        draw_section(painter, scene, cuttable, self.edges(), ink)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take an edge or a layer in hand."""
        scene, design = self.scene(), self._bench.design
        if scene is None or design is None or event.button() is not Qt.MouseButton.LeftButton:
            return
        point = event.position()
        edge = scene.edge_at(point, self.edges())
        width = shown_width(design, edge.part) if edge else None
        if edge is not None and width is not None:
            self._held = (edge, width, point, scene)
            self._session.assign("chosen_part", edge.part)
            return
        part = scene.part_at(point)
        self._session.assign("chosen_part", part)
        if part.startswith("layer "):
            self._carried = (part, point)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with what is in hand, or show what a press would take."""
        point = event.position()
        if self._held is not None:
            self._drag(point, event.modifiers())
        elif self._carried is not None:
            self._carry(point)
        else:
            self._hover(point)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go; a layer that was carried lies where it is now."""
        carried, target = self._carried, self._target
        self._held = self._carried = self._target = None
        if carried is not None and target is not None:
            self._try(lambda: building.move_layer(self._session, carried[0], target))
        self._hover(event.position())
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Set widths with the arrows, choose with Up and Down, move with Alt, remove."""
        part, key = self._session.chosen_part, Qt.Key(event.key())
        is_alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            way = 1 if key is Qt.Key.Key_Up else -1
            if is_alt:
                self._shift(part, way)
            else:
                self._choose_next(way)
        elif key in _WAY:
            self._step(part, _WAY[key], event.modifiers())
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._try(lambda: building.remove_part(self._session, part))
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let samples be carried in."""
        if carried_code(event.mimeData()) and self._bench.section is not None:
            event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show which part would get the sample."""
        scene = self.scene()
        self._over = scene.part_at(event.position()) if scene else ""
        self.update()
        event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Give the part under the pointer the sample."""
        code, part = carried_code(event.mimeData()), self._over
        self._over = ""
        self._try(lambda: building.use_sample(self._session, code, part))
        event.acceptProposedAction()

    def _tone(self, part: str) -> QColor:
        sample = building.part_sample(self._session, part)
        if sample is not None:
            return self._swatches.flat(sample)
        return QColor(120, 120, 120) if part != "art" else QColor(70, 70, 70)

    def _drag(self, point: QPointF, keys: Qt.KeyboardModifier) -> None:
        design = self._bench.design
        if self._held is None or design is None:
            return
        edge, width, start, scene = self._held
        fine = bool(keys & Qt.KeyboardModifier.ShiftModifier)
        step = (_FINE if fine else _STEPS)[self._session.preferences.unit]
        moved_mm = (point.x() - start.x()) / scene.px_per_mm
        steps = round(moved_mm / step.as_float_mm())
        self._set(design, edge.part, width + step * steps)

    def _step(self, part: str, way: int, keys: Qt.KeyboardModifier) -> None:
        design = self._bench.design
        width = shown_width(design, part) if design else None
        if design is None or width is None:
            return
        fine = bool(keys & Qt.KeyboardModifier.ShiftModifier)
        step = (_FINE if fine else _STEPS)[self._session.preferences.unit]
        self._set(design, part, width + step * way)

    def _set(self, design: Design, part: str, width: Length) -> None:
        words = (
            self.tr("Overlap")
            if part == "art"
            else self.tr("Width of {part}").format(part=in_language(part))
        )

        def change() -> None:
            changed = with_shown_width(design, part, width)
            building.put_design(self._session, changed, words, merge=f"width {part}")

        self._try(change)

    def _carry(self, point: QPointF) -> None:
        scene = self.scene()
        if scene is None or self._carried is None:
            return
        part, start = self._carried
        if abs(point.y() - start.y()) < _CARRY_PX:
            self._target = None
        else:
            place = building.place_of(part)
            near = scene.layer_near(point.y())
            self._target = near if near != place else None
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self.update()

    def _hover(self, point: QPointF) -> None:
        scene = self.scene()
        if scene is None:
            return
        edge = scene.edge_at(point, self.edges())
        part = "" if edge else scene.part_at(point)
        if edge:
            shape = Qt.CursorShape.SizeHorCursor
        elif part.startswith("layer "):
            shape = Qt.CursorShape.OpenHandCursor
        else:
            shape = Qt.CursorShape.ArrowCursor
        self.setCursor(shape)
        if part != self._over:
            self._over = part
            self.update()

    def _choose_next(self, way: int) -> None:
        section = self._bench.section
        if section is None:
            return
        parts = [part_of(piece) for piece in section.pieces]
        at = parts.index(self._session.chosen_part) if self._session.chosen_part in parts else -1
        self._session.assign("chosen_part", parts[(at + way) % len(parts)])

    def _shift(self, part: str, way: int) -> None:
        place = building.place_of(part)
        if place is not None:
            self._try(lambda: building.move_layer(self._session, part, place + way))

    def _try(self, change: Callable[[], None]) -> None:
        try:
            change()
        except FramingPaletteError as error:
            self.refused.emit(in_language(str(error)))
        else:
            self.refused.emit("")

    def _tell(self) -> None:
        said = ", ".join(
            in_language(part_of(piece))
            for piece in (self._bench.section.pieces if self._bench.section else ())
        )
        self.setAccessibleName(self.tr("Section through the frame: {said}").format(said=said))
        self.setAccessibleDescription(in_language(self._session.chosen_part))
        self.update()
