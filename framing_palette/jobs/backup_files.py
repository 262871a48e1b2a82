"""Backup files: taken while the shop works, checked before they count, pruned, and put back."""

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Final

from framing_palette.errors import JobStoreDamagedError, JobStoreError, OutputError
from framing_palette.jobs.backups import backup_name, is_due, no_longer_needed, time_of_backup
from framing_palette.jobs.database_files import BUSY_SECONDS, fault_of
from framing_palette.jobs.log_files import Happening, note

FOLDER: Final = "backups"
_BESIDE: Final = ("", "-wal", "-shm")  # the database and what SQLite keeps next to it


def backups_of(path: Path) -> tuple[Path, ...]:
    """Return the backups of a database, newest first; they need not be whole."""
    folder = path.parent / FOLDER
    try:
        found = [entry for entry in folder.iterdir() if time_of_backup(entry, path.stem)]
    except OSError:
        return ()
    return tuple(sorted(found, reverse=True))


def newest_whole_backup(path: Path) -> Path | None:
    """Return the newest backup that is whole, None when there is none."""
    return next((backup for backup in backups_of(path) if is_whole(backup)), None)


def is_whole(backup: Path) -> bool:
    """Return whether a backup can be read and passes SQLite's check of it."""
    try:
        return backup.stat().st_size > 0 and not fault_of(backup)
    except (OSError, JobStoreError):
        return False


def refuse_damaged(path: Path) -> None:
    """Say no to a damaged file, and to an empty or missing one where there were jobs.

    Raises
    ------
    JobStoreDamagedError
        With the newest whole backup; nothing is changed.
    JobStoreError
        When the file cannot be looked at.
    """
    try:
        is_there = path.stat().st_size > 0
    except OSError:
        is_there = False
    fault = fault_of(path) if is_there else ""
    backup = newest_whole_backup(path) if fault or not is_there else None
    if not is_there and backup is not None:
        fault = "is empty or gone although backups of it are there"
    if fault:
        note(Happening.DATABASE_DAMAGED, has_backup=backup is not None)
        at = None if backup is None else time_of_backup(backup, path.stem)
        raise JobStoreDamagedError(path, problem=fault, backup=backup, backup_at=at)


def backup_is_due(path: Path, now: datetime | None = None) -> bool:
    """Return whether the newest backup is some hours old."""
    return is_due(_times(path), now or datetime.now(UTC))


def take_backup(path: Path, now: datetime | None = None) -> Path:
    """Copy a database to its folder of backups, then let go of those that are not needed.

    Other counters go on reading and writing meanwhile. Nothing is pruned when the copy fails.

    Raises
    ------
    OutputError
        When the copy cannot be written or is not whole.
    """
    folder = path.parent / FOLDER
    backup = folder / backup_name(path.stem, now or datetime.now(UTC))
    try:
        folder.mkdir(exist_ok=True, mode=0o700)
        with _part_of(backup) as part:
            _copy_database(path, part)
            if not is_whole(part):
                raise _not_written(backup, "the copy is not whole")
            _settle(part, backup)
    except (OSError, sqlite3.Error) as error:
        raise _not_written(backup, str(getattr(error, "strerror", None) or error)) from error
    gone = no_longer_needed(_times(path))
    for old in backups_of(path):
        if time_of_backup(old, path.stem) in gone:
            old.unlink(missing_ok=True)
    note(Happening.BACKUP_TAKEN, bytes=backup.stat().st_size, pruned=len(gone))
    return backup


def put_back(path: Path, backup: Path, now: datetime | None = None) -> Path | None:
    """Put a backup in the place of a database and return where the older file is kept now.

    Nobody may have the database open. The older file stays beside the new one, whole or damaged.

    Raises
    ------
    JobStoreError
        When the backup is not whole; then nothing is changed.
    OutputError
        When the file cannot be written.
    """
    if not is_whole(backup):
        raise JobStoreError(backup, problem="is no whole backup", todo="choose an older one")
    try:
        with _part_of(path) as part:
            shutil.copyfile(backup, part)
            aside = set_aside(path, now)
            _settle(part, path)
    except OSError as error:
        raise _not_written(path, error.strerror or str(error)) from error
    return aside


def set_aside(path: Path, now: datetime | None = None) -> Path | None:
    """Rename a database with what lies beside it and return its new name, None if there is none.

    Raises
    ------
    OSError
        When it cannot be renamed.
    """
    if not path.exists():
        return None
    stamp = f"{now or datetime.now(UTC):%Y%m%dT%H%M%S%fZ}"
    aside = path.with_name(f"{path.stem}.aside-{stamp}{path.suffix}")
    for ending in _BESIDE:
        beside = path.with_name(path.name + ending)
        if beside.exists():
            beside.rename(aside.with_name(aside.name + ending))
    return aside


def files_aside(path: Path) -> tuple[Path, ...]:
    """Return the databases that were set aside, newest first."""
    return tuple(sorted(path.parent.glob(f"{path.stem}.aside-*{path.suffix}"), reverse=True))


@contextmanager
def _part_of(path: Path) -> Iterator[Path]:
    """Give an empty file beside the one to come, readable by its owner alone; gone at the end."""
    with NamedTemporaryFile(dir=path.parent, prefix=".", suffix=".part", delete=False) as file:
        part = Path(file.name)
    try:
        yield part
    finally:  # nothing is left to take away when it was moved to its place
        for ending in _BESIDE:
            part.with_name(part.name + ending).unlink(missing_ok=True)


def _copy_database(path: Path, part: Path) -> None:
    """Copy what is committed, without the free pages, in one file."""
    with (
        closing(sqlite3.connect(path, timeout=BUSY_SECONDS)) as source,
        closing(sqlite3.connect(part)) as target,
    ):
        source.backup(target)
        target.execute("PRAGMA journal_mode = DELETE")


def _settle(part: Path, path: Path) -> None:
    """Move a file to its place once it is on the disk."""
    with part.open("rb+") as file:
        os.fsync(file.fileno())
    part.replace(path)
    settle_folder(path.parent)


def settle_folder(folder: Path) -> None:
    """See to it that the names in a folder are on the disk, where the system can do that."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def _times(path: Path) -> list[datetime]:
    times = (time_of_backup(backup, path.stem) for backup in backups_of(path))
    return [at for at in times if at is not None]


def _not_written(path: Path, cause: str) -> OutputError:
    return OutputError(
        path,
        problem=f"cannot be written ({cause})",
        todo="see to it that the disk has room and that you may write there",
    )
