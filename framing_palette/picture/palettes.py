"""The palette of a region: its dominant colours as a trained eye would list them.

k-means in CIELAB on a fine histogram; how many colours follows from the data: it starts with
eight and merges near twins and slivers until all that are left can be told apart and seen.

References
----------
S. Lloyd, Least squares quantization in PCM, 1982; D. Arthur and S. Vassilvitskii, k-means++, 2007
(both as in scikit-learn).
"""

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from framing_palette.arrays import Float64Array, UInt8Array
from framing_palette.colour import delta_e_2000_matrix, plain_name
from framing_palette.picture.findings import PaletteColour
from framing_palette.picture.histograms import folded_srgb

MAX_COLOURS = 8
TWIN_DELTA_E = 6.0
"""Two colours of a palette nearer than this (ΔE00) are one colour to a client's eye."""

SLIVER_SHARE = 0.01
"""A dominant colour with less than this share is an accent's business, not the palette's."""

_STARTS = 8


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
        Number of colours, at least 1; None lets the data choose, 1 for an even area and
        otherwise 2 to 8.

    Returns
    -------
    colours
        Shares sum to one; empty when no cell has any weight.
    """
    filled = weight > 0
    lab_d50, weight = lab_d50[filled], weight[filled]
    if not len(weight):
        return ()
    centres, label = _clustered(lab_d50, weight, count or MAX_COLOURS)
    share = np.bincount(label, weight, minlength=len(centres)) / weight.sum()
    if count is None:
        centres, share = _merged(centres, share)
    order = np.lexsort((*centres.T, -share))
    return tuple(
        PaletteColour(lab=_lab(centres[i]), share=float(share[i]), name=plain_name(centres[i]))
        for i in order
    )


def palette_of_srgb(srgb_u8: UInt8Array, *, count: int | None = None) -> tuple[PaletteColour, ...]:
    """Return the dominant colours of 8-bit sRGB pixels, shape (..., 3), of any number."""
    return palette(*folded_srgb(srgb_u8), count=count)


def _clustered(
    lab_d50: Float64Array, weight: Float64Array, count: int
) -> tuple[Float64Array, NDArray[Any]]:
    from sklearn.cluster import KMeans

    count = min(count, len(lab_d50))
    fitted = KMeans(count, n_init=_STARTS, random_state=0).fit(lab_d50, sample_weight=weight)
    return fitted.cluster_centers_, fitted.labels_


def _merged(centres: Float64Array, share: Float64Array) -> tuple[Float64Array, Float64Array]:
    """Merge the nearest two, or the smallest with its nearest, until neither is called for."""
    while len(centres) > 1:
        distance = delta_e_2000_matrix(centres, centres)
        np.fill_diagonal(distance, np.inf)
        smallest = int(np.argmin(share))
        first, second = divmod(int(np.argmin(distance)), len(centres))
        if distance[first, second] >= TWIN_DELTA_E:
            if share[smallest] >= SLIVER_SHARE:
                break
            first, second = smallest, int(np.argmin(distance[smallest]))
        centres, share = _joined(centres, share, first, second)
    return centres, share


def _joined(
    centres: Float64Array, share: Float64Array, first: int, second: int
) -> tuple[Float64Array, Float64Array]:
    both = [first, second]
    mean = np.average(centres[both], axis=0, weights=share[both])
    kept = np.ones(len(share), dtype=np.bool_)
    kept[both] = False
    return np.vstack([centres[kept], mean]), np.append(share[kept], share[both].sum())


def _lab(values: ArrayLike) -> tuple[float, float, float]:
    L, a, b = np.asarray(values, dtype=np.float64).tolist()
    return L, a, b
