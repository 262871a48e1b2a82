"""Bringing samples in: a spreadsheet or an instrument's export, looked at before it is taken."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.catalogue import Kind
from framing_palette.errors import FramingPaletteError
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.rack.book import RackBook
from framing_palette.window.rack.file_drops import FileDrops
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

if TYPE_CHECKING:
    from framing_palette.catalogue.shop_rack_files import FilePreview

_MOST_TOLD = 40
KIND_WORDS = (
    (Kind.MAT, "Mats"),
    (Kind.WRAPPED_FILLET, "Wrapped fillets"),
    (Kind.WOOD_FILLET, "Wood fillets"),
    (Kind.LINER, "Liners"),
    (Kind.MOULDING, "Mouldings"),
)


class ImportSheet(FileDrops):
    """First the file, then what it would change, then the change itself, which can be undone."""

    def __init__(self, book: RackBook) -> None:
        super().__init__()
        self._book = book
        self._path: Path | None = None
        self.preview: FilePreview | None = None
        self.kind = Kind.MAT
        self.setAcceptDrops(True)
        self.kinds = Choice(
            self.tr("What the rows are"), [(kind, self.tr(text)) for kind, text in KIND_WORDS]
        )
        self.kinds.show_value(self.kind)
        self.open_button = push_button(self.tr("Choose a file"), rank="first")
        self.title = words(strong=True, wrap=True)
        self.sum = words(wrap=True)
        self.lines = words(size="small", quiet=True, wrap=True)
        self.take = push_button(self.tr("Bring in"), rank="first")
        self.leave = push_button(self.tr("Let it be"))
        self._lay_out()
        self.kinds.picked.connect(self._pick_kind)
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
        self._say(path.name, self.tr("Reading the file"))
        self._book.look_at_file(path, self.kind, done=self._take_preview, failed=self._fail)

    def bring_in(self) -> None:
        """Take what was looked at."""
        if self.preview is not None:
            plan = self.preview.plan
            told = self.tr("Brought in. Undo takes it out again.")
            self._book.bring_in(self.tr("Bring in ") + plan.source, plan)
            self.preview = None
            self._path = None
            self._say(plan.source, told)

    def clear(self) -> None:
        """Begin anew."""
        self.preview = self._path = None
        self._say("", "")

    def take_dropped(self, path: Path) -> None:
        """Look at a file that was dropped."""
        self.look_at(path)

    def _lay_out(self) -> None:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, SECTION)
        column.setSpacing(GAP)
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
        row = QHBoxLayout()
        row.addWidget(self.open_button)
        row.addStretch(1)
        column.addLayout(row)
        column.addSpacing(GAP)
        column.addWidget(self.title)
        column.addWidget(self.sum)
        row = QHBoxLayout()
        row.setSpacing(GAP)
        row.addWidget(self.take)
        row.addWidget(self.leave)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(self.lines)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolled(inside))

    def _pick_kind(self, kind: object) -> None:
        self.kind = Kind(str(kind))
        self.kinds.show_value(self.kind)
        if self._path is not None:
            self.look_at(self._path)

    def _take_preview(self, preview: "FilePreview") -> None:
        self.preview = preview
        plan = preview.plan
        told = [str(change) for change in plan.changes[:_MOST_TOLD]]
        more = len(plan.changes) - len(told)
        if more > 0:
            told.append(self.tr("and {count} more changes").format(count=more))
        told += [f"{plan.samples[place].code}: new" for place in plan.new[:_MOST_TOLD]]
        self._say(plan.source, self._sum_of(preview), "\n".join([*preview.remarks, *told]))
        self.take.setEnabled(bool(plan.new or plan.changed))

    def _sum_of(self, preview: "FilePreview") -> str:
        plan = preview.plan
        text = self.tr("{new} new, {changed} changed, {same} as they are.")
        return text.format(new=len(plan.new), changed=len(plan.changed), same=plan.unchanged)

    def _fail(self, error: Exception) -> None:
        self.preview = None
        if isinstance(error, FramingPaletteError):
            self._say(self.title.text(), str(error))
        else:
            kind = type(error).__name__
            self._say(self.title.text(), f"This is a defect of the program ({kind}: {error}).")

    def _say(self, title: str, told: str, lines: str = "") -> None:
        for label, text in ((self.title, title), (self.sum, told), (self.lines, lines)):
            label.setText(text)
            label.setVisible(bool(text))
        for button in (self.take, self.leave):
            button.setVisible(self.preview is not None)
