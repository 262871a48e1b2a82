"""Writing a picture: 16 bits a channel, in a wide space with its profile inside.

A label in the file says its scale and the error of its colours, see ``labels``, so that whoever
reads it later still knows them. The space has the primaries and white of ROMM RGB (ISO 22028-2)
with a plain power of 1.8, so that no colour of a real surface is cut off.
"""

import functools
import struct
import zlib
from pathlib import Path
from typing import Final

import numpy as np

from framing_palette.arrays import Float64Array, FloatArray
from framing_palette.colour import lab_d50_to_xyz_d50
from framing_palette.errors import OutputError
from framing_palette.picture.label_files import LABEL_TAG, png_chunk, png_label_chunk
from framing_palette.picture.labels import digest_of, label_text
from framing_palette.picture.pictures import Picture
from framing_palette.whole_files import write_whole

ENDINGS: Final = (".png", ".tif", ".tiff")
POWER: Final = 1.8
# ISO 22028-2: chromaticities of red, green, blue, and D50.
_PRIMARIES: Final = ((0.7347, 0.2653), (0.1596, 0.8404), (0.0366, 0.0001))
_WHITE_XY: Final = (0.3457, 0.3585)
_PNG_HEADER_END: Final = 33  # signature and IHDR
_DATE: Final = slice(24, 36)  # ICC.1:2022, section 7.2.8
_MADE: Final = (2026, 1, 1, 0, 0, 0)


def write_picture_file(path: Path, picture: Picture) -> Path:
    """Write a picture as a 16-bit PNG or TIFF with its profile and label, and return its path.

    Raises
    ------
    OutputError
        When the ending is neither, or the file cannot be written.
    """
    ending = path.suffix.lower()
    if ending not in ENDINGS:
        raise OutputError(
            path, problem="is no PNG or TIFF by its ending", todo="end it in .png or .tif"
        )
    values = wide_values(picture.lab_d50)
    label = label_text(picture, digest_of(values, wide_profile()))
    if ending == ".png":
        return write_whole(path, _png(values, label))
    return write_whole(path, _tiff(values, label))


def wide_values(lab_d50: FloatArray) -> "np.typing.NDArray[np.uint16]":
    """Return 16-bit values in the wide space, shape as given."""
    linear = np.asarray(lab_d50_to_xyz_d50(lab_d50)) @ _from_xyz().T.astype(lab_d50.dtype)
    encoded = np.clip(linear, 0.0, 1.0) ** (1.0 / POWER)
    return np.asarray(np.rint(encoded * 65535.0), dtype=np.uint16)


@functools.cache
def _from_xyz() -> Float64Array:
    """Return the matrix from XYZ D50 to the linear wide space, from its chromaticities."""
    x, y = np.array(_PRIMARIES).T
    columns = np.stack([x / y, np.ones(3), (1 - x - y) / y])
    white = lab_d50_to_xyz_d50(np.array([100.0, 0.0, 0.0]))
    return np.asarray(np.linalg.inv(columns * np.linalg.solve(columns, white)), np.float64)


@functools.cache
def wide_profile() -> bytes:
    """Return the space's ICC profile, the same bytes every day."""
    import imagecodecs

    profile = imagecodecs.cms_profile(
        "rgb",
        whitepoint=[*_WHITE_XY, 1.0],
        primaries=[value for x, y in _PRIMARIES for value in (x, y, 1.0)],
        gamma=POWER,
    )
    # The library writes today's date into the header.
    return profile[: _DATE.start] + struct.pack(">6H", *_MADE) + profile[_DATE.stop :]


def _png(values: "np.typing.NDArray[np.uint16]", label: str) -> bytes:
    import cv2

    done, encoded = cv2.imencode(".png", values[..., ::-1], [cv2.IMWRITE_PNG_COMPRESSION, 4])
    if not done:
        raise ValueError(values.shape)
    content = bytes(encoded)
    profile = png_chunk(b"iCCP", b"Framing Palette wide\x00\x00" + zlib.compress(wide_profile()))
    chunks = profile + png_label_chunk(label)
    return content[:_PNG_HEADER_END] + chunks + content[_PNG_HEADER_END:]


def _tiff(values: "np.typing.NDArray[np.uint16]", label: str) -> bytes:
    import io

    import tifffile

    stream = io.BytesIO()
    tifffile.imwrite(
        stream,
        values,
        photometric="rgb",
        compression="zlib",
        predictor=True,
        iccprofile=wide_profile(),
        metadata=None,
        extratags=[(LABEL_TAG, "s", len(label) + 1, label, True)],
    )
    return stream.getvalue()
