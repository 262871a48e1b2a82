"""The colour that the shelf looks near, shown where it can be let go."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton

from framing_palette.window.greys import color_of
from framing_palette.window.icons import draw_icon
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Probe
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import HIT, SMALL


class ProbeChip(QAbstractButton):
    """The colour that the shelf looks near, with its name; a click lets it go."""

    def __init__(self) -> None:
        super().__init__()
        self._probe: Probe | None = None
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFont(type_font(SMALL))
        self.setAccessibleName(self.tr("No colour to look near"))
        self.hide()

    def show_probe(self, probe: Probe | None) -> None:
        """Show a colour; None hides the chip."""
        self._probe = probe
        self.setVisible(probe is not None)
        if probe is not None:
            self.setText(self.tr("Near {colour}").format(colour=in_language(probe.name)))
            self.setAccessibleName(self.tr("{near}, let it go").format(near=self.text()))
            self.setToolTip(self.tr("Let the colour go"))

    def sizeHint(self) -> QSize:
        """Take one line."""
        return QSize(200, HIT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the colour, its name and the cross."""
        if self._probe is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        box = QRectF(0, self.height() / 2 - 10, 28, 20)
        painter.fillRect(box, color_of(self._probe.lab))
        painter.setPen(ink)
        line = QRectF(self.rect()).adjusted(36, 0, -28, 0)
        painter.drawText(line, Qt.AlignmentFlag.AlignVCenter, self.text())
        cross = QRectF(self.width() - 20, self.height() / 2 - 8, 16, 16)
        draw_icon(painter, "close", cross, ink)
