"""Whatever stops the program, the shop's jobs are at the last save that was accepted."""

import errno
import json
import os
import random
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from framing_palette.errors import JobStoreError, OutputError
from framing_palette.jobs import PackedJob, PictureFile, read_job_file, write_job_file
from framing_palette.jobs.backup_files import backups_of, is_whole, take_backup
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.restoring_files import restore
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job

ROOT = Path(__file__).parents[2]
KILLS = 200
PHOTOGRAPH = b"light" * 2000
posix_only = pytest.mark.skipif(os.name == "nt", reason="forks, and limits what a process writes")


def knocked(mode: str, folder: Path, *numbers: int) -> dict[str, int]:
    words = [sys.executable, "-m", "tests.jobs.knocks", mode, str(folder), *map(str, numbers)]
    done = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    told: dict[str, int] = json.loads(done.stdout)
    return told


@posix_only
def test_a_process_killed_at_any_moment_leaves_every_job_at_the_last_accepted_save(
    tmp_path: Path,
) -> None:
    told = knocked("kill", tmp_path, KILLS, 1)
    assert told["kills"] == KILLS
    # The kills must have met all there is: the first opening, and saves on their way.
    assert told["accepted"] > KILLS
    assert told["before_first"] > 10
    assert told["unheard"] > 5


@posix_only
def test_a_write_cut_short_anywhere_is_refused_in_a_sentence_and_loses_nothing(
    tmp_path: Path,
) -> None:
    limits = [0, 1, 511, 4096, 5000, 30_000, 50_000, *range(58_000, 240_000, 13_001)]
    told = knocked("limit", tmp_path, *limits)
    assert told["refused"] == len(limits)
    assert told["accepted"] > 10


def test_after_a_power_cut_every_save_whose_log_reached_the_disk_is_there(tmp_path: Path) -> None:
    path, log = tmp_path / "jobs.sqlite", tmp_path / "jobs.sqlite-wal"
    on_disk = {}
    with JobStore(path) as store:
        store.fold_in()
        for version in range(25):
            note = random.Random(version).randbytes(version * 211 % 3000).hex()  # noqa: S311
            store.save(job("1", note=note), version=version)
            on_disk[log.stat().st_size] = version + 1
        whole, content = path.read_bytes(), log.read_bytes()
    rng = random.Random(7)  # noqa: S311
    for number in range(40):
        cut = rng.randrange(len(content))
        rest = rng.randbytes(200) if number % 2 else b""  # what else the disk had in that place
        again = tmp_path / f"again-{number}" / "jobs.sqlite"
        again.parent.mkdir()
        again.write_bytes(whole)
        (again.parent / "jobs.sqlite-wal").write_bytes(content[:cut] + rest)
        expected = max((version for size, version in on_disk.items() if size <= cut), default=0)
        with JobStore(again) as store:
            found = store.open("1").version if store.count() else 0
        assert found == expected


# Each way a file is brought to its place, failing at its nth call.
CALLS = (
    "os.fsync",
    "os.replace",
    "os.rename",
    "os.open",
    "pathlib.Path.replace",
    "shutil.copyfile",
)


class FailsAt:
    """Stands for a call of the system and fails once, at its nth time."""

    def __init__(self, call: Callable[..., object], nth: int, number: int) -> None:
        self._call, self._left, self._number = call, nth, number
        self.has_failed = False

    def __get__(self, instance: object, _owner: type) -> Callable[..., object]:
        return self if instance is None else lambda *words, **more: self(instance, *words, **more)

    def __call__(self, *words: object, **more: object) -> object:
        self._left -= 1
        if self._left == 0:
            self.has_failed = True
            raise OSError(self._number, os.strerror(self._number))
        return self._call(*words, **more)


def failing(
    monkeypatch: pytest.MonkeyPatch, work: Callable[[], object], number: int
) -> Iterator[str]:
    """Do some work again and again, each time with another call that fails; yield after each."""
    for name in CALLS:
        owner, attribute = name.rsplit(".", 1)
        holder = {"os": os, "shutil": shutil, "pathlib.Path": Path}[owner]
        for nth in range(1, 20):
            with monkeypatch.context() as patch:
                bad = FailsAt(getattr(holder, attribute), nth, number)
                patch.setattr(holder, attribute, bad)
                try:
                    work()
                    has_refused = False
                except (OutputError, JobStoreError) as error:
                    assert os.strerror(number) in str(error)
                    has_refused = True
            if not bad.has_failed:
                break
            yield f"{name} {nth} {'refused' if has_refused else 'done'}"


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS, errno.EACCES])
def test_each_failing_call_of_a_save_with_a_photograph_leaves_the_last_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    path = tmp_path / "jobs.sqlite"
    JobStore(path).close()
    state = {"version": 0}

    def save() -> None:
        wanted = state["version"] + 1
        content = PHOTOGRAPH + bytes([wanted])
        made = job("1", note=str(wanted), picture=PictureFile("a.jpg", digest(content)))
        with JobStore(path) as store:
            state["version"] = store.save(made, version=state["version"], picture=content)

    save()
    steps = []
    for step in failing(monkeypatch, save, number):
        steps.append(step)
        with JobStore(path) as store:
            found = store.open("1")
            assert found.version == state["version"]
            assert found.job.note == str(found.version)
            assert store.packed(found.job).picture == PHOTOGRAPH + bytes([found.version])
            assert not list(store.photographs.folder.rglob("*.part"))
    assert sum(step.endswith("refused") for step in steps) >= 4, steps


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS, errno.EACCES])
def test_each_failing_call_of_a_backup_or_its_return_leaves_a_whole_shop(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore(path) as store:
        store.save(job("1"))
    first = take_backup(path)
    kept = tmp_path / "kept"
    shutil.copy(first, kept)

    def back_up_and_return() -> None:
        restore(path, take_backup(path))

    steps = []
    for step in failing(monkeypatch, back_up_and_return, number):
        steps.append(step)
        assert all(is_whole(backup) for backup in backups_of(path))
        assert backups_of(path)
        if not path.exists():  # stopped between the two renames: the next start offers the backup
            with pytest.raises(JobStoreError, match="restore the newest whole backup"):
                JobStore(path)
            restore(path, backups_of(path)[0])
        with JobStore(path) as store:
            assert store.open("1").job == job("1")
        assert not list(tmp_path.rglob("*.part"))
    assert sum(step.endswith("refused") for step in steps) >= 5, steps


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS, errno.EACCES])
def test_each_failing_call_of_writing_a_job_file_leaves_the_older_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    path = tmp_path / "a.framejob"
    there, next_one = (PackedJob(job("1", note=words)) for words in ("older", "newer"))
    write_job_file(path, there)

    def write() -> None:
        nonlocal there, next_one
        write_job_file(path, next_one)
        there, next_one = next_one, there

    steps = []
    for step in failing(monkeypatch, write, number):
        steps.append(step)
        assert read_job_file(path) == there
        assert list(tmp_path.iterdir()) == [path]
    assert sum(step.endswith("refused") for step in steps) >= 3, steps
    assert not [step for step in steps if step.endswith("done")]


def test_a_full_disk_is_told_and_saving_goes_on_once_there_is_room(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    large = job("1", note="n" * 400_000)
    with JobStore(path) as store:
        store.save(job("1"))
        with store._reading() as connection:
            most = connection.exec_driver_sql("PRAGMA max_page_count = 30").scalar()
        assert most == 30
        with pytest.raises(JobStoreError, match="disk is full"):
            store.save(large, version=1)
        assert store.open("1").job == job("1")
        assert store.save(large, version=1) == 2  # on a connection without that limit


_UNPRIVILEGED = """
import os, sys
from pathlib import Path
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job
if os.geteuid() == 0:
    os.setgid(65534)
    os.setuid(65534)
for name in sys.argv[1:]:
    try:
        with JobStore(Path(name)) as store:
            store.save(job("2"))
        print("saved")
    except FramingPaletteError as error:
        print(str(error).count(name), error)
"""


@posix_only
def test_a_file_or_folder_that_may_not_be_written_is_told_by_its_name(tmp_path: Path) -> None:
    closed, file, folder = (tmp_path / name for name in ("closed", "file", "folder"))
    for place in (closed, file, folder):
        with JobStore(place / "jobs.sqlite") as store:
            store.save(job("1"))
        place.chmod(0o755)
        (place / "jobs.sqlite").chmod(0o644)
    (tmp_path / "file" / "jobs.sqlite").chmod(0o444)
    closed.chmod(0o555)
    folder.chmod(0o000)
    for parent in [tmp_path, *tmp_path.parents][:3]:
        parent.chmod(0o755)
    names = [str(place / "jobs.sqlite") for place in (closed, file, folder)]
    names.append(str(closed / "new" / "jobs.sqlite"))
    done = subprocess.run(
        [sys.executable, "-B", "-c", _UNPRIVILEGED, *names],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    folder.chmod(0o755)
    closed.chmod(0o755)
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert len(lines) == 4
    for line in lines:
        assert line.startswith("1 "), done.stdout
        assert "cannot be" in line
    for place in (closed, file, folder):
        (place / "jobs.sqlite").chmod(0o600)
        with JobStore(place / "jobs.sqlite") as store:
            assert store.open("1").job == job("1")
            assert store.count() == 1
