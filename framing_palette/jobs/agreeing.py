"""Agreeing: which design was chosen, where the job stands, and when that was decided."""

from dataclasses import replace
from datetime import datetime

from framing_palette.errors import FieldError, NotAgreedError
from framing_palette.jobs.jobs import Job, Status

STATUS_WORDS = {
    Status.OPEN: "Open",
    Status.PROPOSED: "Proposed",
    Status.AGREED: "Agreed",
    Status.WORKSHOP: "In the workshop",
    Status.READY: "Ready",
    Status.COLLECTED: "Collected",
}

_BEFORE_AGREEING = (Status.OPEN, Status.PROPOSED)


def with_choice(job: Job, number: int, at: datetime) -> Job:
    """Return the job with one of its designs agreed on.

    Raises
    ------
    FieldError
        When there is no such design.
    """
    if not 0 <= number < len(job.options):
        wanted = f"choose one of the {len(job.options)} designs"
        raise FieldError("design", got=number + 1, wanted=wanted)
    status = Status.AGREED if job.status in _BEFORE_AGREEING else job.status
    name = job.options[number].design.name or f"Design {number + 1}"
    return replace(job, chosen=number, status=status).with_event(at, f"Agreed on: {name}.")


def with_status(job: Job, status: Status, at: datetime) -> Job:
    """Return the job moved to where it is now; before a design is agreed on it can be proposed.

    Raises
    ------
    NotAgreedError
        When it is to go on without a design that was agreed on.
    """
    if status is job.status:
        return job
    if status not in _BEFORE_AGREEING and job.agreed is None:
        raise NotAgreedError(job.number, wanted="a design that was agreed on")
    chosen = None if status in _BEFORE_AGREEING else job.chosen
    moved = replace(job, status=status, chosen=chosen)
    return moved.with_event(at, f"{STATUS_WORDS[status]}.")
