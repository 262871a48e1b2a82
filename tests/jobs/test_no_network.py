"""A whole job opens no connection: every call for the network is forbidden while it runs."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

_FORBIDDEN = """
import socket, sys

asked = []

def forbid(event, arguments):
    if event in FORBIDDEN or (event == "socket.__new__" and arguments[1] != socket.AF_UNIX):
        asked.append(event)
        raise PermissionError(f"{event} is forbidden here")

FORBIDDEN = {
    "socket.connect", "socket.bind", "socket.sendto", "socket.sendmsg", "socket.getaddrinfo",
    "socket.gethostbyname", "socket.gethostbyaddr", "socket.getnameinfo", "urllib.Request",
    "http.client.connect", "ftplib.connect", "smtplib.connect",
}
sys.addaudithook(forbid)
for call in (
    lambda: socket.create_connection(("127.0.0.1", 9)),
    lambda: socket.socket(socket.AF_INET),
    lambda: socket.gethostbyname("localhost"),
):
    try:
        call()
    except PermissionError:
        continue
    sys.exit("the network was not forbidden")
assert len(asked) == 3
asked.clear()
"""

_WHOLE_JOB = (
    _FORBIDDEN
    + """
from pathlib import Path
from framing_palette.cli import main
folder = Path(sys.argv[1])
assert main(["demo", "--out", str(folder), "--no-window"]) == 0
from framing_palette.jobs import read_job_file
from framing_palette.jobs.store import JobStore
packed = read_job_file(folder / "demo.framejob")
with JobStore(folder / "jobs.sqlite") as store:
    store.save(packed.job, picture=packed.picture)
    store.take_backup()
assert main(["doctor", "--jobs", str(folder / "jobs.sqlite"), "--bundle", str(folder / "p.zip")]) == 0
print("asked for:", asked)
"""
)


def test_a_whole_job_from_picture_to_ticket_and_backup_opens_no_connection(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", _WHOLE_JOB, str(tmp_path)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-1] == "asked for: []"
    assert (tmp_path / "ticket.pdf").stat().st_size > 1000
