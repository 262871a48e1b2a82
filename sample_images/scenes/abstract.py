"""An abstract in slate blue and rust on coarse linen that shows through everywhere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import cv2
import numpy as np
from scipy.ndimage import gaussian_filter1d

from sample_images.materials.brush import Brush, PaintLayer, cover
from sample_images.materials.chalk import ChalkSheet
from sample_images.materials.curves import filled, ribbon, spline
from sample_images.materials.grounds import relief, weave
from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, as_u8, blend, ramp, rgb, to_linear, to_srgb

if TYPE_CHECKING:
    from numpy.typing import NDArray

HEIGHT = 1.25
SLATES = [(-2.2, "1f2b3a"), (-1.0, "33475a"), (0.0, "4c647a"), (1.0, "6f879a"), (2.2, "9fb1bb")]
RUSTS = [(-2.2, "331916"), (-1.1, "64291b"), (0.0, "8e3f22"), (1.0, "ab5a2c"), (2.2, "c98a50")]
UMBERS = [(-2.0, "20191c"), (0.0, "3a2523"), (2.0, "6b3b2a")]
CHALKS = [(-2.0, "b9b2a4"), (0.0, "dcd5c5"), (2.0, "f1ebdd")]
INKS = [(-2.0, "141a23"), (0.0, "212b38"), (2.0, "3a4857")]


@dataclass(frozen=True, slots=True)
class Mass:
    """One painted mass: outline in widths, colours, stroke direction, and its paint."""

    outline: list[tuple[float, float]]
    colours: list[tuple[float, str]]
    turn_deg: float
    load: float
    ragged: float = 0.012
    width: float = 0.075
    cell: float = 0.16


MASSES = (
    Mass(
        [(0.035, 0.03), (0.97, 0.04), (0.965, 0.70), (0.52, 0.745), (0.03, 0.72)],
        SLATES,
        4,
        0.46,
        width=0.095,
    ),
    Mass([(0.10, 0.10), (0.50, 0.085), (0.485, 0.52), (0.12, 0.545)], INKS, 86, 0.34, width=0.07),
    Mass(
        [(0.56, 0.16), (0.92, 0.15), (0.915, 0.47), (0.575, 0.455)],
        [(-2, "6b8496"), (0, "93a7b3"), (2, "c3cdd0")],
        -8,
        0.30,
        width=0.08,
    ),
    Mass([(0.03, 0.79), (0.975, 0.755), (0.97, 1.215), (0.04, 1.22)], RUSTS, -3, 0.42, width=0.09),
    Mass(
        [(0.40, 0.60), (0.865, 0.575), (0.88, 1.06), (0.43, 1.075)],
        RUSTS,
        88,
        0.42,
        width=0.06,
        cell=0.09,
    ),
    Mass(
        [(0.02, 0.715), (0.60, 0.690), (0.985, 0.672), (0.985, 0.722), (0.55, 0.748), (0.02, 0.79)],
        CHALKS,
        -2,
        0.30,
        width=0.035,
    ),
    Mass([(0.09, 0.88), (0.31, 0.865), (0.305, 1.09), (0.10, 1.10)], UMBERS, 88, 0.30, width=0.05),
    Mass(
        [(0.475, 0.66), (0.60, 0.655), (0.605, 0.80), (0.48, 0.805)], CHALKS, 84, 0.33, width=0.03
    ),
)


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The picture, 4 wide by 5 high."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    cloth = weave(shape, rng, pitch_px=max(2.5, 7.0 * width_px / 1920))
    sheet = ChalkSheet(_linen(cloth, rng), cloth)
    sheet.smudge(_stain(shape, rng), np.full(shape, 0.62, np.float32) * _edge(shape, rng, 0.02))
    for mass in MASSES:
        _lay_mass(sheet, mass, shape, rng)
    _scrape(sheet, shape, rng)
    colour = _drips(sheet.colour, cloth, rng)
    colour = _scratches(colour, rng)
    colour = _accent(colour, cloth, rng)
    thick = cv2.GaussianBlur(colour.mean(axis=-1), (0, 0), 0.8)
    lighted = relief(colour, 0.75 * cloth + 0.8 * thick, strength=0.55, gloss=0.012)
    return as_u8(lighted)


def _linen(cloth: Field, rng: np.random.Generator) -> Image:
    slub = fractal(cloth.shape, rng, cell=cloth.shape[1] * 0.01, octaves=2, stretch=8)
    tone = 0.72 + 0.40 * cloth + 0.03 * slub
    return np.clip(rgb("b39e7f") * tone[..., None], 0, 1).astype(np.float32)


def _stain(shape: tuple[int, int], rng: np.random.Generator) -> Image:
    bloom = fractal(shape, rng, cell=shape[1] * 0.22, octaves=6, gain=0.55)
    rows = np.linspace(0, HEIGHT, shape[0], dtype=np.float32)[:, None]
    low = smoothstep(0.62, 0.86, rows + 0.03 * bloom)
    return blend(ramp(bloom * 0.8 - 0.4, SLATES), ramp(bloom * 0.8 - 0.5, RUSTS), low)


def _edge(shape: tuple[int, int], rng: np.random.Generator, inset: float) -> Field:
    y, x = (axis.astype(np.float32) / shape[1] for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    near = np.minimum(np.minimum(x, 1 - x), np.minimum(y, HEIGHT - y))
    ragged = 0.008 * fractal(shape, rng, cell=shape[1] * 0.05, octaves=5, gain=0.6)
    return smoothstep(inset - 0.006, inset + 0.010, near + ragged)


def _lay_mass(
    sheet: ChalkSheet, mass: Mass, shape: tuple[int, int], rng: np.random.Generator
) -> None:
    width = shape[1]
    unit = width / 1920
    mottle = fractal(shape, rng, cell=width * mass.cell, octaves=6, gain=0.62)
    target = ramp(mottle, mass.colours)
    where = _ragged(shape, mass, rng)
    bend = 0.10 * fractal(shape, rng, cell=width * 0.3, octaves=2)
    angle = (np.deg2rad(mass.turn_deg) + bend).astype(np.float32)
    for scale, pressure, chance in (
        (1.0, mass.load + 0.06, 1.0),
        (0.5, mass.load - 0.06, 0.55),
        (0.22, mass.load - 0.16, 0.28),
    ):
        knife = Brush(
            mass.width * scale * width,
            mass.width * scale * width * 4.2,
            hair_px=2.4 * unit,
            spacing=0.66,
            tone_spread=4.0 / scale**0.3,
            hue_spread=3.0,
            streak=2.6,
            stop_at=60,
            wet=0.25,
            wander=0.06,
            body=1.0,
        )
        layer = PaintLayer(sheet.colour)
        cover(layer, target, angle, knife, rng, where=where * chance)
        sheet.press(layer, pressure)


def _ragged(shape: tuple[int, int], mass: Mass, rng: np.random.Generator) -> Field:
    width = shape[1]
    inner = np.array(mass.outline)
    middle = inner.mean(axis=0)
    shrink = np.clip(1 - 0.55 * mass.width / np.abs(inner - middle).max(axis=0), 0.2, 1)
    outline = middle + (inner - middle) * shrink
    warp = (mass.ragged * width * fractal(shape, rng, cell=width * 0.05, octaves=4)).astype(
        np.float32
    )
    y, x = (axis.astype(np.float32) for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    return cv2.remap(filled(shape, outline * width), x + warp, y + warp, cv2.INTER_LINEAR)


def _scrape(sheet: ChalkSheet, shape: tuple[int, int], rng: np.random.Generator) -> None:
    """A dry knife drags pale and dark paint over the high threads in a few long pulls."""
    width = shape[1]
    pulls = (
        ([(0.05, 0.618), (0.40, 0.610), (0.88, 0.632)], 0.085, "a9b7bf", 0.24),
        ([(0.95, 0.215), (0.75, 0.235), (0.55, 0.225)], 0.100, "dcdcd3", 0.20),
        ([(0.60, 0.330), (0.75, 0.325), (0.93, 0.345)], 0.045, "c9d0d0", 0.12),
        ([(0.165, 0.12), (0.170, 0.32), (0.160, 0.52)], 0.090, "55708a", 0.16),
        ([(0.40, 0.50), (0.405, 0.32), (0.395, 0.11)], 0.055, "3f566b", 0.18),
        ([(0.93, 1.150), (0.45, 1.135), (0.06, 1.155)], 0.085, "bf7a43", 0.18),
        ([(0.80, 0.60), (0.805, 0.80), (0.80, 1.04)], 0.095, "c78547", 0.18),
        ([(0.66, 1.05), (0.655, 0.93), (0.66, 0.79)], 0.075, "3a2220", 0.20),
        ([(0.11, 0.99), (0.20, 0.985), (0.40, 1.000)], 0.050, "8d4a2b", 0.14),
        ([(0.33, 0.03), (0.60, 0.055), (0.94, 0.05)], 0.050, "8fa3b0", 0.14),
    )
    y, x = (axis.astype(np.float32) / width for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    for points, thick, colour, pressure in pulls:
        layer = PaintLayer(sheet.colour)
        knife = Brush(thick * width, 1.0, hair_px=2.2 * width / 1920, streak=4.0, wet=0.12)
        layer.stroke(spline(points, per_span=24) * width, knife, rgb(colour), rng)
        start, way = np.array(points[0]), np.array(points[-1]) - np.array(points[0])
        along = ((x - start[0]) * way[0] + (y - start[1]) * way[1]) / (way @ way)
        skips = fractal(shape, rng, cell=width * 0.05, octaves=4)
        spent = 1 - smoothstep(0.35, 1.15, along + 0.16 * skips)
        layer.pixels[..., 3] = (layer.pixels[..., 3] * spent).astype(np.uint8)
        sheet.press(layer, pressure)


def _drips(colour: Image, cloth: Field, rng: np.random.Generator) -> Image:
    """Thinned rust and slate that ran down the cloth, darker at their rims."""
    shape = cloth.shape
    width = shape[1]
    film = np.zeros(shape, np.float32)
    for x, top, run in (
        (0.470, 1.05, 0.115),
        (0.503, 1.06, 0.060),
        (0.741, 1.05, 0.135),
        (0.152, 0.53, 0.150),
        (0.173, 0.53, 0.065),
        (0.352, 0.52, 0.180),
    ):
        steps = np.linspace(0, 1, 40)
        sway = np.cumsum(rng.normal(0, 0.0006, 40))
        axis = np.stack([x + sway, top + run * steps], axis=1)
        girth = 0.0030 * (1 - 0.5 * steps) + 0.0030 * np.exp(-(((steps - 0.97) / 0.05) ** 2))
        mask = filled(shape, ribbon(axis, girth) * width, soft_px=width * 0.0006)
        rim = np.clip(mask - cv2.GaussianBlur(mask, (0, 0), width * 0.0016), 0, 1)
        film = np.maximum(film, 0.55 * mask + 0.9 * rim)
    rows = np.arange(shape[0])[:, None] / width
    rust = (rows > 0.8).astype(np.float32) * np.ones(shape, np.float32)
    pigment = blend(np.broadcast_to(rgb("33475a"), colour.shape), rgb("8a3d1c"), rust)
    absorbance = -np.log(np.clip(to_linear(pigment), 0.01, 1))
    depth = film * (1.15 - 0.5 * cloth)
    return to_srgb(to_linear(colour) * np.exp(-absorbance * depth[..., None]))


def _scratches(colour: Image, rng: np.random.Generator) -> Image:
    """Lines cut through wet paint with the end of a brush, and one ruled in graphite."""
    shape = colour.shape[:2]
    width = shape[1]
    for points, tone, thick in (
        ([(0.590, 0.405), (0.72, 0.411), (0.88, 0.399)], "2b3844", 0.0020),
        ([(0.255, 0.115), (0.262, 0.30), (0.250, 0.535)], "93a9b8", 0.0018),
        ([(0.285, 0.12), (0.290, 0.31), (0.284, 0.44)], "93a9b8", 0.0012),
        ([(0.46, 0.90), (0.62, 0.888), (0.85, 0.900)], "e2b98a", 0.0016),
        ([(0.02, 0.742), (0.50, 0.722), (0.98, 0.700)], "2a2c33", 0.0018),
    ):
        line = spline(points, per_span=60)
        sway = gaussian_filter1d(rng.normal(0, 0.004, line.shape), 9.0, axis=0)
        line = line + sway
        along = np.linspace(0, 1, len(line))
        girth = thick * np.clip(0.8 + 0.5 * np.sin(along * 9 + rng.uniform(0, 6)), 0.2, 1.3)
        mask = filled(shape, ribbon(line, girth) * width, soft_px=0.6)
        colour = blend(colour, rgb(tone), mask * 0.85)
    return colour


def _accent(colour: Image, cloth: Field, rng: np.random.Generator) -> Image:
    """One small block of warm ochre where the two halves meet."""
    shape = cloth.shape
    width = shape[1]
    block = np.array([(0.612, 0.640), (0.668, 0.634), (0.672, 0.690), (0.616, 0.697)])
    warp = fractal(shape, rng, cell=width * 0.02, octaves=3)
    mask = smoothstep(0.4, 0.75, filled(shape, block * width, soft_px=width * 0.004) + 0.06 * warp)
    streaks = fractal(shape, rng, cell=width * 0.004, octaves=3, stretch=14)
    paint_tone = ramp(streaks, [(-2, "c98a1f"), (0, "e3a832"), (2, "f3c765")])
    return blend(colour, paint_tone, mask * smoothstep(0.02, 0.4, cloth + 0.12 * streaks))
