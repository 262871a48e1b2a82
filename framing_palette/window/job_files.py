"""Jobs on disk, and the clock: opening, beginning and saving what lies on the desk."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.catalogue import Catalogue
from framing_palette.jobs import (
    Job,
    PackedJob,
    StoredJob,
    picture_of_file,
    read_job_file,
    write_job_file,
)
from framing_palette.jobs.handing_over_files import picture_of
from framing_palette.jobs.numbers import new_number
from framing_palette.picture import Picture, Region, read_picture_file, read_regions_file
from framing_palette.units import Length

if TYPE_CHECKING:
    from framing_palette.window.runner import Progress

JOB_ENDING = ".framejob"

Fetched = tuple[StoredJob, PackedJob, str]
"""A job as it is stored, as it lies here with its photograph, and what is to be said."""
BringIn = Callable[[PackedJob], tuple[StoredJob | None, str]]
"""Brings a job of a file into the shop's jobs, and says what is to be said."""


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
        The job file that it came from; None when there is none.
    stored
        As it is in the shop's jobs; None when it is not there yet.
    told
        What is to be said to the person at the counter.
    """

    packed: PackedJob
    picture: Picture | None
    path: Path | None
    stored: StoredJob | None = None
    told: str = ""


def now() -> datetime:
    """Return the time, with its zone."""
    return datetime.now(tz=UTC)


def zone() -> tzinfo:
    """Return the shop's own time zone."""
    return now().astimezone().tzinfo or UTC


def open_job(
    path: Path, catalogue: Catalogue, bring_in: BringIn | None, progress: "Progress"
) -> OpenedJob:
    """Open a job file; when there is a way to the shop's jobs it comes in there.

    Raises
    ------
    FramingPaletteError
        When the file or its photograph cannot be read.
    """
    progress.tell(0.0)
    packed = read_job_file(path, catalogue)
    progress.tell(0.3)
    picture = picture_of(packed, path) if packed.picture is not None else None
    stored, told = bring_in(packed) if bring_in is not None else (None, "")
    if stored is not None:
        packed = replace(packed, job=stored.job)
    return OpenedJob(packed, at_scale(picture, packed.job.art_size), path, stored, told)


def job_of_book(fetch: Callable[[], Fetched], progress: "Progress") -> OpenedJob:
    """Open a job of the shop's.

    Raises
    ------
    FramingPaletteError
        When it or its photograph cannot be read.
    """
    progress.tell(0.0)
    stored, packed, told = fetch()
    progress.tell(0.3)
    picture = picture_of(packed, Path(packed.job.title)) if packed.picture is not None else None
    return OpenedJob(packed, at_scale(picture, packed.job.art_size), None, stored, told)


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
        number=new_number(begun),
        title=picture_path.stem.replace("_", " ").replace("-", " ").capitalize(),
        created=begun,
        changed=begun,
        picture=named,
        art_size=art_size or picture.true_size(),
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
