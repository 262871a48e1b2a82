"""Errands: what is fetched and found out in the background, in the order in which it follows.

A picture is read, then what is in it, then the rack is judged against it. Each is a job of its own
topic, so that a new picture or an edited region silences what is no longer wanted.
"""

import gc
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from framing_palette.window import legwork
from framing_palette.window.arranging import desk_of
from framing_palette.window.desk import Desk
from framing_palette.window.faults import plain_fault
from framing_palette.window.legwork import OnTheDesk, Surveyed
from framing_palette.window.runner import Runner
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from collections.abc import Callable

    from framing_palette.picture import Picture, RegionFinding
    from framing_palette.picture.regions import Point
    from framing_palette.ranking import Ranking
    from framing_palette.units import Length
    from framing_palette.window.job_files import BringIn, Fetched
    from framing_palette.window.listing import Listed

JOB, RACK, FINDINGS, RANKING = "job", "catalogue", "findings", "ranking"
READER, LIT, LIVE, OUTLINE, SIZE = "strip reader", "lit colour", "live region", "outline", "size"
_REGIONS_REST_MS = 30


class Errands(QObject):
    """Starts the jobs of a session and brings their answers back to it."""

    def __init__(self, session: Session, runner: Runner) -> None:
        super().__init__(session)
        self._session = session
        self.runner = runner
        self.bring_in: BringIn | None = None
        self._live_waits = False
        self._read_soon = QTimer(self, interval=_REGIONS_REST_MS, singleShot=True)
        self._read_soon.timeout.connect(self.find)
        session.regions_changed.connect(self._read_soon.start)
        session.job_changed.connect(self._follow_size)
        session.findings_changed.connect(self.rank)
        session.findings_changed.connect(self.make_reader)
        session.lit_colour_changed.connect(self.light)
        session.live_region_changed.connect(self.read_live)
        session.catalogue_changed.connect(self.rank)
        session.rule_changed.connect(self.rank)
        session.rule_changed.connect(self.make_reader)

    def open_picture(
        self,
        path: Path,
        *,
        regions_path: Path | None = None,
        art_size: "tuple[Length, Length] | None" = None,
    ) -> None:
        """Begin a job on a picture file, with the regions file beside it if one is named."""
        self.runner.start(
            JOB,
            lambda progress: legwork.begun_job(path, regions_path, art_size, progress),
            done=self.take_job,
            failed=self.tell,
        )

    def open_job(self, path: Path) -> None:
        """Open a job file, which comes into the shop's jobs; its samples are the loaded rack's."""
        catalogue, bring_in = self._session.catalogue, self.bring_in
        self.runner.start(
            JOB,
            lambda progress: legwork.opened_job(path, catalogue, bring_in, progress),
            done=self.take_job,
            failed=self.tell,
        )

    def open_from_book(self, fetch: "Callable[[], Fetched]") -> None:
        """Open a job of the shop, fetched from its book."""
        self.runner.start(
            JOB,
            lambda progress: legwork.job_from_book(fetch, progress),
            done=self.take_job,
            failed=self.tell,
        )

    def clear_desk(self) -> None:
        """Leave the desk empty: the job on it is gone."""
        session = self._session
        session.undo_stack.clear()
        session.assign("stored", None)
        session.assign("packed", None)
        session.assign("job_path", None)
        session.assign("findings", None)
        self._take_surveyed(None)
        session.put_desk(Desk())

    def open_catalogue(self, folder: Path, *, then: "Callable[[], None] | None" = None) -> None:
        """Load a catalogue folder, and do something once it is there."""

        def done(catalogue: object) -> None:
            # A rack of ten thousand stays as it is: the collector need not walk it again and
            # again, which would hold the hand up for half a second each time.
            gc.freeze()
            self._session.assign("catalogue", catalogue)
            if then is not None:
                then()

        self.runner.start(
            RACK,
            lambda progress: legwork.loaded_catalogue(folder, progress),
            done=done,
            failed=self.tell,
        )

    def take_job(self, given: OnTheDesk) -> None:
        """Put a job on the desk; what was done to the last one is forgotten."""
        session, job = self._session, given.opened.packed.job
        session.undo_stack.clear()
        session.assign("findings", None)
        session.assign("notice", "")
        session.assign("chosen_region", -1)
        session.assign("chosen_strip", 0)
        session.assign("stored", given.opened.stored)
        session.assign("packed", given.opened.packed)
        session.assign("job_path", given.opened.path)
        self._take_surveyed(given.surveyed)
        session.put_desk(desk_of(job, session.catalogue))
        if given.opened.told:
            session.assign("notice", given.opened.told)
        self._read_soon.start()  # a job without regions changes none, and is read all the same

    def find(self) -> None:
        """Read what is in the picture and its regions."""
        survey, regions = self._session.survey, self._session.desk.regions
        if survey is None:
            return
        self.runner.start(
            FINDINGS,
            lambda progress: legwork.found(survey, regions, progress),
            done=lambda findings: self._session.assign("findings", findings),
            failed=self.tell,
        )

    def rank(self) -> None:
        """Judge the whole rack against the picture."""
        session = self._session
        findings, catalogue, rule = session.findings, session.catalogue, session.rule
        if findings is None or not len(catalogue):
            return
        self.runner.start(
            RANKING,
            lambda progress: legwork.judged(findings, catalogue, rule, progress),
            done=self._take_ranking,
            failed=self.tell,
        )

    def make_reader(self) -> None:
        """Make the picture ready for strips to be read on it."""
        session = self._session
        picture, findings, rule = session.picture, session.findings, session.rule
        if picture is None or findings is None:
            session.assign("strip_reader", None)
            return
        self.runner.start(
            READER,
            lambda progress: legwork.made_ready(picture, findings, rule, progress),
            done=lambda reader: session.assign("strip_reader", reader),
            failed=self.tell,
        )

    def light(self) -> None:
        """Find where in the picture the colour lives that is pointed at."""
        picture, lab = self._session.picture, self._session.lit_colour
        if picture is None or lab is None:
            self.runner.cancel(LIT)
            self._session.assign("lit_map", None)
            return
        self.runner.start(
            LIT,
            lambda progress: legwork.lit(picture, lab, progress),
            done=lambda image: self._session.assign("lit_map", image),
            failed=self.tell,
        )

    def read_live(self) -> None:
        """Read the region in hand while it is pushed or stretched, without its texture."""
        survey, region = self._session.survey, self._session.live_region
        if survey is None or region is None:
            self._session.assign("live_finding", None)
            return
        if self.runner.is_busy(LIVE):
            self._live_waits = True
            return
        self.runner.start(
            LIVE,
            lambda progress: legwork.read_quickly(survey, region, progress),
            done=self._take_live,
            failed=self.tell,
        )

    def outline(
        self,
        work: "Callable[[Picture], tuple[Point, ...]]",
        done: "Callable[[tuple[Point, ...]], None]",
    ) -> None:
        """Find an outline in the picture, by a function that takes too long to wait for."""
        picture = self._session.picture
        if picture is not None:
            self.runner.start(
                OUTLINE,
                lambda _progress: work(picture),
                done=done,
                failed=self.tell,
            )

    def tell(self, error: Exception) -> None:
        """Say what went wrong where the notice stands."""
        self._session.assign("notice", plain_fault(error))

    def _follow_size(self) -> None:
        """Give the picture the size that the job has now, and read it anew."""
        session, job = self._session, self._session.desk.job
        size = job.art_size if job else None
        picture, pyramid = session.picture, session.pyramid
        if size is None or picture is None or pyramid is None or size == session.sized_for:
            return
        session.sized_for = size
        self.runner.start(
            SIZE,
            lambda progress: legwork.rescaled(picture, size, pyramid, progress),
            done=self._take_size,
            failed=self.tell,
        )

    def _take_size(self, surveyed: Surveyed) -> None:
        self._take_surveyed(surveyed)
        self.find()

    def _take_surveyed(self, surveyed: Surveyed | None) -> None:
        session = self._session
        session.assign("survey", surveyed.survey if surveyed else None)
        session.assign("pyramid", surveyed.pyramid if surveyed else None)
        session.assign("picture", surveyed.picture if surveyed else None)

    def _take_ranking(self, judged: "tuple[Ranking, tuple[Listed, ...]]") -> None:
        self._session.listed = judged[1]
        self._session.assign("ranked", judged[0])

    def _take_live(self, finding: "RegionFinding") -> None:
        self._session.assign("live_finding", finding)
        if self._live_waits:
            # Only the newest place of the hand counts; those in between are never read.
            self._live_waits = False
            QTimer.singleShot(0, self.read_live)
