"""Writing a picture: 16 bits a channel, in a wide space with its profile inside.

The space has the primaries and white of ROMM RGB (ISO 22028-2) with a plain power of 1.8, so that
no colour of a real surface is cut off.
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
from framing_palette.picture.pictures import Picture
from framing_palette.whole_files import write_whole

ENDINGS: Final = (".png", ".tif", ".tiff")
POWER: Final = 1.8
# ISO 22028-2: chromaticities of red, green, blue, and D50.
_PRIMARIES: Final = ((0.7347, 0.2653), (0.1596, 0.8404), (0.0366, 0.0001))
_WHITE_XY: Final = (0.3457, 0.3585)
_PNG_HEADER_END: Final = 33  # signature and IHDR


def write_picture_file(path: Path, picture: Picture) -> Path:
    """Write a picture as a 16-bit PNG or TIFF with its profile, and return its path.

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
    if ending == ".png":
        return write_whole(path, _png(values))
    return write_whole(path, _tiff(values))


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
    """Return the space's ICC profile."""
    import imagecodecs

    profile = imagecodecs.cms_profile(
        "rgb",
        whitepoint=[*_WHITE_XY, 1.0],
        primaries=[value for x, y in _PRIMARIES for value in (x, y, 1.0)],
        gamma=POWER,
    )
    return bytes(profile)


def _png(values: "np.typing.NDArray[np.uint16]") -> bytes:
    import cv2

    done, encoded = cv2.imencode(".png", values[..., ::-1], [cv2.IMWRITE_PNG_COMPRESSION, 4])
    if not done:
        raise ValueError(values.shape)
    content = bytes(encoded)
    body = b"Framing Palette wide\x00\x00" + zlib.compress(wide_profile())
    chunk = struct.pack(">I", len(body)) + b"iCCP" + body
    chunk += struct.pack(">I", zlib.crc32(b"iCCP" + body))
    return content[:_PNG_HEADER_END] + chunk + content[_PNG_HEADER_END:]


def _tiff(values: "np.typing.NDArray[np.uint16]") -> bytes:
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
    )
    return stream.getvalue()
