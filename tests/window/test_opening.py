import subprocess
import sys

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot


def test_importing_the_window_does_not_load_qt_yet() -> None:
    code = "import sys, framing_palette.window; sys.exit('PySide6' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_qt_gives_back_every_reference_to_none(qtbot: QtBot) -> None:
    # A binding that loses one at each call (6.12.0 under Python 3.11) aborts the program in the end.
    widget = QWidget()
    qtbot.addWidget(widget)
    before = sys.getrefcount(None)
    for _ in range(500):
        widget.update()
    assert sys.getrefcount(None) > before - 100
