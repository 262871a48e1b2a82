"""The house rule: every limit and weight of the judgement, in one place.

The numbers are common practice put into figures, tuned on the planted cases of
``tests/judgement``; a shop moves the weights by its own choices (see ``taste``).
"""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Limits:
    """Where one verdict ends and another begins, and the scales of the measures.

    Parameters
    ----------
    blend_delta_e
        At most this ΔE00 from a main colour of what it touches, a sample settles into it.
    clash
        A fault at or above this (0..1) is a clash; any one fault is enough.
    related
        From here on (0..1) a sample has to do with the picture, and can complement it.
    echo_width
        Family distance, in ΔE units, at which an echo has fallen to 0.61.
    echo_darker, echo_quieter
        What is left of the price of going darker or quieter within a family of hues.
    echo_lighter, echo_stronger
        The price of going lighter or stronger; 1 is that of ΔE*94.
    echo_family
        C*ab at which two colours share a family of hues by half.
    near_miss_inner, near_miss_outer
        Hue differences (ΔE units) between which a hue is neither the same nor another one.
    near_miss_chroma
        C*ab from which a colour is strong enough to be a near miss.
    strong_chroma
        C*ab that counts as strong in the quietest picture.
    strength_allowance
        C*ab that a border may have however quiet the focus is.
    strength_scale
        C*ab beyond the focus that halves what is left of the patience.
    bright_scale
        L* units above the focus's light tones that count as one step.
    warmth_limit
        Difference in (a*, b*) between a pale sample and the whites of the picture at which it is
        plainly the wrong white.
    pale_lightness
        L* from which a quiet colour is taken for a white.
    """

    blend_delta_e: float = 5.0
    clash: float = 0.5
    related: float = 0.5
    echo_width: float = 7.0
    echo_darker: float = 0.18
    echo_quieter: float = 0.18
    echo_lighter: float = 1.0
    echo_stronger: float = 1.2
    echo_family: float = 7.0
    near_miss_inner: float = 4.0
    near_miss_outer: float = 22.0
    near_miss_chroma: float = 28.0
    strong_chroma: float = 40.0
    strength_allowance: float = 28.0
    strength_scale: float = 22.0
    bright_scale: float = 8.0
    warmth_limit: float = 10.0
    pale_lightness: float = 80.0


@dataclass(frozen=True, slots=True)
class Weights:
    """What each quality (0..1) adds to, and each fault (0..1) takes from, a sample's merit.

    Merit is a log-odds: one unit more doubles to triples the odds of being preferred.
    """

    echo: float = 2.4
    kin: float = 3.6
    meaning: float = 2.8
    cover: float = 1.7
    foil: float = 2.4
    harmony: float = 0.2
    texture: float = 1.2
    softness: float = 1.2
    depth: float = 0.7
    vivid: float = -4.5
    bright: float = -0.3
    pull: float = -0.2
    warmth: float = -3.2
    near_miss: float = -2.5
    stray: float = -2.0
    glitter: float = -1.2
    base: float = -2.0


@dataclass(frozen=True, slots=True)
class Rule:
    """Limits and weights together; the house rule unless a shop has taught its own."""

    limits: Limits = field(default_factory=Limits)
    weights: Weights = field(default_factory=Weights)
    clash_ceiling: float = 0.35  # scores of clashes lie below, all others above
    score_slope: float = 0.7  # how fast the score follows the merit


HOUSE_RULE = Rule()
