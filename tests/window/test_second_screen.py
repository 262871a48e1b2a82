"""The client's view where there is a second screen: in a process of its own that has two."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

_SHOW = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from framing_palette.window.shell import Shell
app = QApplication([])
shell = Shell(preferences_file=Path(sys.argv[1]) / "window.json")
shell.move(50, 50)
shell.show()
app.processEvents()
shell.toggle_client_view()
app.processEvents()
view = shell.client_view
print(shell.screen().name(), view.screen().name(), *view.geometry().getRect(), sep="|")
shell.close()
"""


def screen(name: str, x: int, width: int, height: int) -> dict[str, object]:
    size = {"x": x, "y": 0, "width": width, "height": height}
    return {"name": name, **size, "logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}


@pytest.mark.parametrize(
    ("screens", "said"),
    [
        (1, "counter|counter|0|0|1600|900"),
        (2, "counter|wall|1600|0|1920|1080"),
    ],
)
def test_the_clients_view_fills_the_other_screen_where_there_is_one(
    tmp_path: Path, screens: int, said: str
) -> None:
    both = [screen("counter", 0, 1600, 900), screen("wall", 1600, 1920, 1080)]
    config = tmp_path / "screens.json"
    config.write_text(json.dumps({"screens": both[:screens]}), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", _SHOW, str(tmp_path)],
        capture_output=True,
        text=True,
        check=True,
        env={
            **os.environ,
            "QT_QPA_PLATFORM": f"offscreen:configfile={config}",
            "FRAMING_PALETTE_JOBS": str(tmp_path / "jobs.sqlite"),
        },
        cwd=Path(__file__).resolve().parents[2],
        timeout=60,
    )
    assert done.stdout.strip().splitlines()[-1] == said
