"""Patterns of finished sentences, and the same sentences in another language.

A pattern is an English sentence with numbered slots: ``Repeats the {0} of {1}.`` What stands in a
slot is translated in its turn where a pattern fits it, and else stays as it is: names, figures.
"""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

SLOT: Final = re.compile(r"\{(\d+)\}")
_JOINTS: Final = tuple(
    re.compile(joint) for joint in (r"(\n+)", r"((?<=[.!?]) )", r"(; )", r"(: )", r"( · )", r"(, )")
)
_DEEPEST: Final = 12


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern in both languages.

    Parameters
    ----------
    fits
        What an English sentence looks like; one group a slot.
    places
        Number of the slot that each group is.
    weight
        Letters outside the slots: the heavier pattern is the surer one.
    told
        The sentence in the other language, with the same slots.
    """

    fits: re.Pattern[str]
    places: tuple[int, ...]
    weight: int
    told: str

    @classmethod
    def of(cls, english: str, told: str) -> "Pattern":
        """Return the pattern of two texts.

        Raises
        ------
        ValueError
            When the two have different slots, or the English has none.
        """
        places = tuple(int(number) for number in SLOT.findall(english))
        if not places or set(places) != {int(number) for number in SLOT.findall(told)}:
            raise ValueError(f"{english!r} and {told!r} need the same slots, at least one")
        parts = SLOT.split(english)[::2]
        expression = "(.+?)".join(re.escape(part) for part in parts)
        return cls(
            re.compile(expression, re.DOTALL),
            places,
            sum(len(part.strip()) for part in parts),
            told,
        )

    def slots(self, sentence: str) -> dict[int, str] | None:
        """Return what stands in each slot of a sentence, None when it does not fit."""
        found = self.fits.fullmatch(sentence)
        return None if found is None else dict(zip(self.places, found.groups(), strict=True))

    def filled(self, slots: Mapping[int, str]) -> str:
        """Return the other language's sentence with its slots filled."""
        return SLOT.sub(lambda slot: slots[int(slot[1])], self.told)


class Phrasebook:
    """All patterns of one language; a sentence that fits none is taken apart at its joints.

    Parameters
    ----------
    pairs
        English sentence or pattern to the same in the other language.
    """

    def __init__(self, pairs: Mapping[str, str]) -> None:
        self._whole = {english: told for english, told in pairs.items() if not SLOT.search(english)}
        self._by_word: dict[str, list[Pattern]] = defaultdict(list)
        for english, said in pairs.items():
            if SLOT.search(english):
                self._by_word[_first_word(english)].append(Pattern.of(english, said))
        for patterns in self._by_word.values():
            patterns.sort(key=lambda pattern: -pattern.weight)
        self.told = lru_cache(maxsize=8192)(self._told)

    def _told(self, text: str, depth: int = 0) -> str:
        """Return a text in the other language, as far as its patterns are known."""
        if depth > _DEEPEST or not any(letter.isalpha() for letter in text):
            return text
        known = self._known(text, depth)
        if known is not None:
            return known
        for joint in _JOINTS:
            pieces = joint.split(text)
            if len(pieces) > 1:
                return "".join(self._told(piece, depth + 1) for piece in pieces)
        return text

    def _known(self, text: str, depth: int) -> str | None:
        """Return the whole text in the other language, None when no pattern fits it."""
        bare = text.strip()
        if bare in self._whole:
            return text.replace(bare, self._whole[bare])
        lowered = bare[:1].lower() + bare[1:]
        if lowered in self._whole:  # a word that opens a sentence
            told = self._whole[lowered]
            return text.replace(bare, told[:1].upper() + told[1:])
        for pattern in self._candidates(bare):
            slots = pattern.slots(bare)
            if slots is not None:
                filled = pattern.filled({n: self._told(s, depth + 1) for n, s in slots.items()})
                return text.replace(bare, filled)
        return None

    def _candidates(self, text: str) -> Iterator[Pattern]:
        yield from self._by_word.get(_first_word(text), ())
        yield from self._by_word.get("", ())


def _first_word(text: str) -> str:
    """Return the first word, empty when a slot is or may be in it."""
    word, _, _ = text.partition(" ")
    return "" if "{" in word else word
