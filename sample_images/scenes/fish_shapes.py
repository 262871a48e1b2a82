"""Where the child put things: outlines and strokes of the fish picture, in picture widths."""

from __future__ import annotations

import numpy as np

from sample_images.materials.curves import Points, spline


def _closed(*points: tuple[float, float]) -> Points:
    return spline(points, closed=True, per_span=14)


BODY = _closed(
    (0.135, 0.372),
    (0.165, 0.300),
    (0.235, 0.225),
    (0.340, 0.180),
    (0.460, 0.180),
    (0.570, 0.220),
    (0.665, 0.292),
    (0.735, 0.345),
    (0.740, 0.392),
    (0.665, 0.448),
    (0.570, 0.520),
    (0.450, 0.562),
    (0.330, 0.556),
    (0.225, 0.505),
    (0.160, 0.440),
)
TAIL = _closed(
    (0.722, 0.368),
    (0.775, 0.315),
    (0.845, 0.225),
    (0.915, 0.178),
    (0.928, 0.225),
    (0.895, 0.315),
    (0.880, 0.370),
    (0.905, 0.440),
    (0.940, 0.520),
    (0.905, 0.548),
    (0.830, 0.495),
    (0.770, 0.415),
)
FINS = (
    (
        _closed(
            (0.345, 0.182),
            (0.370, 0.120),
            (0.430, 0.075),
            (0.500, 0.072),
            (0.530, 0.100),
            (0.530, 0.150),
            (0.560, 0.215),
            (0.470, 0.186),
        ),
        -1.05,
    ),
    (
        _closed(
            (0.400, 0.560),
            (0.420, 0.610),
            (0.470, 0.640),
            (0.525, 0.635),
            (0.530, 0.590),
            (0.520, 0.545),
        ),
        1.05,
    ),
    (
        _closed(
            (0.415, 0.385),
            (0.470, 0.375),
            (0.535, 0.410),
            (0.555, 0.455),
            (0.505, 0.462),
            (0.440, 0.435),
        ),
        0.5,
    ),
)
SAND = _closed(
    (0.015, 0.640),
    (0.16, 0.622),
    (0.33, 0.646),
    (0.50, 0.656),
    (0.68, 0.640),
    (0.85, 0.618),
    (0.985, 0.632),
    (0.985, 0.692),
    (0.50, 0.694),
    (0.015, 0.692),
)
FRIEND = _closed(
    (0.768, 0.146),
    (0.795, 0.118),
    (0.838, 0.112),
    (0.876, 0.138),
    (0.912, 0.112),
    (0.918, 0.148),
    (0.914, 0.182),
    (0.877, 0.158),
    (0.838, 0.184),
    (0.795, 0.176),
)


def _star(x: float, y: float, radius: float) -> Points:
    angles = np.arange(10) * np.pi / 5 - np.pi / 2 + 0.12
    reach = radius * np.where(np.arange(10) % 2, 0.48, 1.0)
    return spline(
        np.stack([x + reach * np.cos(angles), y + reach * np.sin(angles)], axis=1),
        closed=True,
        per_span=6,
    )


STAR = _star(0.735, 0.628, 0.046)
GILL = spline(
    [(0.338, 0.232), (0.372, 0.300), (0.378, 0.390), (0.352, 0.478), (0.322, 0.522)], per_span=16
)
STRIPES = (
    (spline([(0.455, 0.190), (0.482, 0.270), (0.485, 0.340)], per_span=16), 0.036, "7a3fa0"),
    (spline([(0.485, 0.480), (0.478, 0.520), (0.462, 0.548)], per_span=16), 0.036, "7a3fa0"),
    (
        spline([(0.545, 0.222), (0.575, 0.300), (0.578, 0.400), (0.552, 0.510)], per_span=16),
        0.034,
        "1f9d8b",
    ),
    (
        spline([(0.628, 0.280), (0.648, 0.340), (0.648, 0.410), (0.630, 0.455)], per_span=16),
        0.030,
        "e23f7d",
    ),
    (spline([(0.690, 0.325), (0.702, 0.368), (0.694, 0.412)], per_span=16), 0.022, "2f6fc9"),
)


def _wobbly(outline: Points) -> Points:
    return np.vstack([outline, outline[:4]])


INK_LINES = [
    (_wobbly(BODY), 0.0125),
    (_wobbly(TAIL), 0.0115),
    *((_wobbly(fin), 0.0105) for fin, _ in FINS),
]
WEEDS = (
    (
        spline(
            [(0.065, 0.660), (0.085, 0.590), (0.060, 0.520), (0.088, 0.450), (0.070, 0.390)],
            per_span=12,
        ),
        0.017,
        ["2f8f3c", "4fae46", "7cc04a"],
    ),
    (
        spline([(0.115, 0.665), (0.125, 0.615), (0.108, 0.560), (0.130, 0.515)], per_span=12),
        0.015,
        ["57ad3f", "86c24c", "2f8f3c"],
    ),
    (
        spline([(0.952, 0.655), (0.935, 0.600), (0.962, 0.545), (0.950, 0.470)], per_span=12),
        0.016,
        ["2f8f3c", "6ab544", "3d9a3f"],
    ),
    (
        spline([(0.640, 0.668), (0.628, 0.630), (0.645, 0.590), (0.632, 0.555)], per_span=12),
        0.013,
        ["3d9a3f", "86c24c"],
    ),
)


def scales() -> list[Points]:
    """Rows of small U shapes over the middle of the fish, none on the stripes."""
    rows = []
    for x, y in (
        (0.415, 0.235),
        (0.412, 0.300),
        (0.415, 0.348),
        (0.525, 0.285),
        (0.527, 0.345),
        (0.418, 0.480),
        (0.420, 0.525),
        (0.610, 0.300),
        (0.612, 0.372),
        (0.610, 0.440),
        (0.515, 0.235),
        (0.520, 0.500),
        (0.365, 0.520),
        (0.402, 0.200),
    ):
        rows.append(
            spline(
                [
                    (x - 0.010, y - 0.012),
                    (x - 0.003, y + 0.010),
                    (x + 0.009, y + 0.008),
                    (x + 0.013, y - 0.012),
                ],
                per_span=8,
            )
        )
    return rows


def bubbles() -> tuple[list[Points], list[Points]]:
    """Rings that rise from the mouth, and the light on each."""
    rings, lights = [], []
    for x, y, radius in (
        (0.105, 0.345, 0.014),
        (0.082, 0.285, 0.019),
        (0.118, 0.225, 0.013),
        (0.090, 0.160, 0.024),
        (0.150, 0.130, 0.012),
        (0.185, 0.075, 0.018),
        (0.700, 0.190, 0.013),
        (0.672, 0.130, 0.018),
        (0.640, 0.070, 0.012),
    ):
        t = np.linspace(0.4, 2 * np.pi + 0.2, 40)
        rings.append(np.stack([x + radius * np.cos(t), y + radius * 1.05 * np.sin(t)], axis=1))
        arc = np.linspace(3.5, 4.3, 10)
        lights.append(
            np.stack([x + 0.55 * radius * np.cos(arc), y + 0.55 * radius * np.sin(arc)], axis=1)
        )
    return rings, lights
