"""The window itself, knocked over while somebody works; run by test_job_store, not collected.

Everything is imported once and forked, before there is any Qt application. Each child opens the
job where the last left it, changes it all the time and tells through a pipe what it did and what
the job bar said; the parent kills it and looks what the shop's jobs hold. Prints one JSON object.

    python -m tests.window.knocks FOLDER KILLS SEED
"""

import json
import os
import random
import signal
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import alembic.operations
import alembic.runtime.migration
import alembic.script  # noqa: F401 - once, before the forks
from PIL import Image
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.jobs import Job, OnRail
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.jobs.store import JobStore
from framing_palette.window.shell import Shell
from framing_palette.window.theme import put_on, tokens_named
from tests.window.conftest import BOAT, RACK, make_picture

CODES = tuple(sample.code for sample in RACK.samples)
LONGEST_LIFE_S = 0.9


def desk(number: int) -> dict[str, object]:
    """Return what lies on the desk after so many changes."""
    code = CODES[number % len(CODES)]
    return {
        "laid": (code,),
        "kept": (OnRail((code,), RACK[code].name, f"note {number}"),),
        "regions": (replace(BOAT, name=f"boat {number}"),),
    }


class Life:
    """A window that is worked in until it is killed."""

    def __init__(self, folder: Path, seed: int, tell: Callable[[str], None]) -> None:
        self.folder, self.tell = folder, tell
        self.rng = random.Random(seed)  # noqa: S311
        place = ShopPlace(folder / "jobs.sqlite")
        self.shell = Shell(preferences_file=folder / "window.json", keeper=lambda: Keeper(place))
        self.session = self.shell.session
        self.number = 0
        self.is_working = False
        self.session.assign("catalogue", RACK)
        self.session.saved_changed.connect(self.hear_saved)
        self.session.job_changed.connect(self.begin)
        self.session.recent_changed.connect(self.open_last)

    def start(self) -> None:
        self.shell.show()
        if (self.folder / "jobs.sqlite").exists():
            self.shell.job_book.open()
        else:
            self.shell.errands.open_picture(self.folder / "sea.png")

    def open_last(self) -> None:
        if self.session.packed is None and self.session.recent:
            self.session.job_asked.emit(self.session.recent[0].number)

    def begin(self) -> None:
        job = self.session.desk.job
        if job is not None and not self.is_working:
            self.is_working = True
            self.number = int(job.note or 0)
            if self.number:
                expected = desk(self.number)
                assert {name: getattr(self.session.desk, name) for name in expected} == expected
            assert self.session.packed is not None
            assert self.session.packed.picture
            self.tell(f"opened {self.number}")
            self.work_on()

    def work_on(self) -> None:
        QTimer.singleShot(self.rng.choice((1, 5, 30, 120, 400)), self.change)

    def change(self) -> None:
        self.number += 1
        job = self.session.desk.job
        assert job is not None
        changed = replace(job, note=str(self.number))
        self.session.edit(f"Change {self.number}", job=changed, **desk(self.number))
        self.tell(f"changed {self.number}")
        self.work_on()

    def hear_saved(self) -> None:
        kept = self.shell.saving.kept
        if kept is not None and self.session.saved.startswith("saved "):
            self.tell(f"saved {kept.base.job.note or 0}")


def child(folder: Path, seed: int) -> tuple[int, int]:
    """Fork one that works in a window, and return its id and where to hear of it."""
    ear, mouth = os.pipe()
    pid = os.fork()
    if pid:
        os.close(mouth)
        return pid, ear
    try:
        app = QApplication([])
        put_on(app, tokens_named("light"))
        life = Life(
            folder, seed, lambda said: os.write(mouth, f"{said} {time.monotonic():.3f}\n".encode())
        )
        life.start()
        app.exec()
    finally:
        os._exit(1)


def heard(ear: int, until: str) -> str:
    words = b""
    while until.encode() not in words:
        more = os.read(ear, 1000)
        if not more:
            break
        words += more
    return words.decode()


def look(folder: Path) -> tuple[int, Job]:
    with JobStore(folder / "jobs.sqlite") as store:
        (line,) = store.lines()
        job = store.open(line.number).job
        assert store.packed(job).picture == (folder / "sea.png").read_bytes()
    return int(job.note or 0), job


def check_whole(number: int, job: Job) -> None:
    """See to it that the job is as it was after one change, and not between two."""
    if number:
        expected = desk(number)
        assert job.desk.laid == expected["laid"]
        assert job.regions == expected["regions"]
        assert [kept.note for kept in job.desk.rail] == [f"note {number}"]


def slowest_ms(events: list[list[str]]) -> int:
    """Return the longest time from a change to the save that held it; told, never judged."""
    changed = {int(value): float(at) for name, value, at in events if name == "changed"}
    longest = 0.0
    for name, value, at in events:
        if name == "saved":
            held = [number for number in changed if number <= int(value)]
            longest = max([longest, *(float(at) - changed.pop(number) for number in held)])
    return round(longest * 1000)


def kill_often(folder: Path, kills: int, seed: int) -> dict[str, int]:
    rng = random.Random(seed)  # noqa: S311
    Image.fromarray(lab_d50_to_srgb_u8(make_picture().lab_d50)).save(folder / "sea.png")
    told = {"kills": 0, "changes": 0, "saves": 0, "lost": 0, "slowest_ms": 0}
    last = 0
    for number in range(kills):
        pid, ear = child(folder, seed + number)
        words = heard(ear, "saved" if number == 0 else "opened")
        time.sleep(rng.uniform(0, LONGEST_LIFE_S))
        os.kill(pid, signal.SIGKILL)
        _, status = os.waitpid(pid, 0)
        with os.fdopen(ear, "rb") as pipe:
            words += pipe.read().decode()
        assert os.WIFSIGNALED(status), words
        events = [line.split() for line in words.split("\n")[:-1]]
        seen = {
            what: [int(value) for name, value, _at in events if name == what]
            for what in ("opened", "changed", "saved")
        }
        told["slowest_ms"] = max(told["slowest_ms"], slowest_ms(events))
        assert seen["opened"][0] == last, (words, last)
        saved = max([last, *seen["saved"]])
        changed = max([last, *seen["changed"]])
        last, job = look(folder)
        check_whole(last, job)
        assert saved <= last <= changed + 1, (last, words)
        told["kills"] += 1
        told["changes"] += len(seen["changed"])
        told["saves"] += len(seen["saved"])
        told["lost"] += max(0, changed - last)
    return told


if __name__ == "__main__":
    print(json.dumps(kill_often(Path(sys.argv[1]), *map(int, sys.argv[2:]))))
