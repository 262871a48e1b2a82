"""Folders and files that a job's results are written to, whole or not at all."""

from pathlib import Path
from tempfile import NamedTemporaryFile

from framing_palette.errors import OutputError, PictureFileError
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.jobs import PictureFile
from framing_palette.picture.limits import MAX_FILE_BYTES
from framing_palette.whole_files import read_whole


def writable_folder(folder: Path) -> Path:
    """Return the folder, made when missing, after trying that a file can be written there.

    Raises
    ------
    OutputError
        When it cannot be made or written.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(dir=folder, prefix="."):
            return folder
    except OSError as error:
        raise OutputError(
            folder,
            problem=f"cannot be written ({error.strerror or error})",
            todo="choose a folder that you may write to",
        ) from error


def picture_of_file(path: Path) -> tuple[bytes, PictureFile]:
    """Return a photograph's bytes and how a job names them.

    Raises
    ------
    PictureFileError
        When the file cannot be read.
    """
    try:
        content = read_whole(path, MAX_FILE_BYTES)
    except OSError as error:
        raise PictureFileError(
            path,
            problem=f"cannot be read ({error.strerror or error})",
            todo="choose another file",
        ) from error
    return content, PictureFile(path.name, digest(content))
