"""Recent values: what was made lately, kept while it fits into a set amount of memory."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Value = TypeVar("Value")


class Recent(Generic[Value]):
    """Values by key; the longest unused are forgotten when the memory is full.

    Several threads may ask at once; two that miss the same value both make it, and one is kept.

    Parameters
    ----------
    most_bytes
        The memory to keep to. The newest value is kept even when it alone is larger.
    size_bytes
        Tells the memory that a value holds.
    """

    def __init__(self, most_bytes: int, size_bytes: Callable[[Value], int]) -> None:
        self._most_bytes = most_bytes
        self._size_bytes = size_bytes
        self._values: OrderedDict[Hashable, Value] = OrderedDict()
        self._held = 0
        self._lock = Lock()

    def get(self, key: Hashable, make: Callable[[], Value]) -> Value:
        """Return the value of a key, made when it is not there."""
        with self._lock:
            if key in self._values:
                self._values.move_to_end(key)
                return self._values[key]
        made = make()
        with self._lock:
            value = self._values.setdefault(key, made)
            self._held += self._size_bytes(made) if value is made else 0
            while self._held > self._most_bytes and len(self._values) > 1:
                self._held -= self._size_bytes(self._values.popitem(last=False)[1])
        return value

    def __contains__(self, key: Hashable) -> bool:
        """Tell whether a key's value is still there."""
        return key in self._values

    @property
    def held_bytes(self) -> int:
        """Memory that the values hold."""
        return self._held
