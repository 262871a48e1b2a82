"""The form of the database: one made by steps is the one described, and a step is whole or not."""

import shutil
import sqlite3
import threading
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext

from framing_palette.errors import JobStoreError
from framing_palette.jobs import store_schema
from framing_palette.jobs.backup_files import backups_of
from framing_palette.jobs.job_tables import METADATA
from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job, numbers

_SECOND_STEP = """
import sqlalchemy as sa
from alembic import op

revision, down_revision = "2", "1"


def upgrade():
    op.add_column("jobs", sa.Column("branch", sa.Text))
    op.execute("UPDATE jobs SET branch = 'first shop'")
    op.execute("{last}")
"""


def second_step(folder: Path, monkeypatch: pytest.MonkeyPatch, last: str) -> None:
    steps = folder / "steps"
    shutil.copytree(store_schema._STEPS, steps, ignore=shutil.ignore_patterns("__pycache__"))
    (steps / "versions" / "form_2.py").write_text(_SECOND_STEP.format(last=last))
    monkeypatch.setattr(store_schema, "_STEPS", steps)
    monkeypatch.setattr(store_schema, "SCHEMA_FORM", "2")


def columns_of(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return [row[1] for row in connection.execute("PRAGMA table_info(jobs)")]


def test_the_steps_make_exactly_the_tables_that_are_described(store: JobStore) -> None:
    with store._reading() as connection:
        assert compare_metadata(MigrationContext.configure(connection), METADATA) == []
        assert store_schema.found_form(connection) == store_schema.SCHEMA_FORM


def test_a_database_of_a_newer_program_is_left_alone(store: JobStore, address: str) -> None:
    store.save(job("1"))
    with store._writing() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = '99'")
    try:
        with pytest.raises(JobStoreError, match=r"newer program \(form 99\)"):
            JobStore(address, photographs=store.photographs.folder)
    finally:
        with store._writing() as connection:
            connection.exec_driver_sql("UPDATE alembic_version SET version_num = '1'")
    assert store.open("1").job == job("1")


@pytest.mark.parametrize(
    ("form", "known"), [("", True), ("0", True), ("1", True), ("2", False), ("x", False)]
)
def test_only_forms_up_to_the_present_one_are_known(form: str, *, known: bool) -> None:
    assert store_schema.is_known(form) is known


def test_an_older_database_is_backed_up_and_brought_to_the_present_form(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore(path) as store:
        store.save(job("1"))
    second_step(tmp_path, monkeypatch, "SELECT 1")
    with JobStore(path) as store:
        assert store.open("1").job == job("1")
    assert columns_of(path)[-1] == "branch"
    (backup,) = backups_of(path)
    assert "branch" not in columns_of(backup)


def test_a_step_that_fails_leaves_the_older_form_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore(path) as store:
        store.save(job("1"))
    with monkeypatch.context() as patch:
        second_step(tmp_path, patch, "UPDATE nosuchtable SET x = 1")
        with pytest.raises(JobStoreError, match="no such table"):
            JobStore(path)
    assert "branch" not in columns_of(path)
    with JobStore(path) as store:
        assert numbers(store) == ["1"]


def test_two_counters_take_a_step_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore(path) as store:
        store.save(job("1"))
    second_step(tmp_path, monkeypatch, "UPDATE jobs SET version = version + 1")
    together = threading.Barrier(3)
    versions = []

    def open_it() -> None:
        together.wait()
        with JobStore(path) as store:
            versions.append(store.open("1").version)

    threads = [threading.Thread(target=open_it) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert versions == [2, 2, 2]
