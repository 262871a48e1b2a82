"""How many pieces of art one frame holds, how they stand, and how far apart their openings are."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design.arranging import USUAL_GAP, Layout, layout_of
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs.measured import pieces_of, with_pieces_of_art
from framing_palette.units import Length
from framing_palette.window.building import design_in_hand
from framing_palette.window.controls import words
from framing_palette.window.forms import Choice, LengthField
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN


class PiecesRow(QWidget):
    """Chips for the number; layout and gap appear once there are several."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.count = Choice(
            self.tr("Pieces of art in one frame"),
            (
                (1, self.tr("One")),
                (2, self.tr("Two")),
                (3, self.tr("Three")),
                (4, self.tr("Four")),
                (6, self.tr("Six")),
            ),
        )
        self.layouts = Choice(
            self.tr("They stand"),
            (
                (Layout.ROW, self.tr("In a row")),
                (Layout.COLUMN, self.tr("One below the other")),
                (Layout.TWO_ROWS, self.tr("In two rows")),
            ),
        )
        self.gap = LengthField(self.tr("Mat between two openings"))
        self.gap.setFixedWidth(128)
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        self._several = QWidget()
        self._lay_out()
        self.count.picked.connect(lambda count: self._change(count=int(str(count))))
        self.layouts.picked.connect(lambda layout: self._change(layout=Layout(str(layout))))
        self.gap.taken.connect(lambda gap: self._change(gap=gap))
        for signal in (session.job_changed, session.in_hand_changed, session.preferences_changed):
            signal.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Show what holds now."""
        job, preferences = self._session.desk.job, self._session.preferences
        pieces = pieces_of(job) if job else 1
        self.count.setEnabled(job is not None)
        self.count.show_value(pieces)
        self._several.setVisible(pieces > 1)
        design = design_in_hand(self._session)
        if design is not None and design.arrangement is not None:
            self.layouts.show_value(layout_of(design))
            gap = design.arrangement.gap
            self.gap.show_value(gap, preferences.unit, preferences.denominator)

    def _change(
        self, count: int | None = None, layout: Layout | None = None, gap: Length | None = None
    ) -> None:
        job, design = self._session.desk.job, design_in_hand(self._session)
        if job is None:
            return
        arrangement = design.arrangement if design else None
        self._say("")
        try:
            changed = with_pieces_of_art(
                job,
                count or pieces_of(job),
                layout or (layout_of(design) if design else Layout.ROW),
                gap or (arrangement.gap if arrangement else USUAL_GAP),
            )
        except FramingPaletteError as error:
            self._say(in_language(str(error)))
            self.follow()
            return
        if changed != job:
            self._session.edit(self.tr("Pieces of art in one frame"), job=changed)

    def _say(self, fault: str) -> None:
        self.fault.setText(fault)
        self.fault.setVisible(bool(fault))

    def _lay_out(self) -> None:
        several = QHBoxLayout(self._several)
        several.setContentsMargins(0, 0, 0, 0)
        several.setSpacing(MARGIN)
        several.addWidget(self.layouts, 1)
        several.addWidget(words(self.tr("Mat between"), size="small"))
        several.addWidget(self.gap)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GAP, 0, 0)
        column.setSpacing(4)
        column.addWidget(words(self.tr("Pieces of art in one frame"), size="small"))
        column.addWidget(self.count)
        column.addWidget(self._several)
        column.addWidget(self.fault)
