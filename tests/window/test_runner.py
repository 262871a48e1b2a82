import threading

import pytest
from PySide6.QtCore import QThread
from pytestqt.qtbot import QtBot

from framing_palette.errors import FieldError
from framing_palette.window.runner import Progress, Runner, StoppedError


@pytest.fixture
def runner(qtbot: QtBot) -> Runner:
    return Runner()


def fail(error: Exception) -> None:
    raise AssertionError(error)


def test_work_runs_on_another_thread_and_its_answer_arrives_on_this_one(
    runner: Runner, qtbot: QtBot
) -> None:
    threads: list[object] = []

    def work(_progress: Progress) -> int:
        threads.append(QThread.currentThread())
        return 42

    answers: list[int] = []

    def done(answer: int) -> None:
        answers.append(answer)
        threads.append(QThread.currentThread())

    runner.start("sum", work, done=done, failed=fail)
    qtbot.waitUntil(lambda: answers == [42])
    assert threads[0] is not threads[1]
    assert threads[1] is runner.thread()
    runner.close()


def test_a_newer_job_on_the_same_topic_silences_the_older(runner: Runner, qtbot: QtBot) -> None:
    release, answers = threading.Event(), []

    def slow(_progress: Progress) -> str:
        release.wait(5)
        return "old"

    runner.start("topic", slow, done=answers.append, failed=fail)
    runner.start("topic", lambda _progress: "new", done=answers.append, failed=fail)
    qtbot.waitUntil(lambda: answers == ["new"])
    release.set()
    runner.close()
    assert answers == ["new"]


def test_jobs_on_different_topics_both_answer(runner: Runner, qtbot: QtBot) -> None:
    answers: list[str] = []
    for topic in ("one", "two"):
        runner.start(topic, lambda _p, topic=topic: topic, done=answers.append, failed=fail)
    qtbot.waitUntil(lambda: sorted(answers) == ["one", "two"])
    runner.close()


def test_an_error_is_delivered_as_itself(runner: Runner, qtbot: QtBot) -> None:
    errors: list[Exception] = []

    def work(_progress: Progress) -> int:
        raise FieldError("width", got="-1", wanted="make it larger")

    runner.start("topic", work, done=fail, failed=errors.append)
    qtbot.waitUntil(lambda: len(errors) == 1)
    assert str(errors[0]) == "width is -1; make it larger."
    assert not runner.is_busy("topic")
    runner.close()


def test_a_cancelled_job_stops_at_its_next_word_and_answers_nobody(
    runner: Runner, qtbot: QtBot
) -> None:
    started, go_on, stopped = threading.Event(), threading.Event(), []

    def work(progress: Progress) -> int:
        started.set()
        go_on.wait(5)
        try:
            progress.tell(0.5, "half")
        except StoppedError:
            stopped.append(True)
            raise
        return 1

    runner.start("topic", work, done=fail, failed=fail)
    assert started.wait(5)
    runner.cancel("topic")
    assert not runner.is_busy()
    go_on.set()
    runner.close()
    assert stopped == [True]


def test_progress_is_heard_only_from_the_job_that_counts(runner: Runner, qtbot: QtBot) -> None:
    heard: list[tuple[str, float, str]] = []
    runner.progressed.connect(lambda *words: heard.append(words))

    def work(progress: Progress) -> int:
        progress.tell(0.25, "a quarter")
        return 1

    answers: list[int] = []
    runner.start("topic", work, done=answers.append, failed=fail)
    qtbot.waitUntil(lambda: answers == [1])
    assert heard == [("topic", 0.25, "a quarter")]
    runner.close()


def test_closing_waits_until_no_thread_works_any_more(runner: Runner) -> None:
    finished: list[bool] = []

    def work(_progress: Progress) -> None:
        threading.Event().wait(0.2)
        finished.append(True)

    runner.start("topic", work, done=fail, failed=fail)
    runner.close()
    assert finished in ([True], [])  # not begun at all, or begun and ended
    assert not runner.is_busy()
