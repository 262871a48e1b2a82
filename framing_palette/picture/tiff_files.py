"""TIFF files of 8, 16 and 32 bits, decoded to a :class:`Photograph` without losing depth."""

import logging
from pathlib import Path
from typing import Any

import numpy as np

from framing_palette.errors import PictureFileError
from framing_palette.picture.label_files import label_in_tiff
from framing_palette.picture.limits import refuse_too_many_pixels
from framing_palette.picture.photographs import Ink, Photograph
from framing_palette.picture.still_files import CODEC_FAULTS

_INKS = {
    "MINISWHITE": Ink.GREY,
    "MINISBLACK": Ink.GREY,
    "RGB": Ink.RGB,
    "PALETTE": Ink.RGB,
    "SEPARATED": Ink.CMYK,
    "YCBCR": Ink.RGB,
}
_ASSOCIATED_ALPHA, _UNASSOCIATED_ALPHA = 1, 2
logging.getLogger("tifffile").addHandler(logging.NullHandler())  # faults are told in a sentence

# No others: the decoders of rarer ones have been seen to bring the whole program down on a file
# with turned bytes, and no camera or scanner program writes a colour photograph that way.
_COMPRESSIONS = frozenset(
    ["NONE", "LZW", "DEFLATE", "ADOBE_DEFLATE", "PACKBITS", "JPEG", "OJPEG", "JPEG_LOSSY"]
)
_JPEG_COMPRESSIONS = ("OJPEG", "JPEG", "JPEG_LOSSY")


def decode_tiff(path: Path) -> Photograph:
    """Return the first picture of a TIFF file.

    Raises
    ------
    PictureFileError
        When it cannot be decoded, is too large, or stores colour in a way that is not read.
    """
    import tifffile

    try:
        with tifffile.TiffFile(path) as file:
            return _decode(file, path)
    except PictureFileError:
        raise
    except (*CODEC_FAULTS, tifffile.TiffFileError) as fault:
        raise PictureFileError(
            path,
            problem="starts like a TIFF picture but is damaged or cut short",
            todo="copy it again from the camera or scanner, or save it anew",
        ) from fault


def _decode(file: Any, path: Path) -> Photograph:
    page = file.pages[0]
    width, height = int(page.imagewidth), int(page.imagelength)
    ink = _ink(page, path)
    refuse_too_many_pixels(path, width, height, bytes_each=-(-page.nbytes // (width * height)))
    packing = page.compression.name
    if packing not in _COMPRESSIONS:
        raise PictureFileError(
            path,
            problem=f"is a TIFF picture with {packing} compression, which is not read",
            todo="save it again without compression, or with LZW or ZIP",
        )
    samples = _channels_last(page.asarray(), page.axes)
    if samples.ndim != 3:
        raise _unread(path, f"{samples.ndim} dimensions")
    if page.photometric.name == "PALETTE":
        samples = _palette(page)[samples[..., 0]]
    extra = tuple(int(kind) for kind in page.extrasamples)
    alpha = bool(extra) and extra[0] in (_ASSOCIATED_ALPHA, _UNASSOCIATED_ALPHA)
    samples = samples[..., : ink.channels + alpha]
    if samples.shape[-1] != ink.channels + alpha:
        raise _unread(path, f"{samples.shape[-1]} channels")
    peak = _peak(page, samples)
    if page.photometric.name == "MINISWHITE":
        samples = _turned_over(samples, peak)
    several = len(file.pages) > 1 and file.pages[1].shape == page.shape
    return Photograph(
        samples=samples,
        ink=ink,
        peak=peak,
        full_width_px=width,
        full_height_px=height,
        transparent=alpha,
        premultiplied=alpha and extra[0] == _ASSOCIATED_ALPHA,
        profile=bytes(page.iccprofile or b""),
        orientation=_orientation(page),
        label=label_in_tiff(page),
        notices=("The file holds several pictures; the first one is used.",) if several else (),
    )


def _ink(page: Any, path: Path) -> Ink:
    name = page.photometric.name
    if name not in _INKS:
        raise _unread(path, f"colour stored as {name}")
    if name == "YCBCR" and page.compression.name not in _JPEG_COMPRESSIONS:
        raise _unread(path, "colour stored as YCbCr")
    return _INKS[name]


def _channels_last(samples: Any, axes: str) -> Any:
    if axes.startswith("S"):
        return np.moveaxis(samples, 0, -1)
    return samples if axes.endswith("S") else samples[..., np.newaxis]


def _palette(page: Any) -> Any:
    """Return the colours of the palette, shape (colours, 3), 0 to 255.

    Writers disagree about the low byte of its 16 bits, and some fill only that one.
    """
    colours = np.moveaxis(page.colormap, 0, -1)
    return colours if colours.max(initial=0) <= 255 else colours >> 8


def _peak(page: Any, samples: Any) -> float:
    """Return the value of full scale; floats count from 0 to 1."""
    if page.photometric.name == "PALETTE":
        return 255.0
    if np.issubdtype(samples.dtype, np.floating):
        return 1.0
    bits = page.bitspersample
    return float(2 ** int(bits[0] if isinstance(bits, tuple) else bits) - 1)


def _turned_over(samples: Any, peak: float) -> Any:
    if samples.dtype == np.bool_:
        return ~samples
    return samples.dtype.type(peak) - samples


def _orientation(page: Any) -> int:
    tag = page.tags.get(274)
    return int(tag.value) if tag is not None and int(tag.value) in range(1, 9) else 1


def _unread(path: Path, what: str) -> PictureFileError:
    return PictureFileError(
        path,
        problem=f"is a TIFF picture with {what}, which is not read",
        todo="save it as an RGB, grey or CMYK TIFF",
    )
