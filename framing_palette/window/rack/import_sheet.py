"""Bringing samples in: a spreadsheet or an instrument's export, looked at before it is taken."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from framing_palette.catalogue import Conditions, Kind
from framing_palette.errors import FramingPaletteError
from framing_palette.window.controls import push_button, words
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.forms import Choice, scrolled_column
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.book import RackBook
from framing_palette.window.rack.button_rows import at_left
from framing_palette.window.rack.import_history import ImportHistory
from framing_palette.window.rack.kinds import kind_choices
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from framing_palette.catalogue.incoming_files import Incoming
    from framing_palette.catalogue.shop_rack_files import FilePreview

_MOST_TOLD = 40
_NOT_KNOWN = ""


class ImportSheet(FileDrops):
    """First the file, then what it would change, then the change itself, which can be undone."""

    looked_into = Signal(object)
    """The spreadsheet whose columns are to be matched; None when there is none any more."""

    matching_asked = Signal()

    def __init__(self, book: RackBook) -> None:
        super().__init__()
        from framing_palette.catalogue.incoming_files import HowToRead

        self._book = book
        self._path: Path | None = None
        self.preview: FilePreview | None = None
        self.how: HowToRead = HowToRead()
        self.kinds = Choice(self.tr("What the rows are"), kind_choices())
        self.kinds.show_value(self.how.kind)
        self.open_button = push_button(self.tr("Choose a file"), rank="first")
        self.title = words(strong=True, wrap=True)
        self.sum = words(wrap=True)
        self.lines = words(size="small", quiet=True, wrap=True)
        self.match = push_button(self.tr("Match the columns"))
        self.light = LightStatement()
        self.take = push_button(self.tr("Bring in"), rank="first")
        self.leave = push_button(self.tr("Let it be"))
        self.history = ImportHistory(book)
        self._lay_out()
        self.kinds.picked.connect(lambda kind: self._read_anew(kind=Kind(str(kind))))
        self.light.stated.connect(lambda stated: self._read_anew(stated=stated))
        self.match.clicked.connect(self.matching_asked)
        self.open_button.clicked.connect(self.ask)
        self.take.clicked.connect(self.bring_in)
        self.leave.clicked.connect(self.clear)
        self.clear()

    def ask(self) -> None:
        """Let a file be chosen."""
        name, _ = QFileDialog.getOpenFileName(
            self,
            self.tr("A spreadsheet or an instrument's export"),
            filter=self.tr("Tables and measurements")
            + " (*.csv *.tsv *.txt *.cgats *.it8 *.cxf *.xml)",
        )
        if name:
            self.look_at(Path(name))

    def look_at(self, path: Path) -> None:
        """Find out what a file would change."""
        self._path = path
        self.how = replace(self.how, match=None, stated=Conditions())
        self._look()

    def take_match(self, match: object) -> None:
        """Read the file with its columns matched in another way."""
        self._read_anew(match=match)

    def bring_in(self) -> None:
        """Take what was looked at."""
        if self.preview is not None:
            plan = self.preview.plan
            told = self.tr("Brought in. Undo takes it out again.")
            self._book.bring_in(self.tr("Bring in {source}").format(source=plan.source), plan)
            self._forget()
            self._say(plan.source, told)

    def clear(self) -> None:
        """Begin anew."""
        self._forget()
        self._say("", "")

    def _forget(self) -> None:
        self.preview = self._path = None
        self.how = replace(self.how, match=None, stated=Conditions())
        self.looked_into.emit(None)

    def _read_anew(self, **values: object) -> None:
        self.how = replace(self.how, **values)  # type: ignore[arg-type]  # its own fields
        self.kinds.show_value(self.how.kind)
        self._look()

    def _look(self) -> None:
        if self._path is not None:
            self._say(self._path.name, self.tr("Reading the file"))
            self._book.look_at_file(
                self._path, self.how, done=self._take_preview, failed=self._fail
            )

    def take_dropped(self, path: Path) -> None:
        """Look at a file that was dropped."""
        self.look_at(path)

    def _lay_out(self) -> None:
        column = scrolled_column(self)
        column.addWidget(
            words(
                self.tr(
                    "Drop a spreadsheet (CSV) or an instrument's export (CGATS, CxF) here, or "
                    "choose one. You see what it changes before anything is changed."
                ),
                size="small",
                quiet=True,
                wrap=True,
            )
        )
        column.addWidget(words(self.tr("Rows that name no kind are"), size="small"))
        column.addWidget(self.kinds)
        column.addLayout(at_left(self.open_button))
        column.addSpacing(GAP)
        column.addWidget(self.title)
        column.addWidget(self.sum)
        column.addWidget(self.light)
        column.addLayout(at_left(self.match))
        column.addLayout(at_left(self.take, self.leave))
        column.addWidget(self.lines)
        column.addWidget(self.history)
        column.addStretch(1)

    def _take_preview(self, preview: "FilePreview") -> None:
        self.preview = preview
        plan = preview.plan
        told = [str(change) for change in plan.changes[:_MOST_TOLD]]
        more = len(plan.changes) - len(told)
        if more > 0:
            told.append(self.tr("and {count} more changes").format(count=more))
        told += [
            self.tr("{code}: new").format(code=plan.samples[place].code)
            for place in plan.new[:_MOST_TOLD]
        ]
        lines = "\n".join([*map(in_language, preview.incoming.remarks), *told])
        self._say(plan.source, self._sum_of(preview), lines)
        self.take.setEnabled(bool(plan.new or plan.changed))
        self.light.show_stated(self.how.stated)
        self.looked_into.emit(preview.incoming if preview.incoming.match is not None else None)

    def _sum_of(self, preview: "FilePreview") -> str:
        plan = preview.plan
        text = self.tr("{new} new, {changed} changed, {same} as they are.")
        return text.format(new=len(plan.new), changed=len(plan.changed), same=plan.unchanged)

    def _fail(self, error: Exception) -> None:
        self.preview = None
        if isinstance(error, FramingPaletteError):
            self._say(self.title.text(), in_language(str(error)))
        else:
            kind = type(error).__name__
            self._say(
                self.title.text(),
                in_language(f"This is a defect of the program ({kind}: {error})."),
            )

    def _say(self, title: str, told: str, lines: str = "") -> None:
        for label, text in ((self.title, title), (self.sum, told), (self.lines, lines)):
            label.setText(text)
            label.setVisible(bool(text))
        for button in (self.take, self.leave):
            button.setVisible(self.preview is not None)
        incoming: Incoming | None = self.preview.incoming if self.preview else None
        self.match.setVisible(incoming is not None and incoming.match is not None)
        is_stated = self.how.stated != Conditions()
        self.light.setVisible(incoming is not None and (incoming.lacks_light or is_stated))


class LightStatement(QWidget):
    """What the person knows of the light and observer that a file does not tell."""

    stated = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        from framing_palette.colour import ILLUMINANTS

        self._now = Conditions()
        self.lights = Choice(
            self.tr("Light"),
            ((_NOT_KNOWN, self.tr("Not known")), *((name, name) for name in ILLUMINANTS)),
        )
        self.observers = Choice(
            self.tr("Observer"),
            (
                (0, self.tr("Not known")),
                (2, self.tr("2 degrees")),
                (10, self.tr("10 degrees")),
            ),
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GAP, 0, GAP)
        column.setSpacing(4)
        column.addWidget(
            words(self.tr("For which light do its colours hold?"), strong=True, wrap=True)
        )
        column.addWidget(
            words(
                self.tr(
                    "The file does not say. A wrong guess would be believed everywhere, so the "
                    "colours are taken only when you know; what you state is kept with them."
                ),
                size="small",
                quiet=True,
                wrap=True,
            )
        )
        column.addWidget(words(self.tr("Light"), size="small"))
        column.addWidget(self.lights)
        column.addWidget(words(self.tr("Observer"), size="small"))
        column.addWidget(self.observers)
        self.lights.picked.connect(lambda name: self._state(illuminant=str(name)))
        self.observers.picked.connect(
            lambda angle: self._state(observer_deg=int(str(angle)) or None)
        )
        self.show_stated(self._now)

    def show_stated(self, stated: Conditions) -> None:
        """Show what is stated now."""
        self._now = stated
        self.lights.show_value(stated.illuminant)
        self.observers.show_value(stated.observer_deg or 0)

    def _state(self, **values: object) -> None:
        self.show_stated(replace(self._now, **values))  # type: ignore[arg-type]  # its own fields
        self.stated.emit(self._now)
