"""A real PostgreSQL server, started by the tests from Debian's package."""

import importlib.util
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest


def _binaries() -> Path | None:
    """Where Debian puts the server, which is not on the search path."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    on_path = shutil.which("initdb")
    return found[-1].parent if found else Path(on_path).parent if on_path else None


def _as_server_user(command: list[str]) -> list[str]:
    """The server refuses to run as root."""
    return ["runuser", "-u", "postgres", "--", *command] if os.geteuid() == 0 else command


def _run(*command: str | Path) -> None:
    done = subprocess.run(
        _as_server_user([str(part) for part in command]),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="session")
def postgresql_address() -> Iterator[str]:
    """The address of a server of our own, reached through a socket in a private folder."""
    binaries = _binaries()
    if binaries is None or importlib.util.find_spec("psycopg") is None:
        pytest.skip("needs Debian's package postgresql and the Python package psycopg")
    folder = Path(tempfile.mkdtemp(prefix="fp-pg-"))  # a socket's path must be short
    if os.geteuid() == 0:
        shutil.chown(folder, "postgres", "postgres")
    data = folder / "data"
    _run(binaries / "initdb", "-D", data, "-U", "shop", "--auth=trust", "--no-sync", "-E", "UTF8")
    options = f"-c listen_addresses='' -k {folder} -c fsync=off"
    _run(binaries / "pg_ctl", "-D", data, "-l", folder / "log", "-o", options, "-w", "start")
    try:
        yield f"postgresql+psycopg://shop@/postgres?host={folder}"
    finally:
        _run(binaries / "pg_ctl", "-D", data, "-m", "immediate", "stop")
        shutil.rmtree(folder, ignore_errors=True)
