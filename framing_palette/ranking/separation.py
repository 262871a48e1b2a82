"""Separation: how far a sample stands from what it will touch."""

from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000_matrix
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.ramps import rise
from framing_palette.ranking.subjects import Subject

QUIET_CHROMA = (12.0, 24.0)  # C*ab between which a colour stops being a neutral
CLEAR_STEP = (10.0, 40.0)  # L* between which a neutral comes to stand clear of the edge
PLAIN_BLACK, PLAIN_WHITE = (-32.0, -16.0), (76.0, 90.0)  # -L*, L*: where it becomes either
MIDDLE_COUNTS = 0.35  # what a middle grey has of the plainness of black and white
OWN_SIDE = 0.7  # a border is seen against what it touches more than the reverse
MAIN_SHARE = (0.02, 0.15)  # shares of the edge between which a colour becomes a main part of it
SMALL_PART = 8.0  # ΔE00 by which a small part of the edge counts as further off


@dataclass(frozen=True, slots=True, eq=False)
class Separation:
    """Differences between n samples and what they touch, each of shape (n,)."""

    delta_e: Float64Array
    settling: Float64Array  # ΔE00 to the nearest main colour of what it touches
    lightness: Float64Array  # L*, sample less what it touches
    chroma: Float64Array  # C*ab, sample less what it touches
    hue: Float64Array  # metric hue difference, never negative


def separation(columns: SampleColumns, subject: Subject) -> Separation:
    """Return the separation of every sample.

    ``delta_e`` compares palette with palette: each of the sample's colours with its nearest
    neighbour across the edge, and the reverse, so that a sample equal to the rim has 0.
    ``settling`` compares the sample's colours alone, a small part of the edge counting as further
    off: a sample equal to any main colour of the edge has about 0.
    """
    matrix = np.asarray(delta_e_2000_matrix(columns.lab, subject.rim_lab))
    main = rise(subject.rim_share / subject.rim_share.sum(), *MAIN_SHARE)
    own = columns.per_sample(matrix.min(axis=1))
    if len(columns):
        other = np.minimum.reduceat(matrix, columns.start, axis=0) @ subject.rim_share
    else:
        other = own
    rim = subject.rim_share @ subject.rim_lab
    mean = columns.mean_lab
    chroma, rim_chroma = np.hypot(mean[:, 1], mean[:, 2]), float(np.hypot(rim[1], rim[2]))
    dot = mean[:, 1:] @ rim[1:]
    return Separation(
        delta_e=OWN_SIDE * own + (1.0 - OWN_SIDE) * other,
        settling=columns.per_sample((matrix + SMALL_PART * (1.0 - main)).min(axis=1)),
        lightness=mean[:, 0] - rim[0],
        chroma=chroma - rim_chroma,
        hue=np.sqrt(np.maximum(2.0 * (chroma * rim_chroma - dot), 0.0)),
    )


def foil(lab: Float64Array, subject: Subject) -> Float64Array:
    """Return how far each colour is a plain foil: a quiet neutral that stands clear of the edge.

    0..1, shape (k,). A grey of much the same depth as what it touches is none: it neither settles
    nor stands apart.
    """
    quiet = 1.0 - rise(np.hypot(lab[:, 1], lab[:, 2]), *QUIET_CHROMA)
    gap = np.abs(lab[:, 0] - float(subject.rim_share @ subject.rim_lab[:, 0]))
    return quiet * rise(gap, *CLEAR_STEP)


def plainness(lab: Float64Array) -> Float64Array:
    """Return how plain each lightness is, shape (k,): 1 for black and white, less for a grey.

    Black and white go beside anything, a middle grey does not (common practice).
    """
    ends = np.maximum(rise(lab[:, 0], *PLAIN_WHITE), rise(-lab[:, 0], *PLAIN_BLACK))
    return MIDDLE_COUNTS + (1.0 - MIDDLE_COUNTS) * ends
