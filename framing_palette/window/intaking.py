"""Taking a photograph in: what is known and wanted of it, and what came of it, in the background.

The photograph as it was taken stays beside the picture that is worked with, so that corners, chart
and grey can be moved at any time; each wish is an edit of the desk and can be undone.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QObject, Signal

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs.taking_in import HowTaken
from framing_palette.window.building import set_art_size
from framing_palette.window.errands import SIZE, Errands
from framing_palette.window.images import Pyramid, pyramid_of
from framing_palette.window.legwork import Surveyed, surveyed_picture
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.jobs import PackedJob
    from framing_palette.picture import LightField, Picture
    from framing_palette.picture.intake import Intake
    from framing_palette.units import Length

READ, TAKE, SHEET = "photograph", "intake", "plain sheet"


@dataclass(frozen=True, slots=True, eq=False)
class Photograph:
    """The photograph as it was taken, with its image for the screen."""

    packed: "PackedJob"
    picture: "Picture"
    pyramid: Pyramid


@dataclass(frozen=True, slots=True, eq=False)
class Taken:
    """What came of an intake, with the picture made ready for the desk."""

    how: HowTaken
    intake: "Intake"
    surveyed: Surveyed


class Intaking(QObject):
    """Reads the photograph of the job and takes it in as the desk wishes."""

    photograph_changed = Signal()
    taken_changed = Signal()
    fault_changed = Signal()

    def __init__(self, session: Session, errands: Errands, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._errands = errands
        self.photograph: Photograph | None = None
        self.taken: Taken | None = None
        self.fault = ""
        self._asked: HowTaken | None = None
        self._asked_size: tuple[Length, Length] | None = None
        session.packed_changed.connect(self._forget)
        session.job_changed.connect(self._follow)

    def arrive(self) -> None:
        """Read the photograph of the job, unless that was done."""
        packed = self._session.packed
        if packed is None or packed.picture is None or self.photograph is not None:
            return
        if not self._errands.runner.is_busy(READ):
            self._errands.runner.start(
                READ,
                lambda progress: _photograph(packed, progress),
                done=self._take_photograph,
                failed=self._fail,
            )

    @property
    def how(self) -> HowTaken:
        """How the photograph is to be taken in."""
        job = self._session.desk.job
        return (job.intake if job else None) or HowTaken()

    def wish(self, words: str, how: HowTaken | None, *, merge: str = "") -> None:
        """Change how the photograph is taken in, undoably."""
        job = self._session.desk.job
        if job is not None:
            self._session.edit(words, merge=merge, job=replace(job, intake=how))

    def even_out_by(self, path: Path) -> None:
        """Read the photograph of a plain sheet and have its light divided out, undoably.

        A sheet that does not fit the photograph is said and changes nothing.
        """
        job, photograph, how = self._session.desk.job, self.photograph, self.how
        if job is None or photograph is None:
            return
        size = job.art_size
        self._errands.runner.start(
            SHEET,
            lambda progress: _light(path, photograph, how, size, progress),
            done=self._even_out,
            failed=self._fail,
        )

    def _even_out(self, light: "LightField") -> None:
        words = QCoreApplication.translate("Intaking", "Even out by a plain sheet")
        self.wish(words, replace(self.how, light=light))

    def take_in(self) -> None:
        """Take the photograph in as the job says; without a word it stays as the file says."""
        job, photograph = self._session.desk.job, self.photograph
        if photograph is None or job is None:
            return
        how, size = job.intake, job.art_size
        self._asked, self._asked_size = how, size
        if how is None:
            self._errands.runner.start(
                TAKE,
                lambda progress: _as_it_is(photograph, size, progress),
                done=self._take_plain,
                failed=self._fail,
            )
            return
        self._errands.runner.start(
            TAKE,
            lambda progress: _taken(photograph, how, size, progress),
            done=self._take,
            failed=self._fail,
        )

    def is_busy(self) -> bool:
        """Tell whether a photograph is being read or taken in."""
        runner = self._errands.runner
        return any(runner.is_busy(topic) for topic in (READ, TAKE, SHEET))

    def _follow(self) -> None:
        job = self._session.desk.job
        if job is None or self.photograph is None:
            return
        is_other_size = job.intake is not None and job.art_size != self._asked_size
        if job.intake != self._asked or is_other_size:
            self._errands.runner.cancel(SIZE)  # the intake gives the picture its size as well
            self.take_in()

    def _forget(self) -> None:
        self.photograph = self.taken = self._asked = None
        self._say("")
        self.photograph_changed.emit()
        self.taken_changed.emit()
        if self._session.step == "intake":
            self.arrive()

    def _take_photograph(self, photograph: Photograph) -> None:
        self.photograph = photograph
        self.photograph_changed.emit()
        job = self._session.desk.job
        if job is not None and job.intake is not None:
            self.take_in()

    def _take(self, taken: Taken) -> None:
        self.taken = taken
        self._say("")
        self._put(taken.surveyed)
        self._size_by_chart(taken)
        self.taken_changed.emit()

    def _size_by_chart(self, taken: Taken) -> None:
        """Give the job the size that the chart's own tells, when nobody typed one; undoably."""
        job, picture = self._session.desk.job, taken.surveyed.picture
        size = picture.true_size()
        if job is None or job.art_size is not None or taken.how.chart_width is None or size is None:
            return
        self._asked_size = size  # what the picture already has
        set_art_size(self._session, *size)

    def _take_plain(self, surveyed: Surveyed) -> None:
        self.taken = None
        self._say("")
        self._put(surveyed)
        self.taken_changed.emit()

    def _put(self, surveyed: Surveyed) -> None:
        session = self._session
        session.assign("survey", surveyed.survey)
        session.assign("pyramid", surveyed.pyramid)
        session.assign("picture", surveyed.picture)
        self._errands.find()

    def _fail(self, error: Exception) -> None:
        if isinstance(error, FramingPaletteError):
            self._say(str(error))
        else:
            self._errands.tell(error)

    def _say(self, fault: str) -> None:
        self.fault = fault
        self.fault_changed.emit()


def _photograph(packed: "PackedJob", progress: Progress) -> Photograph:
    from framing_palette.colour import lab_d50_to_srgb_u8
    from framing_palette.jobs.handing_over_files import photograph_of

    progress.tell(0.0)
    picture = photograph_of(packed, Path("the job"))
    progress.tell(0.6)
    return Photograph(packed, picture, pyramid_of(lab_d50_to_srgb_u8(picture.lab_d50)))


def _light(
    path: Path,
    photograph: Photograph,
    how: HowTaken,
    size: "tuple[Length, Length] | None",
    progress: Progress,
) -> "LightField":
    from framing_palette.picture import read_light_file, take_in

    progress.tell(0.0)
    light = read_light_file(path)
    progress.tell(0.3)
    take_in(photograph.picture, replace(how, light=light).wishes(size))  # refuses what does not fit
    return light


def _taken(
    photograph: Photograph,
    how: HowTaken,
    size: "tuple[Length, Length] | None",
    progress: Progress,
) -> Taken:
    from framing_palette.picture.intake import take_in

    progress.tell(0.0)
    intake = take_in(photograph.picture, how.wishes(size))
    return Taken(how, intake, surveyed_picture(intake.picture, progress))


def _as_it_is(
    photograph: Photograph, size: "tuple[Length, Length] | None", progress: Progress
) -> Surveyed:
    from framing_palette.window.job_files import at_scale

    progress.tell(0.0)
    picture = at_scale(photograph.picture, size)
    if picture is None:
        raise TypeError("a photograph that was read is no picture")
    return surveyed_picture(picture, progress)
