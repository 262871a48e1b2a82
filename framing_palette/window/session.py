"""The session: the one thing in the program that changes; it holds frozen values only.

Views read it and listen to its signals; nothing in it knows how it is shown. What the designer
does goes through :meth:`Session.edit` and can be undone; what the program found out (findings,
ranking) is assigned as it arrives.
"""

from dataclasses import dataclass, fields, replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal, SignalInstance
from PySide6.QtGui import QUndoStack

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.errors import UnknownSampleError
from framing_palette.ranking import HOUSE_RULE, RankedSample, Ranking
from framing_palette.window.desk import Desk
from framing_palette.window.preferences import Preferences
from framing_palette.window.undo import ChangeDesk

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtGui import QImage

    from framing_palette.jobs import JobLine, PackedJob, StoredJob
    from framing_palette.jobs.fates import Kept
    from framing_palette.picture import Findings, Picture, Region, RegionFinding
    from framing_palette.picture.looking import Survey
    from framing_palette.ranking.strip_reading import StripReader
    from framing_palette.units import Length
    from framing_palette.window.images import Pyramid
    from framing_palette.window.listing import Listed

UNDO_LIMIT = 500


@dataclass(frozen=True, slots=True)
class Probe:
    """A colour picked from the picture (Lab D50) that the shelf is to look near."""

    lab: tuple[float, float, float]
    name: str = ""


class Session(QObject):
    """What is open at the counter."""

    picture_changed = Signal()
    survey_changed = Signal()
    pyramid_changed = Signal()
    findings_changed = Signal()
    catalogue_changed = Signal()
    ranked_changed = Signal()
    rule_changed = Signal()
    packed_changed = Signal()
    job_path_changed = Signal()
    stored_changed = Signal()
    saved_changed = Signal()
    differing_changed = Signal()
    recent_changed = Signal()
    job_asked = Signal(str)
    """The number of a job that is to be opened from the book."""
    step_changed = Signal()
    chosen_code_changed = Signal()
    chosen_region_changed = Signal()
    chosen_strip_changed = Signal()
    in_hand_changed = Signal()
    chosen_part_changed = Signal()
    live_region_changed = Signal()
    live_finding_changed = Signal()
    lit_map_changed = Signal()
    strip_reader_changed = Signal()
    lit_colour_changed = Signal()
    probe_changed = Signal()
    comparing_changed = Signal()
    light_changed = Signal()
    preferences_changed = Signal()
    notice_changed = Signal()
    undo_changed = Signal()

    job_changed = Signal()
    regions_changed = Signal()
    laid_changed = Signal()
    strips_changed = Signal()
    kept_changed = Signal()
    set_aside_changed = Signal()
    answers_changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.picture: Picture | None = None
        self.survey: Survey | None = None
        self.pyramid: Pyramid | None = None
        self.findings: Findings | None = None
        self.catalogue = Catalogue(samples=())
        self.ranked: Ranking | None = None
        self.rule = HOUSE_RULE
        self.listed: tuple[Listed, ...] = ()
        self.packed: PackedJob | None = None
        self.job_path: Path | None = None
        self.stored: StoredJob | None = None
        self.saved = ""
        self.differing: Kept | None = None
        self.recent: tuple[JobLine, ...] = ()
        self.sized_for: tuple[Length, Length] | None = None
        self.step = ""
        self.chosen_code = ""
        self.chosen_region = -1
        self.chosen_strip = 0
        self.in_hand = 0
        self.chosen_part = ""
        self.live_region: Region | None = None
        self.live_finding: RegionFinding | None = None
        self.strip_reader: StripReader | None = None
        self.lit_colour: tuple[float, float, float] | None = None
        self.lit_map: QImage | None = None
        self.probe: Probe | None = None
        self.comparing = False
        self.light = "D50"
        self.preferences = Preferences()
        self.notice = ""
        self.desk = Desk()
        self.undo_stack = QUndoStack(self)
        self.undo_stack.setUndoLimit(UNDO_LIMIT)
        # By way of the session: a dying stack speaks once more when its listeners are gone.
        self.undo_stack.indexChanged.connect(self.undo_changed)
        self._last_look: tuple[str, ...] = ()
        self._merge_ids: dict[str, int] = {}

    def assign(self, name: str, value: Any) -> None:
        """Give one value that the program found out, and tell the views of it."""
        if getattr(self, name) is value:
            return
        setattr(self, name, value)
        self._signal_of(name).emit()

    def edit(self, words: str, *, merge: str = "", **values: Any) -> None:
        """Do something undoable: replace values of the desk under a name.

        Edits that follow each other with the same ``merge`` become one.

        Raises
        ------
        FieldError
            When the desk would hold something it cannot; nothing is changed then.
        """
        after = replace(self.desk, **values)
        if after == self.desk:
            return
        merge_id = self._merge_ids.setdefault(merge, len(self._merge_ids)) if merge else -1
        command = ChangeDesk(
            words,
            before=self.desk,
            after=after,
            assign=self.put_desk,
            merge_id=merge_id,
        )
        self.undo_stack.push(command)

    def put_desk(self, desk: Desk) -> None:
        """Replace the whole desk and tell the views what is different."""
        before, self.desk = self.desk, desk
        if before.laid != desk.laid:
            self._last_look = before.laid
        for field in fields(Desk):
            was, now = getattr(before, field.name), getattr(desk, field.name)
            if was is not now and was != now:
                self._signal_of(field.name).emit()

    @property
    def regions(self) -> "tuple[Region, ...]":
        """The regions as they are seen now, the one in hand where the hand is."""
        lying, live = self.desk.regions, self.live_region
        if live is None or not 0 <= self.chosen_region < len(lying):
            return lying
        return (*lying[: self.chosen_region], live, *lying[self.chosen_region + 1 :])

    def blink(self) -> None:
        """Lay the look round the picture that was there before this one."""
        if self._last_look != self.desk.laid:
            self.edit("Blink", merge="blink", laid=self._last_look)

    def show_side_by_side(self, *, shown: bool) -> None:
        """Show what is kept side by side, or one picture again."""
        self.assign("comparing", shown)

    def ranked_of(self, code: str) -> RankedSample | None:
        """Return what was judged of a sample against this picture, None before it was."""
        try:
            return self.ranked.at(self.ranked.row(code)) if self.ranked is not None else None
        except UnknownSampleError:
            return None  # a sample without colours cannot be judged

    def sample_of(self, code: str) -> Sample:
        """Return a sample of the catalogue.

        Raises
        ------
        UnknownSampleError
            When the catalogue has no such code.
        """
        return self.catalogue[code]

    def _signal_of(self, name: str) -> SignalInstance:
        signal: SignalInstance = getattr(self, f"{name}_changed")
        return signal
