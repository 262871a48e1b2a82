"""Keeping a job while it is worked on: merged with the other counters', or here until they answer.

While a server is away the job lies as a job file in a folder of this computer, so that not even a
crash loses it; it goes when the job is saved where it belongs.
"""

import re
from pathlib import Path
from typing import TYPE_CHECKING, Final

from framing_palette.errors import JobChangedElsewhereError, OutputError
from framing_palette.jobs.database_files import default_jobs_path
from framing_palette.jobs.documents import job_from_text, job_text
from framing_palette.jobs.job_files import ENDING, PackedJob, digest, write_job_file
from framing_palette.jobs.job_lines import StoredJob
from framing_palette.jobs.merging import merged
from framing_palette.whole_files import write_whole

if TYPE_CHECKING:
    from framing_palette.jobs.jobs import Job
    from framing_palette.jobs.store import JobStore

_BASE: Final = ".base"


def save_merged(
    store: "JobStore", base: StoredJob, mine: "Job", *, picture: bytes | None = None
) -> StoredJob:
    """Save a job together with what other counters did to it, and return what is saved now.

    Parameters
    ----------
    base
        As it was opened or last saved here.
    mine
        As it is here now.
    picture
        The bytes of its photograph, when it is a new one.

    Raises
    ------
    JobChangedElsewhereError
        When both changed the same: somebody has to look. Nothing is overwritten.
    UnknownJobError
        When it was erased.
    JobStoreError, OutputError
        When it cannot be written; `keep_unsent` holds it here meanwhile.
    """
    while True:  # each round the other counter has saved once more; it ends when it rests
        try:
            return StoredJob(mine, store.save(mine, version=base.version, picture=picture))
        except JobChangedElsewhereError as error:
            joined = merged(base.job, mine, error.theirs)
            if joined.undecided:
                raise
            mine, base = joined.job, StoredJob(error.theirs, error.found)


def default_unsent_folder() -> Path:
    """Return where this computer keeps jobs that could not be saved where they belong."""
    return default_jobs_path().parent / "unsent"


def keep_unsent(
    packed: PackedJob, folder: Path | None = None, *, base: StoredJob | None = None
) -> Path:
    """Keep a job here, durably, in place of what was kept of it before, and return its file.

    Parameters
    ----------
    packed
        The job; its photograph may be left out when it is among the photographs already.
    folder
        Where; this computer's own folder when None.
    base
        As the job was last saved where it belongs, so that it can be merged later.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    folder = folder or default_unsent_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    except OSError as error:
        raise OutputError(
            folder,
            problem=f"cannot be made ({error.strerror or error})",
            todo="save the job to a file in a folder that you may write to",
        ) from error
    path = _unsent_path(packed.job.number, folder)
    if base is not None:
        content = f"{base.version}\n{job_text(base.job)}".encode()
        write_whole(path.with_suffix(_BASE), content, private=True)
    write_job_file(path, packed)
    return path


def unsent_base(path: Path) -> StoredJob | None:
    """Return what a job that is kept here was last saved as, None when that is not known."""
    try:
        version, _, text = path.with_suffix(_BASE).read_text(encoding="utf-8").partition("\n")
        return StoredJob(job_from_text(text, path), int(version))
    except (OSError, ValueError):  # a document that cannot be read is a ValueError too
        return None


def unsent(folder: Path | None = None) -> tuple[Path, ...]:
    """Return the job files that are kept here and were never saved where they belong."""
    return tuple(sorted((folder or default_unsent_folder()).glob(f"*{ENDING}")))


def let_go(number: str, folder: Path | None = None) -> None:
    """Take away what is kept here of a job that is saved where it belongs."""
    path = _unsent_path(number, folder or default_unsent_folder())
    path.unlink(missing_ok=True)
    path.with_suffix(_BASE).unlink(missing_ok=True)


def _unsent_path(number: str, folder: Path) -> Path:
    """Return a file for a number; two numbers never share one, whatever signs they have."""
    plain = re.sub(r"[^A-Za-z0-9-]+", "_", number)[:40]
    return folder / f"{plain}-{digest(number.encode('utf-8', 'replace'))[:8]}{ENDING}"
