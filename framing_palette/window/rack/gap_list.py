"""The gaps: what this picture asks for, farthest from the rack first, with the nearest there is."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.ranking.gaps import NEAR_ENOUGH, Reach, Relation
from framing_palette.window.controls import words
from framing_palette.window.forms import scrolled
from framing_palette.window.greys import color_of
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.state import Look, RackState
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, GAP, MARGIN, SECTION, SMALL, WIDE_MARGIN

_ROW = 72
ROLE = QPalette.ColorRole


class GapList(QWidget):
    """One row for each colour that nothing in stock comes near."""

    chosen = Signal(object)

    def __init__(self, state: RackState) -> None:
        super().__init__()
        self._state = state
        self.told = words(size="small", quiet=True, wrap=True)
        self.told.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, GAP)
        self.rows: list[GapRow] = []
        inside = QWidget()
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(0, 0, 0, SECTION)
        self._column.setSpacing(0)
        self._column.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.told)
        column.addWidget(scrolled(inside), 1)
        state.reaches_changed.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Show the gaps as they are now."""
        for row in self.rows:
            self._column.removeWidget(row)
            row.deleteLater()
        reaches = self._state.reaches
        gaps = sorted((one for one in reaches if one.is_gap), key=lambda one: -one.delta_e)
        self.rows = [GapRow(one, self._nearest(one)) for one in gaps]
        for place, row in enumerate(self.rows):
            row.clicked.connect(lambda _on=False, row=row: self._choose(row))
            self._column.insertWidget(place, row)
        self.told.setText(self._sum(len(gaps), len(reaches)))

    def _choose(self, row: "GapRow") -> None:
        self.chosen.emit(Look(row.reach.lab, row.reach.name))

    def _nearest(self, reach: Reach) -> str:
        return self._state.sample(reach.row).name if reach.row >= 0 else ""

    def _sum(self, gaps: int, asked: int) -> str:
        if not asked:
            return self.tr("Open a picture to see which of its colours the rack cannot answer.")
        if not gaps:
            return self.tr(
                "The rack answers everything: each of {asked} colours that this picture asks for "
                "has a sample in stock within ΔE₀₀ {near:.0f}."
            ).format(asked=asked, near=NEAR_ENOUGH)
        return self.tr(
            "{gaps} of {asked} colours that this picture asks for, itself or more quietly, have "
            "nothing in stock within ΔE₀₀ {near:.0f}."
        ).format(gaps=gaps, asked=asked, near=NEAR_ENOUGH)


class GapRow(QAbstractButton):
    """The colour asked for, what it is to the picture, and the nearest there is."""

    def __init__(self, reach: Reach, nearest: str) -> None:
        super().__init__()
        self.reach = reach
        said = {
            Relation.SAME: self.tr("in the picture"),
            Relation.QUIETER: self.tr("weaker than in the picture"),
            Relation.PALER: self.tr("paler than in the picture"),
            Relation.DEEPER: self.tr("deeper than in the picture"),
        }[reach.relation]
        self.title = in_language(f"{reach.name[:1].upper()}{reach.name[1:]}")
        self.said = said
        if nearest:
            self.facts = self.tr("Nearest: {name}, ΔE₀₀ {delta_e:.1f}").format(
                name=nearest, delta_e=reach.delta_e
            )
        else:
            self.facts = self.tr("Nothing in stock at all")
        self.setAccessibleName(f"{self.title}, {self.said}. {self.facts}")
        self.setToolTip(f"{self.title}, {self.said}\n{self.facts}")
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Ask for two lines beside a patch."""
        return QSize(280, _ROW)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw patch and words."""
        painter = QPainter(self)
        palette = self.palette()
        if self.underMouse() or self.isDown():
            painter.fillRect(self.rect(), palette.color(ROLE.Light))
        patch = QRectF(WIDE_MARGIN, GAP, 48, _ROW - 2 * GAP)
        painter.fillRect(patch, color_of(self.reach.lab))
        painter.setPen(palette.color(ROLE.Mid))
        painter.drawRect(patch.adjusted(0, 0, -1, -1))
        left = patch.right() + MARGIN
        top = 7.0
        for size, role, text in (
            (BODY, ROLE.WindowText, self.title),
            (SMALL, ROLE.PlaceholderText, self.said),
            (SMALL, ROLE.PlaceholderText, self.facts),
        ):
            painter.setFont(type_font(size))
            painter.setPen(palette.color(role))
            metrics = painter.fontMetrics()
            room = self.width() - left - WIDE_MARGIN
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, int(room))
            painter.drawText(QRectF(left, top, room, metrics.height()), 0, shown)
            top += metrics.height() + 2
