"""The rack's stage: what is wanted above, the lightness at the left, the map or the list."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.catalogue.search import HUE_FAMILIES_DEG
from framing_palette.window.controls import Chip, IconButton, Pages, ToolBar, rule, words
from framing_palette.window.flow import FlowLayout
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.images import image_of
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.kinds import kind_choices
from framing_palette.window.rack.levels import LevelMaps
from framing_palette.window.rack.lightness_bar import LightnessBar
from framing_palette.window.rack.list_view import RackList
from framing_palette.window.rack.map_view import RackMap
from framing_palette.window.rack.match_sheet import MatchSheet
from framing_palette.window.rack.state import RackState
from framing_palette.window.rack.swatch_photo import SwatchPhoto
from framing_palette.window.runner import Runner
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.tokens import GAP, WIDE_MARGIN

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.catalogue import Kind
    from framing_palette.catalogue.shop_swatch_files import SwatchPhotograph
    from framing_palette.window.rack.swatch_photo import Outline

FAMILIES = (*HUE_FAMILIES_DEG, "neutral")
MAP, LEVEL, LIST = "map", "levels", "list"
_LOW, _NARROW = 420, 560


class RackStage(QWidget):
    """Everything of the rack that lies in the middle."""

    def __init__(self, state: RackState, runner: Runner, swatches: SwatchBook) -> None:
        super().__init__()
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._state = state
        self.map = RackMap(state, runner, swatches)
        self.list = RackList(state, swatches)
        self.lightness = LightnessBar(state)
        self.families = Choice(
            self.tr("Family"),
            (("", self.tr("All")), *((name, in_language(name.capitalize())) for name in FAMILIES)),
        )
        self.kinds: dict[Kind, Chip] = {}
        self.there = Chip(self.tr("In stock"), told=self.tr("Show only what is in stock"))
        self.liked = Chip(self.tr("Favourites"), told=self.tr("Show only the shop's favourites"))
        self.narrow = Chip(self.tr("Narrow down"), told=self.tr("Show families and kinds"))
        self.filters, self._middle = QWidget(), QWidget()
        self._head, self._folded = QHBoxLayout(), QVBoxLayout()
        self.views = Choice(
            self.tr("Show as"),
            ((MAP, self.tr("Map")), (LEVEL, self.tr("Levels")), (LIST, self.tr("List"))),
        )
        self.pages = Pages()
        self.levels = LevelMaps(state, runner)
        self.plate = QWidget()
        self.match = MatchSheet()
        self.photo = SwatchPhoto(state.session)
        self.bar = MapBar(self.map)
        self._foot = words(size="small", quiet=True, wrap=True)
        self._lay_out()
        self.families.picked.connect(self._show_family)
        self.views.picked.connect(self.show_view)
        for signal in (state.points_changed, state.wanted_changed, state.reaches_changed):
            signal.connect(self._tell)
        self.show_view(MAP)
        self._tell()

    def show_view(self, view: object) -> None:
        """Show the map or the list."""
        self.views.show_value(view)
        shown = {MAP: self.plate, LEVEL: self.levels, LIST: self.list}
        self.pages.setCurrentWidget(shown[str(view)])
        self.lightness.show()

    def show_matching(self) -> None:
        """Show which column of a spreadsheet is which."""
        self.pages.setCurrentWidget(self.match)
        self.lightness.hide()

    def show_photograph(
        self, photograph: "SwatchPhotograph", outlines: "Sequence[Outline]", *, are_many: bool
    ) -> None:
        """Show a photograph of swatches with an outline round each."""
        image = image_of(photograph.srgb)
        self.photo.plate.show_photograph(image, outlines, photograph.chart)
        self.photo.show_many(are_many=are_many)
        self.pages.setCurrentWidget(self.photo)
        self.lightness.hide()

    def take_incoming(self, incoming: object) -> None:
        """Show how a spreadsheet is read now; without one go back to the map."""
        from framing_palette.catalogue.incoming_files import Incoming

        if isinstance(incoming, Incoming):
            self.match.show_incoming(incoming)
        elif self.pages.currentWidget() is self.match:
            self.show_view(MAP)

    def _lay_out(self) -> None:
        inside = QVBoxLayout(self.filters)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(0)
        inside.addWidget(self.families)
        inside.addLayout(self._kind_row())
        chips = self.views.chips.values()
        self.views.setFixedWidth(sum(chip.sizeHint().width() + GAP for chip in chips))
        top = Qt.AlignmentFlag.AlignTop
        head = self._head
        head.setContentsMargins(WIDE_MARGIN, 4, WIDE_MARGIN, 4)
        head.setSpacing(GAP)
        head.addWidget(self.filters, 100)
        head.addWidget(self.narrow, 0, top)
        head.addStretch(1)
        head.addWidget(self.views, 0, top)
        self._fill_pages()
        room = QWidget()
        self._folded.setContentsMargins(WIDE_MARGIN, 4, WIDE_MARGIN, 4)
        around = QVBoxLayout(room)
        around.setContentsMargins(0, 0, 0, 0)
        around.addLayout(self._folded)
        around.addStretch(1)
        self._filter_page = scrolled(room)
        middle = QHBoxLayout(self._middle)
        middle.setContentsMargins(0, 0, 0, 0)
        middle.setSpacing(0)
        middle.addWidget(self.lightness)
        middle.addWidget(rule(down=True))
        middle.addWidget(self.pages, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self._filter_page, 1)
        column.addWidget(self._middle, 1)
        column.addWidget(rule())
        self._foot.setContentsMargins(WIDE_MARGIN, 4, WIDE_MARGIN, 4)
        column.addWidget(self._foot)

    def _fill_pages(self) -> None:
        over = QGridLayout(self.plate)
        over.setContentsMargins(0, 0, 0, 0)
        over.addWidget(self.map, 0, 0)
        corner = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom
        over.addWidget(self.bar, 0, 0, corner)
        self.pages.addWidget(self.plate)
        self.pages.addWidget(self.levels)
        self.levels.picked.connect(lambda: self.show_view(MAP))
        self.pages.addWidget(self.list)
        self.pages.addWidget(self.match)
        self.pages.addWidget(self.photo)
        self.photo.left.connect(lambda: self.show_view(MAP))
        self.match.left.connect(lambda: self.show_view(MAP))

    def _kind_row(self) -> FlowLayout:
        flow = FlowLayout(gap=GAP, row_gap=-8)
        for kind, text in kind_choices():
            chip = Chip(text, told=self.tr("Show only: {kind}").format(kind=text))
            chip.toggled.connect(self._want_kinds)
            self.kinds[kind] = chip
            flow.addWidget(chip)
        self.there.toggled.connect(lambda on: self._state.want(only_there=on))
        self.liked.toggled.connect(lambda on: self._state.want(only_liked=on))
        self.narrow.toggled.connect(lambda _on: self._fold())
        flow.addWidget(self.there)
        flow.addWidget(self.liked)
        return flow

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold the filters away where the window is low."""
        super().resizeEvent(event)
        self._fold()
        self._fit_foot()

    def _fold(self) -> None:
        """Give the filters a page of their own where the window is small."""
        is_low = self.height() < _LOW or self.width() < _NARROW
        if is_low and self._head.indexOf(self.filters) >= 0:
            self._head.removeWidget(self.filters)
            self._folded.addWidget(self.filters)
        elif not is_low and self._head.indexOf(self.filters) < 0:
            self._folded.removeWidget(self.filters)
            self._head.insertWidget(0, self.filters, 100)
        is_open = is_low and self.narrow.isChecked()
        self.narrow.setVisible(is_low)
        self.filters.setVisible(not is_low or is_open)
        self._foot.setVisible(not is_low)
        self._filter_page.setVisible(is_open)
        self._middle.setVisible(not is_open)

    def _want_kinds(self) -> None:
        chosen = frozenset(kind for kind, chip in self.kinds.items() if chip.isChecked())
        self._state.want(kinds=chosen)

    def _show_family(self, family: object) -> None:
        self.families.show_value(family)
        self._state.want(family=str(family))
        self.map.fit()

    def _tell(self) -> None:
        state = self._state
        self.families.show_value(state.wanted.family)
        shown, there = int(state.passing.sum()), len(state.points)
        told = [self.tr("{shown:,} of {there:,} samples").format(shown=shown, there=there)]
        told.append(self.tr("a hollow tile is out of stock"))
        if state.reaches:
            told.append(self.tr("rings are the picture's colours, a crossed ring is a gap"))
        self._foot.setText("  ·  ".join(told))
        self._fit_foot()

    def _fit_foot(self) -> None:
        """Give the foot the height that its words need, whatever the pages above it ask for."""
        self._foot.setMinimumHeight(self._foot.heightForWidth(self.width()))


class MapBar(ToolBar):
    """What the hand does on the map, and how near it looks."""

    def __init__(self, view: RackMap) -> None:
        super().__init__()
        self._view = view
        self.lasso = IconButton("lasso", self.tr("Lay side by side what a lasso holds"), keys="L")
        self.lasso.setCheckable(True)
        self.lasso.clicked.connect(lambda on: view.set_lassoing(is_on=on))
        view.lasso_changed.connect(lambda: self.lasso.setChecked(view.is_lassoing))
        self.add(self.lasso)
        for icon, told, keys, act in (
            ("minus", self.tr("Look from farther away"), "-", lambda: view.zoom_by(0.8)),
            ("fit", self.tr("Show all that is wanted"), "0", view.fit),
            ("plus", self.tr("Look closer"), "+", lambda: view.zoom_by(1.25)),
        ):
            button = IconButton(icon, told, keys=keys)
            button.clicked.connect(act)
            self.add(button)
