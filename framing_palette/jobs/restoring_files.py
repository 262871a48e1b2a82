"""Restoring: a backup in the place of the shop's database, with what a damaged one still gives."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from framing_palette.errors import FramingPaletteError, JobStoreError, OutputError, UnknownJobError
from framing_palette.jobs.backup_files import newest_whole_backup, put_back, set_aside
from framing_palette.jobs.documents import job_from_text
from framing_palette.jobs.job_lines import StoredJob
from framing_palette.jobs.log_files import Happening, note
from framing_palette.jobs.store import NEW, JobStore


@dataclass(frozen=True, slots=True)
class Restored:
    """How a restoration went.

    Parameters
    ----------
    aside
        Where the older file is kept now; None when there was none.
    brought_over
        Numbers of the jobs that the older file had newer than the backup, or alone.
    """

    aside: Path | None
    brought_over: tuple[str, ...]


def restore(path: Path, backup: Path | None, *, bring_over: bool = True) -> Restored:
    """Put a backup, or an empty database, in the place of one that nobody has open.

    Parameters
    ----------
    path, backup
        The database, and the backup; None when there is none that is whole.
    bring_over
        Whether jobs that can still be read in the older file, and are newer there, come along;
        without it the shop is as it was when the backup was taken.

    Raises
    ------
    JobStoreError
        When the backup is not whole, or none is named although there is a whole one.
    OutputError
        When something cannot be written.
    """
    try:
        return _restored(path, backup, bring_over=bring_over)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be restored ({error.strerror or error})",
            todo="make room on the disk, close the program at every other place and try again",
        ) from error


def _restored(path: Path, backup: Path | None, *, bring_over: bool) -> Restored:
    with TemporaryDirectory(prefix="framing-palette-", ignore_cleanup_errors=True) as folder:
        copy = _copy_of(path, Path(folder)) if bring_over else None
        aside = _empty_place(path) if backup is None else put_back(path, backup)
        if copy is None:
            return Restored(aside, ())
        with JobStore(path) as store:
            found = {stored.job.number for stored in _readable_jobs(copy) if _bring(store, stored)}
    note(Happening.BACKUP_RESTORED, brought_over=len(found))
    return Restored(aside, tuple(sorted(found)))


def _copy_of(path: Path, folder: Path) -> Path | None:
    """Copy a database with its log, so that reading it changes nothing in what is kept aside."""
    copy = folder / "copy.sqlite"
    for ending in ("", "-wal"):
        beside = path.with_name(path.name + ending)
        if beside.exists():
            shutil.copyfile(beside, copy.with_name(copy.name + ending))
    return copy if copy.exists() else None


def _empty_place(path: Path) -> Path | None:
    whole = newest_whole_backup(path)
    if whole is not None:
        raise JobStoreError(
            path, problem="has a whole backup", todo=f"restore {whole.name} or a later one"
        )
    return set_aside(path)


def _readable_jobs(path: Path) -> Iterator[StoredJob]:
    """Read a damaged file from both ends, as far as that goes each time."""
    for order in ("ASC", "DESC"):
        with suppress(sqlite3.DatabaseError), closing(sqlite3.connect(path)) as connection:
            statement = f"SELECT version, document FROM jobs ORDER BY rowid {order}"  # noqa: S608
            for version, document in connection.execute(statement):
                with suppress(FramingPaletteError, TypeError, ValueError):
                    yield StoredJob(job_from_text(document, path), int(version))


def _bring(store: JobStore, found: StoredJob) -> bool:
    try:
        kept = store.open(found.job.number).version
    except UnknownJobError:
        kept = NEW
    if kept >= found.version:
        return False
    store.save(found.job, version=kept)
    return True
