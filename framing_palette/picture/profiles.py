"""ICC profiles: from device values to CIELAB through LittleCMS, in floating point throughout."""

import functools

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.picture.photographs import Ink

SPACES = {b"GRAY": Ink.GREY, b"RGB ": Ink.RGB, b"CMYK": Ink.CMYK}
CLASSES = (b"scnr", b"mntr", b"prtr", b"spac")
HEADER_BYTES = 128
_LCMS_NAMES = {Ink.GREY: "gray", Ink.RGB: "rgb", Ink.CMYK: "cmyk"}
_RELATIVE_COLORIMETRIC = 1


class ProfileFault(ValueError):  # noqa: N818 - a fact for the reader to put into its sentence
    """A profile cannot be used; the message says why, as the end of a sentence."""


def checked_space(profile: bytes) -> Ink:
    """Return the kind of device that a profile describes.

    Raises
    ------
    ProfileFault
        When it is no profile, or of a class or space that pictures do not have.

    References
    ----------
    ICC.1:2022, Image technology colour management, section 7.2 (profile header).
    """
    if len(profile) <= HEADER_BYTES or profile[36:40] != b"acsp":
        raise ProfileFault("an embedded colour profile that is broken")
    if int.from_bytes(profile[:4], "big") > len(profile):
        raise ProfileFault("an embedded colour profile that is cut short")
    if profile[12:16] not in CLASSES:
        raise ProfileFault("an embedded colour profile of a class that is not meant for pictures")
    if profile[16:20] not in SPACES:
        raise ProfileFault("an embedded colour profile for a colour space that pictures seldom use")
    return SPACES[profile[16:20]]


def profile_name(profile: bytes) -> str:
    """Return the profile's own description, or "unnamed" when it has none that can be read."""
    import io

    from PIL import ImageCms

    try:
        opened = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        name = ImageCms.getProfileDescription(opened).strip()
    except (OSError, ImageCms.PyCMSError, TypeError, ValueError):
        name = ""
    return name or "unnamed"


def to_lab_d50(samples: Float32Array, ink: Ink, profile: bytes) -> Float32Array:
    """Return CIELAB D50 from device values through the profile, relative colorimetric.

    Parameters
    ----------
    samples
        Shape (rows, columns, channels), 0..1, CMYK as ink cover.
    ink
        What the channels stand for. A grey picture with an RGB profile is taken as R = G = B.
    profile
        The embedded ICC profile.

    Raises
    ------
    ProfileFault
        When the profile is broken or does not fit the channels.

    References
    ----------
    LittleCMS 2 (M. Maria), reached through imagecodecs; ICC.1:2022 for the meaning.
    """
    import imagecodecs

    device = checked_space(profile)
    if device is Ink.RGB and ink is Ink.GREY:
        samples, ink = np.repeat(samples, 3, axis=-1), Ink.RGB
    if device is not ink:
        raise ProfileFault(f"{ink} pixels but an embedded colour profile for {device}")
    if ink is Ink.GREY:
        samples = samples[..., 0]
    try:
        lab = imagecodecs.cms_transform(
            np.ascontiguousarray(samples * 100 if ink is Ink.CMYK else samples),
            profile,
            lab_profile(),
            colorspace=_LCMS_NAMES[ink],
            planar=False,
            outcolorspace="lab",
            outdtype="float32",
            intent=_RELATIVE_COLORIMETRIC,
        )
    except (RuntimeError, ValueError) as fault:
        raise ProfileFault("an embedded colour profile that is broken") from fault
    return np.asarray(lab, dtype=np.float32)


@functools.cache
def lab_profile() -> bytes:
    """Return an ICC profile whose device values are CIELAB D50 themselves."""
    from PIL import ImageCms

    return ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()
