"""A botanical plate of an invented briar: pen, ink and light watercolour on cream paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.curves import Points, resampled, rotated, spline
from sample_images.materials.grounds import relief, tooth
from sample_images.materials.noise import Field, fractal, grain
from sample_images.materials.pigment import Image, as_u8, rgb
from sample_images.materials.plate import Pen, Plate, Subject, Wash
from sample_images.scenes.botanical_flowers import petal, stamens
from sample_images.scenes.botanical_fruit import details, hips_on_stalks
from sample_images.scenes.botanical_leaves import compound_leaf, leaflet, stem

if TYPE_CHECKING:
    from numpy.typing import NDArray

HEIGHT = 4 / 3
INK = "2a211d"
MAIN = [
    (0.470, 1.240),
    (0.492, 1.04),
    (0.462, 0.84),
    (0.482, 0.66),
    (0.545, 0.50),
    (0.600, 0.35),
    (0.655, 0.235),
]


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The picture, 3 wide by 4 high."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    unit = width_px / 1800
    felt = tooth(shape, rng, pitch_px=max(1.0, 2.6 * unit))
    plate = Plate(_paper(felt, rng), felt, rng)
    for part in _briar(width_px, unit, rng):
        plate.add(part)
    for part in details(width_px, unit, rng):
        plate.add(part)
    dry = plate.finished(INK)
    return as_u8(relief(dry, felt, strength=0.07))


def _paper(felt: Field, rng: np.random.Generator) -> Image:
    """Warm cream, a little darker to the edges, with a few pale age spots."""
    shape = felt.shape
    width = shape[1]
    cloud = fractal(shape, rng, cell=width * 0.4, octaves=4)
    fibre = grain(shape, rng, blur_px=0.7)
    tone = 1 + 0.008 * cloud + 0.004 * fibre + 0.016 * (felt - 0.5)
    y, x = (axis.astype(np.float32) / width for axis in np.mgrid[0 : shape[0], 0 : shape[1]])
    inset = np.minimum(np.minimum(x, 1 - x), np.minimum(y, HEIGHT - y))
    toned = np.exp(-inset / 0.05)[..., None] * np.array([0.030, 0.042, 0.062], np.float32)
    spots = np.zeros(shape, np.float32)
    for _ in range(26):
        place = (rng.uniform(0, width), rng.uniform(0, shape[0]))
        cv2.circle(
            spots,
            (int(place[0]), int(place[1])),
            max(1, int(rng.exponential(width * 0.0016))),
            float(rng.uniform(0.2, 0.9)),
            -1,
            cv2.LINE_AA,
        )
    spots = cv2.GaussianBlur(spots, (0, 0), width * 0.0022)
    foxed = spots[..., None] * np.array([0.05, 0.10, 0.16], np.float32)
    return np.clip(rgb("f3e8d0") * tone[..., None] - toned - foxed, 0, 1)


def _briar(width: int, unit: float, rng: np.random.Generator) -> list[Subject]:
    """Front to back: flowers, hips, leaves, then the stems they hang on."""
    main = resampled(spline(MAIN, per_span=20), 160) * width
    parts = _flower(np.array([0.330, 0.395]) * width, 0.190 * width, 0.86, 0.35, unit=unit, rng=rng)
    parts += _half_flower(np.array([0.668, 0.205]) * width, 0.135 * width, unit, rng)
    parts += _bud(np.array([0.790, 0.345]) * width, -0.95, 0.085 * width, unit, rng)
    hips, stalks = hips_on_stalks(main, width, unit, rng)
    parts += hips
    for index, turn, length, pairs in (
        (52, 2.70, 0.245, 3),
        (34, 0.06, 0.215, 3),
        (80, -0.20, 0.205, 3),
        (70, 3.55, 0.185, 3),
        (132, 3.95, 0.125, 2),
        (108, 0.30, 0.150, 3),
        (145, -0.35, 0.115, 2),
    ):
        parts += compound_leaf(main[index], turn, length * width, pairs, unit=unit, rng=rng)
    parts += stalks
    side = (
        spline([main[96] / width, (0.46, 0.50), (0.385, 0.47), (0.33, 0.395)], per_span=14) * width
    )
    bud_stalk = spline([main[118] / width, (0.66, 0.42), (0.74, 0.395), (0.79, 0.345)], per_span=14)
    parts.append(
        stem(side, np.linspace(10, 7, len(side)) * unit, unit, rng, tone="8a9a58", thorns=3)
    )
    parts.append(
        stem(
            bud_stalk * width,
            np.linspace(8, 6, len(bud_stalk)) * unit,
            unit,
            rng,
            tone="8a9a58",
            thorns=2,
        )
    )
    girth = np.linspace(21, 9, 160) * unit
    parts.append(stem(main, girth, unit, rng, tone="8f8a55", thorns=13))
    return parts


def _flower(
    middle: Points,
    radius: float,
    squash: float,
    turn: float,
    *,
    unit: float,
    rng: np.random.Generator,
) -> list[Subject]:
    parts = [stamens(middle, radius * 0.36, squash, unit, rng)]
    for index in (0, 2, 4, 1, 3):
        angle = turn + index * 2 * np.pi / 5 + rng.normal(0, 0.05)
        parts.append(
            petal(middle, angle, radius * rng.uniform(0.95, 1.04), squash, unit=unit, rng=rng)
        )
    for index in range(5):
        angle = turn + np.pi / 5 + index * 2 * np.pi / 5
        way = np.array([np.cos(angle), np.sin(angle) * squash])
        spine = np.array(
            [
                middle + way * radius * 0.5,
                middle + way * radius * 0.8,
                middle + way * radius * 1.06 + rng.normal(0, 4 * unit, 2),
            ]
        )
        parts.append(leaflet(spine, radius * 0.075, unit, rng, tone="8ba05c"))
    return parts


def _half_flower(
    middle: Points, radius: float, unit: float, rng: np.random.Generator
) -> list[Subject]:
    """A flower from the side: three near petals cup the rest."""
    parts = [
        petal(middle, -np.pi / 2 + spread, radius * size, 0.92, unit=unit, rng=rng)
        for spread, size in ((0.12, 0.92), (-0.62, 1.0), (0.80, 1.0), (-1.15, 0.98), (1.30, 0.95))
    ]
    cup = middle + radius * np.array(
        [(-0.10, -0.02), (0.0, -0.08), (0.10, -0.02), (0.085, 0.15), (0.0, 0.26), (-0.085, 0.15)]
    )
    cup = spline(cup, closed=True, per_span=8)
    calyx = Subject(
        cup,
        [Wash(cup, "7f9652", 0.9), Wash(cup[: len(cup) // 2], "5d7a52", 0.5)],
        [Pen(np.vstack([cup, cup[:1]]), 2.4 * unit, swell=False)],
    )
    sepals = []
    for spread in (-2.5, -0.65, -2.05, -1.1):
        way = np.array([np.cos(spread), np.sin(spread)])
        spine = np.array(
            [
                middle,
                middle + way * radius * 0.26,
                middle + way * radius * 0.52 + np.array([0, radius * 0.08]),
            ]
        )
        sepals.append(leaflet(spine, radius * 0.07, unit, rng, tone="8ba05c"))
    return [calyx, *sepals, *parts]


def _bud(
    base: Points, turn: float, length: float, unit: float, rng: np.random.Generator
) -> list[Subject]:
    def place(points: list[tuple[float, float]]) -> Points:
        return rotated(np.array(points) * length, turn) + base

    bulb = spline(
        place(
            [
                (0.0, -0.05),
                (0.12, -0.13),
                (0.30, -0.12),
                (0.34, 0.0),
                (0.30, 0.12),
                (0.12, 0.13),
                (0.0, 0.05),
            ]
        ),
        closed=True,
        per_span=8,
    )
    pink = spline(
        place(
            [
                (0.28, -0.15),
                (0.55, -0.27),
                (0.88, -0.16),
                (1.06, 0.02),
                (0.88, 0.17),
                (0.55, 0.27),
                (0.28, 0.15),
            ]
        ),
        closed=True,
        per_span=8,
    )
    folds = [
        spline(place(p), per_span=10)
        for p in (
            [(0.36, -0.05), (0.62, -0.14), (0.90, -0.05), (1.03, 0.03)],
            [(0.36, 0.07), (0.62, 0.10), (0.86, 0.04), (0.95, -0.06)],
            [(0.40, 0.17), (0.62, 0.20), (0.84, 0.12)],
        )
    ]
    lines = [Pen(np.vstack([pink, pink[:1]]), 2.4 * unit, swell=False)]
    lines += [Pen(fold, 1.8 * unit) for fold in folds]
    shade = np.vstack([folds[2], pink[len(pink) // 2 :]])
    bud = Subject(
        pink, [Wash(pink, "d9757f", 0.75), Wash(shade, "b84f63", 0.5, soft_px=4 * unit)], lines
    )
    cup = Subject(
        bulb,
        [Wash(bulb, "7f9652", 0.9)],
        [Pen(np.vstack([bulb, bulb[:1]]), 2.3 * unit, swell=False)],
    )
    parts = [cup]
    for spread, size in ((0.42, 0.85), (-0.42, 0.80), (0.05, 1.05)):
        start = place([(0.28, spread * 0.25)])[0]
        tip = place([(0.28 + size * 0.8, spread * 0.95)])[0]
        middle = place([(0.62, spread * 0.72)])[0]
        parts.append(
            leaflet(np.array([start, middle, tip]), length * 0.065, unit, rng, tone="8ba05c")
        )
    return [*parts, bud]
