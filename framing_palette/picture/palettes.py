"""The palette of a region: its dominant colours as a trained eye would list them.

k-means in CIELAB on a fine histogram; how many colours follows from the data: it starts with more
than wanted, and near twins and slivers are merged until all that are left can be told apart and
seen.
"""

import numpy as np

from framing_palette.arrays import Float64Array, UInt8Array
from framing_palette.colour import delta_e_2000_matrix, plain_names
from framing_palette.picture.clusters import STARTS, clustered
from framing_palette.picture.findings import Lab, PaletteColour
from framing_palette.picture.histograms import folded_srgb

MAX_COLOURS = 8
TWIN_DELTA_E = 6.0
"""Two colours of a palette nearer than this (ΔE00) are one colour to a client's eye."""

SHADE_DELTA_E, SHADE_SHARE = 4.0, 0.05
"""A colour below this share must differ by up to this much more, or it is a mere shade."""

SLIVER_SHARE = 0.01
"""A dominant colour with less than this share is an accent's business, not the palette's."""

_QUICK_STARTS = 4  # what a bad start splits wrongly is merged again
_FIRST_COLOURS = 12
"""More than are kept, so that a small colour survives beside a large one with many shades."""


def palette(
    lab_d50: Float64Array, weight: Float64Array, *, count: int | None = None
) -> tuple[PaletteColour, ...]:
    """Return the dominant colours of histogram cells, largest share first.

    Parameters
    ----------
    lab_d50
        Shape (cells, 3), mean CIELAB D50 of each cell.
    weight
        Shape (cells,), pixels in each cell; cells of weight 0 are left out.
    count
        Number of colours, at least 1: plain k-means without any merging. None lets the data
        choose, 1 for an even area and otherwise 2 to 8.

    Returns
    -------
    colours
        Shares sum to one; empty when no cell has any weight.
    """
    filled = weight > 0
    if not filled.any():
        return ()
    starts = _QUICK_STARTS if count is None else STARTS
    found = clustered(lab_d50[filled], weight[filled], count or _FIRST_COLOURS, starts=starts)
    centres, share = found.lab_d50, found.share
    if count is None:
        centres, share = _merged(centres, share)
    order = np.lexsort((*centres.T, -share))
    names = plain_names(centres)
    return tuple(PaletteColour(_lab(centres[i]), float(share[i]), names[i]) for i in order)


def palette_of_srgb(srgb_u8: UInt8Array, *, count: int | None = None) -> tuple[PaletteColour, ...]:
    """Return the dominant colours of 8-bit sRGB pixels, shape (..., 3), of any number."""
    return palette(*folded_srgb(srgb_u8), count=count)


def _merged(centres: Float64Array, share: Float64Array) -> tuple[Float64Array, Float64Array]:
    """Merge two colours at a time until they are few, apart and large enough to be seen."""
    while len(centres) > 1:
        distance = delta_e_2000_matrix(centres, centres)
        np.fill_diagonal(distance, np.inf)
        beyond = distance - _telling_delta_e(share)
        first, second = divmod(int(beyond.argmin()), len(centres))
        if beyond[first, second] >= 0:
            first = int(share.argmin())
            second = int(distance[first].argmin())
            if share[first] >= SLIVER_SHARE:
                if len(centres) <= MAX_COLOURS:
                    break
                first, second = _least_missed(distance, share)
        centres, share = _joined(centres, share, first, second)
    return centres, share


def _telling_delta_e(share: Float64Array) -> Float64Array:
    """Return how far each two colours must be apart to be listed as two, shape (n, n)."""
    smaller = np.minimum(share[:, np.newaxis], share) / SHADE_SHARE
    return np.asarray(TWIN_DELTA_E + SHADE_DELTA_E * np.maximum(1 - smaller, 0), dtype=np.float64)


def _least_missed(distance: Float64Array, share: Float64Array) -> tuple[int, int]:
    """Return the two colours whose merging moves the picture's colours least (Ward's measure)."""
    both = share[:, np.newaxis] * share / (share[:, np.newaxis] + share)
    return divmod(int((distance**2 * both).argmin()), len(share))


def _joined(
    centres: Float64Array, share: Float64Array, first: int, second: int
) -> tuple[Float64Array, Float64Array]:
    both = [first, second]
    mean = np.average(centres[both], axis=0, weights=share[both])
    kept = np.ones(len(share), dtype=np.bool_)
    kept[both] = False
    return np.vstack([centres[kept], mean]), np.append(share[kept], share[both].sum())


def _lab(values: Float64Array) -> Lab:
    L, a, b = values.tolist()
    return L, a, b
