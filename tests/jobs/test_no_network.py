"""A whole job opens no connection: every call for the network is forbidden while it runs.

What Python asks for is heard by an audit hook. What a library in C might open by itself shows as
a socket among the process's open files, which are looked through all the while. The tests of the
command line and of the window all run under the same hook; see ``tests/network.py``.
"""

import socket
import subprocess
import sys
from pathlib import Path

import pytest

from tests.network import forbidden_network

ROOT = Path(__file__).parents[2]

_WATCH = """
import os, re, socket, sys, threading, time
from pathlib import Path
from tests.network import forbidden_network

TABLES = [Path("/proc/self/net", name) for name in ("tcp", "tcp6", "udp", "udp6", "raw", "raw6")]
seen = set()

def open_sockets():
    mine = set()
    for entry in Path("/proc/self/fd").iterdir():
        try:
            found = re.fullmatch(r"socket:\\[(\\d+)\\]", os.readlink(entry))
        except OSError:
            continue
        if found:
            mine.add(found[1])
    if not mine:
        return set()
    lines = [line for table in TABLES if table.exists() for line in table.read_text().splitlines()]
    return mine & {line.split()[9] for line in lines[1:] if len(line.split()) > 9}

def look():
    while True:
        seen.update(open_sockets())
        time.sleep(0.005)

if Path("/proc/self/fd").is_dir():
    probe = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
    probe.bind(("127.0.0.1", 0))
    assert len(open_sockets()) == 1, "an open socket is not seen"
    probe.close()
    assert not open_sockets()
    threading.Thread(target=look, daemon=True).start()
"""

_WHOLE_JOB = (
    _WATCH
    + """
folder = Path(sys.argv[1])
with forbidden_network() as asked:
    from framing_palette.cli import main
    assert main(["demo", "--out", str(folder), "--no-window"]) == 0
    from framing_palette.jobs import read_job_file
    from framing_palette.jobs.store import JobStore
    packed = read_job_file(folder / "demo.framejob")
    with JobStore(folder / "jobs.sqlite") as store:
        store.save(packed.job, picture=packed.picture)
        store.take_backup()
    jobs, bundle = str(folder / "jobs.sqlite"), str(folder / "p.zip")
    assert main(["doctor", "--jobs", jobs, "--bundle", bundle]) == 0

    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication
    from framing_palette.window.frame import Frame
    from framing_palette.window.opening import Wanted, fill
    from framing_palette.window.preference_files import read_preferences
    from framing_palette.window.shell import Shell

    app = QApplication([])
    frame = Frame()
    frame.show()
    fill(frame, read_preferences(), Wanted(job_path=folder / "demo.framejob"))
    opened = []

    def look_in():
        for shell in frame.findChildren(Shell):
            if shell.session.packed is not None and not shell.runner.is_busy():
                opened.append(shell.session.packed.job.title)
                timer.stop()
                frame.close()
                app.quit()

    timer = QTimer(interval=50)
    timer.timeout.connect(look_in)
    timer.start()
    QTimer.singleShot(120_000, app.quit)
    app.exec()
    print("opened:", opened[:1])
print("asked for:", asked, "open:", sorted(seen))
"""
)


def test_a_whole_job_from_picture_to_ticket_backup_and_window_opens_no_connection(
    tmp_path: Path,
) -> None:
    done = subprocess.run(
        [sys.executable, "-c", _WHOLE_JOB, str(tmp_path)],
        cwd=ROOT,
        env=environment(tmp_path),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-2:] == [
        "opened: ['Ferry at Dusk']",
        "asked for: [] open: []",
    ]
    assert (tmp_path / "ticket.pdf").stat().st_size > 1000


def environment(home: Path) -> dict[str, str]:
    """Return an environment whose settings and jobs lie in a folder of the test's."""
    import os

    places = {"HOME": str(home), "XDG_CONFIG_HOME": "", "XDG_DATA_HOME": "", "XDG_CACHE_HOME": ""}
    return {**os.environ, **places, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"}


@pytest.mark.parametrize(
    "ask",
    [
        lambda: socket.create_connection(("127.0.0.1", 9)),
        lambda: socket.socket(socket.AF_INET),
        lambda: socket.gethostbyname("localhost"),
    ],
)
def test_whoever_asks_for_the_network_is_heard_and_refused(ask) -> None:
    with forbidden_network() as asked, pytest.raises(PermissionError):
        ask()
    assert asked
    socket.socket(socket.AF_INET).close()  # and may again afterwards
