"""Damage and backups: nothing is decided for the shop, and what can be read comes along."""

import os
import shutil
import sqlite3
import stat
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from framing_palette.errors import JobStoreDamagedError, JobStoreError, OutputError
from framing_palette.jobs import backup_files
from framing_palette.jobs.backup_files import (
    FOLDER,
    backups_of,
    files_aside,
    newest_whole_backup,
    set_aside,
    take_backup,
)
from framing_palette.jobs.restoring_files import restore
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job, numbers

NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "jobs.sqlite"


def save(path: Path, *wanted: str) -> None:
    with JobStore(path) as store:
        for number in wanted:
            store.save(job(number))


def damage(path: Path) -> None:
    """Overwrite the middle of the file, as a bad disk does."""
    content = bytearray(path.read_bytes())
    content[4096:-4096] = b"\xa5" * (len(content) - 8192)
    path.write_bytes(content)


def test_a_damaged_file_is_refused_untouched_and_the_newest_whole_backup_offered(
    path: Path,
) -> None:
    save(path, "1")
    old, new = take_backup(path, NOON), take_backup(path, NOON + timedelta(hours=1))
    damage(new)
    damage(path)
    before = path.read_bytes()
    for _ in range(2):  # looking at it twice does not make it go away
        with pytest.raises(JobStoreDamagedError, match="is damaged") as told:
            JobStore(path)
        assert told.value.backup == old
        assert path.read_bytes() == before
    assert str(told.value).count(".") - str(told.value).count(".sqlite") == 1
    assert f"restore the newest whole backup, {old.name}" in str(told.value)


@pytest.mark.parametrize(
    "content", [b"", b"not a database at all", b"SQLite format 3\0" + b"x" * 99]
)
def test_a_file_that_is_no_database_any_more_is_damaged(path: Path, content: bytes) -> None:
    save(path, "1")
    backup = take_backup(path)
    path.write_bytes(content)
    with pytest.raises(JobStoreDamagedError) as told:
        JobStore(path)
    assert told.value.backup == backup


def test_a_lost_file_never_becomes_an_empty_shop_while_backups_are_there(path: Path) -> None:
    save(path, "1")
    take_backup(path)
    path.unlink()
    with pytest.raises(JobStoreDamagedError, match="gone although backups of it are there"):
        JobStore(path)
    assert not path.exists()


def test_a_damaged_file_without_backup_says_so(path: Path) -> None:
    path.write_bytes(b"x" * 5000)
    with pytest.raises(JobStoreDamagedError, match="no whole backup") as told:
        JobStore(path)
    assert told.value.backup is None


def test_a_restored_backup_opens_and_the_damaged_file_is_kept_beside_it(path: Path) -> None:
    save(path, "1")
    backup = take_backup(path)
    damage(path)
    content = path.read_bytes()
    restored = restore(path, backup)
    assert restored.aside is not None
    assert restored.aside.read_bytes() == content
    assert files_aside(path) == (restored.aside,)
    with JobStore(path) as store:
        assert store.open("1").job == job("1")
    if os.name != "nt":
        assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_jobs_saved_after_the_backup_come_along_when_they_can_still_be_read(path: Path) -> None:
    save(path, "1", "2")
    backup = take_backup(path)
    with JobStore(path) as store:
        store.save(job("2", note="later"), version=1)
        store.save(job("3"))
    with closing(sqlite3.connect(path)) as connection, connection:  # damage that SQLite still reads
        connection.execute("PRAGMA foreign_keys = OFF")
        connection.execute("INSERT INTO job_samples VALUES ('gone', 'A')")
        connection.execute("UPDATE jobs SET document = 'torn' WHERE number = '1'")
    with pytest.raises(JobStoreDamagedError, match="a sample without its job"):
        JobStore(path)
    assert restore(path, backup).brought_over == ("2", "3")
    with JobStore(path) as store:
        assert numbers(store) == ["1", "2", "3"]
        assert store.open("2").job.note == "later"
        assert store.open("1").job == job("1")


def test_jobs_come_along_from_both_sides_of_a_damaged_page(path: Path) -> None:
    wanted = [f"{number:03d}" for number in range(200)]
    with JobStore(path) as store:
        for number in wanted:
            store.save(job(number, note="n" * 500))
    content = bytearray(path.read_bytes())
    middle = content.index(b'"number": "100"') // 4096 * 4096
    content[middle : middle + 4096] = b"\xa5" * 4096
    path.write_bytes(content)
    with pytest.raises(JobStoreDamagedError):
        JobStore(path)
    brought = restore(path, None).brought_over
    assert 180 <= len(brought) < 200
    assert {"000", "199"} <= set(brought)
    assert "100" not in brought


def test_a_shop_can_go_back_to_a_backup_as_it_was(path: Path) -> None:
    save(path, "1")
    backup = take_backup(path)
    save(path, "2")
    assert restore(path, backup, bring_over=False).brought_over == ()
    with JobStore(path) as store:
        assert numbers(store) == ["1"]


def test_without_a_whole_backup_an_empty_database_takes_the_place(path: Path) -> None:
    path.write_bytes(b"x" * 5000)
    restored = restore(path, None)
    assert restored.aside is not None
    assert restored.aside.read_bytes() == b"x" * 5000
    with JobStore(path) as store:
        assert store.count() == 0


def test_an_empty_database_is_refused_while_a_whole_backup_is_there(path: Path) -> None:
    save(path, "1")
    backup = take_backup(path)
    with pytest.raises(JobStoreError, match=f"restore {backup.name}"):
        restore(path, None)
    path.unlink()
    assert restore(path, backup).aside is None
    save(path, "2")


def test_a_damaged_backup_is_not_put_back(path: Path) -> None:
    save(path, "1")
    backup = take_backup(path)
    damage(backup)
    before = path.read_bytes()
    with pytest.raises(JobStoreError, match="no whole backup"):
        restore(path, backup)
    assert path.read_bytes() == before


def test_a_backup_holds_what_is_saved_while_the_shop_has_the_file_open(path: Path) -> None:
    with JobStore(path) as store:
        store.save(job("1"))
        backup = store.take_backup()
        store.save(job("2"))
        assert list(backup.parent.iterdir()) == [backup]
    if os.name != "nt":
        assert stat.S_IMODE(backup.stat().st_mode) == 0o600
        assert stat.S_IMODE(backup.parent.stat().st_mode) == 0o700
    with JobStore(shutil.copy(backup, path.parent / "copy.sqlite")) as copy:
        assert numbers(copy) == ["1"]


def test_a_backup_is_taken_when_one_is_due_and_not_before(path: Path) -> None:
    with JobStore(path) as store:
        assert store.take_backup_if_due() is not None
        assert store.take_backup_if_due() is None


def test_old_backups_are_pruned_and_other_files_are_not(path: Path) -> None:
    save(path, "1")
    for hours in range(30):
        take_backup(path, NOON + timedelta(hours=hours))
    other = path.parent / FOLDER / "jobs-note.sqlite"
    other.write_bytes(b"of the shop")
    kept = backups_of(path)
    assert len(kept) == 7  # the newest six, and the last of the first day
    assert kept[0].name == "jobs-20260305T170000Z.sqlite"
    assert other.exists()


def test_a_backup_that_cannot_be_written_prunes_nothing_and_leaves_no_rubbish(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    save(path, "1")
    for hours in range(7):
        take_backup(path, NOON + timedelta(hours=hours))
    before = backups_of(path)

    def full(_descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OutputError, match="No space left"):
        take_backup(path, NOON + timedelta(days=9))
    with pytest.raises(OutputError, match="No space left"):
        restore(path, before[0])
    assert backups_of(path) == before
    assert len(list((path.parent / FOLDER).iterdir())) == len(before)


def test_a_copy_that_is_not_whole_is_no_backup(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    save(path, "1")
    monkeypatch.setattr(backup_files, "_copy_database", lambda _path, part: part.write_bytes(b"x"))
    with pytest.raises(OutputError, match="not whole"):
        take_backup(path)
    assert newest_whole_backup(path) is None
    assert list((path.parent / FOLDER).iterdir()) == []


def test_a_file_that_cannot_be_moved_is_told(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path.write_bytes(b"x" * 5000)

    def held(_path: Path, _target: Path) -> Path:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "rename", held)
    with pytest.raises(OutputError, match="Permission denied"):
        restore(path, None)
    assert path.read_bytes() == b"x" * 5000


def test_nothing_is_set_aside_where_nothing_is(path: Path) -> None:
    assert set_aside(path) is None
    assert not backup_files.is_whole(path)


def test_a_server_is_not_backed_up_from_here(postgresql_address: str, tmp_path: Path) -> None:
    with JobStore(postgresql_address, photographs=tmp_path) as store:
        assert store.take_backup_if_due() is None
        assert store.fold_in()
        with pytest.raises(JobStoreError, match="pg_dump"):
            store.take_backup()
