"""Where a label lies in a picture file: an international text chunk of PNG, a tag of TIFF.

PNG: an uncompressed iTXt chunk with the keyword ``LABEL_KEYWORD``, before the pixels (W3C,
Portable Network Graphics, section on international textual data). TIFF: the tag ``LABEL_TAG`` of
type ASCII, from the range 65000 to 65535 that is left to private use (TIFF 6.0, from memory).
"""

import struct
import zlib
from typing import Any, Final

from framing_palette.picture.labels import MOST_LABEL_BYTES

LABEL_KEYWORD: Final = "Framing Palette label"
LABEL_TAG: Final = 65_204

_PNG_START: Final = 8
_MOST_CHUNKS: Final = 1_000
_LANGUAGE: Final = b"\x00\x00\x00\x00\x00"  # ends the keyword; not compressed, no language given


def png_label_chunk(text: str) -> bytes:
    """Return the chunk that holds a label."""
    return png_chunk(b"iTXt", LABEL_KEYWORD.encode("latin-1") + _LANGUAGE + text.encode())


def png_chunk(kind: bytes, body: bytes) -> bytes:
    """Return a PNG chunk with its length and checksum."""
    return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))


def label_in_png(stream: Any) -> bytes:
    """Return the label of a PNG file, empty when it has none; the stream stays where it was.

    Only chunks before the pixels are looked at. A label that is too long is returned cut one byte
    past the limit, for its reader to refuse.
    """
    position = stream.tell()
    start = LABEL_KEYWORD.encode("latin-1") + _LANGUAGE
    stream.seek(_PNG_START)
    try:
        for _ in range(_MOST_CHUNKS):
            head = stream.read(8)
            if len(head) < 8 or head[4:] in (b"IDAT", b"IEND"):
                return b""
            length = int.from_bytes(head[:4], "big")
            if head[4:] == b"iTXt":
                body = stream.read(min(length, len(start) + MOST_LABEL_BYTES + 1))
                if body.startswith(start):
                    return bytes(body[len(start) :])
                length -= len(body)
            stream.seek(length + 4, 1)
        return b""
    finally:
        stream.seek(position)


def label_in_tiff(page: Any) -> bytes:
    """Return the label of a TIFF page as tifffile has it, empty when it has none."""
    tag = page.tags.get(LABEL_TAG)
    if tag is None:
        return b""
    value = tag.value
    if isinstance(value, str):
        value = value.encode(errors="replace")
    # Any other type is none of ours; said by its reader, as one that is no JSON.
    return value[: MOST_LABEL_BYTES + 1] if isinstance(value, bytes) and value else b"?"
