"""Evening sky over the estuary, and the water that mirrors it."""

from __future__ import annotations

import cv2
import numpy as np

from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, blend, ramp, rgb

HEIGHT = 0.7
HORIZON = 0.318


def sky_over(x: Field, y: Field, rng: np.random.Generator) -> Image:
    shape = x.shape
    up = np.clip((HORIZON - y) / HORIZON, 0, 1)
    base = ramp(
        up,
        [
            (0.0, "eeb27a"),
            (0.10, "e6a481"),
            (0.24, "c5938f"),
            (0.42, "877f9c"),
            (0.66, "4f5f89"),
            (1.0, "263b66"),
        ],
    )
    cool = ramp(up, [(0.0, "b3939c"), (0.2, "8681a0"), (0.5, "566390"), (1.0, "22365f")])
    side = smoothstep(0.25, 0.95, x + 0.05 * fractal(shape, rng, cell=x.shape[1] * 0.3))
    sky = blend(base, cool, side)
    glow = np.exp(-(((x - 0.24) / 0.20) ** 2) - ((y - HORIZON) / 0.085) ** 2)
    sky = blend(sky, rgb("ffdc9a"), glow.astype(np.float32) * 0.95)
    return _clouds(sky, x, y, up, rng)


def _clouds(sky: Image, x: Field, y: Field, up: Field, rng: np.random.Generator) -> Image:
    width = x.shape[1]
    tilt = y + 0.10 * (x - 0.4) * up
    for height, depth, level in ((0.055, 0.036, 0.1), (0.135, 0.050, -0.1), (0.215, 0.030, 0.25)):
        lumps = fractal(x.shape, rng, cell=width * 0.075, octaves=5, stretch=4.5, gain=0.55)
        band = np.exp(-(((tilt - height) / depth) ** 2))
        body = smoothstep(level, level + 0.9, lumps + 1.5 * band - 0.6)
        below = np.roll(body, -round(width * 0.011), axis=0)
        warm = rgb("f0a778") * (1 - up[..., None] * 0.55) + rgb("c98ba0") * up[..., None] * 0.55
        warmth = np.clip(body - below, 0, 1) * np.exp(-(((x - 0.25) / 0.42) ** 2))
        shade = ramp(up, [(0.0, "a67c86"), (0.35, "6f6a8a"), (1.0, "374a76")])
        sky = blend(sky, shade, body * 0.62)
        sky = blend(sky, warm, warmth * 0.95)
    return sky


def water_under(sky: Image, x: Field, y: Field, rng: np.random.Generator) -> Image:
    rows, width = x.shape
    depth = np.clip((y - HORIZON) / (HEIGHT - HORIZON), 0, 1)
    ripple = fractal(x.shape, rng, cell=width * 0.03, octaves=4, stretch=6)
    look = HORIZON - (y - HORIZON) * 0.82 + 0.035 * ripple * depth
    row = np.clip(look * width, 0, rows - 1).astype(np.float32)
    column = np.clip((x + 0.01 * ripple * depth) * width, 0, width - 1).astype(np.float32)
    mirror = cv2.remap(sky, column, row, cv2.INTER_LINEAR)
    deep = ramp(depth, [(0.0, "8c86a0"), (0.3, "4a5a7e"), (0.65, "2a4164"), (1.0, "182b48")])
    water = blend(mirror, deep, 0.30 + 0.48 * depth)
    swell = fractal(x.shape, rng, cell=width * 0.045, octaves=4, stretch=5)
    crest = smoothstep(0.5, 1.6, swell + 0.5 * ripple) * (0.25 + 0.5 * depth)
    path = np.exp(-(((x - 0.235 - 0.06 * depth) / (0.075 + 0.09 * depth)) ** 2))
    water = blend(
        water,
        rgb("f3b97f"),
        path * (0.25 + 0.75 * smoothstep(-0.1, 0.9, swell)) * 0.72 * (1 - 0.55 * depth),
    )
    water = blend(water, rgb("8f9cba"), crest * (1 - path))
    trough = smoothstep(0.5, 1.6, -swell - 0.4 * ripple) * (0.2 + 0.55 * depth)
    return blend(water, rgb("14253f"), trough)
