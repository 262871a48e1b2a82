"""One look beside others: the picture with samples laid round it, linked with its neighbours."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import check_cuttable
from framing_palette.design.shown_widths import shown_widths
from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length
from framing_palette.window.canvas.border import BorderLayer
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook


class LookView(QWidget):
    """A picture with a look round it, at the same zoom and place as all of one outlook."""

    def __init__(
        self,
        session: Session,
        swatches: SwatchBook,
        outlook: Outlook,
        codes: tuple[str, ...],
    ) -> None:
        super().__init__()
        self._session = session
        self._codes = codes
        self.canvas = Canvas(session, outlook)
        self.canvas.setMinimumSize(80, 80)
        self.border = BorderLayer(
            session,
            swatches,
            codes=lambda: self._codes,
            widths=lambda: designed_widths(session, self._codes),
        )
        self.canvas.add_layer(self.border)
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(0)
        self.column.addWidget(self.canvas, 1)

    @property
    def codes(self) -> tuple[str, ...]:
        """What is laid round the picture."""
        return self._codes

    def show_look(self, codes: tuple[str, ...], title: str) -> None:
        """Lay something else round the picture."""
        self._codes = codes
        self.canvas.setAccessibleName(self.tr("The picture with {title}").format(title=title))
        self.border.measure()


def level_scales(views: Sequence[LookView]) -> None:
    """Give all views one scale: the widest border decides how much room each picture leaves."""
    for view in views:
        view.border.least_border_mm = 0.0
    widest = max((view.border.border_mm() for view in views), default=0.0)
    for view in views:
        view.border.least_border_mm = widest
        view.canvas.redraw_ground()


def even_out(row: QHBoxLayout, width: int, count: int) -> None:
    """Leave the odd pixels of a row at its end, so that all views are of one width."""
    row.setContentsMargins(0, 0, (width - row.spacing() * (count - 1)) % max(1, count), 0)


def designed_widths(session: Session, codes: tuple[str, ...]) -> tuple[Length, ...]:
    """Return how wide the parts of a design of the job are seen; empty for any other look."""
    options = session.desk.job.options if session.desk.job else ()
    for option in options if len(codes) > 1 else ():
        if option.design.codes == codes:
            try:
                return shown_widths(check_cuttable(option.design, out_of_rabbet=True))
            except FramingPaletteError:
                return ()  # told where the design is built; here usual widths will do
    return ()


def number_key(key: int, most: int) -> int | None:
    """Return the place that a number key names, from 0; None for any other key."""
    place = key - Qt.Key.Key_1
    return place if 0 <= place < most else None
