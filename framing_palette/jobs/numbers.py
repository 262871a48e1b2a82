"""Numbers of jobs: how a new one is called, the next to try when that is taken, and copies."""

import re
from dataclasses import replace
from datetime import datetime

from framing_palette.jobs.jobs import Job, Status


def new_number(at: datetime) -> str:
    """Return the number of a job begun at a time: the date, and the time to the second."""
    return f"{at:%y%m%d-%H%M%S}"


def next_number(number: str) -> str:
    """Return the number to try when one is taken: after ``7`` comes ``7.2``, then ``7.3``."""
    found = re.fullmatch(r"(.*)\.(\d{1,6})", number, re.DOTALL)
    return f"{found[1]}.{int(found[2]) + 1}" if found else f"{number}.2"


def copied(job: Job, number: str, at: datetime) -> Job:
    """Return a job for another piece of art like it: open, not measured, nothing agreed on."""
    bare = replace(
        job,
        number=number,
        created=at,
        status=Status.OPEN,
        measurements=(),
        chosen=None,
        history=(),
    )
    return bare.with_event(at, f"Copied from job {job.number}.")
