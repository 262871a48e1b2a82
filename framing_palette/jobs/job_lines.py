"""Lines of the job list, what one looks for in it, and a job with the version that it has."""

from dataclasses import dataclass
from datetime import datetime

from framing_palette.jobs.jobs import Job, Status


@dataclass(frozen=True, slots=True)
class JobLine:
    """One job as the list shows it; the rest of it is not read."""

    number: str
    title: str
    client: str
    status: Status
    created: datetime
    changed: datetime
    version: int


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is looked for; everything that is given must hold.

    Parameters
    ----------
    words
        Each is somewhere in the number, the title or the client's name or contact.
    client
        Part of the client's name.
    status
        Where the job is.
    begun_from, begun_before
        When it was begun, with a time zone; the second is not included.
    sample
        Code of a sample that is kept for the job or is part of one of its designs.
    """

    words: str = ""
    client: str = ""
    status: Status | None = None
    begun_from: datetime | None = None
    begun_before: datetime | None = None
    sample: str = ""


@dataclass(frozen=True, slots=True)
class StoredJob:
    """A job and the version that it was saved as; saving it again names this version."""

    job: Job
    version: int


@dataclass(frozen=True, slots=True)
class ClientLine:
    """One client and how many jobs are theirs."""

    name: str
    jobs: int


def key_of_client(name: str) -> str:
    """Return a name as it is compared: without regard to case and spacing."""
    return " ".join(name.casefold().split())


def samples_used(job: Job) -> frozenset[str]:
    """Return the codes of all samples that are kept for a job or are part of its designs."""
    designs = [option.design for option in job.options]
    layers = {layer.code for design in designs for layer in design.layers}
    mouldings = {design.moulding.code for design in designs if design.moulding is not None}
    on_rail = {code for kept in job.desk.rail for code in kept.codes}
    return frozenset({*layers, *mouldings, *on_rail, *job.kept} - {""})
