"""Measuring a swatch from its photograph, and putting it on the rack."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QLineEdit, QVBoxLayout, QWidget

from framing_palette.errors import FramingPaletteError
from framing_palette.window.controls import push_button, words
from framing_palette.window.errands import Errands
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.forms import scrolled_column
from framing_palette.window.languages import told as in_language
from framing_palette.window.palette_strip import PaletteStrip
from framing_palette.window.rack.button_rows import at_left
from framing_palette.window.rack.kinds import KindChoice
from framing_palette.window.rack.photo_width import PhotoWidth
from framing_palette.window.rack.state import RackState
from framing_palette.window.tokens import GAP

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.catalogue import Swatch
    from framing_palette.catalogue.shop_swatch_files import SwatchPhotograph
    from framing_palette.window.rack.swatch_photo import Outline

MEASURING = "rack swatch"


class SwatchSheet(FileDrops):
    """The photograph, its measures with how far they can be trusted, and where they go."""

    opened = Signal(object, object)
    """A photograph and the outline on it."""

    def __init__(self, state: RackState, errands: Errands) -> None:
        super().__init__()
        self._state = state
        self._errands = errands
        self._path: Path | None = None
        self.photograph: SwatchPhotograph | None = None
        self.swatch: Swatch | None = None
        self.width_field = PhotoWidth(state.session, self.tr("Width of what the photograph shows"))
        self.open_button = push_button(self.tr("Choose a photograph"), rank="first")
        self.title = words(strong=True, wrap=True)
        self.strip = PaletteStrip()
        self.told = words(size="small", wrap=True)
        self.code = QLineEdit()
        self.name = QLineEdit()
        self.kinds = KindChoice(self.tr("Kind"))
        self.put = push_button(self.tr("Put it on the rack"), rank="first")
        self.fault = words(size="small", wrap=True)
        self.results = QWidget()
        self._lay_out()
        self._wire()
        self._show_all()

    def ask(self) -> None:
        """Let a photograph be chosen."""
        name, _ = QFileDialog.getOpenFileName(self, self.tr("A photograph of the swatch alone"))
        if name:
            self.measure(Path(name))

    def measure(self, path: Path) -> None:
        """Measure a photograph."""
        from framing_palette.catalogue.shop_swatch_files import open_swatch_photograph

        self._path, width = path, self.width_field.length
        self.swatch = self.photograph = None
        self._show_all()
        self._say(self.tr("Opening the photograph"))
        self._errands.runner.start(
            MEASURING,
            lambda _progress: open_swatch_photograph(path, width),
            done=self._take_photograph,
            failed=self._fail,
        )

    def take_outlines(self, outlines: "Sequence[Outline]") -> None:
        """Measure what the outline holds now."""
        from framing_palette.catalogue.shop_swatch_files import measured_photograph

        photograph, outline = self.photograph, outlines[0]
        if photograph is None:
            return
        self._say(self.tr("Measuring"))
        samples = self._state.catalogue.samples
        self._errands.runner.start(
            MEASURING,
            lambda _progress: measured_photograph(photograph, outline, samples),
            done=self._take,
            failed=self._fail,
        )

    def _take_photograph(self, photograph: "SwatchPhotograph") -> None:
        self.photograph = photograph
        outline = photograph.single
        self.opened.emit(photograph, (outline,))
        self.take_outlines((outline,))

    def put_on_rack(self) -> None:
        """Add the swatch as a sample, or give its colours to the sample of that code."""
        from framing_palette.catalogue.shop_swatch_files import sample_of_swatch

        if self.swatch is None or self._path is None:
            return
        code, name = self.code.text().strip(), self.name.text().strip()
        try:
            sample = sample_of_swatch(code, name, self.kinds.kind, self.swatch)
        except FramingPaletteError as error:
            self._say(in_language(str(error)))
            return
        is_known = code in self._state.session.catalogue
        said = self.tr("Measure {code} anew") if is_known else self.tr("Put {code} on the rack")
        self._state.book.bring_in_samples(said.format(code=code), (sample,), self._path.name)
        self._say(self.tr("{code} is on the rack. Undo takes it back.").format(code=code))

    def take_dropped(self, path: Path) -> None:
        """Look at a file that was dropped."""
        self.measure(path)

    def _lay_out(self) -> None:
        column = scrolled_column(self)
        column.addWidget(
            words(
                self.tr(
                    "A photograph of one swatch in even light, filling it or beside a colour "
                    "chart. With its width the texture is measured at true scale too."
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
        found.setContentsMargins(0, GAP, 0, 0)
        found.setSpacing(GAP)
        found.addWidget(self.title)
        found.addWidget(self.strip)
        found.addWidget(self.told)
        for title, field in ((self.tr("Code"), self.code), (self.tr("Name"), self.name)):
            field.setAccessibleName(title)
            found.addWidget(words(title, size="small"))
            found.addWidget(field)
        found.addWidget(self.kinds)
        found.addLayout(at_left(self.put))
        column.addWidget(self.results)
        column.addWidget(self.fault)
        column.addStretch(1)

    def _wire(self) -> None:
        self.open_button.clicked.connect(self.ask)
        self.put.clicked.connect(self.put_on_rack)
        self.code.textChanged.connect(lambda _text: self._name_button())
        self.width_field.changed.connect(self._take_width)

    def _take_width(self) -> None:
        if self._path is not None:
            self.measure(self._path)

    def _take(self, swatch: "Swatch") -> None:
        self.swatch = swatch
        if self._path is not None and not self.code.text():
            self.code.setText(self._path.stem)
        self._say("")
        self._show_all()

    def _fail(self, error: Exception) -> None:
        kind = type(error).__name__
        is_ours = isinstance(error, FramingPaletteError)
        said = str(error) if is_ours else f"This is a defect of the program ({kind}: {error})."
        self._say(in_language(said))

    def _show_all(self) -> None:
        swatch = self.swatch
        self.results.setVisible(swatch is not None)
        if swatch is None or self._path is None:
            return
        self.title.setText(self._path.name)
        self.strip.set_colours(swatch.colours)
        self.told.setText("\n".join(self._measures(swatch)))
        self._name_button()

    def _measures(self, swatch: "Swatch") -> list[str]:
        told = [f"{in_language(colour.name)} {colour.share:.0%}" for colour in swatch.colours]
        lines = [", ".join(told)]
        finish = swatch.finish
        text = self.tr("Finish, a guess: {finish}, because {reason}.")
        lines.append(
            text.format(finish=in_language(finish.finish.value), reason=in_language(finish.reason))
        )
        if swatch.surface is not None:
            surface = swatch.surface.surface.value.replace("_", " ")
            lines.append(
                self.tr("Surface, a guess: {surface}.").format(surface=in_language(surface))
            )
        text = self.tr("From part to part the colour moves by ΔE₀₀ {spread:.1f}.")
        lines.append(text.format(spread=swatch.repeatability_delta_e))
        if swatch.uncertainty_delta_e is not None:
            text = self.tr("By the chart its colours are good to about ΔE₀₀ {error:.1f}.")
            lines.append(text.format(error=swatch.uncertainty_delta_e))
        return [*lines, *map(in_language, swatch.notices)]

    def _name_button(self) -> None:
        is_known = self.code.text().strip() in self._state.session.catalogue
        known, new = self.tr("Give it these colours"), self.tr("Put it on the rack")
        self.put.setText(known if is_known else new)
        self.put.setAccessibleName(self.put.text())

    def _say(self, text: str) -> None:
        self.fault.setText(text)
        self.fault.setVisible(bool(text))
