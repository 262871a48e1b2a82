"""Leaf over bole, worn paint and brushed metal: surfaces that are two or three colours at once.

Each function returns weights (colours, rows, columns) that add up to 1 at every pixel, and a tone
in L* units to be added; `painting.mix` turns them into a picture.
"""

import numpy as np

from .noise import (
    Field,
    Rng,
    blur,
    fractal,
    ranks,
    relief,
    sample_wrapped,
    smooth_noise,
    soft_step,
    unit,
)
from .woods import SPECIES, grain

Mix = tuple[Field, Field]


def stacked(*covers: Field) -> Field:
    """Weights of a first colour with covers painted over it, each cover 0..1."""
    weights = [np.ones_like(covers[0])]
    for cover in covers:
        weights = [w * (1 - cover) for w in weights] + [cover]
    return np.stack(weights)


def leaf(rng: Rng, shape: tuple[int, int], rubbed: float, laps: int = 2) -> Mix:
    """Leaf laid in overlapping squares along the stick, burnished, cracked and rubbed to bole."""
    height, width = shape
    columns = np.arange(width, dtype=float)[None, :].repeat(height, 0)
    wander = smooth_noise(rng, shape, 30, 8) * 1.6
    start = columns + wander + rng.uniform(0, width)
    place = (start * laps / width) % 1.0
    square = np.floor(start * laps / width).astype(int) % laps
    lap_width = rng.uniform(0.018, 0.05, laps)[square]
    overlap = (1 - soft_step(place - lap_width, 0, 0.012)) * rng.uniform(0.45, 0.9, laps)[square]
    lip = np.exp(-(((place - lap_width) * width / laps / 1.1) ** 2)) * 0.7
    square_tone = rng.uniform(-1.3, 1.3, laps)[square]
    streaks = smooth_noise(rng, shape, 1.2, 26)
    fine = smooth_noise(rng, shape, 0.6, 2.4)
    cloud = fractal(rng, shape, 36, 4, 1.8)
    rubs = smooth_noise(rng, shape, 0.9, 11) * 0.55 + smooth_noise(rng, shape, 1.0, 2.8) * 0.45
    wear = cloud * 0.22 + rubs + smooth_noise(rng, shape, 0.5, 1.2) * 0.45
    wear = wear - blur(wear, 24, 40) * 0.7 - overlap * 0.9  # no blot that repeats along a rail
    bole = soft_step(ranks(wear), 1 - rubbed * (0.35 + 2.4 * min(rubbed, 0.2)), 0.14)
    cracks = _cracks(rng, shape) * (1 - overlap)
    bole = np.clip(np.maximum(bole, cracks * 0.75), 0, 1)
    thin = soft_step(ranks(wear + 0.3 * unit(cloud)), 0.66 - rubbed * 0.7, 0.45) * 0.75
    thin = np.clip(thin * (1 - overlap * 0.8), 0, 1)
    tone = streaks * 1.0 + fine * 0.8 + square_tone + overlap * 2.0 + lip * -5.0
    tone = tone + relief(fractal(rng, shape, 12, 3)) * -2.2
    return stacked(thin, bole), tone


def _cracks(rng: Rng, shape: tuple[int, int]) -> Field:
    """Hair-fine breaks in the leaf, mostly across the stick, present only in places."""
    path = smooth_noise(rng, shape, 34, 9) + 0.12 * smooth_noise(rng, shape, 3, 3)
    line = np.exp(-((path / 0.045) ** 2))
    where = soft_step(fractal(rng, shape, 14, 3), 1.1, 0.5)
    return np.clip(line * where, 0, 1)


def foil(rng: Rng, shape: tuple[int, int], dark_share: float) -> Mix:
    """Metallic paper: even foil with a faint dark glaze in its tooth."""
    glaze = ranks(fractal(rng, shape, 5, 4, 1.5) + smooth_noise(rng, shape, 0.8, 3.0) * 0.7)
    cover = soft_step(glaze, 1 - dark_share, 0.55) * 0.9
    tone = smooth_noise(rng, shape, 0.8, 7) * 1.1 + relief(fractal(rng, shape, 4, 2)) * -1.2
    return stacked(cover), tone


def worn_paint(rng: Rng, shape: tuple[int, int], under: float, wood: float, species: str) -> Mix:
    """Paint worn through along the grain to an under-coat and to the wood."""
    below = grain(rng, shape, SPECIES[species])
    wear = smooth_noise(rng, shape, 2.2, 34) * 0.8 + fractal(rng, shape, 30, 5, 2.4) * 0.9
    wear = wear + below.tone * 0.9 + smooth_noise(rng, shape, 0.8, 4) * 0.25
    order = ranks(wear)
    second = soft_step(order, 1 - under - wood, 0.05)
    bare = soft_step(order, 1 - wood, 0.03)
    edge = np.exp(-(((order - (1 - wood)) / 0.014) ** 2))
    brush = smooth_noise(rng, shape, 0.9, 40)
    tone = bare * below.tone * 13 + (1 - bare) * (brush * 1.0 + below.tone * 1.6)
    tone = tone - edge * 3.0 + relief(blur(order, 1.0, 1.0)) * -26 * (1 - bare * 0.7)
    return stacked(second, bare), tone


def tortoise(rng: Rng, shape: tuple[int, int], dark: float, light: float) -> Mix:
    """Tortoise pattern: dark blots on amber, with fine gold flecks."""
    field = fractal(rng, shape, 10, 5, 1.5)
    blot = soft_step(ranks(field), 1 - dark, 0.40)
    gold = soft_step(ranks(fractal(rng, shape, 4, 4, 2.6) - field * 0.3), 1 - light, 0.20)
    return stacked(blot, gold), smooth_noise(rng, shape, 1.0, 2.0) * 0.9 + fractal(
        rng, shape, 20, 3
    ) * 1.2


def rubbed_edge(rng: Rng, shape: tuple[int, int], second: float, third: float) -> Mix:
    """Dark ground with gilded lines along the stick, broken where the hand has rubbed."""
    rows = np.arange(shape[0], dtype=float)[:, None].repeat(shape[1], 1)
    wander = smooth_noise(rng, shape, 12, 60) * 0.8
    place = (rows + wander) / shape[0]
    half = (second + third) / 2
    distance = 0.5 - np.abs(place % 1.0 - 0.5)
    line = 1 - soft_step(distance, half, 0.012)
    broken = ranks(fractal(rng, shape, 12, 4, 2.5))
    gilt = line * soft_step(broken, third / (second + third), 0.15)
    tone = smooth_noise(rng, shape, 0.9, 20) * 0.9
    return np.stack([1 - line, gilt, line - gilt]), tone


def brushed(rng: Rng, shape: tuple[int, int]) -> Field:
    """Tone of brushed metal: hair lines along the stick and slow bands of sheen across."""
    hair = smooth_noise(rng, shape, 0.4, 60) * 0.7 + smooth_noise(rng, shape, 0.5, 22) * 0.5
    broad = smooth_noise(rng, shape, 3.0, 160)
    scratch = sample_wrapped(
        unit(blur((rng.random(shape) < 0.0008) * 1.0, 0.35, 18)),
        *np.mgrid[0 : shape[0], 0 : shape[1]].astype(float),
    )
    return hair * 0.5 + broad * 0.22 + scratch * 0.12


def brushed_paint(rng: Rng, shape: tuple[int, int], marks: float) -> Field:
    """Tone of a painted moulding: brush marks along the stick, levelled by the paint."""
    height = smooth_noise(rng, shape, 1.4, 46) + 0.5 * smooth_noise(rng, shape, 0.8, 24)
    return -relief(height, 0.3, 1.0) * marks + smooth_noise(rng, shape, 0.7, 0.7) * 0.05
