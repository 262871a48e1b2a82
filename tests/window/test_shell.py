from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QLineEdit, QSlider, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.jobs import read_job_file
from framing_palette.window.keeping import keep_sample
from framing_palette.window.keys_sheet import KEYS
from framing_palette.window.shell import Shell

SPEAKING = (QAbstractButton, QLineEdit, QSlider, QAbstractItemView)


def activate(shell: Shell, qtbot: QtBot) -> None:
    shell.show()
    with qtbot.waitActive(shell):
        shell.activateWindow()


def controls(shell: Shell) -> list[QWidget]:
    found = shell.findChildren(QWidget)
    return [
        widget
        for widget in found
        if isinstance(widget, SPEAKING) or widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    ]


def test_every_control_has_a_name_for_screen_readers(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    keep_sample(open_shell.session, "brick-red")
    keep_sample(open_shell.session, "deep-sea")
    open_shell.session.assign("chosen_region", 0)
    for key in open_shell.steps:
        open_shell.go(key)
    open_shell.session.show_side_by_side(shown=True)
    open_shell.toggle_settings()
    nameless = [
        f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}"
        for widget in controls(open_shell)
        if not widget.accessibleName()
        and not (isinstance(widget, QAbstractButton) and widget.text())
    ]
    assert nameless == []
    assert len(controls(open_shell)) > 40


def test_tab_reaches_stops_tools_shelf_and_rail(open_shell: Shell, qtbot: QtBot) -> None:
    activate(open_shell, qtbot)
    open_shell.go("choose")
    keep_sample(open_shell.session, "brick-red")
    open_shell.path.stop("read").setFocus()
    reached: set[QWidget] = set()
    for _ in range(80):
        focused = QGuiApplication.focusObject()
        if not isinstance(focused, QWidget) or focused in reached:
            break
        reached.add(focused)
        qtbot.keyClick(focused, Qt.Key.Key_Tab)
    shelf = open_shell.shelves.currentWidget()
    step = open_shell.steps["choose"]
    for wanted in (
        step.canvas,  # type: ignore[attr-defined]
        step.shelf_widget.view,  # type: ignore[attr-defined]
        open_shell.rail.slots[0],
        open_shell.job_line.search,
        open_shell.doors["settings"],
    ):
        assert wanted in reached, wanted
    assert any(shelf.isAncestorOf(widget) for widget in reached)


def test_the_focus_ring_follows_the_tab_key_and_hides_from_the_pointer(
    open_shell: Shell, qtbot: QtBot
) -> None:
    activate(open_shell, qtbot)
    first = open_shell.path.stop("read")
    first.setFocus()
    assert open_shell.focus_ring.isHidden()
    qtbot.keyClick(first, Qt.Key.Key_Tab)
    focused = QGuiApplication.focusObject()
    assert open_shell.focus_ring.target is focused
    assert open_shell.focus_ring.isVisible()
    open_shell.path.stop("choose").setFocus(Qt.FocusReason.MouseFocusReason)
    assert open_shell.focus_ring.isHidden()


def test_keys_go_to_the_steps(open_shell: Shell, qtbot: QtBot) -> None:
    activate(open_shell, qtbot)
    stops = list(open_shell.steps)
    for number, key in enumerate(stops, start=1):
        assert open_shell.path.stop(key).shortcut().toString() == f"Ctrl+{number}"
        open_shell.path.stop(key).click()
        assert open_shell.session.step == key


def test_rail_and_shelf_go_away_and_come_back(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    for toggle, part in (
        (open_shell.job_line.rail, open_shell.rail),
        (open_shell.job_line.shelf, open_shell.shelves),
    ):
        qtbot.mouseClick(toggle, Qt.MouseButton.LeftButton)
        assert part.isHidden()
        qtbot.mouseClick(toggle, Qt.MouseButton.LeftButton)
        assert part.isVisible()


def test_the_sheet_of_keys_comes_and_goes(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    qtbot.mouseClick(open_shell.doors["keys"], Qt.MouseButton.LeftButton)
    assert open_shell.keys_sheet.isVisible()
    qtbot.keyClick(open_shell.keys_sheet, Qt.Key.Key_Escape)
    assert open_shell.keys_sheet.isHidden()
    keys = [key for _, rows in KEYS for key, _ in rows]
    assert len(keys) > 25


def test_undo_and_redo_say_what_they_would_do(open_shell: Shell, qtbot: QtBot) -> None:
    line = open_shell.job_line
    assert not line.undo.isEnabled()
    keep_sample(open_shell.session, "brick-red")
    assert line.undo.accessibleName() == "Undo: Keep Brick red"
    qtbot.mouseClick(line.undo, Qt.MouseButton.LeftButton)
    assert open_shell.session.desk.kept == ()
    assert line.redo.accessibleName() == "Redo: Keep Brick red"
    qtbot.mouseClick(line.redo, Qt.MouseButton.LeftButton)
    assert len(open_shell.session.desk.kept) == 1


def test_a_slash_begins_a_search_that_leads_to_choose(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    open_shell.go("read")
    qtbot.keyClicks(open_shell.job_line.search, "brick")
    assert open_shell.session.step == "choose"


def test_a_job_put_into_a_file_and_opened_again_lies_as_it_lay(
    open_shell: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    session = open_shell.session
    keep_sample(session, "brick-red")
    path = tmp_path / "boat.framejob"
    with qtbot.waitSignal(session.job_path_changed):
        open_shell.saving.save_as(path)
    saved = read_job_file(path, session.catalogue).job
    assert saved.regions == session.desk.regions
    assert saved.kept == ("brick-red",)
    session.edit("Clear", regions=(), kept=())
    with qtbot.waitSignal(session.packed_changed):
        open_shell.open_file(path)
    assert session.desk.regions == saved.regions
    assert [kept.codes for kept in session.desk.kept] == [("brick-red",)]
    assert session.undo_stack.count() == 0


def test_a_picture_that_cannot_be_read_is_told_and_the_desk_stays(
    open_shell: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    before = open_shell.session.desk
    path = tmp_path / "letter.jpg"
    path.write_text("Dear framer", encoding="utf-8")
    with qtbot.waitSignal(open_shell.session.notice_changed):
        open_shell.open_file(path)
    assert "is not a picture" in open_shell.notice.text()
    assert open_shell.session.desk == before


def test_a_pasted_picture_begins_a_job(
    open_shell: Shell, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    image = QImage(80, 60, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.darkCyan)
    QGuiApplication.clipboard().setImage(image)
    with qtbot.waitSignal(open_shell.session.packed_changed):
        open_shell.paste()
    picture = open_shell.session.picture
    assert picture is not None
    assert (picture.columns, picture.rows) == (80, 60)


def test_a_pasted_file_is_opened(open_shell: Shell, qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "art.png"
    image = QImage(64, 48, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.darkGray)
    image.save(str(path))
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    QGuiApplication.clipboard().setMimeData(data)
    with qtbot.waitSignal(open_shell.session.packed_changed):
        open_shell.paste()
    job = open_shell.session.desk.job
    assert job is not None
    assert job.title == "Art"
    qtbot.waitUntil(lambda: open_shell.session.saved.startswith("saved "))


def test_an_empty_clipboard_says_what_to_do(open_shell: Shell, qtbot: QtBot) -> None:
    QGuiApplication.clipboard().clear()
    open_shell.paste()
    assert "copy one first" in open_shell.notice.text()


def test_a_true_size_given_later_brings_the_scale_and_reads_anew(
    open_shell: Shell, qtbot: QtBot
) -> None:
    from dataclasses import replace

    from framing_palette.units import Length

    session = open_shell.session
    job = session.desk.job
    assert job is not None
    bigger = replace(job, art_size=(Length.mm_of(640), Length.mm_of(480)))
    with qtbot.waitSignal(session.picture_changed):
        session.edit("Size", job=bigger)
    assert session.picture is not None
    assert session.picture.mm_per_px == pytest.approx(4.0)


def test_closing_leaves_no_thread_at_work(open_shell: Shell) -> None:
    open_shell.errands.rank()
    open_shell.close()
    assert not open_shell.runner.is_busy()
