"""The job book: jobs are found, opened, copied, archived, erased, and backups are put back."""

import zipfile
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog
from pytestqt.qtbot import QtBot

from framing_palette.jobs import (
    Client,
    Job,
    PackedJob,
    Status,
    read_job_file,
    write_job_file,
)
from framing_palette.jobs.log_files import log_tail, start_log, stop_log
from framing_palette.jobs.place_files import ShopPlace, shop_place
from framing_palette.jobs.store import JobStore
from framing_palette.units import Length
from framing_palette.window.job_book.book import BookState
from framing_palette.window.job_book.door import BookDoor
from framing_palette.window.job_book.recent import RecentJob
from framing_palette.window.job_files import now
from framing_palette.window.settings_shelf import SettingsShelf
from framing_palette.window.shell import Shell
from tests.window.conftest import BOAT, RACK, make_picture, on_the_desk
from tests.window.settling import settle
from tests.window.test_fit import clipped, overlapping, too_small_to_hit

LEFT = Qt.MouseButton.LeftButton
NAMES = ("Ada Example", "Bo Probe", "Carla Muster")


def make_job(number: str, client: str, hours_ago: int, **values: object) -> Job:
    at = now() - timedelta(hours=hours_ago)
    made = Job(number, f"Title of {number}", at - timedelta(days=3), at, client=Client(client))
    return replace(made, **values).with_event(at, "Looked at together.")


@pytest.fixture
def jobs(place: ShopPlace) -> ShopPlace:
    """A shop with six jobs of three clients."""
    with JobStore(place.address) as store:
        for number in range(6):
            status = Status.PROPOSED if number % 2 else Status.OPEN
            kept = ("brick-red",) if number == 4 else ()
            size = (Length.inches(16), Length.inches(20)) if number == 1 else None
            store.save(
                make_job(
                    f"J-{number}",
                    NAMES[number % 3],
                    number,
                    status=status,
                    kept=kept,
                    art_size=size,
                )
            )
    return place


def until(qtbot: QtBot, is_so: Callable[[], bool]) -> None:
    qtbot.waitUntil(is_so, timeout=20_000)


def click(qtbot: QtBot, button: QAbstractButton) -> None:
    assert button.isVisible()
    assert button.isEnabled()
    qtbot.mouseClick(button, LEFT)


def rest(shell: Shell, qtbot: QtBot) -> None:
    until(qtbot, lambda: not shell.job_book.runner.is_busy() and not shell.runner.is_busy())


@pytest.fixture
def book(shell: Shell, jobs: ShopPlace, qtbot: QtBot) -> BookDoor:
    """The book lying open in the window."""
    shell.session.assign("catalogue", RACK)
    shell.show()
    shell.job_book.open()
    click(qtbot, shell.doors["book"])
    assert shell.book is not None
    until(qtbot, lambda: shell.book is not None and len(shell.book.ledger.lines) == 6)
    rest(shell, qtbot)
    return shell.book


def listed(book: BookDoor) -> list[str]:
    model = book.stage.model
    return [model.line_at(model.index(row)).number for row in range(model.rowCount())]


def choose(book: BookDoor, qtbot: QtBot, number: str) -> None:
    view = book.stage.view
    spot = view.visualRect(book.stage.model.index_of(number)).center()
    qtbot.mouseClick(view.viewport(), LEFT, pos=spot)
    until(qtbot, lambda: book.ledger.job is not None and book.ledger.job.number == number)


def stored(place: ShopPlace, number: str) -> Job:
    with JobStore(place.address) as store:
        return store.open(number).job


def test_jobs_are_listed_with_the_one_changed_last_first(book: BookDoor) -> None:
    assert listed(book) == [f"J-{number}" for number in range(6)]
    assert book.stage.count.text() == "6 jobs"
    told = book.stage.model.data(book.stage.model.index(1))
    assert told.startswith("Title of J-1. Bo Probe   ·   J-1. Proposed. ")


def test_jobs_are_found_by_words_status_sample_and_date_together(
    book: BookDoor, qtbot: QtBot
) -> None:
    stage = book.stage
    qtbot.keyClicks(stage.words, "probe")
    until(qtbot, lambda: listed(book) == ["J-1", "J-4"])
    click(qtbot, stage.status.chips[Status.PROPOSED])
    until(qtbot, lambda: listed(book) == ["J-1"])
    stage.words.clear()
    until(qtbot, lambda: listed(book) == ["J-1", "J-3", "J-5"])
    click(qtbot, stage.status.chips["any"])
    qtbot.keyClicks(stage.sample, "brick-red")
    until(qtbot, lambda: listed(book) == ["J-4"])
    stage.sample.clear()
    qtbot.keyClicks(stage.dates, f"{now():%Y} to {now():%Y}")
    until(qtbot, lambda: len(listed(book)) == 6 or now().month == 1)
    stage.dates.setText("1999")
    until(qtbot, lambda: listed(book) == [])
    assert "Ask for less" in stage.nothing.text()


def test_a_date_that_is_none_is_told_in_place_and_the_list_stays(
    book: BookDoor, qtbot: QtBot
) -> None:
    qtbot.keyClicks(book.stage.dates, "spring")
    assert "such as 2026" in book.stage.fault.text()
    assert book.stage.fault.isVisible()
    rest_of = listed(book)
    assert len(rest_of) == 6
    book.stage.dates.clear()
    assert book.stage.fault.isHidden()


def test_the_search_field_of_the_job_line_looks_through_the_book(
    shell: Shell, book: BookDoor, qtbot: QtBot
) -> None:
    qtbot.keyClicks(shell.job_line.search, "carla")
    until(qtbot, lambda: listed(book) == ["J-2", "J-5"])
    assert book.stage.fault.isHidden()


def test_a_job_in_sight_is_shown_and_opened_with_enter(
    shell: Shell, book: BookDoor, qtbot: QtBot
) -> None:
    choose(book, qtbot, "J-1")
    card = book.shelf.card
    assert card.title.text() == "Title of J-1"
    assert "16 × 20 in" in card.facts.text()
    assert card.events.text().endswith("Looked at together.")
    assert card.status.chips[Status.PROPOSED].isChecked()
    qtbot.keyClick(book.stage.view, Qt.Key.Key_Return)
    until(qtbot, lambda: shell.session.desk.job is not None)
    assert shell.session.desk.job is not None
    assert shell.session.desk.job.number == "J-1"
    assert shell.session.step == "choose"
    assert not shell.doors["book"].isChecked()


def test_the_status_of_a_job_is_moved_in_the_book_and_a_refusal_is_told(
    book: BookDoor, qtbot: QtBot, jobs: ShopPlace
) -> None:
    choose(book, qtbot, "J-0")
    card = book.shelf.card
    click(qtbot, card.status.chips[Status.PROPOSED])
    until(qtbot, lambda: stored(jobs, "J-0").status is Status.PROPOSED)
    until(qtbot, lambda: "Proposed." in card.events.text())
    click(qtbot, card.status.chips[Status.READY])
    until(qtbot, lambda: "a design that was agreed on" in card.said.text())
    assert card.status.chips[Status.PROPOSED].isChecked()
    assert stored(jobs, "J-0").status is Status.PROPOSED


def test_a_decision_is_added_to_the_history(book: BookDoor, qtbot: QtBot, jobs: ShopPlace) -> None:
    choose(book, qtbot, "J-2")
    qtbot.keyClicks(book.shelf.card.line, "The client wants it before the feast.")
    qtbot.keyClick(book.shelf.card.line, Qt.Key.Key_Return)
    until(qtbot, lambda: len(stored(jobs, "J-2").history) == 2)
    assert stored(jobs, "J-2").history[-1].words == "The client wants it before the feast."
    until(qtbot, lambda: "before the feast" in book.shelf.card.events.text())


def test_the_job_on_the_desk_is_moved_undoably(
    shell: Shell, book: BookDoor, qtbot: QtBot, jobs: ShopPlace
) -> None:
    shell.session.job_asked.emit("J-0")
    until(qtbot, lambda: shell.session.stored is not None and shell.session.packed is not None)
    choose(book, qtbot, "J-0")
    assert "on the desk" in book.shelf.card.facts.text()
    click(qtbot, book.shelf.card.status.chips[Status.PROPOSED])
    assert shell.session.undo_stack.undoText() == "Status of the job"
    until(qtbot, lambda: stored(jobs, "J-0").status is Status.PROPOSED)
    shell.session.undo_stack.undo()
    until(qtbot, lambda: stored(jobs, "J-0").status is Status.OPEN)


def test_a_copy_is_made_and_comes_into_sight(book: BookDoor, qtbot: QtBot) -> None:
    choose(book, qtbot, "J-1")
    click(qtbot, book.shelf.card.copy)
    until(qtbot, lambda: len(listed(book)) == 7)
    assert book.ledger.chosen == listed(book)[0]
    until(qtbot, lambda: "Copied from job J-1." in book.shelf.card.events.text())
    assert "16 × 20 in" in book.shelf.card.facts.text()


def test_a_job_is_put_into_a_file_and_dropped_back_on_the_window(
    shell: Shell,
    book: BookDoor,
    qtbot: QtBot,
    jobs: ShopPlace,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "sent.framejob"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, **__: (str(path)[:-9], ""))
    choose(book, qtbot, "J-1")
    click(qtbot, book.shelf.card.archive)
    until(qtbot, lambda: "sent.framejob" in book.shelf.card.said.text())
    assert read_job_file(path).job == stored(jobs, "J-1")
    write_job_file(path, PackedJob(replace(read_job_file(path).job, note="done elsewhere")))
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    action, none = Qt.DropAction.CopyAction, Qt.KeyboardModifier.NoModifier
    shell.dropEvent(QDropEvent(QPointF(9, 9), action, data, LEFT, none))
    until(qtbot, lambda: shell.session.packed is not None)
    assert "this one came in as J-1.2" in shell.notice.text()
    assert stored(jobs, "J-1.2").note == "done elsewhere"
    assert stored(jobs, "J-1").note == ""


def test_all_jobs_of_a_client_are_taken_out_and_erased_after_the_name_is_typed(
    shell: Shell, book: BookDoor, qtbot: QtBot, jobs: ShopPlace, tmp_path: Path
) -> None:
    shell.session.job_asked.emit("J-3")
    until(qtbot, lambda: shell.session.packed is not None)
    rest(shell, qtbot)
    choose(book, qtbot, "J-0")
    click(qtbot, book.shelf.pages.chips["client"])
    page = book.shelf.client
    until(qtbot, lambda: page.told.text() == "2 jobs in the book.")
    page.export_to(tmp_path)
    until(qtbot, lambda: page.said.text() == "Written as files: 2.")
    assert len(list(tmp_path.glob("*.framejob"))) == 2
    click(qtbot, page.erase)
    assert page.warning.text().startswith("All 2 jobs of Ada Example")
    assert not page.for_ever.isEnabled()
    qtbot.keyClicks(page.typed, "bo probe")
    assert not page.for_ever.isEnabled()
    page.typed.clear()
    qtbot.keyClicks(page.typed, "ada  example")
    click(qtbot, page.for_ever)
    until(qtbot, lambda: page.said.text() == "Erased: 2 jobs.")
    until(qtbot, lambda: listed(book) == ["J-1", "J-2", "J-4", "J-5"])
    assert shell.session.desk.job is None
    assert shell.session.picture is None
    assert shell.session.saved == ""
    with JobStore(jobs.address) as store:
        assert store.numbers_of_client("Ada Example") == ()


def test_who_thinks_again_erases_nothing(book: BookDoor, qtbot: QtBot, jobs: ShopPlace) -> None:
    choose(book, qtbot, "J-0")
    click(qtbot, book.shelf.pages.chips["client"])
    page = book.shelf.client
    click(qtbot, page.erase)
    click(qtbot, page.leave)
    assert page._asking.isHidden()
    assert page.erase.isVisible()
    click(qtbot, page.list)
    until(qtbot, lambda: listed(book) == ["J-0", "J-3"])


def test_a_backup_is_taken_and_put_back_with_what_is_newer_or_without(
    shell: Shell, book: BookDoor, qtbot: QtBot, jobs: ShopPlace
) -> None:
    click(qtbot, book.shelf.pages.chips["backups"])
    page = book.shelf.backups
    until(qtbot, lambda: len(page.chips) >= 1)  # one was due when the window opened
    with JobStore(jobs.address) as store:
        store.erase_jobs_of("Ada Example")
        store.save(make_job("J-9", "Dov Sample", 0))
    qtbot.mouseClick(page.chips[-1], LEFT)
    click(qtbot, page.restore)
    until(qtbot, lambda: len(listed(book)) == 7)
    assert "1 newer job came along" in shell.notice.text()
    assert "jobs.aside-" in shell.notice.text()
    until(qtbot, lambda: page.chosen is None and len(page.chips) >= 1)
    rest(shell, qtbot)
    qtbot.mouseClick(page.chips[-1], LEFT)
    click(qtbot, page.newer.chips[False])
    assert "jobs begun since are missing" in page.warning.text()
    click(qtbot, page.restore)
    until(qtbot, lambda: len(listed(book)) == 6)


def test_a_damaged_book_opens_itself_and_offers_its_backup(
    shell: Shell, jobs: ShopPlace, qtbot: QtBot
) -> None:
    with JobStore(jobs.address) as store:
        store.take_backup()
    path = Path(jobs.address)
    path.write_bytes(b"not a database" * 400)
    shell.show()
    shell.job_book.open()
    until(qtbot, lambda: shell.book is not None and shell.book.stage.damage.isVisible())
    assert shell.book is not None
    assert shell.job_book.state is BookState.DAMAGED
    damage = shell.book.stage.damage
    assert "The newest whole backup is of " in damage.told.text()
    assert path.read_bytes().startswith(b"not a database")
    shell.session.assign("catalogue", RACK)
    shell.errands.take_job(on_the_desk(make_picture(), (BOAT,)))
    until(qtbot, lambda: shell.session.saved == "kept on this computer")
    click(qtbot, damage.restore)
    until(qtbot, lambda: shell.job_book.state is BookState.READY)
    assert damage.isHidden()
    until(qtbot, lambda: shell.session.saved.startswith("saved "))
    assert stored(jobs, "TEST-1").title == "A red boat"
    (aside,) = path.parent.glob("jobs.aside-*.sqlite")
    assert aside.read_bytes().startswith(b"not a database")


def test_a_damaged_book_without_a_backup_begins_empty_with_what_can_be_read(
    shell: Shell, jobs: ShopPlace, qtbot: QtBot
) -> None:
    Path(jobs.address).write_bytes(b"not a database" * 400)
    shell.show()
    shell.job_book.open()
    until(qtbot, lambda: shell.book is not None and shell.book.stage.damage.isVisible())
    assert shell.book is not None
    damage = shell.book.stage.damage
    assert damage.restore.isHidden()
    assert "no whole backup" in damage.told.text()
    click(qtbot, damage.begin)
    until(qtbot, lambda: shell.job_book.state is BookState.READY)
    assert len(list(Path(jobs.address).parent.glob("jobs.aside-*.sqlite"))) == 1


def test_an_empty_desk_shows_the_jobs_worked_on_last_and_opens_one(
    shell: Shell, jobs: ShopPlace, qtbot: QtBot
) -> None:
    shell.session.assign("catalogue", RACK)
    shell.show()
    shell.job_book.open()
    until(qtbot, lambda: len(shell.session.recent) == 5)
    shown = [one for one in shell.findChildren(RecentJob) if one.isVisible()]
    assert [one.line.number for one in shown] == [f"J-{number}" for number in range(5)]
    click(qtbot, shown[2])
    until(qtbot, lambda: shell.session.desk.job is not None)
    assert shell.session.desk.job is not None
    assert shell.session.desk.job.number == "J-2"


def test_what_both_counters_changed_is_chosen_in_place(
    shell: Shell, book: BookDoor, qtbot: QtBot, jobs: ShopPlace
) -> None:
    session = shell.session
    session.job_asked.emit("J-0")
    until(qtbot, lambda: session.packed is not None)
    rest(shell, qtbot)
    shell.go("agree")
    there = stored(jobs, "J-0")
    with JobStore(jobs.address) as store:
        theirs = replace(there, note="theirs", title="Their title")
        store.save(theirs, version=store.open("J-0").version)
    assert session.desk.job is not None
    mine = replace(session.desk.job, note="mine", title="My title")
    session.edit("Both", job=mine)
    until(qtbot, shell.differing.isVisible)
    assert list(shell.differing.choices) == [("title",), ("note",)]

    def there() -> QAbstractButton:  # the rows are made anew at each save
        return shell.differing.choices["title",].chips["there"]

    until(qtbot, lambda: there().isVisible())
    click(qtbot, there())
    click(qtbot, shell.differing.done)
    until(qtbot, lambda: shell.differing.isHidden() and session.saved.startswith("saved "))
    found = stored(jobs, "J-0")
    assert (found.title, found.note) == ("Their title", "mine")


def settings_of(shell: Shell, qtbot: QtBot) -> SettingsShelf:
    shell.show()
    shell.toggle_settings()
    found = shell.findChild(SettingsShelf)
    assert isinstance(found, SettingsShelf)
    rest(shell, qtbot)
    return found


def test_the_place_of_the_jobs_is_tried_before_it_is_kept_and_its_password_not_shown(
    shell: Shell, jobs: ShopPlace, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    setting = settings_of(shell, qtbot).place
    assert setting.now.text() == f"Now: {jobs.address}"
    nowhere = f"postgresql+psycopg://shop:topsecret@/shop?host={tmp_path / 'gone'}"
    for address, told in (
        ("", "Write a file or an address first."),
        (nowhere, "cannot be used"),
        ("nonsense://x", "is no address"),
        (str(tmp_path / "new" / "jobs.sqlite"), "when the window opens next; 0 jobs are there."),
    ):
        setting.address.setText(address)
        setting.use.click()
        until(qtbot, lambda told=told: told in setting.said.text())
        assert "topsecret" not in setting.said.text()
    assert shop_place().address == tmp_path / "new" / "jobs.sqlite"
    assert setting.now.text() == f"Now: {jobs.address}"
    setting.own.click()
    until(qtbot, lambda: "own file is used" in setting.said.text())
    assert shell.job_book.state is not BookState.AWAY


def test_a_problem_is_reported_without_anybodys_name(
    shell: Shell, jobs: ShopPlace, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_, **__: (str(tmp_path / "report"), "")
    )
    report = settings_of(shell, qtbot).report
    report.button.click()
    until(qtbot, lambda: report.said.text().startswith("Written as report.zip"))
    with zipfile.ZipFile(tmp_path / "report.zip") as archive:
        text = "".join(archive.read(name).decode() for name in archive.namelist())
    assert "6 in" in text
    for name in (*NAMES, "Ada", str(tmp_path)):
        assert name not in text


def test_a_defect_in_the_background_is_in_the_log_by_its_kind_and_place_alone(
    shell: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    start_log(tmp_path / "log")

    def work(_progress: object) -> None:
        raise ZeroDivisionError("of Ada Example")

    told: list[Exception] = []
    shell.runner.start("x", work, done=lambda _none: None, failed=told.append)
    until(qtbot, lambda: bool(told))
    shell.open_file(tmp_path / "lost.framejob")
    until(qtbot, lambda: "lost.framejob" in shell.notice.text())
    stop_log()
    text = log_tail(tmp_path / "log")
    assert "defect: ZeroDivisionError at framing_palette/window/runner.py:" in text
    assert "work refused: JobFileError at " in text
    assert "Ada" not in text
    assert "lost" not in text


@pytest.mark.parametrize(("width", "height"), [(1366, 768), (683, 384)])
def test_nothing_of_the_book_is_clipped_overlaps_or_is_too_small(
    shell: Shell, book: BookDoor, qtbot: QtBot, width: int, height: int
) -> None:
    shell.resize(width, height)
    choose(book, qtbot, "J-1")
    faults = []
    for page in ("job", "client", "backups"):
        book.shelf.show_page(page)
        book.shelf.client._ask(asking=page == "client")
        rest(shell, qtbot)
        settle(shell)
        for look in (clipped, overlapping, too_small_to_hit):
            faults += [f"{page}: {fault}" for fault in look(shell)]
    assert faults == []


def test_everything_in_the_book_has_a_name_and_is_reached_by_keys(
    shell: Shell, book: BookDoor, qtbot: QtBot
) -> None:
    from tests.window.test_shell import controls

    choose(book, qtbot, "J-1")
    nameless = [
        type(widget).__name__
        for root in (book.stage, book.shelf)
        for widget in controls(root)  # type: ignore[arg-type]
        if not widget.accessibleName() and not getattr(widget, "text", str)()
    ]
    assert nameless == []
    with qtbot.waitActive(shell):
        shell.activateWindow()
    book.stage.words.setFocus()
    reached = set()
    for _ in range(60):
        focused = QApplication.focusWidget()
        if focused is None or focused in reached:
            break
        reached.add(focused)
        qtbot.keyClick(focused, Qt.Key.Key_Tab)
    for wanted in (book.stage.dates, book.stage.view, book.shelf.card.open, book.shelf.card.line):
        assert wanted in reached


def test_ten_thousand_jobs_are_listed_without_holding_the_window(
    shell: Shell, place: ShopPlace, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    from framing_palette.jobs.job_lines import JobLine

    at = now()
    lines = tuple(
        JobLine(f"J-{number}", f"Title {number}", "Ada", Status.OPEN, at, at, 1)
        for number in range(10_000)
    )
    monkeypatch.setattr(JobStore, "lines", lambda *_, **__: lines)
    shell.show()
    shell.job_book.open()
    shell.toggle_book()
    assert shell.book is not None
    until(qtbot, lambda: shell.book is not None and shell.book.stage.model.rowCount() == 10_000)
    view = shell.book.stage.view
    view.scrollToBottom()
    shown = view.indexAt(QPoint(20, view.viewport().height() - 20))
    assert shown.row() == 9_999
    assert shell.book.stage.count.text() == "10,000 jobs"
