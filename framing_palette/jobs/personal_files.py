"""What the shop holds of one client: all of it as job files, or none of it any more."""

import re
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from framing_palette.errors import JobStoreError
from framing_palette.jobs.backup_files import backups_of, files_aside
from framing_palette.jobs.database_files import BUSY_SECONDS
from framing_palette.jobs.job_files import ENDING, PackedJob, write_job_file
from framing_palette.jobs.job_lines import key_of_client
from framing_palette.jobs.keeping_files import let_go
from framing_palette.jobs.store import JobStore


@dataclass(frozen=True, slots=True)
class Exported:
    """The job files of a client, and the jobs among them whose photograph is lost."""

    paths: tuple[Path, ...]
    without_photograph: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Erased:
    """What was erased, and the files that may still hold something and have to be looked at.

    Parameters
    ----------
    numbers
        Of the jobs.
    photographs
        How many; one that another client's job names stays.
    left
        Databases that were set aside, and backups that could not be written.
    """

    numbers: tuple[str, ...]
    photographs: int
    left: tuple[Path, ...]


def export_client(store: JobStore, name: str, folder: Path) -> Exported:
    """Write every job of one client to a folder, one job file each, readable by its owner alone.

    Raises
    ------
    OutputError
        When a file cannot be written.
    """
    paths, lost = list[Path](), list[str]()
    for place, number in enumerate(store.numbers_of_client(name)):
        job = store.open(number).job
        try:
            packed = store.packed(job)
        except JobStoreError:
            packed = PackedJob(job)
            lost.append(number)
        path = folder / f"{place + 1:03d}-{_as_file_name(number)}{ENDING}"
        write_job_file(path, packed)
        paths.append(path)
    return Exported(tuple(paths), tuple(lost))


def erase_client(store: JobStore, name: str, *, unsent_folder: Path | None = None) -> Erased:
    """Erase every job of one client, here and in the backups, for ever.

    In a file, what is erased is overwritten. A server keeps it until it next cleans up, and in
    backups of its own; both are its keeper's to see to, as are files that were saved elsewhere.

    Parameters
    ----------
    unsent_folder
        Where jobs wait that could not be saved; this computer's own folder when None.

    Raises
    ------
    JobStoreError
        When the database cannot be written; then nothing is erased.
    """
    numbers, photographs = store.erase_jobs_of(name)
    for number in numbers:
        let_go(number, unsent_folder)
    if store.path is None:
        return Erased(numbers, photographs, ())
    left = [backup for backup in backups_of(store.path) if not _erased_in(backup, name)]
    left += files_aside(store.path)
    if not store.fold_in():
        left.append(store.path.with_name(store.path.name + "-wal"))
    return Erased(numbers, photographs, tuple(left))


def _erased_in(backup: Path, name: str) -> bool:
    try:
        with closing(sqlite3.connect(backup, timeout=BUSY_SECONDS)) as connection:
            for pragma in ("foreign_keys = ON", "secure_delete = ON", "synchronous = FULL"):
                connection.execute(f"PRAGMA {pragma}")
            with connection:
                key = key_of_client(name)
                done = connection.execute("DELETE FROM jobs WHERE client_key = ?", (key,))
            if done.rowcount:
                connection.execute("VACUUM")
    except sqlite3.Error:
        return False
    return True


def _as_file_name(number: str) -> str:
    return re.sub(r"[^\w-]+", "_", number)[:60]
