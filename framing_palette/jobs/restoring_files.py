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
    aside = _empty_place(path) if backup is None else put_back(path, backup)
    if aside is None or not bring_over:
        return Restored(aside, ())
    with JobStore(path) as store:
        found = [job for job in _readable_jobs(aside) if _bring(store, job)]
    return Restored(aside, tuple(sorted({stored.job.number for stored in found})))


def _empty_place(path: Path) -> Path | None:
    whole = newest_whole_backup(path)
    if whole is not None:
        raise JobStoreError(
            path, problem="has a whole backup", todo=f"restore {whole.name} or a later one"
        )
    try:
        return set_aside(path)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be moved ({error.strerror or error})",
            todo="close the program at every other place and try again",
        ) from error


def _readable_jobs(aside: Path) -> Iterator[StoredJob]:
    """Read a copy of a damaged file from both ends, as far as that goes each time."""
    with TemporaryDirectory(prefix="framing-palette-") as folder:
        copy = Path(folder) / "copy.sqlite"
        for ending in ("", "-wal"):
            beside = aside.with_name(aside.name + ending)
            if beside.exists():
                shutil.copyfile(beside, copy.with_name(copy.name + ending))
        for order in ("ASC", "DESC"):
            with suppress(sqlite3.DatabaseError), closing(sqlite3.connect(copy)) as connection:
                statement = f"SELECT version, document FROM jobs ORDER BY rowid {order}"  # noqa: S608
                for version, document in connection.execute(statement):
                    with suppress(FramingPaletteError, TypeError, ValueError):
                        yield StoredJob(job_from_text(document, aside), int(version))


def _bring(store: JobStore, found: StoredJob) -> bool:
    try:
        kept = store.open(found.job.number).version
    except UnknownJobError:
        kept = NEW
    if kept >= found.version:
        return False
    store.save(found.job, version=kept)
    return True
