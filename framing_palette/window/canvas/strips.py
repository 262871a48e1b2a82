"""The slide: samples as strips at true scale, pushed over the picture and read as they go."""

from dataclasses import replace
from math import atan2, degrees
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPen

from framing_palette.catalogue import Sample
from framing_palette.ranking.strip_reading import (
    RepeatedColour,
    StripReader,
    StripReading,
    read_strip,
    repeated_colours,
    strip_columns,
)
from framing_palette.ranking.strips import Strip, is_on_strip, kept_on_art, moved, snapped_turn
from framing_palette.window import sliding
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.canvas.regions import DARK, LIGHT
from framing_palette.window.canvas.strip_shape import (
    Cloth,
    draw_chosen,
    draw_strip,
    handle_point,
    strip_polygon,
)
from framing_palette.window.canvas.tag import (
    Tag,
    draw_tag,
    draw_threads,
    tag_box,
    tag_height,
    tag_width,
)
from framing_palette.window.greys import color_of
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook

if TYPE_CHECKING:
    from framing_palette.ranking import SampleColumns

HANDLE_PX = 9.0
_GRAB_PX = 20.0
_STEP_MM, _LONG_STEP_MM = 1.0, 10.0
_SNAP_DEG = 4.0

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class StripLayer(Layer):
    """Draws the strips, lets them be pushed and turned, and reads the one in hand."""

    def __init__(self, session: Session, swatches: SwatchBook) -> None:
        super().__init__()
        self._session = session
        self._swatches = swatches
        self._live: Strip | None = None
        self._grip = (0.0, 0.0)
        self._is_turning = False
        self._turn_grip = 0.0
        self._columns: dict[str, SampleColumns] = {}
        self._repeats: dict[str, tuple[RepeatedColour, ...]] = {}
        self._reader: StripReader | None = None
        self.reading: StripReading | None = None
        session.catalogue_changed.connect(self._forget)
        for signal in (
            session.strips_changed,
            session.chosen_strip_changed,
            session.strip_reader_changed,
            session.preferences_changed,
        ):
            signal.connect(self.refresh)
        swatches.arrived.connect(self.touch_up_all)

    def strips(self) -> tuple[Strip, ...]:
        """Return the strips as they lie now, the one in hand where the hand is, and on top."""
        live = self._live
        lying = self._session.desk.strips
        if live is None:
            return lying
        return (*(strip for strip in lying if strip.number != live.number), live)

    def chosen(self) -> Strip | None:
        """Return the strip that keys and tools act on."""
        if self._live is not None:
            return self._live
        return sliding.chosen_strip(self._session)

    def refresh(self) -> None:
        """Read the chosen strip anew and repaint."""
        strip = self.chosen()
        self.reading = self._read(strip) if strip else None
        self.touch_up_all()

    def hold(self, strip: Strip | None) -> None:
        """Show a strip that is not put down yet, as a sample is dragged from the shelf."""
        self._live = strip
        self.refresh()

    def tag(self, place: Place) -> Tag | None:
        """Return the tag of the chosen strip and where it stands."""
        strip = self.chosen()
        if strip is None or strip.code not in self._session.catalogue:
            return None
        shows = self._session.preferences.show_numbers
        around = strip_polygon(strip, place).boundingRect()
        height = tag_height(self.reading, shows_numbers=shows)
        name = self._session.sample_of(strip.code).name
        width = tag_width(name, self.reading)
        return Tag(name, self.reading, shows, tag_box(around, place.canvas, width, height))

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw all strips, then the mark, threads and tag of the chosen one."""
        chosen = self.chosen()
        for strip in self.strips():
            sample = self._sample(strip)
            if sample is not None:
                draw_strip(painter, place, strip, Cloth(sample, self._swatches, place.px_per_mm))
        tag = self.tag(place)
        if chosen is None or tag is None:
            return
        draw_chosen(painter, strip_polygon(chosen, place))
        _draw_handle(painter, handle_point(chosen, place))
        draw_threads(painter, place, tag)
        draw_tag(painter, tag, self._dot_colors())

    def press(self, point: QPointF, place: Place, _keys: Qt.KeyboardModifier) -> bool:
        """Take hold of the handle or of the topmost strip under the pointer."""
        chosen = self.chosen()
        if chosen is not None and _is_near(point, handle_point(chosen, place)):
            self._is_turning, self._live = True, chosen
            self._turn_grip = chosen.turn_deg - _bearing(chosen, place.screen_to_mm(point))
            return True
        strip = self._strip_at(point, place)
        if strip is None:
            self._session.assign("chosen_strip", 0)
            return False
        x_mm, y_mm = place.screen_to_mm(point)
        self._grip = (strip.x_mm - x_mm, strip.y_mm - y_mm)
        self._live = strip
        self._session.assign("chosen_strip", strip.number)
        self.refresh()
        return True

    def drag(self, point: QPointF, place: Place, keys: Qt.KeyboardModifier) -> None:
        """Push or turn the strip in hand."""
        if self._live is None:
            return
        x_mm, y_mm = place.screen_to_mm(point)
        if self._is_turning:
            turn = (_bearing(self._live, (x_mm, y_mm)) + self._turn_grip) % 360.0
            near = snapped_turn(turn)
            close = abs((turn - near + 180.0) % 360.0 - 180.0) < _SNAP_DEG
            snap = close or bool(keys & Qt.KeyboardModifier.ShiftModifier)
            self._live = replace(self._live, turn_deg=near if snap else turn)
        else:
            grip_x, grip_y = self._grip
            pushed = replace(self._live, x_mm=x_mm + grip_x, y_mm=y_mm + grip_y)
            width_mm, height_mm = place.art_mm
            self._live = kept_on_art(pushed, width_mm=width_mm, height_mm=height_mm)
        self.refresh()

    def release(self, _point: QPointF, _place: Place) -> None:
        """Put the strip down; one step to undo for the whole way."""
        strip, self._live = self._live, None
        words = "Turn" if self._is_turning else "Push"
        self._is_turning = False
        if strip is not None:
            sliding.put_strip(self._session, strip, verb=words)
        self.refresh()

    def double_press(self, point: QPointF, place: Place) -> bool:
        """Lay the strip's sample round the picture."""
        strip = self._strip_at(point, place)
        if strip is not None:
            sliding.lay_strip_round(self._session, strip)
        return strip is not None

    def hover(self, point: QPointF, place: Place) -> Qt.CursorShape | None:
        """Show that a strip can be taken."""
        chosen = self.chosen()
        if chosen is not None and _is_near(point, handle_point(chosen, place)):
            return Qt.CursorShape.SizeAllCursor
        return Qt.CursorShape.OpenHandCursor if self._strip_at(point, place) else None

    def carry(self, code: str, point: QPointF, place: Place) -> bool:
        """Show a sample that is carried over the canvas as if it lay there already."""
        at_mm = place.screen_to_mm(point)
        if self._live is None:
            self.hold(sliding.fresh_strip(self._session, code, at_mm))
        else:
            self.hold(replace(self._live, x_mm=at_mm[0], y_mm=at_mm[1]))
        return self._live is not None

    def carried_away(self) -> None:
        """Forget what was carried."""
        self.hold(None)

    def drop(self, _code: str, _point: QPointF, _place: Place) -> bool:
        """Lay down what was carried."""
        strip, self._live = self._live, None
        if strip is None:
            return False
        sliding.put_strip(self._session, strip, verb="Lay down")
        self._session.assign("chosen_strip", strip.number)
        return True

    def key(self, event: QKeyEvent, place: Place) -> bool:
        """Push the chosen strip with arrows; the other keys are those of its tools."""
        strip = sliding.chosen_strip(self._session)
        key = Qt.Key(event.key())
        if strip is None:
            return False
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if key in _ARROWS:
            step = _LONG_STEP_MM if shift else _STEP_MM
            across, down = _ARROWS[key]
            pushed = moved(strip, right_mm=across * step, down_mm=down * step)
            width_mm, height_mm = place.art_mm
            pushed = kept_on_art(pushed, width_mm=width_mm, height_mm=height_mm)
            sliding.put_strip(self._session, pushed, verb="Push", merge="arrows")
            return True
        return sliding.answer_key(self._session, strip, key, shift=shift)

    def _forget(self) -> None:
        self._columns, self._repeats = {}, {}

    def _read(self, strip: Strip) -> StripReading | None:
        reader, sample = self._session.strip_reader, self._sample(strip)
        if reader is None or sample is None or not sample.colours:
            return None
        if reader is not self._reader:
            self._reader, self._repeats = reader, {}
        if strip.code not in self._columns:
            self._columns[strip.code] = strip_columns(sample)
        columns = self._columns[strip.code]
        if strip.code not in self._repeats:
            self._repeats[strip.code] = repeated_colours(reader, columns)
        return read_strip(reader, strip, columns, self._repeats[strip.code])

    def _sample(self, strip: Strip) -> Sample | None:
        if strip.code not in self._session.catalogue:
            return None
        return self._session.sample_of(strip.code)

    def _strip_at(self, point: QPointF, place: Place) -> Strip | None:
        at_mm = place.screen_to_mm(point)
        return next((s for s in reversed(self.strips()) if is_on_strip(s, at_mm)), None)

    def _dot_colors(self) -> list[QColor]:
        repeats = self.reading.repeats if self.reading else ()
        return [color_of(repeated.lab) for repeated in repeats]


def _bearing(strip: Strip, at_mm: tuple[float, float]) -> float:
    return degrees(atan2(at_mm[1] - strip.y_mm, at_mm[0] - strip.x_mm))


def _is_near(point: QPointF, other: QPointF) -> bool:
    return (point - other).manhattanLength() <= _GRAB_PX


def _draw_handle(painter: QPainter, at: QPointF) -> None:
    painter.setPen(QPen(LIGHT, 1.6))
    painter.setBrush(DARK)
    painter.drawEllipse(at, HANDLE_PX, HANDLE_PX)
    painter.drawArc(QRectF(at.x() - 4, at.y() - 4, 8, 8), 40 * 16, 260 * 16)
