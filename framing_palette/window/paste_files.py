"""A pasted picture, kept as a file so that a job can hold it."""

from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QImage

from framing_palette.errors import OutputError
from framing_palette.whole_files import write_whole


def keep_pasted(image: QImage, folder: Path | None = None) -> Path:
    """Write an image from the clipboard to this user's own cache and return its path.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    folder = folder or _cache_folder()
    path = folder / f"pasted-{datetime.now(tz=UTC):%Y%m%d-%H%M%S}.png"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise _unwritable(path) from error
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not image.save(buffer, "PNG"):  # type: ignore[call-overload]  # it takes plain text
        raise _unwritable(path)
    return write_whole(path, bytes(buffer.data().data()), private=True)  # a client's art


def _cache_folder() -> Path:
    from platformdirs import user_cache_path

    return user_cache_path("framing-palette", appauthor=False) / "pasted"


def _unwritable(path: Path) -> OutputError:
    return OutputError(
        path,
        problem="cannot be written",
        todo="save the picture to a file yourself and open that",
    )
