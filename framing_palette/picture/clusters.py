"""k-means in CIELAB on weighted histogram cells, from many starts, on one thread.

One thread because the cells are few: more threads only wait for each other, the longer the busier
the machine.

References
----------
S. Lloyd, Least squares quantization in PCM, 1982; D. Arthur, S. Vassilvitskii, k-means++, 2007
(both as in scikit-learn).
"""

import functools
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.picture.histograms import coarser

if TYPE_CHECKING:
    from threadpoolctl import ThreadpoolController

SEED = 0
STARTS = 12
"""Enough to find the best eight clusters of a photograph nearly always."""

START_TOLERANCE, POLISH_TOLERANCE = 1e-4, 1e-6
POLISH_ROUNDS = 300
COARSE_CELL = 8.0
_FEW_CELLS = 300


@dataclass(frozen=True, slots=True, eq=False)
class Clusters:
    """Cells gathered round centres.

    Parameters
    ----------
    lab_d50
        Shape (clusters, 3): weighted mean of each cluster.
    share
        Shape (clusters,), summing to one.
    label
        Shape (cells,): the cluster of each cell.
    """

    lab_d50: Float64Array
    share: Float64Array
    label: NDArray[np.intp]


def clustered(
    lab_d50: Float64Array, weight: Float64Array, count: int, *, starts: int = STARTS
) -> Clusters:
    """Return at most `count` clusters of weighted colours.

    The starts are tried on a coarser histogram, where they cost little, and the best one is run to
    convergence on the cells as given.

    Parameters
    ----------
    lab_d50
        Shape (cells, 3), CIELAB D50.
    weight
        Shape (cells,), each above 0.
    count
        At least 1.
    starts
        How many starts to try.
    """
    count = min(count, len(lab_d50))
    coarse_lab, coarse_weight = lab_d50, weight
    if len(lab_d50) > _FEW_CELLS:
        coarse_lab, coarse_weight = coarser(lab_d50, weight, cell=COARSE_CELL)
    if len(coarse_lab) <= count:
        coarse_lab, coarse_weight = lab_d50, weight
    begun = _fitted(coarse_lab, coarse_weight, count, "k-means++", starts)
    if coarse_lab is lab_d50:
        return _clusters(lab_d50, weight, begun.labels_)
    polished = _fitted(lab_d50, weight, count, begun.cluster_centers_, 1)
    return _clusters(lab_d50, weight, polished.labels_)


def _fitted(
    lab_d50: Float64Array, weight: Float64Array, count: int, begin: Any, starts: int
) -> Any:
    from sklearn.cluster import KMeans

    model = KMeans(
        count,
        init=begin,
        n_init=starts,
        random_state=SEED,
        tol=START_TOLERANCE if starts > 1 else POLISH_TOLERANCE,
        max_iter=POLISH_ROUNDS,
    )
    with _threads().limit(limits=1, user_api="openmp"):
        return model.fit(lab_d50, sample_weight=weight)


def _clusters(lab_d50: Float64Array, weight: Float64Array, label: NDArray[Any]) -> Clusters:
    used, label = np.unique(label, return_inverse=True)
    total = np.bincount(label, weight, len(used))
    sums = [np.bincount(label, weight * lab_d50[:, axis], len(used)) for axis in range(3)]
    return Clusters(
        lab_d50=np.stack(sums, axis=1) / total[:, np.newaxis],
        share=total / weight.sum(),
        label=label.astype(np.intp),
    )


@functools.cache
def _threads() -> "ThreadpoolController":
    import sklearn.cluster  # noqa: F401 - its OpenMP must be loaded to be found
    from threadpoolctl import ThreadpoolController

    return ThreadpoolController()
