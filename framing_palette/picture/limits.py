"""How large a picture file may be, said in words when one is larger."""

from pathlib import Path

from framing_palette.errors import PictureFileError

MAX_FILE_BYTES = 1_000_000_000
MAX_PIXELS = 150_000_000
MAX_DECODED_BYTES = 1_250_000_000
"""150 megapixels of three 16-bit channels with transparency just fit."""


def refuse_too_large_file(path: Path, size_bytes: int) -> None:
    """Refuse a file above the limit on bytes.

    Raises
    ------
    PictureFileError
        Naming the size and the limit.
    """
    if size_bytes > MAX_FILE_BYTES:
        raise PictureFileError(
            path,
            problem=f"has {size_bytes / 1e6:,.0f} MB, more than the {MAX_FILE_BYTES / 1e6:,.0f} MB "
            "that are read",
            todo="save it smaller or as a JPEG",
        )


def refuse_too_many_pixels(path: Path, width: int, height: int, *, bytes_each: int) -> None:
    """Refuse a picture above the limits on pixels and on memory, before it is decoded.

    Raises
    ------
    PictureFileError
        Naming the size and the limit, or that there are no pixels at all.
    """
    if width < 1 or height < 1:
        raise PictureFileError(path, problem="has no pixels", todo="choose another file")
    if width * height > MAX_PIXELS or width * height * bytes_each > MAX_DECODED_BYTES:
        raise PictureFileError(
            path,
            problem=f"has {width} x {height} pixels, more than the {MAX_PIXELS // 1_000_000} "
            "million that are read",
            todo="reduce it; 2000 pixels on the long side are plenty",
        )
