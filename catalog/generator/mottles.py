"""Boards of several colours: clouds, veins, flecks, and cloth of two threads."""

import numpy as np

from .gilding import Mix, stacked
from .noise import Field, Rng, blur, fractal, ranks, relief, smooth_noise, soft_step
from .weaves import plain_weave


def cloud(rng: Rng, shape: tuple[int, int], second: float, third: float) -> Mix:
    """Sponged clouds of three related colours."""
    first_field = fractal(rng, shape, 17, 6)
    second_field = fractal(rng, shape, 9, 5) - 0.25 * first_field
    covers = (
        soft_step(ranks(first_field), 1 - second - third / 2, 0.75),
        soft_step(ranks(second_field), 1 - third, 0.36),
    )
    return stacked(*covers), smooth_noise(rng, shape, 0.6, 0.6) * 0.7 + relief(
        fractal(rng, shape, 4, 2)
    ) * -0.7


def vein(rng: Rng, shape: tuple[int, int], second: float, third: float) -> Mix:
    """Marble: soft shadows beside branching veins."""
    warp = fractal(rng, shape, 40, 5)
    ridges = np.minimum(
        np.abs(fractal(rng, shape, 30, 5) + 0.35 * warp), 0.25 + np.abs(fractal(rng, shape, 26, 5))
    )
    shade = (
        soft_step(ranks(-ridges + 0.2 * fractal(rng, shape, 9, 4)), 1 - second - third, 0.7) * 0.95
    )
    line = soft_step(ranks(-ridges + 0.05 * warp), 1 - third, 0.10)
    return stacked(shade, line), smooth_noise(rng, shape, 0.7, 0.7) * 0.5


def fleck(rng: Rng, shape: tuple[int, int], second: float, third: float) -> Mix:
    """Pulp board with short fibres of two other colours."""
    first, other = (_fibres(rng, shape) for _ in range(2))
    covers = (
        soft_step(ranks(first), 1 - second, 0.14) * 0.85,
        soft_step(ranks(other), 1 - third, 0.10) * 0.85,
    )
    return stacked(*covers), smooth_noise(rng, shape, 0.6, 0.6) * 0.7


def _fibres(rng: Rng, shape: tuple[int, int]) -> Field:
    """Random short fibres in all directions as a soft height."""
    canvas = np.zeros(shape)
    for _ in range(shape[0] * shape[1] // 150):
        row, column = rng.uniform(0, shape[0]), rng.uniform(0, shape[1])
        angle, bend = rng.uniform(0, np.pi), rng.uniform(-0.12, 0.12)
        steps = np.arange(int(rng.integers(3, 10)))
        rows = np.floor(row + np.cumsum(np.sin(angle + bend * steps))).astype(int) % shape[0]
        columns = np.floor(column + np.cumsum(np.cos(angle + bend * steps))).astype(int) % shape[1]
        canvas[rows, columns] = rng.uniform(0.6, 1.0)
    return blur(canvas, 0.5, 0.5) + 0.02 * smooth_noise(rng, shape, 3, 3)


def weave(rng: Rng, shape: tuple[int, int], threads: tuple[int, int]) -> Mix:
    """Cloth whose two threads have different colours."""
    height, thread_tone, warp = plain_weave(rng, shape, threads, 0.35)
    gaps = np.clip(0.5 - height, 0, 1)
    tone = -relief(blur(height, 0.5, 0.5)) * 8 + thread_tone * 1.5 - gaps * 15 + height * 2
    warp = 0.12 + 0.76 * blur(warp, 0.45, 0.45)
    return np.stack([1 - warp, warp]), tone + smooth_noise(rng, shape, 0.6, 1.4) * 0.7
