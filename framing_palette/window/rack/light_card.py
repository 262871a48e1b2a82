"""How a sample looks at home: its colours here and in the client's light, side by side."""

from PySide6.QtCore import QCoreApplication, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.catalogue import (
    Sample,
    SampleColour,
    compare_under_lights,
    is_estimated,
    nearest_colour,
    sample_under,
)
from framing_palette.window.controls import words
from framing_palette.window.greys import color_of
from framing_palette.window.languages import told as in_language
from framing_palette.window.light_bar import DAYLIGHT, LightPicker
from framing_palette.window.rack.state import Lab, RackState
from framing_palette.window.runner import Runner
from framing_palette.window.tokens import GAP, WIDE_MARGIN

CARD = "rack light"
_HEIGHT = 28


class LightCard(QWidget):
    """The light, the two looks, and whether a match with what is looked near holds."""

    def __init__(self, state: RackState, runner: Runner) -> None:
        super().__init__()
        self._state = state
        self._runner = runner
        self._sample: Sample | None = None
        self.picker = LightPicker(state.session)
        self.looks = TwoLooks()
        self.told = words(size="small", wrap=True)
        row = QHBoxLayout()
        row.setSpacing(GAP)
        row.addWidget(words(self.tr("At home under"), size="small", quiet=True))
        row.addWidget(self.picker, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, 0)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.looks)
        column.addWidget(self.told)
        state.session.light_changed.connect(self._follow)

    def show_sample(self, sample: Sample | None) -> None:
        """Show another sample, or none."""
        self._sample = sample
        self._follow()

    def _follow(self) -> None:
        sample, light, look = self._sample, self._state.session.light, self._state.look
        if sample is None or not sample.colours or light == DAYLIGHT:
            self._runner.cancel(CARD)
            self._show((), (), "")
            return
        beside = None
        if look is not None and look.code != sample.code:
            other = self._state.known(look.code)
            beside = look.lab if other is None else nearest_colour(other, look.lab)
        self._runner.start(
            CARD,
            lambda _progress: _looks(sample, light, beside),
            done=lambda found: self._show(*found),
            failed=lambda error: self._show((), (), in_language(str(error))),
        )

    def _show(
        self, here: tuple[SampleColour, ...], home: tuple[SampleColour, ...], told: str
    ) -> None:
        self.looks.show_colours(here, home)
        self.looks.setVisible(bool(home))
        self.told.setText(told)
        self.told.setVisible(bool(told))


class TwoLooks(QWidget):
    """The colours of a sample as long as their shares: above as here, below as at home."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: tuple[tuple[SampleColour, ...], tuple[SampleColour, ...]] = ((), ())
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setToolTip(self.tr("Above as it looks here, below as it looks in that light"))
        self.setAccessibleName(self.toolTip())
        self.hide()

    def sizeHint(self) -> QSize:
        """Ask for two strips that touch."""
        return QSize(200, 2 * _HEIGHT)

    def show_colours(self, here: tuple[SampleColour, ...], home: tuple[SampleColour, ...]) -> None:
        """Show other colours."""
        self._rows = here, home
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw both strips, so that they touch along their whole length."""
        painter = QPainter(self)
        for at, colours in enumerate(self._rows):
            left = 0.0
            for colour in colours:
                width = colour.share * self.width()
                box = QRectF(left, at * _HEIGHT, width + 1, _HEIGHT)
                painter.fillRect(box, color_of(colour.lab))
                left += width
        painter.setPen(self.palette().color(QPalette.ColorRole.Mid))
        painter.drawRect(QRectF(self.rect()).adjusted(0, 0, -1, -1))


def _looks(
    sample: Sample, light: str, beside: SampleColour | Lab | None
) -> tuple[tuple[SampleColour, ...], tuple[SampleColour, ...], str]:
    home = sample_under(sample, light)
    estimated = QCoreApplication.translate(
        "LightCard", "Estimated: no reflectance of it was measured."
    )
    told = estimated if is_estimated(sample) else ""
    if beside is not None:
        lab = beside.lab if isinstance(beside, SampleColour) else beside
        finding = compare_under_lights(nearest_colour(sample, lab), beside, (light,))
        told = in_language(f"{finding.sentence[:1].upper()}{finding.sentence[1:]}.")
    return sample.colours, home.colours, told
