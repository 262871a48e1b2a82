"""Woven surfaces: linen of three weights, and silk with its slubs and bands of sheen."""

import numpy as np

from .noise import Field, Rng, blur, relief, sample_wrapped, smooth_noise, unit


def _thread_tone(rng: Rng, shape: tuple[int, int], threads: int, *, across_rows: bool) -> Field:
    """One random tone per thread, changing slowly along it."""
    height, width = shape
    size = (threads, width) if across_rows else (height, threads)
    tone = rng.standard_normal(size)
    along = 14.0
    tone = unit(blur(tone, 0, along) if across_rows else blur(tone, along, 0))
    whole = rng.standard_normal((threads, 1) if across_rows else (1, threads))
    return tone * 0.8 + whole * 0.5


def _wobble(rng: Rng, shape: tuple[int, int], amount_px: float) -> tuple[Field, Field]:
    return (
        smooth_noise(rng, shape, 3, 30) * amount_px,
        smooth_noise(rng, shape, 30, 3) * amount_px,
    )


def plain_weave(
    rng: Rng, shape: tuple[int, int], threads: tuple[int, int], slub: float
) -> tuple[Field, Field, Field]:
    """Height, thread tone and warp-on-top mask of a plain weave; both thread counts even."""
    height, width = shape
    rows, columns = np.mgrid[0:height, 0:width].astype(float)
    down, along = _wobble(rng, shape, 0.35 + 0.5 * slub)
    weft = (rows + down) * threads[0] / height
    warp = (columns + along) * threads[1] / width
    weft_index, warp_index = np.floor(weft).astype(int), np.floor(warp).astype(int)
    across_weft, across_warp = np.sin(np.pi * (weft % 1)), np.sin(np.pi * (warp % 1))
    warp_on_top = ((weft_index + warp_index) % 2) == 0
    weft_tone = _thread_tone(rng, shape, threads[0], across_rows=True)[
        weft_index % threads[0], columns.astype(int)
    ]
    warp_tone = _thread_tone(rng, shape, threads[1], across_rows=False)[
        rows.astype(int), warp_index % threads[1]
    ]
    top = np.where(warp_on_top, across_warp * (0.45 + 0.55 * across_weft),
                   across_weft * (0.45 + 0.55 * across_warp))  # fmt: skip
    thickness = 1 + slub * 0.5 * np.where(warp_on_top, warp_tone, weft_tone)
    tone = np.where(warp_on_top, warp_tone, weft_tone)
    return (
        np.sqrt(np.clip(top, 0, 1)) * np.clip(thickness, 0.4, 1.8),
        tone,
        warp_on_top.astype(float),
    )


def linen(rng: Rng, shape: tuple[int, int], threads: tuple[int, int], slub: float) -> Field:
    """Tone of a linen cloth: round threads, dark gaps, uneven yarn."""
    height, tone, _ = plain_weave(rng, shape, threads, slub)
    round_height = blur(height, 0.8, 0.8)
    gaps = np.clip(0.62 - round_height, 0, 1)
    fibre = smooth_noise(rng, shape, 0.6, 1.2)
    cloud = smooth_noise(rng, shape, 24, 24)
    light = -relief(round_height)
    return light * 0.5 + blur(tone, 0.7, 0.7) * 0.055 + fibre * 0.05 - gaps * 0.8 + cloud * 0.02


def silk(rng: Rng, shape: tuple[int, int], slubs: float, watered: float) -> Field:
    """Tone of a silk: fine ribs along the rows, long slubs, soft bands of sheen."""
    height, width = shape
    rows, columns = np.mgrid[0:height, 0:width].astype(float)
    sag = smooth_noise(rng, shape, 40, 90) * (1.0 + 5.0 * watered)
    phase = (rows + sag) * (height // 4) / height
    rib = np.cos(2 * np.pi * phase)
    yarn = sample_wrapped(unit(blur(rng.standard_normal(shape), 0.6, 22)), rows + sag, columns)
    seeds = (rng.random(shape) < 0.00055 * slubs) * rng.uniform(0.4, 1.0, shape)
    slub = sample_wrapped(blur(seeds, 1.1, 26) * 110, rows + sag, columns)
    sheen = unit(blur(rng.standard_normal(shape), 26, 70)) * 0.22
    across = np.sin(2 * np.pi * (3 * columns / width) + 1.7 * unit(sag))
    water = watered * across * np.cos(np.pi * phase)
    return rib * 0.10 + yarn * 0.16 + slub * 0.30 + sheen + water * 0.22
