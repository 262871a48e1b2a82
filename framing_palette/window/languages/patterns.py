"""Patterns of finished sentences, and the same sentences in another language.

A pattern is an English sentence with numbered slots: ``Repeats the {0} of {1}.`` What stands in a
slot is translated in its turn where a pattern fits it, and else stays as it is: names, figures.
What people have named themselves is kept as it is by a mark in the translation: ``{0!}``.
"""

import re
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

SLOT: Final = re.compile(r"\{(\d+)!?\}")
_SENTENCE_END: Final = re.compile(r"(\n+|(?<=[.!?]) )")
_JOINTS: Final = tuple(re.compile(f"({joint})") for joint in (" · ", "[;:] ", ", ", " and "))
_AND: Final = " and "
_PREDICATE: Final = re.compile(
    r" (?=(?:cannot|changed|claims|contains|defines|does|ends|gives|has|holds|is|loses|names|needs"
    r"|nests|reaches|saw|speaks|starts|states|stops|stands|tells|was) )"
)
_ORDER: Final = re.compile(r"\w+ Sie\b")  # a sentence of its own, which opens with a capital
_NO_STOP: Final = r"(?<!\.)"  # a slot at the end leaves the full stop to the sentence
_FILE_NAME: Final = re.compile(r"[^:;]*\.[a-z]\w{1,4}")
_SURE: Final = 10  # letters outside its slots from which a pattern is taken before any joint
_DEEPEST: Final = 40
_LONGEST: Final = 600  # letters of one sentence; a longer one is no sentence of ours
_REMEMBERED: Final = 8192


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern in both languages.

    Parameters
    ----------
    fits, fits_loosely
        What an English sentence looks like; one group a slot, which may hold a semicolon, a colon
        or the end of a sentence only when loose.
    longest
        The longest text outside the slots: without it nothing fits.
    places
        Number of the slot that each group is.
    weight
        Letters outside the slots: the heavier pattern is the surer one.
    told
        The sentence in the other language, with the same slots.
    """

    fits: re.Pattern[str]
    fits_loosely: re.Pattern[str]
    longest: str
    places: tuple[int, ...]
    weight: int
    told: str

    @classmethod
    def of(cls, english: str, told: str) -> "Pattern":
        """Return the pattern of two texts.

        Raises
        ------
        ValueError
            When the two have different slots, or the English has none, or nothing but slots.
        """
        places = tuple(int(number) for number in SLOT.findall(english))
        if not places or set(places) != {int(number) for number in SLOT.findall(told)}:
            raise ValueError(f"{english!r} and {told!r} need the same slots, at least one")
        parts = SLOT.split(english)[::2]
        weight = sum(len(part.strip()) for part in parts)
        if not weight:
            raise ValueError(f"{english!r} needs words beside its slots")
        ours = [re.escape(part) for part in parts]
        ours[-1] = ours[-1] or _NO_STOP
        return cls(
            re.compile(r"((?:(?!\n|[.!?:;] ).)+?)".join(ours)),
            re.compile("(.+?)".join(ours), re.DOTALL),
            max(parts, key=len),
            places,
            weight,
            told,
        )

    def slots(self, sentence: str, *, loosely: bool = False) -> dict[int, str] | None:
        """Return what stands in each slot of a sentence, None when it does not fit."""
        if self.longest not in sentence:
            return None
        found = (self.fits_loosely if loosely else self.fits).fullmatch(sentence)
        return None if found is None else dict(zip(self.places, found.groups(), strict=True))

    def filled(self, slots: Mapping[int, str], tell: Callable[[str], str]) -> str:
        """Return the other language's sentence with its slots filled, each told in its turn."""
        return SLOT.sub(
            lambda slot: (
                slots[int(slot[1])] if slot[0].endswith("!}") else tell(slots[int(slot[1])])
            ),
            self.told,
        )


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
        self._and = f" {self._whole.get(_AND.strip(), _AND.strip())} "
        self._memory: dict[str, str | None] = {}
        self.told = lru_cache(maxsize=8192)(self._told)

    def _told(self, text: str, depth: int = 0) -> str:
        """Return a text in the other language, as far as its patterns are known."""
        if depth > _DEEPEST or (len(text) > _LONGEST and not _SENTENCE_END.search(text)):
            return text
        bare = text.strip()
        found = (
            self._found(bare, depth)
            or self._one_by_one(bare, depth, in_part=True)
            or self._joined(bare, depth, in_part=True)
        )
        return text.replace(bare, found) if found else text

    def _found(self, text: str, depth: int) -> str | None:
        """Return what `_find` does, each text looked for once."""
        if text not in self._memory:
            if len(self._memory) >= _REMEMBERED:
                self._memory.clear()
            self._memory[text] = None  # while it is looked for, it is not known
            self._memory[text] = self._find(text, depth)
        return self._memory[text]

    def _find(self, text: str, depth: int) -> str | None:
        """Return a text in the other language, None when some of it has no pattern."""
        if depth > _DEEPEST or not _has_letters(text):
            return None
        if max(map(len, _SENTENCE_END.split(text))) > _LONGEST:
            return None
        told = self._surely(text, depth) or self._fitted(text, depth)
        if not told and text.endswith("."):
            told = self._with_stop(self._found(text[:-1], depth + 1) or "")
        if not told and not _SENTENCE_END.search(text):
            told = self._fitted(text, depth, loosely=True)
        return _opened(told) if told and text[0].isupper() else told or None

    def _surely(self, text: str, depth: int) -> str:
        """Return a text that is known by more than a few letters between its slots."""
        return (
            self._known(text, depth)
            or (self._with_stop(self._known(text[:-1], depth)) if text.endswith(".") else "")
            or self._one_by_one(text, depth)
            or self._joined(text, depth)
            or (self._with_stop(self._surely(text[:-1], depth)) if text.endswith(".") else "")
            or self._fitted(text, depth, least=_SURE, loosely=True)
            or self._said_of_a_name(text, depth)
        )

    def _known(self, text: str, depth: int) -> str:
        return self._word(text) or self._fitted(text, depth, least=_SURE)

    @staticmethod
    def _with_stop(told: str) -> str:
        return f"{told}." if told else ""

    def _word(self, text: str) -> str:
        return self._whole.get(text) or self._whole.get(_lowered(text), "")

    def _fitted(self, text: str, depth: int, *, least: int = 0, loosely: bool = False) -> str:
        """Return the text by the surest pattern that fits it, empty when none does."""
        for pattern, tried in self._candidates(text):
            if pattern.weight < least:
                continue
            slots = pattern.slots(tried, loosely=loosely)
            if slots is not None:
                return pattern.filled(slots, lambda slot: self.told(slot, depth + 1))
        return ""

    def _candidates(self, text: str) -> Iterator[tuple[Pattern, str]]:
        """Return what may fit, the first letter made small where the sentence opens with it."""
        for tried in dict.fromkeys((text, _lowered(text))):
            yield from ((pattern, tried) for pattern in self._by_word.get(_first_word(tried), ()))
        yield from ((pattern, text) for pattern in self._by_word.get("", ()))

    def _one_by_one(self, text: str, depth: int, *, in_part: bool = False) -> str:
        """Return sentences told one by one, empty for a single one or when one is not known."""
        pieces = _SENTENCE_END.split(text)
        if len(pieces) == 1:
            return ""
        if in_part:
            return "".join(self.told(piece, depth + 1) for piece in pieces)
        known = [self._found(piece, depth + 1) for piece in pieces]
        told = [one or piece for piece, one in zip(pieces, known, strict=True)]
        strange = (
            one is None and not _is_data(piece) for piece, one in zip(pieces, known, strict=True)
        )
        return "" if any(strange) else "".join(told)

    def _joined(self, text: str, depth: int, *, in_part: bool = False) -> str:
        for joint in _JOINTS[:-1] if in_part else _JOINTS:
            told = self._split_at(joint, text, depth, in_part=in_part)
            if told and told != text:
                return told
        return ""

    def _split_at(
        self, joint: re.Pattern[str], text: str, depth: int, *, in_part: bool = False
    ) -> str:
        """Return the text told in two pieces, empty when it has no joint or one is not known."""
        first, *rest = joint.split(text, maxsplit=1)
        if not rest:
            return ""
        between, last = rest
        if in_part:
            told = [self.told(piece, depth + 1) for piece in (first, last)]
            return _put_together(told[0], between, told[1], self._and)
        known = [self._found(piece, depth + 1) for piece in (first, last)]
        strange = any(
            one is None and not _is_data(piece)
            for one, piece in zip(known, (first, last), strict=True)
        )
        if strange or not any(known):
            return ""
        return _put_together(known[0] or first, between, known[1] or last, self._and)

    def _said_of_a_name(self, text: str, depth: int) -> str:
        """Return what is said of a file or the like: the name stays, the predicate is told."""
        for start in _PREDICATE.finditer(text):
            name, rest = text[: start.start()], text[start.end() :]
            if ": " in name or "; " in name:
                break  # no longer a name: a sentence of its own
            told = self._word(rest) or self._fitted(rest, depth)
            if told:
                return f"{self._word(name) or self._fitted(name, depth) or name} {told}"
        return ""


def _put_together(first: str, joint: str, last: str, and_told: str) -> str:
    """Return two told pieces as one, with a capital where a colon asks for one."""
    if joint == ": " and _ORDER.match(last):
        last = _opened(last)
    return f"{first}{and_told if joint == _AND else joint}{last}"


def _has_letters(text: str) -> bool:
    return any(letter.isalpha() for letter in text)


def _is_data(text: str) -> bool:
    """Whether there is nothing to be told: figures, or the name of a file."""
    return not _has_letters(text) or _FILE_NAME.fullmatch(text) is not None


def _first_word(text: str) -> str:
    """Return the first word, empty when a slot is or may be in it."""
    word, _, _ = text.partition(" ")
    return "" if "{" in word else word


def _lowered(text: str) -> str:
    return text[:1].lower() + text[1:]


def _opened(text: str) -> str:
    return text[:1].upper() + text[1:]
