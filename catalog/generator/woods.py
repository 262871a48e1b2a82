"""Wood grain along the rows of the tile: rings, pores, rays, stripes and weather."""

from dataclasses import dataclass

import numpy as np

from .noise import Field, Rng, fractal, scatter_strokes, smooth_noise, soft_step, unit


@dataclass(frozen=True, slots=True)
class Species:
    """What the grain of one wood is made of; lengths in tile pixels."""

    rings: int  # growth rings across the tile
    warp_px: float  # how far the rings wander
    late_sharpness: float  # 0 soft passage, 1 hard line
    pores: float  # chance of a pore per pixel
    pore_px: tuple[float, float]  # length and width of a pore
    ring_porous: float  # 1: pores gather in the early wood
    rays: float  # light flecks of quartered wood
    ripple: float  # ribbon stripe or curl across the grain
    contrast: float  # of the rings


SPECIES = {
    "oak": Species(9, 16, 0.6, 0.012, (7, 0.55), 1.0, 0.06, 0.0, 0.9),
    "quartered_oak": Species(22, 4, 0.5, 0.010, (6, 0.5), 1.0, 1.0, 0.0, 0.6),
    "ash": Species(7, 20, 0.75, 0.010, (8, 0.6), 1.0, 0.0, 0.0, 1.0),
    "walnut": Species(8, 22, 0.35, 0.005, (9, 0.6), 0.3, 0.0, 0.25, 1.0),
    "cherry": Species(9, 18, 0.3, 0.004, (2.5, 0.4), 0.0, 0.05, 0.15, 0.6),
    "maple": Species(10, 16, 0.3, 0.002, (2, 0.4), 0.0, 0.12, 0.5, 0.4),
    "basswood": Species(8, 14, 0.2, 0.002, (3, 0.4), 0.0, 0.0, 0.1, 0.35),
    "pine": Species(6, 26, 0.85, 0.0006, (10, 0.5), 0.0, 0.0, 0.0, 1.2),
    "sapele": Species(14, 5, 0.2, 0.009, (5, 0.5), 0.0, 0.0, 0.9, 0.5),
    "zebrano": Species(13, 7, 0.7, 0.008, (9, 0.55), 0.2, 0.0, 0.0, 1.4),
    "weathered": Species(16, 11, 0.8, 0.004, (22, 0.7), 0.2, 0.0, 0.0, 1.2),
}


@dataclass(frozen=True, slots=True)
class Grain:
    """The parts of a grain, each 0..1 except `tone`, whose mean is 0."""

    late: Field
    pores: Field
    rays: Field
    tone: Field


def grain(rng: Rng, shape: tuple[int, int], kind: Species) -> Grain:
    """Draw the grain of one wood."""
    height, width = shape
    rows = np.arange(height, dtype=float)[:, None].repeat(width, 1)
    wander = smooth_noise(rng, shape, 34, 90) * kind.warp_px + smooth_noise(rng, shape, 4, 60) * 1.1
    phase = _ring_number(rng, height, kind.rings, rows + wander) % 1.0
    late = _late_wood(phase, kind.late_sharpness)
    early = np.exp(-((np.minimum(phase, 1 - phase) / 0.16) ** 2))
    chance = kind.pores * (kind.ring_porous * early * 2.6 + (1 - kind.ring_porous))
    pores = np.clip(scatter_strokes(rng, shape, chance, *kind.pore_px) * 0.9, 0, 1)
    rays = np.zeros(shape)
    if kind.rays:
        flecks = smooth_noise(rng, shape, 1.1, 2.2) * 0.4 + smooth_noise(rng, shape, 2.0, 16) * 0.9
        rays = soft_step(flecks, 2.1 - 0.75 * kind.rays, 0.5)
    ribbon = smooth_noise(rng, shape, 60, 9) * kind.ripple
    streak = smooth_noise(rng, shape, 1.0, 50)
    tone = -kind.contrast * (late - late.mean()) * 0.5 + streak * 0.08 + ribbon * 0.10
    tone = tone - pores * 0.55 + rays * 0.25 + fractal(rng, shape, 50, 3, 3.0) * 0.08
    return Grain(late, pores, rays, tone - tone.mean())


def _ring_number(rng: Rng, height: int, rings: int, rows: Field) -> Field:
    """Ring number at fractional rows: uneven years, but a whole number of them over the tile."""
    years = np.convolve(rng.standard_normal(height), np.ones(9), "same")
    width = np.clip(1 + 0.35 * unit(years), 0.3, 2)
    climb = np.cumsum(width) / width.sum() * rings
    positions = np.arange(-height, 2 * height)
    return np.interp(rows, positions, np.concatenate([climb - rings, climb, climb + rings]))


def _late_wood(phase: Field, sharpness: float) -> Field:
    """Darkening toward the end of the year's growth, then a quick return."""
    rise = phase ** (2.0 + 5.0 * sharpness)
    fall = soft_step(phase, 0.985, 0.05 + 0.10 * (1 - sharpness))
    return np.clip(rise * (1 - fall), 0, 1)
