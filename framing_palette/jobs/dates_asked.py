"""Dates as one asks for them: a year, a month, a day, or from one to another."""

import re
from datetime import datetime, timedelta, tzinfo
from typing import Final

from framing_palette.errors import FieldError

_FORM: Final = re.compile(r"(\d{4})(?:-(\d{1,2})(?:-(\d{1,2}))?)?")
_BETWEEN: Final = re.compile(r"\s+(?:to|until)\s+|\s*(?:\.\.|–)\s*")
_WANTED: Final = "write a year, a month or a day, such as 2026, 2026-03 or 2026-03-04 to 2026-04-15"


def dates_asked(text: str, zone: tzinfo) -> tuple[datetime | None, datetime | None]:
    """Return from when and before when, in a zone; nothing asked is no limit.

    Raises
    ------
    FieldError
        When it is no date; the sentence shows how one is written.
    """
    if not text.strip():
        return None, None
    ends = _BETWEEN.split(text.strip())
    if len(ends) > 2:
        raise FieldError("date", got=text, wanted=_WANTED)
    spans = [_span(end, zone, text) for end in ends]
    first, last = spans[0][0], spans[-1][1]
    if last <= first:
        raise FieldError("date", got=text, wanted="write the earlier date first")
    return first, last


def _span(text: str, zone: tzinfo, whole: str) -> tuple[datetime, datetime]:
    found = _FORM.fullmatch(text.strip())
    if found is None:
        raise FieldError("date", got=whole, wanted=_WANTED)
    year, month, day = (int(part) if part else None for part in found.groups())
    try:
        first = datetime(year or 0, month or 1, day or 1, tzinfo=zone)
        if day is not None:
            return first, first + timedelta(days=1)
        if month is not None:
            next_month = first + timedelta(days=32)
            return first, next_month.replace(day=1)
        return first, first.replace(year=first.year + 1)
    except (ValueError, OverflowError) as error:
        raise FieldError("date", got=whole, wanted=_WANTED) from error
