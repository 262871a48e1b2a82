import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.jobs.backup_files import backups_of
from framing_palette.jobs.log_files import log_tail, start_log, stop_log
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.window.frame import Frame
from framing_palette.window.job_book.book import BookState
from framing_palette.window.opening import Wanted, _note_defect, begin, fill
from framing_palette.window.preferences import Preferences
from framing_palette.window.shell import Shell

RACK_FOLDER = {
    "samples.csv": "code,name,kind,face_mm,thickness_mm\n"
    "M-1,Plain white,mat,,1.4\nR-1,Black flat,moulding,30,20\n",
    "colours.csv": "code,share,L,a,b\nM-1,1,95,0,2\nR-1,1,18,0,0\n",
}


@pytest.fixture
def rack_folder(tmp_path: Path) -> Path:
    folder = tmp_path / "rack"
    folder.mkdir()
    for name, content in RACK_FOLDER.items():
        (folder / name).write_text(content, encoding="utf-8")
    return folder


@pytest.fixture
def photograph(tmp_path: Path) -> Path:
    path = tmp_path / "grey_day.png"
    image = QImage(96, 72, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.gray)
    assert image.save(str(path))
    return path


def test_importing_the_window_does_not_load_qt_yet() -> None:
    code = "import sys, framing_palette.window; sys.exit('PySide6' in sys.modules)"
    here = str(Path(__file__).resolve().parents[2])
    environment = {**os.environ, "PYTHONPATH": here}
    done = subprocess.run([sys.executable, "-c", code], check=False, env=environment)
    assert done.returncode == 0


def test_qt_gives_back_every_reference_to_none(qtbot: QtBot) -> None:
    # A binding that loses one at each call (6.12.0 under Python 3.11) aborts the program in the end.
    widget = QWidget()
    qtbot.addWidget(widget)
    before = sys.getrefcount(None)
    for _ in range(500):
        widget.update()
    assert sys.getrefcount(None) > before - 100


def test_the_frame_stands_first_and_is_then_filled_with_what_was_asked_for(
    app: QApplication, qtbot: QtBot, rack_folder: Path, photograph: Path
) -> None:
    frame = Frame()
    qtbot.addWidget(frame)
    frame.show()
    assert frame.findChild(Shell) is None
    fill(frame, Preferences(), Wanted(photograph, None, rack_folder))
    qtbot.waitUntil(lambda: frame.findChild(Shell) is not None, timeout=20_000)
    shell = frame.findChild(Shell)
    assert isinstance(shell, Shell)

    qtbot.waitUntil(lambda: shell.session.ranked is not None, timeout=20_000)
    assert shell.session.step == "choose"
    assert shell.session.desk.job is not None
    assert shell.session.desk.job.title == "Grey day"
    frame.close()
    assert not shell.runner.is_busy()


def test_a_path_that_ends_like_a_job_is_taken_for_one() -> None:
    path = Path("boat.framejob")
    assert Wanted(path).sorted_out() == Wanted(job_path=path)
    picture = Wanted(Path("boat.jpg"))
    assert picture.sorted_out() == picture


def test_a_job_that_is_not_there_is_told_in_the_window(
    shell: Shell, qtbot: QtBot, rack_folder: Path, tmp_path: Path
) -> None:
    begin(shell, Wanted(catalogue_dir=rack_folder, job_path=tmp_path / "lost.framejob"))
    qtbot.waitUntil(lambda: "lost.framejob" in shell.notice.text(), timeout=20_000)
    assert len(shell.session.catalogue) == 2


def test_a_catalogue_that_is_not_there_is_told_in_the_window(
    shell: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    begin(shell, Wanted(catalogue_dir=tmp_path / "nowhere"))
    qtbot.waitUntil(lambda: "nowhere" in shell.notice.text(), timeout=20_000)


def test_a_defect_on_the_interface_thread_is_in_the_log(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    start_log(tmp_path)
    with pytest.raises(ZeroDivisionError) as raised:
        int("7") // int("0")
    error = ZeroDivisionError("of Ada Example").with_traceback(raised.value.__traceback__)
    _note_defect(type(error), error, error.__traceback__)
    stop_log()
    assert "defect: ZeroDivisionError at test_opening.py:" in log_tail(tmp_path)
    assert "Ada" not in log_tail(tmp_path)
    assert "ZeroDivisionError" in capsys.readouterr().err


def test_the_shops_jobs_are_opened_and_checked_when_the_window_begins(
    shell: Shell, qtbot: QtBot, rack_folder: Path, place: ShopPlace
) -> None:
    begin(shell, Wanted(catalogue_dir=rack_folder))
    qtbot.waitUntil(lambda: shell.job_book.state is BookState.READY, timeout=20_000)
    # A backup is due at the first start of a shop, and none a moment later.
    qtbot.waitUntil(lambda: len(backups_of(Path(place.address))) == 1, timeout=20_000)
    qtbot.waitUntil(lambda: not shell.job_book.runner.is_busy(), timeout=20_000)
    shell.job_book.open()
    qtbot.waitUntil(lambda: not shell.job_book.runner.is_busy(), timeout=20_000)
    assert len(backups_of(Path(place.address))) == 1
