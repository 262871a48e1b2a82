"""One client's data: all of it on request, and afterwards not a byte of it."""

import stat
from dataclasses import replace
from pathlib import Path

import pytest

from framing_palette.jobs import PackedJob, PictureFile, read_job_file
from framing_palette.jobs.backup_files import take_backup
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.keeping_files import keep_unsent, unsent
from framing_palette.jobs.personal_files import erase_client, export_client
from framing_palette.jobs.restoring_files import restore
from framing_palette.jobs.store import JobStore
from tests.jobs.test_documents import whole_job
from tests.jobs.test_store import job, numbers

PHOTOGRAPH = b"a face" * 1000
SHARED = b"a print that two clients own" * 100


def filled(store: JobStore) -> None:
    mine = PictureFile("mine.jpg", digest(PHOTOGRAPH))
    shared = PictureFile("print.jpg", digest(SHARED))
    store.save(replace(whole_job(), picture=mine), picture=PHOTOGRAPH)
    store.save(job("a/../b", "ada  EXAMPLE", picture=shared), picture=SHARED)
    store.save(job("8", "Bo Probe", picture=shared))


def test_export_writes_every_job_of_the_client_whole_and_nobody_elses(
    store: JobStore, tmp_path: Path
) -> None:
    filled(store)
    folder = tmp_path / "export"
    folder.mkdir()
    exported = export_client(store, "Ada Example", folder)
    assert sorted(path.name for path in folder.iterdir()) == [
        "001-J-7.framejob",
        "002-a_b.framejob",
    ]
    assert exported.without_photograph == ()
    found = [read_job_file(path) for path in exported.paths]
    assert [packed.picture for packed in found] == [PHOTOGRAPH, SHARED]
    assert found[0].job.client == whole_job().client
    assert stat.S_IMODE(exported.paths[0].stat().st_mode) & 0o077 == 0


def test_a_lost_photograph_does_not_stop_the_export_and_is_told(
    store: JobStore, tmp_path: Path
) -> None:
    filled(store)
    store.photographs.erase([digest(PHOTOGRAPH)])
    exported = export_client(store, "Ada Example", tmp_path)
    assert exported.without_photograph == ("J-7",)
    assert len(exported.paths) == 2


def test_erasing_a_client_leaves_the_others_alone(store: JobStore) -> None:
    filled(store)
    erased = erase_client(store, "Ada EXAMPLE")
    assert (erased.numbers, erased.photographs) == (("J-7", "a/../b"), 1)
    assert numbers(store) == ["8"]
    assert store.packed(store.open("8").job).picture == SHARED
    assert numbers(store, sample="anything") == []
    assert erase_client(store, "Nobody").numbers == ()


def test_a_job_that_waits_to_be_saved_is_erased_too(store: JobStore, tmp_path: Path) -> None:
    filled(store)
    folder = tmp_path / "unsent"
    kept = [keep_unsent(PackedJob(store.open(number).job), folder) for number in ("J-7", "8")]
    erase_client(store, "Ada Example", unsent_folder=folder)
    assert unsent(folder) == (kept[1],)


def test_an_erased_client_is_in_no_byte_of_the_database_or_its_backups(tmp_path: Path) -> None:
    path = tmp_path / "shop" / "jobs.sqlite"
    with JobStore(path) as store:
        filled(store)
        take_backup(path)
        assert holders(path.parent, b"ada@example.invalid")
        erased = erase_client(store, "Ada Example")
        assert erased.left == ()
        for secret in (b"ada@example.invalid", b"ada example", b"Harbour", PHOTOGRAPH[:60]):
            assert holders(path.parent, secret) == []
        assert holders(path.parent, b"Bo Probe")


def holders(folder: Path, secret: bytes) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file() and secret in path.read_bytes()]


def test_files_that_may_still_hold_a_client_are_named(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore(path) as store:
        filled(store)
    bad, good = take_backup(path), tmp_path / "good"
    good.write_bytes(bad.read_bytes())
    restored = restore(path, bad, bring_over=False)
    bad.write_bytes(b"x" * 9000)
    with JobStore(path) as store:
        erased = erase_client(store, "Ada Example")
    assert erased.left == (bad, restored.aside)


def test_a_reader_in_the_way_leaves_the_log_and_that_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with JobStore(tmp_path / "jobs.sqlite") as store, JobStore(tmp_path / "jobs.sqlite") as other:
        filled(store)
        with other._reading() as reading:
            reading.exec_driver_sql("SELECT count(*) FROM jobs").scalar()
            monkeypatch.setattr("framing_palette.jobs.database_files.BUSY_SECONDS", 0)
            store.close()  # its next connection waits for nobody
            with store._reading() as connection:
                connection.exec_driver_sql("PRAGMA busy_timeout = 0")
            erased = erase_client(store, "Ada Example")
        assert erased.left == (tmp_path / "jobs.sqlite-wal",)
