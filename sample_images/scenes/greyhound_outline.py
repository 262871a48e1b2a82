"""Outlines of the sleeping greyhound, part by part, in picture widths."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from sample_images.materials.curves import Points, resampled, ribbon, spline


@dataclass(frozen=True, slots=True)
class Part:
    """One rounded part: outline in picture widths, its flatness, a tone shift, and its edge.

    `melt` is how softly the part runs into the body behind it, in picture widths.
    """

    outline: Points
    flatten: float = 0.55
    tone: float = 0.0
    melt: float = 0.0012


def closed(*points: tuple[float, float]) -> Points:
    return spline(points, closed=True, per_span=14)


def _limb(points: list[tuple[float, float]], widths: list[float]) -> Points:
    """A band along `points` with round ends."""
    axis = resampled(spline(points, per_span=20), 90)
    breadth = np.interp(np.linspace(0, 1, 90), np.linspace(0, 1, len(widths)), widths)
    steps = np.hypot(*np.diff(axis, axis=0).T).mean() * np.arange(90)
    for end, near in ((widths[0], steps), (widths[-1], steps[::-1])):
        breadth = breadth * np.sqrt(1 - np.clip(1 - (near + 0.0008) / (end * 0.55), 0, 1) ** 2)
    return ribbon(axis, breadth)


BODY = closed(
    (0.395, 0.352),
    (0.435, 0.342),
    (0.490, 0.350),
    (0.550, 0.337),
    (0.620, 0.321),
    (0.690, 0.333),
    (0.748, 0.372),
    (0.785, 0.428),
    (0.796, 0.488),
    (0.770, 0.545),
    (0.690, 0.565),
    (0.600, 0.548),
    (0.520, 0.556),
    (0.440, 0.566),
    (0.375, 0.553),
    (0.338, 0.510),
    (0.332, 0.450),
    (0.352, 0.390),
)
NECK = closed(
    (0.440, 0.346),
    (0.385, 0.350),
    (0.325, 0.370),
    (0.278, 0.402),
    (0.240, 0.424),
    (0.240, 0.470),
    (0.266, 0.502),
    (0.310, 0.512),
    (0.360, 0.520),
    (0.410, 0.480),
    (0.445, 0.410),
)
SHOULDER = closed(
    (0.440, 0.362),
    (0.398, 0.385),
    (0.362, 0.440),
    (0.350, 0.500),
    (0.368, 0.548),
    (0.410, 0.570),
    (0.448, 0.545),
    (0.470, 0.470),
    (0.470, 0.390),
)
THIGH = closed(
    (0.655, 0.372),
    (0.617, 0.412),
    (0.580, 0.460),
    (0.556, 0.505),
    (0.560, 0.538),
    (0.600, 0.556),
    (0.670, 0.562),
    (0.735, 0.572),
    (0.780, 0.548),
    (0.797, 0.492),
    (0.782, 0.430),
    (0.735, 0.376),
    (0.695, 0.360),
)
HEAD = closed(
    (0.262, 0.412),
    (0.238, 0.403),
    (0.212, 0.410),
    (0.188, 0.429),
    (0.150, 0.449),
    (0.116, 0.466),
    (0.094, 0.477),
    (0.085, 0.489),
    (0.091, 0.502),
    (0.118, 0.512),
    (0.160, 0.515),
    (0.205, 0.519),
    (0.245, 0.516),
    (0.276, 0.496),
    (0.286, 0.450),
)
EAR = closed(
    (0.247, 0.412),
    (0.268, 0.404),
    (0.296, 0.416),
    (0.318, 0.443),
    (0.322, 0.463),
    (0.303, 0.460),
    (0.285, 0.449),
    (0.262, 0.446),
    (0.246, 0.432),
)
FAR_LEG = _limb(
    [(0.365, 0.535), (0.26, 0.532), (0.165, 0.530), (0.128, 0.534)],
    [0.036, 0.031, 0.026, 0.027, 0.022],
)
NEAR_LEG = _limb(
    [(0.432, 0.556), (0.36, 0.566), (0.26, 0.560), (0.175, 0.552), (0.128, 0.554), (0.108, 0.560)],
    [0.054, 0.045, 0.034, 0.027, 0.030, 0.031],
)
HIND_FOOT = _limb(
    [(0.762, 0.567), (0.70, 0.585), (0.63, 0.592), (0.572, 0.594), (0.532, 0.600)],
    [0.044, 0.032, 0.026, 0.031, 0.028],
)
TAIL = _limb(
    [
        (0.787, 0.500),
        (0.826, 0.545),
        (0.832, 0.592),
        (0.790, 0.628),
        (0.715, 0.638),
        (0.640, 0.630),
        (0.585, 0.640),
    ],
    [0.034, 0.027, 0.021, 0.017, 0.013, 0.010, 0.007],
)

PARTS = (
    Part(FAR_LEG, 0.5, -0.18),
    Part(BODY, 0.62),
    Part(TAIL, 0.5, -0.02),
    Part(NECK, 0.55, 0.0, 0.016),
    Part(SHOULDER, 0.40, 0.0, 0.018),
    Part(THIGH, 0.50, 0.02, 0.008),
    Part(HIND_FOOT, 0.6, 0.02),
    Part(NEAR_LEG, 0.55, 0.05, 0.0025),
    Part(HEAD, 0.6, 0.03),
    Part(EAR, 0.5, -0.12),
)


def contour_lines() -> list[tuple[Points, float]]:
    """Drawn edges that the artist restates last: line in widths, and its thickness."""
    lines = [
        (BODY[6:116], 0.0022),
        (HEAD[10:118], 0.0020),
        (EAR[10:100], 0.0022),
        (NECK[14:60], 0.0018),
        (THIGH[14:70], 0.0020),
        (NEAR_LEG[92:170], 0.0022),
        (HIND_FOOT[92:170], 0.0022),
        (TAIL[6:84], 0.0016),
    ]
    toes = [
        [(0.106, 0.551), (0.114, 0.557), (0.118, 0.567)],
        [(0.119, 0.547), (0.129, 0.553), (0.134, 0.565)],
        [(0.538, 0.590), (0.546, 0.597), (0.548, 0.606)],
        [(0.551, 0.587), (0.560, 0.595), (0.563, 0.605)],
    ]
    return lines + [(spline(toe), 0.0032) for toe in toes]
