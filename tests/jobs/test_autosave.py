"""Autosave: many changes make one save, none waits longer than a second, and none is dropped."""

from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.jobs.autosave import MOST_S, REST_S, RETRY_S, Autosave

SAVE_S = 0.05


def test_a_change_is_handed_out_once_the_hand_rests_and_not_before() -> None:
    autosave: Autosave[str] = Autosave()
    assert autosave.wait_s(0.0) is None
    autosave.note("a", 10.0)
    assert autosave.wait_s(10.0) == REST_S
    assert autosave.take(10.0 + REST_S / 2) is None
    assert autosave.take(10.0 + REST_S) == "a"
    assert not autosave.is_saved
    autosave.succeeded()
    assert autosave.is_saved


def test_a_hand_that_never_rests_is_saved_all_the_same() -> None:
    autosave: Autosave[int] = Autosave()
    saved = []
    for step in range(300):
        autosave.note(step, step * 0.01)
        value = autosave.take(step * 0.01)
        if value is not None:
            saved.append(value)
            autosave.succeeded()
    assert saved == [80, 161, 242]


def test_one_save_is_on_its_way_at_a_time_and_the_newest_value_goes_next() -> None:
    autosave: Autosave[str] = Autosave()
    autosave.note("a", 0.0)
    assert autosave.take(1.0) == "a"
    autosave.note("b", 1.0)
    autosave.note("c", 1.1)
    assert autosave.wait_s(9.0) is None
    assert autosave.take(9.0) is autosave.take_at_once() is None
    autosave.succeeded()
    assert autosave.take(9.0) == "c"


def test_what_could_not_be_saved_is_tried_again_later_each_time() -> None:
    autosave: Autosave[str] = Autosave()
    autosave.note("a", 0.0)
    now = 1.0
    for trial, wait in enumerate((*RETRY_S, RETRY_S[-1])):
        assert autosave.take(now) == "a"
        autosave.failed(now)
        assert autosave.failures == trial + 1
        assert autosave.wait_s(now) == wait
        assert autosave.take(now + wait / 2) is None
        now += wait
    assert autosave.take(now) == "a"
    autosave.succeeded()
    assert (autosave.is_saved, autosave.failures) == (True, 0)


def test_after_a_failure_the_newer_value_is_the_one_that_is_tried() -> None:
    autosave: Autosave[str] = Autosave()
    autosave.note("a", 0.0)
    autosave.take(1.0)
    autosave.note("b", 1.0)
    autosave.failed(1.1)
    assert autosave.take(1.1 + RETRY_S[0]) == "b"


def test_closing_takes_what_waits_at_once_even_after_a_failure() -> None:
    autosave: Autosave[str] = Autosave()
    autosave.note("a", 0.0)
    assert autosave.take_at_once() == "a"
    autosave.failed(0.0)
    assert autosave.take_at_once() == "a"
    autosave.succeeded()
    assert autosave.take_at_once() is None


def test_giving_up_hands_back_what_is_not_saved() -> None:
    autosave: Autosave[str] = Autosave()
    autosave.note("a", 0.0)
    autosave.take_at_once()
    assert autosave.give_up() == "a"
    autosave.note("b", 0.0)
    assert autosave.give_up() == "b"
    assert autosave.is_saved
    assert autosave.give_up() is None


@settings(deadline=None)
@given(
    gaps=st.lists(st.floats(0, 2), min_size=1, max_size=60),
    fails=st.lists(st.booleans(), max_size=12),
)
def test_every_change_is_on_the_disk_within_a_second_while_saving_works(
    gaps: list[float], fails: list[bool]
) -> None:
    autosave: Autosave[int] = Autosave()
    now, saved, waiting_since, will_fail = 0.0, -1, dict[int, float](), list(fails)
    has_failed = False

    def run_until(end: float) -> float:
        nonlocal saved, has_failed
        at = now
        while (wait := autosave.wait_s(at)) is not None and at + wait <= end:
            at += wait
            value = autosave.take(at)
            assert value is not None
            at += SAVE_S
            if will_fail and will_fail.pop():
                has_failed = True
                autosave.failed(at)
                continue
            autosave.succeeded()
            for number in [number for number in waiting_since if number <= value]:
                late = at - waiting_since.pop(number)
                assert has_failed or late <= MOST_S + 3 * SAVE_S + 1e-9
            assert value > saved
            saved = value
            has_failed = False
        return max(at, end)

    for number, gap in enumerate(gaps):
        now = run_until(now + gap)
        autosave.note(number, now)
        waiting_since[number] = now
    run_until(now + 1000)
    assert saved == len(gaps) - 1
    assert autosave.is_saved
    assert waiting_since == {}
