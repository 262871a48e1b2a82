"""A rack, pictures and framers made by hand, for tests of taste."""

from collections.abc import Callable

import numpy as np

from framing_palette.picture import Findings
from framing_palette.ranking import HOUSE_RULE, Choice, Ranking, Taste, ranking
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.taste import weights_of
from framing_palette.ranking.taste_choices import qualities_at
from tests.ranking.by_hand import findings, lch, sample

Framer = Callable[[Ranking, str, str], tuple[str, str]]

RACK = [
    sample(f"S{number}", lch(12 + 74 * ((number * 0.618) % 1), 60 * ((number * 0.371) % 1), hue))
    for number, hue in enumerate(np.linspace(0, 360, 160, endpoint=False))
]


def pictures(count: int, seed: int = 3) -> list[Findings]:
    """Pictures of five colours each."""
    rng = np.random.default_rng(seed)

    def one() -> Findings:
        hues = [lch(rng.uniform(20, 85), rng.uniform(4, 50), rng.uniform(0, 360)) for _ in range(5)]
        shares = rng.dirichlet(np.full(5, 2.0)).tolist()
        focus, rim = [(hues[0], 0.6), (hues[1], 0.4)], [(hues[2], 0.5), (hues[3], 0.5)]
        return findings(list(zip(hues, shares, strict=True)), focus=focus, rim=rim)

    return [one() for _ in range(count)]


def rankings(count: int, seed: int = 3) -> list[Ranking]:
    return [ranking(found, RACK) for found in pictures(count, seed)]


def framer(wants: dict[str, float], *, noise: float = 0.0, seed: int = 5) -> Framer:
    """Somebody who weighs some qualities otherwise than the house does."""
    rng = np.random.default_rng(seed)
    own = weights_of(HOUSE_RULE)
    for name, weight in wants.items():
        own[QUALITIES.index(name)] = weight

    def prefers(ranked: Ranking, one: str, two: str) -> tuple[str, str]:
        table = qualities_at(ranked, [ranked.row(one), ranked.row(two)])
        lead = float((table[0] - table[1]) @ own) + float(rng.logistic()) * noise
        return (one, two) if lead > 0 else (two, one)

    return prefers


def shop(
    count: int, *, weights: dict[str, float] | None = None, seed: int = 0, on: int = 8
) -> Taste:
    """Choices among invented qualities, by a shop that follows its own weights without fail."""
    rng = np.random.default_rng(seed)
    own = weights_of(HOUSE_RULE)
    for name, weight in (weights or {}).items():
        own[QUALITIES.index(name)] = weight
    choices = []
    for number in range(count):
        one, two = rng.uniform(0, 1, (2, len(QUALITIES)))
        better, worse = (one, two) if (one - two) @ own > 0 else (two, one)
        choices.append(Choice(tuple(better.tolist()), tuple(worse.tolist()), f"p{number % on}"))
    return Taste(tuple(choices))
