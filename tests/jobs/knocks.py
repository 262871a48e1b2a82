"""A process that saves jobs until it is knocked over; run by test_durability, not collected.

It imports everything once and forks, so that a life lasts milliseconds. Each child tells through
a pipe what was accepted; the parent kills it, or limits what it may write, and then looks whether
the shop's jobs and a job file are exactly at the last accepted save. Prints one JSON object.

    python -m tests.jobs.knocks kill FOLDER ROUNDS SEED
    python -m tests.jobs.knocks limit FOLDER BYTES...
"""

import json
import os
import random
import resource
import shutil
import signal
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

import alembic.operations
import alembic.runtime.migration
import alembic.script  # noqa: F401 - once, before the forks

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Client, Job, PackedJob, PictureFile, read_job_file, write_job_file
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.store import NEW, JobStore

AT = datetime(2026, 3, 1, tzinfo=UTC)
SAVES = (0, 0, 1, 2, 3, 4)
LONGEST_REST_S = 0.04
FRESH_EVERY = 5


def photograph(version: int) -> bytes:
    return random.Random(version // 3).randbytes(30_000)  # noqa: S311 - a new one now and then


def job(version: int) -> Job:
    """Return what is saved as that version, of a size that differs from one to the next."""
    note = random.Random(version).randbytes(version * 977 % 9000).hex()  # noqa: S311
    named = PictureFile("a.jpg", digest(photograph(version)))
    return Job("K-1", f"Version {version}", AT, AT, Client("Ada"), note=note, picture=named)


def save_for_ever(folder: Path, tell: Callable[[str], None]) -> None:
    path, beside = folder / "jobs.sqlite", folder / "sent.framejob"
    with JobStore(path) as store:
        version = store.open("K-1").version if store.count() else NEW
        while True:
            version = store.save(job(version + 1), version=version, picture=photograph(version + 1))
            tell(f"store {version}")
            write_job_file(beside, PackedJob(job(version), photograph(version)))
            tell(f"file {version}")


@dataclass
class Shop:
    """What was accepted in one folder so far."""

    folder: Path
    store: int = 0
    file: int = 0

    def look(self) -> dict[str, int]:
        """Open both and compare; one save more than was told may have come through."""
        seen = {"store": 0, "file": 0}
        with JobStore(self.folder / "jobs.sqlite") as store:
            if store.count():
                found = store.open("K-1")
                seen["store"] = found.version
                assert found.job == job(found.version)
                assert store.packed(found.job).picture == photograph(found.version)
        sent = self.folder / "sent.framejob"
        if sent.exists():
            packed = read_job_file(sent)
            seen["file"] = int(packed.job.title.split()[1])
            assert packed == PackedJob(job(seen["file"]), photograph(seen["file"]))
        assert seen["store"] in (self.store, self.store + 1), (seen, self)
        assert seen["file"] in (self.file, self.store, seen["store"]), (seen, self)
        assert seen["file"] >= self.file, (seen, self)
        unheard = {"store": seen["store"] - self.store, "file": seen["file"] - self.file}
        self.store, self.file = seen["store"], seen["file"]
        return unheard

    def hear(self, words: str) -> int:
        """Take in what a child has told, whole lines only."""
        lines = words.split("\n")[:-1]
        for line in lines:
            what, version = line.split()
            if what != "refused":
                setattr(self, what, int(version))
        return len(lines)


def child(folder: Path, before: Callable[[], None]) -> tuple[int, int]:
    """Fork one that saves for ever, and return its id and where to hear of it."""
    ear, mouth = os.pipe()
    pid = os.fork()
    if pid:
        os.close(mouth)
        return pid, ear
    code = 1
    try:
        before()
        save_for_ever(folder, lambda words: os.write(mouth, f"{words}\n".encode()))
    except FramingPaletteError as error:
        os.write(mouth, f"refused {str(error).replace(' ', '_')}\n".encode())
        code = 2
    finally:
        os._exit(code)


def heard(ear: int) -> str:
    with os.fdopen(ear, "rb") as pipe:
        return pipe.read().decode()


def live_a_while(ear: int, rng: random.Random) -> str:
    """Let a child do a few saves and a random part of the next, and return what it told."""
    words = b""
    for _ in range(rng.choice(SAVES)):
        words += os.read(ear, 1000)
    time.sleep(rng.uniform(0, LONGEST_REST_S))
    return words.decode()


def kill_often(folder: Path, rounds: int, seed: int) -> dict[str, int]:
    rng = random.Random(seed)  # noqa: S311
    told = {"kills": 0, "accepted": 0, "unheard": 0, "before_first": 0}
    shop = Shop(folder)
    for number in range(rounds):
        if number % FRESH_EVERY == 0:
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir(parents=True)
            shop = Shop(folder)
        pid, ear = child(folder, lambda: None)
        words = live_a_while(ear, rng)
        os.kill(pid, signal.SIGKILL)
        _, status = os.waitpid(pid, 0)
        assert os.WIFSIGNALED(status), heard(ear)
        accepted = shop.hear(words + heard(ear))
        told["kills"] += 1
        told["accepted"] += accepted
        told["before_first"] += accepted == 0
        told["unheard"] += sum(shop.look().values())
    return told


def limit_writes(folder: Path, limits: list[int]) -> dict[str, int]:
    """Let no file grow beyond each limit in turn: the write that would is cut short there."""
    told = {"refused": 0, "accepted": 0}
    shop = Shop(folder)
    for limit in limits:
        pid, ear = child(folder, partial(resource.setrlimit, resource.RLIMIT_FSIZE, (limit, limit)))
        _, status = os.waitpid(pid, 0)
        words = heard(ear)
        assert os.waitstatus_to_exitcode(status) == 2, (limit, words)
        assert "cannot_be" in words.splitlines()[-1], words
        told["refused"] += 1
        told["accepted"] += shop.hear(words) - 1
        shop.look()
    return told


def main() -> None:
    mode, folder, *numbers = sys.argv[1:]
    values = [int(number) for number in numbers]
    place = Path(folder) / "shop"
    place.mkdir()
    if mode == "kill":
        print(json.dumps(kill_often(place, *values)))
    else:
        print(json.dumps(limit_writes(place, values)))


if __name__ == "__main__":
    main()
