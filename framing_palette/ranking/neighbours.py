"""Neighbours: how well two layers of a design sit side by side."""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000_matrix, harmony
from framing_palette.ranking.kinship import kinship
from framing_palette.ranking.near_miss import near_miss
from framing_palette.ranking.ramps import bell, rise
from framing_palette.ranking.rule import Rule

MISTAKE_DELTA_E, MISTAKE_WIDTH = 4.0, 1.6  # two layers this far apart look like a mistake
STEP_DELTA_E = (4.0, 14.0)  # a step that is seen as meant
HARMONY_TOP = 1.7  # no pair can be more harmonious
STEP, MISTAKE, MISS, HARMONY = 0.6, 1.0, 1.5, 0.4
BEST_PAIR = STEP + HARMONY * HARMONY_TOP


def neighbour_merit(lab_1: Float64Array, lab_2: Float64Array, rule: Rule) -> Float64Array:
    """Return the merit of each pair of neighbouring layers, shape (n, m), at most ``BEST_PAIR``.

    A step that is plainly meant adds, one so small that it looks like a mistake takes, and so does
    a hue that almost matches its neighbour's; the same colour twice is neither.

    Parameters
    ----------
    lab_1, lab_2
        Mean colours of the candidates for the two layers, shapes (n, 3) and (m, 3).
    rule
        The limits of a near miss.
    """
    delta_e = np.asarray(delta_e_2000_matrix(lab_1, lab_2))
    kin = kinship(lab_1, lab_2)
    missed = near_miss(kin, np.zeros(len(lab_1)), np.ones(len(lab_2)), rule.limits)
    mistake = bell(delta_e - MISTAKE_DELTA_E, MISTAKE_WIDTH)
    together = np.asarray(harmony(lab_1[:, None, :], lab_2[None, :, :]))
    merit = STEP * rise(delta_e, *STEP_DELTA_E) + HARMONY * np.minimum(together, HARMONY_TOP)
    return np.asarray(merit - MISTAKE * mistake - MISS * missed)
