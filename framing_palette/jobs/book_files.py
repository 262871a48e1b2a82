"""What the job book does with jobs besides keeping them: from files, copies, backups, reports."""

from contextlib import suppress
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from framing_palette.errors import FramingPaletteError, JobNumberTakenError, UnknownJobError
from framing_palette.jobs.backup_files import backups_of
from framing_palette.jobs.backups import time_of_backup
from framing_palette.jobs.job_files import PackedJob
from framing_palette.jobs.job_lines import StoredJob
from framing_palette.jobs.jobs import Job
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.numbers import copied, next_number
from framing_palette.jobs.store import NEW


def bring_in(keeper: Keeper, packed: PackedJob) -> tuple[StoredJob, str]:
    """Bring a job from a file into the shop's jobs, and return it with what is to be said.

    The same job is not brought in twice; another one of its number gives it a new number.

    Raises
    ------
    JobStoreError, OutputError
        When it cannot be saved.
    """
    with keeper.writing:
        store, number = keeper.store(), packed.job.number
        while True:
            job = replace(packed.job, number=number)
            try:
                found = store.open(number)
            except UnknownJobError:
                version = store.save(job, version=NEW, picture=packed.picture)
                said = "" if job == packed.job else _other_number(packed.job, number)
                return StoredJob(job, version), said
            if found.job == job:
                return found, ""
            number = next_number(number)


def copy_job(keeper: Keeper, number: str, new_number: str, at: datetime) -> StoredJob:
    """Copy a job under a new number, for another piece of art like it.

    Raises
    ------
    UnknownJobError
        When there is none.
    JobStoreError
        When it cannot be saved.
    """
    original = keeper.looked_up(number)
    while True:
        made = copied(original, new_number, at)
        try:
            with keeper.writing:
                return StoredJob(made, keeper.store().save(made))
        except JobNumberTakenError:
            new_number = next_number(new_number)


def backups(keeper: Keeper) -> tuple[tuple[Path, datetime], ...] | None:
    """Return the backups with when they were taken, newest first; None for a server."""
    path = keeper.place.file
    if path is None:
        return None
    timed = ((backup, time_of_backup(backup, path.stem)) for backup in backups_of(path))
    return tuple((backup, at) for backup, at in timed if at is not None)


def report_problem(keeper: Keeper, path: Path) -> Path:
    """Look at the installation and write a report of it without anybody's name.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    from framing_palette.jobs.health import examine
    from framing_palette.jobs.problem_files import write_problem_file
    from framing_palette.jobs.shipped_files import shipped_folder

    names = [keeper.place.shown, str(keeper.place.folder)]
    with suppress(FramingPaletteError):  # jobs that cannot be read name nobody
        names += [client.name for client in keeper.store().clients()]
    findings = examine(shipped_folder("catalog"), keeper.place.address)
    return write_problem_file(path, findings, names=names)


def _other_number(job: Job, number: str) -> str:
    return f"There is another job {job.number} in this shop, so this one came in as {number}."
