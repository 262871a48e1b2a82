"""The shop's jobs: every one a document, found by number, client, date, status and sample.

One SQLite file by default, or a server's address for several counters. A save names the version
that it was made on, so that two counters never overwrite each other unseen; once it returns, the
job is on the disk.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Self

from sqlalchemy.exc import IntegrityError, SQLAlchemyError

from framing_palette.errors import (
    JobChangedElsewhereError,
    JobNumberTakenError,
    JobStoreError,
    UnknownJobError,
)
from framing_palette.jobs import backup_files, database_files, store_schema
from framing_palette.jobs import job_tables as tables
from framing_palette.jobs.documents import job_from_text, job_text
from framing_palette.jobs.job_files import PackedJob
from framing_palette.jobs.job_lines import ClientLine, JobLine, StoredJob, Wanted
from framing_palette.jobs.log_files import Happening, note, note_error
from framing_palette.jobs.photograph_files import Photographs

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from framing_palette.jobs.jobs import Job

NEW = 0
_ALL = Wanted()


class JobStore:
    """The open jobs of a shop; close it, or use it in a ``with`` statement.

    Any thread may use it, several at once too.

    Parameters
    ----------
    address
        A file, or an SQLAlchemy address such as ``postgresql+psycopg://user@host/shop``; None for
        the file of this computer.
    photographs
        The folder of the photographs; ``photographs`` beside the file when None. Counters that
        share a server name a folder that they share.

    Raises
    ------
    JobStoreDamagedError
        When the file is damaged, or gone while backups are there; it names the newest whole one.
        Nothing is changed: `restoring_files` puts a backup back.
    JobStoreError
        When it cannot be opened or was made by a newer program.
    """

    def __init__(
        self, address: str | Path | None = None, *, photographs: Path | None = None
    ) -> None:
        address = address if address is not None else database_files.default_jobs_path()
        self.path: Path | None = None
        if database_files.is_server(address):
            self._engine, self.shown = database_files.open_server(str(address))
            beside = database_files.default_jobs_path()
        else:
            self.path = beside = database_files.file_of(address)
            backup_files.refuse_damaged(beside)
            self._engine, self.shown = database_files.open_file(beside), str(beside)
        self.photographs = Photographs(photographs or beside.parent / "photographs")
        self._for_writing = database_files.for_writing(self._engine)
        self._prepare()

    def __enter__(self) -> Self:
        """Return the store itself."""
        return self

    def __exit__(self, *_: object) -> None:
        """Close it."""
        self.close()

    def close(self) -> None:
        """Let go of the file or the server."""
        self._engine.dispose()

    def save(self, job: "Job", *, version: int = NEW, picture: bytes | None = None) -> int:
        """Save a job, whole or not at all, and return its version; then it is on the disk.

        Parameters
        ----------
        job
            As it is to be from now on.
        version
            The one that it was opened with or last saved as; 0 for a new job.
        picture
            The bytes of its photograph, needed once.

        Raises
        ------
        JobNumberTakenError
            When it is new and another job has its number.
        JobChangedElsewhereError
            When another counter saved it since; the error holds both.
        UnknownJobError
            When it is not new and not there: it was erased.
        JobStoreError, OutputError
            When it cannot be written; what was saved before is still there.
        """
        if picture is not None:
            self.photographs.keep(picture)
        try:
            with self._writing() as connection:
                if version == NEW:
                    return self._add(connection, job)
                if tables.replace_job(connection, job, version):
                    return version + 1
                return self._saved_before(connection, job, version)
        except IntegrityError as error:  # another counter took the number in this very moment
            raise JobNumberTakenError(job.number) from error

    def open(self, number: str) -> StoredJob:
        """Return a job without its photograph.

        Raises
        ------
        UnknownJobError
            When there is none.
        JobFileError
            When its document cannot be read.
        """
        with self._reading() as connection:
            return self._stored(connection, number)

    def packed(self, job: "Job") -> PackedJob:
        """Return a job with its photograph, as it is sent to another shop.

        Raises
        ------
        JobStoreError
            When its photograph is missing or damaged.
        """
        named = job.picture
        return PackedJob(job, None if named is None else self.photographs.content(named.sha256))

    def lines(self, wanted: Wanted = _ALL, *, limit: int | None = None) -> tuple[JobLine, ...]:
        """Return the jobs that are looked for, the one changed last first.

        Raises
        ------
        JobStoreError
            When the database cannot be read.
        """
        with self._reading() as connection:
            found = connection.execute(tables.select_lines(wanted, limit))
            try:
                return tuple(map(tables.line_of, found))
            except (KeyError, TypeError, ValueError) as error:
                raise self._unreadable("a line of its list") from error

    def count(self, wanted: Wanted = _ALL) -> int:
        """Return how many jobs there are that are looked for."""
        with self._reading() as connection:
            return tables.count(connection, wanted)

    def clients(self) -> tuple[ClientLine, ...]:
        """Return every client with a name, and how many jobs are theirs."""
        with self._reading() as connection:
            return tuple(ClientLine(*row) for row in connection.execute(tables.select_clients()))

    def numbers_of_client(self, name: str) -> tuple[str, ...]:
        """Return the numbers of all jobs of one client, whatever the case of the name."""
        with self._reading() as connection:
            return tuple(connection.execute(tables.select_numbers_of_client(name)).scalars())

    def erase_jobs_of(self, name: str) -> tuple[tuple[str, ...], int]:
        """Erase all jobs of one client here, and return their numbers and how many photographs.

        Backups are another matter: `personal_files.erase_client` does all of it.
        """
        with self._writing() as connection:
            found = connection.execute(tables.select_numbers_of_client(name)).all()
            numbers = tuple(row.number for row in found)
            tables.erase_jobs(connection, numbers)
            pictures = {row.picture for row in found if row.picture is not None}
            pictures -= set(connection.execute(tables.select_pictures(sorted(pictures))).scalars())
        photographs = self.photographs.erase(pictures)
        note(Happening.CLIENT_ERASED, jobs=len(numbers), photographs=photographs)
        return numbers, photographs

    def fold_in(self) -> bool:
        """Write what SQLite keeps beside its file into the file and empty that.

        Returns whether nobody was in the way; a server needs none of it.
        """
        if self.path is None:
            return True
        with self._translated(), self._engine.connect() as connection:
            cursor = connection.connection.cursor()
            return int(cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]) == 0

    def take_backup(self) -> Path:
        """Copy the file to its folder of backups and return the copy; others go on meanwhile.

        Raises
        ------
        JobStoreError
            When the jobs are on a server, which is backed up by its own means.
        OutputError
            When the copy cannot be written.
        """
        if self.path is None:
            raise JobStoreError(
                self.shown,
                problem="is a server",
                todo="have it backed up by its own means, such as pg_dump",
            )
        return backup_files.take_backup(self.path)

    def take_backup_if_due(self) -> Path | None:
        """Take a backup when the newest is some hours old and the jobs are in a file."""
        is_due = self.path is not None and backup_files.backup_is_due(self.path)
        return self.take_backup() if is_due else None

    def _prepare(self) -> None:
        try:
            self._bring_to_present_form()
        except BaseException:
            self.close()
            raise
        note(Happening.DATABASE_OPENED)

    def _bring_to_present_form(self) -> None:
        with self._reading() as connection:
            form = store_schema.found_form(connection)
        if form == store_schema.SCHEMA_FORM:
            return
        if not store_schema.is_known(form):
            raise JobStoreError(
                self.shown,
                problem=f"was made by a newer program (form {form})",
                todo="update the program at this counter",
            )
        if form and self.path is not None:
            backup_files.take_backup(self.path)
        with self._writing() as connection:
            store_schema.take_steps(connection)
        note(Happening.DATABASE_CHANGED_FORM, form=int(store_schema.SCHEMA_FORM))

    @staticmethod
    def _add(connection: "Connection", job: "Job") -> int:
        if connection.execute(tables.select_job(job.number)).one_or_none() is not None:
            raise JobNumberTakenError(job.number)
        tables.add_job(connection, job)
        return NEW + 1

    def _saved_before(self, connection: "Connection", job: "Job", seen: int) -> int:
        """Return the version of a save that came through although nobody was told so."""
        found = self._stored(connection, job.number)
        if found.version == seen + 1 and job_text(found.job) == job_text(job):
            return found.version
        note(Happening.SAVED_ELSEWHERE, seen=seen, found=found.version)
        raise JobChangedElsewhereError(
            job.number, seen=seen, found=found.version, mine=job, theirs=found.job
        )

    def _stored(self, connection: "Connection", number: str) -> StoredJob:
        row = connection.execute(tables.select_job(number)).one_or_none()
        if row is None:
            raise UnknownJobError(number)
        if not isinstance(row.version, int) or not isinstance(row.document, str):
            raise self._unreadable(f"job {number}")
        return StoredJob(job_from_text(row.document, f"job {number}"), row.version)

    def _unreadable(self, what: str) -> JobStoreError:
        return JobStoreError(
            self.shown,
            problem=f"cannot be read in {what}",
            todo="restore a backup; every job that can be read comes along",
        )

    @contextmanager
    def _reading(self) -> Iterator["Connection"]:
        with self._translated(), self._engine.connect() as connection:
            yield connection

    @contextmanager
    def _writing(self) -> Iterator["Connection"]:
        with self._translated(), self._for_writing.begin() as connection:
            yield connection

    @contextmanager
    def _translated(self) -> Iterator[None]:
        try:
            yield
        except IntegrityError:
            raise
        except (SQLAlchemyError, UnicodeDecodeError) as error:
            cause = str(getattr(error, "orig", None) or error).strip().splitlines()[0]
            self._engine.dispose()
            note_error(Happening.DATABASE_FAILED, error)
            raise JobStoreError(
                self.shown,
                problem=f"cannot be used ({cause})",
                todo="check the address, that no other program holds it, and that the disk has "
                "room; what was saved is still there",
            ) from error
