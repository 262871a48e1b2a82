"""A job being worked on is merged with what others did, or kept here until it can be saved."""

import stat
from dataclasses import replace
from pathlib import Path

import pytest

from framing_palette.errors import JobChangedElsewhereError, OutputError, UnknownJobError
from framing_palette.jobs import PackedJob, StoredJob, read_job_file
from framing_palette.jobs.keeping_files import keep_unsent, let_go, save_merged, unsent
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job


def test_what_two_counters_did_to_different_things_is_saved_together(store: JobStore) -> None:
    store.save(job("1"))
    base = store.open("1")
    store.save(replace(base.job, title="Theirs"), version=1)
    store.save(replace(base.job, title="Theirs", kept=("A",)), version=2)
    saved = save_merged(store, base, replace(base.job, note="mine", kept=("B",)))
    assert saved == store.open("1")
    assert saved.version == 4
    assert (saved.job.title, saved.job.note, saved.job.kept) == ("Theirs", "mine", ("A", "B"))


def test_a_job_nobody_else_touched_is_saved_as_it_is(store: JobStore) -> None:
    new = save_merged(store, StoredJob(job("1"), 0), job("1"))
    assert new == StoredJob(job("1"), 1)
    assert save_merged(store, new, job("1", note="x")) == StoredJob(job("1", note="x"), 2)


def test_what_both_changed_is_not_decided_by_the_program(store: JobStore) -> None:
    store.save(job("1"))
    base = store.open("1")
    store.save(replace(base.job, note="theirs"), version=1)
    with pytest.raises(JobChangedElsewhereError) as told:
        save_merged(store, base, replace(base.job, note="mine"))
    assert (told.value.mine.note, told.value.theirs.note) == ("mine", "theirs")
    assert store.open("1").job.note == "theirs"


def test_a_job_erased_meanwhile_does_not_come_back(store: JobStore) -> None:
    store.save(job("1"))
    base = store.open("1")
    store.erase_jobs_of("Ada Example")
    with pytest.raises(UnknownJobError):
        save_merged(store, base, replace(base.job, note="mine"))


def test_a_server_that_dropped_its_connections_is_used_again(
    postgresql_address: str, tmp_path: Path
) -> None:
    with JobStore(postgresql_address, photographs=tmp_path) as store:
        store.erase_jobs_of("Ada Example")
        store.save(job("lost"))
        other = JobStore(postgresql_address, photographs=tmp_path)
        with other, other._reading() as connection:
            ended = connection.exec_driver_sql(
                "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity "
                "WHERE pid <> pg_backend_pid() AND datname = current_database()"
            ).scalar()
        assert ended is not None
        assert ended >= 1
        assert store.save(job("lost", note="x"), version=1) == 2
        store.erase_jobs_of("Ada Example")


def test_a_job_kept_here_opens_again_and_goes_once_it_is_saved(tmp_path: Path) -> None:
    folder = tmp_path / "unsent"
    assert unsent(folder) == ()
    for note in ("first", "second"):
        path = keep_unsent(PackedJob(job("a/1", note=note)), folder)
    other = keep_unsent(PackedJob(job("a_1")), folder)
    assert set(unsent(folder)) == {path, other}
    assert read_job_file(path).job == job("a/1", note="second")
    assert stat.S_IMODE(path.stat().st_mode) & 0o077 == 0
    let_go("a/1", folder)
    let_go("a/1", folder)
    assert unsent(folder) == (other,)


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(OutputError, match="cannot be made"):
        keep_unsent(PackedJob(job("1")), tmp_path / "file" / "unsent")


def test_by_default_a_job_is_kept_in_the_platforms_data_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: tmp_path / "data")
    path = keep_unsent(PackedJob(job("1")))
    assert path.parent == tmp_path / "data" / "unsent"
    assert unsent() == (path,)
    let_go("1")
    assert unsent() == ()
