"""How different two colours look: CIEDE2000, exact, and fast enough for whole pictures.

Everything runs in float64: at the hue discontinuity float32 is wrong by 0.06.

References
----------
ISO/CIE 11664-6:2022.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, FloatArray, as_lab
from framing_palette.colour.ciede2000 import ciede2000
from framing_palette.colour.slabs import SLAB_ELEMENTS, Slab, work_through
from framing_palette.errors import ShapeError


def delta_e_2000(lab_d50_1: ArrayLike, lab_d50_2: ArrayLike) -> Float64Array:
    """Return the CIEDE2000 difference of colours, all parametric factors 1.

    Parameters
    ----------
    lab_d50_1, lab_d50_2
        Shapes (..., 3) that broadcast together. The formula was fitted to small differences; far
        above about 5 it ranks colours rather than measures them.

    Returns
    -------
    Broadcast shape (...), float64; nan where an input is nan.

    Raises
    ------
    ShapeError
        When a last axis is not 3 long, or the shapes do not broadcast.

    Examples
    --------
    >>> float(delta_e_2000([50.0, 2.5, 0.0], [50.0, 0.0, -2.5]).round(4))
    4.3065
    """
    lab_1, lab_2 = as_lab(lab_d50_1, name="lab_d50_1"), as_lab(lab_d50_2, name="lab_d50_2")
    try:
        shape = np.broadcast_shapes(lab_1.shape[:-1], lab_2.shape[:-1])
    except ValueError as mismatch:
        raise ShapeError(
            name="lab_d50_2", wanted=f"to broadcast with {lab_1.shape}", got=lab_2.shape
        ) from mismatch
    difference = np.empty(shape or (1,))
    full = [np.broadcast_to(lab, (*difference.shape, 3)) for lab in (lab_1, lab_2)]
    planes = [lab[..., channel] for channel in range(3) for lab in full]

    def worker(slabs: Iterator[Slab]) -> None:
        _fill(difference, planes, slabs)

    work_through(difference.shape, worker)
    return difference.reshape(shape)


def delta_e_2000_matrix(lab_d50_1: ArrayLike, lab_d50_2: ArrayLike) -> Float64Array:
    """Return the CIEDE2000 difference of each colour of one list to each of another.

    Parameters
    ----------
    lab_d50_1, lab_d50_2
        Shapes (n, 3) and (m, 3).

    Returns
    -------
    Shape (n, m), float64.

    Raises
    ------
    ShapeError
        When either is not a list of colours.
    """
    lab_1, lab_2 = as_lab(lab_d50_1, name="lab_d50_1"), as_lab(lab_d50_2, name="lab_d50_2")
    for name, lab in (("lab_d50_1", lab_1), ("lab_d50_2", lab_2)):
        if lab.ndim != 2:
            raise ShapeError(name=name, wanted="(n, 3)", got=lab.shape)
    return delta_e_2000(lab_1[:, None, :], lab_2[None, :, :])


def _fill(difference: Float64Array, planes: list[FloatArray], slabs: Iterator[Slab]) -> None:
    """Compute slabs of a difference array, reusing one set of buffers for all of them."""
    room = min(SLAB_ELEMENTS, difference.size)
    pairs, singles = np.empty((5, 2, room)), np.empty((6, room))
    with np.errstate(all="ignore"):  # nan and inf pass through silently
        for slab in slabs:
            target = difference[slab]
            size = target.size
            for plane, buffer in zip(planes, pairs[:3].reshape(6, -1), strict=True):
                np.copyto(buffer[:size].reshape(target.shape), plane[slab])
            total = ciede2000(pairs[:, :, :size], singles[:, :size])
            target[...] = total.reshape(target.shape)
