"""Whites: what white a picture asks for, from its paper, its light parts and its overall warmth.

A light that runs all round the picture is its paper, and a white beside it must agree with it. A
light elsewhere (a sky, a wall) is part of the scene: where it is cold and the rest of the scene is
warm, or the reverse, the scene as a whole decides (common practice). A picture without any white
is guessed at by its warmth alone.

References
----------
The axis of warmth is that of Ou, Luo, Woodcock, Wright 2004, A study of colour emotion and colour
preference, part I: heat follows the cosine of the hue angle less 50 degrees.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array
from framing_palette.ranking.ramps import rise

WHITE_CHROMA = (9.0, 20.0)  # C*ab between which a light colour stops being a white
WHITE_LIGHTNESS = (68.0, 88.0)  # L* between which a quiet colour becomes a white
LIGHT_FROM = 70.0  # L* from which a colour of the picture may excuse a pale sample
TONE_CHROMA = (18.0, 28.0)  # C*ab between which a colour stops being the tone of a toned print
TONE_SPREAD = (3.0, 8.0)  # spread of (a*, b*) between which a picture stops being of one tone
TONED_COUNTS = 0.3  # weight of the colours of a toned picture
PAPER_SHARE = (0.7, 0.95)  # of the edge: a white that covers it is the paper
PAPER_WHITE_AB = (0.3, 3.0)  # a natural paper white, the guess when the art shows no white
WARM_SHIFT_AB = (1.0, 3.0)  # what the guess moves by beside art that is warm throughout
GUESS_COUNTS, SCENE_COUNTS = 0.04, 0.3  # weights of the guess: alone, and from a plain warmth
PLAINLY_WARM = 8.0  # warmth of a scene, (a*, b*) units times share, that is three quarters plain
AGAINST = (0.0, 3.0)  # warmth of a white against the scene's, between which it stops to count
AGAINST_COUNTS = 0.1  # what is left of a white that goes against the whole scene


@dataclass(frozen=True, slots=True, eq=False)
class Whites:
    """The whites of a picture.

    Parameters
    ----------
    ab
        (a*, b*) of the white that it asks for, shape (2,).
    trust
        How surely it does, 0..1.
    choices
        Shape (k, 2): that white, and the picture's own light colours, each of which will do.
    warmth
        How warm the scene is without its whites, -1 cold to 1 warm.
    shown
        How much of that white the picture shows, rather than its warmth lets one guess, 0..1.
    """

    ab: tuple[float, float]
    trust: float
    choices: Float64Array
    warmth: float
    shown: float


def whites_of(
    art_lab: Float64Array, art_share: Float64Array, rim_lab: Float64Array, rim_share: Float64Array
) -> Whites:
    """Return the whites of a picture.

    Parameters
    ----------
    art_lab, art_share
        Its palette, shapes (k, 3) and (k,).
    rim_lab, rim_share
        The palette of its own edge.
    """
    white = art_share * whiteness(art_lab)
    paper = float(rise(float(rim_share @ whiteness(rim_lab)), *PAPER_SHARE))
    warmth = float(np.tanh(warm((art_share - white) @ art_lab[:, 1:]) / PLAINLY_WARM))
    against = (1.0 - paper) * rise(-warm(art_lab[:, 1:]) * warmth, *AGAINST)
    kept = 1.0 - (1.0 - AGAINST_COUNTS) * against
    seen = white * kept + _tones(art_lab, art_share)
    guessed = GUESS_COUNTS + SCENE_COUNTS * (1.0 - paper) * warmth**2
    guess = np.array(PAPER_WHITE_AB) + warmth * np.array(WARM_SHIFT_AB)
    shown = float(seen.sum())
    ab = (seen @ art_lab[:, 1:] + guessed * guess) / (shown + guessed)
    light = art_lab[:, 0] > LIGHT_FROM
    own = ab + kept[light, None] * (art_lab[light, 1:] - ab)
    return Whites(
        ab=(float(ab[0]), float(ab[1])),
        trust=1.0 - GUESS_COUNTS / (shown + guessed),
        choices=np.vstack([ab, own]),
        warmth=warmth,
        shown=shown / (shown + guessed),
    )


def whiteness(lab: Float64Array) -> Float64Array:
    """Return how far each colour is a white: light and quiet, 0..1, shape (k,)."""
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    return (1.0 - rise(chroma, *WHITE_CHROMA)) * rise(lab[:, 0], *WHITE_LIGHTNESS)


def warm(ab: ArrayLike) -> Float64Array:
    """Return the warmth of (a*, b*), positive warm and negative cold, shape (...,)."""
    axis = np.radians(50.0)
    pair = np.asarray(ab, dtype=np.float64)
    return np.asarray(pair[..., 0] * np.cos(axis) + pair[..., 1] * np.sin(axis))


def _tones(lab: Float64Array, share: Float64Array) -> Float64Array:
    """Return what each colour says of the white of a picture that is all of one quiet tone."""
    mean = share @ lab[:, 1:]
    spread = float(np.sqrt(share @ ((lab[:, 1:] - mean) ** 2).sum(axis=1)))
    quiet = share * (1.0 - rise(np.hypot(lab[:, 1], lab[:, 2]), *TONE_CHROMA))
    return TONED_COUNTS * (1.0 - float(rise(spread, *TONE_SPREAD))) * quiet
