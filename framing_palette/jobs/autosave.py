"""Autosave: when a change is saved, so that many small ones make one save and none waits long.

Nothing here knows a clock, a thread or a window: whoever drives it says what time it is, waits as
long as `Autosave.wait_s` says, and saves what `Autosave.take` hands out, wherever it likes.
"""

from dataclasses import dataclass
from typing import Final, Generic, TypeVar

Value = TypeVar("Value")

REST_S: Final = 0.25  # a hand that pauses as long has finished its change
MOST_S: Final = 0.8  # with a save under 0.2 s a change is on the disk within a second
RETRY_S: Final = (1.0, 2.0, 5.0, 15.0, 30.0)


@dataclass(frozen=True, slots=True)
class Timing:
    """How long changes are gathered and how soon a failed save is tried again, in seconds."""

    rest_s: float = REST_S
    most_s: float = MOST_S
    retry_s: tuple[float, ...] = RETRY_S


class Autosave(Generic[Value]):
    """What waits to be saved; the newest value stands for all before it.

    One save is on its way at a time. A value that could not be saved stays and is tried again,
    later each time, unless a newer one has come; nothing is dropped until it is saved.

    Parameters
    ----------
    timing
        Of gathering and trying again.
    """

    def __init__(self, timing: Timing | None = None) -> None:
        self._timing = timing or Timing()
        self._waiting: Value | None = None
        self._first_s = self._last_s = 0.0
        self._on_its_way: Value | None = None
        self._failures = 0
        self._not_before_s = float("-inf")

    @property
    def is_saved(self) -> bool:
        """Whether everything that was noted is saved."""
        return self._waiting is None and self._on_its_way is None

    @property
    def failures(self) -> int:
        """How often saving has failed since it last succeeded."""
        return self._failures

    def note(self, value: Value, now_s: float) -> None:
        """Take in a changed value at a time of a clock that never goes back."""
        if self._waiting is None:
            self._first_s = now_s
        self._waiting, self._last_s = value, now_s

    def wait_s(self, now_s: float) -> float | None:
        """Return how long to wait before `take` hands out something; None when nothing waits."""
        if self._waiting is None or self._on_its_way is not None:
            return None
        rested_s = min(self._last_s + self._timing.rest_s, self._first_s + self._timing.most_s)
        return max(0.0, max(rested_s, self._not_before_s) - now_s)

    def take(self, now_s: float) -> Value | None:
        """Return what is to be saved now; None when it is too early, or a save is on its way."""
        return self.take_at_once() if self.wait_s(now_s) == 0.0 else None

    def take_at_once(self) -> Value | None:
        """Return what waits however young it is, as before closing; None while one is saved."""
        if self._on_its_way is not None:
            return None
        self._on_its_way, self._waiting = self._waiting, None
        return self._on_its_way

    def succeeded(self) -> None:
        """Take in that what was handed out is on the disk."""
        self._on_its_way, self._failures = None, 0
        self._not_before_s = float("-inf")

    def failed(self, now_s: float) -> None:
        """Take in that what was handed out is not saved; it waits again, unless a newer one does.

        How long before the next trial follows from how often it has failed.
        """
        if self._waiting is None:
            self._waiting, self._first_s, self._last_s = self._on_its_way, now_s, now_s
        self._on_its_way = None
        retry_s = self._timing.retry_s
        self._not_before_s = now_s + retry_s[min(self._failures, len(retry_s) - 1)]
        self._failures += 1

    def give_up(self) -> Value | None:
        """Return what is not saved and forget it, when the person has decided about it."""
        left = self._waiting if self._waiting is not None else self._on_its_way
        self._waiting = self._on_its_way = None
        self._failures, self._not_before_s = 0, float("-inf")
        return left
