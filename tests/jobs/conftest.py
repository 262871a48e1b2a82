"""Shop databases for tests: a file, and a real server where one can be started."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import text

from framing_palette.jobs.store import JobStore
from tests.catalogue.conftest import postgresql_address

__all__ = ["address", "postgresql_address", "store"]


@pytest.fixture(params=["file", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    if request.param == "file":
        yield str(tmp_path / "jobs.sqlite")
        return
    found: str = request.getfixturevalue("postgresql_address")
    yield found
    with (
        JobStore(found, photographs=tmp_path / "unused") as opened,
        opened._writing() as connection,
    ):
        for table in ("job_samples", "jobs", "alembic_version"):
            connection.execute(text(f"DROP TABLE {table}"))


@pytest.fixture
def store(address: str, tmp_path: Path) -> Iterator[JobStore]:
    with JobStore(address, photographs=tmp_path / "photographs") as opened:
        yield opened
