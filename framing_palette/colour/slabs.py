"""Cut large arrays into cache-sized slabs and work through them on every core.

numpy lets other threads run while it computes, so that a formula written with preallocated
buffers scales over cores; slabs that fit the cache are what makes it fast on one.
"""

import os
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from math import prod

Slab = tuple[int | slice, ...]
SlabWorker = Callable[[Iterator[Slab]], None]

SLAB_ELEMENTS = 16_384  # measured best of 1k to 64k: larger leaves the cache, smaller pays calls
THREAD_ELEMENTS = 50_000  # below this, starting threads costs more than it saves
_MAX_THREADS = 16


def slabs_of(shape: tuple[int, ...], size: int = SLAB_ELEMENTS) -> Iterator[Slab]:
    """Yield indices that together cover an array once, each of about `size` elements at most.

    Parameters
    ----------
    shape
        Of the array to cover, at least one axis.
    size
        Elements of one slab.
    """
    inner = prod(shape[1:])
    if inner > size:
        for index in range(shape[0]):
            for rest in slabs_of(shape[1:], size):
                yield (index, *rest)
        return
    step = max(1, size // max(1, inner))
    for start in range(0, shape[0], step):
        yield (slice(start, start + step),)


def work_through(shape: tuple[int, ...], worker: SlabWorker) -> None:
    """Let a worker run over all slabs of a shape, on several threads when there is enough to do.

    Parameters
    ----------
    shape
        Of the array to cover, at least one axis.
    worker
        Called once a thread with the slabs still to do; it keeps its own buffers.
    """
    slabs = slabs_of(shape)
    threads = _thread_count() if prod(shape) >= THREAD_ELEMENTS else 1
    if threads == 1:
        worker(slabs)
        return
    shared = iter(list(slabs))  # a list's iterator hands each slab out once, whoever asks
    with ThreadPoolExecutor(threads) as pool:
        for done in [pool.submit(worker, shared) for _ in range(threads)]:
            done.result()


def _thread_count() -> int:
    if hasattr(os, "sched_getaffinity"):
        return min(_MAX_THREADS, len(os.sched_getaffinity(0)))
    return min(_MAX_THREADS, os.cpu_count() or 1)
