"""Papers and drawings on their way to the disc, whole or not at all."""

from pathlib import Path
from tempfile import NamedTemporaryFile

from framing_palette.errors import OutputError


def write_paper(path: Path, content: bytes) -> Path:
    """Write a paper so that an earlier one is never half overwritten, and return its path.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    part: Path | None = None
    try:
        with NamedTemporaryFile(dir=path.parent, prefix=".", suffix=".part", delete=False) as file:
            part = Path(file.name)
            file.write(content)
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


def paper_folder(path: Path) -> Path:
    """Make a folder for papers if it is not there, and return it.

    Raises
    ------
    OutputError
        When it cannot be made.
    """
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be made ({error.strerror or error})",
            todo="choose a folder that you may write to",
        ) from error
    return path
