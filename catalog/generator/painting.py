"""From fields to tiles: grey relief or mixed colours, in few levels so that files stay small."""

import numpy as np
from numpy.typing import NDArray

from .noise import Field, unit

Bytes = NDArray[np.uint8]

# Bradford D50 -> D65 and XYZ -> linear sRGB in one matrix pair (IEC 61966-2-1, CIE 15).
_XYZ_D50 = np.array([0.96422, 1.0, 0.82521])
_XYZ_D50_TO_SRGB = np.array(
    [
        [3.1338561, -1.6168667, -0.4906146],
        [-0.9787684, 1.9161415, 0.0334540],
        [0.0719453, -0.2289914, 1.4052427],
    ]
)


def lch_to_lab(lch: Field) -> Field:
    """CIELAB from lightness, chroma and hue in degrees."""
    hue = np.radians(lch[..., 2])
    return np.stack([lch[..., 0], lch[..., 1] * np.cos(hue), lch[..., 1] * np.sin(hue)], axis=-1)


def lab_to_linear(lab: Field) -> Field:
    """Linear sRGB, not clipped, of D50 CIELAB."""
    fy = (lab[..., 0] + 16) / 116
    f = np.stack([fy + lab[..., 1] / 500, fy, fy - lab[..., 2] / 200], axis=-1)
    xyz = np.where(f > 6 / 29, f**3, 3 * (6 / 29) ** 2 * (f - 4 / 29)) * _XYZ_D50
    return xyz @ _XYZ_D50_TO_SRGB.T


def linear_to_lab(linear: Field) -> Field:
    """D50 CIELAB of linear sRGB."""
    xyz = np.maximum(linear @ np.linalg.inv(_XYZ_D50_TO_SRGB).T, 0) / _XYZ_D50
    f = np.where(xyz > (6 / 29) ** 3, np.cbrt(xyz), xyz / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.stack(
        [116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])],
        axis=-1,
    )


def lab_to_bytes(lab: Field) -> Bytes:
    """8-bit sRGB, colours outside the gamut clipped."""
    linear = np.clip(lab_to_linear(lab), 0, 1)
    encoded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    return np.round(encoded * 255).astype(np.uint8)


def bytes_to_lab(srgb: Bytes) -> Field:
    """D50 CIELAB of 8-bit sRGB."""
    encoded = srgb.astype(float) / 255
    linear = np.where(encoded <= 0.04045, encoded / 12.92, ((encoded + 0.055) / 1.055) ** 2.4)
    return linear_to_lab(linear)


def within_gamut(lab: Field) -> Field:
    """The colour with its chroma drawn in until sRGB can show it."""
    for keep in np.linspace(1, 0, 51):
        tried = lab * [1, keep, keep]
        linear = lab_to_linear(tried)
        if linear.min() >= -1e-4 and linear.max() <= 1.0001:
            return tried
    return lab * [1, 0, 0]


def relief_tile(tone: Field, contrast: float, step: int = 2) -> Bytes:
    """Grey tile around 128: one deviation is `contrast` levels; tails are bent, not cut."""
    shape = unit(tone)
    bent = 3.2 * np.tanh(shape / 3.2)
    levels = np.round((bent - bent.mean()) * contrast / step) * step
    tile = np.clip(128 + levels, 0, 255)
    return np.clip(np.round(tile - (tile.mean() - 128)), 0, 255).astype(np.uint8)


def mix(colours_lab: Field, weights: Field, tone: Field) -> Field:
    """Lab picture of weighted colours with a tone in L* on top."""
    picture = np.tensordot(weights, colours_lab, axes=(0, 0))
    picture[..., 0] = np.clip(picture[..., 0] + tone - tone.mean(), 2, 99)
    return picture


def few_colours(lab: Field, count: int) -> Bytes:
    """8-bit picture of at most `count` colours (median cut, no dither): a third of the bytes."""
    from PIL import Image

    image = Image.fromarray(lab_to_bytes(lab), "RGB")
    reduced = image.quantize(count, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
    return np.asarray(reduced.convert("RGB"))


def measured_palette(tile: Bytes, seeds_lab: Field, rounds: int = 12) -> tuple[Field, Field]:
    """Mean Lab and share of the tile's colours, grown from the intended ones (k-means)."""
    pixels = bytes_to_lab(tile).reshape(-1, 3)
    centres = seeds_lab.copy()
    for _ in range(rounds):
        distance = ((pixels[:, None, :] - centres[None]) ** 2).sum(-1)
        nearest = distance.argmin(1)
        for index in range(len(centres)):
            if (nearest == index).any():
                centres[index] = pixels[nearest == index].mean(0)
    shares = np.bincount(nearest, minlength=len(centres)) / len(pixels)
    return centres, shares
