"""From millions of stored samples to a working picture, averaged as light averages."""

from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float32Array
from framing_palette.picture.photographs import Ink, Photograph
from framing_palette.picture.resampling import as_float32, resized

STAND_IN_GAMMA = 2.2
"""Stands in for the file's tone curve while pixels are averaged; even areas come out exact."""

_TABLE_STEPS = 1 << 16
STRIP_SAMPLES = 6_000_000  # keeps each float copy under 25 MB


def reduced(photograph: Photograph, *, max_side: int) -> tuple[Float32Array, float]:
    """Return device values in 0..1, upright and at most `max_side` long, and the clipped share.

    Pixels are averaged over exact areas, in light for grey and RGB and in ink cover for CMYK, so
    that fine contrast neither darkens nor brightens. Transparent parts lie on white.

    Parameters
    ----------
    photograph
        As decoded.
    max_side
        Longest side of the result, in pixels; a smaller photograph keeps its size.

    Returns
    -------
    samples
        Shape (rows, columns, channels) without transparency, float32.
    clipped_share
        Share of stored pixels, 0..1, with a colour channel at either end.
    """
    rows, columns, channels = photograph.samples.shape
    scale = min(1.0, max_side / max(rows, columns))
    out_rows, out_columns = max(1, round(rows * scale)), max(1, round(columns * scale))
    strip_rows = max(1, STRIP_SAMPLES // (columns * channels))
    narrow = np.empty((rows, out_columns, photograph.ink.channels), dtype=np.float32)
    clipped = 0
    for start in range(0, rows, strip_rows):
        part = photograph.samples[start : start + strip_rows]
        clipped += _clipped_pixels(part, photograph)
        narrow[start : start + strip_rows] = resized(
            _in_light(part, photograph), part.shape[0], out_columns
        )
    light = resized(narrow, out_rows, out_columns)
    samples = upright(_from_light(light, photograph.ink), photograph.orientation)
    return samples, clipped / (rows * columns)


def upright(samples: Float32Array, orientation: int) -> Float32Array:
    """Return samples turned as the EXIF orientation (1 to 8) asks; any other number is 1."""
    if orientation in (5, 6, 7, 8):
        samples = samples.swapaxes(0, 1)
    if orientation in (2, 3, 6, 7):
        samples = samples[:, ::-1]
    if orientation in (3, 4, 7, 8):
        samples = samples[::-1]
    return np.ascontiguousarray(samples)


def _in_light(part: NDArray[Any], photograph: Photograph) -> Float32Array:
    """Return a strip of samples as linear values 0..1, laid on white where transparent."""
    channels = photograph.ink.channels
    gamma = 1.0 if photograph.ink is Ink.CMYK else STAND_IN_GAMMA
    if not photograph.transparent:
        return _curved(part, photograph.peak, gamma)
    opacity = _curved(part[..., channels:], photograph.peak, 1.0)
    paper = np.float32(0 if photograph.ink is Ink.CMYK else 1)
    if photograph.premultiplied:
        colours = _curved(part[..., :channels], photograph.peak, 1.0)
        light = _curved(colours / np.maximum(opacity, np.float32(1e-6)), 1.0, gamma)
    else:
        light = _curved(part[..., :channels], photograph.peak, gamma)
    return as_float32(light * opacity + paper * (1 - opacity))


def _curved(part: NDArray[Any], peak: float, gamma: float) -> Float32Array:
    """Return (part / peak) ** gamma within 0..1, from a table where samples are whole numbers."""
    if np.issubdtype(part.dtype, np.floating):
        values = np.nan_to_num(as_float32(part) / np.float32(peak), nan=0.0, posinf=1.0)
        return as_float32(np.clip(values, 0, 1) ** np.float32(gamma))
    if peak > _TABLE_STEPS:  # 32-bit whole numbers: a table would fill the memory
        return as_float32((part / peak) ** gamma)
    steps = np.arange(int(peak) + 1, dtype=np.float64)
    table = ((steps / peak) ** gamma).astype(np.float32)
    return table.take(part, mode="clip")


def _from_light(light: Float32Array, ink: Ink) -> Float32Array:
    if ink is Ink.CMYK:
        return light
    np.clip(light, 0, 1, out=light)  # it is the last to need it, and new memory costs as much
    return as_float32(cv2.pow(light, 1 / STAND_IN_GAMMA, dst=light)).reshape(light.shape)


def _clipped_pixels(part: NDArray[Any], photograph: Photograph) -> int:
    if photograph.ink is Ink.CMYK:  # bare paper and full ink are ordinary there
        return 0
    channels = photograph.ink.channels
    hit = np.zeros(part.shape[:2], dtype=bool)
    for channel in range(channels):  # one after another: numpy is slow over a short last axis
        one = part[..., channel]
        hit |= (one <= 0) | (one >= photograph.peak)
    return int(np.count_nonzero(hit))
