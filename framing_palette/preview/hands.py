"""Hands: several threads at one picture.

numpy, OpenCV and the image codecs let other threads run while they compute, so two halves of a
drawing take little longer than one. Nothing may depend on which thread draws what.
"""

import os
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from itertools import islice
from typing import TypeVar

Piece = TypeVar("Piece")
Work = TypeVar("Work")

_MOST_HANDS = 4


def hands() -> int:
    """Return how many threads draw at once."""
    if hasattr(os, "sched_getaffinity"):
        return min(_MOST_HANDS, len(os.sched_getaffinity(0)))
    return min(_MOST_HANDS, os.cpu_count() or 1)


def shared_out(
    do: Callable[[Work], Piece], works: Iterable[Work], *, ahead: int = 1
) -> Iterator[Piece]:
    """Yield what each piece of work gives, in order, some of them done at once.

    Parameters
    ----------
    ahead
        How many are begun beyond those in hand. Few hold little memory, and whoever stops asking
        stops the work.
    """
    count = hands()
    waiting = iter(works)
    if count == 1:
        yield from map(do, waiting)
        return
    with ThreadPoolExecutor(count) as pool:
        begun = [pool.submit(do, work) for work in islice(waiting, count + ahead)]
        try:
            while begun:
                done = begun.pop(0).result()
                begun += [pool.submit(do, work) for work in islice(waiting, 1)]
                yield done
        finally:
            for left in begun:
                left.cancel()
