"""Files written whole or not at all, so that an older one is never half overwritten."""

import os
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
