"""A chalk-soft study of a sleeping greyhound on a striped rug, pastel on toned paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.brush import Brush, detail
from sample_images.materials.chalk import ChalkSheet
from sample_images.materials.curves import resampled
from sample_images.materials.grounds import relief, tooth
from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, as_u8, blend, ramp, rgb
from sample_images.scenes.greyhound_body import paint_body, whole_outline_mask
from sample_images.scenes.greyhound_outline import contour_lines

if TYPE_CHECKING:
    from numpy.typing import NDArray

HEIGHT = 0.75
FAR_EDGE = 0.235
STRIPES = [
    (0.060, "ad654e"),
    (0.016, "dccfb4"),
    (0.034, "66797a"),
    (0.012, "dccfb4"),
    (0.050, "ad654e"),
    (0.010, "cfa262"),
    (0.042, "d6c6a8"),
    (0.010, "cfa262"),
]


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The picture, 4 wide by 3 high."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    y, x = (axis.astype(np.float32) / width_px for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    room, weave_angle = _room(x, y, rng)
    dog = whole_outline_mask(shape)
    room = _cast_shadow(room, dog)
    target, tone = paint_body(room, rng)
    angle = np.where(dog > 0.5, _coat_direction(tone, x, y), weave_angle).astype(np.float32)
    sheet = _drawn(target, angle, dog, x, y, rng=rng)
    return as_u8(sheet)


def _room(x: Field, y: Field, rng: np.random.Generator) -> tuple[Image, Field]:
    """Wall, floor and the rug in perspective; and the direction of its weave."""
    depth = 0.42 / np.maximum(y + 0.14, 0.05)
    u = (x - 0.5) * depth
    v = depth
    turn = np.deg2rad(17)
    a = u * np.cos(turn) - (v - 0.7) * np.sin(turn)
    b = u * np.sin(turn) + (v - 0.7) * np.cos(turn)
    wave = 0.003 * fractal(x.shape, rng, cell=x.shape[1] * 0.12, octaves=2)
    on_rug = (np.abs(a + wave) < 0.60) & (np.abs(b + wave) < 0.315)
    stripes = _stripes(a + wave)
    wall = ramp(np.clip(y / FAR_EDGE, 0, 1), [(0.0, "4d5a5c"), (0.7, "5f6a67"), (1.0, "4a4f50")])
    wall = wall * (1.22 - 0.42 * smoothstep(0.0, 0.9, x + 0.3 * y))[..., None]
    floor = ramp(np.clip((y - FAR_EDGE) / 0.5, 0, 1), [(0.0, "6a5748"), (1.0, "94785f")])
    board = np.abs(((u * 5.5) % 1) - 0.5)
    floor = blend(floor, rgb("4d3d35"), smoothstep(0.47, 0.495, board) * 0.6)
    room = np.where((y < FAR_EDGE)[..., None], wall, floor)
    skirting = ((y > FAR_EDGE - 0.035) & (y < FAR_EDGE)).astype(np.float32)
    room = blend(room, rgb("8c8877"), skirting * 0.8)
    light = 1.0 - 0.40 * smoothstep(0.2, 1.0, x) - 0.10 * smoothstep(0.5, 0.75, y)
    rug = stripes * light[..., None]
    fringe = (np.abs(a + wave) < 0.60) & (np.abs(b) < 0.345) & ~on_rug
    threads = np.sin(a * 420 + 3 * fractal(x.shape, rng, cell=x.shape[1] * 0.01)) > -0.2
    room = blend(
        room, rgb("e2d5bb") * light[..., None], (fringe & threads).astype(np.float32) * 0.9
    )
    edge = cv2.GaussianBlur(on_rug.astype(np.float32), (0, 0), x.shape[1] * 0.006)
    room = room * (1 - 0.35 * edge[..., None] * (1 - on_rug[..., None]))
    room = np.where(on_rug[..., None], rug, room).astype(np.float32)
    gx, gy = np.gradient(a, axis=1), np.gradient(a, axis=0)
    along = np.arctan2(gx, -gy)
    flat = 0.12 * fractal(x.shape, rng, cell=x.shape[1] * 0.1, octaves=2)
    return np.clip(room, 0, 1), np.where(on_rug, along, np.where(y < FAR_EDGE, 0.9 + flat, flat))


def _stripes(across: Field) -> Image:
    period = sum(width for width, _ in STRIPES)
    place = np.mod(across + 0.012, period)
    colours = np.zeros((*across.shape, 3), np.float32)
    start = 0.0
    for width, colour in STRIPES:
        colours[(place >= start) & (place < start + width)] = rgb(colour)
        start += width
    return colours


def _cast_shadow(room: Image, dog: Field) -> Image:
    width = dog.shape[1]
    floor = np.array([[1, 0.10, width * -0.036], [0, 0.55, width * 0.262]], np.float32)
    cast = cv2.warpAffine(dog, floor, dog.shape[::-1])
    soft = cv2.GaussianBlur(cast, (0, 0), width * 0.012)
    contact = cv2.GaussianBlur(dog, (0, 0), width * 0.009)
    shade = np.clip(0.75 * soft + 0.5 * contact, 0, 1) * 0.72
    return room * (1 - shade[..., None]) + rgb("2c2438") * shade[..., None] * 0.62


def _coat_direction(tone: Field, x: Field, y: Field) -> Field:
    """Hair lies along the body and turns with the form."""
    smooth = cv2.GaussianBlur(tone, (0, 0), tone.shape[1] * 0.016)
    gx = cv2.Sobel(smooth, cv2.CV_32F, 1, 0)
    gy = cv2.Sobel(smooth, cv2.CV_32F, 0, 1)
    along = np.arctan2(gx, -gy)
    base = 0.25 + 0.9 * (x - 0.5) * (y < 0.5)
    weight = np.tanh(np.hypot(gx, gy) * 70)
    c = weight * np.cos(2 * along) + (1 - weight) * np.cos(2 * base)
    s = weight * np.sin(2 * along) + (1 - weight) * np.sin(2 * base)
    return (0.5 * np.arctan2(s, c)).astype(np.float32)


def _drawn(
    target: Image, angle: Field, dog: Field, x: Field, y: Field, *, rng: np.random.Generator
) -> Image:
    shape = x.shape
    width = shape[1]
    unit = width / 2400
    grain = 0.6 * tooth(shape, rng, pitch_px=max(1.0, 2.1 * unit))
    grain += 0.4 * tooth(shape, rng, pitch_px=max(0.8, 1.0 * unit))
    grain = np.clip(0.5 + 1.3 * (grain - 0.5), 0, 1).astype(np.float32)
    fleck = fractal(shape, rng, cell=max(2.0, 5 * unit), octaves=2)
    paper = np.clip(
        rgb("b9a78d") + 0.012 * fleck[..., None] + 0.02 * (grain[..., None] - 0.5), 0, 1
    )
    sheet = ChalkSheet(paper, grain)
    margin = _worked_area(x, y, rng)
    soft = cv2.GaussianBlur(target, (0, 0), 9 * unit)
    sheet.smudge(soft, margin * (0.42 + 0.30 * dog))
    broad = Brush(
        34 * unit,
        190 * unit,
        hair_px=3.0 * unit,
        spacing=0.8,
        tone_spread=2.6,
        hue_spread=3.2,
        streak=3.0,
        stop_at=15,
        wet=0.0,
        wander=0.10,
    )
    sheet.hatch(target, angle, broad, rng, pressure=0.36, where=margin * (0.85 - 0.35 * dog))
    middle = Brush(
        17 * unit,
        110 * unit,
        hair_px=2.4 * unit,
        spacing=0.9,
        tone_spread=2.6,
        hue_spread=3.4,
        streak=2.6,
        stop_at=10,
        wet=0.0,
        wander=0.10,
    )
    sheet.hatch(target, angle, middle, rng, pressure=0.40, where=margin * (0.42 + 0.5 * dog))
    near_dog = cv2.GaussianBlur(dog, (0, 0), 14 * unit)
    fine = Brush(
        7.5 * unit,
        60 * unit,
        hair_px=1.9 * unit,
        spacing=1.15,
        tone_spread=2.4,
        hue_spread=2.6,
        streak=2.0,
        stop_at=7,
        wet=0.0,
        wander=0.08,
    )
    sheet.hatch(target, angle, fine, rng, pressure=0.46, where=np.clip(near_dog * 0.95, 0, 1))
    small = Brush(
        4 * unit,
        26 * unit,
        hair_px=1.5 * unit,
        spacing=1.0,
        tone_spread=1.0,
        hue_spread=1.2,
        streak=1.2,
        stop_at=6,
        wet=0.0,
        wander=0.05,
    )
    features = smoothstep(0.35, 1.0, detail(target, 9 * unit, full_at=12)) * (dog > 0.5)
    sheet.hatch(target, angle, small, rng, pressure=0.55, where=features)
    _restate(sheet, width, rng)
    return relief(sheet.colour, grain, strength=0.10)


def _worked_area(x: Field, y: Field, rng: np.random.Generator) -> Field:
    """1 where the artist worked, falling off raggedly toward the bare edge of the sheet."""
    ragged = 0.022 * fractal(x.shape, rng, cell=x.shape[1] * 0.08, octaves=4)
    inset = np.minimum(np.minimum(x, 1 - x), np.minimum(y, HEIGHT - y))
    return smoothstep(0.012, 0.062, inset + ragged)


def _restate(sheet: ChalkSheet, width: int, rng: np.random.Generator) -> None:
    """Dark contour accents: short overlapping strokes that lift off at both ends."""
    for colour, share, pressure in (("6b4c3e", 0.9, 0.30), ("3a2e38", 0.45, 0.36)):
        lines, thick_px = [], []
        for line, thick in contour_lines():
            points = resampled(line * width, 90)
            start = int(rng.integers(0, 10))
            while start < 80:
                run = int(rng.integers(10, 30))
                part = points[start : start + run] + rng.normal(0, 0.0007 * width, 2)
                start += run - 3
                if rng.uniform() < share and len(part) > 3:
                    lines.append(part)
                    thick_px.append(thick * width * rng.uniform(0.5, 1.2))
        sheet.contour(lines, thick_px, rgb(colour), pressure=pressure)
