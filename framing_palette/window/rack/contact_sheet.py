"""A contact sheet: one photograph of many swatches, each under a code that is typed or listed."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QPlainTextEdit, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.errands import Errands
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.forms import scrolled_column
from framing_palette.window.languages import told as in_language
from framing_palette.window.rack.button_rows import at_left
from framing_palette.window.rack.kinds import KindChoice
from framing_palette.window.rack.photo_width import PhotoWidth
from framing_palette.window.rack.state import RackState
from framing_palette.window.rack.swatch_photo import Outline
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from framing_palette.catalogue.contact_sheet import SheetSwatch
    from framing_palette.catalogue.shop_swatch_files import SwatchPhotograph

SHEET = "rack contact sheet"


class ContactSheet(FileDrops):
    """The photograph, the codes in reading order, and all of it onto the rack at once."""

    opened = Signal(object, object)
    """A photograph and the outlines on it."""

    coded = Signal(object)
    """The codes as they are listed now."""

    def __init__(self, state: RackState, errands: Errands) -> None:
        super().__init__()
        self._state = state
        self._errands = errands
        self._path: Path | None = None
        self.photograph: SwatchPhotograph | None = None
        self.outlines: tuple[Outline, ...] = ()
        self.width_field = PhotoWidth(state.session, self.tr("Width of what the photograph shows"))
        self.open_button = push_button(self.tr("Choose a photograph"), rank="first")
        self.found = words(strong=True, wrap=True)
        self.codes = QPlainTextEdit()
        self.kinds = KindChoice(self.tr("Kind"))
        self.put = push_button(self.tr("Put them on the rack"), rank="first")
        self.said = words(size="small", wrap=True)
        self.results = QWidget()
        self._lay_out()
        self._wire()

    def ask(self) -> None:
        """Let a photograph be chosen."""
        name, _ = QFileDialog.getOpenFileName(self, self.tr("A photograph of many swatches"))
        if name:
            self.look_at(Path(name))

    def take_dropped(self, path: Path) -> None:
        """Look at a file that was dropped."""
        self.look_at(path)

    def look_at(self, path: Path) -> None:
        """Find the swatches of a photograph."""
        from framing_palette.catalogue.shop_swatch_files import open_swatch_photograph

        self._path, width = path, self.width_field.length
        self._say(self.tr("Looking for swatches"))
        self._errands.runner.start(
            SHEET,
            lambda _progress: open_swatch_photograph(path, width),
            done=self._take_photograph,
            failed=lambda error: self._say(in_language(str(error))),
        )

    def take_outlines(self, outlines: Sequence[Outline]) -> None:
        """Take the outlines as the hand has left them."""
        self.outlines = tuple(outlines)
        self._tell()

    def put_on_rack(self) -> None:
        """Measure every swatch under its code, and bring them all in as one change."""
        from framing_palette.catalogue.shop_swatch_files import listed_codes, measured_sheet

        photograph, outlines = self.photograph, self.outlines
        if photograph is None:
            return
        codes, samples = listed_codes(self.codes.toPlainText()), self._state.catalogue.samples
        self._say(self.tr("Measuring"))
        self._errands.runner.start(
            SHEET,
            lambda _progress: measured_sheet(photograph, outlines, codes, samples),
            done=self._take_swatches,
            failed=lambda error: self._say(in_language(str(error))),
        )

    def _take_photograph(self, photograph: "SwatchPhotograph") -> None:
        self.photograph, self.outlines = photograph, photograph.swatches
        trust = in_language(photograph.picture.colour_trust.words)
        self._say(trust)
        self.opened.emit(photograph, self.outlines)
        self._tell()

    def _take_swatches(self, swatches: "tuple[SheetSwatch, ...]") -> None:
        from framing_palette.catalogue.shop_swatch_files import samples_of_sheet

        samples = samples_of_sheet(swatches, self.kinds.kind)
        name = self._path.name if self._path else ""
        text = self.tr("Put {count} swatches of {name} on the rack")
        self._state.book.bring_in_samples(text.format(count=len(samples), name=name), samples, name)
        told = self.tr("{count} swatches are on the rack. Undo takes them all back.")
        self._say(told.format(count=len(samples)))

    def _tell(self) -> None:
        from framing_palette.catalogue.shop_swatch_files import listed_codes

        self.results.setVisible(self.photograph is not None)
        codes = listed_codes(self.codes.toPlainText())
        text = self.tr("{swatches} swatches, {codes} codes")
        self.found.setText(text.format(swatches=len(self.outlines), codes=len(codes)))
        self.put.setEnabled(bool(codes) and len(codes) == len(self.outlines))
        self.coded.emit(codes)

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.said.setVisible(bool(text))

    def _lay_out(self) -> None:
        column = scrolled_column(self)
        column.addWidget(
            words(
                self.tr(
                    "One photograph of many swatches that lie apart on an even ground, best with "
                    "a colour chart beside them. Each is found, outlined and measured."
                ),
                size="small",
                quiet=True,
                wrap=True,
            )
        )
        column.addWidget(words(self.tr("Width of what it shows (may be left out)"), size="small"))
        column.addWidget(self.width_field)
        column.addLayout(at_left(self.open_button))
        found = QVBoxLayout(self.results)
        found.setContentsMargins(0, 0, 0, 0)
        found.setSpacing(GAP)
        found.addWidget(self.found)
        told = self.tr("Codes, left to right and row by row, one a line")
        found.addWidget(words(told, size="small", wrap=True))
        self.codes.setAccessibleName(told)
        self.codes.setMinimumHeight(112)
        self.codes.setTabChangesFocus(True)
        found.addWidget(self.codes)
        found.addWidget(self.kinds)
        found.addLayout(at_left(self.put))
        column.addWidget(self.results)
        column.addWidget(self.said)
        column.addStretch(1)

    def _wire(self) -> None:
        self.open_button.clicked.connect(self.ask)
        self.put.clicked.connect(self.put_on_rack)
        self.codes.textChanged.connect(self._tell)
        self.width_field.changed.connect(self._take_width)
        self._say("")
        self._tell()

    def _take_width(self) -> None:
        if self._path is not None:
            self.look_at(self._path)
