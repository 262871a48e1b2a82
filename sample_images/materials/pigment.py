"""Colour values of the painter: mixing, laying over, glazing."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np
from numpy.typing import ArrayLike, NDArray

from sample_images.materials.curves import drawn, filled, patch

if TYPE_CHECKING:
    from collections.abc import Sequence

Image = NDArray[np.float32]


def rgb(code: str) -> Image:
    """Encoded sRGB 0..1 of a six-digit hexadecimal colour."""
    return np.array([int(code[i : i + 2], 16) for i in (0, 2, 4)], np.float32) / 255


def to_linear(srgb: ArrayLike) -> Image:
    """Linear light of encoded sRGB 0..1 (IEC 61966-2-1)."""
    value = np.asarray(srgb, np.float32)
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4).astype(
        np.float32
    )


def to_srgb(linear: ArrayLike) -> Image:
    """Encoded sRGB 0..1 of linear light (IEC 61966-2-1), clipped."""
    value = np.clip(np.asarray(linear, np.float32), 0, 1)
    return np.where(
        value <= 0.0031308, value * 12.92, 1.055 * value ** np.float32(1 / 2.4) - 0.055
    ).astype(np.float32)


def to_lab(srgb: Image) -> Image:
    """L, a, b (D65, working space of the brushes only) of an (h, w, 3) picture 0..1."""
    return cv2.cvtColor(np.ascontiguousarray(srgb, np.float32), cv2.COLOR_RGB2Lab)


def from_lab(lab: Image) -> Image:
    """Inverse of `to_lab`, clipped to 0..1."""
    return np.clip(cv2.cvtColor(np.ascontiguousarray(lab, np.float32), cv2.COLOR_Lab2RGB), 0, 1)


def blend(below: Image, above: ArrayLike, mask: NDArray[np.float32]) -> Image:
    """`above` laid over `below` with coverage `mask` (h, w)."""
    return below + (np.asarray(above, np.float32) - below) * mask[..., None]


def lay(
    picture: Image,
    colour: ArrayLike,
    outline: ArrayLike,
    *,
    soft_px: float = 0.0,
    strength: float = 1.0,
) -> None:
    """Paint a closed outline (pixels) onto `picture` in place, touching only its patch."""
    part, local = patch(picture.shape, outline, 4 * soft_px + 2)
    below = picture[part]
    if below.size:
        picture[part] = blend(
            below, colour, filled(below.shape[:2], local, soft_px=soft_px) * strength
        )


def lay_line(
    picture: Image, colour: ArrayLike, line: ArrayLike, thickness: int, *, strength: float = 1.0
) -> None:
    """Draw an open line (pixels) onto `picture` in place, touching only its patch."""
    part, local = patch(picture.shape, line, thickness + 2)
    below = picture[part]
    if below.size:
        picture[part] = blend(below, colour, drawn(below.shape[:2], local, thickness) * strength)


def softened(picture: Image, sigma_px: float) -> Image:
    """Gaussian blur; wide ones are done on a reduced copy, which no eye can tell apart."""
    factor = int(sigma_px // 4)
    if factor < 2 or min(picture.shape[:2]) < 8 * factor:
        return cv2.GaussianBlur(picture, (0, 0), sigma_px)
    rows, columns = picture.shape[:2]
    small = cv2.resize(picture, (columns // factor, rows // factor), interpolation=cv2.INTER_AREA)
    small = cv2.GaussianBlur(small, (0, 0), sigma_px / factor)
    return cv2.resize(small, (columns, rows), interpolation=cv2.INTER_LINEAR)


def ramp(position: NDArray[np.float32], stops: Sequence[tuple[float, str]]) -> Image:
    """Colours along `position`, given as (place, hexadecimal) stops."""
    places = [place for place, _ in stops]
    colours = np.stack([rgb(code) for _, code in stops])
    channels = [np.interp(position, places, colours[:, i]) for i in range(3)]
    return np.stack(channels, axis=-1).astype(np.float32)


def glaze(below_linear: Image, pigment: ArrayLike, depth: NDArray[np.float32]) -> Image:
    """A transparent film over linear light: each unit of `depth` multiplies by `pigment`.

    Beer and Lambert's law: absorbances add, so two films darken and stay clean.
    """
    absorbance = -np.log(np.clip(to_linear(pigment), 0.004, 1))
    return below_linear * np.exp(-absorbance * depth[..., None])


def as_u8(srgb: Image) -> NDArray[np.uint8]:
    """Encoded sRGB 0..1 as bytes."""
    return np.round(np.clip(srgb, 0, 1) * 255).astype(np.uint8)
