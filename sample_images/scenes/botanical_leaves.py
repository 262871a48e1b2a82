"""Leaves, stems and thorns of the invented briar."""

from __future__ import annotations

import numpy as np

from sample_images.materials.curves import Points, normals, resampled, ribbon, spline
from sample_images.materials.plate import Pen, Subject, Wash

Rng = np.random.Generator


def leaflet(spine: Points, half: float, unit: float, rng: Rng, *, tone: str) -> Subject:
    """A toothed leaflet along `spine` (pixels), `half` pixels wide on each side."""
    axis = resampled(spline(spine, per_span=20), 90)
    t = np.linspace(0, 1, 90)
    girth = half * np.sin(np.pi * t**0.82) ** 0.9 * (1 - 0.12 * t)
    girth[-1] = 0
    teeth = 1 + 0.11 * ((t * 15) % 1.0) * (t > 0.12)
    side = normals(axis)
    one, other = (axis + sign * side * (girth * teeth)[:, None] for sign in (1, -1))
    outline = np.vstack([one, other[::-1]])
    shade_side = one if rng.uniform() < 0.5 else other
    drift = rng.normal(0, 2.0 * unit, 2)
    washes = [
        Wash(
            outline * 0.97 + outline.mean(0) * 0.03 + drift,
            tone,
            rng.uniform(0.42, 0.62),
            fade_from=tuple(axis[int(rng.integers(20, 60))] - drift * 6),
            fade_px=half * 1.1,
        ),
        Wash(np.vstack([axis, shade_side[::-1]]), "5d7a52", rng.uniform(0.35, 0.55)),
    ]
    if rng.uniform() < 0.45:
        washes.append(Wash(outline[30:80], "b0684a", 0.22, soft_px=5 * unit))
    lines = [Pen(one, 2.6 * unit), Pen(other, 2.2 * unit), Pen(axis, 2.4 * unit)]
    lines += _veins(axis, side, girth, unit, rng)
    lines += _hatch(axis, shade_side, unit, rng)
    return Subject(outline, washes, lines)


def _veins(axis: Points, side: Points, girth: Points, unit: float, rng: Rng) -> list[Pen]:
    pens = []
    for start in range(10, 78, 8):
        for sign in (1, -1):
            end = min(start + 13, 88)
            middle = (start + end) // 2
            points = [
                axis[start],
                axis[middle] + sign * side[middle] * girth[middle] * 0.48,
                axis[end] + sign * side[end] * girth[end] * rng.uniform(0.82, 0.95),
            ]
            pens.append(Pen(spline(points, per_span=8), 1.5 * unit))
    return pens


def _hatch(axis: Points, shade: Points, unit: float, rng: Rng) -> list[Pen]:
    """Close parallel strokes on the shadow half, from the rim inward."""
    pens = []
    for index in range(14, 84):
        if rng.uniform() < 0.18:
            continue
        ahead = min(index + 4, 89)
        reach = rng.uniform(0.25, 0.62) * (0.7 + 0.3 * np.sin(index / 5))
        start, end = shade[ahead], axis[index] * reach + shade[index] * (1 - reach)
        pens.append(Pen(np.linspace(start, end, 5), 1.15 * unit))
    return pens


def compound_leaf(
    base: Points, turn: float, length: float, pairs: int, *, unit: float, rng: Rng
) -> list[Subject]:
    """A leaf of paired leaflets along a bending stalk, front parts first."""
    bend = rng.choice([-1, 1]) * rng.uniform(0.25, 0.6)
    t = np.linspace(0, 1, 40)
    angle = turn + bend * t
    steps = np.stack([np.cos(angle), np.sin(angle)], axis=1) * length / 40
    stalk = base + np.cumsum(steps, axis=0)
    greens = ["7d9a56", "88a25a", "6f8f58", "93a762"]
    parts = []
    final = stalk[-1] + np.array([np.cos(angle[-1]), np.sin(angle[-1])]) * length * 0.54
    sway = rng.normal(0, 0.03 * length, 2)
    parts.append(
        leaflet(
            np.array([stalk[-1], (stalk[-1] + final) / 2 + sway, final]),
            length * 0.165,
            unit,
            rng,
            tone=str(rng.choice(greens)),
        )
    )
    for pair in range(pairs):
        index = 38 - round(pair * 27 / max(pairs - 1, 1)) - 3
        size = length * (0.47 - 0.055 * pair)
        for sign in (1, -1):
            out = angle[index] + sign * rng.uniform(0.85, 1.15)
            way = np.array([np.cos(out), np.sin(out)])
            curl = np.array([np.cos(angle[index]), np.sin(angle[index])]) * size * 0.16
            spine = np.array(
                [stalk[index], stalk[index] + way * size * 0.5, stalk[index] + way * size + curl]
            )
            parts.append(
                leaflet(
                    spine, size * rng.uniform(0.28, 0.35), unit, rng, tone=str(rng.choice(greens))
                )
            )
    girth = np.linspace(8, 4, 40) * unit
    parts.append(stem(stalk, girth, unit, rng, tone="8b9a5a", thorns=0))
    return parts


def stem(
    path: Points, girth_px: Points, unit: float, rng: Rng, *, tone: str, thorns: int
) -> Subject:
    """A woody stem with a shaded side, short hatches and hooked thorns."""
    outline = ribbon(path, girth_px)
    side = normals(path) * (girth_px / 2)[:, None]
    lines = [Pen(path + side, 2.2 * unit, swell=False), Pen(path - side, 3.0 * unit, swell=False)]
    washes = [Wash(outline, tone, 0.7), Wash(np.vstack([path, (path - side)[::-1]]), "7a5a48", 0.5)]
    for index in range(2, len(path) - 2):
        for _ in range(2):
            if rng.uniform() < 0.55:
                where = path[index] - side[index]
                end = path[index + 1] + side[index] * rng.uniform(-0.3, 0.4)
                lines.append(Pen(np.linspace(where, end, 4), 1.1 * unit))
    for _ in range(thorns):
        index = int(rng.integers(4, len(path) - 4))
        sign = 1 if rng.uniform() < 0.5 else -1
        out = side[index] / max(np.hypot(*side[index]), 1e-6) * sign
        along = (path[index + 1] - path[index - 1]) / 2
        along = along / max(np.hypot(*along), 1e-6)
        root, size = path[index] + side[index] * sign * 0.9, 17 * unit * rng.uniform(0.8, 1.3)
        hook = spline(
            [
                root + along * size * 0.5,
                root + out * size * 0.6 + along * 0.1 * size,
                root + out * size * 1.05 - along * size * 0.45,
                root + out * size * 0.45 - along * size * 0.25,
                root - along * size * 0.55,
            ],
            per_span=6,
        )
        lines.append(Pen(hook, 1.9 * unit))
        washes.append(Wash(hook, "b4604c", 0.55, edge=0.2))
    return Subject(outline, washes, lines)
