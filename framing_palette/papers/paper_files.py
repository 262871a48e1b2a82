"""Papers and drawings on their way to the disc, whole or not at all."""

from pathlib import Path

from framing_palette.errors import OutputError
from framing_palette.whole_files import write_whole


def write_paper(path: Path, content: bytes) -> Path:
    """Write a paper so that an earlier one is never half overwritten, and return its path.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    return write_whole(path, content)


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
