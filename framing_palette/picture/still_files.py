"""JPEG, PNG, WebP, AVIF, GIF and BMP files, decoded to a :class:`Photograph`."""

import struct
import zlib
from pathlib import Path
from typing import Any

import numpy as np

from framing_palette.errors import PictureFileError
from framing_palette.picture.label_files import label_in_png
from framing_palette.picture.limits import refuse_too_many_pixels
from framing_palette.picture.photographs import Ink, Photograph

CODEC_FAULTS = (
    OSError,
    ValueError,
    SyntaxError,
    EOFError,
    LookupError,
    TypeError,
    AttributeError,
    RuntimeError,
    MemoryError,
    ArithmeticError,
    struct.error,
    zlib.error,
)
"""What image decoders raise on a file that is cut short or damaged."""

_ORIENTATION = 0x0112
_INKS = {"L": Ink.GREY, "LA": Ink.GREY, "RGB": Ink.RGB, "RGBA": Ink.RGB, "CMYK": Ink.CMYK}
_PLAIN_MODES = {"1": "L", "P": "RGB", "PA": "RGBA", "RGBX": "RGB", "YCbCr": "RGB"}


def decode_still(path: Path, kind: str, *, max_side: int) -> Photograph:
    """Return a picture file's samples.

    A JPEG much larger than `max_side` is decoded at a half, a quarter or an eighth of its size,
    which its own block transform offers, so that memory stays small.

    Parameters
    ----------
    path
        The file.
    kind
        "JPEG", "PNG", "WebP", "AVIF", "GIF" or "BMP", as its first bytes say.
    max_side
        The longest side that is wanted in the end, in pixels.

    Raises
    ------
    PictureFileError
        When it cannot be decoded or is too large.
    """
    from PIL import Image

    try:
        with path.open("rb") as stream:
            return _decode(stream, path, kind, max_side)
    except PictureFileError:
        raise
    except (*CODEC_FAULTS, Image.DecompressionBombError) as fault:
        raise PictureFileError(
            path,
            problem=f"starts like a {kind} picture but is damaged or cut short",
            todo="copy it again from the camera or scanner, or save it anew",
        ) from fault


def _decode(stream: Any, path: Path, kind: str, max_side: int) -> Photograph:
    image = _plugin(kind)(stream)
    width, height = image.size
    notices = []
    if getattr(image, "n_frames", 1) > 1 and kind != "JPEG":
        notices.append("The file holds several pictures; the first one is used.")
    deep = kind == "PNG" and _png_bits(stream) == 16
    refuse_too_many_pixels(path, width, height, bytes_each=8 if deep else 4)
    profile = image.info.get("icc_profile") or b""
    label = label_in_png(stream) if deep else b""
    orientation = _orientation(image)
    if kind == "JPEG":
        image.draft(image.mode, (_draft_side(width, height, max_side)))
    samples, ink, transparent, peak = (
        _deep_png(stream) if deep else _eight_bit_samples(image, path, kind)
    )
    return Photograph(
        samples=samples,
        ink=ink,
        peak=peak,
        full_width_px=width,
        full_height_px=height,
        transparent=transparent,
        profile=bytes(profile),
        orientation=orientation,
        notices=tuple(notices),
        label=label,
    )


def _plugin(kind: str) -> Any:
    """Return the decoder class itself, which leaves the limit on pixels to this program."""
    from PIL import (
        AvifImagePlugin,
        BmpImagePlugin,
        GifImagePlugin,
        JpegImagePlugin,
        PngImagePlugin,
        WebPImagePlugin,
    )

    return {
        "JPEG": JpegImagePlugin.JpegImageFile,
        "PNG": PngImagePlugin.PngImageFile,
        "WebP": WebPImagePlugin.WebPImageFile,
        "AVIF": AvifImagePlugin.AvifImageFile,
        "GIF": GifImagePlugin.GifImageFile,
        "BMP": BmpImagePlugin.BmpImageFile,
    }[kind]


def _draft_side(width: int, height: int, max_side: int) -> tuple[int, int]:
    scale = min(1.0, max_side / max(width, height))
    return max(1, int(width * scale)), max(1, int(height * scale))


def _orientation(image: Any) -> int:
    try:
        found = image.getexif().get(_ORIENTATION, 1)
    except CODEC_FAULTS:  # a damaged note beside the picture does not damage the picture
        return 1
    return found if found in range(1, 9) else 1


def _png_bits(stream: Any) -> int:
    position = stream.tell()
    stream.seek(24)  # the bit depth in the IHDR chunk
    bits = stream.read(1)[0]
    stream.seek(position)
    return int(bits)


def _deep_png(stream: Any) -> tuple[Any, Ink, bool, float]:
    """Decode 16-bit PNG, which Pillow would cut to 8 bits."""
    import imagecodecs

    stream.seek(0)
    samples = imagecodecs.png_decode(stream.read())
    if samples.ndim == 2:
        samples = samples[..., np.newaxis]
    channels = samples.shape[2]
    ink = Ink.GREY if channels <= 2 else Ink.RGB
    return samples, ink, channels in (2, 4), float(np.iinfo(samples.dtype).max)


def _eight_bit_samples(image: Any, path: Path, kind: str) -> tuple[Any, Ink, bool, float]:
    mode = image.mode
    if "transparency" in image.info:
        image = image.convert("LA" if mode in ("1", "L") else "RGBA")
    elif mode in _PLAIN_MODES:
        image = image.convert(_PLAIN_MODES[mode])
    if image.mode not in _INKS:
        raise PictureFileError(
            path,
            problem=f"is a {kind} picture with pixels of the kind {mode}, which is not read",
            todo="save it as an RGB JPEG, PNG or TIFF",
        )
    samples = np.asarray(image)
    if samples.ndim == 2:
        samples = samples[..., np.newaxis]
    return samples, _INKS[image.mode], image.mode in ("LA", "RGBA"), 255.0
