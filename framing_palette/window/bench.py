"""The bench: the design in hand with its sizes, its depth and its section, worked out once."""

from PySide6.QtCore import QObject, Signal

from framing_palette.design import Cuttable, Design, check_cuttable
from framing_palette.errors import FramingPaletteError
from framing_palette.papers.cross_section import CrossSection, cross_section
from framing_palette.window.building import design_in_hand
from framing_palette.window.session import Session


class Bench(QObject):
    """Follows the design in hand; views read what was worked out."""

    changed = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.design: Design | None = None
        self.cuttable: Cuttable | None = None
        self.section: CrossSection | None = None
        self.fault = ""
        session.job_changed.connect(self._follow)
        session.in_hand_changed.connect(self._follow)
        session.catalogue_changed.connect(self._work_out)
        self._follow()

    def _follow(self) -> None:
        design = design_in_hand(self._session)
        if design is not self.design:
            self.design = design
            self._work_out()

    def _work_out(self) -> None:
        self.cuttable = self.section = None
        self.fault = ""
        if self.design is not None:
            rack = self._session.catalogue
            samples = {code: rack[code] for code in self.design.codes if code in rack}
            try:
                self.cuttable = check_cuttable(self.design, out_of_rabbet=True)
                self.section = cross_section(self.cuttable, samples)
            except FramingPaletteError as error:
                self.fault = str(error)
        self.changed.emit()
