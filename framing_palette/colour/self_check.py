"""Self-check: whether this installation's colour difference still gives the published values.

A dozen of the 34 pairs of Sharma, Wu and Dalal (2005), "The CIEDE2000 color-difference formula:
implementation notes, supplementary test data, and mathematical observations", Color Research and
Application 30(1), 21-30, table 1: those at the hue discontinuity, near black and near grey, where
a wrong formula or a broken numerical library shows first.
"""

from typing import Final

import numpy as np

from framing_palette.colour.difference import delta_e_2000

PUBLISHED_ERROR: Final = 5e-5
"""Half a unit of the last printed digit."""

_PAIRS: Final = (
    (50.0, 2.6772, -79.7751, 50.0, 0.0, -82.7485, 2.0425),
    (50.0, -1.3802, -84.2814, 50.0, 0.0, -82.7485, 1.0),
    (50.0, 0.0, 0.0, 50.0, -1.0, 2.0, 2.3669),
    (50.0, 2.49, -0.001, 50.0, -2.49, 0.0009, 7.1792),
    (50.0, 2.49, -0.001, 50.0, -2.49, 0.0011, 7.2195),
    (50.0, 2.5, 0.0, 73.0, 25.0, -18.0, 27.1492),
    (50.0, 2.5, 0.0, 58.0, 24.0, 15.0, 19.4535),
    (60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644),
    (22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.0373),
    (90.8027, -2.0831, 1.441, 91.1528, -1.6435, 0.0447, 1.4441),
    (6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377),
    (2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 0.9082),
)


def greatest_error() -> float:
    """Return the largest distance from the published values, in ΔE00; right below 5e-5."""
    table = np.asarray(_PAIRS, dtype=np.float64)
    found = delta_e_2000(table[:, 0:3], table[:, 3:6])
    return float(np.max(np.abs(found - table[:, 6])))
