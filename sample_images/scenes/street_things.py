"""What stands in the rainy street besides walkers, and how rays meet all of it."""

from __future__ import annotations

import numpy as np

from sample_images.materials.curves import spline
from sample_images.materials.noise import Field, smoothstep
from sample_images.scenes.street_people import Card, Cutout, couple, loop, walker
from sample_images.scenes.street_walls import LAMPS_M


def lamp_post(x_m: float, z_m: float) -> Card:
    """A cast post with a lantern that burns far above white."""
    cut = Cutout(0.9, 5.6, 150)
    cut.shape(
        np.array(
            [
                (-0.045, 4.5),
                (0.045, 4.5),
                (0.065, 1.0),
                (0.12, 0.9),
                (0.15, 0.0),
                (-0.15, 0.0),
                (-0.12, 0.9),
                (-0.065, 1.0),
            ]
        ),
        0.025,
        rim=0.10,
    )
    cut.line(np.array([(-0.28, 4.32), (0.28, 4.32)]), 0.035, 0.03)
    cut.shape(np.array([(-0.15, 4.55), (0.15, 4.55), (0.24, 5.15), (-0.24, 5.15)]), 16.0)
    cut.shape(
        np.array([(-0.28, 5.15), (0.28, 5.15), (0.10, 5.42), (0.0, 5.56), (-0.10, 5.42)]), 0.03
    )
    for x0, x1 in ((-0.15, -0.24), (0.15, 0.24), (0.0, 0.0)):
        cut.line(np.array([(x0, 4.55), (x1, 5.15)]), 0.02, 0.03)
    return cut.card(x_m, z_m)


def car(x_m: float, z_m: float) -> Card:
    """An old round saloon coming on with its headlamps lit."""
    cut = Cutout(2.2, 1.7)
    for side in (-1, 1):
        cut.shape(
            np.array([(0.55, 0.0), (0.80, 0.0), (0.80, 0.42), (0.55, 0.42)]) * (side, 1), 0.01
        )
    cut.shape(
        loop(
            (-0.92, 0.22),
            (-0.96, 0.55),
            (-0.86, 0.82),
            (-0.68, 0.92),
            (-0.56, 1.38),
            (-0.35, 1.52),
            (0.35, 1.52),
            (0.56, 1.38),
            (0.68, 0.92),
            (0.86, 0.82),
            (0.96, 0.55),
            (0.92, 0.22),
            (0.0, 0.17),
        ),
        0.045,
        rim=0.16,
    )
    cut.shape(
        loop((-0.52, 0.98), (-0.44, 1.36), (0.0, 1.42), (0.44, 1.36), (0.52, 0.98), (0.0, 0.95)),
        0.11,
    )
    cut.line(spline([(-0.5, 0.93), (0.0, 0.96), (0.5, 0.93)], per_span=8), 0.03, 0.30)
    cut.shape(loop((-0.20, 0.42), (-0.16, 0.78), (0.16, 0.78), (0.20, 0.42)), 0.16)
    for x in np.linspace(-0.12, 0.12, 6):
        cut.line(np.array([(x, 0.44), (x, 0.76)]), 0.014, 0.02)
    cut.line(np.array([(-0.90, 0.33), (0.90, 0.33)]), 0.06, 0.32)
    turn = np.linspace(0, 2 * np.pi, 24)
    for side in (-1, 1):
        ring = np.stack([side * 0.62 + 0.125 * np.cos(turn), 0.62 + 0.125 * np.sin(turn)], axis=1)
        cut.shape(ring, 0.3)
        cut.shape((ring - (side * 0.62, 0.62)) * 0.8 + (side * 0.62, 0.62), 34.0)
    return cut.card(x_m, z_m)


def bollard(x_m: float, z_m: float) -> Card:
    """A waist-high post at the kerb."""
    cut = Cutout(0.3, 1.05, 200)
    cut.shape(
        loop(
            (-0.07, 0.0),
            (-0.06, 0.85),
            (-0.085, 0.90),
            (0.0, 1.02),
            (0.085, 0.90),
            (0.06, 0.85),
            (0.07, 0.0),
        ),
        0.025,
        rim=0.22,
    )
    return cut.card(x_m, z_m)


def standing() -> list[Card]:
    """Everything that stands in the street, farthest first."""
    cards = [lamp_post(x, z) for x, _, z in LAMPS_M]
    cards += [
        walker(-0.75, 8.6),
        couple(3.05, 17.5),
        walker(-4.9, 27.0, stride=0.4, mirror=True),
        walker(5.3, 36.0, stride=1.2),
        walker(-4.3, 44.0),
        car(1.35, 31.0),
    ]
    cards += [bollard(x, z) for x in (-3.55, 4.3) for z in (5.4, 8.4, 11.4, 14.4, 17.4, 23.4)]
    return sorted(cards, key=lambda card: -card.z_m)


def laid_over(
    cards: list[Card],
    origin: tuple[Field, Field, Field],
    way: tuple[Field, Field, Field],
    light: Field,
    far: Field,
    *,
    haze: float,
) -> None:
    """Lay the cards over the light along each ray, farthest first, in place."""
    for card in cards:
        t = (card.z_m - origin[2]) / np.maximum(way[2], 1e-3)
        u = (origin[0] + way[0] * t - card.x_m) / card.width_m + 0.5
        v = 1 - (origin[1] + way[1] * t) / card.height_m
        met = np.flatnonzero((t > 0.2) & (u > 0) & (u < 1) & (v > 0) & (v < 1) & (t * way[2] < far))
        if not len(met):
            continue
        rows, columns = card.cover.shape
        at = ((v[met] * rows).astype(int), (u[met] * columns).astype(int))
        cover = card.cover[at]
        clear = np.exp(-haze * t[met])
        seen = card.light[at] * np.where(card.light[at] > 1, 1, clear) + 0.36 * (1 - clear)
        light[met] = light[met] * (1 - cover) + seen * cover
        far[met] = np.where(cover > 0.5, t[met], far[met])


def glow_of_mist(x: Field, y: Field) -> Field:
    """Light that hangs in wet air, strongest low down the street; picture fractions."""
    spread = np.exp(-(((x - 0.52) / 0.22) ** 2) - ((y - 0.40) / 0.20) ** 2)
    return (0.10 * spread * smoothstep(-0.2, 0.4, y)).astype(np.float32)
