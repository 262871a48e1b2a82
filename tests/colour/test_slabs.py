import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour import slabs

SHAPES = st.lists(st.integers(0, 9), min_size=1, max_size=4).map(tuple)


@given(SHAPES, st.integers(1, 50))
def test_slabs_cover_every_element_once_and_keep_to_their_size(shape, size):
    covered = np.zeros(shape, int)
    for slab in slabs.slabs_of(shape, size):
        assert covered[slab].size <= size
        covered[slab] += 1
    assert (covered == 1).all()


@pytest.mark.parametrize("threads", [1, 2, 5])
def test_every_slab_is_worked_on_once_whatever_the_number_of_threads(monkeypatch, threads):
    monkeypatch.setattr(slabs, "_thread_count", lambda: threads)
    counts = np.zeros((slabs.THREAD_ELEMENTS, 2), int)

    def worker(todo):
        for slab in todo:
            counts[slab] += 1

    slabs.work_through(counts.shape, worker)
    assert (counts == 1).all()


def test_a_failure_in_a_thread_reaches_the_caller(monkeypatch):
    monkeypatch.setattr(slabs, "_thread_count", lambda: 2)

    def worker(todo):
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        slabs.work_through((slabs.THREAD_ELEMENTS,), worker)


def test_little_work_starts_no_thread(monkeypatch):
    monkeypatch.setattr(slabs, "ThreadPoolExecutor", None)  # calling it would fail
    seen = []
    slabs.work_through((slabs.THREAD_ELEMENTS - 1,), seen.extend)
    assert seen


def test_threads_are_counted_where_the_system_cannot_tell_a_process_s_own_cores(monkeypatch):
    monkeypatch.delattr(slabs.os, "sched_getaffinity", raising=False)
    monkeypatch.setattr(slabs.os, "cpu_count", lambda: None)
    assert slabs._thread_count() == 1
