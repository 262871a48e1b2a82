"""What a colour might really be, given how well it was measured.

A verdict that turns over when colours move by the measuring error should say so; these draws are
what it is tried on.

References
----------
FADGI 2023, Technical guidelines for digitizing cultural heritage materials: grades by the mean
CIEDE2000 of a capture (under 2 for the best). The error's shape, even in every direction and
falling off as a normal distribution, is this program's own choice.
"""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, as_lab
from framing_palette.colour.difference import delta_e_2000
from framing_palette.errors import FieldError

_ROUNDS = 6  # of the search for an error's length; each leaves about a tenth of what was missing


def drawn_colours(
    lab_d50: ArrayLike, *, mean_delta_e: float, draws: int, seed: int
) -> Float64Array:
    """Draw colours around each colour whose CIEDE2000 from it has a given mean.

    Parameters
    ----------
    lab_d50
        Shape (..., 3).
    mean_delta_e
        Mean CIEDE2000 of the draws, 0 or more.
    draws
        How many.
    seed
        Same seed, same draws.

    Returns
    -------
    Shape (draws, ..., 3); L* is not clipped, so that draws around white stay even.

    Raises
    ------
    ShapeError
        When the last axis is not 3 long.
    FieldError
        When the mean is negative or not finite, or there is not one draw.
    """
    lab = as_lab(lab_d50).astype(np.float64, copy=False)
    if not 0.0 <= mean_delta_e < np.inf:
        raise FieldError("mean_delta_e", got=mean_delta_e, wanted="give a number of 0 or more")
    if draws < 1:
        raise FieldError("draws", got=draws, wanted="draw at least one")
    rng = np.random.default_rng(seed)
    direction = rng.normal(size=(draws, *lab.shape))
    direction /= np.linalg.norm(direction, axis=-1, keepdims=True)
    # The length of a normal error in three dimensions, scaled to a mean of 1.
    share = np.linalg.norm(rng.normal(size=(draws, *lab.shape)), axis=-1) / np.sqrt(8.0 / np.pi)
    wanted = mean_delta_e * share
    length = wanted.copy()
    for _ in range(_ROUNDS):
        reached = delta_e_2000(lab, lab + direction * length[..., None])
        length *= np.divide(wanted, reached, out=np.ones_like(wanted), where=reached > 0.0)
    return np.asarray(lab + direction * length[..., None])
