"""The window proper: path, job line, stage, shelf and rail, the same for every step."""

from collections.abc import Callable
from functools import partial
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import (
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
    QResizeEvent,
    QShortcut,
)
from PySide6.QtWidgets import (
    QApplication,
    QGridLayout,
    QVBoxLayout,
    QWidget,
)

from framing_palette.errors import FramingPaletteError
from framing_palette.window.bringing import Bringing
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.client_view import ClientView
from framing_palette.window.controls import IconButton, Pages, rule
from framing_palette.window.errands import Errands
from framing_palette.window.focus_ring import FocusRing
from framing_palette.window.job_book.book import BookState, JobBook
from framing_palette.window.job_book.differing import DifferingBar
from framing_palette.window.job_book.door import BookDoor
from framing_palette.window.job_book.keeper import usual_keeper
from framing_palette.window.job_line import JobLine
from framing_palette.window.keeping import bring_back
from framing_palette.window.keeping_looks import keep_look
from framing_palette.window.keys_sheet import KeysSheet
from framing_palette.window.notice import NoticeBar
from framing_palette.window.path import Path
from framing_palette.window.preference_files import taste_path, write_preferences
from framing_palette.window.preferences import Preferences
from framing_palette.window.rack.book import RackBook
from framing_palette.window.rack.door import RackDoor
from framing_palette.window.rail import Rail
from framing_palette.window.runner import Runner
from framing_palette.window.saving import FILE, Saving
from framing_palette.window.screen_bar import ScreenBar
from framing_palette.window.session import Session
from framing_palette.window.settings_shelf import SettingsShelf
from framing_palette.window.steps import STEPS, Counter
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.taste_book import WRITING as TASTE
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.theme import put_on, tokens_named
from framing_palette.window.tokens import SHELF_NARROW, SHELF_WIDE
from framing_palette.window.tour import Tour

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper

_SHELF_SHARE = 0.26
_LOW_WINDOW = 560
_PREFERENCES_REST_MS = 400


class Shell(QWidget):
    """Brings the parts together; it holds no state but what is shown."""

    def __init__(
        self,
        preferences: Preferences | None = None,
        *,
        preferences_file: FilePath | None = None,
        keeper: "Callable[[], Keeper] | None" = None,
    ) -> None:
        super().__init__()
        self.setObjectName("shell")
        self.setWindowTitle(self.tr("Framing Palette"))
        self.setAcceptDrops(True)
        self.session = Session(self)
        self.session.preferences = preferences or Preferences()
        self._preferences_file = preferences_file
        self.runner = Runner(self)
        self.errands = Errands(self.session, self.runner)
        self.job_book = JobBook(self.session, self.errands, keeper or usual_keeper)
        self.saving = Saving(self.session, self.errands, self.job_book)
        self.bringing = Bringing(self.session, self.errands, self.saving, self)
        swatches = SwatchBook(self.session, self.runner)
        self.taste = TasteBook(self.session, self.errands, taste_path(preferences_file))
        self.counter = Counter(self.session, self.errands, Outlook(self), swatches, self.taste)
        self.steps = {kind.key: kind(self.counter) for kind in STEPS}
        self.doors = self._make_doors()
        self.path = Path(tuple(self.steps.values()), tuple(self.doors.values()))
        self.job_line = JobLine(self.session)
        self.rail = Rail(self.session, swatches)
        self.notice = NoticeBar(self.session)
        self.screen_bar = ScreenBar(self.session)
        self.differing = DifferingBar(self.session, self.saving)
        self.stages = Pages()
        self.shelves = Pages()
        self.client_view: ClientView | None = None
        self.rack_book = RackBook(self.session, self.errands)
        self.rack: RackDoor | None = None
        self.book: BookDoor | None = None
        self._settings: SettingsShelf | None = None
        self._made: dict[str, int] = {}
        self._shelf_of: dict[str, QWidget] = {}
        self._wants_rail = True
        self._lay_out()
        self.keys_sheet = KeysSheet(self)
        parts = {"path": self.path, "shelf": self.shelves, "stage": self.stages}
        self.tour = Tour(self, {**parts, "rail": self.rail})
        self.focus_ring = FocusRing(self)
        self._preferences_soon = QTimer(self, interval=_PREFERENCES_REST_MS, singleShot=True)
        self._wire()
        self.resize(1366, 768)
        self.go(next(iter(self.steps)))

    def go(self, key: str) -> None:
        """Go to a step; its stage and shelf are made on the first visit."""
        step = self.steps[key]
        if key not in self._made:
            step.picture_wanted.connect(self.bringing.ask_for_file)
            step.picture_dropped.connect(self.open_file)
            self.stages.addWidget(step.stage())
            shelf = step.shelf()
            self.shelves.addWidget(shelf)
            self._made[key] = self.stages.count() - 1
            self._shelf_of[key] = shelf
        self.stages.setCurrentIndex(self._made[key])
        self._show_shelf_of(key)
        for door in ("settings", "rack", "book"):
            self.doors[door].setChecked(False)
        self.path.show_at(key)
        self.session.assign("step", key)
        step.arrive()

    def open_file(self, path: FilePath) -> None:
        """Open a job file, or begin a job on a photograph."""
        self.bringing.open_file(path)

    def paste(self) -> None:
        """Begin a job on the picture or file in the clipboard."""
        self.bringing.paste()

    def toggle_client_view(self) -> None:
        """Bring the client's view, or put it away."""
        if self.client_view is None:
            self.client_view = ClientView(self.session, self.counter.swatches, self.errands)
        if self.client_view.isVisible():
            self.client_view.hide()
        else:
            self.client_view.open()

    def toggle_rack(self) -> None:
        """Show the whole rack, or go back to the step."""
        if self.rack is None:
            self.rack = RackDoor(self.counter, self.rack_book, self)
            self.rack.left.connect(lambda: self.go("choose"))
            self.stages.addWidget(self.rack.stage)
            self.shelves.addWidget(self.rack.shelf)
        if self._is_at_rack():
            self.go(self.session.step)
            return
        self._open_door("rack", self.rack.stage, self.rack.shelf)

    def toggle_book(self) -> None:
        """Open the job book, or go back to the step."""
        if self.book is None:
            self.book = BookDoor(self.session, self.errands, self.job_book)
            self.book.left.connect(lambda: self.go("choose"))
            self.book.file_wanted.connect(self.bringing.ask_for_file)
            self.stages.addWidget(self.book.stage)
            self.shelves.addWidget(self.book.shelf)
        if self._is_at_book():
            self.go(self.session.step)
            return
        self._open_door("book", self.book.stage, self.book.shelf)
        self.book.stage.words.setFocus(Qt.FocusReason.OtherFocusReason)

    def toggle_settings(self) -> None:
        """Lay the settings on the shelf, or the step's own things back."""
        if self._settings is None:
            self._settings = SettingsShelf(self.session, self.job_book)
            self.shelves.addWidget(self._settings)
        if self.shelves.currentWidget() is self._settings:
            self._show_shelf_of(self.session.step)
        else:
            self.shelves.setCurrentWidget(self._settings)
            self.shelves.show()
        self.doors["settings"].setChecked(self.shelves.currentWidget() is self._settings)

    def _show_screen_check(self) -> None:
        if self._settings is None or self.shelves.currentWidget() is not self._settings:
            self.toggle_settings()
        if self._settings is not None:
            QTimer.singleShot(0, self._settings, self._settings.show_screen_check)

    def toggle_shelf(self) -> None:
        """Put the shelf away, or bring it back."""
        self.shelves.setVisible(self.shelves.isHidden())

    def toggle_rail(self) -> None:
        """Put the rail away, or bring it back."""
        self._wants_rail = self.rail.isHidden()
        self.rail.setVisible(self._wants_rail)

    def start_tour(self) -> None:
        """Show the first card of the tour."""
        self.keys_sheet.hide()
        self.tour.start()

    def focusNextPrevChild(self, is_next: bool) -> bool:  # noqa: FBT001 - Qt's own form
        """Let the ring follow where the Tab key goes."""
        self.focus_ring.expect()
        return super().focusNextPrevChild(is_next)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the shelf its share of the width, and the rail its place where there is one."""
        super().resizeEvent(event)
        wanted = round(self.width() * _SHELF_SHARE / 4) * 4
        self.shelves.setFixedWidth(max(SHELF_NARROW, min(SHELF_WIDE, wanted)))
        self.rail.setVisible(self._wants_rail and self.height() >= _LOW_WINDOW)
        left, top = self.path.width() + 1, self.job_line.height() + 1
        self.keys_sheet.setGeometry(left, top, self.width() - left, self.height() - top)
        self.tour.place()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let a photograph or a job file be dropped wherever nothing else takes it."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the first dropped file."""
        self.bringing.take_dropped(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Wait until nothing works in the background any more."""
        if self.client_view is not None:
            self.client_view.close()
        self.taste.finish()
        self.runner.close(finish=(FILE, TASTE))
        self.saving.finish()
        self.job_book.close()
        self.rack_book.finish()
        for step in self.steps.values():
            step.finish()
        super().closeEvent(event)

    def _end_tour(self) -> None:
        toured = self.session.preferences.changed("toured", value=True)
        self.session.assign("preferences", toured)

    def _make_doors(self) -> dict[str, IconButton]:
        doors = {
            "book": IconButton("book", self.tr("The job book"), keys="F7"),
            "rack": IconButton("rack", self.tr("The rack"), keys="F6"),
            "client": IconButton("client", self.tr("The client's view"), keys="F11"),
            "keys": IconButton("keys", self.tr("Keys"), keys="F1"),
            "settings": IconButton("settings", self.tr("Settings"), keys="Ctrl+,"),
        }
        for name in ("settings", "rack", "book"):
            doors[name].setCheckable(True)
        doors["book"].clicked.connect(self.toggle_book)
        doors["rack"].clicked.connect(self.toggle_rack)
        doors["client"].clicked.connect(self.toggle_client_view)
        doors["settings"].clicked.connect(self.toggle_settings)
        return doors

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        middle = QVBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.stages, 1)
        middle.addWidget(self.differing)
        middle.addWidget(self.notice)
        middle.addWidget(self.screen_bar)
        middle.addWidget(rule())
        middle.addWidget(self.rail)
        grid.addWidget(self.path, 0, 0, 3, 1)
        grid.addWidget(rule(down=True), 0, 1, 3, 1)
        grid.addWidget(self.job_line, 0, 2, 1, 3)
        grid.addWidget(rule(), 1, 2, 1, 3)
        grid.addLayout(middle, 2, 2)
        grid.addWidget(rule(down=True), 2, 3)
        grid.addWidget(self.shelves, 2, 4)
        grid.setColumnStretch(2, 1)
        grid.setRowStretch(2, 1)

    def _wire(self) -> None:
        self.path.chosen.connect(self.go)
        self.doors["keys"].clicked.connect(self.keys_sheet.toggle)
        self.tour.asked_for_step.connect(self.go)
        self.tour.ended.connect(self._end_tour)
        self.keys_sheet.tour.clicked.connect(self.start_tour)
        self.rail.chosen.connect(lambda number: bring_back(self.session, number))
        self.rail.compare.clicked.connect(self._toggle_comparing)
        self.job_line.sought.connect(self._search)
        self.screen_bar.check_wanted.connect(self._show_screen_check)
        self.job_line.shelf.clicked.connect(self.toggle_shelf)
        self.job_line.rail.clicked.connect(self.toggle_rail)
        self.runner.busy_changed.connect(self._say_doing)
        self.job_book.state_changed.connect(self._show_damage)
        self.session.preferences_changed.connect(self._follow_preferences)
        self._preferences_soon.timeout.connect(self._save_preferences)
        for number in range(4):
            self._key(str(number + 1), partial(bring_back, self.session, number))
        for keys, act in (
            ("/", self._begin_search),
            ("F1", self.keys_sheet.toggle),
            ("?", self.keys_sheet.toggle),
            ("F6", self.toggle_rack),
            ("F7", self.toggle_book),
            ("F8", self.toggle_rail),
            ("Ctrl+K", partial(keep_look, self.session)),
            ("F9", self.toggle_shelf),
            ("F11", self.toggle_client_view),
            ("Ctrl+,", self.toggle_settings),
            ("Ctrl+O", self.bringing.ask_for_file),
            ("Ctrl+S", self.bringing.ask_where_to_save),
            ("Ctrl+V", self.paste),
        ):
            self._key(keys, act)

    def _key(self, keys: str, act: Callable[[], None]) -> None:
        shortcut = QShortcut(QKeySequence(keys), self)
        shortcut.activated.connect(act)

    def _show_shelf_of(self, key: str) -> None:
        door = self.rack if self._is_at_rack() else self.book if self._is_at_book() else None
        self.shelves.setCurrentWidget(door.shelf if door is not None else self._shelf_of[key])

    def _show_damage(self) -> None:
        if self.job_book.state is BookState.DAMAGED and not self._is_at_book():
            self.toggle_book()

    def _open_door(self, name: str, stage: QWidget, shelf: QWidget) -> None:
        self.stages.setCurrentWidget(stage)
        self.shelves.setCurrentWidget(shelf)
        for door in ("settings", "rack", "book"):
            self.doors[door].setChecked(door == name)

    def _is_at_book(self) -> bool:
        return self.book is not None and self.stages.currentWidget() is self.book.stage

    def _is_at_rack(self) -> bool:
        return self.rack is not None and self.stages.currentWidget() is self.rack.stage

    def _toggle_comparing(self) -> None:
        self.session.show_side_by_side(shown=not self.session.comparing)
        if self.session.comparing:
            self.go("choose")

    def _begin_search(self) -> None:
        self.job_line.search.setVisible(True)
        self.job_line.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.job_line.search.selectAll()

    def _search(self, text: str) -> None:
        if self.rack is not None and self._is_at_rack():
            self.rack.search(text)
            return
        if self.book is not None and self._is_at_book():
            self.book.search(text)
            return
        if text and not self.steps[self.session.step].searches:
            self.go("choose")
        self.steps[self.session.step].search(text)

    def _follow_preferences(self) -> None:
        app = QApplication.instance()
        tokens = tokens_named(self.session.preferences.theme)
        if isinstance(app, QApplication) and app.property("theme") != tokens.name:
            put_on(app, tokens)
        self._preferences_soon.start()

    def _save_preferences(self) -> None:
        try:
            write_preferences(self.session.preferences, self._preferences_file)
        except FramingPaletteError as error:
            self.errands.tell(error)

    def _say_doing(self) -> None:
        said = {
            "job": self.tr("Opening the picture"),
            "catalogue": self.tr("Loading the rack"),
            "findings": self.tr("Reading the picture"),
            "ranking": self.tr("Judging the rack"),
        }
        busy = next((words for topic, words in said.items() if self.runner.is_busy(topic)), "")
        self.job_line.set_doing(busy)
