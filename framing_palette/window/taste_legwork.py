"""Taste legwork: what the taste book lets be done in the background."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from framing_palette.catalogue import Kind
from framing_palette.errors import TasteFileError
from framing_palette.ranking import (
    HOUSE_RULE,
    Ranking,
    ReadTaste,
    Shift,
    Taste,
    TasteFit,
    fit_taste,
    judged_by,
    next_question,
    read_taste_file,
    shift_between,
    write_taste_file,
)
from framing_palette.ranking.taste_effect import places_in
from framing_palette.ranking.taste_files import set_aside
from framing_palette.window.runner import Progress


@dataclass(frozen=True, slots=True, eq=False)
class Effect:
    """What the own rule changed: as a whole, and how many places up each sample moved."""

    shift: Shift
    up: NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class About:
    """What a question is to be about: the picture's mark, a kind, and what was sent away."""

    mark: str
    kind: Kind | None = None
    left_out: frozenset[str] = frozenset()


def read_taste(path: Path, progress: Progress) -> ReadTaste:
    """Read a file that was chosen for import.

    Raises
    ------
    TasteFileError
        When it cannot be used.
    """
    progress.tell(0.0)
    return read_taste_file(path)


def read_own_taste(path: Path, progress: Progress) -> ReadTaste:
    """Read the shop's own file; one that is damaged is set aside whole, and said so."""
    progress.tell(0.0)
    if not path.exists():
        return ReadTaste(Taste())
    try:
        return read_taste_file(path)
    except TasteFileError as error:
        aside = set_aside(path)
        kept = f" It is kept as {aside.name}; the choices begin anew." if aside else ""
        return ReadTaste(Taste(), (f"{error}{kept}",))


def write_taste(path: Path, taste: Taste, progress: Progress) -> None:
    """Write a shop's choices.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    progress.tell(0.0)
    write_taste_file(path, taste)


def learned_taste(taste: Taste, progress: Progress) -> TasteFit:
    """Learn from a shop's choices."""
    progress.tell(0.0)
    return fit_taste(taste)


def asked_pair(
    ranked: Ranking, taste: Taste, about: About, progress: Progress
) -> tuple[str, str] | None:
    """Find the two samples to ask about next."""
    progress.tell(0.0)
    return next_question(
        ranked, taste, picture=about.mark, kind=about.kind, left_out=about.left_out
    )


def taste_effect(ranked: Ranking, progress: Progress) -> Effect:
    """Find what the rule of a ranking changed against the house rule."""
    progress.tell(0.0)
    house = judged_by(ranked, HOUSE_RULE)
    return Effect(shift_between(house, ranked), places_in(house) - places_in(ranked))
