"""Files written whole or not at all, and read whole or not at all.

An older file is never half overwritten; a file that is endless or huge is refused before it fills
the memory.
"""

import errno
import os
import stat
from pathlib import Path
from tempfile import NamedTemporaryFile

from framing_palette.errors import OutputError


def write_whole(path: Path, content: bytes, *, private: bool = False) -> Path:
    """Write a file beside its place, then move it there, and return its path.

    Parameters
    ----------
    path
        Where it ends up; its folder must exist.
    content
        All of it.
    private
        Readable by its owner alone, and on the disk before the older file goes: for what names a
        client.

    Raises
    ------
    OutputError
        When it cannot be written; what was there before is still there.
    """
    part: Path | None = None
    try:
        with NamedTemporaryFile(dir=path.parent, prefix=".", suffix=".part", delete=False) as file:
            part = Path(file.name)  # created readable by its owner alone
            file.write(content)
            file.flush()
            if private:
                os.fsync(file.fileno())
        if not private:
            part.chmod(0o644)
        part.replace(path)
    except OSError as error:
        if part is not None:
            part.unlink(missing_ok=True)
        raise OutputError(
            path,
            problem=f"cannot be written ({error.strerror or error})",
            todo="choose a folder that exists and that you may write to",
        ) from error
    return path


def read_whole(path: Path, most_bytes: int) -> bytes:
    """Return all of an ordinary file that is not larger than it may be.

    Raises
    ------
    OSError
        When it is missing, unreadable, a folder, a device or a pipe, or larger; its ``strerror``
        says so in plain words.
    """
    check_ordinary(path)
    with path.open("rb") as file:
        content = file.read(most_bytes + 1)
    if len(content) > most_bytes:
        raise OSError(errno.EFBIG, f"it has more than {most_bytes:,} bytes", str(path))
    return content


def check_ordinary(path: Path) -> None:
    """Refuse what can be opened like a file but may never end: a device, a pipe, a socket.

    Raises
    ------
    OSError
        When it is no ordinary file; its ``strerror`` says so in plain words.
    """
    mode = path.stat().st_mode
    if stat.S_ISDIR(mode):
        raise IsADirectoryError(errno.EISDIR, "it is a folder", str(path))
    if not stat.S_ISREG(mode):
        raise OSError(errno.EINVAL, "it is no ordinary file", str(path))
