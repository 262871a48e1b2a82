"""A child's fish in bright poster paint on sugar paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from scipy.ndimage import gaussian_filter1d

from sample_images.materials.brush import Brush, PaintLayer, cover
from sample_images.materials.chalk import ChalkSheet
from sample_images.materials.curves import Points, filled, resampled, spline
from sample_images.materials.grounds import relief, tooth
from sample_images.materials.noise import Field, fractal, grain, smoothstep
from sample_images.materials.pigment import Image, as_u8, ramp, rgb
from sample_images.scenes.fish_shapes import (
    BODY,
    FINS,
    FRIEND,
    GILL,
    INK_LINES,
    SAND,
    STAR,
    STRIPES,
    TAIL,
    WEEDS,
    bubbles,
    scales,
)

if TYPE_CHECKING:
    from numpy.typing import NDArray

HEIGHT = 1485 / 2100


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The picture, in the proportion of an A3 sheet."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    felt = tooth(shape, rng, pitch_px=max(1.0, 3.2 * width_px / 2100))
    table = Table(shape, felt, rng)
    _sea(table)
    _sea_bed(table)
    _weed(table)
    _fish(table)
    _friend(table)
    _small_things(table)
    _splashes(table)
    return as_u8(relief(table.sheet.colour, 0.35 * felt + 0.5 * table.body, strength=0.35))


class Table:
    """The sheet on the table, the brushes beside it, and the thickness of the paint so far."""

    def __init__(self, shape: tuple[int, int], felt: Field, rng: np.random.Generator) -> None:
        self.shape, self.rng = shape, rng
        self.width = shape[1]
        fibre = grain(shape, rng, blur_px=0.8)
        paper = np.clip(
            rgb("f1ece0") + 0.008 * fibre[..., None] + 0.02 * (felt[..., None] - 0.5), 0, 1
        )
        self.sheet = ChalkSheet(paper, felt)
        self.body = np.zeros(shape, np.float32)

    def brush(self, width: float, **changes: float) -> Brush:
        """A hog-hair brush `width` picture widths wide."""
        hair = 2.3 * self.width / 2100
        options = {
            "hair_px": hair,
            "wet": 0.10,
            "streak": 3.4,
            "tone_spread": 2.6,
            "hue_spread": 2.6,
            "stop_at": 16.0,
            "wander": 0.10,
            "spacing": 0.5,
            "body": 1.5,
            **changes,
        }
        return Brush(width * self.width, width * self.width * 4.5, **options)

    def fill(self, target: Image, angle: Field, brush: Brush, where: Field, load: float) -> None:
        """Scrub a shape full of paint."""
        layer = PaintLayer(self.sheet.colour)
        cover(layer, target, angle, brush, self.rng, where=where, within=where * 99)
        self._dry(layer, load)

    def blots(self, places: list[NDArray[np.float64]], size: float, codes: list[str]) -> None:
        """Round irregular drops about `size` picture widths across."""
        outlines, colours = [], []
        for index, place in enumerate(places):
            angles = np.arange(9) * 2 * np.pi / 9
            reach = size * 0.5 * self.rng.uniform(0.6, 1.5) * self.rng.uniform(0.75, 1.15, 9)
            ring = np.stack([np.cos(angles), np.sin(angles)], axis=1) * reach[:, None] + place
            outlines.append(spline(ring, closed=True, per_span=5) * self.width)
            colours.append(rgb(codes[index % len(codes)]))
        self.sheet.dab(outlines, colours, pressure=0.8)

    def sweep(
        self, paths: list[Points], width: float, codes: list[str], load: float, **changes: float
    ) -> None:
        """One stroke along each path (picture widths), colours taken in turn."""
        layer = PaintLayer(self.sheet.colour)
        for index, path in enumerate(paths):
            points = resampled(path, max(8, len(path) // 2)) * self.width
            sway = gaussian_filter1d(self.rng.normal(0, 1, points.shape), 5.0, axis=0)
            points = points + 0.005 * self.width * sway
            tone = np.clip(rgb(codes[index % len(codes)]) + self.rng.normal(0, 0.02, 3), 0, 1)
            layer.stroke(points, self.brush(width, **changes), tone.astype(np.float32), self.rng)
        self._dry(layer, load)

    def _dry(self, layer: PaintLayer, load: float) -> None:
        self.sheet.press(layer, load + 0.10)
        wet = layer.height > 0
        self.body[wet] = 0.4 * self.body[wet] + 0.6 * layer.height[wet]


def _grid(table: Table) -> tuple[Field, Field]:
    rows, columns = table.shape
    y, x = (axis.astype(np.float32) / table.width for axis in np.mgrid[0:rows, 0:columns])
    return x, y


def _mask(table: Table, outline: Points, grow: float = 0.0) -> Field:
    middle = outline.mean(axis=0)
    reach = np.abs(outline - middle).max()
    return filled(table.shape, (middle + (outline - middle) * (1 + grow / reach)) * table.width)


def _sea(table: Table) -> None:
    x, y = _grid(table)
    wave = 0.30 * np.cos(2 * np.pi * x * 2.4 + 5 * y) + 0.10 * fractal(
        table.shape, table.rng, cell=table.width * 0.2, octaves=2
    )
    drift = 0.05 * fractal(table.shape, table.rng, cell=table.width * 0.16, octaves=3)
    target = ramp(
        y / HEIGHT + drift, [(0.0, "7cc4e6"), (0.35, "3f9fd8"), (0.7, "1f74c0"), (1.0, "17529c")]
    )
    away = np.ones(table.shape, np.float32)
    for outline in (BODY, TAIL, FRIEND, STAR, *(fin for fin, _ in FINS)):
        away = np.minimum(away, 1 - _mask(table, outline, 0.012))
    inset = np.minimum(np.minimum(x, 1 - x), np.minimum(y, HEIGHT - y))
    ragged = 0.006 * fractal(table.shape, table.rng, cell=table.width * 0.1, octaves=3)
    room = away * smoothstep(0.018, 0.024, inset + ragged)
    angle = wave.astype(np.float32)
    table.fill(
        target,
        angle,
        table.brush(0.052, tone_spread=4.5, hue_spread=5.0, stop_at=26),
        room * 0.9,
        0.62,
    )
    table.fill(
        target, angle, table.brush(0.034, tone_spread=5.5, hue_spread=5.0), room * 0.42, 0.42
    )
    curls = [
        spline(
            [(u - 0.05, v), (u - 0.02, v - 0.018), (u + 0.015, v + 0.004), (u + 0.05, v - 0.012)],
            per_span=10,
        )
        for u, v in (
            (0.14, 0.085),
            (0.33, 0.06),
            (0.56, 0.085),
            (0.80, 0.06),
            (0.92, 0.14),
            (0.08, 0.22),
        )
    ]
    table.sweep(curls, 0.013, ["d8eef5", "f5fbfa"], 0.50)


def _sea_bed(table: Table) -> None:
    x, _ = _grid(table)
    target = np.broadcast_to(rgb("f0c75a"), (*table.shape, 3)).astype(np.float32)
    flat = 0.12 * np.sin(9 * x) + 0.1 * fractal(
        table.shape, table.rng, cell=table.width * 0.1, octaves=2
    )
    where = _mask(table, SAND)
    table.fill(target, flat.astype(np.float32), table.brush(0.045, tone_spread=4.0), where, 0.62)
    table.fill(
        target, flat.astype(np.float32), table.brush(0.022, tone_spread=6), where * 0.35, 0.45
    )
    places = [
        np.array([table.rng.uniform(0.04, 0.96), table.rng.uniform(0.645, 0.685)])
        for _ in range(80)
    ]
    table.blots(places, 0.011, ["d9892b", "b5652a", "fbe7a0", "e2a03d"])


def _weed(table: Table) -> None:
    for path, thick, codes in WEEDS:
        table.sweep([path], thick, codes[:1], 0.62, streak=5.0)
        leaves = []
        for index in range(8, len(path) - 2, 5):
            sign = 1 if (index // 5) % 2 else -1
            tip = path[index] + np.array([sign * 0.034, -0.024])
            leaves.append(
                spline([path[index], (path[index] + tip) / 2 + (0, 0.006), tip], per_span=8)
            )
        table.sweep(leaves, thick * 0.8, codes, 0.60, streak=5.0)


def _fish(table: Table) -> None:
    x, y = _grid(table)
    lumps = fractal(table.shape, table.rng, cell=table.width * 0.10, octaves=3)
    body = ramp(
        y + 0.03 * lumps, [(0.20, "fbd02c"), (0.34, "f8a51f"), (0.50, "f07a1c"), (0.60, "e8561d")]
    )
    bend = (0.10 * np.sin(8 * x) + 0.9 * (y - 0.36) * (x - 0.40) * 8).astype(np.float32)
    inside = _mask(table, BODY, -0.010)
    table.fill(body, bend, table.brush(0.042, stop_at=40, tone_spread=3.5), inside, 0.66)
    table.fill(body, bend, table.brush(0.024, stop_at=40, tone_spread=4.0), inside * 0.5, 0.5)
    for outline, turn in ((TAIL, 0.0), *FINS):
        fan = np.full(table.shape, turn, np.float32) + 0.25 * np.sin(20 * y + 11 * x)
        red = ramp(lumps, [(-2, "b81f2c"), (0, "dc2f2f"), (2, "f0533a")])
        table.fill(
            red,
            fan.astype(np.float32),
            table.brush(0.026, stop_at=60),
            _mask(table, outline, -0.006),
            0.66,
        )
    for path, thick, code in STRIPES:
        table.sweep([path], thick, [code], 0.64, streak=4.5)
        table.sweep([path + np.array([0.004, 0.003])], thick * 0.6, [code], 0.5, streak=5.0)
    table.sweep(scales(), 0.0075, ["fff0a8", "fde06a"], 0.62)
    rays = [
        spline([(0.765, 0.365), (0.83, v * 0.5 + 0.18), (0.895, v)], per_span=12)
        for v in (0.215, 0.275, 0.345, 0.42, 0.49)
    ]
    table.sweep(rays, 0.0085, ["f9a13a", "fbc54a"], 0.60)
    table.sweep([GILL], 0.014, ["c9252b"], 0.62)
    _face(table)
    for path, thick in INK_LINES:
        table.sweep([path], thick, ["1c2350"], 0.72, streak=2.0, tone_spread=1.0)


def _face(table: Table) -> None:
    def disc(x: float, y: float, radius: float, turns: float) -> Points:
        t = np.linspace(0, turns * 2 * np.pi, 60)
        r = radius * np.linspace(1, 0.15, 60)
        return np.stack([x + r * np.cos(t), y + r * np.sin(t) * 1.05], axis=1)

    table.sweep([disc(0.268, 0.300, 0.034, 3)], 0.020, ["fdfdf8"], 0.85, wet=0.02)
    table.sweep([disc(0.262, 0.303, 0.013, 2)], 0.014, ["15151c"], 0.9, wet=0.0)
    table.blots([np.array([0.256, 0.294])], 0.011, ["ffffff"])
    t = np.linspace(0, 2.04 * np.pi, 60)
    ring = np.stack([0.268 + 0.046 * np.cos(t), 0.300 + 0.048 * np.sin(t)], axis=1)
    lashes = [
        np.linspace(
            (0.240 + i * 0.022, 0.262 - 0.006 * (i == 1)),
            (0.230 + i * 0.025, 0.238 - 0.006 * (i == 1)),
            12,
        )
        for i in range(3)
    ]
    table.sweep([ring], 0.0085, ["1c2350"], 0.72, tone_spread=1.0)
    table.sweep(lashes, 0.007, ["1c2350"], 0.72, tone_spread=1.0)
    smile = spline([(0.168, 0.404), (0.196, 0.428), (0.232, 0.432), (0.262, 0.412)], per_span=14)
    table.sweep([smile], 0.014, ["b3152c"], 0.75)
    cheek = disc(0.292, 0.402, 0.020, 2.5)
    table.sweep([cheek], 0.014, ["f2719b"], 0.55)


def _friend(table: Table) -> None:
    target = np.broadcast_to(rgb("f06fa4"), (*table.shape, 3)).astype(np.float32)
    flat = np.full(table.shape, 0.2, np.float32)
    table.fill(target, flat, table.brush(0.020, stop_at=60), _mask(table, FRIEND, -0.004), 0.66)
    bars = [
        spline([(u, 0.118), (u + 0.008, 0.148), (u, 0.178)], per_span=8) for u in (0.826, 0.852)
    ]
    table.sweep(bars, 0.011, ["7a3fa0"], 0.62)
    table.sweep([np.vstack([FRIEND, FRIEND[:3]])], 0.0075, ["1c2350"], 0.70, tone_spread=1.0)
    table.blots([np.array([0.797, 0.139])], 0.012, ["15151c"])


def _small_things(table: Table) -> None:
    target = np.broadcast_to(rgb("8a4fb5"), (*table.shape, 3)).astype(np.float32)
    flat = np.full(table.shape, 0.8, np.float32)
    table.fill(target, flat, table.brush(0.014, stop_at=60), _mask(table, STAR), 0.7)
    table.sweep([np.vstack([STAR, STAR[:3]])], 0.0075, ["1c2350"], 0.78, tone_spread=1.0)
    middle = STAR.mean(axis=0)
    spots = [
        middle + 0.022 * np.array([np.cos(a), np.sin(a)]) for a in np.arange(5) * 1.2566 - 1.57
    ]
    table.blots([middle, *spots], 0.012, ["fbd02c"])
    rings, lights = bubbles()
    table.sweep(rings, 0.0085, ["f4fbfb", "dff3f7"], 0.62)
    table.sweep(lights, 0.007, ["ffffff"], 0.8)


def _splashes(table: Table) -> None:
    """Drops that fell off the brush on the way."""
    places = [
        np.array([table.rng.uniform(0.02, 0.98), table.rng.uniform(0.02, HEIGHT - 0.02)])
        for _ in range(30)
    ]
    table.blots(places, 0.0052, ["1f74c0", "dc2f2f", "f8a51f", "3d9a3f", "1c2350"])
