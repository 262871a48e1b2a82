"""The log tells what the program did, and cannot hold anything about anybody."""

import os
import stat
from collections.abc import Iterator
from io import FileIO, TextIOWrapper
from pathlib import Path

import pytest

from framing_palette.errors import FramingPaletteError, JobStoreDamagedError, JobStoreError
from framing_palette.jobs import log_files
from framing_palette.jobs.backup_files import take_backup
from framing_palette.jobs.log_files import (
    Happening,
    log_tail,
    note,
    note_error,
    start_log,
    stop_log,
)
from framing_palette.jobs.personal_files import erase_client
from framing_palette.jobs.restoring_files import restore
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    folder = tmp_path / "Ada's logs"
    assert start_log(folder) == folder / "framing-palette.log"
    yield folder
    stop_log()


def test_a_days_work_is_told_without_the_client_the_job_or_the_place(
    folder: Path, tmp_path: Path
) -> None:
    path = tmp_path / "Ada Example" / "jobs.sqlite"
    with JobStore(path) as store:
        store.save(job("J-77", "Ada Example"))
        store.save(job("J-77", "Ada Example", note="x"), version=1)
        with pytest.raises(FramingPaletteError):
            store.save(job("J-77", "Bo Probe"), version=1)
    backup = take_backup(path)
    path.write_bytes(b"Ada" * 1000)
    with pytest.raises(JobStoreDamagedError):
        JobStore(path)
    restore(path, backup)
    with JobStore(path) as store:
        erase_client(store, "Ada Example")
    with pytest.raises(JobStoreError):
        JobStore(tmp_path)
    text = log_tail(folder)
    for happening in (
        "started",
        "database opened",
        "database brought to the present form form=1",
        "job was changed at another counter seen=1 found=2",
        "backup taken bytes=",
        "database damaged has_backup=1",
        "backup restored brought_over=0",
        "client erased jobs=1 photographs=0",
    ):
        assert happening in text
    for secret in ("Ada", "Bo", "J-77", "Title", "sqlite", tmp_path.name):
        assert secret not in text


def test_an_error_is_told_by_kind_and_place_and_never_by_its_sentence(folder: Path) -> None:
    try:
        (folder / "Ada Example").read_bytes()
    except OSError as error:
        note_error(Happening.DEFECT, error)
    note_error(Happening.DATABASE_FAILED, JobStoreError("x", problem="Ada", todo="Ada"))
    first, second = log_tail(folder).splitlines()[-2:]
    assert "defect: FileNotFoundError 2 at test_log_files.py:" in first
    assert "pathlib.py:" in first
    assert second.endswith("database could not be used: JobStoreError at no place")
    assert "Ada" not in first + second


def test_a_place_in_the_program_is_told_by_its_module(folder: Path) -> None:
    try:
        job("")
    except FramingPaletteError as error:
        note_error(Happening.DEFECT, error)
    assert "framing_palette/jobs/jobs.py:" in log_tail(folder)


def test_the_log_turns_over_and_stays_within_its_size(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(log_files, "_MOST_BYTES", 2000)
    start_log(folder)
    for number in range(400):
        note(Happening.BACKUP_TAKEN, number=number)
    files = sorted(folder.iterdir())
    assert len(files) == 5
    assert all(path.stat().st_size <= 2000 for path in files)
    if os.name != "nt":
        assert {stat.S_IMODE(path.stat().st_mode) for path in files} == {0o600}
    tail = log_tail(folder, most_bytes=3000)
    numbers = [int(line.split("number=")[1]) for line in tail.splitlines()[1:]]
    assert numbers == list(range(400 - len(numbers), 400))
    assert len(numbers) > 45


def test_a_log_that_cannot_be_written_stops_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    assert start_log(tmp_path / "file" / "logs") is None
    note(Happening.STARTED)
    assert log_tail(tmp_path / "none") == ""


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_log_whose_disk_is_full_stops_nothing(
    folder: Path, capsys: pytest.CaptureFixture
) -> None:
    handler = next(h for h in log_files._LOG.handlers if isinstance(h, log_files._Quiet))
    before, handler.stream = handler.stream, TextIOWrapper(FileIO("/dev/full", "w"))
    note(Happening.DEFECT)
    handler.stream.detach().close()
    handler.stream = before
    assert capsys.readouterr().err == ""


def test_the_log_lies_in_the_platforms_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_log_path", lambda *_, **__: tmp_path / "log")
    assert start_log() == tmp_path / "log" / "framing-palette.log"
    stop_log()
    assert "started" in log_tail()
