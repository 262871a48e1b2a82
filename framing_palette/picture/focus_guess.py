"""A guess at the focus, for when none was drawn: where colour stands out from what lies round it.

Contrast of a place to its surroundings is added up over three sizes, taken down where the colour
is also that of the picture's edge (most likely ground), and weighed toward the middle. It knows
nothing of faces, words or meaning, and whoever shows it must say that it is a guess.

References
----------
L. Itti, C. Koch, E. Niebur, A model of saliency-based visual attention for rapid scene analysis,
IEEE PAMI 20(11), 1998, for contrasts of centre and surround at several scales.
Y. Wei, F. Wen, W. Zhu, J. Sun, Geodesic saliency using background priors, ECCV 2012, for taking
the picture's edge as ground.
"""

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, as_lab
from framing_palette.colour import delta_e_2000
from framing_palette.picture.histograms import folded
from framing_palette.picture.masks import rim_mask
from framing_palette.picture.outlines import Outline
from framing_palette.picture.resampling import as_float32, blurred, shrunk

GUESS_SIDE = 200
"""The guess is made on a picture at most this many pixels long."""

_SIZES = (0.03, 0.06, 0.1)  # of the diagonal
_SURROUND = 6.0  # times as wide as the centre
_GATHER = 0.035
_LEVEL = 0.5
_MIDDLE, _SPREAD = (0.5, 0.52), 0.3
_EDGE_DEPTH = 0.05
_SAME_GROUND = 14.0
_GROUND_WEIGHT = 4.0
_CELL = 8.0
_EVEN = 1e-2


def guessed_focus(lab_d50: ArrayLike) -> Outline:
    """Return an outline round the place that stands out most, x and y from 0 to 1.

    A picture without any contrast gets its middle.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    """
    lab = shrunk(as_float32(as_lab(lab_d50)), GUESS_SIDE)
    rows, columns = lab.shape[:2]
    diagonal = float(np.hypot(rows, columns))
    standing = as_float32(_contrast(lab, diagonal) * (1.0 - _likeness_to_edge(lab)))
    middle = _towards_middle(rows, columns)
    gathered = blurred(standing, _GATHER * diagonal) * middle
    if gathered.max() < _EVEN:
        gathered = middle
    _, labels = cv2.connectedComponents((gathered >= _LEVEL * gathered.max()).astype(np.uint8))
    return _hull(np.asarray(labels == labels.flat[int(gathered.argmax())]))


def _contrast(lab: Float32Array, diagonal: float) -> Float64Array:
    total = np.zeros(lab.shape[:2])
    for size in _SIZES:
        sigma = size * diagonal / 3
        centre, surround = blurred(lab, max(0.6, sigma)), blurred(lab, max(1.2, sigma * _SURROUND))
        total += delta_e_2000(centre, surround)
    return total


def _likeness_to_edge(lab: Float32Array) -> Float64Array:
    """Return how much each pixel's colour is that of the picture's edge, 0 to 1."""
    cells = folded(lab, cell=_CELL)
    edge = cells.counts(rim_mask(*lab.shape[:2], depth=_EDGE_DEPTH).ravel())
    apart = cells.lab_d50[:, np.newaxis] - cells.lab_d50[edge > 0]
    same = (apart**2).sum(axis=2) < _SAME_GROUND**2
    share = same @ (edge[edge > 0] / edge.sum())
    likeness: Float64Array = 1.0 - np.exp(-_GROUND_WEIGHT * share)
    return likeness[cells.index].reshape(lab.shape[:2])


def _towards_middle(rows: int, columns: int) -> Float64Array:
    y = (np.arange(rows)[:, np.newaxis] + 0.5) / rows
    x = (np.arange(columns) + 0.5) / columns
    off_2 = (x - _MIDDLE[0]) ** 2 + (y - _MIDDLE[1]) ** 2
    return np.asarray(np.exp(-off_2 / (2 * _SPREAD**2)), dtype=np.float64)


def _hull(mask: BoolArray) -> Outline:
    """Return the convex hull of the corners of a mask's pixels, in 0..1."""
    rows, columns = mask.shape
    row, column = np.nonzero(mask)
    corners = np.concatenate(
        [np.stack([column + right, row + down], axis=1) for right in (0, 1) for down in (0, 1)]
    ).astype(np.int32)
    hull = cv2.convexHull(corners)[:, 0, :] / [columns, rows]
    return tuple((float(x), float(y)) for x, y in hull)
