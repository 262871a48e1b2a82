"""The database under the shop's jobs: where it lies, how it is opened, and whether it is whole."""

import os
import sqlite3
import time
from contextlib import closing
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, NoSuchModuleError

from framing_palette.errors import JobStoreError

BUSY_SECONDS: Final = 15
_PRAGMAS: Final = (
    f"busy_timeout = {BUSY_SECONDS * 1000}",
    "synchronous = FULL",  # what was accepted survives a power cut, not just a crash
    "foreign_keys = ON",
    "secure_delete = ON",  # what is erased is overwritten
)
_PATIENCE: Final = {"connect_timeout": "5", "tcp_user_timeout": "10000"}  # seconds, milliseconds
_PAUSE_SECONDS: Final = 0.01
_LEAST_BYTES: Final = 512  # the smallest page
_WRITES: Final = "framing_palette_writes"
_NO_ADDRESS: Final = (ArgumentError, ValueError)  # a port that is no number is a ValueError


def default_jobs_path() -> Path:
    """Return where the jobs of this computer are kept."""
    import platformdirs

    return platformdirs.user_data_path("framing-palette", appauthor=False) / "jobs.sqlite"


def is_server(address: str | Path) -> bool:
    """Return whether an address names a server and no file."""
    return "://" in str(address) and not str(address).startswith("sqlite:")


def file_of(address: str | Path) -> Path:
    """Return the file that an address of SQLite or a plain path names."""
    text = str(address)
    if "://" not in text:
        return Path(text)
    try:
        return Path(make_url(text).database or "")
    except _NO_ADDRESS:
        return Path(text)  # `open_file` refuses it


def shown_address(address: str | Path) -> str:
    """Return an address as it may be shown and logged, without a password."""
    text = str(address)
    if not is_server(text):
        return str(file_of(address))
    try:
        return make_url(text).render_as_string(hide_password=True)
    except _NO_ADDRESS:
        return text.rpartition("@")[2]


def open_file(path: Path) -> Engine:
    """Return the engine for a file, which is made when missing, readable by its owner alone.

    Raises
    ------
    JobStoreError
        When the file or its folder cannot be made, or its name is an address that cannot be read.
    """
    if path.parts[:1] == ("sqlite:",):  # what `file_of` leaves of an address that is none
        raise JobStoreError(
            path, problem="is no address of a file", todo="name the file by its path alone"
        )
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
        if path.stat().st_mode & 0o077:
            path.chmod(0o600)
    except OSError as error:
        raise JobStoreError(
            path,
            problem=f"cannot be written ({error.strerror or error})",
            todo="choose a folder that exists and that you may write to",
        ) from error
    engine = create_engine(URL.create("sqlite", database=str(path)))
    event.listen(engine, "connect", _set_up)
    event.listen(engine, "begin", _begin)
    return engine


def open_server(address: str) -> tuple[Engine, str]:
    """Return the engine for a server and its address as it may be shown, without the password.

    Raises
    ------
    JobStoreError
        When the address is none, or its driver is not installed.
    """
    try:
        url = make_url(address)
        engine = create_engine(_patient(url), pool_pre_ping=True)
    except (*_NO_ADDRESS, NoSuchModuleError, ImportError) as error:
        raise JobStoreError(
            address.rpartition("@")[2],
            problem="is no address of a database that can be opened here",
            todo="name a file, or install the driver for the address",
        ) from error
    return engine, url.render_as_string(hide_password=True)


def _patient(url: URL) -> URL:
    """Return an address whose driver gives a silent server up after seconds, not minutes."""
    if url.drivername != "postgresql+psycopg":
        return url
    return url.update_query_dict({**_PATIENCE, **url.query})


def for_writing(engine: Engine) -> Engine:
    """Return the engine whose transactions on a file hold it for writing from their beginning."""
    return engine.execution_options(**{_WRITES: True})


def fault_of(path: Path) -> str:
    """Return what is wrong with a database file, in words, empty when it is whole.

    Raises
    ------
    JobStoreError
        When that cannot be found out, because the file cannot be read or another program holds it.
    """
    try:
        if 0 < path.stat().st_size < _LEAST_BYTES:  # SQLite takes a stump for an empty database
            return "is damaged (it is cut short)"
        with closing(sqlite3.connect(path, timeout=BUSY_SECONDS)) as connection:
            found = str(connection.execute("PRAGMA integrity_check(1)").fetchone()[0])
            orphan = connection.execute("PRAGMA foreign_key_check").fetchone()
    except (OSError, sqlite3.OperationalError) as error:
        raise JobStoreError(
            path,
            problem=f"cannot be opened ({error})",
            todo="check that you may read and write it, that no other program holds it, and "
            "that the disk is not full",
        ) from error
    except (sqlite3.DatabaseError, UnicodeDecodeError) as error:  # even its message can be bytes
        return f"is damaged ({error})"
    if found != "ok":
        return f"is damaged ({found.splitlines()[-1]})"
    return "" if orphan is None else "is damaged (a sample without its job)"


def _set_up(connection: Any, _record: object) -> None:
    """Wait for other counters, write ahead, and leave transactions to `_begin`."""
    connection.isolation_level = None
    cursor = connection.cursor()
    for pragma in _PRAGMAS:
        cursor.execute(f"PRAGMA {pragma}")
    _write_ahead(cursor)
    cursor.close()


def _write_ahead(cursor: sqlite3.Cursor) -> None:
    """Turn on writing ahead, again and again while another counter does so to the same new file.

    SQLite does not wait by itself here: a change of journal that meets a reader fails at once.
    """
    give_up = time.monotonic() + BUSY_SECONDS
    while True:
        try:
            cursor.execute("PRAGMA journal_mode = WAL")
        except sqlite3.OperationalError as error:
            locked = error.sqlite_errorcode & 0xFF == sqlite3.SQLITE_BUSY
            if not locked or time.monotonic() > give_up:
                raise
            time.sleep(_PAUSE_SECONDS)
        else:
            return


def _begin(connection: Connection) -> None:
    """Open a transaction; one that writes waits for its turn at once and never fails half way."""
    writes = connection.get_execution_options().get(_WRITES)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
