"""Echo: whether the sample repeats a colour that the picture uses with meaning.

A darker, quieter version of a colour repeats it too (a framer's "same family"), so the distance
is not ΔE00 but one whose price for going darker or quieter is low, and the full one for going
lighter, stronger or to another hue. Near the neutral axis, where there is no family, all prices
are full.
"""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.ranking.kinship import Kinship
from framing_palette.ranking.ramps import bell
from framing_palette.ranking.rule import Limits


def family_distance(kinship: Kinship, limits: Limits) -> Float64Array:
    """Return the distance between each sample colour and each picture colour, in ΔE units.

    Returns
    -------
    Shape (s, m). Zero for the same colour; as large as ΔE*94 for a change of hue; smaller than it
    for a darker or quieter version of a chromatic colour.
    """
    shared = np.minimum(kinship.chroma, kinship.target_chroma)
    family = shared / (shared + limits.echo_chroma)  # how surely the two have a hue in common
    darker = 1.0 - (1.0 - limits.echo_darker) * family
    light = kinship.lightness * np.where(kinship.lightness < 0, darker, limits.echo_lighter)
    price = np.where(kinship.strength < 0, limits.echo_quieter, limits.echo_stronger)
    strength = kinship.strength * price
    return np.sqrt(kinship.hue**2 + light**2 + strength**2)


def closeness(kinship: Kinship, limits: Limits) -> Float64Array:
    """Return how well each sample colour repeats each picture colour, 0..1, shape (s, m)."""
    return bell(family_distance(kinship, limits), limits.echo_width)
