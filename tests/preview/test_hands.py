"""Work shared out over threads."""

from threading import Event

import pytest

from framing_palette.preview import hands as module
from framing_palette.preview.hands import shared_out


@pytest.fixture(params=[1, 3])
def hands(request, monkeypatch):
    monkeypatch.setattr(module, "hands", lambda: request.param)
    return request.param


@pytest.mark.usefixtures("hands")
def test_answers_come_in_the_order_of_the_work():
    late = Event()

    def do(number):
        if number == 0 and not late.wait(0.05):
            late.set()
        return number * number

    assert list(shared_out(do, range(9), ahead=9)) == [n * n for n in range(9)]


@pytest.mark.usefixtures("hands")
def test_a_fault_reaches_the_one_who_asked():
    def do(number):
        if number == 2:
            raise ValueError("two")
        return number

    with pytest.raises(ValueError, match="two"):
        list(shared_out(do, range(5)))


def test_whoever_stops_asking_stops_the_work(hands):
    begun = []
    answers = shared_out(lambda number: begun.append(number) or number, iter(range(1000)))
    assert next(answers) == 0
    answers.close()
    assert len(begun) <= hands + 2


def test_there_is_at_least_one_hand_and_never_too_many(monkeypatch):
    assert 1 <= module.hands() <= 4
    monkeypatch.delattr("os.sched_getaffinity", raising=False)
    monkeypatch.setattr("os.cpu_count", lambda: None)
    assert module.hands() == 1
