"""Echo: whether the sample repeats a colour that the picture uses with meaning.

A darker, quieter version of a colour repeats it too (a framer's "same family"), so the distance
is not ΔE00 but one whose price for going darker or quieter is low, and the full one for going
lighter, stronger or to another hue. Near the neutral axis, where there is no family, all prices
are full.
"""

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.ranking.kinship import Kinship
from framing_palette.ranking.ramps import bell, rise
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.subjects import Subject

KIN_HUE = 5.0  # ΔE units: hues within it are of one family
KIN_CHROMA = (0.15, 0.4)  # of the picture colour's chroma: below, the family is not seen any more
KIN_LIGHTER = 15.0  # L* units: a tint so much lighter is hardly of the family


def family_distance(kinship: Kinship, limits: Limits) -> Float64Array:
    """Return the distance between each sample colour and each picture colour, in ΔE units.

    Returns
    -------
    Shape (s, m). Zero for the same colour; as large as ΔE*94 for a change of hue; smaller than it
    for a darker or quieter version of a chromatic colour.
    """
    shared = np.minimum(kinship.chroma, kinship.target_chroma)
    family = shared / (shared + limits.echo_family)  # how surely the two have a hue in common
    darker = 1.0 - (1.0 - limits.echo_darker) * family
    quieter = 1.0 - (1.0 - limits.echo_quieter) * family
    light = kinship.lightness * np.where(kinship.lightness < 0, darker, limits.echo_lighter)
    strength = kinship.strength * np.where(kinship.strength < 0, quieter, limits.echo_stronger)
    return np.sqrt(kinship.hue**2 + light**2 + strength**2)


def closeness(kinship: Kinship, limits: Limits) -> Float64Array:
    """Return how well each sample colour repeats each picture colour, 0..1, shape (s, m)."""
    return bell(family_distance(kinship, limits), limits.echo_width)


def family_degree(kin: Kinship, subject: Subject) -> Float64Array:
    """Return how surely each colour is of the family of each telling colour, 0..1, shape (s, m).

    A telling colour is strong and stands apart from the mean of the art. A darker or quieter
    member of its family repeats it as surely as the colour itself (principle 4). Zero for colours
    that are not telling at all.
    """
    told = np.flatnonzero(subject.target_telling > 0)
    degree = np.zeros(kin.hue.shape)
    if len(told):
        among = kin.among(told)
        ratio = among.chroma / np.maximum(among.target_chroma, 1.0)
        lighter = bell(np.maximum(among.lightness, 0.0), KIN_LIGHTER)
        degree[:, told] = bell(among.hue, KIN_HUE) * rise(ratio, *KIN_CHROMA) * lighter
    return degree
