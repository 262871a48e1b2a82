"""Health of the shop's jobs: looked at without making, changing or hiding anything."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from framing_palette.jobs import HealthFinding, examine, health
from framing_palette.jobs.backup_files import backups_of, take_backup
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job

NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "shop" / "jobs.sqlite"


def found(address: str | Path) -> dict[str, HealthFinding]:
    return {finding.what: finding for finding in health._jobs(address)}


def test_a_shop_without_jobs_is_sound_and_none_is_made(path: Path) -> None:
    assert found(path) == {"jobs": HealthFinding("jobs", f"none yet in {path}")}
    assert not path.parent.exists()


def test_jobs_and_backups_are_counted(path: Path) -> None:
    with JobStore(path) as store:
        store.save(job("1"))
    assert found(path)["jobs"] == HealthFinding("jobs", f"1 in {path}, checked and whole")
    assert found(path)["backups"] == HealthFinding("backups", "none yet")
    for hours in range(2):
        take_backup(path, NOON + timedelta(hours=hours))
    words = "2, the newest whole one is jobs-20260304T130000Z.sqlite"
    assert found(path)["backups"] == HealthFinding("backups", words)


def test_a_damaged_file_and_damaged_backups_are_told(path: Path) -> None:
    with JobStore(path) as store:
        store.save(job("1"))
    for hours in range(2):
        take_backup(path, NOON + timedelta(hours=hours))
    path.write_bytes(b"x" * 9000)
    newest, older = backups_of(path)
    newest.write_bytes(b"x" * 9000)
    findings = found(path)
    assert not findings["jobs"].sound
    assert f"restore the newest whole backup, {older.name}" in findings["jobs"].found
    assert findings["backups"].found.endswith(f"{older.name}; 1 after it are not")
    older.write_bytes(b"x" * 9000)
    assert found(path)["backups"].found == "none of them is whole; take one"
    assert not found(path)["backups"].sound


def test_a_lost_file_is_not_taken_for_a_new_shop(path: Path) -> None:
    with JobStore(path) as store:
        store.save(job("1"))
    take_backup(path)
    path.unlink()
    assert not found(path)["jobs"].sound
    assert not path.exists()


def test_a_server_is_looked_at_too(postgresql_address: str) -> None:
    findings = found(postgresql_address)
    assert findings["jobs"].found.startswith("0 in postgresql+psycopg://shop@")
    assert set(findings) == {"jobs"}


def test_the_whole_examination_includes_the_jobs(path: Path, tmp_path: Path) -> None:
    findings = examine(tmp_path, path)
    assert findings[-1].what == "jobs"
    assert {"program", "display", "colour engine", "catalogue"} <= {one.what for one in findings}
