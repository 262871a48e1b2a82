"""The parts of the frame as a list, front to back: the same as the section, by typing and keys."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPalette, QPolygonF
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Design, Glazing
from framing_palette.design.changing import foot_of, shown_width, with_foot, with_shown_width
from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.controls import ElidedWords, IconButton, words
from framing_palette.window.forms import Choice, LengthField
from framing_palette.window.languages import told as in_language
from framing_palette.window.section.materials import paint_part
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import BODY, GAP, MARGIN, SMALL, WIDE_MARGIN

_SWATCH = QSize(40, 32)
_FIELD = 136
_STUFFS = {"glazing": "glass", "backing": "backing", "mount board": "core"}
_PANES: dict[str, Glazing | None] = {
    "glass": Glazing("glass", Length.mm_of(2)),
    "acrylic": Glazing("acrylic", Length.mm_of(3)),
    "none": None,
}


class PartRow(QWidget):
    """One part: a swatch, its name, the width that can be set; unfolds when it is chosen."""

    chosen = Signal()
    typed = Signal(object)

    def __init__(self, name: str, kind: str, *, is_chosen: bool) -> None:
        super().__init__()
        self.is_chosen = is_chosen
        self.draw_swatch: Callable[[QPainter, QRect], None] | None = None
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.name = ElidedWords(size=BODY, strong=is_chosen)
        self.name.set_text(name)
        self.kind = ElidedWords(size=SMALL, quiet=True)
        self.kind.set_text(kind)
        self.field: LengthField | None = None
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(WIDE_MARGIN, GAP, MARGIN, GAP)
        self.column.setSpacing(GAP)
        self._row = QHBoxLayout()
        self._row.setSpacing(MARGIN)
        self._row.addSpacing(_SWATCH.width() + MARGIN)
        told = QVBoxLayout()
        told.setSpacing(0)
        told.addWidget(self.name)
        told.addWidget(self.kind)
        self._row.addLayout(told, 1)
        self.column.addLayout(self._row)

    def add_field(self, told: str, length: Length, unit: str, denominator: int) -> None:
        """Add the field for the part's width."""
        field = LengthField(told)
        field.edit.setFixedWidth(_FIELD)
        field.edit.setAlignment(Qt.AlignmentFlag.AlignRight)
        field.show_value(length, unit, denominator)  # type: ignore[arg-type]
        field.taken.connect(self._take)
        field.setParent(self)  # only its parts are shown, each in its own place
        field.hide()
        self._row.addWidget(field.edit, 0, Qt.AlignmentFlag.AlignVCenter)
        self.column.addWidget(field.fault)
        self.field = field

    def say(self, fault: str) -> None:
        """Say below the row why the width was not taken."""
        if self.field is not None:
            self.field.say(fault)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the part."""
        super().mousePressEvent(event)
        self.chosen.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw ground, mark and swatch."""
        painter = QPainter(self)
        palette = self.palette()
        if self.is_chosen:
            painter.fillRect(self.rect(), palette.color(QPalette.ColorRole.Base))
            mark = palette.color(QPalette.ColorRole.Highlight)
            painter.fillRect(0, 0, 3, self.height(), mark)
        painter.setPen(palette.color(QPalette.ColorRole.Mid))
        foot = self.rect().bottomLeft() + QPoint(WIDE_MARGIN, 0)
        painter.drawLine(foot, self.rect().bottomRight())
        middle = self.name.geometry().united(self.kind.geometry()).center().y()
        box = QRect(QPoint(WIDE_MARGIN, middle - _SWATCH.height() // 2), _SWATCH)
        if self.draw_swatch is not None:
            self.draw_swatch(painter, box)

    def _take(self, length: Length) -> None:
        if self.field is not None and self.field.edit.isModified():
            self.typed.emit(length)


class PartList(QWidget):
    """Every part of the design in hand."""

    def __init__(self, session: Session, bench: Bench, swatches: SwatchBook) -> None:
        super().__init__()
        self._session = session
        self._bench = bench
        self._swatches = swatches
        self.rows: dict[str, PartRow] = {}
        self.panes: Choice | None = None
        self.foot: LengthField | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        for signal in (bench.changed, session.chosen_part_changed, session.preferences_changed):
            signal.connect(self.rebuild)
        swatches.arrived.connect(self.update)
        self.rebuild()

    def rebuild(self) -> None:
        """Make the rows anew, and keep the keyboard where it was."""
        had_focus = next((part for part, row in self.rows.items() if _holds_focus(row)), "")
        while (item := self._column.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.rows = {}
        self.panes = self.foot = None
        design = self._bench.design
        if design is None:
            return
        for part, name, kind in self._parts(design):
            self._add(design, part, name, kind)
        row = self.rows.get(had_focus)
        if row is not None and row.field is not None:
            row.field.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def say(self, fault: str) -> None:
        """Say below the chosen part why a change was not made."""
        row = self.rows.get(self._session.chosen_part)
        if row is not None:
            row.say(fault)

    def _parts(self, design: Design) -> Iterator[tuple[str, str, str]]:
        """Yield every part front to back: its key, its name, what it is."""
        session = self._session
        if design.moulding:
            sample = building.part_sample(session, "moulding")
            yield "moulding", sample.name if sample else self.tr("Moulding"), self.tr("frame")
        pane = design.glazing
        if pane is not None:
            thick = pane.thickness.show("mm")
            yield (
                "glazing",
                in_language(pane.material.capitalize()),
                self.tr("glazing, {thick}").format(thick=thick),
            )
        else:
            yield "glazing", self.tr("No glazing"), self.tr("the art stays open to touch and dust")
        for place in reversed(range(len(design.layers))):
            part, layer = f"layer {place + 1}", design.layers[place]
            sample = building.part_sample(session, part)
            kind = str(layer.kind).replace("_", " ")
            said = in_language(kind)
            yield part, sample.name if sample else layer.material or said, said
        yield "art", self.tr("The art"), self.tr("covered on each side by")
        if design.mount:
            yield "mount board", design.mount.material or self.tr("Board"), self.tr("mount board")
        if design.backing:
            thick = self._figures(design.backing.thickness)
            name = in_language(design.backing.material.capitalize()) or self.tr("Board")
            yield "backing", name, self.tr("backing, {thick}").format(thick=thick)

    def _figures(self, length: Length) -> str:
        preferences = self._session.preferences
        return in_language(length.show(preferences.unit, preferences.denominator))

    def _add(self, design: Design, part: str, name: str, kind: str) -> None:
        session = self._session
        preferences = session.preferences
        is_chosen = part == session.chosen_part
        row = PartRow(name, kind, is_chosen=is_chosen)
        sample = building.part_sample(session, part)
        if sample is not None:
            row.draw_swatch = lambda painter, box: self._swatches.draw(painter, box, sample)
        elif part in _STUFFS:
            row.draw_swatch = lambda painter, box: _draw_stuff(painter, box, _STUFFS[part])
        elif part == "art":
            row.draw_swatch = self._draw_art
        row.chosen.connect(lambda: session.assign("chosen_part", part))
        width = shown_width(design, part)
        if width is not None:
            row.add_field(
                self._told_width(part, name), width, preferences.unit, preferences.denominator
            )
            row.typed.connect(lambda length: self._set_width(part, length))
        if is_chosen:
            self._unfold(design, part, row)
        self.rows[part] = row
        self._column.addWidget(row)

    def _draw_art(self, painter: QPainter, box: QRect) -> None:
        pyramid = self._session.pyramid
        if pyramid is not None:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            small = pyramid.levels[-1]
            size = small.size().scaled(box.size(), Qt.AspectRatioMode.KeepAspectRatio)
            painter.drawImage(QRect(box.topLeft(), size), small)

    def _told_width(self, part: str, name: str) -> str:
        if part == "art":
            return self.tr("Overlap over the art")
        return self.tr("Width that shows of {name}").format(name=name)

    def _unfold(self, design: Design, part: str, row: PartRow) -> None:
        place = building.place_of(part)
        if place is not None:
            line = self._layer_actions(design, place, part)
            if place == design.outermost_mat:
                self._add_foot(design, line, row)
            row.column.addLayout(line)
        elif part == "glazing":
            self.panes = Choice(
                self.tr("Glazing"),
                (
                    ("glass", self.tr("Glass")),
                    ("acrylic", self.tr("Acrylic")),
                    ("none", self.tr("None")),
                ),
            )
            self.panes.show_value(design.glazing.material if design.glazing else "none")
            self.panes.picked.connect(self._set_pane)
            row.column.addWidget(self.panes)

    def _layer_actions(self, design: Design, place: int, part: str) -> QHBoxLayout:
        line = QHBoxLayout()
        line.setContentsMargins(_SWATCH.width() + MARGIN - GAP, 0, 0, 0)
        line.setSpacing(0)
        for icon, told, keys, can, act in (
            (
                "up",
                self.tr("Farther to the front"),
                "Alt+Up",
                place < len(design.layers) - 1,
                lambda: building.move_layer(self._session, part, place + 1),
            ),
            (
                "down",
                self.tr("Nearer to the art"),
                "Alt+Down",
                place > 0,
                lambda: building.move_layer(self._session, part, place - 1),
            ),
            (
                "away",
                self.tr("Take the layer out"),
                "Delete",
                True,
                lambda: building.remove_part(self._session, part),
            ),
        ):
            button = IconButton(icon, told, keys=keys)
            if not can:
                button.hide()
            button.clicked.connect(lambda _on=False, act=act: self._try(act))
            line.addWidget(button)
        line.addStretch(1)
        return line

    def _add_foot(self, design: Design, line: QHBoxLayout, row: PartRow) -> None:
        preferences = self._session.preferences
        line.addWidget(words(self.tr("foot wider by"), size="small", quiet=True))
        line.addSpacing(MARGIN)
        self.foot = LengthField(self.tr("Wider at the foot by"))
        self.foot.edit.setFixedWidth(_FIELD)
        self.foot.edit.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.foot.show_value(foot_of(design), preferences.unit, preferences.denominator)
        self.foot.taken.connect(self._set_foot)
        self.foot.setParent(row)
        self.foot.hide()
        line.addWidget(self.foot.edit)

    def _set_width(self, part: str, width: Length) -> None:
        design = self._bench.design
        if design is not None:
            said = (
                self.tr("Overlap")
                if part == "art"
                else self.tr("Width of {part}").format(part=in_language(part))
            )
            self._session.assign("chosen_part", part)
            self._try(
                lambda: building.put_design(
                    self._session, with_shown_width(design, part, width), said
                )
            )

    def _set_foot(self, more: Length) -> None:
        design = self._bench.design
        if design is not None and self.foot is not None and self.foot.edit.isModified():
            said = self.tr("Foot of the mat")
            self._try(lambda: building.put_design(self._session, with_foot(design, more), said))

    def _set_pane(self, name: object) -> None:
        design = self._bench.design
        if design is not None:
            changed = replace(design, glazing=_PANES[str(name)])
            said = self.tr("Glazing: {name}").format(name=in_language(str(name)))
            self._try(lambda: building.put_design(self._session, changed, said))

    def _try(self, change: Callable[[], None]) -> None:
        try:
            change()
        except FramingPaletteError as error:
            self.say(in_language(str(error)))


def _draw_stuff(painter: QPainter, box: QRect, stuff: str) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    slab = QRectF(box).adjusted(0.5, 8.5, -0.5, -8.5)
    paint_part(painter, stuff, QPolygonF(slab), QColor(128, 128, 128))


def _holds_focus(row: PartRow) -> bool:
    return row.field is not None and row.field.edit.hasFocus()
