"""The one door through which a picture file becomes a :class:`Picture` in CIELAB D50.

Limits: 1,000 MB a file, 150 million pixels, 1,250 MB decoded. The limit on pixels is also the
limit on time, since decoding takes time in proportion to them.
"""

from dataclasses import replace
from pathlib import Path

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.colour import srgb_to_lab_d50
from framing_palette.errors import FieldError, PictureFileError
from framing_palette.picture.camera_files import decode_heic, decode_raw
from framing_palette.picture.labels import LabelFault, label_of
from framing_palette.picture.limits import refuse_too_large_file
from framing_palette.picture.photographs import Ink, Photograph
from framing_palette.picture.pictures import ColourTrust, Picture, TrustGrade
from framing_palette.picture.profiles import ProfileFault, profile_name, to_lab_d50
from framing_palette.picture.reduction import reduced
from framing_palette.picture.still_files import decode_still
from framing_palette.picture.tiff_files import decode_tiff
from framing_palette.whole_files import check_ordinary

WORKING_SIDE = 1600
"""Longest side, in pixels, of the picture that everything is measured on."""

RAW_SUFFIXES = frozenset(
    [
        ".3fr",
        ".arw",
        ".cr2",
        ".cr3",
        ".crw",
        ".dcr",
        ".dng",
        ".erf",
        ".iiq",
        ".kdc",
        ".mef",
        ".mos",
        ".mrw",
        ".nef",
        ".nrw",
        ".orf",
        ".pef",
        ".raf",
        ".raw",
        ".rw2",
        ".rwl",
        ".sr2",
        ".srf",
        ".srw",
        ".x3f",
    ]
)
READ_KINDS = "JPEG, PNG, TIFF, WebP, AVIF, HEIC, GIF, BMP or camera raw"
_HEIF_BRANDS = (b"heic", b"heix", b"hevc", b"hevx", b"heim", b"heis", b"mif1", b"msf1")
_MAGIC = (
    (b"\xff\xd8\xff", "JPEG"),
    (b"\x89PNG\r\n\x1a\n", "PNG"),
    (b"II*\x00", "TIFF"),
    (b"MM\x00*", "TIFF"),
    (b"II+\x00", "TIFF"),
    (b"MM\x00+", "TIFF"),
    (b"GIF8", "GIF"),
    (b"BM", "BMP"),
)
_HEAD_BYTES = 32


def read_picture_file(
    path: Path | str,
    *,
    mm_per_px: float | None = None,
    max_side: int = WORKING_SIDE,
) -> Picture:
    """Return the picture in a file: upright, in CIELAB D50, reduced to working size.

    Colours go from the file's values through its own profile in floating point; without a
    profile sRGB is assumed and `colour_trust` says so. A picture that this program wrote brings
    its scale and trust along in its label; a label that cannot be used is said in a notice.

    Parameters
    ----------
    path
        JPEG, PNG, TIFF (8, 16, 32 bit; grey, RGB, palette, CMYK), WebP, AVIF, GIF or BMP; HEIC and
        camera raw with the optional packages.
    mm_per_px
        Millimetres on the art per pixel of the photograph as stored; None takes it from the file's
        own label, if it has one, and otherwise leaves it unknown.
    max_side
        Longest side of the working picture, in pixels.

    Raises
    ------
    PictureFileError
        When the file is missing, empty, not a picture, damaged or too large.
    FieldError
        When `mm_per_px` or `max_side` is not above zero.
    """
    if max_side < 1:
        raise FieldError("max_side", got=max_side, wanted="it must be 1 pixel or more")
    path = Path(path)
    photograph = _decoded(path, max_side)
    samples, clipped_share = reduced(photograph, max_side=max_side)
    lab_d50 = _lab_d50(path, samples, photograph)
    lab_d50.flags.writeable = False
    width, height = photograph.full_width_px, photograph.full_height_px
    picture = Picture(
        lab_d50=lab_d50,
        mm_per_px=None,
        colour_trust=_trust(photograph, clipped_share),
        full_width_px=height if photograph.is_turned else width,
        full_height_px=width if photograph.is_turned else height,
        source=path.name,
        notices=photograph.notices,
    )
    if photograph.label:
        picture = _labelled(picture, photograph)
    return picture if mm_per_px is None else picture.with_full_scale(mm_per_px)


def _labelled(picture: Picture, photograph: Photograph) -> Picture:
    """Return a picture with the scale and trust of its label, or with a notice why not."""
    try:
        label = label_of(photograph.label, photograph.samples, photograph.profile)
    except LabelFault as fault:
        notice = (
            f"The note in {picture.source} about its scale and colour error {fault}, so neither is "
            "taken from it: take the photograph in again."
        )
        return replace(picture, notices=(*picture.notices, notice))
    told = replace(
        picture,
        colour_trust=label.colour_trust,
        notices=(*picture.notices, *label.notices),
    )
    return told if label.mm_per_px is None else told.with_full_scale(label.mm_per_px)


def file_kind(path: Path) -> str:
    """Return what a picture file is by its first bytes ("JPEG", "TIFF", "camera raw", ...).

    Raises
    ------
    PictureFileError
        When it is missing, a folder, unreadable, empty, too large or none of the kinds read.
    """
    head = _head(path)
    if path.suffix.lower() in RAW_SUFFIXES:
        return "camera raw"
    for magic, kind in _MAGIC:
        if head.startswith(magic):
            return kind
    if head[:4] == b"RIFF" and head[8:12] == b"WEBP":
        return "WebP"
    if head[4:8] == b"ftyp":
        if head[8:12] in (b"avif", b"avis"):
            return "AVIF"
        if head[8:12] in _HEIF_BRANDS:
            return "HEIC"
    raise PictureFileError(
        path,
        problem=f"is not a picture, whatever its name says ({READ_KINDS} are read)",
        todo="choose the picture itself",
    )


def _head(path: Path) -> bytes:
    try:
        if path.is_dir():
            raise PictureFileError(path, problem="is a folder", todo="choose a picture in it")
        check_ordinary(path)
        size = path.stat().st_size
        with path.open("rb") as stream:
            head = stream.read(_HEAD_BYTES)
    except FileNotFoundError as missing:
        raise PictureFileError(
            path, problem="does not exist", todo="check the name and the folder"
        ) from missing
    except OSError as fault:
        raise PictureFileError(
            path,
            problem=f"cannot be opened ({fault.strerror or fault})",
            todo="check that you may read it",
        ) from fault
    if not head:
        raise PictureFileError(path, problem="is empty", todo="copy it again from its source")
    refuse_too_large_file(path, size)
    return head


def _decoded(path: Path, max_side: int) -> Photograph:
    kind = file_kind(path)
    if kind == "TIFF":
        return decode_tiff(path)
    if kind == "HEIC":
        return decode_heic(path)
    if kind == "camera raw":
        return decode_raw(path, max_side=max_side)
    return decode_still(path, kind, max_side=max_side)


def _lab_d50(path: Path, samples: Float32Array, photograph: Photograph) -> Float32Array:
    if not photograph.profile:
        return np.asarray(srgb_to_lab_d50(_as_rgb(samples, photograph.ink)), dtype=np.float32)
    try:
        return to_lab_d50(samples, photograph.ink, photograph.profile)
    except ProfileFault as fault:
        raise PictureFileError(
            path,
            problem=f"has {fault}",
            todo="save it again with a sound profile, or without one to have sRGB assumed",
        ) from fault


def _as_rgb(samples: Float32Array, ink: Ink) -> Float32Array:
    if ink is Ink.CMYK:  # ideal inks, for want of a profile; the trust's words say so
        return (1 - samples[..., :3]) * (1 - samples[..., 3:])
    return np.repeat(samples, 3, axis=-1) if ink is Ink.GREY else samples


def _trust(photograph: Photograph, clipped_share: float) -> ColourTrust:
    if photograph.colour_source:
        method = "profile"
        words = (
            f"The colours follow {photograph.colour_source}; nothing in the photograph tells how "
            "far light and camera were off."
        )
    elif photograph.profile:
        method = "profile"
        words = (
            f"The colours follow the file's own profile ({profile_name(photograph.profile)}); "
            "nothing in the photograph tells how far light and camera were off."
        )
    elif photograph.ink is Ink.CMYK:
        method = "assumed"
        words = (
            "The file holds printing inks without a profile, so its colours are a rough guess: "
            "judge only broad families of colour by them."
        )
    else:
        method = "assumed"
        words = (
            "The file names no colour profile, so sRGB is assumed; nothing in the photograph "
            "tells how far light and camera were off."
        )
    return ColourTrust(
        method=method, grade=TrustGrade.UNKNOWN, words=words, clipped_share=clipped_share
    )
