"""Grounds and their relief: woven canvas, toothed paper, and the light that shows them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.noise import Field, fractal, grain
from sample_images.materials.pigment import Image, to_linear, to_srgb

if TYPE_CHECKING:
    from numpy.typing import NDArray


def weave(shape: tuple[int, int], rng: np.random.Generator, *, pitch_px: float) -> Field:
    """Height 0..1 of a plain weave whose threads are `pitch_px` apart, slubs included."""
    rows, columns = shape
    y, x = np.mgrid[0:rows, 0:columns].astype(np.float32)
    x = x + 0.35 * pitch_px * fractal(shape, rng, cell=pitch_px * 30, octaves=3)
    y = y + 0.35 * pitch_px * fractal(shape, rng, cell=pitch_px * 30, octaves=3)
    u, v = x / pitch_px, y / pitch_px
    warp = np.abs(np.sin(np.pi * u)) ** 0.7 * _thread_girth(columns, u, rng)
    weft = np.abs(np.sin(np.pi * v)) ** 0.7 * _thread_girth(rows, v, rng)
    over = 0.5 + 0.5 * np.tanh(3 * np.sin(np.pi * (u + 0.5)) * np.sin(np.pi * (v + 0.5)))
    height = warp * (0.35 + 0.65 * over) + weft * (0.35 + 0.65 * (1 - over))
    height += 0.06 * grain(shape, rng, blur_px=0.8)
    low, high = np.percentile(height, (1, 99))
    return np.clip((height - low) / (high - low), 0, 1).astype(np.float32)


def _thread_girth(count: int, index: Field, rng: np.random.Generator) -> Field:
    girth = 1 + 0.22 * rng.standard_normal(count + 8)
    return np.clip(girth, 0.5, 1.6)[np.clip(index.astype(int) + 4, 0, count + 7)].astype(np.float32)


def tooth(shape: tuple[int, int], rng: np.random.Generator, *, pitch_px: float) -> Field:
    """Height 0..1 of a felted paper whose grain is about `pitch_px` wide."""
    coarse = fractal(shape, rng, cell=pitch_px * 2.2, octaves=3, gain=0.65)
    fibre = fractal(shape, rng, cell=pitch_px * 0.9, octaves=2, stretch=2.5)
    height = coarse + 0.35 * fibre
    return np.clip(0.5 + 0.22 * height, 0, 1).astype(np.float32)


def relief(
    srgb: Image,
    height: NDArray[np.float32],
    *,
    strength: float,
    gloss: float = 0.0,
    light_deg: float = 225.0,
) -> Image:
    """The picture under raking light from `light_deg` (225 is the upper left)."""
    smooth = cv2.GaussianBlur(height, (0, 0), 0.8)
    gx = cv2.Sobel(smooth, cv2.CV_32F, 1, 0, ksize=3)
    gy = cv2.Sobel(smooth, cv2.CV_32F, 0, 1, ksize=3)
    turn = np.deg2rad(light_deg)
    slope = -(gx * np.cos(turn) + gy * np.sin(turn))
    slope = np.tanh(slope * strength)
    linear = to_linear(srgb) * (1 + 0.55 * slope)[..., None]
    shine = gloss * np.clip(slope, 0, None) ** 2
    return to_srgb(linear + shine[..., None])
