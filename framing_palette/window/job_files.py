"""Jobs on disk, and the clock: opening, beginning and saving what lies on the desk."""

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.catalogue import Catalogue
from framing_palette.jobs import (
    Job,
    PackedJob,
    picture_of_file,
    read_job_file,
    write_job_file,
)
from framing_palette.jobs.handing_over_files import picture_of
from framing_palette.picture import Picture, Region, read_picture_file, read_regions_file
from framing_palette.units import Length

if TYPE_CHECKING:
    from framing_palette.window.runner import Progress

JOB_ENDING = ".framejob"


@dataclass(frozen=True, slots=True)
class OpenedJob:
    """A job with its photograph as it was taken and as it is worked with.

    Parameters
    ----------
    packed
        The job and the bytes of its photograph.
    picture
        The photograph, with its scale when the art's size is known; None when the job has none.
    path
        Where it is saved; None when it was never saved.
    """

    packed: PackedJob
    picture: Picture | None
    path: Path | None


def now() -> datetime:
    """Return the time, with its zone."""
    return datetime.now(tz=UTC)


def open_job(path: Path, catalogue: Catalogue, progress: "Progress") -> OpenedJob:
    """Open a saved job.

    Raises
    ------
    FramingPaletteError
        When the file or its photograph cannot be read.
    """
    progress.tell(0.0)
    packed = read_job_file(path, catalogue)
    progress.tell(0.3)
    picture = picture_of(packed, path) if packed.picture is not None else None
    return OpenedJob(packed, at_scale(picture, packed.job.art_size), path)


def begin_job(
    picture_path: Path,
    regions_path: Path | None,
    art_size: tuple[Length, Length] | None,
    progress: "Progress",
) -> OpenedJob:
    """Begin a job on a photograph.

    Raises
    ------
    FramingPaletteError
        When the photograph or the regions file cannot be read.
    """
    progress.tell(0.0)
    picture = read_picture_file(picture_path)
    regions: tuple[Region, ...] = read_regions_file(regions_path) if regions_path else ()
    content, named = picture_of_file(picture_path)
    begun = now()
    job = Job(
        number=f"{begun:%y%m%d-%H%M%S}",
        title=picture_path.stem.replace("_", " ").replace("-", " ").capitalize(),
        created=begun,
        changed=begun,
        picture=named,
        art_size=art_size,
        regions=regions,
    )
    return OpenedJob(PackedJob(job, content), at_scale(picture, art_size), None)


def save_job(path: Path, packed: PackedJob, progress: "Progress") -> datetime:
    """Save a job and return when that was.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    progress.tell(0.0)
    write_job_file(path, packed)
    return now()


def at_scale(picture: Picture | None, art_size: tuple[Length, Length] | None) -> Picture | None:
    """Return the picture with the scale that the art's size gives it."""
    if picture is None or art_size is None:
        return picture
    return picture.with_true_size(*art_size)
