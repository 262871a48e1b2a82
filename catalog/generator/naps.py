"""Suede and paper: soft nap brushed in patches, and the fine tooth of board."""

import numpy as np

from .noise import Field, Rng, blur, fractal, relief, smooth_noise, soft_step, unit


def suede(rng: Rng, shape: tuple[int, int], brushed: float) -> Field:
    """Tone of a suede: very short fibres leaning two ways, and patches where they were stroked."""
    lean = soft_step(fractal(rng, shape, 60, 3, 1.4), 0.1, 1.4)
    noise = rng.standard_normal(shape)
    left = unit(_slanted(noise, 1))
    right = unit(_slanted(rng.standard_normal(shape), -1))
    fibres = left * lean + right * (1 - lean)
    tufts = smooth_noise(rng, shape, 2.4, 2.0)
    strokes = unit(blur(rng.standard_normal(shape), 7, 44)) * brushed
    return fibres * 0.22 + tufts * 0.11 + (lean - lean.mean()) * 0.55 * brushed + strokes * 0.13


def _slanted(noise: Field, direction: int) -> Field:
    """Noise drawn out along a diagonal, like fibres that lie over."""
    total = np.zeros_like(noise)
    for step in range(3):
        total += np.roll(noise, (step, direction * ((step + 1) // 2)), (0, 1)) * (1 - step / 4)
    return blur(total, 0.35, 0.45)


def paper(rng: Rng, shape: tuple[int, int], tooth: float) -> Field:
    """Tone of a smooth board: fine tooth under raking light, faint pulp clouds."""
    height = fractal(rng, shape, 5, 3)
    fine = smooth_noise(rng, shape, 0.7, 0.8)
    cloud = smooth_noise(rng, shape, 14, 18)
    return -relief(height) * 0.5 * tooth + fine * 0.10 * tooth + cloud * 0.05


def fibre_paper(rng: Rng, shape: tuple[int, int]) -> Field:
    """Tone of a pulp board with single fibres lying in all directions."""
    total = paper(rng, shape, 0.7)
    for _ in range(150):
        row, column = rng.uniform(0, shape[0]), rng.uniform(0, shape[1])
        angle, bend = rng.uniform(0, np.pi), rng.uniform(-0.02, 0.02)
        steps = np.arange(int(rng.integers(14, 46)))
        rows = (row + np.cumsum(np.sin(angle + bend * steps))).astype(int) % shape[0]
        columns = (column + np.cumsum(np.cos(angle + bend * steps))).astype(int) % shape[1]
        total[rows, columns] += rng.choice([-0.8, 0.7])
    return blur(total, 0.55, 0.55)


def cloudy(rng: Rng, shape: tuple[int, int], scale_px: float) -> Field:
    """Tone of a mottled one-colour paper: clouds with ragged edges."""
    base = fractal(rng, shape, scale_px, 5)
    edge = soft_step(fractal(rng, shape, scale_px * 0.7, 5), 0.2, 0.5)
    return base * 0.28 + edge * 0.40 + smooth_noise(rng, shape, 0.7, 0.7) * 0.06
