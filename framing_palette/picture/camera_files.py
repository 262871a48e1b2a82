"""HEIC photographs of phones and raw files of cameras, through two optional packages."""

from pathlib import Path
from typing import Any

import numpy as np

from framing_palette.colour import srgb_to_linear
from framing_palette.errors import PictureFileError
from framing_palette.picture.limits import refuse_too_many_pixels
from framing_palette.picture.photographs import Ink, Photograph
from framing_palette.picture.still_files import CODEC_FAULTS

ROMM_PRIMARIES = (0.7347, 0.2653, 0.1596, 0.8404, 0.0366, 0.0001)
"""Chromaticities of ROMM RGB (ISO 22028-2), the widest space that the raw decoder offers."""

D50_WHITE, D65_WHITE = (0.3457, 0.3585), (0.3127, 0.3290)

P3_CODE = 12
P3_PRIMARIES = (0.680, 0.320, 0.265, 0.690, 0.150, 0.060)
"""Display P3, as coding-independent code points name it (ITU-T H.273, colour primaries 12)."""

CURVE_STEPS = 4096


def decode_heic(path: Path) -> Photograph:
    """Return the main picture of a HEIC or HEIF file; the decoder turns it upright itself.

    Raises
    ------
    PictureFileError
        When the optional package is missing, or the file cannot be decoded or is too large.
    """
    try:
        import pillow_heif
    except ImportError as missing:
        raise _extra_missing(path, "HEIC", "heic", "a JPEG") from missing
    try:
        file = pillow_heif.open_heif(path, convert_hdr_to_8bit=False)
        width, height = file.size
        refuse_too_many_pixels(path, width, height, bytes_each=8)
        samples = np.asarray(file)
        transparent = bool(file.has_alpha)
    except PictureFileError:
        raise
    except CODEC_FAULTS as fault:
        raise _damaged(path, "HEIC") from fault
    return Photograph(
        samples=samples if samples.ndim == 3 else samples[..., np.newaxis],
        ink=Ink.GREY if samples.ndim == 2 else Ink.RGB,
        peak=float(np.iinfo(samples.dtype).max),
        full_width_px=width,
        full_height_px=height,
        transparent=transparent,
        premultiplied=bool(file.premultiplied_alpha),
        profile=bytes(file.info.get("icc_profile") or _profile_of_code(file.info)),
    )


def decode_raw(path: Path, *, max_side: int) -> Photograph:
    """Return a camera raw file developed with the camera's white balance and nothing else.

    Raises
    ------
    PictureFileError
        When the optional package is missing, or the file cannot be decoded or is too large.
    """
    try:
        import rawpy
    except ImportError as missing:
        raise _extra_missing(path, "camera raw", "raw", "a TIFF") from missing
    import imagecodecs

    try:
        with rawpy.imread(str(path)) as raw:
            width, height = raw.sizes.width, raw.sizes.height
            refuse_too_many_pixels(path, width, height, bytes_each=8)
            samples = raw.postprocess(
                half_size=max(width, height) >= 2 * max_side,
                use_camera_wb=True,
                no_auto_bright=True,
                output_color=rawpy.ColorSpace.ProPhoto,
                output_bps=16,
                gamma=(1, 1),
            )
            turned = raw.sizes.flip in (5, 6)
    except PictureFileError:
        raise
    except (*CODEC_FAULTS, rawpy.LibRawError) as fault:
        raise _damaged(path, "camera raw") from fault
    return Photograph(
        samples=samples,
        ink=Ink.RGB,
        peak=65535.0,
        full_width_px=height if turned else width,
        full_height_px=width if turned else height,
        profile=bytes(
            imagecodecs.cms_profile(
                "rgb", whitepoint=D50_WHITE, primaries=ROMM_PRIMARIES, gamma=1.0
            )
        ),
        notices=("The raw file is developed with the camera's own white balance.",),
        colour_source="the camera maker's figures in the raw file",
    )


def _profile_of_code(info: dict[str, Any]) -> bytes:
    """Return a profile for colours that the file names by code only, or nothing for sRGB's."""
    import imagecodecs

    code = info.get("nclx_profile") or {}
    if code.get("color_primaries") != P3_CODE:
        return b""
    greys = np.linspace(0, 1, CURVE_STEPS)[:, np.newaxis].repeat(3, axis=1)
    return bytes(
        imagecodecs.cms_profile(
            "rgb",
            whitepoint=D65_WHITE,
            primaries=P3_PRIMARIES,
            transferfunction=np.round(srgb_to_linear(greys)[:, 0] * 65535).astype(np.uint16),
        )
    )


def _extra_missing(path: Path, kind: str, extra: str, instead: str) -> PictureFileError:
    return PictureFileError(
        path,
        problem=f"is a {kind} picture and the package that reads those is not installed",
        todo=f"install framing-palette[{extra}], or save the picture as {instead}",
    )


def _damaged(path: Path, kind: str) -> PictureFileError:
    return PictureFileError(
        path,
        problem=f"starts like a {kind} picture but is damaged or cut short",
        todo="copy it again from the camera or phone",
    )
