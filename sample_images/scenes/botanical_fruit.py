"""Hips on their stalks, and the small studies at the foot of the plate."""

from __future__ import annotations

import numpy as np

from sample_images.materials.curves import Points, rotated, spline
from sample_images.materials.plate import Pen, Subject, Wash
from sample_images.scenes.botanical_flowers import hip, petal
from sample_images.scenes.botanical_leaves import stem


def hips_on_stalks(
    main: Points, width: int, unit: float, rng: np.random.Generator
) -> tuple[list[Subject], list[Subject]]:
    fork = np.array([0.690, 0.775])
    ends = [
        (np.array([0.705, 0.855]), 1.45, 0.092),
        (np.array([0.790, 0.830]), 1.18, 0.082),
        (np.array([0.625, 0.862]), 1.80, 0.076),
    ]
    parts, stalks = [], []
    for place, turn, length in ends:
        parts += hip(place * width, turn, length * width, unit, rng)
        drop = spline([fork, (fork + place) / 2 + (0.012, -0.012), place], per_span=10) * width
        stalks.append(
            stem(drop, np.full(len(drop), 6.0) * unit, unit, rng, tone="a0804e", thorns=0)
        )
    arm = spline([main[58] / width, (0.555, 0.735), (0.635, 0.735), fork], per_span=14) * width
    stalks.append(
        stem(arm, np.linspace(11, 7, len(arm)) * unit, unit, rng, tone="93894f", thorns=3)
    )
    return parts, stalks


def details(width: int, unit: float, rng: np.random.Generator) -> list[Subject]:
    """Below the plant: a hip cut in half, two seeds, and a fallen petal."""
    parts = _cut_hip(np.array([0.705, 1.222]) * width, 0.090 * width, unit, rng)
    for place, turn in (((0.812, 1.258), 0.5), ((0.850, 1.230), 1.3)):
        seed = rotated(
            spline(
                [(-1, 0), (-0.3, -0.5), (0.6, -0.45), (1, 0.05), (0.5, 0.5), (-0.4, 0.45)],
                closed=True,
                per_span=6,
            ),
            turn,
        )
        outline = seed * 0.017 * width + np.array(place) * width
        lines = [Pen(np.vstack([outline, outline[:1]]), 2.0 * unit, swell=False)]
        inner = outline * 0.7 + outline.mean(axis=0) * 0.3
        lines += [Pen(inner[[start, start + 16]], 1.1 * unit) for start in (3, 6, 9, 11, 14)]
        parts.append(Subject(outline, [Wash(outline, "c49a5c", 0.7)], lines))
    parts.append(
        petal(np.array([0.150, 1.215]) * width, -0.45, 0.125 * width, 0.9, unit=unit, rng=rng)
    )
    return parts


def _cut_hip(middle: Points, size: float, unit: float, rng: np.random.Generator) -> list[Subject]:
    def ring(scale: float) -> Points:
        points = np.array(
            [
                (-0.06, -1.0),
                (0.36, -0.72),
                (0.62, -0.15),
                (0.52, 0.45),
                (0.16, 0.86),
                (-0.16, 0.86),
                (-0.52, 0.45),
                (-0.62, -0.15),
                (-0.36, -0.72),
            ]
        )
        return spline(points * size * 0.72 * scale + middle, closed=True, per_span=8)

    skin, flesh, hollow = ring(1.0), ring(0.90), ring(0.66)
    lines = [
        Pen(np.vstack([loop, loop[:1]]), thick * unit, swell=False)
        for loop, thick in ((skin, 2.6), (flesh, 1.3), (hollow, 1.8))
    ]
    washes = [Wash(skin, "d2482e", 0.8), Wash(hollow, "f0dcae", 0.4)]
    seeds = []
    for x, y, turn in (
        (-0.10, -0.30, 0.9),
        (0.12, -0.16, 1.9),
        (-0.16, 0.0, 1.2),
        (0.08, 0.12, 0.4),
        (-0.06, 0.30, 1.6),
        (0.15, 0.34, 2.3),
    ):
        seed = rotated(np.array([(-1, 0), (0, -0.55), (1, 0), (0, 0.55)]), turn) * size * 0.105
        outline = spline(seed + middle + np.array([x, y]) * size, closed=True, per_span=6)
        seeds.append(
            Subject(
                outline,
                [Wash(outline, "b98c4e", 0.8)],
                [Pen(np.vstack([outline, outline[:1]]), 1.7 * unit, swell=False)],
            )
        )
    for _ in range(60):
        start = hollow[int(rng.integers(0, len(hollow)))]
        end = start * 0.82 + middle * 0.18 + rng.normal(0, 0.02 * size, 2)
        lines.append(Pen(np.linspace(start, end, 4), 0.9 * unit))
    return [*seeds, Subject(skin, washes, lines)]
