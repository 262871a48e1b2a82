"""The photograph as its file stores it: device values, before any of it is a colour."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from numpy.typing import NDArray


class Ink(StrEnum):
    """What the channels of a photograph stand for."""

    GREY = "grey"
    RGB = "rgb"
    CMYK = "cmyk"

    @property
    def channels(self) -> int:
        """Number of channels without transparency."""
        return {Ink.GREY: 1, Ink.RGB: 3, Ink.CMYK: 4}[self]


@dataclass(frozen=True, slots=True, eq=False)
class Photograph:
    """Decoded samples in file order, not yet turned upright.

    Parameters
    ----------
    samples
        Shape (rows, columns, channels), unsigned integers or floats; transparency, when present,
        is the last channel.
    ink
        What the other channels stand for; CMYK counts ink, so 0 is bare paper.
    peak
        The sample value that means 1.
    transparent
        True when the last channel is opacity.
    premultiplied
        True when the colours are already multiplied by the opacity.
    profile
        The embedded ICC profile; empty when there is none.
    orientation
        EXIF orientation, 1 to 8.
    full_width_px, full_height_px
        Size stored in the file, before any reduction by the decoder and before turning.
    notices
        Sentences worth telling.
    colour_source
        Where the colours come from, when not from a profile in the file; for the trust's words.
    label
        What the file says of its scale and colour error, unchecked; empty when it says nothing.
    """

    samples: NDArray[Any]
    ink: Ink
    peak: float
    full_width_px: int
    full_height_px: int
    transparent: bool = False
    premultiplied: bool = False
    profile: bytes = b""
    orientation: int = 1
    notices: tuple[str, ...] = ()
    colour_source: str = ""
    label: bytes = b""

    @property
    def is_turned(self) -> bool:
        """True when turning upright swaps width and height."""
        return self.orientation in (5, 6, 7, 8)
