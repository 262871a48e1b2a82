"""A folder of swatch photographs: measured side by side, stopped and gone on with at will."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QFileDialog, QLineEdit

from framing_palette.window.controls import push_button, words
from framing_palette.window.errands import Errands
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.forms import scrolled_column
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.button_rows import at_left
from framing_palette.window.rack.kinds import KindChoice
from framing_palette.window.rack.state import RackState
from framing_palette.window.runner import Progress

if TYPE_CHECKING:
    from framing_palette.catalogue.swatch_intake_files import SwatchResult

FOLDER = "rack swatch folder"
_MOST_TOLD = 30


class SwatchFolder(FileDrops):
    """The folder, how far it is, and what came of it."""

    def __init__(self, state: RackState, errands: Errands) -> None:
        super().__init__()
        self._state = state
        self._errands = errands
        self.folder: Path | None = None
        self.results: tuple[SwatchResult, ...] = ()
        self._mm_per_px: float | None = None
        self.scale = QLineEdit()
        self.open_button = push_button(self.tr("Choose a folder"), rank="first")
        self.stop = push_button(self.tr("Stop"))
        self.go_on = push_button(self.tr("Go on"))
        self.title = words(strong=True, wrap=True)
        self.said = words(wrap=True)
        self.kinds = KindChoice(self.tr("Kind"))
        self.put = push_button(self.tr("Put them on the rack"), rank="first")
        self.lines = words(size="small", quiet=True, wrap=True)
        self._lay_out()
        self._wire()
        self._show_all()

    def ask(self) -> None:
        """Let a folder be chosen."""
        name = QFileDialog.getExistingDirectory(self, self.tr("A folder of swatch photographs"))
        if name:
            self.measure(Path(name))

    def take_dropped(self, path: Path) -> None:
        """Measure a folder that was dropped, or the one that a dropped file lies in."""
        self.measure(path)

    def measure(self, folder: Path) -> None:
        """Measure what is not measured yet."""
        from framing_palette.catalogue.shop_swatch_files import folder_results

        self.folder, self.results = folder, ()
        results, scale = folder_results(self._state.book.place.parent, folder), self._mm_per_px
        self.said.setText(self.tr("Measuring"))
        self._errands.runner.start(
            FOLDER,
            lambda progress: _measured(folder, results, scale, progress),
            done=self._take,
            failed=self._fail,
        )
        self._show_all()

    def stop_measuring(self) -> None:
        """Stop; what is measured stays measured."""
        self._errands.runner.cancel(FOLDER)
        self.said.setText(self.tr("Stopped. What is measured is kept; go on when you like."))
        self._show_all()

    def put_on_rack(self) -> None:
        """Bring all that could be measured in as one change."""
        from framing_palette.catalogue.swatch_intake_files import samples_from_intake

        if self.folder is None:
            return
        samples = samples_from_intake(self.results, self.kinds.kind, in_catalogue=False)
        name = self.folder.name
        text = self.tr("Put {count} swatches of {name} on the rack")
        self._state.book.bring_in_samples(text.format(count=len(samples), name=name), samples, name)
        told = self.tr("{count} swatches are on the rack. Undo takes them all back.")
        self.said.setText(told.format(count=len(samples)))

    def _take(self, results: "tuple[SwatchResult, ...]") -> None:
        self.results = results
        bad = [f"{one.file}: {one.problem}" for one in results if one.problem]
        text = self.tr("{good} measured, {bad} could not be.")
        self.said.setText(text.format(good=len(results) - len(bad), bad=len(bad)))
        self.lines.setText("\n".join(bad[:_MOST_TOLD]))
        self._show_all()

    def _fail(self, error: Exception) -> None:
        self.said.setText(in_language(str(error)))
        self._show_all()

    def _follow(self, topic: str, _share: float, told: str) -> None:
        if topic == FOLDER:
            self.said.setText(told)

    def _show_all(self) -> None:
        is_busy = self._errands.runner.is_busy(FOLDER)
        good = [one for one in self.results if not one.problem]
        self.title.setText(self.folder.name if self.folder else "")
        self.title.setVisible(self.folder is not None)
        self.said.setVisible(bool(self.said.text()))
        self.stop.setVisible(is_busy)
        self.go_on.setVisible(self.folder is not None and not is_busy and not self.results)
        for part in (self.kinds, self.put):
            part.setVisible(bool(good))
        self.lines.setVisible(bool(self.lines.text()) and bool(self.results))

    def _lay_out(self) -> None:
        column = scrolled_column(self)
        column.addWidget(
            words(
                self.tr(
                    "A folder with one photograph a swatch, each called by its code. They are "
                    "measured side by side, and what is measured once is not measured again."
                ),
                size="small",
                quiet=True,
                wrap=True,
            )
        )
        told = self.tr("Millimetres per pixel of all of them (may be left out)")
        column.addWidget(words(told, size="small", wrap=True))
        self.scale.setAccessibleName(told)
        column.addWidget(self.scale)
        column.addLayout(at_left(self.open_button))
        column.addWidget(self.title)
        column.addWidget(self.said)
        column.addLayout(at_left(self.stop, self.go_on))
        column.addWidget(self.kinds)
        column.addLayout(at_left(self.put))
        column.addWidget(self.lines)
        column.addStretch(1)

    def _wire(self) -> None:
        self.open_button.clicked.connect(self.ask)
        self.stop.clicked.connect(self.stop_measuring)
        self.go_on.clicked.connect(lambda: self.measure(self.folder) if self.folder else None)
        self.put.clicked.connect(self.put_on_rack)
        self.scale.editingFinished.connect(self._take_scale)
        self._errands.runner.progressed.connect(self._follow)

    def _take_scale(self) -> None:
        from framing_palette.catalogue.shop_swatch_files import scale_of_text
        from framing_palette.errors import FramingPaletteError

        try:
            scale = scale_of_text(self.scale.text())
        except FramingPaletteError as error:
            self.said.setText(in_language(str(error)))
            self._show_all()
            return
        if scale != self._mm_per_px:
            self._mm_per_px = scale
            if self.folder is not None:
                self.measure(self.folder)


def _measured(
    folder: Path, results: Path, mm_per_px: float | None, progress: Progress
) -> "tuple[SwatchResult, ...]":
    from framing_palette.catalogue.swatch_intake_files import measure_swatch_folder

    said = QCoreApplication.translate("SwatchFolder", "{done} of {there} measured.")

    def tell(done: int, there: int) -> None:
        progress.tell(done / max(1, there), said.format(done=done, there=there))

    return measure_swatch_folder(
        folder, results, mm_per_px=mm_per_px, backend="threading", tell=tell
    )
