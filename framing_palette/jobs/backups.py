"""Backups: what they are called, when one is due, and which may go."""

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import PurePath
from typing import Final

EVERY: Final = timedelta(hours=4)
_FORM: Final = "%Y%m%dT%H%M%SZ"
# The newest of each of so many spans: a slip of today, of this week, of this year.
_NEWEST, _DAYS, _WEEKS, _MONTHS = 6, 14, 8, 24


def backup_name(stem: str, at: datetime) -> str:
    """Return the name of a backup taken at a time with a zone."""
    return f"{stem}-{at.astimezone(UTC):{_FORM}}.sqlite"


def time_of_backup(path: PurePath, stem: str) -> datetime | None:
    """Return when a backup of that stem was taken, None for another file."""
    if path.suffix != ".sqlite" or not path.stem.startswith(f"{stem}-"):
        return None
    try:
        return datetime.strptime(path.stem[len(stem) + 1 :], _FORM).replace(tzinfo=UTC)
    except ValueError:
        return None


def is_due(taken: Iterable[datetime], now: datetime, every: timedelta = EVERY) -> bool:
    """Return whether the newest backup is too old; a clock that was set back makes one due too."""
    newest = max(taken, default=None)
    return newest is None or abs(now - newest) >= every


def no_longer_needed(taken: Iterable[datetime]) -> frozenset[datetime]:
    """Return the backups that may go.

    The newest six stay, and the newest of each of the last 14 days, 8 weeks and 24 months that
    have any; days count in UTC.
    """
    times = sorted(set(taken), reverse=True)
    kept = set(times[:_NEWEST])
    for form, most in (("%Y-%m-%d", _DAYS), ("%G-%V", _WEEKS), ("%Y-%m", _MONTHS)):
        newest: dict[str, datetime] = {}
        for at in times:
            newest.setdefault(at.strftime(form), at)
        kept |= set(list(newest.values())[:most])
    return frozenset(times) - kept
