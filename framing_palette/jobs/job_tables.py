"""The tables of the shop's jobs as they are now, and every statement that touches them."""

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any

from sqlalchemy import (
    Column,
    Executable,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    Select,
    Table,
    Text,
    delete,
    func,
    insert,
    select,
    update,
)

from framing_palette.jobs.documents import job_text
from framing_palette.jobs.job_lines import JobLine, Wanted, key_of_client, samples_used
from framing_palette.jobs.jobs import Job, Status

if TYPE_CHECKING:
    from sqlalchemy import ColumnElement, Connection

METADATA = MetaData()
_jobs = Table(
    "jobs",
    METADATA,
    Column("number", Text, primary_key=True),
    Column("title", Text, nullable=False),
    Column("client", Text, nullable=False),
    Column("client_key", Text, nullable=False),
    Column("status", Text, nullable=False),
    Column("created", Text, nullable=False),
    Column("changed", Text, nullable=False),
    Column("search", Text, nullable=False),
    Column("picture", Text),
    Column("version", Integer, nullable=False),
    Column("document", Text, nullable=False),
    Index("jobs_changed", "changed"),
    Index("jobs_status", "status", "changed"),
    Index("jobs_created", "created"),
    Index("jobs_client", "client_key"),
    Index("jobs_picture", "picture"),
)
_samples = Table(
    "job_samples",
    METADATA,
    Column("number", Text, ForeignKey("jobs.number", ondelete="CASCADE"), primary_key=True),
    Column("code", Text, primary_key=True),
    Index("job_samples_code", "code"),
)
_LINE = (
    _jobs.c.number,
    _jobs.c.title,
    _jobs.c.client,
    _jobs.c.status,
    _jobs.c.created,
    _jobs.c.changed,
    _jobs.c.version,
)
_STATUS = {status.value: status for status in Status}
_time = datetime.fromisoformat


def utc_text(at: datetime) -> str:
    """Return a time so that the texts of two times sort as the times do."""
    return at.astimezone(UTC).isoformat(timespec="microseconds")


def add_job(connection: "Connection", job: Job) -> None:
    """Write a new job as version 1; the caller knows that its number is free."""
    connection.execute(insert(_jobs).values(**_row(job), version=1))
    _write_samples(connection, job, frozenset())


def replace_job(connection: "Connection", job: Job, seen_version: int) -> bool:
    """Write a job if it still has the version that was seen."""
    statement = (
        update(_jobs)
        .where(_jobs.c.number == job.number, _jobs.c.version == seen_version)
        .values(**_row(job), version=seen_version + 1)
    )
    if connection.execute(statement).rowcount != 1:
        return False
    used = select(_samples.c.code).where(_samples.c.number == job.number)
    _write_samples(connection, job, frozenset(connection.execute(used).scalars()))
    return True


def select_job(number: str) -> Select[Any]:
    """Return version and document of one job."""
    return select(_jobs.c.version, _jobs.c.document).where(_jobs.c.number == number)


def select_lines(wanted: Wanted, limit: int | None) -> Select[Any]:
    """Return the lines of the jobs that are looked for, the one changed last first."""
    statement = select(*_LINE).where(*_conditions(wanted))
    return statement.order_by(_jobs.c.changed.desc(), _jobs.c.number).limit(limit)


def count(connection: "Connection", wanted: Wanted) -> int:
    """Return how many jobs there are that are looked for."""
    statement = select(func.count()).select_from(_jobs).where(*_conditions(wanted))
    return int(connection.execute(statement).scalar_one())


def line_of(row: Sequence[Any]) -> JobLine:
    """Return one line of the list; ten thousand of them are made while somebody waits."""
    number, title, client, status, created, changed, version = row
    return JobLine(number, title, client, _STATUS[status], _time(created), _time(changed), version)


def select_clients() -> Executable:
    """Return each client's name and how many jobs are theirs, by name."""
    named = func.min(_jobs.c.client).label("name")
    statement = select(named, func.count()).where(_jobs.c.client_key != "")
    return statement.group_by(_jobs.c.client_key).order_by(_jobs.c.client_key)


def select_numbers_of_client(name: str) -> Select[Any]:
    """Return number and picture of all jobs of one client."""
    mine = _jobs.c.client_key == key_of_client(name)
    return select(_jobs.c.number, _jobs.c.picture).where(mine).order_by(_jobs.c.number)


def erase_jobs(connection: "Connection", numbers: Sequence[str]) -> None:
    """Take jobs away for ever, with the codes of the samples that they used."""
    connection.execute(delete(_jobs).where(_jobs.c.number.in_(numbers)))


def select_pictures(digests: Sequence[str]) -> Select[Any]:
    """Return those of the pictures that any job names."""
    return select(_jobs.c.picture).where(_jobs.c.picture.in_(digests)).distinct()


def _conditions(wanted: Wanted) -> "list[ColumnElement[bool]]":
    conditions = [
        _jobs.c.search.contains(word, autoescape=True) for word in wanted.words.casefold().split()
    ]
    if wanted.client.strip():
        key = key_of_client(wanted.client)
        conditions.append(_jobs.c.client_key.contains(key, autoescape=True))
    if wanted.status is not None:
        conditions.append(_jobs.c.status == wanted.status.value)
    if wanted.begun_from is not None:
        conditions.append(_jobs.c.created >= utc_text(wanted.begun_from))
    if wanted.begun_before is not None:
        conditions.append(_jobs.c.created < utc_text(wanted.begun_before))
    if wanted.sample:
        users = select(_samples.c.number).where(_samples.c.code == wanted.sample)
        conditions.append(_jobs.c.number.in_(users))
    return conditions


def _row(job: Job) -> dict[str, Any]:
    client = job.client
    return {
        "number": job.number,
        "title": _storable(job.title),
        "client": _storable(client.name),
        "client_key": _storable(key_of_client(client.name)),
        "status": job.status.value,
        "created": utc_text(job.created),
        "changed": utc_text(job.changed),
        "search": _storable(
            f"{job.number}\n{job.title}\n{client.name}\n{client.contact}"
        ).casefold(),
        "picture": None if job.picture is None else job.picture.sha256,
        "document": job_text(job),
    }


def _storable(text: str) -> str:
    """Return text that every database takes: without NUL, which some servers refuse."""
    return text.replace("\0", " ").encode("utf-8", "replace").decode()


def _write_samples(connection: "Connection", job: Job, before: frozenset[str]) -> None:
    """Note the samples that a job uses now where it used those before."""
    now = samples_used(job)
    gone, new = sorted(before - now), sorted(now - before)
    if gone:
        mine = _samples.c.number == job.number
        connection.execute(delete(_samples).where(mine, _samples.c.code.in_(gone)))
    if new:
        rows = [{"number": job.number, "code": code} for code in new]
        connection.execute(insert(_samples), rows)
