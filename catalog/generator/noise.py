"""Random fields without a seam: all filtering is circular, so every edge meets itself."""

import numpy as np
from numpy.typing import NDArray

Field = NDArray[np.float64]
Rng = np.random.Generator


def _frequencies(shape: tuple[int, int]) -> tuple[Field, Field]:
    return np.fft.fftfreq(shape[0])[:, None], np.fft.rfftfreq(shape[1])[None, :]


def blur(field: Field, down_px: float, along_px: float) -> Field:
    """Circular Gaussian blur with its own sigma down the columns and along the rows."""
    f_down, f_along = _frequencies(field.shape)
    window = np.exp(-2 * (np.pi**2) * ((f_down * down_px) ** 2 + (f_along * along_px) ** 2))
    return np.fft.irfft2(np.fft.rfft2(field) * window, s=field.shape)


def unit(field: Field) -> Field:
    """The field with mean 0 and standard deviation 1."""
    centred = field - field.mean()
    return centred / max(float(centred.std()), 1e-12)


def smooth_noise(rng: Rng, shape: tuple[int, int], down_px: float, along_px: float) -> Field:
    """Gaussian noise of one scale, mean 0 and deviation 1."""
    return unit(blur(rng.standard_normal(shape), down_px, along_px))


def fractal(
    rng: Rng, shape: tuple[int, int], scale_px: float, octaves: int = 5, stretch: float = 1.0
) -> Field:
    """Cloud-like noise: each octave half the scale and 0.55 of the strength of the one before."""
    total = np.zeros(shape)
    for octave in range(octaves):
        size = scale_px / 2**octave
        total += 0.55**octave * smooth_noise(rng, shape, size, size * stretch)
    return unit(total)


def sample_wrapped(field: Field, rows: Field, columns: Field) -> Field:
    """Bilinear values of a repeating field at fractional rows and columns."""
    height, width = field.shape
    r0, c0 = np.floor(rows).astype(int), np.floor(columns).astype(int)
    fr, fc = rows - r0, columns - c0
    r0, c0 = r0 % height, c0 % width
    r1, c1 = (r0 + 1) % height, (c0 + 1) % width
    top = field[r0, c0] * (1 - fc) + field[r0, c1] * fc
    return top * (1 - fr) + (field[r1, c0] * (1 - fc) + field[r1, c1] * fc) * fr


def scatter_strokes(
    rng: Rng, shape: tuple[int, int], density: Field, length_px: float, width_px: float
) -> Field:
    """Short soft strokes along the rows, dropped with the given chance per pixel; peak about 1."""
    hits = (rng.random(shape) < density).astype(float) * rng.uniform(0.5, 1.0, shape)
    spread = blur(hits, width_px, length_px)
    return spread * (2 * np.pi * max(width_px, 0.4) * length_px) ** 1.0


def relief(height: Field, from_left: float = 0.6, from_top: float = 0.8) -> Field:
    """How a raking light from the upper left tells the slopes of a height field."""
    slope_x = (np.roll(height, -1, 1) - np.roll(height, 1, 1)) / 2
    slope_y = (np.roll(height, -1, 0) - np.roll(height, 1, 0)) / 2
    return slope_x * from_left + slope_y * from_top


def ranks(field: Field) -> Field:
    """Each pixel's rank as a fraction 0..1, so that a threshold sets a share exactly."""
    order = np.empty(field.size)
    order[np.argsort(field, axis=None, kind="stable")] = np.arange(field.size)
    return (order / field.size).reshape(field.shape)


def soft_step(field: Field, edge: float, softness: float) -> Field:
    """0 below the edge, 1 above it, with a smooth passage of the given width."""
    t = np.clip((field - edge) / max(softness, 1e-9) + 0.5, 0, 1)
    return t * t * (3 - 2 * t)
