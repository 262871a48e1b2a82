"""Errands: what is fetched and found out in the background, in the order in which it follows.

A picture is read, then what is in it, then the rack is judged against it. Each is a job of its own
topic, so that a new picture or an edited region silences what is no longer wanted.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from framing_palette.catalogue import Catalogue
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.errors import FramingPaletteError
from framing_palette.picture import Findings, Picture, Region, RegionFinding
from framing_palette.ranking import RankedSample
from framing_palette.units import Length
from framing_palette.window.images import Pyramid, dimming_of, pyramid_of
from framing_palette.window.runner import Progress, Runner
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QImage

    from framing_palette.picture.looking import Survey
    from framing_palette.picture.regions import Point
    from framing_palette.ranking.strip_reading import StripReader

PICTURE, RACK, FINDINGS, RANKING = "picture", "catalogue", "findings", "ranking"
READER, LIT, LIVE, OUTLINE = "strip reader", "lit colour", "live region", "outline"
_REGIONS_REST_MS = 30


@dataclass(frozen=True, slots=True)
class OpenedPicture:
    """A picture with its image for the screen and the regions that came with it."""

    picture: Picture
    survey: "Survey"
    pyramid: Pyramid
    regions: tuple[Region, ...]
    title: str
    art_size: tuple[Length, Length] | None


class Errands(QObject):
    """Starts the jobs of a session and brings their answers back to it."""

    def __init__(self, session: Session, runner: Runner) -> None:
        super().__init__(session)
        self._session = session
        self.runner = runner
        self._live_waits = False
        self._read_soon = QTimer(self, interval=_REGIONS_REST_MS, singleShot=True)
        self._read_soon.timeout.connect(self.find)
        session.regions_changed.connect(self._read_soon.start)
        session.findings_changed.connect(self.rank)
        session.findings_changed.connect(self.make_reader)
        session.lit_colour_changed.connect(self.light)
        session.live_region_changed.connect(self.read_live)
        session.catalogue_changed.connect(self.rank)

    def open_picture(
        self,
        path: Path,
        *,
        regions_path: Path | None = None,
        art_size: tuple[Length, Length] | None = None,
    ) -> None:
        """Read a picture file, and the regions file beside it if one is named."""
        self.runner.start(
            PICTURE,
            lambda progress: opened_picture(path, regions_path, art_size, progress),
            done=self.take_picture,
            failed=self._tell,
        )

    def open_catalogue(self, folder: Path) -> None:
        """Load a catalogue folder."""
        self.runner.start(
            RACK,
            lambda progress: loaded_catalogue(folder, progress),
            done=lambda catalogue: self._session.assign("catalogue", catalogue),
            failed=self._tell,
        )

    def find(self) -> None:
        """Read what is in the picture and its regions."""
        survey, regions = self._session.survey, self._session.desk.regions
        if survey is None:
            return
        self.runner.start(
            FINDINGS,
            lambda progress: found(survey, regions, progress),
            done=lambda findings: self._session.assign("findings", findings),
            failed=self._tell,
        )

    def rank(self) -> None:
        """Judge the whole rack against the picture."""
        findings, catalogue = self._session.findings, self._session.catalogue
        if findings is None or not len(catalogue):
            return
        self.runner.start(
            RANKING,
            lambda progress: judged(findings, catalogue, progress),
            done=lambda ranked: self._session.assign("ranked", ranked),
            failed=self._tell,
        )

    def make_reader(self) -> None:
        """Make the picture ready for strips to be read on it."""
        picture, findings = self._session.picture, self._session.findings
        if picture is None or findings is None:
            self._session.assign("strip_reader", None)
            return
        self.runner.start(
            READER,
            lambda progress: made_ready(picture, findings, progress),
            done=lambda reader: self._session.assign("strip_reader", reader),
            failed=self._tell,
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
            lambda progress: lit(picture, lab, progress),
            done=lambda image: self._session.assign("lit_map", image),
            failed=self._tell,
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
            lambda progress: read_quickly(survey, region, progress),
            done=self._take_live,
            failed=self._tell,
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
                OUTLINE, lambda _progress: work(picture), done=done, failed=self._tell
            )

    def _take_live(self, finding: RegionFinding) -> None:
        self._session.assign("live_finding", finding)
        if self._live_waits:
            # Only the newest place of the hand counts; those in between are never read.
            self._live_waits = False
            QTimer.singleShot(0, self.read_live)

    def take_picture(self, opened: OpenedPicture) -> None:
        """Put a picture that was read on the desk; what was done to the last one is forgotten."""
        session = self._session
        session.undo_stack.clear()
        session.assign("findings", None)
        session.assign("survey", opened.survey)
        session.assign("pyramid", opened.pyramid)
        session.assign("art_size", opened.art_size)
        session.assign("picture", opened.picture)
        session.assign("facts", replace(session.facts, title=opened.title))
        session.put_desk(replace(session.desk, regions=opened.regions, strips=()))
        self._read_soon.start()

    def _tell(self, error: Exception) -> None:
        if isinstance(error, FramingPaletteError):
            self._session.assign("notice", str(error))
        else:
            kind = type(error).__name__
            words = f"This is a defect of the program, not of your input ({kind}: {error})."
            self._session.assign("notice", words)


def opened_picture(
    path: Path,
    regions_path: Path | None,
    art_size: tuple[Length, Length] | None,
    progress: Progress,
) -> OpenedPicture:
    """Read a picture with its regions and make its image for the screen."""
    from framing_palette.picture.looking import survey_picture
    from framing_palette.picture.reading import read_picture_file
    from framing_palette.picture.regions_files import read_regions_file

    progress.tell(0.0)
    picture = read_picture_file(path)
    if art_size is not None:
        picture = picture.with_true_size(*art_size)
    regions = read_regions_file(regions_path) if regions_path else ()
    progress.tell(0.4)
    pyramid = pyramid_of(lab_d50_to_srgb_u8(picture.lab_d50))
    progress.tell(0.7)
    return OpenedPicture(
        picture=picture,
        survey=survey_picture(picture),
        pyramid=pyramid,
        regions=tuple(regions),
        title=path.stem.replace("_", " ").replace("-", " ").capitalize(),
        art_size=art_size,
    )


def loaded_catalogue(folder: Path, progress: Progress) -> Catalogue:
    """Load a catalogue folder; its bad cells are reported elsewhere, its good rows are used."""
    from framing_palette.catalogue.catalogue_files import read_catalogue_folder

    progress.tell(0.0)
    catalogue, _problems = read_catalogue_folder(folder)
    return catalogue


def found(survey: "Survey", regions: tuple[Region, ...], progress: Progress) -> Findings:
    """Read what is in a picture that was surveyed."""
    from framing_palette.picture.looking import findings_from_survey

    progress.tell(0.0)
    return findings_from_survey(survey, regions)


def judged(
    findings: Findings, catalogue: Catalogue, progress: Progress
) -> tuple[RankedSample, ...]:
    """Judge every sample against a picture, best first."""
    from framing_palette.ranking.ranks import rank

    progress.tell(0.0)
    return tuple(rank(findings, catalogue))


def made_ready(picture: Picture, findings: Findings, progress: Progress) -> "StripReader":
    """Make a picture ready for reading strips on it."""
    from framing_palette.ranking.strip_reading import strip_reader
    from framing_palette.ranking.strips import strip_scale

    progress.tell(0.0)
    return strip_reader(picture, findings, mm_per_px=strip_scale(picture))


def lit(picture: Picture, lab: tuple[float, float, float], progress: Progress) -> "QImage":
    """Return what dims a picture everywhere but where a colour lives."""
    from framing_palette.picture.places import presence

    progress.tell(0.0)
    return dimming_of(presence(picture, lab))


def read_quickly(survey: "Survey", region: Region, progress: Progress) -> RegionFinding:
    """Read one region without its texture."""
    from framing_palette.picture.looking import read_region

    progress.tell(0.0)
    return read_region(survey, region, with_texture=False)
