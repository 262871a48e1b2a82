"""Nearness: which samples come near a colour that was pointed at."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import as_lab
from framing_palette.catalogue import Sample
from framing_palette.colour import delta_e_2000
from framing_palette.ranking.columns import columns_of

NEAR_DELTA_E = 15.0
"""Farther than this, nobody would call two colours near."""

COUNTS_FROM_SHARE = 0.15
"""A colour of a sample counts when it covers at least this share of its surface."""


def near_samples(samples: Sequence[Sample], lab: ArrayLike) -> dict[str, float]:
    """Return the codes of the samples near a colour with their ΔE00, nearest first.

    Parameters
    ----------
    samples
        The samples; one without colours is near nothing.
    lab
        The colour, Lab D50, shape (3,).
    """
    columns = columns_of(samples)
    if not len(columns.lab):
        return {}
    difference = np.asarray(delta_e_2000(columns.lab, as_lab(lab)))
    difference = np.where(columns.share >= COUNTS_FROM_SHARE, difference, np.inf)
    nearest = np.minimum.reduceat(difference, columns.start)
    order = np.argsort(nearest, kind="stable")
    return {
        columns.sample(int(index)).code: float(nearest[index])
        for index in order
        if nearest[index] <= NEAR_DELTA_E
    }
