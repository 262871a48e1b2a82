"""The log: what the program did, in words and numbers of its own and nothing of anybody else's.

Only the events below can be written, with numbers; of an error its kind and the places in the
program alone, for its sentence may name a file or a client. Nothing is written before `start_log`.
"""

import logging
import logging.handlers
import os
import time
import traceback
from enum import StrEnum
from io import FileIO, TextIOWrapper
from pathlib import Path
from typing import Final

_LOG: Final = logging.getLogger("framing_palette.log")
_LOG.addHandler(logging.NullHandler())
_LOG.propagate = False  # other people's handlers might print it, and theirs might reach ours
_FILE: Final = "framing-palette.log"
_MOST_BYTES: Final = 500_000
_OLDER_FILES: Final = 4
_PACKAGE: Final = Path(__file__).parent.parent


class Happening(StrEnum):
    """All that can be in the log."""

    STARTED = "started"
    DATABASE_OPENED = "database opened"
    DATABASE_DAMAGED = "database damaged"
    DATABASE_CHANGED_FORM = "database brought to the present form"
    DATABASE_FAILED = "database could not be used"
    BACKUP_TAKEN = "backup taken"
    BACKUP_RESTORED = "backup restored"
    SAVED_ELSEWHERE = "job was changed at another counter"
    CLIENT_ERASED = "client erased"
    REFUSED = "work refused"
    DEFECT = "defect"


class _Quiet(logging.handlers.RotatingFileHandler):
    """Writes for its owner alone, and never stops the program when it cannot write."""

    def handleError(self, record: logging.LogRecord) -> None:  # noqa: N802 - logging calls it
        """Let the line go."""

    def _open(self) -> TextIOWrapper:
        descriptor = os.open(self.baseFilename, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o600)
        return TextIOWrapper(FileIO(descriptor, "a"), encoding="utf-8", errors="replace")


def default_log_folder() -> Path:
    """Return where this computer keeps logs."""
    import platformdirs

    return platformdirs.user_log_path("framing-palette", appauthor=False)


def start_log(folder: Path | None = None) -> Path | None:
    """Write the log to a folder from now on and return its file, None if it cannot be written."""
    folder = folder or default_log_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        handler = _Quiet(folder / _FILE, maxBytes=_MOST_BYTES, backupCount=_OLDER_FILES)
    except OSError:
        return None  # the work goes on without a log
    line = logging.Formatter("%(asctime)sZ %(process)d %(message)s", "%Y-%m-%dT%H:%M:%S")
    line.converter = time.gmtime
    handler.setFormatter(line)
    stop_log()
    _LOG.addHandler(handler)
    _LOG.setLevel(logging.INFO)
    note(Happening.STARTED)
    return folder / _FILE


def stop_log() -> None:
    """Close the log's file."""
    for handler in list(_LOG.handlers):
        if isinstance(handler, _Quiet):
            _LOG.removeHandler(handler)
            handler.close()


def note(happening: Happening, **numbers: float) -> None:
    """Write one line; the numbers are counts, sizes and times."""
    told = "".join(f" {name}={value:g}" for name, value in numbers.items())
    _LOG.info("%s%s", happening.value, told)


def note_error(happening: Happening, error: BaseException) -> None:
    """Write one line of an error: its kind, and where in the program it came from."""
    frames = traceback.extract_tb(error.__traceback__)
    places = [f"{_place(frame.filename)}:{frame.lineno}" for frame in frames]
    number = getattr(error, "errno", None)
    kind = type(error).__name__ + (f" {number}" if isinstance(number, int) else "")
    _LOG.info("%s: %s at %s", happening.value, kind, " ".join(places) or "no place")


def log_tail(folder: Path | None = None, *, most_bytes: int = 200_000) -> str:
    """Return the end of the log, the older file first where the newer is short."""
    folder = folder or default_log_folder()
    text = b""
    for name in (_FILE, *(f"{_FILE}.{number}" for number in range(1, _OLDER_FILES + 1))):
        try:
            with (folder / name).open("rb") as file:
                file.seek(max(0, os.fstat(file.fileno()).st_size - most_bytes))
                text = file.read(most_bytes) + text
        except OSError:
            break
        if len(text) >= most_bytes:
            break
    return text[-most_bytes:].decode("utf-8", "replace")


def _place(file_name: str) -> str:
    """Return a module of ours or of a library, without the folders that lead to it."""
    path = Path(file_name)
    if path.is_relative_to(_PACKAGE):
        return path.relative_to(_PACKAGE.parent).as_posix()
    return path.name
