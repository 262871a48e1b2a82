"""Petals, stamens and hips of the invented briar."""

from __future__ import annotations

import numpy as np

from sample_images.materials.curves import Points, rotated, spline
from sample_images.materials.plate import Pen, Subject, Wash

Rng = np.random.Generator


PETAL = np.array(
    [
        (0.02, 0.0),
        (0.10, -0.10),
        (0.36, -0.30),
        (0.70, -0.46),
        (0.95, -0.37),
        (1.03, -0.16),
        (0.955, -0.01),
        (1.03, 0.15),
        (0.94, 0.37),
        (0.68, 0.46),
        (0.35, 0.29),
        (0.10, 0.09),
    ]
)


def petal(
    middle: Points, turn: float, radius: float, squash: float, *, unit: float, rng: Rng
) -> Subject:
    """One notched petal of a flower seen at a tilt; veins run out from its claw."""
    shape = spline(PETAL + rng.normal(0, 0.014, PETAL.shape), closed=True, per_span=10)

    def place(points: Points) -> Points:
        turned = rotated(points * radius, turn)
        return turned * (1, squash) + middle

    outline = place(shape)
    blush = place(
        np.array(
            [
                (0.50, -0.34),
                (0.72, -0.46),
                (0.96, -0.36),
                (1.03, -0.15),
                (0.95, 0.0),
                (1.03, 0.15),
                (0.94, 0.37),
                (0.68, 0.45),
                (0.62, 0.15),
                (0.66, -0.12),
            ]
        )
    )
    washes = [
        Wash(outline, "e7a3a4", 0.55, fade_from=tuple(middle), fade_px=radius * 1.0, edge=0.8),
        Wash(
            spline(blush, closed=True, per_span=8),
            "d9757f",
            rng.uniform(0.35, 0.55),
            soft_px=4 * unit,
            fade_from=tuple(middle),
            fade_px=radius,
        ),
        Wash(
            place(np.array([(0.05, -0.08), (0.34, -0.16), (0.34, 0.16), (0.05, 0.08)])),
            "e9cf74",
            0.35,
            soft_px=8 * unit,
        ),
    ]
    lines = [Pen(np.vstack([outline, outline[:2]]), 2.5 * unit, swell=False)]
    for spread in np.linspace(-0.85, 0.85, 13):
        far = rng.uniform(0.45, 0.86)
        near = rng.uniform(0.16, 0.26)
        vein = place(
            spline(
                [
                    (near, spread * near * 0.62),
                    (0.42, spread * 0.29),
                    (far, spread * (far * 0.62 - 0.12 * far**2)),
                ],
                per_span=8,
            )
        )
        lines.append(Pen(vein, 1.15 * unit))
    for index in range(22, 100, 2):
        if rng.uniform() < 0.7:
            inward = shape[index] * rng.uniform(0.86, 0.94)
            lines.append(Pen(place(np.linspace(shape[index], inward, 4)), 1.0 * unit))
    return Subject(outline, washes, lines)


def stamens(middle: Points, radius: float, squash: float, unit: float, rng: Rng) -> Subject:
    """A ring of threads with golden anthers about a green eye."""
    lines, washes = [], []
    for turn in np.linspace(0, 2 * np.pi, 58, endpoint=False):
        reach = radius * rng.uniform(0.55, 1.05)
        bend = turn + rng.normal(0, 0.16)
        out = np.array([np.cos(bend), np.sin(bend) * squash])
        start = middle + np.array([np.cos(turn), np.sin(turn) * squash]) * radius * 0.22
        end = middle + out * reach
        lines.append(
            Pen(
                spline([start, (start + end) / 2 + rng.normal(0, 1.5 * unit, 2), end], per_span=5),
                1.1 * unit,
            )
        )
        dot = end + 5.2 * unit * rotated(
            np.array([(-1, 0), (0, -0.62), (1, 0), (0, 0.62)]), bend + 1.2
        )
        lines.append(Pen(np.vstack([dot, dot[:1]]), 1.5 * unit, swell=False))
        washes.append(Wash(dot, "d89a2b", 1.1, edge=0.2))
    eye = middle + radius * 0.25 * np.array(
        [(-1, 0), (-0.6, -0.7), (0.2, -0.9), (0.95, -0.3), (0.8, 0.6), (0, 0.9), (-0.8, 0.6)]
    ) * (1, squash)
    eye = spline(eye, closed=True, per_span=6)
    lines.append(Pen(np.vstack([eye, eye[:1]]), 1.8 * unit, swell=False))
    for _ in range(26):
        place = middle + rng.normal(0, radius * 0.10, 2) * (1, squash)
        lines.append(Pen(place + np.array([(-1.2, 0), (0, 0.6), (1.2, 0)]) * unit, 2.0 * unit))
    halo = middle + radius * 0.8 * np.array([(-1, 0), (0, -1), (1, 0), (0, 1)]) * (1, squash)
    washes.append(Wash(spline(halo, closed=True), "e6c25a", 0.32, soft_px=10 * unit))
    washes.append(Wash(eye, "9aa84c", 0.9))
    return Subject(eye, washes, lines)


def hip(
    top: Points, turn: float, length: float, unit: float, rng: Rng, *, tone: str = "c8402b"
) -> list[Subject]:
    """A ripe hip with its withered crown, hanging along `turn`; a lifted light on one side."""
    profile = np.array(
        [
            (0.0, -0.06),
            (0.10, -0.20),
            (0.36, -0.35),
            (0.66, -0.33),
            (0.90, -0.15),
            (0.98, -0.08),
            (0.98, 0.08),
            (0.90, 0.15),
            (0.66, 0.33),
            (0.36, 0.35),
            (0.10, 0.20),
            (0.0, 0.06),
        ]
    )

    def place(points: Points) -> Points:
        return rotated(np.asarray(points) * length, turn) + top

    body = place(spline(profile, closed=True, per_span=8))
    glint = place(np.array([[0.36, 0.14]]))[0]
    washes = [
        Wash(body, tone, 0.85, fade_from=tuple(glint), fade_px=length * 0.30, edge=0.5),
        Wash(
            place(
                spline(
                    [
                        (0.08, -0.16),
                        (0.36, -0.34),
                        (0.68, -0.32),
                        (0.92, -0.12),
                        (0.66, -0.10),
                        (0.34, -0.14),
                    ],
                    closed=True,
                    per_span=8,
                )
            ),
            "8c2436",
            0.75,
            soft_px=5 * unit,
        ),
        Wash(body, "e08a3a", 0.25),
    ]
    lines = [Pen(np.vstack([body, body[:1]]), 2.6 * unit, swell=False)]
    for step in np.linspace(0.08, 0.9, 26):
        edge = -np.interp(step, [0, 0.1, 0.36, 0.66, 0.9, 1], [0.06, 0.2, 0.35, 0.33, 0.15, 0.1])
        deep = edge * rng.uniform(0.35, 0.62)
        lines.append(
            Pen(
                place(
                    spline(
                        [
                            (step, edge * 0.98),
                            (step + 0.03, (edge + deep) / 2),
                            (step + 0.035, deep),
                        ],
                        per_span=5,
                    )
                ),
                1.25 * unit,
            )
        )
    crown = []
    for spread in np.linspace(-0.9, 0.9, 5):
        far = (1.24 + rng.uniform(-0.03, 0.06), spread * 0.26)
        sepal = place(
            spline(
                [
                    (0.97, spread * 0.05 - 0.025),
                    (1.10, spread * 0.17 - 0.035),
                    far,
                    (1.10, spread * 0.17 + 0.035),
                    (0.97, spread * 0.05 + 0.025),
                ],
                per_span=6,
            )
        )
        crown.append(
            Subject(sepal, [Wash(sepal, "7d6a48", 0.7)], [Pen(sepal, 1.8 * unit, swell=False)])
        )
    return [Subject(body, washes, lines), *crown]
