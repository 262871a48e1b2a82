"""A region on the shelf: its name, its role, its palette, its accents, its texture in words."""

from PySide6.QtCore import QCoreApplication, QPoint, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.picture import PaletteColour, RegionFinding, Role
from framing_palette.picture.texture_words import texture_words
from framing_palette.window.controls import Chip, IconButton, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.languages import told as in_language
from framing_palette.window.palette_strip import PaletteStrip, palette_words
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN


class RegionCard(QWidget):
    """Shows one finding; an open card of a drawn region can be named, cast and deleted."""

    chosen = Signal()
    renamed = Signal(str)
    cast = Signal(object)
    deleted = Signal()
    lit = Signal(object)

    def __init__(self, title: str, role: Role, *, is_open: bool) -> None:
        super().__init__()
        self._is_open = is_open
        self._role = role
        self._is_drawn = role not in (Role.RIM, Role.WHOLE)
        self.strip = PaletteStrip()
        self.strip.lit.connect(self._tell_lit)
        self.name = QLineEdit(title)
        self.chips: dict[Role, Chip] = {}
        self._title = words(title, strong=True)
        self._told = words(size="small", quiet=True, wrap=True)
        self._more = words(size="small", quiet=True, wrap=True)
        self._finding: RegionFinding | None = None
        self._lay_out()

    def show_finding(self, finding: RegionFinding) -> None:
        """Show what was found in the region."""
        self._finding = finding
        self.strip.set_colours(finding.colours)
        self._tell_lit(None)
        if self._is_open:
            self._more.setText(more_words(finding))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the region."""
        super().mousePressEvent(event)
        self.chosen.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground of an open card and its mark."""
        painter = QPainter(self)
        palette = self.palette()
        if self._is_open:
            painter.fillRect(self.rect(), palette.color(QPalette.ColorRole.Base))
            mark = palette.color(QPalette.ColorRole.Highlight)
            painter.fillRect(0, 0, 3, self.height(), mark)
        line = palette.color(QPalette.ColorRole.Mid)
        foot = self.rect().bottomLeft() + QPoint(WIDE_MARGIN, 0)
        painter.setPen(line)
        painter.drawLine(foot, self.rect().bottomRight())

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        column.setSpacing(GAP)
        column.addLayout(self._head())
        if self._is_open and self._is_drawn:
            column.addLayout(self._roles())
        column.addWidget(self.strip)
        column.addWidget(self._told)
        column.addWidget(self._more)
        self._more.setVisible(self._is_open)

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(GAP)
        if not (self._is_open and self._is_drawn):
            row.addWidget(self._title)
            row.addStretch(1)
            row.addWidget(words(role_words(self._role), size="small", quiet=True))
            return row
        self.name.setAccessibleName(self.tr("Name of the region"))
        self.name.editingFinished.connect(lambda: self.renamed.emit(self.name.text()))
        delete = IconButton("away", self.tr("Delete the region"), keys="Delete")
        delete.clicked.connect(self.deleted)
        row.addWidget(self.name, 1)
        row.addWidget(delete)
        return row

    def _roles(self) -> FlowLayout:
        flow = FlowLayout(gap=GAP, row_gap=-8)
        group = QButtonGroup(self)
        for role, text in (
            (Role.FOCUS, self.tr("Eye rests here")),
            (Role.SUPPORT, self.tr("Supports")),
            (Role.GROUND, self.tr("Background")),
        ):
            chip = Chip(text)
            chip.setChecked(role is self._role)
            chip.clicked.connect(lambda _on=False, role=role: self.cast.emit(role))
            group.addButton(chip)
            self.chips[role] = chip
            flow.addWidget(chip)
        return flow

    def _tell_lit(self, colour: PaletteColour | None) -> None:
        if colour is not None:
            self._told.setText(f"{in_language(colour.name)}, {colour.share:.1%}")
        elif self._finding is not None:
            self._told.setText(palette_words(self._finding.colours, most=3))
        self.lit.emit(colour)


def role_words(role: Role) -> str:
    """Return what a role means, short enough for the head of a card."""
    tell = QCoreApplication.translate
    return {
        Role.FOCUS: tell("RegionCard", "the eye rests here"),
        Role.SUPPORT: tell("RegionCard", "supports"),
        Role.GROUND: tell("RegionCard", "background"),
        Role.RIM: tell("RegionCard", "what a border touches"),
        Role.WHOLE: "",
    }[role]


def more_words(finding: RegionFinding) -> str:
    """Return accents and texture in words."""
    lines = []
    if finding.accents:
        names = ", ".join(dict.fromkeys(in_language(one.name) for one in finding.accents[:4]))
        said = QCoreApplication.translate("RegionCard", "Accents: {names}.")
        lines.append(said.format(names=names))
    text = in_language(texture_words(finding.texture))
    lines.append(f"{text[0].upper()}{text[1:]}.")
    return "\n".join(lines)
