"""What is done in the window is in the shop's jobs, and the job bar says so truly."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from framing_palette.errors import OutputError
from framing_palette.jobs import Job, StoredJob
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.keeping_files import unsent
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.jobs.store import JobStore
from framing_palette.window.job_book.book import BookState
from framing_palette.window.keeping import keep_sample, send_away
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip

ROOT = Path(__file__).parents[2]


def until(qtbot: QtBot, is_so: Callable[[], bool]) -> None:
    qtbot.waitUntil(is_so, timeout=20_000)


def saved(shell: Shell, qtbot: QtBot) -> None:
    kept = shell.saving.kept
    assert kept is not None
    until(qtbot, lambda: kept.is_saved and shell.session.saved.startswith("saved "))


def stored(place: ShopPlace, number: str = "TEST-1") -> StoredJob:
    with JobStore(place.address) as store:
        return store.open(number)


def change_there(place: ShopPlace, **values: object) -> StoredJob:
    """Save a change of the job at another counter."""
    base = stored(place)
    with JobStore(place.address) as store:
        made = replace(base.job, **values)
        return StoredJob(made, store.save(made, version=base.version))


def edit(shell: Shell, words: str = "Edit", **values: object) -> None:
    job = shell.session.desk.job
    assert job is not None
    shell.session.edit(words, job=replace(job, **values))


@pytest.mark.skipif(os.name == "nt", reason="forks")
def test_a_window_killed_at_any_moment_reopens_the_job_whole_at_its_last_saved_change(
    tmp_path: Path,
) -> None:
    words = [sys.executable, "-m", "tests.window.knocks", str(tmp_path), "4", "1"]
    done = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert told["kills"] == 4
    # The kills must have met work in all its states: saved, and not saved yet.
    assert told["changes"] > told["saves"] > 2
    assert told["lost"] > 0


def test_a_job_is_in_the_shops_jobs_from_the_moment_its_picture_is_there(
    shell: Shell, qtbot: QtBot, place: ShopPlace, tmp_path: Path
) -> None:
    path = tmp_path / "grey_day.png"
    image = QImage(96, 72, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.gray)
    image.save(str(path))
    shell.open_file(path)
    until(qtbot, lambda: shell.saving.kept is not None)
    saved(shell, qtbot)
    job = shell.session.desk.job
    assert job is not None
    assert stored(place, job.number).job.title == "Grey day"
    with JobStore(place.address) as store:
        assert store.packed(job).picture == path.read_bytes()


def test_everything_on_the_desk_is_stored_and_lies_there_again_when_the_job_is_opened(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    session = open_shell.session
    keep_sample(session, "brick-red")
    session.edit("Say why", kept=(replace(session.desk.kept[0], note="the client liked it"),))
    session.edit("Lay", laid=("pale-sky", "black-flat"))
    lay_strip(session, "deep-sea")
    send_away(session, "acid-lime", "too bright")
    edit(open_shell, note="mind the corner")
    saved(open_shell, qtbot)
    left = session.desk
    version = stored(place).version
    with qtbot.waitSignal(session.packed_changed, timeout=20_000):
        session.job_asked.emit("TEST-1")
    until(qtbot, lambda: session.desk.laid == left.laid)
    for name in ("regions", "laid", "strips", "kept", "set_aside"):
        assert getattr(session.desk, name) == getattr(left, name), name
    assert session.desk.job is not None
    assert session.desk.job.note == "mind the corner"
    qtbot.wait(600)
    assert stored(place).version == version  # opening a job is no change of it


def test_the_job_bar_says_saving_until_the_change_is_on_the_disk(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    said: list[tuple[str, str]] = []
    saved(open_shell, qtbot)
    session = open_shell.session
    session.saved_changed.connect(lambda: said.append((session.saved, stored(place).job.note)))
    edit(open_shell, note="dry")
    assert session.saved == "saving"
    assert "saving" in open_shell.job_line._facts.text()
    saved(open_shell, qtbot)
    assert all(note == "dry" for words, note in said if words.startswith("saved "))
    assert said[-1][0].startswith("saved ")


def test_undo_and_redo_are_stored_too(open_shell: Shell, qtbot: QtBot, place: ShopPlace) -> None:
    edit(open_shell, note="dry")
    saved(open_shell, qtbot)
    open_shell.session.undo_stack.undo()
    saved(open_shell, qtbot)
    assert stored(place).job.note == ""
    open_shell.session.undo_stack.redo()
    saved(open_shell, qtbot)
    assert stored(place).job.note == "dry"


def test_a_change_just_before_the_window_closes_is_stored(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    saved(open_shell, qtbot)
    edit(open_shell, note="last words")
    open_shell.close()
    assert stored(place).job.note == "last words"


def test_the_job_before_is_saved_to_its_end_when_another_is_opened(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    saved(open_shell, qtbot)
    with JobStore(place.address) as store:
        other = replace(stored(place).job, number="TEST-2", title="Another")
        store.save(other)
    edit(open_shell, note="before I go")
    with qtbot.waitSignal(open_shell.session.packed_changed, timeout=20_000):
        open_shell.session.job_asked.emit("TEST-2")
    until(qtbot, lambda: stored(place).job.note == "before I go")
    until(qtbot, lambda: open_shell.saving._leaving == [])
    assert open_shell.session.desk.job == other
    assert stored(place, "TEST-2") == StoredJob(other, 1)


def test_what_the_other_counter_did_comes_in_by_name_and_can_be_undone(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    session = open_shell.session
    saved(open_shell, qtbot)
    change_there(place, title="A boat, seen again", kept=("deep-sea",))
    edit(open_shell, note="mine")
    until(qtbot, lambda: session.notice != "")
    assert session.notice == (
        "Changed at the other counter, and brought in here: the title, what is kept."
    )
    assert session.undo_stack.undoText() == "Changed at the other counter"
    assert session.desk.job is not None
    assert (session.desk.job.title, session.desk.job.note) == ("A boat, seen again", "mine")
    saved(open_shell, qtbot)
    found = stored(place).job
    assert (found.title, found.note, found.kept) == ("A boat, seen again", "mine", ("deep-sea",))


def test_while_nothing_is_done_here_the_other_counters_changes_come_in_as_well(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    saved(open_shell, qtbot)
    theirs = change_there(place, note="theirs")
    open_shell.saving.look_at_others()
    until(qtbot, lambda: "the note" in open_shell.session.notice)
    assert open_shell.session.desk.job is not None
    assert open_shell.session.desk.job.note == "theirs"
    qtbot.wait(400)
    assert stored(place) == theirs


def test_what_both_changed_is_asked_and_either_answer_is_stored(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    session = open_shell.session
    saved(open_shell, qtbot)
    change_there(place, note="theirs", title="Theirs")
    edit(open_shell, note="mine")
    until(qtbot, lambda: session.differing is not None)
    assert session.saved == "kept on this computer until you choose"
    assert stored(place).job.note == "theirs"
    assert len(unsent(place.unsent_folder)) == 1
    open_shell.saving.choose_between(frozenset())
    saved(open_shell, qtbot)
    assert session.differing is None
    assert (stored(place).job.note, stored(place).job.title) == ("mine", "Theirs")
    assert unsent(place.unsent_folder) == ()
    change_there(place, note="theirs again")
    edit(open_shell, note="mine again")
    until(qtbot, lambda: session.differing is not None)
    open_shell.saving.choose_between(frozenset({"note"}))
    saved(open_shell, qtbot)
    assert stored(place).job.note == "theirs again"
    assert session.desk.job is not None
    assert session.desk.job.note == "theirs again"


def test_a_job_erased_at_the_other_counter_is_said_and_does_not_come_back(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    edit(open_shell, client=replace(open_shell.session.desk.job.client, name="Ada Example"))  # type: ignore[union-attr]
    saved(open_shell, qtbot)
    with JobStore(place.address) as store:
        store.erase_jobs_of("Ada Example")
    edit(open_shell, note="mine")
    until(qtbot, lambda: open_shell.session.saved == "erased at another counter")
    with JobStore(place.address) as store:
        assert store.count() == 0


def test_a_job_that_can_be_saved_nowhere_says_so_and_why_and_is_saved_once_it_can(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace, monkeypatch: pytest.MonkeyPatch
) -> None:
    saved(open_shell, qtbot)

    def full(*_words: object, **_more: object) -> None:
        raise OutputError(place.folder, problem="is full", todo="make room")

    with monkeypatch.context() as patch:
        patch.setattr(JobStore, "save", full)
        patch.setattr("framing_palette.jobs.keeper_files.keep_unsent", full)
        edit(open_shell, note="mine")
        until(qtbot, lambda: open_shell.session.saved == "cannot be saved")
        assert "is full: make room." in open_shell.notice.text()
    saved(open_shell, qtbot)
    assert stored(place).job.note == "mine"


def test_a_job_whose_number_was_taken_goes_on_under_the_next(
    shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    from tests.window.conftest import BOAT, RACK, make_picture, on_the_desk

    given = on_the_desk(make_picture(), (BOAT,))
    with JobStore(place.address) as store:
        store.save(replace(given.opened.packed.job, note="another shop's"))
    shell.session.assign("catalogue", RACK)
    shell.errands.take_job(given)
    saved(shell, qtbot)
    assert shell.session.desk.job is not None
    assert shell.session.desk.job.number == "TEST-1.2"
    assert "this one is TEST-1.2 now" in shell.session.notice
    assert stored(place).job.note == "another shop's"


def test_a_job_whose_samples_the_rack_does_not_have_keeps_them(
    open_shell: Shell, qtbot: QtBot, place: ShopPlace
) -> None:
    saved(open_shell, qtbot)
    change_there(place, kept=("brick-red", "from-another-rack"))
    open_shell.session.job_asked.emit("TEST-1")
    until(qtbot, lambda: len(open_shell.session.desk.kept) == 1)
    edit(open_shell, note="x")
    saved(open_shell, qtbot)
    assert set(stored(place).job.kept) == {"brick-red", "from-another-rack"}


def as_saved(job: Job | None) -> Job:
    assert job is not None
    return job


def server_away(tmp_path: Path) -> ShopPlace:
    return ShopPlace(
        f"postgresql+psycopg://shop@/postgres?host={tmp_path / 'gone'}", tmp_path / "shared"
    )


def test_while_the_server_is_away_the_bar_says_so_and_the_work_is_on_this_computer(
    open_shell: Shell,
    qtbot: QtBot,
    place: ShopPlace,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: tmp_path / "own")
    session, book = open_shell.session, open_shell.job_book
    saved(open_shell, qtbot)
    there, away = book.keeper(), Keeper(server_away(tmp_path))
    book._keeper = away
    edit(open_shell, note="first")
    until(qtbot, lambda: session.saved == "kept on this computer")
    assert book.state is BookState.AWAY
    assert "gone" in open_shell.notice.text()
    edit(open_shell, note="second")
    assert session.saved == "saving"
    until(qtbot, lambda: session.saved == "kept on this computer")
    waiting = unsent(away.place.unsent_folder)
    assert len(waiting) == 1
    assert away.opened("TEST-1")[1].job.note == "second"
    book._keeper = there
    book.open()
    saved(open_shell, qtbot)
    assert stored(place).job.note == "second"
