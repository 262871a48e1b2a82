"""The shop's vocabulary: adjectives, each with the measures that make it true."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from math import isnan, nan
from typing import Final, Literal

from framing_palette.catalogue import Kind, Surface
from framing_palette.errors import FieldError

# Praise that no instrument can check.
PRAISE: Final = re.compile(
    r"\b(amazing|awesome|beautiful|best|breathtaking|divine|elegant|exquisite|fabulous|fantastic|"
    r"flawless|gorgeous|gracious|incredible|lovely|luxurious|magnificent|marvell?ous|perfect|"
    r"premium|sensational|splendid|stunning|sublime|superb|timeless|ultimate|unique|wonderful)\b",
    re.IGNORECASE,
)
_PLACE: Final = re.compile(r"\{([a-z]+)\}")
_LIMIT: Final = re.compile(r"(>=|<=) ?(-?\d+(?:\.\d+)?)")


@dataclass(frozen=True, slots=True)
class Descriptors:
    """What can be measured of a sample's look, as ``vocabulary.toml`` explains it; nan is unknown.

    ``finish`` and ``surface`` are the words behind sheen and softness.
    """

    heat: float = nan
    weight: float = nan
    activity: float = nan
    lightness: float = nan
    strength: float = nan
    variety: float = nan
    grain: float = nan
    order: float = nan
    softness: float = nan
    sheen: float = nan
    finish: str = ""
    surface: str = ""


WORDS: Final = {"sheen": "finish", "softness": "surface"}
MEASURES: Final = tuple(
    field.name for field in fields(Descriptors) if field.name not in WORDS.values()
)
_DECIMALS: Final = {"lightness": 0, "strength": 0}
_SIGNED: Final = ("heat", "weight", "activity")


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit on one measure, which itself counts as met."""

    measure: str
    way: Literal[">=", "<="]
    value: float

    def is_met(self, found: Descriptors) -> bool:
        """Tell whether a sample's measure is within the limit; an unknown one never is."""
        value: float = getattr(found, self.measure)
        if isnan(value):
            return False
        return value >= self.value if self.way == ">=" else value <= self.value


@dataclass(frozen=True, slots=True)
class Word:
    """One adjective and what it needs; see ``vocabulary.toml``."""

    say: str
    because: str
    needs: tuple[Limit, ...]
    kinds: tuple[Kind, ...] = ()
    surfaces: tuple[Surface, ...] = ()

    def __post_init__(self) -> None:
        field = f'word "{self.say}"'
        if not self.say.isalpha():
            raise FieldError(field, got="not one word", wanted="say one adjective without spaces")
        for told, words in ((field, self.say), (f"{field} because", self.because)):
            if praise := PRAISE.search(words):
                wanted = "nothing measures that; say what was measured"
                raise FieldError(told, got=f'praise ("{praise[0]}")', wanted=wanted)
        needed = {limit.measure for limit in self.needs}
        shown = set(_PLACE.findall(self.because))
        if not shown or not shown <= needed:
            wanted = f"show at least one of {', '.join(sorted(needed)) or 'the needed measures'}"
            raise FieldError(f"{field} because", got=f'"{self.because}"', wanted=wanted)

    def fits(self, found: Descriptors, kind: Kind, surface: Surface | None) -> bool:
        """Tell whether it can be said of a sample."""
        return (
            (not self.kinds or kind in self.kinds)
            and (not self.surfaces or surface in self.surfaces)
            and all(limit.is_met(found) for limit in self.needs)
        )

    def reason(self, found: Descriptors) -> str:
        """Return why it is said, with the figures in it."""
        return _PLACE.sub(lambda match: figure_words(match[1], found), self.because)


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words, the particular before the general."""

    words: tuple[Word, ...]

    def word_for(
        self,
        found: Descriptors,
        kind: Kind,
        surface: Surface | None = None,
        *,
        besides: frozenset[str] = frozenset(),
    ) -> Word | None:
        """Return the first word that can be said of a sample, but none of ``besides``."""
        return next(
            (
                word
                for word in self.words
                if word.say not in besides and word.fits(found, kind, surface)
            ),
            None,
        )


def figure_words(measure: str, found: Descriptors) -> str:
    """Write a measure for a sentence: ``+0.4``, ``-1.2``, ``5.2``, or ``satin`` and ``suede``."""
    if measure in WORDS:
        return str(getattr(found, WORDS[measure]))
    value: float = getattr(found, measure)
    text = f"{value:.{_DECIMALS.get(measure, 1)}f}"
    sign = "+" if measure in _SIGNED and float(text) > 0 else ""
    return f"{sign}{text}".replace("-", "\N{MINUS SIGN}")


def limits_from_text(needs: Mapping[str, str], field: str) -> tuple[Limit, ...]:
    """Read limits such as ``{"heat": ">= 0.4"}``.

    Raises
    ------
    FieldError
        When a measure or a limit cannot be read.
    """
    limits = []
    for measure, text in needs.items():
        if measure not in MEASURES:
            wanted = f"choose {', '.join(MEASURES)}"
            raise FieldError(f"{field} needs", got=f'"{measure}"', wanted=wanted)
        for part in text.split(","):
            match = _LIMIT.fullmatch(part.strip())
            if match is None:
                wanted = 'write it like ">= 0.4" or ">= 2, <= 6"'
                raise FieldError(f"{field} needs {measure}", got=f'"{text}"', wanted=wanted)
            way: Literal[">=", "<="] = ">=" if match[1] == ">=" else "<="
            limits.append(Limit(measure, way, float(match[2])))
    return tuple(limits)
