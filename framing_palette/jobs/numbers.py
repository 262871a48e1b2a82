"""Numbers of jobs: how a new one is called, and the next to try when that is taken."""

import re
from datetime import datetime


def new_number(at: datetime) -> str:
    """Return the number of a job begun at a time: the date, and the time to the second."""
    return f"{at:%y%m%d-%H%M%S}"


def next_number(number: str) -> str:
    """Return the number to try when one is taken: after ``7`` comes ``7.2``, then ``7.3``."""
    found = re.fullmatch(r"(.*)\.(\d{1,6})", number, re.DOTALL)
    return f"{found[1]}.{int(found[2]) + 1}" if found else f"{number}.2"
