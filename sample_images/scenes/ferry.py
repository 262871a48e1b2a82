"""A ferry lit at dusk on an estuary, in broken strokes of oil."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.brush import Brush, PaintLayer, along_edges, cover, detail
from sample_images.materials.curves import filled, spline
from sample_images.materials.grounds import relief, weave
from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, as_u8, blend, lay, rgb
from sample_images.scenes.ferry_boat import (
    WATERLINE,
    Light,
    hull_outline,
    paint_boat,
    paint_buoy,
    paint_posts,
)
from sample_images.scenes.ferry_weather import HEIGHT, HORIZON, sky_over, water_under

if TYPE_CHECKING:
    from numpy.typing import NDArray


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The picture, 10 wide by 7 high."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    y, x = (axis.astype(np.float32) / width_px for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    sky = sky_over(x, y, rng)
    water = water_under(sky, x, y, rng)
    target = np.where((y < HORIZON)[..., None], sky, water)
    target = _shores(target, x, rng)
    lamps = paint_boat(target, rng)
    target = _reflections(target, lamps, x, y, rng)
    paint_posts(target)
    paint_buoy(target)
    flow = _direction(x, y, rng)
    level = np.maximum(
        _box(x, y, (0.295, 0.600), (0.264, 0.336)), _box(x, y, (0.27, 0.68), (WATERLINE, 0.60))
    )
    angle = along_edges(flow, target, max(1.0, width_px / 700), pull=60.0, where=1 - level)
    layer = _painted(target, angle, x, y, rng)
    return as_u8(_finished(layer, rng))


def _shores(target: Image, x: Field, rng: np.random.Generator) -> Image:
    width = x.shape[1]
    far = spline(
        [
            (0.40, 0.321),
            (0.50, 0.306),
            (0.60, 0.297),
            (0.70, 0.301),
            (0.80, 0.283),
            (0.90, 0.274),
            (1.02, 0.279),
        ]
    )
    near = spline([(0.66, 0.326), (0.74, 0.315), (0.82, 0.309), (0.90, 0.301), (1.02, 0.293)])
    spit = spline([(-0.02, 0.302), (0.06, 0.305), (0.13, 0.313), (0.20, 0.319)])
    target = np.ascontiguousarray(target)
    for line, floor, colour in (
        (far, 0.321, "7d7b9b"),
        (near, 0.329, "4a5379"),
        (spit, 0.322, "64607f"),
    ):
        outline = np.vstack([line, [(line[-1, 0], floor), (line[0, 0], floor)]]) * width
        lay(target, rgb(colour), outline, soft_px=width * 0.0008)
        below = outline * (1, -0.8) + (0, floor * 1.8 * width)
        lay(target, rgb(colour), below, soft_px=width * 0.004, strength=0.45)
    for _ in range(26):
        _shore_lamp(target, rng)
    return target


def _shore_lamp(target: Image, rng: np.random.Generator) -> None:
    width = target.shape[1]
    place = np.array([rng.uniform(0.70, 0.99), 0.322])
    place[1] -= rng.uniform(0.0, 0.014) * np.clip((place[0] - 0.66) / 0.24, 0, 1)
    dot = place + 0.0016 * rng.uniform(0.6, 1.3) * np.array([(-1, 0), (0, -1), (1, 0), (0, 1)])
    tone = rgb(str(rng.choice(["ffd08a", "ffe3b5", "f6b36b"])))
    lay(target, tone, dot * width)
    tail = np.array([(place[0], 0.328), (place[0], 0.328 + rng.uniform(0.006, 0.03))])
    dabs = np.vstack([tail - np.array([0.0012, 0]), tail[::-1] + np.array([0.0012, 0])])
    lay(target, tone, dabs * width, soft_px=width * 0.001, strength=0.4)


def _reflections(
    target: Image, lamps: list[Light], x: Field, y: Field, rng: np.random.Generator
) -> Image:
    width = x.shape[1]
    ripple = fractal(x.shape, rng, cell=width * 0.012, octaves=3, stretch=5)
    outline = hull_outline()
    house = np.array([(0.30, 0.286), (0.47, 0.262), (0.55, 0.262), (0.61, 0.335)])
    shade = np.zeros(x.shape, np.float32)
    for shape_points in (outline, house):
        mirrored = shape_points * (1, -1.05) + (0, WATERLINE * 2.05)
        shade = np.maximum(shade, filled(x.shape, mirrored * width, soft_px=width * 0.0025))
    bent = cv2.remap(
        shade,
        np.clip(x * width + ripple * width * 0.006, 0, width - 1).astype(np.float32),
        np.clip(y * width, 0, x.shape[0] - 1).astype(np.float32),
        cv2.INTER_LINEAR,
    )
    below = smoothstep(WATERLINE - 0.001, WATERLINE + 0.001, y)
    target = blend(target, rgb("1a2440"), bent * below * 0.8)
    wake = np.exp(-(((y - WATERLINE - 0.0015 - 0.02 * np.clip(0.29 - x, 0, 1)) / 0.0032) ** 2))
    wake *= smoothstep(0.08, 0.30, x) * (1 - smoothstep(0.645, 0.665, x))
    target = blend(target, rgb("e6c9b4"), (wake * smoothstep(-0.8, 0.8, ripple)).astype(np.float32))
    for lamp in lamps:
        _lay_trail(target, lamp, rng)
    return target


def _lay_trail(target: Image, lamp: Light, rng: np.random.Generator) -> None:
    """Short level dabs under a lamp, wider apart and fainter toward the viewer."""
    width = target.shape[1]
    y = WATERLINE + 0.30 * (WATERLINE - lamp.y) + rng.uniform(0, 0.006)
    reach = 0.10 + rng.uniform(0, 0.085)
    end = y + reach
    while y < end:
        near = (y - WATERLINE) / 0.2
        half = lamp.w * (0.9 + 1.6 * near) * rng.uniform(0.6, 1.4)
        tall = 0.0011 + 0.0022 * near
        place = (lamp.x + rng.normal(0, 0.0016 + 0.005 * near), y)
        dab = np.array([(-half, 0), (0, -tall), (half, 0), (0, tall)]) + place
        fade = (1 - (y - end + reach) / reach) ** 0.6
        soft = max(0.6, width * 0.0005)
        lay(target, rgb(lamp.colour), dab * width, soft_px=soft, strength=fade * 0.95)
        y += (0.0042 + 0.011 * near) * rng.uniform(0.7, 1.5)


def _direction(x: Field, y: Field, rng: np.random.Generator) -> Field:
    width = x.shape[1]
    waves = fractal(x.shape, rng, cell=width * 0.09, octaves=3, stretch=2)
    sky = -0.22 + 0.30 * (x - 0.3) + 0.33 * waves
    near = np.clip((y - HORIZON) / (HEIGHT - HORIZON), 0, 1)
    water = (0.05 + 0.13 * near) * waves
    return np.where(y < HORIZON, sky, water).astype(np.float32)


def _painted(
    target: Image, angle: Field, x: Field, y: Field, rng: np.random.Generator
) -> PaintLayer:
    width = x.shape[1]
    stain = fractal(x.shape, rng, cell=width * 0.05)
    ground = np.clip(rgb("8a5d49") + 0.02 * stain[..., None], 0, 1)
    layer = PaintLayer(ground)
    unit = width / 2400
    far = np.exp(-(((y - HORIZON) / 0.022) ** 2)).astype(np.float32)
    fine, finest = (
        detail(target, wide * unit, full_at=limit) for wide, limit in ((24, 16), (9, 9))
    )
    fine, finest = np.maximum(fine, 0.3 * far), smoothstep(0.25, 0.9, finest)
    passes = (
        (
            Brush(
                50 * unit,
                230 * unit,
                hair_px=3.8 * unit,
                tone_spread=2.6,
                hue_spread=4.0,
                stop_at=18,
            ),
            None,
        ),
        (
            Brush(
                30 * unit,
                140 * unit,
                hair_px=3.2 * unit,
                tone_spread=3.2,
                hue_spread=5.0,
                stop_at=13,
                spacing=0.85,
            ),
            np.full(x.shape, 0.45, np.float32),
        ),
        (
            Brush(
                17 * unit,
                80 * unit,
                hair_px=2.8 * unit,
                tone_spread=3.0,
                hue_spread=4.5,
                stop_at=10,
                spacing=0.8,
            ),
            np.clip(0.05 + fine, 0, 1),
        ),
        (
            Brush(
                9 * unit,
                36 * unit,
                hair_px=2.1 * unit,
                tone_spread=2.0,
                hue_spread=3.0,
                stop_at=9,
                spacing=0.7,
                wet=0.05,
                body=0.9,
            ),
            fine * 0.9,
        ),
        (
            Brush(
                5 * unit,
                16 * unit,
                hair_px=1.6 * unit,
                tone_spread=1.0,
                hue_spread=1.5,
                stop_at=8,
                spacing=0.6,
                wet=0.0,
                body=0.9,
                streak=1.2,
            ),
            finest,
        ),
    )
    for brush, where in passes:
        cover(layer, target, angle, brush, rng, where=where)
    return layer


def _finished(layer: PaintLayer, rng: np.random.Generator) -> Image:
    colour = layer.colour
    shape = colour.shape[:2]
    cloth = weave(shape, rng, pitch_px=max(2.0, shape[1] / 2400 * 5.2))
    paint_height = layer.height
    height = paint_height + 0.13 * cloth * (1 - 0.6 * paint_height)
    return relief(colour, height, strength=0.6, gloss=0.03)


def _box(x: Field, y: Field, across: tuple[float, float], down: tuple[float, float]) -> Field:
    inside = (x > across[0]) & (x < across[1]) & (y > down[0]) & (y < down[1])
    return inside.astype(np.float32)
