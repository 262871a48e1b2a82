"""Accents: small places whose colour stands out strongly from all round them."""

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, as_lab
from framing_palette.colour import delta_e_2000, plain_name
from framing_palette.picture.findings import Accent
from framing_palette.picture.resampling import blurred, shrunk

ACCENT_SIDE = 512
"""Accents are sought at most this many pixels long; finer points are dust, grain or glints."""

MIN_SHARE = 0.0005
MAX_SHARE = 0.025
MIN_DELTA_E = 14.0
"""Least ΔE00 between an accent and its surroundings."""

MAX_COMMON_SHARE = 0.04
"""A colour that covers more of the picture than this is no accent anywhere in it."""

SAME_DELTA_E = 9.0
_SURROUND = 0.08  # of the short side
_RING_PX = 4
_NOISE_SIGMA_PX = 0.8


def find_accents(lab_d50: ArrayLike, *, mm_per_px: float | None = None) -> tuple[Accent, ...]:
    """Return the accents of a picture, strongest first.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    mm_per_px
        Scale of these pixels; None leaves the sizes unknown.
    """
    lab = np.asarray(as_lab(lab_d50), dtype=np.float32)
    small = blurred(shrunk(lab, ACCENT_SIDE), _NOISE_SIGMA_PX)
    surround = blurred(small, max(1.0, _SURROUND * min(small.shape[:2])))
    scale = max(small.shape) / max(lab.shape)
    apart = cv2.morphologyEx(
        (delta_e_2000(small, surround) >= MIN_DELTA_E).astype(np.uint8),
        cv2.MORPH_OPEN,
        np.ones((3, 3), np.uint8),
    )
    number, labels, stats, _ = cv2.connectedComponentsWithStats(apart, connectivity=4)
    area = stats[:, cv2.CC_STAT_AREA] / labels.size
    found = []
    for label in range(1, number):
        if MIN_SHARE <= area[label] <= MAX_SHARE:
            accent = _accent(
                small, labels == label, None if mm_per_px is None else mm_per_px / scale
            )
            found += [accent] if accent else []
    return tuple(sorted(found, key=lambda accent: -accent.strength))


def _accent(lab: Float32Array, mask: BoolArray, mm_per_px: float | None) -> Accent | None:
    kernel = np.ones((2 * _RING_PX + 1, 2 * _RING_PX + 1), np.uint8)
    ring = cv2.dilate(mask.astype(np.uint8), kernel).astype(np.bool_) & ~cv2.dilate(
        mask.astype(np.uint8), np.ones((3, 3), np.uint8)
    ).astype(np.bool_)
    colour = np.median(lab[mask], axis=0).astype(np.float64)
    if not ring.any():
        return None
    delta_e = float(delta_e_2000(colour, np.median(lab[ring], axis=0)))
    common = float((delta_e_2000(lab, colour) < SAME_DELTA_E).mean())
    if delta_e < MIN_DELTA_E or common > MAX_COMMON_SHARE:
        return None
    row, column = np.nonzero(mask)
    share = len(row) / mask.size
    return Accent(
        lab=_triple(colour),
        share=share,
        x=float((column.mean() + 0.5) / mask.shape[1]),
        y=float((row.mean() + 0.5) / mask.shape[0]),
        delta_e=delta_e,
        strength=accent_strength(delta_e, share),
        size_mm=None if mm_per_px is None else 2 * mm_per_px * float(np.sqrt(len(row) / np.pi)),
        name=plain_name(colour),
    )


def accent_strength(delta_e: float, share: float) -> float:
    """Return how far an accent stands out, 0..1, growing with difference and size.

    Half of full strength is reached by a difference of 30 ΔE00 on 0.3 % of the picture.
    """
    reach = (delta_e / 30.0) * (share / 0.003) ** 0.25
    return float(reach / (1 + reach))


def _triple(colour: Float64Array) -> tuple[float, float, float]:
    L, a, b = colour.tolist()
    return L, a, b
